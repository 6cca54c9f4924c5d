"""The figures as JSON: the form that other programs rely on."""

import json
from pathlib import Path

import pytest

from guidegen.report.figures import figures, figures_json, figures_text
from tests.safety.projects import GONE, study_of

SAMPLE = Path(__file__).parents[2] / "sample_project" / "potting-bench.yaml"


def test_the_form_is_the_contract(tmp_path: Path) -> None:
    data = json.loads(figures_json(study_of(tmp_path, {})))
    top = {"supply", "evenness", "meets_goals", "strings", "runs", "fuse_a", "readings", "findings"}
    assert set(data) == top
    assert set(data["supply"]) == {"current_a", "power_w", "load", "load_worst"}
    led = data["strings"]["drop"]["led"]
    assert set(led) == {"voltage_v", "current_a", "slope_v", "resistance_ohm", "source", "fitted"}
    run = data["runs"][0]
    assert {
        *("name", "feed", "resistor_ohm", "current_a", "after_resistor_v", "resistor_w"),
        *("evenness", "seen_evenness", "led_current_a", "bulbs"),
    } <= set(run)
    assert set(run["resistor_w"]) == {"running", "worst", "shorted"}
    keys = {"bulb", "lit", "position_m", "voltage_v", "current_a", "led_current_a", "light"}
    assert all(set(bulb) == keys for bulb in run["bulbs"])
    assert [bulb["bulb"] for bulb in run["bulbs"]] == list(range(1, 11))
    assert all(set(finding) == {"level", "rule", "text"} for finding in data["findings"])


def test_the_figures_agree_with_each_other(tmp_path: Path) -> None:
    data = figures(study_of(tmp_path, {}))
    run = data["runs"][0]
    assert run["current_a"] == pytest.approx(sum(bulb["current_a"] for bulb in run["bulbs"]))
    assert run["after_resistor_v"] == pytest.approx(5 - 68 * run["current_a"])
    assert run["resistor_w"]["running"] == pytest.approx(68 * run["current_a"] ** 2)
    assert data["supply"]["power_w"] == pytest.approx(5 * data["supply"]["current_a"])
    assert run["seen_evenness"] == pytest.approx(run["evenness"] ** 0.5)


def test_given_led_values_come_back_as_given(tmp_path: Path) -> None:
    led = figures(study_of(tmp_path, {}))["strings"]["drop"]["led"]
    assert led == {
        "voltage_v": 2.8, "current_a": 3e-3, "slope_v": 0.09, "resistance_ohm": 10.0,
        "source": "given", "fitted": [],
    }  # fmt: skip


def test_a_hazard_refusal_gives_findings_only(tmp_path: Path) -> None:
    data = figures(study_of(tmp_path, {"supply.case": "opened"}))
    assert data["runs"] == []
    assert data["fuse_a"] is None
    assert [finding["rule"] for finding in data["findings"] if finding["level"] == "refusal"] == [
        "supply-case-opened"
    ]
    assert not set(data) & {"supply", "evenness", "strings"}


def test_a_design_refusal_still_gives_the_figures(tmp_path: Path) -> None:
    data = figures(study_of(tmp_path, {"supply.rated_current": "10 mA", "supply.current_limit": GONE}))
    assert any(finding["level"] == "refusal" for finding in data["findings"])
    assert data["runs"][0]["current_a"] > 0.01


def test_a_goal_missed_is_told(tmp_path: Path) -> None:
    assert figures(study_of(tmp_path, {}))["meets_goals"] is True
    assert figures(study_of(tmp_path, {"goals.evenness": 0.999}))["meets_goals"] is False
    assert figures(study_of(tmp_path, {"goals.led_current": "20 mA"}))["meets_goals"] is False


def test_json_is_plain_ascii_and_the_same_each_time(tmp_path: Path) -> None:
    study = study_of(tmp_path, {"title": "Lichter für die Laube"})
    assert figures_json(study).isascii()
    assert figures_json(study) == figures_json(study_of(tmp_path, {"title": "Lichter für die Laube"}))


def test_the_text_names_every_run_and_finding(tmp_path: Path) -> None:
    study = study_of(tmp_path, {})
    text = figures_text(study)
    assert "shelf: 10 bulbs" in text
    assert all(f"[{finding.rule}]" in text for finding in study.findings)


def test_one_bulb_is_not_told_as_many(tmp_path: Path) -> None:
    text = figures_text(study_of(tmp_path, {"runs": [{"name": "nook", "bulbs": 1, "resistor": "680 ohm"}]}))
    assert "nook: 1 bulb, fed at one end" in text


def test_feed_and_level_are_told_in_the_language_of_the_file(tmp_path: Path) -> None:
    text = figures_text(study_of(tmp_path, {"language": "de"}))
    assert "shelf: 10 Lampen, Einspeisung: ein Ende" in text
    assert "Warnung: " in text
    assert not [word for word in ("one end", "warning: ", "caution: ", "notice: ") if word in text]
