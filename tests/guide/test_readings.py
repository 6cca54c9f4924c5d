"""Readings: every number is the one that was worked out for the meter."""

from __future__ import annotations

from dataclasses import replace

import pytest

from guidegen.guide.blocks import ReadingRow
from guidegen.guide.format import metered, span
from guidegen.guide.steps.checks import volts_check
from tests.guide.projects import Made


def rows(made: Made) -> tuple[ReadingRow, ...]:
    """All rows of the sheet."""
    return tuple(row for group in made.page("readings.html").groups for row in group.rows)


def test_every_test_point_and_every_current_has_a_row(all_guides: tuple[Made, ...]) -> None:
    for made in all_guides:
        labels = [row.point for row in rows(made) if row.unit == "V"]
        assert labels == [point.label for point in made.matter.solved.points]
        assert sum(row.unit == "mA" for row in rows(made)) == len(made.matter.runs) + 1


def test_volts_are_the_expected_ones(all_guides: tuple[Made, ...]) -> None:
    for made in all_guides:
        volts = {row.point: row for row in rows(made) if row.unit == "V"}
        for point in made.matter.solved.points:
            reading, row = made.matter.reading_at(point), volts[point.label]
            assert (row.expected, row.low, row.high) == (reading.expected, reading.low, reading.high)
            assert row.expected_text == metered(reading.expected, reading.low, reading.high, "V")


def test_volts_are_the_solvers(bench: Made) -> None:
    by_label = {row.point: row.expected for row in rows(bench)}
    solved = bench.matter.solution
    point = bench.matter.point
    assert by_label[point("supply").label] == solved.terminal_v
    for index, run in enumerate(solved.runs):
        assert by_label[point("resistor volts", index).label] == run.resistor_v
        assert by_label[point("after resistor", index).label] == run.after_resistor_v
        for bulb in ((12, 24), (1, 12))[index]:
            assert by_label[point("bulb", index, bulb).label] == run.bulb_v[bulb - 1]


def test_currents_are_in_milliampere_as_a_meter_in_line_shows_them(bench: Made) -> None:
    for row in rows(bench):
        if row.identity.startswith("current-run-"):
            reading = bench.matter.current_of(int(row.identity[-1]) - 1)
            assert reading is not None
            assert row.expected == pytest.approx(1e3 * reading.expected, rel=1e-12)


def test_identities_are_unique(all_guides: tuple[Made, ...]) -> None:
    for made in all_guides:
        identities = [row.identity for row in rows(made)]
        assert len(set(identities)) == len(identities)


def test_what_is_expected_lies_within_its_range(all_guides: tuple[Made, ...]) -> None:
    for made in all_guides:
        assert all(row.low <= row.expected <= row.high for row in rows(made))


def test_steps_and_sheet_tell_the_same_readings(all_guides: tuple[Made, ...]) -> None:
    for made in all_guides:
        sheet = {row.point: (row.expected_text, row.range_text) for row in rows(made)}
        told = [check for step in made.steps for check in step.checks if check.points]
        assert {check.points[0] for check in told} == {point.label for point in made.matter.solved.points}
        assert all(check.expected == sheet[check.points[0]][0] for check in told)
        assert all(check.range.startswith(sheet[check.points[0]][1]) for check in told)


def test_steps_stop_only_where_hardly_any_sound_build_lies(bench: Made) -> None:
    for step in bench.steps:
        for check in step.checks:
            if check.points:
                reading = next(
                    each
                    for each in bench.matter.readings
                    if each.point is not None and each.point.label == check.points[0]
                )
                wide = span(reading.out_low, reading.out_high, "V")
                one = check.range == f"{span(reading.low, reading.high, 'V')}; outside: stop"
                assert one or check.range.endswith(f"stop outside {wide}")


@pytest.mark.parametrize(
    ("wider_v", "expected"),
    [
        (0.0, "2.90 to 3.10 V; outside: stop"),
        (0.012, "2.90 to 3.10 V; outside: stop"),
        (0.05, "2.90 to 3.10 V; stop outside 2.85 to 3.15 V"),
    ],
)
def test_one_range_is_told_where_a_borderline_is_hardly_a_step_of_the_meter(
    bench: Made, wider_v: float, expected: str
) -> None:
    """The step of a usual meter is 0.01 V (tables/limits.py)."""
    first = next(each for each in bench.matter.readings if each.point is not None)
    reading = replace(first, expected=3.0, low=2.9, high=3.1, out_low=2.9 - wider_v, out_high=3.1 + wider_v)
    told = volts_check(bench.matter, reading, "", ()).range
    assert told.replace("\u00a0", " ") == expected


def test_wiring_and_sheet_tell_the_same_readings(bench: Made) -> None:
    sheet = {row.point: (row.expected_text, row.range_text) for row in rows(bench)}
    table = bench.page("wiring.html").points
    assert all((row[3], row[4]) == sheet[row[0]] for row in table.rows)
