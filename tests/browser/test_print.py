"""The sample guide on paper: few sheets, all of it there, nothing split that belongs together."""

from __future__ import annotations

import re
from dataclasses import dataclass

import pytest

# Sheets of A4 at most, so that the guide can be carried into a workshop; Letter is 18 mm shorter.
SHEETS = {
    "index.html": (1, 1),
    "parts-and-tools.html": (3, 3),
    "wiring.html": (2, 3),
    "numbers.html": (9, 10),
    "light.html": (3, 3),
    "build.html": (18, 19),
    "readings.html": (3, 4),
}
PAPERS = ("A4", "Letter")
# The page number stands in the lowest 12 mm.
FOOT_PT = 12 / 25.4 * 72


@dataclass(frozen=True)
class Word:
    """A piece of text on a sheet and where it begins, points from the lower left corner."""

    text: str
    x: float
    y: float


@dataclass(frozen=True)
class Sheet:
    """One printed sheet."""

    width: float
    height: float
    words: tuple[Word, ...]

    @property
    def text(self) -> str:
        """All letters without spaces: where a line ends does not matter."""
        return squeezed("".join(word.text for word in self.words))

    @property
    def lowest(self) -> float:
        """How far down the text reaches, as a share of the height."""
        return 1 - min((word.y for word in self.words if word.y > FOOT_PT), default=self.height) / self.height


def squeezed(text: str) -> str:
    """The text without white space."""
    return re.sub(r"\s+", "", text)


@pytest.fixture(scope="module")
def printed(browser, guide, tmp_path_factory):
    """Every page of the guide as sheets, by page and paper; printed when asked for."""
    from pypdf import PdfReader

    folder = tmp_path_factory.mktemp("print")
    done: dict[tuple[str, str], list[Sheet]] = {}

    def sheets(name: str, paper: str) -> list[Sheet]:
        if (name, paper) not in done:
            page = browser.new_page()
            page.goto((guide / name).as_uri())
            page.pdf(path=folder / "page.pdf", format=paper)
            page.close()
            done[name, paper] = [read(sheet) for sheet in PdfReader(folder / "page.pdf").pages]
        return done[name, paper]

    return sheets


def read(page) -> Sheet:
    """Text of a PDF page with its places."""
    words: list[Word] = []

    def keep(text, matrix, text_matrix, _font, _size):
        if text.strip():
            x, y = text_matrix[4], text_matrix[5]
            words.append(
                Word(
                    text,
                    matrix[0] * x + matrix[2] * y + matrix[4],
                    matrix[1] * x + matrix[3] * y + matrix[5],
                )
            )

    page.extract_text(visitor_text=keep)
    return Sheet(float(page.mediabox.width), float(page.mediabox.height), tuple(words))


@pytest.fixture(scope="module")
def steps(browser, guide) -> list[dict]:
    """Number, title, every line of work and every check of the steps, as the page has them."""
    page = browser.new_page()
    page.goto((guide / "build.html").as_uri())
    found = page.evaluate(
        """() => [...document.querySelectorAll('.step')].map(step => ({
            number: step.dataset.number,
            title: step.querySelector('h3').lastChild.textContent.trim(),
            lines: [...step.querySelectorAll('.do > li, .display-value, .if-not li')].map(e => e.textContent),
        }))"""
    )
    page.close()
    return found


@pytest.mark.parametrize("paper", PAPERS)
@pytest.mark.parametrize("name", SHEETS)
def test_a_page_takes_few_sheets(printed, name, paper):
    assert len(printed(name, paper)) <= SHEETS[name][PAPERS.index(paper)]


@pytest.mark.parametrize("paper", PAPERS)
def test_every_step_is_whole_on_one_sheet(printed, steps, paper):
    sheets = [sheet.text for sheet in printed("build.html", paper)]
    assert len(steps) > 20
    for step in steps:
        parts = [step["title"], *step["lines"]]
        assert any(all(squeezed(part) in sheet for part in parts) for sheet in sheets), step["number"]


@pytest.mark.parametrize("paper", PAPERS)
@pytest.mark.parametrize("name", ["build.html", "numbers.html"])
def test_no_sheet_but_the_last_is_mostly_empty(printed, name, paper):
    """Where two long steps meet, the first may leave more than half; none is split to fill it."""
    assert [round(sheet.lowest, 2) for sheet in printed(name, paper)[:-1] if sheet.lowest < 0.4] == []


@pytest.mark.parametrize("paper", PAPERS)
@pytest.mark.parametrize("name", SHEETS)
def test_no_text_leaves_the_sheet(printed, name, paper):
    for sheet in printed(name, paper):
        assert [
            word for word in sheet.words if not (0 < word.x < sheet.width and 0 < word.y < sheet.height)
        ] == []


@pytest.mark.parametrize("paper", PAPERS)
@pytest.mark.parametrize("name", SHEETS)
def test_every_later_sheet_names_guide_and_page(printed, opened, guide, name, paper):
    with opened(guide / name) as page:
        head = squeezed(
            page.evaluate("getComputedStyle(document.documentElement).getPropertyValue('--running-head')")
        )
    for sheet in printed(name, paper)[1:]:
        assert head.strip('"') in sheet.text


@pytest.mark.parametrize("paper", PAPERS)
def test_every_calculation_is_printed(printed, opened, guide, paper):
    with opened(guide / "numbers.html") as page:
        results = page.locator(".sum .result dd").all_text_contents()
    text = "".join(sheet.text for sheet in printed("numbers.html", paper))
    assert len(results) > 20
    assert [result for result in results if squeezed(result) not in text] == []


def test_the_checks_see_an_empty_sheet():
    sheet = Sheet(600, 800, (Word("head", 50, 760), Word("1 / 3", 500, 20)))
    assert sheet.lowest < 0.4
    assert Sheet(600, 800, ()).lowest == 0
