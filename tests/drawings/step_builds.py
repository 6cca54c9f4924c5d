"""Step pictures of real projects, for the tests of drawings."""

from __future__ import annotations

import json
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

from guidegen.drawings.bought import bought_for
from guidegen.drawings.picture import Picture
from guidegen.drawings.steps import step_makers
from guidegen.study import Study, study
from tests.guide.projects import FEEDS, changed, fed

LONG = "Shelf & bench <left> of $5 pots, row 1$!"


def project(*runs: dict[str, Any], **changes: Any) -> dict[str, Any]:
    """The plain project with these runs and with strings enough for them."""
    enough = {"strings__drop__bought": 40, "supply__rated_current": "9 A"}
    return changed(**(enough | changes), runs=list(runs))


def every_feed(bulbs: int, **changes: Any) -> dict[str, Any]:
    """One run of so many bulbs for every way to feed it."""
    runs = [
        fed(feed, bulbs, name=f"{number} {LONG}"[:40], resistor="330 ohm")
        for number, feed in enumerate(FEEDS)
    ]
    return project(*runs, **changes)


def studied(project: dict[str, Any]) -> Study:
    """The study of a project; it has to be solved."""
    with TemporaryDirectory() as folder:
        path = Path(folder) / "bench.yaml"
        path.write_text(json.dumps(project, ensure_ascii=False), encoding="utf-8")
        found = study(path)
    assert found.solved is not None, found.findings
    return found


def step_pictures(found: Study) -> dict[str, Picture]:
    """Every step picture there can be, by id."""
    assert found.solved is not None
    makers = step_makers(bought_for(found.project), found.solved.arrangement, found.solved.points)
    return {picture_id: make() for picture_id, make in makers.items()}
