"""Projects for the tests of the guide: a plain one, and changes to it."""

from __future__ import annotations

import json
from collections.abc import Iterator
from copy import deepcopy
from dataclasses import dataclass, fields, is_dataclass
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

from guidegen.bench.as_built import more_bulbs
from guidegen.circuit.spread import expected_spread
from guidegen.guide.blocks import Step
from guidegen.guide.compose import compose
from guidegen.guide.matter import Matter
from guidegen.guide.pages import BuildPage, Guide
from guidegen.study import Study, study

#: Few draws: these tests look at words and at where numbers come from, not at the ranges themselves.
DRAWS = 40

FEEDER = {"length": "2 m", "wire": {"area": "0.5 mm2"}}
EXTRA = {"length": "3 m", "wire": {"area": "0.5 mm2"}}
FEEDS = ("one end", "middle", "both ends", "opposite ends")

BASE: dict[str, Any] = {
    "title": "Bench lights",
    "summary": "A row of drops.",
    "place": {"exposure": "indoors", "mains": "existing outlet", "near_water": "none"},
    "strings": {
        "drop": {
            "bought": 2,
            "bulbs": 12,
            "leds_per_bulb": 3,
            "spacing": "25 cm",
            "tail": "50 cm",
            "between_bulbs": "parallel",
            "wire": {"area": "0.14 mm2"},
            "led": {"typical": "warm white"},
            "max_led_current": "20 mA",
        }
    },
    "supply": {
        "voltage": "5 V",
        "rated_current": "2 A",
        "case": "sealed",
        "insulation": "double",
    },
    "runs": [{"name": "shelf", "bulbs": 12, "resistor": "15 ohm", "feeder": FEEDER}],
    "fuse": "630 mA",
}


@dataclass(frozen=True)
class Made:
    """A study, its matter and its guide."""

    study: Study
    matter: Matter
    guide: Guide

    def page(self, name: str) -> Any:
        """The model of the page with this file name."""
        return next(page.model for page in self.guide.pages if page.name == name)

    @property
    def steps(self) -> tuple[Step, ...]:
        """All steps in order."""
        page: BuildPage = self.page("build.html")
        return tuple(step for group in page.groups for step in group.steps)

    @property
    def identities(self) -> tuple[str, ...]:
        """Identities of all steps in order."""
        return tuple(step.identity for step in self.steps)

    def step(self, identity: str) -> Step:
        """The step with this identity."""
        return next(step for step in self.steps if step.identity == identity)


def changed(**changes: Any) -> dict[str, Any]:
    """The plain project with keys changed; `strings__drop__bulbs=3` goes down the keys."""
    project = deepcopy(BASE)
    for path, value in changes.items():
        *above, last = path.split("__")
        place = project
        for key in above:
            place = place[key]
        place[last] = value
    return project


def fed(feed: str, bulbs: int = 12, **more: Any) -> dict[str, Any]:
    """A run with this feed."""
    run = {"name": "shelf", "bulbs": bulbs, "feed": feed, "resistor": "15 ohm", "feeder": FEEDER}
    extra = {} if feed == "one end" else {"extra_wire": EXTRA}
    return {**run, **extra, **more}


def make(project: dict[str, Any]) -> Made:
    """Study a project and compose its guide."""
    with TemporaryDirectory() as folder:
        path = Path(folder) / "bench.yaml"
        # JSON is YAML without anchors, which a project file may not have.
        path.write_text(json.dumps(project, ensure_ascii=False), encoding="utf-8")
        found = study(path)
    return of_study(found)


def of_study(found: Study) -> Made:
    """Compose the guide of a study."""
    assert found.solved is not None
    solved, bulbs = found.solved, more_bulbs(found.project, found.solved.points)
    spread = expected_spread(solved.arrangement, solved.solution, DRAWS, found.meter, bulbs)
    readings = spread.readings
    return Made(found, Matter(found, found.solved, readings), compose(found, readings))


def sample() -> Made:
    """The sample project."""
    return of_study(study(Path(__file__).parents[2] / "sample_project" / "potting-bench.yaml"))


def example(name: str) -> Made:
    """One of the example projects."""
    return of_study(study(Path(__file__).parents[1] / "examples" / f"{name}.yaml"))


def texts(model: object) -> Iterator[tuple[str, str]]:
    """Every text of a model with the name of its field."""
    if is_dataclass(model):
        for field in fields(model):
            value = getattr(model, field.name)
            if isinstance(value, str):
                yield field.name, value
            elif isinstance(value, tuple) and value and isinstance(value[0], str):
                yield from ((field.name, item) for item in value)
            else:
                yield from texts(value)
    elif isinstance(model, tuple):
        for item in model:
            if isinstance(item, tuple) and item and isinstance(item[0], str):
                yield from (("cell", cell) for cell in item)
            else:
                yield from texts(item)
