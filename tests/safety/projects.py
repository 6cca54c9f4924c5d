"""Small projects for the tests of the rules: one quiet base, edited key by key."""

from __future__ import annotations

from copy import deepcopy
from pathlib import Path
from typing import Any

import yaml

from guidegen.safety.findings import Finding
from guidegen.safety.judge import judge
from guidegen.study import Study, study

#: Takes a key out.
GONE = object()

#: Indoors, all stated, all within its limits: only what belongs to every build is found.
BASE: dict[str, Any] = {
    "title": "Shelf lights",
    "place": {
        "exposure": "indoors",
        "coldest": "15 degC",
        "warmest": "25 degC",
        "mains": "existing outlet",
        "near_water": "none",
        "children_or_animals": "yes",
        "over_path": "no",
    },
    "strings": {
        "drop": {
            "bought": 2,
            "bulbs": 10,
            "leds_per_bulb": 1,
            "runs_on": "low voltage",
            "between_bulbs": "parallel",
            "lit_on_dc": "all",
            "spacing": "10 cm",
            "tail": "30 cm",
            "wire": {"area": "0.14 mm2"},
            "led": {"voltage": "2.8 V", "current": "3 mA", "slope": "0.09 V", "resistance": "10 ohm"},
            "max_led_current": "20 mA",
            "box": "removed",
            "wires": 2,
            "waterproof": "no",
        }
    },
    "supply": {
        "voltage": "5 V",
        "tolerance": "5 %",
        "rated_current": "2 A",
        "current_limit": "2 A",
        "type": "constant voltage",
        "output": "dc",
        "stands": "indoors",
        "case": "sealed",
        "insulation": "double",
        "approved": "yes",
        "limited_power": "no",
        "unregulated": "no",
    },
    "runs": [
        {
            "name": "shelf",
            "string": "drop",
            "bulbs": 10,
            "feed": "one end",
            "resistor": "68 ohm",
            "resistor_rating": "5 W",
            "resistor_kind": "cement",
        }
    ],
    "fuse": "200 mA",
    "goals": {"evenness": 0.1},
}

Changes = dict[str, Any]


class PlainDumper(yaml.SafeDumper):
    """Writes a value that stands twice twice, as a person does."""

    def ignore_aliases(self, data: Any) -> bool:
        return True


def edited(changes: Changes) -> dict[str, Any]:
    """The base with each dotted path ("runs.0.feed") set to its new value, or taken out if GONE."""
    data = deepcopy(BASE)
    for path, value in changes.items():
        *way, last = [int(step) if step.isdigit() else step for step in path.split(".")]
        here: Any = data
        for step in way:
            here = here[step]
        if value is GONE:
            del here[last]
        else:
            here[last] = value
    return data


def study_of(folder: Path, changes: Changes) -> Study:
    """The study of the edited base, written to a file in `folder`."""
    path = folder / "project.yaml"
    path.write_text(yaml.dump(edited(changes), sort_keys=False, Dumper=PlainDumper), "utf-8")
    return study(path)


def found(folder: Path, changes: Changes) -> dict[str, Finding]:
    """The first finding of every rule that applies to the edited base."""
    findings: dict[str, Finding] = {}
    for finding in study_of(folder, changes).findings:
        findings.setdefault(finding.rule, finding)
    return findings


def judged_anew(known: Study, **parts: Any) -> dict[str, Finding]:
    """The first finding of every rule when parts of a solved study are put in by hand."""
    assert known.solved is not None
    solved = known.solved
    given = {
        name: parts.get(name, getattr(solved, name))
        for name in ("arrangement", "solution", "margins", "protection")
    }
    findings: dict[str, Finding] = {}
    for finding in judge(known.file, known.leds, **given):
        findings.setdefault(finding.rule, finding)
    return findings
