"""Readings of states that only a step makes: solved with the step's own resistor."""

from __future__ import annotations

import pytest

from guidegen.calc.preferred import is_preferred
from guidegen.circuit.solve import solve
from guidegen.circuit.variants import only_run, with_resistor
from guidegen.guide.format import metered
from guidegen.guide.predicted import first_power, resistance
from guidegen.guide.steps.cold_test import between_ends, minus_way, plus_way
from tests.guide.projects import FEEDER, Made, changed, fed, make


def test_the_larger_resistor_is_a_preferred_value_three_to_ten_times_the_own(bench: Made) -> None:
    for index, run in enumerate(bench.matter.runs):
        ohm = first_power(bench.matter.arrangement, index, bench.matter.solution).ohm
        assert is_preferred("E12", ohm)
        assert 3 * run.resistor.ohm <= ohm <= 10 * run.resistor.ohm


def test_first_power_is_solved_for_the_run_alone_with_that_resistor(bench: Made) -> None:
    for index in range(len(bench.matter.runs)):
        test = first_power(bench.matter.arrangement, index, bench.matter.solution)
        alone = only_run(with_resistor(bench.matter.arrangement, index, test.ohm), index)
        solved = solve(alone).runs[0]
        assert test.resistor_v.expected == pytest.approx(solved.resistor_v, rel=1e-9)
        assert test.after_resistor_v.expected == pytest.approx(solved.after_resistor_v, rel=1e-9)


def test_the_step_shows_what_was_solved(bench: Made) -> None:
    test = first_power(bench.matter.arrangement, 0, bench.matter.solution)
    over, behind = bench.step("larger-resistor-run-1").checks
    for check, reading in ((over, test.resistor_v), (behind, test.after_resistor_v)):
        assert check.expected == metered(reading.expected, reading.low, reading.high, "V")


def test_less_flows_through_the_larger_resistor(all_guides: tuple[Made, ...]) -> None:
    for made in all_guides:
        for index, solved in enumerate(made.matter.solution.runs):
            test = first_power(made.matter.arrangement, index, made.matter.solution)
            assert test.resistor_v.expected / test.ohm < 0.6 * solved.current_a


def test_ranges_hold_what_is_expected(all_guides: tuple[Made, ...]) -> None:
    for made in all_guides:
        for index in range(len(made.matter.runs)):
            test = first_power(made.matter.arrangement, index, made.matter.solution)
            for reading in (test.resistor_v, test.after_resistor_v):
                assert reading.low < reading.expected < reading.high


def test_on_the_bench_an_led_gets_no_more_than_in_the_run(all_guides: tuple[Made, ...]) -> None:
    """The resistor is the next preferred value up, so the current is lower; 5 % for the wire."""
    for made in all_guides:
        for name, power in made.matter.bench_powers.items():
            index = made.matter.first_run_of(name)
            kind = made.matter.project.strings[name]
            lit = kind.bulbs if kind.lit_on_dc == "all" else (kind.bulbs + 1) // 2
            led_a = power.resistor_v.expected / power.ohm / (lit * kind.groups)
            assert led_a <= 1.05 * made.matter.solution.runs[index].mean_led_a


def test_ohms_of_the_plus_way_are_resistor_and_feeder() -> None:
    """15 ohm + 2 m of 0.5 mm2 (2 x 0.034483) = 15.0690 ohm up to the joint, by hand."""
    run = make(changed(runs=[fed("one end")])).matter.runs[0]
    assert plus_way(run).expected == pytest.approx(15.0690, abs=1e-4)
    assert minus_way(run).expected == pytest.approx(0.0690, abs=1e-4)


def test_ohms_at_opposite_ends_run_through_the_extra_wire() -> None:
    """Minus: 2 m and 3 m of 0.5 mm2 = 5 x 0.034483 = 0.1724 ohm, by hand."""
    run = make(changed(runs=[fed("opposite ends")])).matter.runs[0]
    assert minus_way(run).expected == pytest.approx(0.1724, abs=1e-4)


def test_a_meter_widens_a_range_of_ohms() -> None:
    """10 ohm +-0.5: 1 % and 3 steps of 0.1 ohm (tables.limits.METER_OHMS): 9.105 to 10.905, by hand."""
    reading = resistance(10.0, 9.5, 10.5)
    assert (reading.low, reading.high) == pytest.approx((9.105, 10.905))


def test_between_the_joints_the_extra_pair_lies_beside_the_string() -> None:
    """By hand: (0.5 + 11 x 0.25) m x 0.123153 = 0.40025 beside 3 m x 0.034483 = 0.10345: 0.08220 ohm."""
    run = make(changed(runs=[fed("both ends")])).matter.runs[0]
    assert between_ends(run).expected == pytest.approx(0.08220, abs=1e-4)


def twelve_volts(**run: object) -> Made:
    """A 12 V string of three LEDs in series on a strong supply."""
    project = changed(supply__voltage="12 V", supply__rated_current="5 A", fuse="1.25 A")
    project["strings"]["drop"].update({"leds_in_series": 3, "group_resistor": "220 ohm"})
    project["runs"] = [{"name": "shelf", "bulbs": 12, "feeder": FEEDER, **run}]
    return make(project)


@pytest.mark.parametrize("resistor", ["none", "22 ohm", "1 ohm"])
def test_test_resistors_bear_a_lasting_short(resistor: str) -> None:
    """12.6 V; the fuse holds up to 2.1 x 1.25 A = 2.625 A, less than the supply's 5 A; by hand."""
    made = (
        twelve_volts(resistor=resistor, resistor_rating="10 W")
        if resistor != "none"
        else twelve_volts(resistor="none")
    )
    for power in (*made.matter.first_powers, *made.matter.bench_powers.values()):
        low = 0.95 * power.ohm
        lasting_w = min(2.625, 12.6 / low) ** 2 * low
        assert power.trial.shorted_w == pytest.approx(lasting_w)
        assert lasting_w <= 10.0
    bought = [each for each in made.page("parts-and-tools.html").buy if each.name == "Test resistor"]
    assert bought


def test_the_bared_bulb_of_the_bench_string_is_solved(bench: Made) -> None:
    """Less than right behind the resistor by the string's own drop."""
    (power,) = bench.matter.bench_powers.values()
    assert power.bulb_v is not None
    assert 0 < power.after_resistor_v.expected - power.bulb_v.expected < 0.2
