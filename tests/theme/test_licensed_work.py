"""The pages of a guide that stops for licensed work."""

from __future__ import annotations

from dataclasses import replace

import pytest

from guidegen.guide.blocks import Column, Fact, Table
from guidegen.guide.pages import ElectricianPage, Guide, Page
from tests.theme.conftest import Render
from tests.theme.example_guide import CAUTIONS, PICTURES, make_guide, with_text
from tests.theme.html_reading import Element, read_elements

SHEET = ElectricianPage(
    stop=CAUTIONS[0],
    first_line="To the licensed person.",
    asked=("A switched outlet.",),
    facts=(Fact("Load", "14 W, 28 VA", "assumed"), Fact("Air", "−5 °C to 35 °C")),
    who=Table("Who attends to what", (Column("Who"), Column("Attends to")), (("Builder", "The lights."),)),
    to_fill=("Name and licence", "Date and signature"),
    note_lines=3,
)
MARKUP = """<b onclick="x">&amp;{{ 7*7 }}"'</style></script>"""


@pytest.fixture
def stopped() -> Guide:
    """The example with a sheet for the electrician, and a stop on top of its pages."""
    sheet = Page("electrician.html", "For the electrician", "To hand over", "electrician.html", SHEET)
    pages = [
        replace(page, model=replace(page.model, stop=CAUTIONS[0]))  # type: ignore[call-arg, arg-type]
        if page.name in ("index.html", "build.html")
        else page
        for page in make_guide().pages
    ]
    return replace(make_guide(), pages=(*pages[:2], sheet, *pages[2:]))


def with_class(html: str, name: str) -> list[Element]:
    return [element for element in read_elements(html) if element.has_class(name)]


@pytest.mark.parametrize("name", ["index.html", "build.html", "electrician.html"])
def test_stop_is_the_first_box_of_the_page(render: Render, stopped: Guide, name: str) -> None:
    main = render(stopped)[name].split("<main")[1].split(">", 1)[1].lstrip()
    assert main.startswith('<div class="box danger"')


def test_pages_without_a_stop_have_no_box_on_top(pages: dict[str, str]) -> None:
    assert not with_class(pages["index.html"], "box")


def test_sheets_are_counted_with_the_new_one(render: Render, stopped: Guide) -> None:
    told = [with_class(html, "block-sheet")[0].text for html in render(stopped).values()]
    count = len(stopped.pages)
    assert told == [f"Sheet {number} of {count}" for number in range(1, count + 1)]


def test_sheet_has_facts_lines_to_fill_and_lines_for_notes(render: Render, stopped: Guide) -> None:
    html = render(stopped)["electrician.html"]
    assert [element.text for element in with_class(html, "plate-value")] == ["14 W, 28 VA", "−5 °C to 35 °C"]
    terms = [element.text for element in read_elements(html) if element.tag == "dt"]
    assert terms[-2:] == ["Name and licence", "Date and signature"]
    lines = html.split('class="note-lines"')[1].split("</section>")[0]
    assert lines.count("<div></div>") == SHEET.note_lines


def test_markup_in_any_text_of_the_sheet_comes_out_as_text(render: Render, stopped: Guide) -> None:
    plain, marked = (
        read_elements(render(with_text(stopped, text), PICTURES)["electrician.html"])
        for text in ("x" * len(MARKUP), MARKUP)
    )
    assert [element.tag for element in marked] == [element.tag for element in plain]
    assert any(MARKUP in element.text for element in marked if element.tag == "dd")


def test_box_of_stay_safe_tells_hazard_harm_and_how_to_avoid_it(pages: dict[str, str]) -> None:
    html = pages["stay-safe.html"]
    assert next(element.text for element in with_class(html, "hazard")).startswith("Hazard The resistor")
    assert next(element.text for element in with_class(html, "harm")).startswith("What can happen It burns")
    assert next(element.text for element in with_class(html, "how-to")).startswith("How to avoid it Mount")
    assert next(element.text for element in with_class(html, "source")).startswith("Computed")


def test_box_at_a_step_leaves_why_and_source_to_stay_safe(pages: dict[str, str]) -> None:
    boxes = with_class(pages["build.html"], "box")
    assert boxes
    assert not [box for box in boxes if CAUTIONS[0].source in box.text]
