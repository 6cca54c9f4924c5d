"""The whole cut list: what lengths are made of, and totals with a reserve."""

from __future__ import annotations

from typing import Any

import pytest

from guidegen.hanging.make import hanging_plan
from guidegen.parts.cutlist import CutList, cut_list
from guidegen.parts.cuts import wire_cuts
from tests.guide.projects import changed, fed, make


def listed(guide_wire: str = "no", **changes: Any) -> CutList:
    hanging = {"sag": "8 cm", "guide_wire": guide_wire, "lines": [{"spans": ["1.5 m", "1.5 m"]}]}
    matter = make(changed(hanging=hanging, **changes)).matter
    plan = hanging_plan(matter.project, matter.arrangement)
    assert plan is not None
    return cut_list(matter.arrangement, plan)


def needed(cuts: CutList) -> dict[str, tuple[float, float]]:
    return {total.kind: (total.needed, total.buy) for total in cuts.totals}


def test_indoors_a_wire_is_its_route_and_both_ends() -> None:
    """2 m of feeder, and 10 cm at each end for strip, joint and strain relief."""
    (feeder,) = listed().pieces
    assert (feeder.ends_m, feeder.drip_m, feeder.cut_m) == pytest.approx((0.2, 0, 2.2))


def test_outdoors_a_drip_loop_is_added_at_each_end() -> None:
    (feeder,) = listed(place__exposure="sheltered outdoors").pieces
    assert (feeder.drip_m, feeder.cut_m) == pytest.approx((0.2, 2.4))


@pytest.mark.parametrize("exposure", ["indoors", "open outdoors"])
def test_the_list_and_the_parts_page_cut_the_same_lengths(exposure: str) -> None:
    made = make(changed(place__exposure=exposure, runs=[fed("both ends")]))
    cuts = listed(place__exposure=exposure, runs=[fed("both ends")])
    expected = [cut.cut_m for cut in wire_cuts(made.matter.arrangement)]
    assert [piece.cut_m for piece in cuts.pieces] == pytest.approx(expected)


def test_hooks_and_ties_are_counted_with_a_reserve() -> None:
    """Three hooks and a tie at each; 10 % more is 3.3, so 4."""
    assert needed(listed()) == {"hooks": (3, 4), "ties": (3, 4)}


def test_a_guide_wire_has_its_curve_and_two_loops() -> None:
    """Two spans of 1.5 m with 8 cm of sag: 3 m (1 + 8/3 (8/150)^2) = 3.0228 m, and 15 cm at each end."""
    (guide,) = listed("yes").guides
    assert guide.cut_m == pytest.approx(3.0228 + 0.30, abs=2e-4)


def test_lights_are_tied_to_a_guide_wire_every_30_centimetres() -> None:
    """By hand: 3.02 m over 0.3 m are 11 ties, and 3 at the hooks."""
    assert needed(listed("yes"))["ties"] == (14, 16)


def test_guide_wire_is_bought_in_half_metres_with_a_reserve() -> None:
    """By hand: 3.32 m and 10 % are 3.66 m."""
    assert needed(listed("yes"))["guide wire"][1] == 4.0
