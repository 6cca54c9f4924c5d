"""Test points: numbered places to put the meter, from the arrangement alone.

T1, T2, ... are the same in the schematic, the steps and the readings sheet.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from guidegen.circuit.arrangement import Arrangement, RunPlan

PointKind = Literal["supply", "resistor volts", "after resistor", "bulb"]


@dataclass(frozen=True)
class TestPoint:
    """A place to put both leads of the meter.

    `run` is the index of the run (None for the supply); `bulb` the bulb's
    number in the run (None where the point is no bulb).
    """

    __test__ = False

    number: int
    kind: PointKind
    run: int | None = None
    bulb: int | None = None

    @property
    def label(self) -> str:
        """As printed everywhere: T1, T2, ..."""
        return f"T{self.number}"


def test_points(arrangement: Arrangement) -> tuple[TestPoint, ...]:
    """Every test point, the supply first, then run by run."""
    places: list[tuple[PointKind, int | None, int | None]] = [("supply", None, None)]
    for index, run in enumerate(arrangement.runs):
        if run.resistor.fitted:
            places.append(("resistor volts", index, None))
        places.append(("after resistor", index, None))
        places.extend(("bulb", index, bulb) for bulb in bare_bulbs(run))
    return tuple(TestPoint(number, *place) for number, place in enumerate(places, start=1))


test_points.__test__ = False  # type: ignore[attr-defined]


def bare_bulbs(run: RunPlan) -> tuple[int, ...]:
    """Numbers of the bulbs right beside which both poles come out as bare metal, so that a meter can tell.

    That is where wires are joined or end cut: the fed bulb in the middle, the
    join nearest to the middle, the last bulb, and bulb 1 where its lead-in
    feeds nothing.  A bulb within its cable shows no metal, nor does an end
    that its maker closed.
    """
    middle = -(-run.bulbs // 2)
    found = {min(run.joins, key=lambda bulb: abs(bulb - middle))} if run.joins else set()
    if run.feed == "middle":
        found |= {1, run.fed_bulb}
    if run.feed in ("both ends", "opposite ends") or run.pieces[-1].cut_behind:
        found.add(run.bulbs)
    return tuple(sorted(found))


def in_front(run: RunPlan, bulb: int) -> bool:
    """Whether a bulb's bare metal lies in front of it: on the open lead-in of a run fed in the middle."""
    return run.feed == "middle" and bulb == 1 < run.fed_bulb


def telling_bulbs(run: RunPlan) -> tuple[int, ...]:
    """Numbers of the bulbs that tell most of the run's light: the first, the middle one and the last."""
    middle = -(-run.bulbs // 2)
    return tuple(sorted({1, middle, run.bulbs}))
