"""Where wires are joined and where live ends stay open, from the arrangement alone.

Everything on the strings' side of the feeder is soldered; the supply end is
made with terminals, and a run without a feeder goes straight into them.
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


@dataclass(frozen=True)
class Cover:
    """What lies under one outer sleeve: joints, and live ends beside them.

    `forked`: two cables leave the same end of the sleeve.
    """

    joints: tuple[Joint, ...]
    ends: tuple[DeadEnd, ...] = ()
    forked: bool = False

    @property
    def soldered_poles(self) -> int:
        """Soldered joints of one conductor each."""
        return sum(len(joint.poles) for joint in self.joints)

    @property
    def capped_poles(self) -> int:
        """Conductors that end here and are capped."""
        return sum(len(end.poles) for end in self.ends)


def joints(arrangement: Arrangement) -> tuple[Joint, ...]:
    """Every soldered joint, run by run, from the supply outwards."""
    return tuple(joint for index, run in enumerate(arrangement.runs) for joint in run_joints(run, index))


def run_joints(run: RunPlan, index: int) -> tuple[Joint, ...]:
    """Soldered joints of one run: the feed, the joins behind bulbs, the far end.

    Where the bulb fed in the middle ends a piece, all wires meet in one joint.
    """
    tapped = run.fed_bulb if run.feed == "middle" else None
    between = [Joint(index, "join", BOTH, bulb) for bulb in run.joins if bulb != tapped]
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


def covers(arrangement: Arrangement) -> tuple[Cover, ...]:
    """Every outer sleeve, run by run."""
    return tuple(cover for index, run in enumerate(arrangement.runs) for cover in run_covers(run, index))


def run_covers(run: RunPlan, index: int) -> tuple[Cover, ...]:
    """Outer sleeves of one run: joints at one place share one, with the live end that lies there."""
    found = run_joints(run, index)
    near = tuple(joint for joint in found if joint.place in ("feed", "extension"))
    left = [end for end in run_dead_ends(run, index) if not end.made]
    made = []
    if near:
        made.append(Cover(near, _beside(left, "lead-in", "feed", near), run.feed in _FORKED))
    for joint in found[len(near) :]:
        ends = _beside(left, "far end", "far end", (joint,))
        made.append(Cover((joint,), ends, joint.place == "tap" and joint.wires > 2))
    return (*made, *(Cover((), (end,)) for end in left))


_FORKED = ("both ends", "opposite ends")


def _beside(
    left: list[DeadEnd], place: str, joint_place: JointPlace, found: tuple[Joint, ...]
) -> tuple[DeadEnd, ...]:
    """Take the live ends that lie beside such a joint out of those left."""
    if all(joint.place != joint_place for joint in found):
        return ()
    beside = tuple(end for end in left if end.place == place)
    left[:] = [end for end in left if end.place != place]
    return beside


def entries(arrangement: Arrangement) -> int:
    """Cables that go into the box or the socket, each held by a tie."""
    lead = 0 if arrangement.supply.lead is None else 2
    return lead + sum(supply_cables(run) for run in arrangement.runs)


def supply_cables(run: RunPlan) -> int:
    """Cables of a run at the supply end: its feeder, else string and extra wire themselves."""
    return 2 if run.feeder is None and run.feed in _FORKED else 1


def _near(run: RunPlan, index: int) -> list[Joint]:
    tap = [_tap(run, index)] if run.feed == "middle" else []
    if run.feeder is None:
        return tap
    if run.feed == "one end":
        return [Joint(index, "feed", BOTH, 0)]
    if run.feed == "both ends":
        return [Joint(index, "feed", BOTH, 0, wires=3)]
    if run.feed == "opposite ends":
        return [Joint(index, "feed", ("+",), 0), Joint(index, "extension", ("-",), None)]
    return [Joint(index, "extension", BOTH, None), *tap]


def _tap(run: RunPlan, index: int) -> Joint:
    return Joint(index, "tap", BOTH, run.fed_bulb, wires=2 if run.fed_bulb == run.bulbs else 3)


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
        return BOTH, () if run.fed_bulb == run.bulbs else BOTH
    if run.feed == "opposite ends":
        return ("-",), ("+",)
    return (), ()
