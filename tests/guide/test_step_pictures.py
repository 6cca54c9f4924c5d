"""Which steps have pictures, and that each of them can be drawn."""

from __future__ import annotations

from tests.drawings.step_builds import step_pictures
from tests.guide.projects import Made

#: Work that a drawing tells better than words.
DRAWN = (
    "supply-volts",
    "low-voltage-string",
    "cut-wires",
    "labels",
    "count-wires",
    "fuse-holder",
    "bench-reading",
    "take-pieces",
    "test-pieces",
    "join-",
    "feed-",
    "tap-",
    "far-end",
    "cold-test",
    "larger-resistor",
    "all-runs",
    "readings-run",
    "close-joints",
    "strain-relief",
    "close-box",
    "first-hour",
    "hang",
    "last-readings",
)


def test_every_picture_that_a_step_names_can_be_drawn(all_guides: tuple[Made, ...]) -> None:
    for made in all_guides:
        assert made.guide.step_pictures
        assert made.guide.step_pictures <= set(step_pictures(made.study))


def test_the_work_that_needs_a_picture_has_one(all_guides: tuple[Made, ...]) -> None:
    for made in all_guides:
        for step in made.steps:
            assert step.picture or not step.identity.startswith(DRAWN), step.identity


def test_every_kind_of_drawn_work_comes_up(all_guides: tuple[Made, ...]) -> None:
    identities = [step.identity for made in all_guides for step in made.steps]
    assert [stem for stem in DRAWN if not any(each.startswith(stem) for each in identities)] == []
