"""What to fit when a reader's supply or string differs."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise
from pathlib import Path

import pytest

from guidegen.calc.preferred import between
from guidegen.choose.differing import string_table, supply_readings_v, supply_table, told_apart
from guidegen.circuit.arrange import string_alone
from guidegen.circuit.arrangement import Arrangement, Fuse
from guidegen.circuit.meter import Meter
from guidegen.circuit.solve import solve
from guidegen.circuit.variants import with_resistors
from guidegen.study import Solved, Study, study

SAMPLE = Path(__file__).parents[2] / "sample_project" / "potting-bench.yaml"
TEST_OHM = 15.0


@pytest.fixture(scope="module")
def sample() -> Study:
    return study(SAMPLE)


@pytest.fixture(scope="module")
def solved(sample: Study) -> Solved:
    assert sample.solved is not None
    return sample.solved


def test_supplies_sold_as_five_volts_read_4_75_to_5_5() -> None:
    readings = supply_readings_v(5.1)
    assert (readings[0], readings[-1]) == (4.75, 5.5)


def test_other_supplies_read_ten_percent_either_way() -> None:
    assert supply_readings_v(12.0) == (10.8, 11.4, 12.0, 12.6, 13.2)


def test_at_the_makers_own_volts_the_makers_resistors_come_out(solved: Solved) -> None:
    rows = supply_table(solved.arrangement, solved.solution, 0.5)
    own = next(row for row in rows if row.supply_v == 5.1)
    assert [fit.resistor_ohm for fit in own.fits] == [run.resistor.ohm for run in solved.arrangement.runs]
    assert [fit.led_a for fit in own.fits] == pytest.approx([run.mean_led_a for run in solved.solution.runs])


def test_more_volts_never_ask_for_a_smaller_resistor(solved: Solved) -> None:
    rows = supply_table(solved.arrangement, solved.solution, 0.5)
    for run in range(2):
        ohms = [row.fits[run].resistor_ohm for row in rows]
        assert ohms == sorted(ohms)
        assert ohms[0] < ohms[-1]


def test_no_row_gives_the_leds_more_than_the_maker_gives_his(solved: Solved) -> None:
    for row in supply_table(solved.arrangement, solved.solution, 0.5):
        for fit, run in zip(row.fits, solved.solution.runs, strict=True):
            assert fit.led_a <= run.mean_led_a * (1 + 1e-8)


def test_a_row_is_what_solving_with_its_resistors_and_volts_gives(solved: Solved) -> None:
    row = supply_table(solved.arrangement, solved.solution, 0.5)[-1]
    supply = replace(solved.arrangement.supply, voltage_v=row.supply_v)
    again = solve(
        with_resistors(
            replace(solved.arrangement, supply=supply), tuple(fit.resistor_ohm for fit in row.fits)
        )
    )
    for fit, run in zip(row.fits, again.runs, strict=True):
        assert fit.after_resistor_v == pytest.approx(run.after_resistor_v)
        assert fit.running_w == pytest.approx(run.resistor_w)


def test_too_few_volts_are_told(solved: Solved) -> None:
    weak = replace(solved.arrangement, supply=replace(solved.arrangement.supply, voltage_v=3.0))
    rows = supply_table(weak, solved.solution, 0.5)
    assert not rows[0].fits[0].enough


def test_leds_of_more_volts_read_higher_and_need_no_larger_resistor(sample: Study, solved: Solved) -> None:
    kind = sample.project.strings["drop"]
    rows = string_table(solved.arrangement, solved.solution, 0.5, "drop", kind, TEST_OHM)
    readings = [row.reading_v for row in rows]
    assert readings == sorted(readings)
    for run in range(2):
        ohms = [row.fits[run].resistor_ohm for row in rows]
        assert ohms == sorted(ohms, reverse=True)


def test_a_string_like_the_makers_gets_the_makers_resistors(sample: Study, solved: Solved) -> None:
    kind = sample.project.strings["drop"]
    rows = string_table(solved.arrangement, solved.solution, 0.5, "drop", kind, TEST_OHM)
    own = next(row for row in rows if row.difference_v == 0)
    assert [fit.resistor_ohm for fit in own.fits] == [run.resistor.ohm for run in solved.arrangement.runs]


def test_the_reading_is_what_the_bench_would_show(sample: Study, solved: Solved) -> None:
    # Independent: Ohm's law on the test resistor, with the current that the string itself then draws.
    kind, led = sample.project.strings["drop"], sample.leds["drop"]
    alone = string_alone(kind, led, TEST_OHM)
    bench = solve(Arrangement(solved.arrangement.supply, Fuse(None, "IEC"), (alone,), 20.0, 20.0))
    rows = string_table(solved.arrangement, solved.solution, 0.5, "drop", kind, TEST_OHM)
    own = next(row for row in rows if row.difference_v == 0)
    assert own.reading_v == pytest.approx(bench.bus_v - TEST_OHM * bench.supply_a)


def test_the_makers_own_volts_are_among_the_readings() -> None:
    assert 5.06 in supply_readings_v(5.06)
    assert 11.9 in supply_readings_v(11.9)


def test_a_value_is_the_smallest_preferred_one_that_does(solved: Solved) -> None:
    """Looked through one by one: with the next smaller value of E12 in any run, that run gets too much."""
    goal_a = [run.mean_led_a * (1 + 1e-9) for run in solved.solution.runs]
    for row in supply_table(solved.arrangement, solved.solution, 0.5):
        supply = replace(solved.arrangement.supply, voltage_v=row.supply_v)
        ohms = [fit.resistor_ohm for fit in row.fits]
        for index, ohm in enumerate(ohms):
            smaller = tuple(between("E12", 1, ohm)[-2] if k == index else each for k, each in enumerate(ohms))
            tried = solve(with_resistors(replace(solved.arrangement, supply=supply), smaller))
            assert tried.runs[index].mean_led_a > goal_a[index]


def test_no_resistor_of_a_row_gets_hotter_in_a_short_than_the_makers(solved: Solved) -> None:
    """Watts of a short over the rating: (1.05 V)^2 / (0.95 R), 3.02 W of 5 W in the build (by hand)."""
    own = (1.05 * 5.1) ** 2 / (0.95 * 10.0) / 5.0
    for row in supply_table(solved.arrangement, solved.solution, 0.5):
        for fit in row.fits:
            shorted_w = (1.05 * row.supply_v) ** 2 / (0.95 * fit.resistor_ohm)
            assert fit.rating_w is not None and fit.rating_w >= 5.0
            assert shorted_w / fit.rating_w <= own * (1 + 1e-9)


def test_rows_within_what_is_right_are_left_out(solved: Solved) -> None:
    rows = supply_table(solved.arrangement, solved.solution, 0.5, (4.80, 5.41))
    assert [row.supply_v for row in rows] == [4.75, 5.1, 5.5]


def test_no_usable_row_has_an_led_over_its_limit() -> None:
    for name in ("volts-12", "volts-24", "safety-twelve-volt-groups"):
        made = study(SAMPLE.parents[1] / "tests" / "examples" / f"{name}.yaml").solved
        assert made is not None
        limit_a = min(run.led_limit.current_a for run in made.arrangement.runs)
        rows = supply_table(made.arrangement, made.solution, 0.5)
        assert any(not row.own and row.supply_v > made.arrangement.supply.voltage_v for row in rows)
        for row in rows:
            assert not row.usable or all(fit.led_a <= limit_a for fit in row.fits)


def test_rows_that_a_meter_cannot_tell_apart_are_thinned(sample: Study, solved: Solved) -> None:
    """At 2.9 V a usual meter is 0.5 % and 2 steps off, 0.0345 V: rows keep twice that apart (by hand)."""
    kind = sample.project.strings["drop"]
    rows = string_table(solved.arrangement, solved.solution, 0.5, "drop", kind, TEST_OHM)
    kept = [row.reading_v for row in told_apart(rows, Meter())]
    assert len(kept) < len(rows)
    assert all(higher - lower >= 0.069 - 0.003 for lower, higher in pairwise(kept))


def test_rows_with_the_same_resistors_everywhere_tell_nothing(sample: Study, solved: Solved) -> None:
    kind = sample.project.strings["drop"]
    rows = string_table(solved.arrangement, solved.solution, 0.5, "drop", kind, TEST_OHM)
    own = next(row for row in rows if row.own)
    assert told_apart([replace(row, fits=own.fits) for row in rows], Meter()) == ()
