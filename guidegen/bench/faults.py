"""What can be wrong with a finished build: single faults, each as a family over how bad it is."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

import numpy as np

from guidegen.calc.preferred import between, next_above
from guidegen.circuit.arrangement import Arrangement, Resistor, RunPlan

FaultKind = Literal[
    "resistor value",
    "resistor decade",
    "supply",
    "reversed",
    "open",
    "joint",
    "dead leds",
    "meter burden",
    "more bulbs",
]
#: Where extra ohms or a break can lie, besides behind a bulb.
Place = Literal["lead", "ahead of resistor", "feeder", "lead-in", "extra wire", "behind bulb"]
Rail = Literal["plus", "minus", "both"]

#: How far a wrong supply is looked for, as shares of its volts.
_SUPPLY = (0.5, 0.6, 0.7, 0.8, 0.85, 0.9, 0.95, 1.05, 1.1, 1.15, 1.2, 1.3, 1.5, 1.8, 2.4)
_JOINT_OHM = (0.3, 0.6, 1.0, 1.7, 3.0, 5.0, 9.0, 16.0, 30.0, 60.0, 150.0)
_DEAD = (0.03, 0.08, 0.15, 0.25, 0.4, 0.55, 0.7, 0.85)
#: More than these ohms over what was allowed for.
_BURDEN_OHM = (0.5, 1.0, 2.0, 4.0, 8.0, 16.0, 40.0, 100.0)
_MORE = (1, 2, 3, 4, 6, 8, 12, 16, 24, 36, 50, 100)
_BEFORE: tuple[Place, Place] = ("ahead of resistor", "feeder")
#: Places of a break that are tried in one run, at most.
_MOST_PLACES = 40


@dataclass(frozen=True)
class Fault:
    """One fault of a certain size.

    `run` from 0 (None: it touches all); `place` and `rail` of extra ohms or
    a break; `bulb` the bulb behind which it lies; `piece` the piece of a
    string that is reversed, from 0.  `amount`: ohms of a resistor, joint or
    burden, share of the supply's volts, share of LEDs dead, bulbs too many.
    """

    kind: FaultKind
    run: int | None = None
    place: Place | None = None
    rail: Rail = "plus"
    bulb: int = 0
    piece: int = 0
    amount: float = 0.0


@dataclass(frozen=True)
class Family:
    """One fault over its sizes, ascending; `smooth` if sizes between them are possible too."""

    faults: tuple[Fault, ...]
    smooth: bool = False

    @property
    def head(self) -> Fault:
        """The first of the faults."""
        return self.faults[0]


def families(arrangement: Arrangement, runs: tuple[int, ...], *, currents: bool) -> tuple[Family, ...]:
    """Every fault that is looked for in these runs.

    `currents`: whether a current was read in line, which alone feels the
    meter's burden.
    """
    found = [*_of_supply(arrangement)]
    if currents:
        found.append(_grid(_BURDEN_OHM, "meter burden"))
    for index in runs:
        found += _of_run(arrangement.runs[index], index)
    return tuple(found)


def _of_supply(arrangement: Arrangement) -> Iterator[Family]:
    tolerance = arrangement.supply.tolerance
    low = [share for share in _SUPPLY if share < 1 - tolerance / 2]
    high = [share for share in _SUPPLY if share > 1 + tolerance / 2]
    yield _grid(low, "supply")
    yield _grid(high, "supply")
    yield Family((Fault("supply", amount=0.0),))
    yield Family((Fault("open", place="lead", rail="both"),))
    yield _grid(_JOINT_OHM, "joint", place="lead")


def _of_run(run: RunPlan, index: int) -> Iterator[Family]:
    yield from _of_resistor(run.resistor, run.series, index)
    yield _grid(_JOINT_OHM, "joint", index, place="ahead of resistor")
    yield _grid(_JOINT_OHM, "meter burden", index, place="ahead of resistor")
    yield _grid(_JOINT_OHM, "joint", index, place="feeder")
    yield from _of_joints(run, index)
    yield from _of_breaks(run, index)
    yield _grid(_DEAD, "dead leds", index)
    most = max(6, run.bulbs, *(piece.string_bulbs for piece in run.pieces))
    yield _grid([count for count in _MORE if count <= most], "more bulbs", index)
    # Where half of every bulb lights, it does so either way round, and no reading tells.
    if np.any(2 * run.lit_groups != run.groups):
        yield from (Family((Fault("reversed", index, piece=piece),)) for piece in range(len(run.pieces)))


def _of_resistor(resistor: Resistor, series: str, index: int) -> Iterator[Family]:
    if not resistor.fitted or resistor.ohm <= 0:
        return
    ohm = resistor.ohm
    neighbours = (between(series, ohm / 3, ohm * 0.999)[-1], next_above(series, ohm * 1.001))
    for other in neighbours:
        yield Family((Fault("resistor value", index, amount=other),))
    for other in (ohm / 10, ohm * 10):
        yield Family((Fault("resistor decade", index, amount=other),))


def _of_joints(run: RunPlan, index: int) -> Iterator[Family]:
    """Joints that the run really has: at the lead-in, between pieces, and of the extra wire."""
    rails: tuple[Rail, Rail] = ("plus", "minus")
    for rail in rails:
        if rail in own_rails(run):
            yield _grid(_JOINT_OHM, "joint", index, place="lead-in", rail=rail)
        if rail in extra_rails(run):
            yield _grid(_JOINT_OHM, "joint", index, place="extra wire", rail=rail)
        for bulb in run.joins:
            yield _grid(_JOINT_OHM, "joint", index, place="behind bulb", rail=rail, bulb=bulb)


def _of_breaks(run: RunPlan, index: int) -> Iterator[Family]:
    places = np.unique(np.linspace(0, run.bulbs - 1, min(run.bulbs, _MOST_PLACES)).astype(int))
    bulbs = sorted({*places.tolist(), *run.joins})
    rails: tuple[Rail, ...] = ("both",) if run.feed == "one end" else ("both", "plus", "minus")
    for rail in rails if run.bulbs > 1 else ():
        faults = (Fault("open", index, place="behind bulb", rail=rail, bulb=bulb) for bulb in bulbs if bulb)
        yield Family(tuple(faults))
    for place in _BEFORE:
        yield Family((Fault("open", index, place=place, rail="both"),))
    for rail in own_rails(run):
        yield Family((Fault("open", index, place="lead-in", rail=rail),))
    for rail in extra_rails(run):
        yield Family((Fault("open", index, place="extra wire", rail=rail),))


def own_rails(run: RunPlan) -> tuple[Rail, ...]:
    """Rails that the run's lead-in feeds."""
    return {"middle": (), "opposite ends": ("plus",)}.get(run.feed, ("plus", "minus"))  # type: ignore[return-value]


def extra_rails(run: RunPlan) -> tuple[Rail, ...]:
    """Rails that the extra wire feeds."""
    return {"one end": (), "opposite ends": ("minus",)}.get(run.feed, ("plus", "minus"))  # type: ignore[return-value]


def _grid(
    amounts: tuple[float, ...] | list[float] | tuple[int, ...] | list[int],
    kind: FaultKind,
    run: int | None = None,
    place: Place | None = None,
    rail: Rail = "plus",
    bulb: int = 0,
) -> Family:
    faults = tuple(Fault(kind, run, place, rail, bulb, amount=float(amount)) for amount in amounts)
    return Family(faults, smooth=True)
