"""The page Hanging plan."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from guidegen.guide.pages import HangingPage
from guidegen.study import study
from tests.guide.projects import Made, changed, fed, make, of_study

EXAMPLE = Path(__file__).parents[1] / "examples" / "l-shape.yaml"


@pytest.fixture(scope="module")
def corner() -> Made:
    return of_study(study(EXAMPLE))


def page_of(hanging: dict[str, Any], **changes: Any) -> HangingPage:
    page = make(changed(hanging={"sag": "8 cm", **hanging}, **changes)).page("hanging.html")
    assert isinstance(page, HangingPage)
    return page


def row(*spans: str) -> dict[str, Any]:
    return {"lines": [{"spans": list(spans)}]}


def verdict(page: HangingPage, words: str) -> bool | None:
    return next(each.good for each in page.verdicts if words in each.text)


def test_the_page_is_there_only_with_the_key(plain: Made, corner: Made) -> None:
    assert "hanging.html" not in [page.name for page in plain.guide.pages]
    assert "hanging.html" in [page.name for page in corner.guide.pages]


def test_ten_hooks_are_told_and_listed(corner: Made) -> None:
    page = corner.page("hanging.html")
    assert page.lead[0] == "42 bulbs hang from 10 hooks."
    assert [cells[0] for cells in page.hooks.rows] == [f"H{number}" for number in range(1, 11)]


def test_the_hook_in_the_corner_is_pulled_between_its_neighbours(corner: Made) -> None:
    assert corner.page("hanging.html").hooks.rows[5][4] == "between H5 and H7"
    assert corner.page("hanging.html").hooks.rows[1][4] == "down"
    assert corner.page("hanging.html").hooks.rows[0][4] == "towards H2"


def test_every_bulb_of_the_runs_has_a_row(corner: Made) -> None:
    (table,) = corner.page("hanging.html").bulbs
    expected = [f"1, {n}" for n in range(1, 23)] + [f"2, {n}" for n in range(1, 21)]
    assert [cells[0] for cells in table.rows] == expected
    assert table.note.startswith("Run 1 is back wall and Run 2 is side wall.")


def test_everything_holds_in_the_corner(corner: Made) -> None:
    assert all(each.good for each in corner.page("hanging.html").verdicts)


def test_a_weak_hook_fails() -> None:
    assert verdict(page_of({**row("2 m", "2 m"), "hook_rating": "2 N"}), "stronger hooks") is False


def test_hooks_without_a_rating_are_told_what_rating_to_buy() -> None:
    assert verdict(page_of(row("2 m", "2 m")), "hooks rated for at least") is None


def test_a_taut_thin_string_wants_a_guide_wire() -> None:
    page = page_of({"lines": [{"spans": ["3 m"], "sag": "2 cm"}]})
    assert verdict(page, "hang it from a guide wire") is False


def test_a_guide_wire_of_unknown_strength_is_told_what_to_buy() -> None:
    assert verdict(page_of({**row("2 m", "2 m"), "guide_wire": "yes"}), "breaks at no less than") is None


@pytest.mark.parametrize(
    ("exposure", "wind", "words", "good"),
    [
        ("indoors", None, "no wind and no ice", True),
        ("sheltered outdoors", None, "For sheltered places only", None),
        ("open outdoors", None, "calm, sheltered place only", False),
        ("open outdoors", "20 m/s", "Wind of 20", True),
    ],
)
def test_the_weather_is_told_plainly(exposure: str, wind: str | None, words: str, good: bool | None) -> None:
    hanging = {**row("2 m", "2 m"), **({"wind": wind} if wind else {})}
    assert verdict(page_of(hanging, place__exposure=exposure), words) is good


@pytest.mark.parametrize(("height", "good"), [("2.7 m", True), ("2.4 m", False)])
def test_a_path_needs_2_metres_50(height: str, good: bool) -> None:
    """Arm's reach of IEC 60364-4-41 Annex B, from memory; the wire dips 8 cm below its hooks."""
    page = page_of({**row("2 m", "2 m"), "height": height}, place__over_path="yes")
    assert verdict(page, "Over a path") is good


def test_over_a_path_heights_are_asked_for() -> None:
    assert verdict(page_of(row("2 m", "2 m"), place__over_path="yes"), "state the hooks' heights") is None


def test_too_few_hooks_are_told_with_the_bulbs_beyond() -> None:
    page = page_of(row("2 m"))
    assert verdict(page, "3 bulbs hang beyond the last hook H2") is False
    assert page.bulbs[0].rows[-1][1] == "beyond H2"


def test_a_run_on_no_line_is_told() -> None:
    runs = [fed("one end", 6), {**fed("one end", 6), "name": "sill"}]
    page = page_of({"lines": [{"runs": ["sill"], "spans": ["2 m"]}]}, runs=runs)
    assert verdict(page, "shelf is on no line") is None


def test_the_gap_of_a_joint_is_told(corner: Made) -> None:
    gaps = corner.page("hanging.html").gaps
    assert "46\u00a0cm without light between bulb 12 of back wall and bulb 13 of back wall." in gaps


def test_each_piece_of_wire_says_what_it_is_made_of(corner: Made) -> None:
    rows = {cells[0]: cells for cells in corner.page("hanging.html").cuts.rows}
    piece = rows["X1 extra wire “back wall”"]
    assert piece[1] == "6.4\u00a0m"
    assert "6\u00a0m route" in piece[2]
    assert "black" in piece[3]
    assert piece[5] == "bulb 22"


def test_the_catenary_and_the_parabola_are_worked_out(corner: Made) -> None:
    titles = [each.title for each in corner.page("hanging.html").sums]
    assert titles[-2:] == ["Level pull in the wire", "The same by the shallow parabola, to compare"]


def test_hooks_are_tried_with_twice_the_largest_pull(corner: Made) -> None:
    assert any("twice the largest pull" in line for line in corner.page("hanging.html").how)


def test_the_cautions_of_hanging_lead_to_the_safety_page(corner: Made) -> None:
    page = corner.page("hanging.html")
    anchors = {box.anchor for box in page.cautions}
    assert {"overhead-lines", "over-path"} <= anchors
    assert not any(box.full for box in page.cautions)
