"""Readings of the finished build in the guide, the meter of the file, dead LEDs, and what to read first."""

from __future__ import annotations

from functools import cache

import pytest

from guidegen.circuit.solve import solve
from guidegen.circuit.variants import with_dead
from guidegen.guide.blocks import ReadingRow
from guidegen.guide.format import quantity
from guidegen.guide.sums.dead import SHARES
from tests.guide.projects import Made, changed, make

BENCH = [{"supply": "4.5 V", "resistor": "15 ohm", "after_resistor": "2.85 V"}]


@cache
def built() -> Made:
    """A run whose resistor's volts are far too low and whose last bulb shows nothing."""
    rows = [("resistor volts", "0.8 V"), ("after resistor", "4.2 V"), ("bulb 7", "0 V")]
    project = changed(readings=[{"at": at, "value": value} for at, value in rows])
    project["strings"]["drop"]["bench"] = BENCH
    return make(project)


def rows(made: Made) -> tuple[ReadingRow, ...]:
    return tuple(row for group in made.page("readings.html").groups for row in group.rows)


def test_the_sheet_shows_what_was_read_and_its_verdict() -> None:
    row = next(row for row in rows(built()) if row.what.startswith("Behind"))
    assert row.measured_text == quantity(4.2, "V")
    assert row.verdict == "high"


def test_a_bulb_that_is_no_test_point_gets_a_row_when_it_was_read() -> None:
    row = next(row for row in rows(built()) if row.identity == "run-1-bulb-7")
    assert row.measured_text == quantity(0.0, "V")
    assert row.verdict == "low"


def test_what_was_not_read_has_no_verdict() -> None:
    assert {row.verdict for row in rows(built()) if not row.measured_text} == {""}


def test_causes_and_the_next_reading_are_on_the_page() -> None:
    meaning = built().page("readings.html").meaning
    assert meaning is not None
    assert any("open" in cause for cause in meaning.causes)
    assert meaning.next_reading


def test_a_sheet_without_readings_has_no_meaning(plain: Made) -> None:
    assert plain.page("readings.html").meaning is None


def test_borderline_lies_outside_the_range(plain: Made) -> None:
    for row in rows(plain):
        assert row.out_low is not None
        assert row.out_high is not None
        assert row.out_low <= row.low
        assert row.high <= row.out_high


def test_a_coarser_meter_widens_the_ranges_of_sheet_and_steps(plain: Made) -> None:
    coarse = make(changed(meter={"accuracy": "3 % + 5 digits"}))
    for usual, wide in zip(rows(plain), rows(coarse), strict=True):
        if usual.unit == "V":
            assert wide.high - wide.low > usual.high - usual.low
    usual_v, wide_v = (made.matter.first_powers[0].resistor_v for made in (plain, coarse))
    assert wide_v.high - wide_v.low > usual_v.high - usual_v.low


def test_the_meter_is_stated_on_the_sheet() -> None:
    made = make(changed(meter={"accuracy": "0.8 % + 3 digits", "burden": "4 ohm"}))
    told = made.page("readings.html").how[-1]
    assert "±(0.8\u00a0% + 3 digits of 10\u00a0mV)" in told
    assert quantity(4.0, "Ω") in told


def test_the_resistor_s_volts_tell_the_current(plain: Made) -> None:
    row = next(row for row in rows(plain) if row.what.startswith("Across"))
    assert quantity(plain.matter.solution.runs[0].current_a, "A") in row.what


@pytest.mark.parametrize("share", [0.1, 0.25])
def test_dead_leds_leave_more_current_to_the_rest(bench: Made, share: float) -> None:
    (group,) = (each for each in bench.page("numbers.html").groups if each.anchor == "dead-leds")
    (table,) = group.tables
    solved = solve(with_dead(bench.matter.arrangement, share))
    for index, run in enumerate(bench.matter.runs):
        row = table.rows[index * len(SHARES) + SHARES.index(share)]
        assert row[0].startswith(run.name)
        assert row[2] == quantity(solved.runs[index].mean_led_a, "A")
        assert solved.runs[index].mean_led_a > bench.matter.solution.runs[index].mean_led_a


def test_without_a_bench_reading_the_first_measurement_says_what_it_is_worth(plain: Made) -> None:
    told = plain.step("bench-reading").why
    found = plain.matter.next_readings["drop"]
    assert "One reading brings that to" in told
    assert quantity(found.one.resistor_ohm, "Ω") in told


def test_with_a_bench_reading_it_does_not(bench: Made) -> None:
    assert all("One reading brings that to" not in step.why for step in bench.steps)
