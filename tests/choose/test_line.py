"""Where the runs lie and how long their wires are; all by hand."""

import pytest

from guidegen.choose.layouts import layouts
from guidegen.choose.line import Route, route, supply_position_m
from tests.choose.making import project_with


@pytest.mark.parametrize(("stated", "metres"), [("start", 0.0), ("middle", 5.0), (2.5, 2.5)])
def test_the_supply_meets_the_line_where_the_file_says(stated: str | float, metres: float) -> None:
    assert supply_position_m(stated, 10.0) == metres  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("feed", "expected"),
    [
        ("one end", Route(4.0, 0.0)),
        ("middle", Route(4.0, 1.5)),
        ("both ends", Route(4.0, 3.0)),
        ("opposite ends", Route(4.0, 3.0)),
    ],
)
def test_a_run_farther_on_needs_a_feeder_to_its_nearer_end(feed: str, expected: Route) -> None:
    assert route(feed, 4.0, 3.0, 1.5, 0.0) == expected  # type: ignore[arg-type]


def test_a_run_on_the_other_side_is_fed_at_its_other_end() -> None:
    assert route("one end", 0.0, 3.0, 1.5, 5.0) == Route(2.0, 0.0)


def test_a_middle_beside_the_supply_is_fed_straight_from_there() -> None:
    assert route("middle", 0.0, 6.0, 3.0, 2.0) == Route(0.0, 1.0)


def test_feeder_and_extra_wire_to_a_middle_are_its_distance_from_the_supply() -> None:
    found = route("middle", 4.0, 3.0, 1.5, 0.0)
    assert found.feeder_m + found.extra_m == 5.5  # 4 m to the run, 1.5 m to its middle


def test_lengths_are_rounded_up_to_a_centimetre() -> None:
    assert route("one end", 1.2341, 3.0, 1.5, 0.0).feeder_m == 1.24


def test_runs_lie_one_after_the_other() -> None:
    # Two strings of 6 bulbs, 50 cm tail and 5 x 25 cm: the second begins at 1.75 m.
    split = next(
        each
        for each in layouts(project_with())
        if [part.bulbs for part in each] == [6, 6] and {part.feed for part in each} == {"one end"}
    )
    assert [part.route.feeder_m for part in split] == [0.0, 1.75]


def test_with_the_supply_in_the_middle_both_feeders_are_short() -> None:
    project = project_with({"place.supply_at": "middle"})
    split = next(
        each
        for each in layouts(project)
        if [part.bulbs for part in each] == [6, 6] and {part.feed for part in each} == {"one end"}
    )
    assert [part.route.feeder_m for part in split] == [0.0, 0.0]


def test_runs_in_the_file_say_how_many_bulbs_are_used() -> None:
    project = project_with({"runs": [{"bulbs": 5, "string": "drop"}]})
    assert {sum(part.bulbs for part in each) for each in layouts(project)} == {5}
