"""Bench rows taken apart into single readings, each with its standard uncertainty."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from math import sqrt
from typing import Literal

from guidegen.calc.meter import accuracy
from guidegen.circuit.meter import Meter
from guidegen.locale import N_
from guidegen.project.schema import BenchReading
from guidegen.tables.limits import MeterRange
from guidegen.tables.sourced import Sourced

What = Literal["after resistor", "current"]

#: A resistor's true ohms lie this share from what is written, at most (gold band).
RESISTOR_SHARE = Sourced(0.05, N_("IEC 60062, gold tolerance band"))
#: A stated meter burden may be off by this share.
STATED_BURDEN_SHARE = Sourced(0.1, N_("own assumption"))
#: An assumed meter burden may be off by this many ohm.
ASSUMED_BURDEN_OHM = Sourced(1.0, N_("own assumption"))


@dataclass(frozen=True)
class Reading:
    """One meter value of bench row `row` (from 1): volts after the resistor, or amperes in line.

    `measured` and its standard uncertainty `u` in volt or ampere;
    `supply_v` +- `supply_u_v`: the source's volts; `resistor_ohm` +-
    `resistor_u_ohm`; `burden_ohm` +- `burden_u_ohm`: the meter in line (0
    for volts).
    """

    row: int
    what: What
    measured: float
    u: float
    supply_v: float
    supply_u_v: float
    resistor_ohm: float
    resistor_u_ohm: float
    burden_ohm: float = 0.0
    burden_u_ohm: float = 0.0

    @property
    def series_ohm(self) -> float:
        """Everything between the source and the string."""
        return self.resistor_ohm + self.burden_ohm

    @property
    def rough_a(self) -> float:
        """String current by Ohm's law alone."""
        if self.what == "current":
            return self.measured
        return (self.supply_v - self.measured) / self.resistor_ohm if self.resistor_ohm else 0.0

    @property
    def rough_v(self) -> float:
        """Volts at the string by Ohm's law alone."""
        if self.what == "current":
            return self.supply_v - self.measured * self.series_ohm
        return self.measured

    @property
    def tells(self) -> bool:
        """Whether the reading says anything of the LEDs and can be true at all."""
        return self.rough_a > 0 and self.rough_v > 0


def readings_of(rows: tuple[BenchReading, ...], meter: Meter) -> tuple[Reading, ...]:
    """Every reading in the order of the rows."""
    return tuple(
        reading for number, row in enumerate(rows, start=1) for reading in _split(number, row, meter)
    )


def standard_u(reading: float, scale: MeterRange) -> float:
    """Standard uncertainty of a meter value: its stated limits, evenly filled (JCGM 100, 4.3.7)."""
    return accuracy(reading, scale.share, scale.digits, scale.step) / sqrt(3)


def burden_of(row: BenchReading, meter: Meter) -> tuple[float, float]:
    """Ohms of the meter in line and their standard uncertainty; `meter`'s where not stated."""
    if row.meter_burden is not None:
        return row.meter_burden, burden_u_ohm(row.meter_burden, stated=True)
    return meter.burden_ohm, burden_u_ohm(meter.burden_ohm, stated=meter.burden_stated)


def burden_u_ohm(burden_ohm: float, *, stated: bool) -> float:
    """Standard uncertainty of the ohms of a meter in line."""
    return (burden_ohm * STATED_BURDEN_SHARE.value if stated else ASSUMED_BURDEN_OHM.value) / sqrt(3)


def _split(number: int, row: BenchReading, meter: Meter) -> Iterator[Reading]:
    supply_u_v = standard_u(row.supply, meter.volts)
    resistor_u_ohm = row.resistor * RESISTOR_SHARE.value / sqrt(3)
    common = (row.supply, supply_u_v, row.resistor, resistor_u_ohm)
    if row.after_resistor is not None:
        u = standard_u(row.after_resistor, meter.volts)
        yield Reading(number, "after resistor", row.after_resistor, u, *common)
    if row.current is not None:
        u = standard_u(row.current, meter.amperes)
        yield Reading(number, "current", row.current, u, *common, *burden_of(row, meter))
