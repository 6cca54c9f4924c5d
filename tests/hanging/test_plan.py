"""The hanging plan of ten hooks in an L, and of small lines worked out by hand."""

from __future__ import annotations

import math
from pathlib import Path
from typing import Any

import numpy as np
import pytest

from guidegen.calc.catenary import from_sag
from guidegen.hanging.make import hanging_plan
from guidegen.hanging.plan import HangingPlan
from guidegen.study import study
from tests.guide.projects import changed, fed, make

EXAMPLE = Path(__file__).parents[1] / "examples" / "l-shape.yaml"
G = 9.80665


@pytest.fixture(scope="module")
def corner() -> HangingPlan:
    found = study(EXAMPLE)
    assert found.solved is not None
    plan = hanging_plan(found.project, found.solved.arrangement)
    assert plan is not None
    return plan


def plan_of(hanging: dict[str, Any], **changes: Any) -> HangingPlan:
    matter = make(changed(hanging=hanging, **changes)).matter
    plan = hanging_plan(matter.project, matter.arrangement)
    assert plan is not None
    return plan


def spans(*lengths: str, **more: Any) -> dict[str, Any]:
    return {"sag": "8 cm", "lines": [{"spans": list(lengths)}], **more}


def test_the_corner_has_ten_hooks_and_nine_spans(corner: HangingPlan) -> None:
    assert [hook.label for hook in corner.lines[0].hooks] == [f"H{number}" for number in range(1, 11)]
    assert len(corner.lines[0].spans) == 9
    assert corner.lines[0].runs == (0, 1)


def test_the_longest_span_has_the_sag_that_was_asked_for(corner: HangingPlan) -> None:
    assert corner.lines[0].longest.wire.sag_m == pytest.approx(0.06)


def test_all_spans_pull_alike(corner: HangingPlan) -> None:
    assert len({span.wire.c_m for span in corner.lines[0].spans}) == 1


def test_the_hook_in_the_corner_is_pulled_along_the_bisector(corner: HangingPlan) -> None:
    """H6: one span goes back in x, the other up in y, with one level pull H: (-H, H)."""
    pull = corner.pulls[0].hooks[5]
    level = corner.pulls[0].loads.worst * corner.lines[0].spans[0].wire.c_m
    assert (pull.x_n, pull.y_n) == pytest.approx((-level, level))


def test_a_hook_in_a_straight_row_bears_weight_alone(corner: HangingPlan) -> None:
    """H2 has equal spans on both sides: no level pull, and the load of one span."""
    pull = corner.pulls[0].hooks[1]
    assert pull.x_n == pytest.approx(0, abs=1e-9)
    assert pull.down_n == pytest.approx(corner.pulls[0].loads.worst * corner.lines[0].spans[0].length_m)


def test_one_side_alone_pulls_harder_than_both_together_in_a_straight_row(corner: HangingPlan) -> None:
    pull = corner.pulls[0].hooks[1]
    assert pull.worst_n == pull.alone_n > pull.together_n


def test_all_hooks_together_bear_the_whole_load(corner: HangingPlan) -> None:
    down = sum(pull.down_n for pull in corner.pulls[0].hooks)
    assert down == pytest.approx(corner.pulls[0].loads.worst * corner.lines[0].wire_m)


def test_the_limit_of_a_hook_is_half_its_rating(corner: HangingPlan) -> None:
    """Half the rating: common practice, no source."""
    assert corner.hook_limit_n == pytest.approx(3 * G)


def test_every_bulb_lies_on_its_span(corner: HangingPlan) -> None:
    """The way from the hook is the length of the curve up to the bulb, added up in short pieces."""
    line = corner.lines[0]
    for bulb in line.bulbs:
        if bulb.span is None:
            continue
        span = line.spans[bulb.span]
        level = math.hypot((bulb.x_m or 0) - span.first.x_m, (bulb.y_m or 0) - span.first.y_m)
        x = np.linspace(0, level, 400)
        curve = np.hypot(np.diff(x), np.diff(span.wire.height_m(x))).sum()
        assert curve == pytest.approx(bulb.from_m, abs=1e-6)


def test_bulbs_of_the_second_run_follow_those_of_the_first(corner: HangingPlan) -> None:
    along = [bulb.along_m for bulb in corner.lines[0].bulbs]
    assert [bulb.run for bulb in corner.lines[0].bulbs] == [0] * 22 + [1] * 20
    assert along == sorted(along)


def test_a_joint_takes_four_centimetres_of_the_tail(corner: HangingPlan) -> None:
    """Run 1 joins behind bulb 12: tail 50 cm less 2 cm of each cable; a gap, since it is not 25 cm."""
    gap = corner.lines[0].gaps[0]
    assert (gap.before, gap.after) == ((0, 12), (0, 13))
    assert gap.length_m == pytest.approx(0.46)


def test_the_second_run_starts_a_spacing_behind_the_cut(corner: HangingPlan) -> None:
    """Cut behind bulb 10 of the second string: one spacing to the next bulb, no gap."""
    line = corner.lines[0]
    assert line.bulbs[22].along_m - line.bulbs[21].along_m == pytest.approx(0.25)


def test_length_used_against_length_bought(corner: HangingPlan) -> None:
    """By hand: 4 strings of 0.50 + 11 x 0.25 m = 13 m bought; 48 bulbs bought, 42 used.

    Run 1: 0.5 + 11 x 0.25 + 0.5 + 9 x 0.25 = 6 m.
    Run 2: 2 x 0.25 + 0.5 + 11 x 0.25 + 0.5 + 5 x 0.25 = 5.5 m.
    """
    (usage,) = corner.usage
    assert usage.bought_m == pytest.approx(13.0)
    assert usage.used_m == pytest.approx(6.0 + 5.5)
    assert usage.joints_m == pytest.approx(3 * 0.04)
    assert usage.bulbs_left == 6


def test_the_lowest_point_is_under_the_lower_hooks(corner: HangingPlan) -> None:
    """By hand: spans at the hook of 2.55 m dip 6 cm below the middle of 2.55 and 2.6 m, more off it."""
    assert corner.lowest_m is not None
    assert 2.575 - 0.063 < corner.lowest_m < 2.575 - 0.06


def test_a_given_length_is_what_hangs() -> None:
    plan = plan_of({"lines": [{"spans": ["1 m", "2 m"], "length": "3.1 m"}]})
    assert plan.lines[0].wire_m == pytest.approx(3.1)


def test_a_sag_of_its_own_wins_over_that_of_the_plan() -> None:
    plan = plan_of({"sag": "8 cm", "lines": [{"spans": ["2 m", "2 m"], "sag": "5 cm"}]})
    assert plan.lines[0].longest.wire.sag_m == pytest.approx(0.05)


def test_bulb_1_is_at_the_first_hook_unless_the_tail_is() -> None:
    first = plan_of(spans("2 m", "2 m"))
    tail = plan_of(spans("2 m", "2 m", starts_at="tail"))
    assert first.lines[0].bulbs[0].along_m == 0
    assert tail.lines[0].bulbs[0].along_m == pytest.approx(0.5)


def test_bulbs_beyond_the_last_hook_have_no_place() -> None:
    """By hand: 12 bulbs are 11 x 25 cm = 2.75 m; a span of 2 m with 8 cm of sag takes 2.0085 m."""
    line = plan_of(spans("2 m")).lines[0]
    assert [bulb.bulb for bulb in line.beyond] == [10, 11, 12]
    assert line.spare_m == pytest.approx(2.0085 - 2.75, abs=1e-4)
    assert all(bulb.x_m is None for bulb in line.beyond)


def test_a_bulb_right_at_a_hook_hangs_there() -> None:
    line = plan_of(spans("2 m", "2 m")).lines[0]
    assert (line.bulbs[0].x_m, line.bulbs[0].span, line.bulbs[0].from_m) == (0, 0, 0)


def test_the_load_is_wire_and_bulbs() -> None:
    """By hand: 10 g/m; 12 bulbs of 2 g over 2.75 m are 8.727 g/m."""
    weights = {"wire_weight": "10 g/m", "bulb_weight": "2 g"}
    loads = plan_of(spans("1.5 m", "1.5 m", **weights)).pulls[0].loads
    assert loads.dead == pytest.approx(18.727e-3 * G, rel=1e-4)
    assert (loads.ice, loads.wind) == (0, 0)
    assert loads.worst == loads.dead


def test_extra_wire_hangs_with_the_lights() -> None:
    """By hand: 3 m of a pair of 0.5 mm2: 3e-6 m3 of copper at 8890 kg/m3, twice that with plastic: 53 g."""
    weights = {"wire_weight": "10 g/m", "bulb_weight": "2 g"}
    hung = spans("1.5 m", "1.5 m", **weights)
    without = plan_of(hung).pulls[0].loads.dead
    plan = plan_of(hung, runs=[fed("both ends")])
    assert plan.pulls[0].loads.dead - without == pytest.approx(0.05334 * G / plan.lines[0].wire_m)


def test_wind_and_ice_add_to_the_load() -> None:
    calm = plan_of(spans("2 m")).pulls[0].loads
    iced = plan_of(spans("2 m", ice="5 mm")).pulls[0].loads
    stormy = plan_of(spans("2 m", ice="5 mm", wind="20 m/s")).pulls[0].loads
    assert iced.worst == pytest.approx(calm.dead + iced.ice)
    assert stormy.worst == pytest.approx(math.hypot(calm.dead + iced.ice, stormy.wind))


def test_pulls_grow_with_the_load() -> None:
    calm, stormy = plan_of(spans("2 m")), plan_of(spans("2 m", wind="20 m/s"))
    ratio = stormy.pulls[0].loads.worst / calm.pulls[0].loads.worst
    assert stormy.tension_n == pytest.approx(ratio * calm.tension_n)


def test_the_end_pull_is_the_catenarys() -> None:
    plan = plan_of(spans("2 m"))
    wire, load = from_sag(2.0, 0.08), plan.pulls[0].loads.worst
    assert plan.pulls[0].hooks[0].worst_n == pytest.approx(math.hypot(*wire.ends_n(load)[0]))


def test_a_guide_wire_may_be_pulled_with_a_fifth_of_what_breaks_it() -> None:
    """A fifth: common practice for wire rope, no source."""
    plan = plan_of(spans("2 m", guide_wire="yes", guide_wire_strength="500 N"))
    assert plan.wire_limit_n == pytest.approx(100)


def test_without_a_guide_wire_the_copper_of_the_string_bears_the_lights() -> None:
    """By hand: 15 N/mm2 on two conductors of 0.14 mm2 are 4.2 N (DIN VDE 0298-3, from memory)."""
    assert plan_of(spans("2 m")).wire_limit_n == pytest.approx(4.2)


def test_a_two_way_string_has_no_gap_where_every_other_bulb_is_dark() -> None:
    plan = plan_of(spans("2 m", "2 m"), strings__drop__lit_on_dc="half")
    assert plan.lines[0].gaps == ()


def test_a_run_on_no_line_is_told() -> None:
    runs = [fed("one end", 6), {**fed("one end", 6), "name": "sill"}]
    plan = plan_of({"sag": "8 cm", "lines": [{"runs": ["sill"], "spans": ["2 m"]}]}, runs=runs)
    assert plan.not_hung == (0,)


def test_typical_weights_are_named() -> None:
    assert plan_of(spans("2 m")).typical == ("wire_weight", "bulb_weight")
    stated = plan_of(spans("2 m", wire_weight="10 g/m", bulb_weight="2 g"))
    assert stated.typical == ()


def test_heights_that_are_not_known_give_no_lowest_point() -> None:
    assert plan_of(spans("2 m")).lowest_m is None
    assert plan_of(spans("2 m", height="2.5 m")).lowest_m == pytest.approx(2.42)
