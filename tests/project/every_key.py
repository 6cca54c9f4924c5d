"""Writes `sample_project/every-key.yaml` from the models: `python -m tests.project.every_key`."""

from __future__ import annotations

import textwrap
from collections.abc import Iterator
from pathlib import Path
from typing import Any, get_origin

from pydantic.fields import FieldInfo

from guidegen.project.fields import (
    bare,
    choices_of,
    description_at,
    expected_at,
    full_type,
    inner_type,
    model_of,
    reader_of,
)
from guidegen.project.keys import Key
from guidegen.project.quantities import KINDS, Quantity
from guidegen.project.schema import Model, Project

FILE = Path(__file__).parents[2] / "sample_project" / "every-key.yaml"
WIDTH = 100
SI_NAMES = {"resistance": "ohm", "temperature": "degC", "length": "m", "ratio": "", "power": "W"}

HEAD = """\
# Every key that a project file may have, once, with what it means and what may be written.
#
# It is a whole project that guidegen builds; copy from it what your own project needs.  Most keys may
# be left out; those that may not are marked "required".  Where only one of several keys may stand,
# the others are notes: take away the "# " before one, and put it before the key that stands now.
# A shorter file to start from is potting-bench.yaml.
"""

# What stands in the file; the other keys are written as notes.
STATED: dict[str, Any] = {
    "title": "Every key",
    "place": {
        "exposure": "sheltered outdoors",
        "mains": "existing outlet",
        "coldest": "-5 degC",
        "warmest": "35 degC",
        "near_water": "pond",
        "distance_to_water": "10 m",
        "supply_at": "[50 cm, middle]",
        "children_or_animals": "yes",
        "over_path": "no",
    },
    "strings": {
        "drop": {
            "bulbs": "12",
            "spacing": "25 cm",
            "wire": {"one_conductor": "1.0 ohm", "meter_leads": "0.2 ohm"},
            "bought": "4",
            "leds_per_bulb": "3",
            "leds_in_series": "1",
            "group_resistor": "0 ohm",
            "runs_on": "low voltage",
            "between_bulbs": "parallel",
            "lit_on_dc": "all",
            "tail": "50 cm",
            "led": {"voltage": "2.85 V", "current": "3 mA", "slope": "0.1 V", "resistance": "8 ohm"},
            "max_led_current": "6 mA",
            "bench": [
                {
                    "supply": "4.02 V",
                    "resistor": "15 ohm",
                    "after_resistor": "2.815 V",
                    "current": "73.8 mA",
                    "meter_burden": "1.5 ohm",
                }
            ],
            "bench_temperature": "20 degC",
            "came_with": {"cells": "3", "size": "AA", "resistor": "15 ohm"},
            "box": "removed",
            "wires": "2",
            "label": "4.5 V DC, for outdoor use",
            "waterproof": "yes",
        }
    },
    "supply": {
        "voltage": "5.1 V",
        "rated_current": "2.4 A",
        "case": "sealed",
        "insulation": "double",
        "tolerance": "5 %",
        "output_resistance": "0.1 ohm",
        "current_limit": "2.4 A",
        "type": "constant voltage",
        "output": "dc",
        "stands": "indoors",
        "ip": "IP20",
        "lead": {"length": "1 m", "wire": {"area": "0.5 mm2"}},
        "approved": "yes",
        "limited_power": "no",
        "unregulated": "no",
        "efficiency": "80 %",
        "standby": "0.1 W",
    },
    "summary": "Two even rows over a bench.",
    "author": "The bench workshop",
    "language": "en",
    "runs": [
        {
            "bulbs": "24",
            "name": "back rail",
            "string": "drop",
            "feed": "opposite ends",
            "resistor": "10 ohm",
            "resistor_tolerance": "5 %",
            "resistor_rating": "5 W",
            "resistor_kind": "cement",
            "series": "E12",
            "feeder": {"length": "1.5 m", "wire": {"area": "0.5 mm2"}},
            "extra_wire": {"length": "6.5 m", "wire": {"area": "0.5 mm2"}},
            "first_hung": "first bulb",
        }
    ],
    "fuse": "1 A",
    "fuse_type": "IEC",
    "goals": {
        "evenness": "0.5",
        "led_current": "3.1 mA",
        "resistor_load": "50 %",
        "supply_load": "80 %",
        "light_exponent": "1",
        "series": "E12",
        "weights": {"cost": "1", "evenness": "0", "joints": "0", "cuts": "0", "wire": "0"},
    },
    "prices": {
        "wire": "0.60 EUR",
        "resistor": "0.50 EUR",
        "fuse": "2.00 EUR",
        "joint": "0.20 EUR",
        "cell": "0.80 EUR",
        "supply": "9.00 EUR",
        "string": "4.00 EUR",
    },
    "meter": {
        "accuracy": "0.5 % + 2 digits",
        "resolution": "10 mV",
        "current_accuracy": "1 % + 3 digits",
        "current_resolution": "0.1 mA",
        "leads": "0.2 ohm",
        "burden": "1.5 ohm",
    },
    "readings": [{"at": "after resistor", "value": "3.02 V", "run": "back rail"}],
    "hanging": {
        "lines": [{"runs": "[back rail]", "spans": "[3 m, 2.5 m]", "sag": "10 cm"}],
        "sag": "10 cm",
        "height": "2.6 m",
        "starts_at": "first bulb",
        "hook_kind": "screw eye in a rafter",
        "hook_rating": "60 N",
        "wire_weight": "12 g/m",
        "bulb_weight": "2 g",
        "wire_diameter": "3 mm",
        "bulb_size": "12 mm",
        "guide_wire": "yes",
        "guide_wire_weight": "12 g/m",
        "guide_wire_strength": "1 kN",
        "wind": "15 m/s",
        "ice": "0 mm",
    },
    "tariff": "0.30 EUR/kWh",
    "hours_per_day": "5 h",
    "photos": {
        "cover": {"file": "bench-lit.png", "alt": "A potting bench under two rows of bulbs at night (drawn)"},
        "lit": {"file": "bench-lit.png", "alt": "Both rows lit above three pots (drawn)"},
        "unlit": {"file": "bench-unlit.png", "alt": "The same bench by day (drawn)"},
    },
    "steps": [
        {
            "step": "hang",
            "text": "Begin at the *window*, so that the feeder stays short.",
            "note": "Brass hooks do not rust.",
            "photo": {"file": "bench-unlit.png", "alt": "Both rows hung up (drawn)"},
        }
    ],
    "story": "We wanted light over the bench, and none in the neighbours' windows.",
    "licence": "CC BY 4.0",
    "days_per_season": "90",
}
# What a key that is written as a note has behind it, where its reader alone does not tell.
NOTED = {
    "loop": "1.8 ohm",
    "material": "copper",
    "typical": "warm white",
    "before": "hang",
    "after": "hang",
    "title": "Sweep up",
    "hooks": [{"x": "0 m", "y": "0 m", "height": "2.6 m"}],
}


def every_key() -> str:
    """The text of the file."""
    return "\n".join([HEAD, *_Writer().model(Project, STATED, (), "")]) + "\n"


class _Writer:
    """Writes models as YAML; a model that comes up again is written in one line, without notes."""

    def __init__(self) -> None:
        self._seen: set[type[Model]] = set()

    def model(self, model: type[Model], data: dict[str, Any], key: Key, indent: str) -> Iterator[str]:
        """A line or more for every key of the model."""
        self._seen.add(model)
        for name, field in model.model_fields.items():
            if not key and name != "title":
                yield ""
            inner = (*key, name)
            yield from _notes(inner, field, indent)
            if name in data:
                yield from self._value(name, data[name], full_type(field), inner, indent)
            else:
                noted = NOTED.get(name) or _example(full_type(field))
                lines = self._value(name, noted, full_type(field), inner, indent)
                yield from (f"{indent}# {line.removeprefix(indent)}" for line in lines)

    def _value(self, name: str, data: Any, kind: Any, key: Key, indent: str) -> Iterator[str]:
        if isinstance(data, str):
            yield f"{indent}{name}: {data}"
        elif isinstance(data, list):
            yield f"{indent}{name}:"
            yield from self._entry(data[0], inner_type(kind, 0), (*key, 0), indent)
        elif get_origin(bare(kind)) is dict:
            own = next(iter(data))
            yield f"{indent}{name}:"
            yield f"{indent}  # The name is your own."
            yield f"{indent}  {own}:"
            yield from self._inside(data[own], inner_type(kind, own), (*key, own), f"{indent}    ")
        elif model_of(kind) in self._seen:
            yield f"{indent}{name}: {_flow(data)}"
        else:
            yield f"{indent}{name}:"
            yield from self._inside(data, kind, key, f"{indent}  ")

    def _inside(self, data: dict[str, Any], kind: Any, key: Key, indent: str) -> Iterator[str]:
        model = model_of(kind)
        assert model is not None
        yield from self.model(model, data, key, indent)

    def _entry(self, data: dict[str, Any], kind: Any, key: Key, indent: str) -> Iterator[str]:
        """One entry of a list: the dash stands before its first key."""
        lines = list(self._inside(data, kind, key, f"{indent}    "))
        first = next(place for place, line in enumerate(lines) if not line.lstrip().startswith("#"))
        lines[first] = f"{indent}  - {lines[first].lstrip()}"
        yield from lines


def _flow(data: Any) -> str:
    if isinstance(data, str):
        return data
    return "{" + ", ".join(f"{name}: {_flow(value)}" for name, value in data.items()) + "}"


def _notes(key: Key, field: FieldInfo, indent: str) -> list[str]:
    """What the key means, and on lines of their own what may be written and what holds without it."""
    description = description_at(key)
    words = expected_at(key).removesuffix(f" ({description})")
    allowed = "" if model_of(full_type(field)) else words
    more = "; ".join(filter(None, (allowed, _default(field))))
    return [*_wrapped(description, f"{indent}# "), *(_wrapped(more, f"{indent}#   ") if more else [])]


def _wrapped(text: str, begin: str) -> list[str]:
    return textwrap.wrap(text, WIDTH, initial_indent=begin, subsequent_indent=begin)


def _default(field: FieldInfo) -> str:
    """What holds without the key, where its description does not tell."""
    if field.is_required():
        return "required"
    told = any(word in (field.description or "") for word in ("default", "left out", "instead of"))
    if told or not isinstance(field.default, str | int | float) or field.default == "":
        return ""
    if isinstance(field.default, str):
        return f"default {field.default}"
    reader = reader_of(full_type(field))
    unit = SI_NAMES[reader.dimension] if isinstance(reader, Quantity) else ""
    return f"default {field.default:g} {unit}".strip()


def _example(kind: Any) -> str:
    """Something that the key takes, from the words of its reader or its choices."""
    reader, choices = reader_of(kind), choices_of(kind)
    if choices:
        return choices[0]
    if isinstance(reader, Quantity):
        return KINDS[reader.dimension].example
    words = reader.expected() if reader else "..."
    return words.rpartition("such as ")[2] if "such as " in words else "..."


if __name__ == "__main__":
    FILE.write_text(every_key(), "utf-8")
