"""Small projects to propose arrangements for, and the fields that the search works on."""

from __future__ import annotations

from copy import deepcopy
from pathlib import Path
from typing import Any

from guidegen.choose.layouts import layouts
from guidegen.choose.pool import Field, make_field
from guidegen.circuit.arrange import arrange
from guidegen.circuit.arrangement import LedEstimate
from guidegen.circuit.cells import led_limits
from guidegen.project.read import read_project
from guidegen.project.schema import Project
from guidegen.study import fit_leds
from guidegen.tables.prices import CHOICE_MM2

#: The trade's thirty bulbs of five LEDs; every number: common practice, no source.
THIRTY = Path(__file__).with_name("thirty.yaml")

BASE: dict[str, Any] = {
    "title": "Shelf lights",
    "place": {"exposure": "indoors", "mains": "existing outlet", "coldest": "15 degC", "warmest": "25 degC"},
    "strings": {
        "drop": {
            "bought": 2,
            "bulbs": 6,
            "leds_per_bulb": 3,
            "spacing": "25 cm",
            "tail": "50 cm",
            "wire": {"per_length": "0.4 ohm/m"},
            "led": {"voltage": "2.8 V", "current": "3 mA", "slope": "0.09 V", "resistance": "10 ohm"},
            "max_led_current": "8 mA",
        }
    },
    "supply": {
        "voltage": "5.1 V",
        "rated_current": "2.4 A",
        "output_resistance": "0.1 ohm",
        "case": "sealed",
        "insulation": "double",
    },
    "goals": {"evenness": 0.5, "led_current": "3 mA"},
}


def project_with(changes: dict[str, Any] | None = None) -> Project:
    """The base with each dotted path set to its new value."""
    data = deepcopy(BASE)
    for path, value in (changes or {}).items():
        *way, last = [int(step) if step.isdigit() else step for step in path.split(".")]
        here: Any = data
        for step in way:
            here = here[step]
        here[last] = value
    return Project.model_validate(data)


def thirty(**goals: Any) -> Project:
    """The thirty bulbs, with other goals."""
    project = read_project(THIRTY).project
    return project.model_copy(update={"goals": project.goals.model_copy(update=goals)})


def field_of(
    project: Project, sizes_mm2: tuple[float, ...] = CHOICE_MM2, dim: float = 1.0
) -> tuple[Field, dict[str, LedEstimate]]:
    """What the search works on, and what is known of the LEDs."""
    leds = fit_leds(project)
    limits = led_limits(project, leds)
    supply = arrange(project.model_copy(update={"runs": None}), leds, limits)
    return make_field(project, supply, layouts(project), leds, limits, sizes_mm2, dim), leds
