"""Runs written as YAML read back as the same runs."""

from __future__ import annotations

import pytest
import yaml

from guidegen.project.runs_text import name_text, place_text, runs_text
from guidegen.project.schema import Run
from guidegen.project.supply_at import AtHook, AtPoint, SupplyPlace

RUN = {
    "name": "back rail",
    "string": "drop",
    "bulbs": 24,
    "feed": "opposite ends",
    "resistor": "4.7 ohm",
    "feeder": {"length": "0.015 m", "wire": {"area": "0.25 mm2"}},
    "extra_wire": {"length": "1000 m", "wire": {"area": "1.5 mm2"}},
    "first_hung": "last bulb",
}


def test_every_key_of_a_proposed_run_reads_back() -> None:
    run = Run.model_validate(RUN)
    (read,) = yaml.load(runs_text((run,)), yaml.BaseLoader)["runs"]
    again = Run.model_validate(read)
    assert again == run


@pytest.mark.parametrize("resistor", ["none", None])
def test_no_resistor_and_an_open_one_stay_so(resistor: str | None) -> None:
    run = Run.model_validate({"bulbs": 2, "resistor": resistor})
    (read,) = yaml.load(runs_text((run,)), yaml.BaseLoader)["runs"]
    assert Run.model_validate(read).resistor == resistor


@pytest.mark.parametrize(
    "name", ["yes", "No", "drop: 1", 'a "b" #c', "Lauf 1", "Rückwand", "12", "- x", "{a}"]
)
def test_every_name_reads_back_as_the_same_text(name: str) -> None:
    assert yaml.safe_load(f"name: {name_text(name)}") == {"name": name}


@pytest.mark.parametrize(
    ("place", "text"),
    [
        ("start", "start"),
        (2.5, "2.5 m"),
        (AtHook(3), "H3"),
        (AtPoint(2.0, -0.5), '"2 m, -0.5 m"'),
    ],
)
def test_places_are_written_as_the_key_takes_them(place: SupplyPlace, text: str) -> None:
    assert place_text(place) == text
