"""What single blocks look like in HTML: cautions, checks, readings, ticks, tables, formulas."""

from __future__ import annotations

from dataclasses import replace

import pytest
from jinja2 import Environment, UndefinedError

from guidegen.guide.blocks import ReadingRow
from tests.theme.conftest import Render
from tests.theme.example_guide import CAUTIONS, PICTURES, make_guide
from tests.theme.html_reading import Element, read_elements


def _with_class(html: str, name: str) -> list[Element]:
    return [element for element in read_elements(html) if element.has_class(name)]


def test_danger_warning_and_caution_carry_the_alert_symbol_and_notice_does_not(pages: dict[str, str]) -> None:
    """ISO 3864-2 and ANSI Z535.6: the safety alert symbol stands for injury; NOTICE has none."""
    for caution in CAUTIONS:
        box = pages["stay-safe.html"].split(f'id="{caution.anchor}"')[1].split("</h2>")[0]
        assert ("<svg" in box) == (caution.signal != "notice"), caution.anchor


def test_cautions_differ_by_word_and_class(pages: dict[str, str]) -> None:
    boxes = _with_class(pages["stay-safe.html"], "box")
    assert [box.attributes["class"] for box in boxes] == [
        "box danger",
        "box warning",
        "box caution",
        "box notice",
    ]
    words = [element.text for element in _with_class(pages["stay-safe.html"], "signal-word")]
    assert words == ["DANGER", "WARNING", "CAUTION", "NOTICE"]


def test_a_caution_told_in_full_elsewhere_is_one_line_that_leads_there(pages: dict[str, str]) -> None:
    lines = _with_class(pages["build.html"], "box-line")
    assert [line.text for line in lines] == [
        "WARNING Outdoors only from an outlet with residual current protection",
        "DANGER A new mains outlet is work for a qualified person",
    ]
    targets = {element.attributes.get("href") for element in read_elements(pages["build.html"])}
    assert {"stay-safe.html#rcd", "stay-safe.html#new-wiring"} <= targets


def test_a_check_shows_the_reading_its_range_and_what_to_do_otherwise(pages: dict[str, str]) -> None:
    displays = [element.text for element in _with_class(pages["build.html"], "display")]
    assert displays[0] == "Expect 3.07 V right if 2.95 V to 3.18 V"
    assert displays[1] == "Expect a beep, less than 1 Ω"
    assert _with_class(pages["build.html"], "if-not")[0].text.startswith("If not Near 5 V: the run is open")


def test_every_step_has_a_tick_box_with_a_key_of_its_own(pages: dict[str, str]) -> None:
    ticks = [e for e in read_elements(pages["build.html"]) if e.attributes.get("type") == "checkbox"]
    assert [tick.attributes["data-keep"] for tick in ticks] == [f"step-back-rail-{n}" for n in (1, 2, 3)]
    assert [tick.attributes["aria-label"] for tick in ticks] == [f"Step {n} done" for n in (1, 2, 3)]


@pytest.mark.parametrize("name", ["build.html", "parts.html", "readings.html"])
def test_the_hash_of_the_project_is_at_hand_for_the_storage_keys(pages: dict[str, str], name: str) -> None:
    assert read_elements(pages[name])[0].attributes["data-key"] == "0f1e2d3c"


def test_a_reading_has_a_labelled_blank_and_the_bounds_for_the_script(pages: dict[str, str]) -> None:
    html = pages["readings.html"]
    row = _with_class(html, "reading")[0]
    assert (row.attributes["data-low"], row.attributes["data-high"]) == ("4.9", "5.2")
    blank = next(element for element in read_elements(html) if element.tag == "input")
    assert blank.attributes["inputmode"] == "decimal"
    labels = [element.text for element in read_elements(html) if element.tag == "label"]
    assert labels[0] == "Your reading at T1, Volts of the supply, in V"


def test_what_to_do_with_a_reading_out_of_range_stands_on_paper_too(pages: dict[str, str]) -> None:
    advice = [element.text for element in _with_class(pages["readings.html"], "advice")]
    assert advice[0].startswith("If lower: The supply is overloaded")
    assert "If higher: The adapter is not regulated" in advice[0]


def test_a_reading_without_advice_has_no_empty_row(pages: dict[str, str]) -> None:
    rows = [row for group in make_guide().pages[7].model.groups for row in group.rows]  # type: ignore[union-attr]
    assert all(isinstance(row, ReadingRow) for row in rows)
    assert len(_with_class(pages["readings.html"], "advice")) == sum(bool(row.if_low) for row in rows)


def test_cells_of_a_text_table_carry_their_column_for_small_screens(pages: dict[str, str]) -> None:
    cells = [e for e in read_elements(pages["wiring.html"]) if e.tag == "td"]
    assert cells[0].attributes["data-label"] == "Feed"
    assert all(cell.attributes["data-label"] for cell in cells)


def test_a_table_of_figures_can_be_scrolled_with_the_keyboard(pages: dict[str, str]) -> None:
    (table,) = _with_class(pages["light.html"], "figures")
    assert table.attributes["tabindex"] == "0"
    assert table.attributes["aria-labelledby"] == "light-1"


def test_the_project_file_is_shown_as_it_is(pages: dict[str, str]) -> None:
    (file,) = [element for element in read_elements(pages["numbers.html"]) if element.tag == "pre"]
    model = next(page.model for page in make_guide().pages if page.name == "numbers.html")
    assert "".join(file.texts).removeprefix("\n") == model.project_file  # type: ignore[union-attr]


@pytest.mark.parametrize(
    ("text", "html"),
    [
        ("R", "R"),
        ("R_20 (1 + a)", "R<sub>20</sub> (1 + a)"),
        ("I = (U − U_after)/R", "I = (U − U<sub>after</sub>)/R"),
        ("U_a", "U<sub>a</sub>"),
        ("a_", "a_"),
        ("<_b>", "&lt;<sub>b</sub>&gt;"),
    ],
)
def test_an_underscore_in_a_formula_begins_a_subscript(templates: Environment, text: str, html: str) -> None:
    macros = templates.get_template("macros.html").make_module({"guide": None, "pictures": {}})
    assert str(macros.formula(text)) == html  # type: ignore[attr-defined]


def test_a_verdict_that_falls_short_looks_different_without_colour(render: Render) -> None:
    guide = make_guide()
    start = replace(guide.pages[0], model=replace(guide.pages[0].model, verdict_good=False))  # type: ignore[arg-type]
    short = render(replace(guide, pages=(start, *guide.pages[1:])))["index.html"]
    assert _with_class(short, "wanting")
    assert not _with_class(short, "good")
    assert short.split('class="mark"')[1][:200] != render(guide)["index.html"].split('class="mark"')[1][:200]


def test_a_picture_that_was_not_drawn_is_an_error(render: Render) -> None:
    pictures = {name: drawing for name, drawing in PICTURES.items() if name != "cut"}
    with pytest.raises(UndefinedError, match="cut"):
        render(make_guide(), pictures)
