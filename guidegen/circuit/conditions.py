"""How a true build may differ from the nominal one."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Literal

from guidegen.calc.led import Curve, warmed
from guidegen.calc.wire import temperature_factor
from guidegen.circuit.arrangement import Cable, Conductor, LedEstimate, RunPlan
from guidegen.tables.conductors import REFERENCE_DEGC
from guidegen.tables.leds import VOLTS_PER_K

Side = Literal["low", "nominal", "high"]


@dataclass(frozen=True)
class Conditions:
    """How the true build differs from the nominal one, each part within its own spread.

    `source_v`: no-load volts (None: nominal); `resistor`, `wire` and `led`:
    on which side of their nominal value all of them lie; `air_degc`.
    """

    source_v: float | None = None
    resistor: Side = "nominal"
    wire: Side = "nominal"
    led: Side = "nominal"
    air_degc: float = REFERENCE_DEGC

    def resistor_ohm(self, run: RunPlan) -> float:
        """True resistance of the run's resistor."""
        share = {"low": -run.resistor.tolerance, "nominal": 0.0, "high": run.resistor.tolerance}
        return run.resistor.ohm * (1 + share[self.resistor])

    def wire_factor(self, wire: Conductor) -> float:
        """True over nominal resistance of a wire."""
        side = {"low": wire.low_factor, "nominal": 1.0, "high": wire.high_factor}[self.wire]
        return side * temperature_factor(self.air_degc, wire.per_k)

    def cable_ohm(self, cable: Cable | None) -> float:
        """True resistance of one conductor of a cable; 0 where there is none."""
        return 0.0 if cable is None else cable.ohm * self.wire_factor(cable.conductor)

    def led_curve(self, led: LedEstimate) -> Curve:
        """The curve that all LEDs follow."""
        volts = {"low": led.voltage_low_v, "nominal": led.curve.voltage_v, "high": led.voltage_high_v}
        side = replace(led.curve, voltage_v=volts[self.led])
        return warmed(side, self.air_degc - REFERENCE_DEGC, VOLTS_PER_K.typical)


#: Every part at its nominal value, at 20 degC.
NOMINAL = Conditions()
