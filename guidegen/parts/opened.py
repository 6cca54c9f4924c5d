"""Where the strings of a run are opened: bulbs as bought whose wires are bared sooner or later."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from guidegen.circuit.arrangement import RunPlan


@dataclass(frozen=True)
class Bared:
    """A bulb of a bought string, by the string's number and the bulb's as bought; `closed`: a maker's end."""

    string_number: int
    bulb: int
    closed: bool


def opened(run: RunPlan) -> Iterator[Bared]:
    """Bulbs behind which a run's strings are opened: cut ends, joins, far joints, the tap."""
    begin = 0
    for place, piece in enumerate(run.pieces):
        last = place == len(run.pieces) - 1
        if piece.cut_behind or not last or run.feed in ("both ends", "opposite ends"):
            yield Bared(piece.string_number, piece.last, not piece.cut_behind)
        if run.feed == "middle" and begin < run.fed_bulb <= begin + piece.bulbs:
            bulb = piece.first + run.fed_bulb - begin - 1
            yield Bared(piece.string_number, bulb, bulb == piece.string_bulbs)
        begin += piece.bulbs


def first_bared(runs: Iterable[RunPlan], name: str) -> Bared | None:
    """The first place where a string of this kind is cut, joined or tapped; None if every one stays whole.

    There a whole string is read on the bench.
    """
    return next((place for run in runs if run.string == name for place in opened(run)), None)
