"""The plan drawing: to scale, every bulb in it, the same bytes, names made safe."""

from __future__ import annotations

import math
import re
import xml.etree.ElementTree as ET
from typing import Any

import pytest

from guidegen.circuit.arrangement import Arrangement
from guidegen.drawings.plan import draw_plan, feeds_of
from guidegen.drawings.plan_pen import DASHES
from guidegen.drawings.plan_view import view_of
from guidegen.drawings.side_view import shapes_of
from guidegen.hanging.make import hanging_plan
from guidegen.hanging.paths import SupplyPaths
from guidegen.hanging.plan import HangingPlan
from guidegen.hanging.ways import OnLine
from tests.guide.projects import changed, fed, make

CORNER = [{"hooks": [{"x": "0 m", "y": "0 m"}, {"x": "2 m", "y": "0 m"}, {"x": "2 m", "y": "1 m"}]}]
#: A supply at the first hook, whose wires are not drawn.
AT_START = SupplyPaths(OnLine(0, 0.0), ())
ROW = [{"spans": ["1.5 m", "1.5 m"]}]


def planned(lines: list[dict[str, Any]], **changes: Any) -> tuple[HangingPlan, Arrangement]:
    matter = make(changed(hanging={"sag": "8 cm", "lines": lines}, **changes)).matter
    plan = hanging_plan(matter.project, matter.arrangement)
    assert plan is not None
    return plan, matter.arrangement


def svg(lines: list[dict[str, Any]], **changes: Any) -> str:
    return draw_plan(*planned(lines, **changes), AT_START)[0].svg


def lamps(text: str) -> list[str]:
    """Fill of every bulb of the plan, the key's own left out."""
    filled = re.findall(r'<circle [^>]*fill="(\w+)" stroke="black" stroke-width="0.8"', text)
    return filled[: -2 if "white" in filled else -1]


def test_both_directions_have_one_scale() -> None:
    plan, _arrangement = planned(CORNER)
    view = view_of(plan)
    first, corner, last = (view.hook(0, hook) for hook in plan.lines[0].hooks)
    assert math.dist(first, corner) == pytest.approx(2 * view.scale)
    assert math.dist(corner, last) == pytest.approx(view.scale)


def test_up_in_the_plan_is_up_on_the_page() -> None:
    plan, _arrangement = planned(CORNER)
    view = view_of(plan)
    _first, corner, last = (view.hook(0, hook) for hook in plan.lines[0].hooks)
    assert last[1] < corner[1]


def test_every_bulb_on_a_span_is_drawn() -> None:
    assert lamps(svg(CORNER)) == ["black"] * 12


def test_dark_bulbs_are_rings() -> None:
    """Of a two-way string bulbs 1, 3, 5, ... light: DESIGN, section 3."""
    assert lamps(svg(ROW, strings__drop__lit_on_dc="half")) == ["black", "white"] * 6


def test_bulbs_beyond_the_last_hook_are_not_drawn() -> None:
    assert len(lamps(svg([{"spans": ["1.5 m"]}]))) == 7


@pytest.mark.parametrize(
    ("feed", "places"),
    [
        ("one end", ((1, "+ −"),)),
        ("middle", ((6, "+ −"),)),
        ("both ends", ((1, "+ −"), (12, "+ −"))),
        ("opposite ends", ((1, "+"), (12, "−"))),
    ],
)
def test_feeds_are_where_they_are_wired(feed: str, places: tuple[tuple[int, str], ...]) -> None:
    """DESIGN, section 3: middle is bulb ceil(n/2); opposite ends: + at bulb 1, - from the last."""
    _plan, arrangement = planned(ROW, runs=[fed(feed)])
    assert feeds_of(arrangement.runs[0]) == places


def test_runs_differ_in_their_lines() -> None:
    runs = [fed("one end", 6), {**fed("one end", 6), "name": "sill"}]
    text = svg(ROW, runs=runs)
    assert text.count(f'stroke-dasharray="{DASHES[1]}"') == 2  # the run itself, and its line in the key


def test_spans_of_one_shape_are_drawn_once() -> None:
    plan, _arrangement = planned([{"spans": ["1.5 m", "1 m", "1.5 m"]}])
    assert [(shape.span.first.label, shape.more) for shape in shapes_of(plan)] == [("H1", 1), ("H2", 0)]


def test_the_same_plan_is_the_same_bytes() -> None:
    assert svg(CORNER) == svg(CORNER)


def test_names_are_escaped() -> None:
    text = svg(ROW, runs=[{**fed("one end"), "name": "<b>&"}])
    assert "<b>" not in text
    ET.fromstring(text)


def test_the_text_equivalent_names_hooks_runs_and_feeds() -> None:
    plan, arrangement = planned(ROW, runs=[fed("opposite ends")])
    alt = draw_plan(plan, arrangement, AT_START)[0].alt
    assert "From H1 to H3: shelf." in alt
    assert "Run 1 is fed + at bulb 1, − at bulb 12." in alt
    assert "sag 8.0 cm" in draw_plan(plan, arrangement, AT_START)[1].alt
