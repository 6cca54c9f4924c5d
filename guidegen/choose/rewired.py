"""The maker's own arrangement with the sizes of wire of a proposal: what of the cost is wire alone."""

from __future__ import annotations

from dataclasses import dataclass, replace

from guidegen.choose.choice import Proposal
from guidegen.choose.costs import cost_of
from guidegen.choose.pool import size_conductor
from guidegen.circuit.arrangement import Cable
from guidegen.circuit.solve import solve
from guidegen.project.schema import Project


@dataclass(frozen=True)
class Rewired:
    """What it would cost, and how even it would be, its lengths and resistors being as they are."""

    money: float
    evenness: float


def rewired(project: Project, mine: Proposal, other: Proposal) -> Rewired | None:
    """`mine` with the sizes of feeders and extra wires of `other`; None where that changes nothing.

    `other` was searched for; whether such wire keeps every limit is not
    looked at.
    """
    feeder_mm2, extra_mm2 = other.sizes_mm2
    arrangement = mine.worked.arrangement
    runs = tuple(
        replace(run, feeder=_of_size(run.feeder, feeder_mm2), extra=_of_size(run.extra, extra_mm2))
        for run in arrangement.runs
    )
    wires = [(run.feeder, run.extra) for run in arrangement.runs]
    if other.layout is None or all(
        old is None or new is None or old.conductor == new.conductor
        for pair, run in zip(wires, runs, strict=True)
        for old, new in zip(pair, (run.feeder, run.extra), strict=True)
    ):
        return None
    changed = replace(arrangement, runs=runs)
    return Rewired(cost_of(project, changed).money, solve(changed).evenness)


def _of_size(cable: Cable | None, area_mm2: float) -> Cable | None:
    return None if cable is None else replace(cable, conductor=size_conductor(area_mm2))
