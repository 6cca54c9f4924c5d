"""Single faults: solved as they should be, found again, and told apart by one more reading."""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from pathlib import Path

import numpy as np
import pytest
from numpy.testing import assert_allclose

from guidegen.bench.diagnose import Diagnosis, diagnose
from guidegen.bench.faults import Fault, families
from guidegen.bench.faulty import solve_faults
from guidegen.bench.spots import Spot, Taken, volts_at
from guidegen.bench.suspects import Suspects, suspects
from guidegen.circuit.arrangement import Arrangement
from guidegen.circuit.draws import RunDraws
from guidegen.circuit.solution import RunSolution, Solution
from guidegen.circuit.solve import solve
from guidegen.circuit.spread import expected_spread
from guidegen.circuit.variants import with_resistor
from guidegen.study import study
from tests.bench.faulty_builds import usual_spots

SAMPLE = Path(__file__).parents[2] / "sample_project" / "potting-bench.yaml"
BACK, FRONT = 0, 1


@cache
def built() -> tuple[Arrangement, Solution, Suspects]:
    """The sample build and its suspects."""
    solved = study(SAMPLE).solved
    assert solved is not None
    arrangement, nominal = solved.arrangement, solved.solution
    scatter = expected_spread(arrangement, nominal).draws
    return arrangement, nominal, suspects(arrangement, nominal, scatter, (BACK, FRONT))


def faulty(*faults: Fault) -> tuple[RunDraws, RunDraws]:
    arrangement, nominal, _ = built()
    runs = solve_faults(arrangement, nominal, faults).runs
    return runs[0], runs[1]


def same(run: RunDraws, solved: RunSolution) -> None:
    """The first state is this solution, to far below what a meter shows."""
    assert run.current_a[0] == pytest.approx(solved.current_a, rel=1e-5)
    assert run.after_resistor_v[0] == pytest.approx(solved.after_resistor_v, rel=1e-5)
    assert_allclose(run.bulb_v[0], solved.bulb_v, rtol=1e-5)


def test_another_resistor_is_the_arrangement_with_that_resistor() -> None:
    arrangement, _, _ = built()
    expected = solve(with_resistor(arrangement, BACK, 12.0))
    for run, solved in zip(faulty(Fault("resistor value", BACK, amount=12.0)), expected.runs, strict=True):
        same(run, solved)


def test_another_supply_is_the_arrangement_with_that_supply() -> None:
    arrangement, _, _ = built()
    supply = replace(arrangement.supply, voltage_v=1.2 * arrangement.supply.voltage_v)
    expected = solve(replace(arrangement, supply=supply))
    for run, solved in zip(faulty(Fault("supply", amount=1.2)), expected.runs, strict=True):
        same(run, solved)


def test_dead_leds_leave_fewer_groups() -> None:
    arrangement, _, _ = built()
    run = replace(arrangement.runs[BACK], lit_groups=0.75 * arrangement.runs[BACK].lit_groups)
    expected = solve(replace(arrangement, runs=(run, arrangement.runs[FRONT])))
    same(faulty(Fault("dead leds", BACK, amount=0.25))[BACK], expected.runs[BACK])


def test_more_bulbs_are_a_longer_run_whose_last_bulb_is_read() -> None:
    arrangement, _, _ = built()
    plan = arrangement.runs[BACK]
    longer = replace(
        plan,
        segment_m=np.append(plan.segment_m, [plan.segment_m[-1]] * 3),
        lit_groups=np.append(plan.lit_groups, [3.0] * 3),
        position_m=np.append(plan.position_m, [plan.position_m[-1]] * 3),
    )
    expected = solve(replace(arrangement, runs=(longer, arrangement.runs[FRONT]))).runs[BACK]
    found = faulty(Fault("more bulbs", BACK, amount=3.0))[BACK]
    assert found.current_a[0] == pytest.approx(expected.current_a, rel=1e-5)
    assert_allclose(found.bulb_v[0], np.append(expected.bulb_v[:23], expected.bulb_v[26]), rtol=1e-5)


def test_a_reversed_string_is_dark_and_still_carries() -> None:
    arrangement, _, _ = built()
    plan = arrangement.runs[FRONT]
    dark = replace(plan, lit_groups=np.where(np.arange(24) < 12, 0.0, plan.lit_groups))
    expected = solve(replace(arrangement, runs=(arrangement.runs[BACK], dark))).runs[FRONT]
    same(faulty(Fault("reversed", FRONT, piece=0))[FRONT], expected)


def two_way(lit_groups: np.ndarray) -> Arrangement:
    """The sample build, its front run of two-way strings."""
    arrangement, _, _ = built()
    front = replace(arrangement.runs[FRONT], lit_groups=lit_groups)
    return replace(arrangement, runs=(arrangement.runs[BACK], front))


def test_a_reversed_two_way_string_lights_its_other_bulbs() -> None:
    """Lit as bought are 1, 3, 5, ... of each 12; turned round, 2, 4, 6, ... of the first string."""
    odd = np.arange(24) % 2 == 0
    groups = built()[0].runs[FRONT].groups
    arrangement = two_way(np.where(odd, groups, 0.0))
    turned = two_way(np.where(np.where(np.arange(24) < 12, ~odd, odd), groups, 0.0))
    states = solve_faults(arrangement, solve(arrangement), (Fault("reversed", FRONT, piece=0),))
    same(states.runs[FRONT], solve(turned).runs[FRONT])


def test_where_half_of_each_bulb_lights_no_reading_can_tell_a_reversed_string() -> None:
    half = two_way(np.full(24, built()[0].runs[FRONT].groups / 2))
    found = {(family.head.kind, family.head.run) for family in families(half, (BACK, FRONT), currents=True)}
    assert ("reversed", BACK) in found
    assert ("reversed", FRONT) not in found


def test_behind_a_break_there_are_no_volts_and_no_current() -> None:
    # Opposite ends: plus broken behind bulb 10 leaves bulbs 11 to 24 without plus.
    run = faulty(Fault("open", BACK, place="behind bulb", rail="plus", bulb=10))[BACK]
    assert np.all(run.bulb_v[0, 10:] == 0)
    assert np.all(run.led_a[0, 10:] == 0)
    assert np.all(run.led_a[0, :10] > 0)


def test_minus_broken_in_a_run_fed_at_opposite_ends_puts_out_the_other_side() -> None:
    run = faulty(Fault("open", BACK, place="behind bulb", rail="minus", bulb=10))[BACK]
    assert np.all(run.bulb_v[0, :10] == 0)
    assert np.all(run.led_a[0, 10:] > 0)


def test_a_resistor_off_its_leg_leaves_nothing_behind_it() -> None:
    run = faulty(Fault("open", BACK, place="ahead of resistor", rail="both"))[BACK]
    assert run.current_a[0] == 0
    assert run.after_resistor_v[0] == 0


def test_a_bad_joint_in_the_feeder_takes_volts_by_ohm_s_law() -> None:
    arrangement, _, _ = built()
    # The feeder's ohms lie in series with the resistor: 12 ohm instead of 10 carry the same current.
    expected = solve(with_resistor(arrangement, BACK, 12.0)).runs[BACK]
    run = faulty(Fault("joint", BACK, place="feeder", amount=2.0))[BACK]
    assert run.current_a[0] == pytest.approx(expected.current_a, rel=1e-5)
    assert run.after_resistor_v[0] == pytest.approx(
        expected.after_resistor_v + 2 * expected.current_a, rel=1e-5
    )


def test_there_is_a_suspect_of_every_kind_in_every_run() -> None:
    arrangement, _, _ = built()
    kinds = {(family.head.kind, family.head.run) for family in families(arrangement, (0, 1), currents=True)}
    in_runs = {"resistor value", "resistor decade", "joint", "open", "reversed", "dead leds", "more bulbs"}
    assert {(kind, run) for kind in in_runs for run in (BACK, FRONT)} <= kinds
    assert {("supply", None), ("meter burden", None)} <= kinds


def read(fault: Fault, spots: tuple[Spot, ...]) -> tuple[Taken, ...]:
    """Exact readings of the build with this fault."""
    arrangement, nominal, _ = built()
    states = solve_faults(arrangement, nominal, (fault,))
    return tuple(Taken(spot, float(volts_at(states, spot)[0])) for spot in spots)


def found(fault: Fault, spots: tuple[Spot, ...] | None = None) -> Diagnosis:
    arrangement, _, known = built()
    return diagnose(known, read(fault, spots or usual_spots(arrangement)))


FAULTS = (
    Fault("resistor decade", FRONT, amount=100.0),
    Fault("supply", amount=1.25),
    Fault("reversed", FRONT, piece=1),
    Fault("open", BACK, place="behind bulb", rail="plus", bulb=7),
    Fault("joint", FRONT, place="behind bulb", rail="minus", bulb=12, amount=8.0),
    Fault("dead leds", BACK, amount=0.5),
    Fault("more bulbs", BACK, amount=16.0),
)


@pytest.mark.parametrize("fault", FAULTS, ids=lambda fault: fault.kind)
def test_a_fault_read_without_error_comes_first_and_fits(fault: Fault) -> None:
    first = found(fault).causes[0]
    same_kind = [
        each for each in (first.fault, *first.twins) if (each.kind, each.run) == (fault.kind, fault.run)
    ]
    assert same_kind
    assert first.fit > 0.5


def test_the_size_of_a_fault_is_found_too() -> None:
    assert found(Fault("dead leds", BACK, amount=0.5)).causes[0].fault.amount == pytest.approx(0.5, abs=0.1)
    assert found(Fault("supply", amount=1.25)).causes[0].fault.amount == pytest.approx(1.25, abs=0.02)


def test_the_place_of_a_break_is_told_as_far_as_the_readings_tell() -> None:
    cause = found(Fault("open", BACK, place="behind bulb", rail="plus", bulb=7)).causes[0]
    assert cause.first.bulb <= 7 <= cause.last.bulb


WITHOUT_BULBS = (Spot("resistor volts", BACK), Spot("after resistor", BACK))


def test_without_a_bulb_read_it_cannot_tell_and_asks_for_one() -> None:
    diagnosis = found(Fault("dead leds", BACK, amount=0.6), WITHOUT_BULBS)
    assert not diagnosis.can_tell
    assert diagnosis.deciding is not None
    assert diagnosis.deciding.spot.kind == "bulb"


def test_with_a_bulb_read_it_can_tell() -> None:
    spots = (*WITHOUT_BULBS, Spot("bulb", BACK, 24))
    assert found(Fault("dead leds", BACK, amount=0.6), spots).can_tell


def test_the_deciding_reading_tells_the_two_apart_beyond_the_meter_s_error() -> None:
    deciding = found(Fault("dead leds", BACK, amount=0.6), WITHOUT_BULBS).deciding
    assert deciding is not None
    # Three standard uncertainties of 0.5 % + 2 digits of 10 mV (at 3 V 35 mV) over the root of three: 60 mV.
    assert abs(deciding.if_first - deciding.if_second) > 0.05
    assert deciding.spot not in WITHOUT_BULBS


def test_the_deciding_reading_shows_what_each_fault_leaves_there() -> None:
    deciding = found(Fault("dead leds", BACK, amount=0.6), WITHOUT_BULBS).deciding
    assert deciding is not None
    arrangement, nominal, _ = built()
    states = solve_faults(arrangement, nominal, (deciding.first, deciding.second))
    assert_allclose(volts_at(states, deciding.spot), [deciding.if_first, deciding.if_second], atol=1e-4)


def test_causes_that_no_reading_tells_apart_are_one() -> None:
    # A meter of 8 ohm left ahead of the resistor and a joint of 8 ohm there are the same circuit.
    cause = found(Fault("meter burden", BACK, place="ahead of resistor", amount=8.0)).causes[0]
    kinds = {(each.kind, each.place) for each in (cause.fault, *cause.twins)}
    assert {("meter burden", "ahead of resistor"), ("joint", "ahead of resistor")} <= kinds


def test_a_dead_supply_and_a_blown_fuse_are_told_apart_at_the_supply() -> None:
    arrangement, _, known = built()
    dark = tuple(Taken(spot, 0.0) for spot in usual_spots(arrangement))
    diagnosis = diagnose(known, dark)
    first = diagnosis.causes[0]
    assert {(each.kind, each.place) for each in (first.fault, *first.twins)} == {
        ("supply", None),
        ("open", "lead"),
    }
    assert diagnosis.deciding is not None
    assert diagnosis.deciding.spot == Spot("supply")


def test_weights_are_shares_of_one() -> None:
    causes = found(FAULTS[0]).causes
    assert sum(cause.weight for cause in causes) <= 1 + 1e-9
    assert [cause.weight for cause in causes] == sorted((cause.weight for cause in causes), reverse=True)


def test_two_faults_at_once_fit_no_single_cause() -> None:
    arrangement, _, known = built()
    spots = usual_spots(arrangement)
    one = read(Fault("open", BACK, place="behind bulb", rail="plus", bulb=7), spots)
    other = read(Fault("resistor decade", FRONT, amount=100.0), spots)
    mixed = tuple(a if a.spot.run == BACK else b for a, b in zip(one, other, strict=True))
    assert diagnose(known, mixed).causes[0].fit < 0.001
