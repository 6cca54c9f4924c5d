"""Which bulb of which bought string ends up where, and with how much wire in front of it."""

from pathlib import Path

import pytest
from numpy.testing import assert_allclose

from guidegen.circuit.arrangement import Piece, RunPlan
from guidegen.study import Solved
from tests.safety.projects import GONE, study_of

FEEDER = {"length": "2 m", "wire": {"area": "0.5 mm2"}}


def solved(tmp_path: Path, changes: dict[str, object]) -> Solved:
    found = study_of(tmp_path, changes).solved
    assert found is not None
    return found


def runs(tmp_path: Path, *sizes: int, **string: object) -> tuple[RunPlan, ...]:
    """Runs of these sizes from three strings of ten bulbs, spacing 10 cm, tail 30 cm."""
    changes: dict[str, object] = {f"strings.drop.{key}": value for key, value in string.items()}
    changes |= {"strings.drop.bought": 3, "runs": [{"bulbs": size, "resistor": "68 ohm"} for size in sizes]}
    return solved(tmp_path, changes).arrangement.runs


def test_bulbs_are_taken_from_the_strings_in_order(tmp_path: Path) -> None:
    first, second = runs(tmp_path, 12, 15)
    assert first.pieces == (Piece(1, 1, 10, 10), Piece(2, 1, 2, 10))
    assert second.pieces == (Piece(2, 3, 10, 10), Piece(3, 1, 7, 10))
    assert [piece.cut_behind for piece in second.pieces] == [False, True]


def test_the_tail_of_a_joined_string_lies_between_its_neighbours(tmp_path: Path) -> None:
    (run,) = runs(tmp_path, 12)
    assert_allclose(run.segment_m, [0.3] + [0.1] * 9 + [0.3, 0.1])
    assert run.joins == (10,)
    assert_allclose(run.position_m[[0, 9, 10, 11]], [0.3, 1.2, 1.5, 1.6])


def test_a_run_that_begins_inside_a_string_gets_one_spacing_as_its_lead_in(tmp_path: Path) -> None:
    _first, second = runs(tmp_path, 12, 6)
    assert_allclose(second.segment_m, [0.1] * 6)


def test_a_tail_left_out_is_one_spacing(tmp_path: Path) -> None:
    found = solved(tmp_path, {"strings.drop.tail": GONE})
    assert_allclose(found.arrangement.runs[0].segment_m, [0.1] * 10)


def test_a_measured_conductor_is_spread_along_tail_and_spacings(tmp_path: Path) -> None:
    # By hand: (1.4 - 0.2) ohm over 0.3 m + 9 x 0.1 m = 1 ohm/m.
    (run,) = runs(tmp_path, 10, wire={"one_conductor": "1.4 ohm", "meter_leads": "0.2 ohm"})
    assert_allclose(run.conductor.ohm_per_m, 1.0)
    (run,) = runs(tmp_path, 10, wire={"loop": "2.6 ohm", "meter_leads": "0.2 ohm"})
    assert_allclose(run.conductor.ohm_per_m, 1.0)
    assert run.conductor.measured
    assert run.conductor.inferred


def test_wire_by_area_or_gauge_has_the_resistance_of_copper(tmp_path: Path) -> None:
    # IEC 60028: rho20 = 1/58 ohm mm2/m, so 0.5 mm2 has 34.48 mohm/m.  AWG 28: 64.90 ohm per 1000 ft (Floyd).
    (run,) = runs(tmp_path, 10, wire={"area": "0.5 mm2"})
    assert_allclose(run.conductor.ohm_per_m, 1 / 58 / 0.5, rtol=1e-12)
    (run,) = runs(tmp_path, 10, wire={"gauge": "28 AWG"})
    assert_allclose(run.conductor.ohm_per_m, 64.90 / 304.8, rtol=3e-4)


def test_half_lit_strings_light_the_odd_bulbs_of_the_string_as_bought(tmp_path: Path) -> None:
    first, second = runs(tmp_path, 7, 7, lit_on_dc="half")
    assert list(first.lit_groups > 0) == [True, False, True, False, True, False, True]
    # Bulb 8, 9, 10 of string 1, then 1 to 4 of string 2.
    assert list(second.lit_groups > 0) == [False, True, False, True, False, True, False]


def test_half_of_each_bulb_lights_half_the_groups(tmp_path: Path) -> None:
    (run,) = runs(tmp_path, 10, lit_on_dc="half of each bulb", leds_per_bulb=6, leds_in_series=1)
    assert_allclose(run.lit_groups, 3.0)
    assert_allclose(run.leds_lit, 3.0)


def test_groups_are_leds_over_leds_in_series(tmp_path: Path) -> None:
    changes: dict[str, object] = {
        "strings.drop.leds_per_bulb": 6,
        "strings.drop.leds_in_series": 3,
        "strings.drop.group_resistor": "150 ohm",
        "supply.voltage": "12 V",
    }
    run = solved(tmp_path, changes).arrangement.runs[0]
    assert (run.groups, run.leds_in_series, run.group_ohm) == (2, 3, 150.0)
    assert_allclose(run.leds_lit, 6.0)


def test_a_run_without_a_resistor_has_none(tmp_path: Path) -> None:
    run = solved(
        tmp_path,
        {"runs": [{"bulbs": 10, "resistor": "none"}], "strings.drop.group_resistor": "220 ohm"},
    ).arrangement.runs[0]
    assert not run.resistor.fitted
    assert run.resistor.ohm == 0.0


def test_a_lead_of_no_length_is_no_lead(tmp_path: Path) -> None:
    found = solved(tmp_path, {"supply.lead": FEEDER | {"length": "0 m"}})
    assert found.arrangement.supply.lead is None


def test_the_maximum_left_out_is_what_fresh_cells_drive(tmp_path: Path) -> None:
    # By hand: more cells behind the same resistor drive more current.
    def limit_a(cells: int) -> float:
        changes: dict[str, object] = {
            "strings.drop.max_led_current": GONE,
            "strings.drop.came_with": {"cells": cells, "size": "AA", "resistor": "15 ohm"},
            "runs.0.resistor": "1 kohm",
        }
        limit = solved(tmp_path, changes).arrangement.runs[0].led_limit
        assert limit.source == "cells"
        return limit.current_a

    assert 1e-4 < limit_a(2) < limit_a(3) < 0.1


def test_points_are_numbered_once_and_depend_on_the_arrangement_alone(tmp_path: Path) -> None:
    found = solved(
        tmp_path,
        {
            "runs": [
                {"bulbs": 9, "resistor": "68 ohm", "feed": "middle", "extra_wire": FEEDER},
                {"bulbs": 1, "resistor": "none"},
            ]
        },
    )
    places = [(point.label, point.kind, point.run, point.bulb) for point in found.points]
    # Lead-in, tap and cut end show metal; the second run ends the string, as its maker closed it.
    assert places == [
        ("T1", "supply", None, None),
        ("T2", "resistor volts", 0, None),
        ("T3", "after resistor", 0, None),
        ("T4", "bulb", 0, 1),
        ("T5", "bulb", 0, 5),
        ("T6", "bulb", 0, 9),
        ("T7", "after resistor", 1, None),
    ]


@pytest.mark.parametrize("feed", ["middle", "both ends", "opposite ends"])
def test_every_feed_but_one_end_uses_its_extra_wire(tmp_path: Path, feed: str) -> None:
    def light(extra: str) -> float:
        changes: dict[str, object] = {
            "runs": [
                {
                    "bulbs": 10,
                    "feed": feed,
                    "resistor": "68 ohm",
                    "extra_wire": {"length": extra, "wire": {"area": "0.05 mm2"}},
                }
            ]
        }
        return solved(tmp_path, changes).solution.supply_a

    assert light("1 m") > light("40 m")
