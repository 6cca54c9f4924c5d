"""Readings: every number is the one that was worked out for the meter."""

from __future__ import annotations

import pytest

from guidegen.guide.blocks import ReadingRow
from guidegen.guide.format import metered, span
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
                assert check.range.endswith(f"stop outside {span(reading.out_low, reading.out_high, 'V')}")


def test_wiring_and_sheet_tell_the_same_readings(bench: Made) -> None:
    sheet = {row.point: (row.expected_text, row.range_text) for row in rows(bench)}
    table = bench.page("wiring.html").points
    assert all((row[3], row[4]) == sheet[row[0]] for row in table.rows)
