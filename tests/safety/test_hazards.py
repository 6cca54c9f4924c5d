"""Hazard refusals: each is met, and just not met, by a project edited in one place."""

from __future__ import annotations

from pathlib import Path

import pytest

from guidegen.safety.hazards import water_digit
from guidegen.safety.judge import HAZARDS
from guidegen.safety.words import describe
from tests.safety.projects import Changes, found, study_of

OUTDOORS: Changes = {"place.exposure": "sheltered outdoors"}
POND: Changes = {"place.near_water": "pond"}
OUTSIDE_SUPPLY: Changes = {"supply.stands": "outdoors"}

# Limits: DESIGN section 7; 60 V DC and 25 V AC of IEC 60364-4-41 cl. 414.4.5; the rest own policy.
MET: list[tuple[str, Changes]] = [
    ("mains-string", {"strings.drop.runs_on": "mains"}),
    ("mains-string", {"strings.drop.label": "220-240V~ 50 Hz, 30 W"}),
    ("mains-string", {"strings.drop.label": "For indoor use. 60,1 volts"}),
    ("supply-case-opened", {"supply.case": "opened"}),
    ("supply-not-approved", {"supply.approved": "NO"}),
    ("supply-insulation", {"supply.insulation": "basic"}),
    ("supply-insulation", {"supply.insulation": "unknown", **OUTDOORS}),
    ("supply-insulation", {"supply.insulation": "unknown", **OUTSIDE_SUPPLY, "supply.ip": "IP44"}),
    ("supply-voltage", {"supply.voltage": "60.1 V", "supply.tolerance": "0 %"}),
    ("supply-voltage", {"supply.voltage": "58 V", "supply.tolerance": "5 %"}),
    ("supply-voltage", {"supply.voltage": "25.1 V", "supply.tolerance": "0 %", "supply.output": "ac"}),
    (
        "supply-voltage",
        {"strings.drop.bench": [{"supply": "61 V", "resistor": "10 kohm", "after_resistor": "2.8 V"}]},
    ),
    ("supply-output", {"supply.output": "ac"}),
    ("supply-output", {"supply.output": "pulsed"}),
    ("supply-constant-current", {"supply.type": "constant current"}),
    ("supply-outdoors", {**OUTSIDE_SUPPLY, "supply.ip": "IP43"}),
    ("supply-outdoors", {**OUTSIDE_SUPPLY, "supply.ip": "IP6X"}),
    ("near-water", {**POND, "place.distance_to_water": "3.49 m"}),
    ("near-water", POND),
    ("near-water", {"place.near_water": "sauna"}),
    ("near-water", {"place.near_water": "sauna", "place.distance_to_water": "5 m"}),
    ("near-water", {"place.near_water": "bath or shower", "place.distance_to_water": "0 m"}),
]
JUST_NOT: list[tuple[str, Changes]] = [
    ("mains-string", {}),
    ("mains-string", {"strings.drop.label": "60 V, 12 VA, 230 bulbs"}),
    ("mains-string", {"strings.drop.label": "INPUT: 100-240V~ 50/60Hz OUTPUT: 4.5V DC 0.5A"}),
    ("supply-case-opened", {}),
    ("supply-not-approved", {"supply.approved": "unknown"}),
    ("supply-insulation", {"supply.insulation": "unknown"}),
    ("supply-insulation", {"supply.insulation": "reinforced", **OUTDOORS}),
    ("supply-voltage", {"supply.voltage": "60 V", "supply.tolerance": "0 %"}),
    ("supply-voltage", {"supply.voltage": "25 V", "supply.tolerance": "0 %", "supply.output": "ac"}),
    ("supply-output", {}),
    ("supply-constant-current", {}),
    ("supply-outdoors", {**OUTSIDE_SUPPLY, "supply.ip": "IPX4"}),
    ("supply-outdoors", {**OUTSIDE_SUPPLY, "supply.ip": "IP44"}),
    ("supply-outdoors", {**OUTSIDE_SUPPLY, "supply.ip": "IP67"}),
    ("supply-outdoors", {"supply.ip": "IP20"}),
    ("near-water", {**POND, "place.distance_to_water": "3.5 m"}),
]


@pytest.mark.parametrize(("rule", "changes"), MET)
def test_hazard_is_refused_and_nothing_is_solved(tmp_path: Path, rule: str, changes: Changes) -> None:
    study = study_of(tmp_path, changes)
    assert rule in [finding.rule for finding in study.findings]
    assert study.refused
    assert study.solved is None


@pytest.mark.parametrize(("rule", "changes"), JUST_NOT)
def test_project_just_outside_the_hazard_is_not_refused_for_it(
    tmp_path: Path, rule: str, changes: Changes
) -> None:
    assert rule not in found(tmp_path, changes)


def test_every_hazard_has_a_project_that_meets_it_and_one_that_just_does_not() -> None:
    ids = {rule.id for rule in HAZARDS}
    assert {rule for rule, _ in MET} == ids
    assert {rule for rule, _ in JUST_NOT} == ids


def test_supply_outdoors_without_any_mark_is_refused(tmp_path: Path) -> None:
    study = study_of(tmp_path, OUTSIDE_SUPPLY)
    assert "supply-outdoors" in [finding.rule for finding in study.findings]


@pytest.mark.parametrize(
    # Second digit of the IP code: IEC 60529.
    ("ip", "digit"),
    [
        ("IP44", 4),
        ("IPX5", 5),
        ("ip 65", 5),
        ("IP65/IP67", 7),
        ("IP69K", 9),
        ("IP2X", 0),
        (None, 0),
        ("dry", 0),
    ],
)
def test_second_digit_of_an_ip_code(ip: str | None, digit: int) -> None:
    assert water_digit(ip) == digit


def test_several_hazards_are_all_told_at_once(tmp_path: Path) -> None:
    rules = found(tmp_path, {"supply.case": "opened", "supply.insulation": "basic", **POND})
    assert set(rules) == {"supply-case-opened", "supply-insulation", "near-water"}


@pytest.mark.parametrize(("rule", "changes"), MET)
def test_refusal_gives_reason_and_alternative_but_no_figure_of_the_project(
    tmp_path: Path, rule: str, changes: Changes
) -> None:
    words = describe(found(tmp_path, changes)[rule])
    said = " ".join((words.hazard, words.consequence, words.reason, *words.avoid))
    assert words.reason
    assert words.avoid
    for figure in ("60.1", "58 V", "25.1", "61 V", "3.49", "68", "200 mA", "2 A"):
        assert figure not in said
