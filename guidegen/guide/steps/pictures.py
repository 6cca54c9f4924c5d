"""Which step has which picture."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from guidegen.guide.matter import Matter
from guidegen.guide.steps import picture_ids as ids
from guidegen.guide.steps.draft import DraftGroup
from guidegen.guide.steps.strings import identity_of
from guidegen.guide.words import step_identity

_ALWAYS = {
    "supply-marks": ids.SUPPLY_MARKS,
    "supply-volts": ids.SUPPLY_VOLTS,
    "cut-wires": ids.CUT_WIRES,
    "labels": ids.LABELS,
    "fuse-holder": ids.FUSE_HOLDER,
    "measure-resistors": ids.MEASURE_RESISTOR,
    "mount-resistors": ids.MOUNT_RESISTORS,
    "fuse-in": ids.FUSE_IN,
    "close-joints": ids.SLEEVES,
    "strain-relief": ids.STRAIN_LOOP,
    "all-runs": ids.ALL_RUNS,
    "close-box": ids.CLOSE_BOX,
    "first-hour": ids.FIRST_HOUR,
    "hang": ids.HANG,
    "last-readings": ids.BOX_POINTS,
}
_OF_EVERY_KIND = {
    "low-voltage-string": ids.LOW_VOLTAGE,
    "parallel-test": ids.FEED_VOLTS,
    "free-the-tail": ids.CUT_BOX,
}
_OF_EVERY_RUN = {
    "take-pieces": ids.pieces_picture,
    "feed": ids.feed_picture,
    "tap": ids.tap_picture,
    "far-end": ids.far_end_picture,
    "cold-test": ids.cold_picture,
    "larger-resistor": ids.first_power_picture,
    "readings": ids.points_picture,
}


def with_pictures(matter: Matter, groups: Sequence[DraftGroup]) -> tuple[DraftGroup, ...]:
    """The groups with a picture at every step for which a drawing says more than words."""
    by_step = dict(_pictures(matter))
    return tuple(
        replace(
            group,
            steps=tuple(
                replace(draft, picture=draft.picture or by_step.get(draft.identity, ""))
                for draft in group.steps
            ),
        )
        for group in groups
    )


def _pictures(matter: Matter) -> Iterator[tuple[str, str]]:
    """Identity of a step and the id of its picture."""
    yield from _ALWAYS.items()
    for number, (name, _kind) in enumerate(matter.kinds):
        yield identity_of(matter, "count-wires", name), ids.wires_picture(number)
        yield identity_of(matter, "bench-reading", name), ids.bench_picture(number)
        for stem, picture in _OF_EVERY_KIND.items():
            yield identity_of(matter, stem, name), picture
    for index in range(len(matter.runs)):
        yield from _of_run(matter, index)


def _of_run(matter: Matter, index: int) -> Iterator[tuple[str, str]]:
    run = matter.runs[index]
    for stem, picture_of in _OF_EVERY_RUN.items():
        yield step_identity(stem, index), picture_of(index)
    for bulb in run.joins:
        yield f"join-behind-bulb-{bulb}-run-{index + 1}", ids.join_picture(bulb)
    yield step_identity("test-pieces", index), _piece_picture(matter, index)


def _piece_picture(matter: Matter, index: int) -> str:
    """How a piece is lit alone: alike in all runs, but where every other bulb lights."""
    return {
        "all": ids.TEST_PIECE,
        "half": ids.half_piece_picture(index),
        "half of each bulb": ids.EITHER_WAY_PIECE,
    }[matter.kind_of(matter.runs[index]).lit_on_dc]
