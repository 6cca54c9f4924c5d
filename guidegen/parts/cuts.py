"""What is cut: the strings behind their bulbs, and wire to length with its joint allowances."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from guidegen.circuit.arrangement import Arrangement, Cable, Conductor, Piece, RunPlan
from guidegen.tables.hanging import DRIP_LOOP_M

#: Added at each end of a wire for stripping, joint and strain relief, metre; common practice, no source.
END_ALLOWANCE_M = 0.10

WireKey = Literal["lead", "feeder", "extra"]


@dataclass(frozen=True)
class StringCut:
    """A cut right behind a bulb: of the string as bought, and of the run that ends there.

    `run` is the run's index, `run_bulb` the bulb's number in the run.
    """

    run: int
    string: str
    string_number: int
    behind_bulb: int
    run_bulb: int


@dataclass(frozen=True)
class WireCut:
    """A piece of wire: `route_m` as planned, `cut_m` with its allowances; `run` None for the shared lead."""

    key: WireKey
    run: int | None
    cores: int
    conductor: Conductor
    route_m: float
    cut_m: float


@dataclass(frozen=True)
class Taken:
    """Part of a bought string that a run uses."""

    run: int
    string: str
    piece: Piece
    length_m: float


def string_cuts(arrangement: Arrangement) -> tuple[StringCut, ...]:
    """Every cut behind a bulb, run by run."""
    return tuple(cut for index, run in enumerate(arrangement.runs) for cut in run_cuts(run, index))


def run_cuts(run: RunPlan, index: int) -> tuple[StringCut, ...]:
    """Cuts that end one run's pieces before their string ends."""
    found, bulbs = [], 0
    for piece in run.pieces:
        bulbs += piece.bulbs
        if piece.cut_behind:
            found.append(StringCut(index, run.string, piece.string_number, piece.last, bulbs))
    return tuple(found)


def taken_pieces(arrangement: Arrangement) -> tuple[Taken, ...]:
    """What every run takes of which string, with the wire in front of its bulbs."""
    found = []
    for index, run in enumerate(arrangement.runs):
        start = 0
        for piece in run.pieces:
            stop = start + piece.bulbs
            found.append(Taken(index, run.string, piece, float(run.segment_m[start:stop].sum())))
            start = stop
    return tuple(found)


def wire_cuts(arrangement: Arrangement) -> tuple[WireCut, ...]:
    """Every piece of wire, the shared lead first, then run by run."""
    end_m = end_allowance_m(arrangement)
    cuts = [_cut("lead", None, 2, arrangement.supply.lead, end_m)]
    for index, run in enumerate(arrangement.runs):
        cuts.append(_cut("feeder", index, 2, run.feeder, end_m))
        if run.feed != "one end":
            cuts.append(_cut("extra", index, 1 if run.feed == "opposite ends" else 2, run.extra, end_m))
    return tuple(cut for cut in cuts if cut is not None)


def end_allowance_m(arrangement: Arrangement) -> float:
    """What a wire gets at each end beyond its route: strip, joint and strain relief, outdoors a drip loop."""
    return END_ALLOWANCE_M + (DRIP_LOOP_M.value if arrangement.outdoors else 0.0)


def _cut(key: WireKey, run: int | None, cores: int, cable: Cable | None, end_m: float) -> WireCut | None:
    if cable is None or cable.length_m <= 0:
        return None
    return WireCut(key, run, cores, cable.conductor, cable.length_m, cable.length_m + 2 * end_m)
