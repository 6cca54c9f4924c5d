"""What an arrangement is: every decision made, in numbers, before anything is solved.

Lengths in metre, resistances in ohm at 20 degC, one conductor unless said
otherwise; arrays run over the bulbs of a run, from its fed end on.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from guidegen.calc.led import Curve
from guidegen.tables.conductors import COPPER_PER_K

Feed = Literal["one end", "middle", "both ends", "opposite ends"]
LedSource = Literal["typical", "given", "bench"]
Floats = NDArray[np.float64]


@dataclass(frozen=True)
class LedEstimate:
    """What is known of a string's LEDs.

    `voltage_low_v` and `voltage_high_v` bound the mean LED's volts at the
    curve's own current (95 % or the band of a typical curve); `fitted` names
    the parameters that bench readings fixed; `colour` is that of a typical
    curve.  The uncertainties are standard ones; `covariance` (3, 3) is that
    of volts, slope and resistance, empty where they err apart.
    """

    curve: Curve
    source: LedSource
    voltage_low_v: float
    voltage_high_v: float
    fitted: tuple[str, ...] = ()
    colour: str | None = None
    voltage_u_v: float = 0.0
    slope_u_v: float = 0.0
    resistance_u_ohm: float = 0.0
    covariance: tuple[tuple[float, ...], ...] = ()

    @property
    def spread(self) -> Floats:
        """Covariance (3, 3) of volts, slope (V) and resistance (ohm)."""
        apart = (self.voltage_u_v, self.slope_u_v, self.resistance_u_ohm)
        return np.array(self.covariance) if self.covariance else np.diag(np.square(apart))


@dataclass(frozen=True)
class LedLimit:
    """Largest current of one LED, ampere, and where it is from.

    "stated" in the file, "cells": solved on the fresh cells the string came
    with, or "assumed".
    """

    current_a: float
    source: Literal["stated", "cells", "assumed"]


@dataclass(frozen=True)
class Conductor:
    """A kind of wire, one conductor of it.

    `ohm_per_m` at 20 degC; `area_m2` is the stated one, or the equivalent
    copper area where only ohms are known (`inferred`); `limit_a` is the
    table's current limit, `per_k` its change with temperature; `low_factor` and `high_factor` bound the true
    resistance over the nominal one.
    """

    ohm_per_m: float
    area_m2: float
    inferred: bool
    measured: bool
    limit_a: float
    low_factor: float
    high_factor: float
    per_k: float = COPPER_PER_K.value
    material: str = "copper"
    gauge: float | None = None


@dataclass(frozen=True)
class Cable:
    """A length of wire (route, one way) and what it is made of."""

    length_m: float
    conductor: Conductor

    @property
    def ohm(self) -> float:
        """One conductor over the whole length, at 20 degC."""
        return self.length_m * self.conductor.ohm_per_m


@dataclass(frozen=True)
class Piece:
    """Part of one bought string: bulbs `first` to `last`, counted as bought from 1."""

    string_number: int
    first: int
    last: int
    string_bulbs: int

    @property
    def bulbs(self) -> int:
        """How many bulbs the piece has."""
        return self.last - self.first + 1

    @property
    def has_tail(self) -> bool:
        """Whether the piece begins with the string's own tail."""
        return self.first == 1

    @property
    def cut_behind(self) -> bool:
        """Whether the string is cut behind the last bulb of the piece."""
        return self.last < self.string_bulbs


@dataclass(frozen=True)
class Resistor:
    """The resistor of a run; 0 ohm with `fitted` False means none.

    `chosen` tells that its ohms were left to the tool, `rating_chosen` and
    `kind_chosen` likewise.  `rating_w` and `kind` are None until picked.
    """

    ohm: float
    tolerance: float
    rating_w: float | None
    kind: str | None
    fitted: bool = True
    chosen: bool = False
    rating_chosen: bool = False
    kind_chosen: bool = False


@dataclass(frozen=True, eq=False)
class RunPlan:
    """One run: its bulbs, wires and resistor.

    `lit_groups` (n,): groups that light in each bulb, 0 for a dark one;
    `segment_m` (n,): wire in front of each bulb (the lead-in, then bulb to
    bulb); `position_m` (n,): distance of each bulb along the run.
    """

    name: str
    string: str
    feed: Feed
    pieces: tuple[Piece, ...]
    lit_groups: Floats
    segment_m: Floats
    position_m: Floats
    conductor: Conductor
    groups: int
    leds_in_series: int
    group_ohm: float
    led: LedEstimate
    led_limit: LedLimit
    resistor: Resistor
    feeder: Cable | None
    extra: Cable | None
    cuttable: bool
    series: str = "E12"

    @property
    def bulbs(self) -> int:
        """Bulbs of the run."""
        return len(self.segment_m)

    @property
    def fed_bulb(self) -> int:
        """Number of the bulb where the run's + enters, from 1."""
        return -(-self.bulbs // 2) if self.feed == "middle" else 1

    @property
    def length_m(self) -> float:
        """Wire from the start of the lead-in to the last bulb."""
        return float(self.position_m[-1])

    @property
    def joins(self) -> tuple[int, ...]:
        """Numbers of the bulbs behind which two pieces are joined."""
        return tuple(int(n) for n in np.cumsum([piece.bulbs for piece in self.pieces])[:-1])

    @property
    def leds_lit(self) -> Floats:
        """Lit LEDs of each bulb (n,)."""
        return self.lit_groups * self.leds_in_series


def half_lit(numbers: NDArray[np.int_]) -> NDArray[np.bool_]:
    """Which bulbs of a two-way string light, by their numbers as bought (n,): 1, 3, 5, ...

    With plus and minus swapped the others do.
    """
    lit: NDArray[np.bool_] = numbers % 2 == 1
    return lit


@dataclass(frozen=True)
class SupplyPlan:
    """The supply as the circuit sees it; volts at no load, `tolerance` a ratio."""

    voltage_v: float
    tolerance: float
    rated_a: float
    output_ohm: float
    limit_a: float
    lead: Cable | None

    @property
    def upper_v(self) -> float:
        """Highest no-load volts."""
        return self.voltage_v * (1 + self.tolerance)

    @property
    def lower_v(self) -> float:
        """Lowest no-load volts."""
        return self.voltage_v * (1 - self.tolerance)


@dataclass(frozen=True)
class Fuse:
    """The fuse; `rating_a` is None until picked."""

    rating_a: float | None
    standard: Literal["IEC", "UL"]
    chosen: bool = False


@dataclass(frozen=True, eq=False)
class Arrangement:
    """Every decision of one installation; `outdoors`: rain can reach wires, so they get drip loops."""

    supply: SupplyPlan
    fuse: Fuse
    runs: tuple[RunPlan, ...]
    coldest_c: float
    warmest_c: float
    light_exponent: float = 1.0
    outdoors: bool = False
