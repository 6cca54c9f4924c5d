"""Where wires are joined and where live ends stay open, from the arrangement alone.

Everything on the strings' side of the feeder is soldered; the supply end is
made with terminals.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from guidegen.circuit.arrangement import Arrangement, RunPlan

Pole = Literal["+", "-"]
BOTH: tuple[Pole, ...] = ("+", "-")
#: "feed": feeder onto the lead-in; "extension": feeder onto the extra wire alone; "tap": extra wire onto
#: a bulb within the run; "far end": extra wire onto the last bulb; "join": two pieces of string.
JointPlace = Literal["feed", "extension", "tap", "join", "far end"]


@dataclass(frozen=True)
class Joint:
    """One place where cables are soldered together, one joint a pole.

    `run` is the run's index; `behind_bulb` the bulb of the run behind which
    it lies (0: before bulb 1, None: away from the bulbs); `wires` how many
    wires meet at each pole.
    """

    run: int
    place: JointPlace
    poles: tuple[Pole, ...]
    behind_bulb: int | None
    wires: int = 2


@dataclass(frozen=True)
class DeadEnd:
    """Conductors that carry volts and end: each is capped apart.

    `made` tells that the string's own closed end may stay as it is.
    """

    run: int
    place: Literal["lead-in", "far end"]
    poles: tuple[Pole, ...]
    made: bool = False


def joints(arrangement: Arrangement) -> tuple[Joint, ...]:
    """Every soldered place, run by run, from the supply outwards."""
    return tuple(joint for index, run in enumerate(arrangement.runs) for joint in run_joints(run, index))


def run_joints(run: RunPlan, index: int) -> tuple[Joint, ...]:
    """Soldered places of one run: the feed, the joins behind bulbs, the far end."""
    between = [Joint(index, "join", BOTH, bulb) for bulb in run.joins]
    return (*_near(run, index), *between, *_far(run, index))


def dead_ends(arrangement: Arrangement) -> tuple[DeadEnd, ...]:
    """Every live end, run by run."""
    return tuple(end for index, run in enumerate(arrangement.runs) for end in run_dead_ends(run, index))


def run_dead_ends(run: RunPlan, index: int) -> tuple[DeadEnd, ...]:
    """Live ends of one run: what the feed leaves open at its two ends."""
    lead_in, far = _open_poles(run)
    made = not run.pieces[-1].cut_behind and len(far) == len(BOTH)
    ends = []
    if lead_in:
        ends.append(DeadEnd(index, "lead-in", lead_in))
    if far:
        ends.append(DeadEnd(index, "far end", far, made))
    return tuple(ends)


def _near(run: RunPlan, index: int) -> list[Joint]:
    if run.feed == "one end":
        return [Joint(index, "feed", BOTH, 0)]
    if run.feed == "both ends":
        return [Joint(index, "feed", BOTH, 0, wires=3)]
    if run.feed == "opposite ends":
        return [Joint(index, "feed", ("+",), 0), Joint(index, "extension", ("-",), None)]
    return [Joint(index, "extension", BOTH, None), Joint(index, "tap", BOTH, run.fed_bulb, wires=3)]


def _far(run: RunPlan, index: int) -> list[Joint]:
    if run.feed == "both ends":
        return [Joint(index, "far end", BOTH, run.bulbs)]
    if run.feed == "opposite ends":
        return [Joint(index, "far end", ("-",), run.bulbs)]
    return []


def _open_poles(run: RunPlan) -> tuple[tuple[Pole, ...], tuple[Pole, ...]]:
    """Poles left open at the lead-in and at the far end."""
    if run.feed == "one end":
        return (), BOTH
    if run.feed == "middle":
        return BOTH, BOTH
    if run.feed == "opposite ends":
        return ("-",), ("+",)
    return (), ()
