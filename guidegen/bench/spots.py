"""Where a meter can be put on a finished build, and what many states of it show there."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from guidegen.circuit.arrangement import Arrangement, Floats
from guidegen.circuit.draws import Draws

SpotKind = Literal["supply", "resistor volts", "after resistor", "bulb", "current"]


@dataclass(frozen=True)
class Spot:
    """A place to read: `run` counts from 0 (None: the supply, or the current of all runs), `bulb` from 1."""

    kind: SpotKind
    run: int | None = None
    bulb: int | None = None

    @property
    def unit(self) -> Literal["V", "A"]:
        """What is read there."""
        return "A" if self.kind == "current" else "V"


def volts_at(states: Draws, spot: Spot) -> Floats:
    """True volts (S,) of S states at a spot that is no current."""
    if spot.run is None:
        return states.terminal_v
    run = states.runs[spot.run]
    if spot.kind == "resistor volts":
        return run.resistor_v
    if spot.kind == "after resistor":
        return run.after_resistor_v
    assert spot.bulb is not None, "a bulb is read by its number"
    volts: Floats = run.bulb_v[:, spot.bulb - 1]
    return volts


def current_at(states: Draws, spot: Spot) -> Floats:
    """True current (S,) of a run, or of all of them."""
    return states.supply_a if spot.run is None else states.runs[spot.run].current_a


def all_volts(arrangement: Arrangement) -> tuple[Spot, ...]:
    """Every spot where volts can be read: the supply, and of each run its resistor, behind it, each bulb."""
    spots = [Spot("supply")]
    for index, run in enumerate(arrangement.runs):
        if run.resistor.fitted:
            spots.append(Spot("resistor volts", index))
        spots.append(Spot("after resistor", index))
        spots.extend(Spot("bulb", index, bulb) for bulb in range(1, run.bulbs + 1))
    return tuple(spots)


@dataclass(frozen=True)
class Taken:
    """A reading of the finished build, volt or ampere."""

    spot: Spot
    shown: float


def value_at(states: Draws, spot: Spot) -> Floats:
    """What is true (S,) at a spot in every state: volts or amperes."""
    return volts_at(states, spot) if spot.unit == "V" else current_at(states, spot)
