"""Readings in `figures` and `check`: expected, measured, what they mean, and what to read next."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest

from guidegen.report.check import check_text
from guidegen.report.figures import figures, figures_json, figures_text
from guidegen.study import Study
from tests.safety.projects import Changes, study_of

BENCH = [{"supply": "4.5 V", "resistor": "68 ohm", "after_resistor": "2.80 V"}]
READINGS = "readings"


def rows_of(study: Study) -> dict[str, dict[str, Any]]:
    return {row["at"]: row for row in figures(study)["readings"]}


def taken(*rows: tuple[str, str]) -> Changes:
    return {READINGS: [{"at": at, "value": value} for at, value in rows], "strings.drop.bench": BENCH}


def as_expected(folder: Path) -> dict[str, str]:
    """The expected values of the base, as a maker would note them."""
    rows = rows_of(study_of(folder, {"strings.drop.bench": BENCH}))
    return {at: f"{row['expected']:.2f} V" for at, row in rows.items() if row["unit"] == "V"}


def test_every_reading_tells_what_was_agreed(tmp_path: Path) -> None:
    keys = {"expected", "low", "high", "measured", "verdict", "causes"}
    for row in figures(study_of(tmp_path, {}))["readings"]:
        assert keys <= set(row)
        assert row["low"] <= row["expected"] <= row["high"]
        assert (row["measured"], row["verdict"], row["causes"]) == (None, None, [])


def test_there_are_readings_of_every_test_point_and_current(tmp_path: Path) -> None:
    study = study_of(tmp_path, {})
    assert study.solved is not None
    rows = figures(study)["readings"]
    labels = [row["point"] for row in rows if row["point"]]
    assert labels == [point.label for point in study.solved.points]
    assert [row["run"] for row in rows if row["at"] == "current"] == ["shelf", None]


def test_expected_volts_are_the_solver_s(tmp_path: Path) -> None:
    study = study_of(tmp_path, {})
    data, rows = figures(study), rows_of(study)
    assert rows["after resistor"]["expected"] == data["runs"][0]["after_resistor_v"]


def test_a_reading_as_expected_is_in_range_and_has_no_cause(tmp_path: Path) -> None:
    study = study_of(tmp_path, taken(("after resistor", as_expected(tmp_path)["after resistor"])))
    row = rows_of(study)["after resistor"]
    assert row["measured"] == float(as_expected(tmp_path)["after resistor"].split()[0])
    assert (row["verdict"], row["causes"]) == ("in range", [])
    assert "diagnosis" not in figures(study)


def dead_run(folder: Path) -> Study:
    """Broken behind the resistor: all of the supply's volts there, none at the bulbs."""
    rows = (("resistor volts", "0 V"), ("after resistor", "5 V"), ("bulb 1", "0 V"), ("bulb 10", "0 V"))
    return study_of(folder, taken(*rows))


def test_readings_out_of_range_bring_causes(tmp_path: Path) -> None:
    study = dead_run(tmp_path)
    row = rows_of(study)["after resistor"]
    assert row["verdict"] == "out of range"
    assert row["causes"][0]["kind"] == "open"
    assert row["causes"][0]["run"] == "shelf"
    assert "open" in row["causes"][0]["text"]
    assert 0 <= row["causes"][0]["fit"] <= 1


def test_without_a_bulb_the_diagnosis_says_it_cannot_tell_and_which_reading_would(tmp_path: Path) -> None:
    study = study_of(tmp_path, taken(("resistor volts", "0.9 V"), ("after resistor", "4.1 V")))
    diagnosis = figures(study)["diagnosis"]
    assert diagnosis["can_tell"] is False
    assert "cannot be told" in diagnosis["text"]
    assert diagnosis["next"]["at"].startswith("bulb ")
    assert "cannot be told" in check_text(study, "utf-8")
    assert "Read next: shelf, at bulb" in check_text(study, "utf-8")


def test_a_current_in_line_is_judged_as_that_meter_shows_it(tmp_path: Path) -> None:
    usual = rows_of(study_of(tmp_path, {}))["current"]
    heavy = rows_of(study_of(tmp_path, {"meter": {"burden": "20 ohm"}}))["current"]
    assert heavy["expected"] < usual["expected"]


def test_a_bulb_that_is_no_test_point_is_judged_too(tmp_path: Path) -> None:
    row = rows_of(study_of(tmp_path, taken(("bulb 5", "2.80 V"))))["bulb 5"]
    assert row["point"] is None
    assert row["measured"] == 2.8


def test_check_names_verdicts_only_when_readings_are_there(tmp_path: Path) -> None:
    assert "Readings\n" not in check_text(study_of(tmp_path, {}), "utf-8")
    text = check_text(dead_run(tmp_path), "utf-8")
    assert "behind the resistor: " in text
    assert "measured 5 V: out of range" in text
    assert "1. shelf: " in text


def test_figures_as_text_tell_the_ranges(tmp_path: Path) -> None:
    text = figures_text(study_of(tmp_path, {}))
    assert "T1 at the supply: " in text
    assert "shelf, current in line: " in text


def test_an_empty_bench_asks_for_the_reading_that_narrows_most(tmp_path: Path) -> None:
    text = check_text(study_of(tmp_path, {"strings.drop.led": {"typical": "white"}}), "utf-8")
    assert "What to read next" in text
    assert "One reading brings that to ±" in text


def test_a_bench_reading_ends_the_asking(tmp_path: Path) -> None:
    assert "What to read next" not in check_text(study_of(tmp_path, {"strings.drop.bench": BENCH}), "utf-8")


def test_a_hazard_refusal_gives_no_readings(tmp_path: Path) -> None:
    study = study_of(tmp_path, {"supply.case": "opened", **taken(("bulb 1", "2.8 V"))})
    assert "readings" not in figures(study)
    assert "Readings\n" not in check_text(study, "utf-8")


@pytest.mark.parametrize("value", ["0.9 V", "4.1 V"])
def test_the_json_is_the_same_each_time(tmp_path: Path, value: str) -> None:
    changes = taken(("after resistor", value), ("bulb 10", "2.8 V"))
    first, second = (figures_json(study_of(tmp_path, changes)) for _ in range(2))
    assert first == second
    assert json.loads(first)["readings"]
