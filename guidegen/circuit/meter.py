"""The meter that all readings are taken with, as the file states it or a usual one."""

from __future__ import annotations

from dataclasses import dataclass, replace

from guidegen.calc.meter import accuracy
from guidegen.project import schema as project_file
from guidegen.project.metering import Accuracy
from guidegen.tables.limits import (
    METER_AMPERES,
    METER_BURDEN_OHM,
    METER_MILLIAMPERES_TO_A,
    METER_OHMS,
    METER_TEN_AMPERES,
    METER_TEN_AMPERES_BURDEN_OHM,
    METER_VOLTS,
    MeterRange,
)


@dataclass(frozen=True)
class Meter:
    """Accuracy of the meter's ranges, and its own ohms.

    `amperes` is the milliampere range, `ten_amperes` the range of the 10 A
    socket; `burden_ohm` and `ten_burden_ohm` stand in line on them, leads
    included; `leads_ohm` is what it shows with its leads held together
    (0: taken off already); `burden_stated` whether the file states its burden.
    """

    volts: MeterRange = METER_VOLTS
    amperes: MeterRange = METER_AMPERES
    ten_amperes: MeterRange = METER_TEN_AMPERES
    ohms: MeterRange = METER_OHMS
    burden_ohm: float = METER_BURDEN_OHM.value
    ten_burden_ohm: float = METER_TEN_AMPERES_BURDEN_OHM.value
    leads_ohm: float = 0.0
    burden_stated: bool = False

    def ammeter(self, current_a: float) -> tuple[MeterRange, float]:
        """The range for a current (A), and what then stands in line, ohm."""
        if current_a <= METER_MILLIAMPERES_TO_A.value:
            return self.amperes, self.burden_ohm
        return self.ten_amperes, self.ten_burden_ohm


def error_of(scale: MeterRange, reading: float) -> float:
    """How far a reading may be off on this range, in its own unit."""
    return accuracy(reading, scale.share, scale.digits, scale.step)


def meter_of(stated: project_file.Meter) -> Meter:
    """The meter as the project file states it, filled up with a usual one's figures."""
    usual = Meter()
    return Meter(
        volts=_range(usual.volts, stated.accuracy, stated.resolution),
        amperes=_range(usual.amperes, stated.current_accuracy, stated.current_resolution),
        burden_ohm=usual.burden_ohm if stated.burden is None else stated.burden,
        leads_ohm=stated.leads or 0.0,
        burden_stated=stated.burden is not None,
    )


def _range(usual: MeterRange, accuracy: Accuracy | None, step: float | None) -> MeterRange:
    found = usual if step is None else replace(usual, step=step)
    if accuracy is None:
        return found
    return replace(found, share=accuracy.share, digits=accuracy.digits)
