"""Stated lengths of wire beside their ways over a row of hooks; every way by hand.

Six hooks 1 m apart carry one run of six bulbs, 25 cm apart, its bulb 1 at H1:
its last bulb is at 1.25 m, the one in its middle, bulb 3, at 0.5 m.  A metre
of span is a metre of wire to 0.01 mm, and ways are rounded up to centimetres.
"""

from __future__ import annotations

from typing import Any

import pytest

from guidegen.circuit.arrange import arrange
from guidegen.circuit.cells import led_limits
from guidegen.hanging.advice import supply_paths, supply_wires
from guidegen.hanging.lengths import StatedLengths, stated_lengths
from guidegen.hanging.make import hanging_plan
from guidegen.project.schema import Project
from guidegen.project.supply_at import AtHook
from guidegen.study import fit_leds
from tests.choose.making import project_with

ROW: dict[str, Any] = {"sag": "1 mm", "lines": [{"spans": ["1 m"] * 5}]}
RUN: dict[str, Any] = {"name": "one", "string": "drop", "bulbs": 6, "feed": "one end", "resistor": "10 ohm"}
#: Rounding up, and what the sag takes.
NEAR = 0.0101


def wire(length: str) -> dict[str, Any]:
    return {"length": length, "wire": {"area": "0.5 mm2"}}


FEEDER, EXTRA = {"feeder": wire("2 m")}, {"extra_wire": wire("3 m")}


def row(supply_at: Any = "H4", hanging: Any = ROW, **run: Any) -> Project:
    changes = {"hanging": hanging, "runs": [RUN | run], "place.supply_at": supply_at}
    return project_with({key: value for key, value in changes.items() if value is not None})


def lengths(project: Project) -> StatedLengths | None:
    leds = fit_leds(project)
    return stated_lengths(project, arrange(project, leds, led_limits(project, leds)))


def ways(project: Project) -> dict[str, tuple[float, float]]:
    found = lengths(project)
    assert found is not None
    return {each.wire: (each.stated_m, each.way_m) for each in found.wires}


def test_the_feeders_way_is_from_the_supply_to_the_fed_end() -> None:
    assert ways(row(**FEEDER)) == {"feeder": (2.0, pytest.approx(3.0, abs=NEAR))}


def test_a_run_hung_last_bulb_first_is_fed_at_its_other_end() -> None:
    # Its tail of 0.5 m is behind bulb 1 now: it ends at 1.25 + 0.5 m, and H4 is 1.25 m farther.
    found = ways(row(first_hung="last bulb", **FEEDER))
    assert found == {"feeder": (2.0, pytest.approx(1.25, abs=NEAR))}


def test_the_extra_wires_way_is_from_end_to_end() -> None:
    found = ways(row(feed="opposite ends", **FEEDER, **EXTRA))
    assert found["extra"] == (3.0, pytest.approx(1.25, abs=NEAR))


def test_without_a_feeder_the_extra_wire_begins_at_the_supply() -> None:
    found = ways(row(feed="opposite ends", **EXTRA))
    assert found == {"extra": (3.0, pytest.approx(3 - 1.25, abs=NEAR))}


def test_feeder_and_extra_wire_to_a_middle_count_together() -> None:
    found = ways(row(feed="middle", **FEEDER, **EXTRA))
    assert found == {"to middle": (5.0, pytest.approx(3 - 0.5, abs=2 * NEAR))}


def test_without_a_feeder_the_extra_wire_goes_all_the_way_to_a_middle() -> None:
    assert ways(row(feed="middle", **EXTRA)) == {"extra": (3.0, pytest.approx(3 - 0.5, abs=2 * NEAR))}


def test_a_run_without_wires_of_its_own_has_no_lengths() -> None:
    assert ways(row()) == {}


@pytest.mark.parametrize("places", [("H6", "H2"), ("H2", "H6"), ("middle", "H2", "H3")])
def test_of_several_places_the_one_with_the_least_wire_counts(places: tuple[str, ...]) -> None:
    project = row(places, **FEEDER)
    found = lengths(project)
    assert found is not None
    assert found.place == AtHook(2)
    assert ways(project)["feeder"] == (2.0, pytest.approx(1.0, abs=NEAR))


@pytest.mark.parametrize("feed", ["one end", "middle", "both ends", "opposite ends"])
@pytest.mark.parametrize("hung", ["first bulb", "last bulb"])
def test_place_and_ways_are_those_of_the_drawing(feed: str, hung: str) -> None:
    project = row(("H6", "H3", "H2"), feed=feed, first_hung=hung, **FEEDER, **EXTRA)
    leds = fit_leds(project)
    arrangement = arrange(project, leds, led_limits(project, leds))
    plan = hanging_plan(project, arrangement)
    assert plan is not None
    drawn, found = supply_paths(project, arrangement, plan), stated_lengths(project, arrangement)
    assert found is not None
    there = next(each for each in supply_wires(project, arrangement, plan) if each.place == found.place)
    assert there.spot == drawn.spot
    assert sum(each.way_m for each in found.wires) == pytest.approx(there.as_hung_m)


def test_nothing_is_known_without_a_plan() -> None:
    assert lengths(row("start", None, **FEEDER)) is None


def test_nothing_is_known_where_lines_have_spans_alone() -> None:
    lines = [{"spans": ["1 m"] * 5, "runs": ["one"]}, {"spans": ["1 m"], "runs": []}]
    assert lengths(row("start", {"sag": "1 mm", "lines": lines}, **FEEDER)) is None
