"""The sample guide on paper: few sheets, all of it there, nothing split that belongs together."""

from __future__ import annotations

import re
from dataclasses import dataclass

import pytest

# Sheets of A4 at most, so that the guide can be carried into a workshop; Letter is 18 mm shorter.
SHEETS = {
    "index.html": (1, 1),
    "stay-safe.html": (2, 3),
    "parts-and-tools.html": (3, 4),
    "wiring.html": (2, 3),
    "numbers.html": (9, 10),
    "light.html": (2, 2),
    "build.html": (18, 19),
    "arrangements.html": (3, 3),
    "readings.html": (2, 3),
    "hanging.html": (4, 4),
    "running.html": (3, 3),
    "print-set.html": (8, 9),
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


_CUT = """() => [...document.querySelectorAll('.sheet *')].filter(e => {
  const style = getComputedStyle(e), box = e.getBoundingClientRect();
  if (!box.width || !box.height || style.clipPath !== 'none' || style.position === 'absolute') return false;
  return style.overflowX !== 'visible' && e.scrollWidth > e.clientWidth + 1
    || box.right > document.documentElement.clientWidth + 1;
}).slice(0, 5).map(e => e.outerHTML.slice(0, 80))"""
# The sheet between its margins of 11 mm, 96 pixels an inch.
WIDTHS = {"A4": 710, "Letter": 732}


@pytest.mark.parametrize("paper", PAPERS)
@pytest.mark.parametrize("name", SHEETS)
def test_no_box_or_table_is_cut_at_the_edge_of_the_paper(opened, guide, name, paper):
    window = {"width": WIDTHS[paper], "height": 1000}
    with opened(guide / name, media="print", viewport=window) as page:
        assert page.evaluate(_CUT) == []


@pytest.mark.parametrize("paper", PAPERS)
def test_the_print_set_holds_safety_parts_and_readings_each_on_its_own_sheets(printed, paper):
    sheets = [sheet.text for sheet in printed("print-set.html", paper)]
    alone = [
        sheet.text
        for name in ("stay-safe.html", "parts-and-tools.html", "readings.html")
        for sheet in printed(name, paper)
    ]
    assert len(sheets) == len(alone)
    heads = [squeezed(title) for title in ("Stay safe", "Parts and tools", "Readings")]
    firsts = [number for number, text in enumerate(sheets) if any(head in text[:60] for head in heads)]
    assert firsts[0] == 0
    assert len([text for text in sheets if "of12" in text]) == 3


@pytest.mark.parametrize("name", ["parts-and-tools.html", "build.html", "print-set.html"])
def test_ticks_are_printed_as_squares_with_a_black_edge(opened, guide, name):
    with opened(guide / name, media="print") as page:
        box = page.locator(".tick input").first
        size = box.bounding_box()
        assert abs(size["width"] - size["height"]) < 0.5
        style = "e => [getComputedStyle(e).borderTopColor, getComputedStyle(e).borderRadius]"
        assert box.evaluate(style) == ["rgb(0, 0, 0)", "0px"]


def test_the_text_of_the_first_chart_is_printed_in_8_points_or_more(opened, guide):
    """The drawing's points are CSS pixels of its own width, 96 to an inch; a point is 1/72 inch."""
    with opened(
        guide / "index.html", media="print", viewport={"width": WIDTHS["A4"], "height": 1000}
    ) as page:
        width = page.locator(".picture img").first.bounding_box()["width"]
    drawing = (guide / "drawings" / "light.svg").read_text()
    units = float(re.search(r'viewBox="0 0 ([\d.]+)', drawing)[1])
    smallest = min(map(float, re.findall(r"font-size: ([\d.]+)px", drawing)))
    assert smallest * width / units * 72 / 96 >= 8


_GREYS = """() => [...document.querySelectorAll('.sheet *')].filter(e => e.checkVisibility()).flatMap(e => {
  const style = getComputedStyle(e);
  return [style.color, style.backgroundColor, style.borderTopColor];
}).filter(colour => {
  const [red, green, blue, opacity] = colour.match(/[\\d.]+/g).map(Number);
  return opacity !== 0 && !(red === green && green === blue);
})"""


@pytest.mark.parametrize("name", SHEETS)
def test_paper_needs_no_colour(opened, guide, name):
    with opened(guide / name, media="print") as page:
        assert page.evaluate(_GREYS) == []


def test_the_checks_see_an_empty_sheet():
    sheet = Sheet(600, 800, (Word("head", 50, 760), Word("1 / 3", 500, 20)))
    assert sheet.lowest < 0.4
    assert Sheet(600, 800, ()).lowest == 0
