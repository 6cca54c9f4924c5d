"""Stay safe and the sheet for the electrician on paper: pages, nothing dropped, type large enough."""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path

import pytest

from guidegen.build import build
from tests.browser.checks import axe_findings, html_faults, too_wide
from tests.browser.surfing import DESKTOP, PAPER, PHONE, ROOT

EXAMPLES = ROOT / "tests" / "examples"
PAPERS = pytest.mark.parametrize("paper", ["A4", "Letter"])
#: Points; sizes in a PDF are rounded.
SMALLEST_PT, ROUNDING_PT = 10.0, 0.05
_TEXTS = """
() => [...document.querySelectorAll('main *')]
  .filter(e => e.checkVisibility() && [...e.childNodes].some(n => n.nodeType === 3 && n.textContent.trim()))
  .map(e => [parseFloat(getComputedStyle(e).fontSize) * 0.75, e.textContent.trim().slice(0, 40)])
"""


@pytest.fixture(scope="session")
def new_wiring(tmp_path_factory) -> Path:
    """The guide of a project that needs new fixed wiring."""
    out = tmp_path_factory.mktemp("new-wiring") / "guide"
    build(EXAMPLES / "safety-new-fixed-wiring.yaml", out)
    return out


def printed(page, path: Path, paper: str):
    """The page as a PDF that can be read."""
    from pypdf import PdfReader

    page.pdf(path=path, format=paper)
    return PdfReader(path)


def words(text: str) -> str:
    """The text without spaces and line ends, which a PDF sets as it likes."""
    return "".join(text.split())


def text_sizes(reader) -> Iterator[tuple[float, str]]:
    """Every piece of text of a PDF with its size in points."""
    for page in reader.pages:
        found: list[tuple[float, str]] = []

        def see(text, cm, tm, _font, size, found=found) -> None:
            if text.strip():
                scale = abs(cm[3] * tm[3] - cm[2] * tm[1])
                found.append((size * scale, text.strip()))

        page.extract_text(visitor_text=see)
        yield from found


@PAPERS
def test_stay_safe_of_the_sample_prints_on_few_pages_with_nothing_dropped(opened, guide, tmp_path, paper):
    with opened(guide / "stay-safe.html", media="print") as page:
        texts = page.locator(
            ".first-line, .caution-title, .signal-word, .hazard, .harm, .avoid li, .source"
        ).evaluate_all("found => found.map(e => e.lastChild.textContent)")
        reader = printed(page, tmp_path / "safe.pdf", paper)
    told = words(" ".join(page.extract_text() for page in reader.pages))
    assert len(texts) > 100
    assert [text for text in texts if words(text) not in told] == []
    assert len(reader.pages) <= {"A4": 2, "Letter": 3}[paper]


@PAPERS
def test_stay_safe_prints_in_ten_points_or_more(opened, guide, tmp_path, paper):
    with opened(guide / "stay-safe.html", media="print") as page:
        reader = printed(page, tmp_path / "safe.pdf", paper)
    sizes = list(text_sizes(reader))
    assert len(sizes) > 100
    assert [each for each in sizes if each[0] < SMALLEST_PT - ROUNDING_PT] == []


def test_every_element_of_stay_safe_asks_for_ten_points_or_more(opened, guide):
    with opened(guide / "stay-safe.html", media="print", viewport=PAPER) as page:
        sizes = page.evaluate(_TEXTS)
    assert len(sizes) > 100
    assert [each for each in sizes if each[0] < SMALLEST_PT - ROUNDING_PT] == []


def test_boxes_are_told_apart_without_colour(opened, new_wiring):
    """By word, by frame and by the panel behind the word, as print shows them."""
    look = """
    boxes => boxes.map(box => {
      const frame = getComputedStyle(box), panel = getComputedStyle(box.querySelector('.signal'));
      return [box.querySelector('.signal-word').textContent, frame.borderTopStyle, frame.borderTopWidth,
              panel.backgroundColor, panel.color].join(' ');
    })
    """
    with opened(new_wiring / "stay-safe.html", media="print", viewport=PAPER) as page:
        looks = set(page.locator(".box").evaluate_all(look))
        signals = set(page.locator(".box .signal-word").all_inner_texts())
    assert signals == {"DANGER", "WARNING", "CAUTION", "NOTICE"}
    assert len({each.split(" ", 1)[1] for each in looks}) == 4
    colours = [match for each in looks for match in re.findall(r"rgb\((\d+), (\d+), (\d+)\)", each)]
    assert len(colours) == 2 * len(looks)
    assert [colour for colour in colours if len(set(colour)) > 1] == []  # greys alone


def test_most_severe_boxes_come_first_also_down_the_columns_of_paper(opened, new_wiring):
    order = ["DANGER", "WARNING", "CAUTION", "NOTICE"]
    with opened(new_wiring / "stay-safe.html") as page:
        signals = page.locator(".box .signal-word").all_inner_texts()
    assert signals == sorted(signals, key=order.index)


@PAPERS
def test_sheet_for_the_electrician_prints_on_one_page(opened, new_wiring, tmp_path, paper):
    with opened(new_wiring / "electrician.html", media="print") as page:
        reader = printed(page, tmp_path / "electrician.pdf", paper)
    (only,) = reader.pages
    told = words(only.extract_text())
    for text in ("For the electrician", "switched outlet", "28.6 VA", "Who attends to what", "Notes"):
        assert words(text) in told


def test_danger_box_is_the_first_thing_on_the_pages_that_stop(opened, new_wiring):
    for name in ("index.html", "build.html", "electrician.html"):
        with opened(new_wiring / name) as page:
            first = page.locator("main > *").first
            assert "danger" in (first.get_attribute("class") or "")
            assert "DANGER" in first.inner_text()
    with opened(new_wiring / "stay-safe.html") as page:
        assert "DANGER" in page.locator(".box").first.inner_text()


def test_sheets_are_counted_with_the_one_for_the_electrician(opened, guide, new_wiring):
    for folder, number in ((guide, 9), (new_wiring, 10)):
        sheets = len(list(folder.glob("*.html")))
        with opened(folder / "readings.html") as page:
            told = " ".join(page.locator(".block-sheet").inner_text().split())
        assert told == f"Sheet {number} of {sheets}"


@pytest.mark.parametrize("look", [{}, {"color_scheme": "dark"}, {"viewport": PHONE}, {"viewport": DESKTOP}])
def test_sheets_of_new_fixed_wiring_are_clean(opened, new_wiring, look):
    for name in ("electrician.html", "stay-safe.html", "index.html"):
        with opened(new_wiring / name, **look) as page:
            assert axe_findings(page) + too_wide(page) + page.complaints == [], name


def test_html_of_new_fixed_wiring_is_valid(new_wiring):
    assert html_faults(sorted(new_wiring.glob("*.html"))) == []
