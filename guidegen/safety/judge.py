"""Hold a project against the rules, most severe first."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from types import MappingProxyType
from typing import Any

from guidegen.circuit.arrangement import Arrangement, LedEstimate
from guidegen.circuit.solution import Margins, Protection, Solution
from guidegen.project.read import ProjectFile
from guidegen.safety import (
    bench,
    goals,
    hung,
    leds,
    lengths,
    mains,
    place,
    resistors,
    stated,
    strings,
    supply,
    wires,
    work,
)
from guidegen.safety import hazards as hazard_rules
from guidegen.safety.findings import LEVELS, Finding
from guidegen.safety.rule import Case, Rule

#: Rules on the project alone; any of them ends the work before anything is solved.
HAZARDS: tuple[Rule[ProjectFile], ...] = hazard_rules.RULES

#: Rules on the solved project; this order is kept among findings of one level.
RULES: tuple[Rule[Case], ...] = (
    *mains.RULES,
    *supply.RULES,
    *wires.RULES,
    *lengths.RULES,
    *resistors.RULES,
    *strings.RULES,
    *place.RULES,
    *hung.RULES,
    *work.RULES,
    *leds.RULES,
    *bench.RULES,
    *goals.RULES,
    *stated.RULES,
)

#: Every rule, hazards first.
ALL: tuple[Rule[Any], ...] = HAZARDS + RULES

#: Every rule by its id.
RULE_BY_ID: Mapping[str, Rule[Any]] = MappingProxyType({rule.id: rule for rule in ALL})


def hazards(file: ProjectFile) -> tuple[Finding, ...]:
    """Refusals from the project file alone, before anything is solved."""
    return most_severe_first(finding for rule in HAZARDS for finding in rule.findings(file))


def judge(
    file: ProjectFile,
    leds: Mapping[str, LedEstimate],
    arrangement: Arrangement,
    solution: Solution,
    margins: Margins,
    protection: Protection,
) -> tuple[Finding, ...]:
    """What the rules find in a solved project that is free of hazards."""
    case = Case(file, leds, arrangement, solution, margins, protection)
    return most_severe_first(finding for rule in RULES for finding in rule.findings(case))


def most_severe_first(findings: Iterable[Finding]) -> tuple[Finding, ...]:
    """The findings by level; those of one level keep their order."""
    return tuple(sorted(findings, key=lambda finding: LEVELS.index(finding.level)))
