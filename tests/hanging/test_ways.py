"""Wire over the hooks of an L and of two rows; every distance by hand."""

from __future__ import annotations

from typing import Any

import pytest

from guidegen.hanging.lay import Laid, lay
from guidegen.hanging.routes import hung_route
from guidegen.hanging.supply import spot_of, ways_of, where_on_line
from guidegen.hanging.ways import Beside, OnLine, Ways
from guidegen.project.hung import Hanging
from guidegen.project.supply_at import AtHook, AtPoint
from tests.choose.making import project_with

#: Ten hooks in an L: six of them 1 m apart, then four more 1 m apart, square to them.
CORNER = [{"x": f"{x} m", "y": "0 m"} for x in range(6)] + [{"x": "5 m", "y": f"{y} m"} for y in range(1, 5)]
#: So taut that a metre of span is a metre of wire to 0.01 mm: 8/3 (1 mm / 1 m)^2.
TAUT = "1 mm"


def ways(*lines: list[dict[str, Any]]) -> Ways:
    hanging = Hanging.model_validate(
        {"sag": TAUT, "lines": [{"hooks": hooks, "runs": ["one"]} for hooks in lines]}
    )
    runs = [{"bulbs": 1, "name": "one"}] * len(lines)
    found = ways_of(project_with({"hanging": hanging, "runs": runs}))
    assert found is not None
    return found


def test_wire_follows_the_hooks_round_the_corner() -> None:
    found = ways(CORNER)
    assert found.way_m(OnLine(0, 0.0), OnLine(0, 9.0)) == pytest.approx(9.0, abs=1e-3)
    assert found.way_m(OnLine(0, 4.5), OnLine(0, 6.0)) == pytest.approx(1.5, abs=1e-3)


def test_a_hook_is_where_its_number_says() -> None:
    found = ways(CORNER)
    spot = spot_of(found, AtHook(7))
    assert isinstance(spot, OnLine)
    assert spot.along_m == pytest.approx(6.0, abs=1e-3)


def test_from_a_point_beside_the_hooks_wire_goes_to_the_nearest_and_on_along_them() -> None:
    # (4, 2) is 1 m from H8 (5, 2), which is 7 m along; H1 is 7 m farther back.
    spot = spot_of(ways(CORNER), AtPoint(4.0, 2.0))
    assert spot == Beside(4.0, 2.0)
    assert ways(CORNER).way_m(spot, OnLine(0, 0.0)) == pytest.approx(8.0, abs=1e-3)


def test_from_row_to_row_wire_goes_no_farther_straight_than_the_longest_span() -> None:
    # Rows 0.8 m apart: across from H1 to the hook below it, then 2 m along; not aslant over 2.15 m.
    rows = [[{"x": f"{x} m", "y": f"{y} m"} for x in range(4)] for y in (0.8, 0)]
    assert ways(*rows).way_m(OnLine(0, 0.0), OnLine(1, 2.0)) == pytest.approx(2.8, abs=1e-3)


def test_rows_far_apart_are_joined_by_the_shortest_crossing() -> None:
    rows = [[{"x": f"{x} m", "y": f"{y} m"} for x in range(4)] for y in (3, 0)]
    assert ways(*rows).way_m(OnLine(0, 0.0), OnLine(1, 2.0)) == pytest.approx(5.0, abs=1e-3)


def test_where_a_line_comes_back_to_itself_wire_goes_across() -> None:
    # A square of 1 m, its last hook 1 m from its first: 1 m across instead of 3 m round.
    square = [{"x": f"{x} m", "y": f"{y} m"} for x, y in ((0, 0), (1, 0), (1, 1), (0, 1))]
    assert ways(square).way_m(OnLine(0, 0.0), OnLine(0, 3.0)) == pytest.approx(1.0, abs=1e-3)


def test_a_path_names_the_hooks_it_passes() -> None:
    found = ways(CORNER)
    path = found.path(OnLine(0, 0.0), OnLine(0, 2.5))
    assert [round(each.along_m, 2) for each in path if isinstance(each, OnLine)] == [0, 1, 2, 2.5]


@pytest.mark.parametrize(
    ("feed", "turned", "feeder_m", "extra_m"),
    [
        # A run from 5 m to 9 m along the L, the supply at its first hook.
        ("one end", False, 5.0, 0.0),
        ("one end", True, 9.0, 0.0),
        ("opposite ends", False, 5.0, 4.0),
        ("both ends", True, 9.0, 4.0),
        ("middle", False, 5.0, 2.0),
    ],
)
def test_feeders_and_extra_wires_of_a_run_round_the_corner(
    feed: Any, turned: bool, feeder_m: float, extra_m: float
) -> None:
    laid = Laid(5.0, 9.0, turned)
    route = hung_route(ways(CORNER), OnLine(0, 0.0), feed, 0, laid, 2.0)
    assert (route.feeder_m, route.extra_m) == pytest.approx((feeder_m, extra_m), abs=0.011)


def test_a_middle_beside_the_supply_is_fed_straight_from_there() -> None:
    route = hung_route(ways(CORNER), OnLine(0, 6.0), "middle", 0, Laid(5.0, 9.0, False), 2.0)
    assert (route.feeder_m, route.extra_m) == pytest.approx((0.0, 1.0), abs=0.011)


def test_the_place_of_a_feed_is_named_by_its_hooks() -> None:
    found = ways(CORNER)
    assert where_on_line(found, OnLine(0, 2.0)) == "at H3"
    assert where_on_line(found, OnLine(0, 2.5)) == "between H3 and H4"
    assert where_on_line(found, OnLine(0, 9.0)) == "at H10"


def test_two_last_bulbs_that_meet_keep_a_spacing() -> None:
    first = lay(None, 3.0, 0.5, 0.25, turned=False)
    second = lay(first, 3.0, 0.5, 0.25, turned=True)
    # The first from -0.5 m to 2.5 m; the second a spacing on, its bulb 1 half a metre before its end.
    assert (first.start_m, first.end_m, second.start_m, second.end_m) == (-0.5, 2.5, 2.75, 5.75)
    assert second.at_m(0.5) == 5.25


def test_a_line_of_which_the_runs_are_not_all_hung_tells_no_distances() -> None:
    hanging = Hanging.model_validate({"sag": TAUT, "lines": [{"spans": ["1 m"], "runs": ["one"]}]})
    runs = [{"bulbs": 1, "name": "one"}, {"bulbs": 1, "name": "two"}]
    assert ways_of(project_with({"hanging": hanging, "runs": runs})) is None
