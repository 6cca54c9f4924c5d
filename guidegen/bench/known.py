"""What is known of a string's LEDs before any reading: the file's own values, else a typical curve."""

from __future__ import annotations

from dataclasses import dataclass
from math import log, sqrt

from guidegen.calc.led import Curve
from guidegen.circuit.arrangement import LedEstimate
from guidegen.project.schema import Led
from guidegen.tables.leds import LED_SPREAD_V, Band, TypicalLed, typical

#: Half of a band that holds 95 % is this many standard uncertainties (normal distribution).
COVER_95 = 1.959964
#: kT/q at 20 degC, volt (Boltzmann constant and elementary charge of the SI).
THERMAL_V = 1.380649e-23 * 293.15 / 1.602176634e-19
#: Colour whose typical curve stands in where none is named.
USUAL_COLOUR = "white"
#: A typical resistance takes no more than this share of a given voltage (power LEDs have less of it).
MOST_OHMIC_SHARE = 0.1


@dataclass(frozen=True)
class Known:
    """A curve and how well it is known.

    `voltage_half_v`: half-width of the volts' band; the rest are standard
    uncertainties, `slope_u_log` that of ln(slope); `colour` that of a
    typical curve.
    """

    curve: Curve
    voltage_half_v: float
    slope_u_log: float
    resistance_u_ohm: float
    colour: str | None
    given: bool

    @property
    def held_u(self) -> tuple[float, float, float]:
        """Standard uncertainties of volts, ln(slope) and resistance."""
        return self.voltage_half_v / sqrt(3), self.slope_u_log, self.resistance_u_ohm

    @property
    def estimate(self) -> LedEstimate:
        """The curve as it stands, without readings."""
        half_v = self.voltage_half_v
        return LedEstimate(
            curve=self.curve,
            source="given" if self.given else "typical",
            voltage_low_v=self.curve.voltage_v - half_v,
            voltage_high_v=self.curve.voltage_v + half_v,
            colour=self.colour,
            voltage_u_v=half_v / sqrt(3),
            slope_u_v=self.curve.slope_v * self.slope_u_log,
            resistance_u_ohm=self.resistance_u_ohm,
        )


def known_of(led: Led) -> Known:
    """The stated values, filled up from the typical curve of the stated colour (else white).

    A stated voltage is taken as one LED's: the mean of the string's LEDs
    lies within the spread of a lot.  A stated slope or resistance is taken
    as known no better than a typical one.
    """
    table = typical(led.typical or USUAL_COLOUR)
    slope_v = table.slope_v.typical if led.slope is None else led.slope
    given = led.voltage is not None
    voltage_v = table.voltage_v.typical if led.voltage is None else led.voltage
    current_a = table.current_a if led.current is None else led.current
    resistance_ohm = led.resistance
    if resistance_ohm is None:
        resistance_ohm = min(table.resistance_ohm.typical, MOST_OHMIC_SHARE * voltage_v / current_a)
    return Known(
        curve=Curve(voltage_v, current_a, slope_v, resistance_ohm),
        voltage_half_v=LED_SPREAD_V.value if given else _half(table.voltage_v),
        slope_u_log=_half(table.slope_v) / table.slope_v.typical / sqrt(3),
        resistance_u_ohm=_half(table.resistance_ohm) / sqrt(3),
        colour=None if given else table.colour,
        given=given,
    )


def widest_volts(table: TypicalLed, current_a: float) -> tuple[float, float]:
    """Least and most volts of one LED at a current (A) when every typical value is at an edge of its band.

    The voltage's band is taken twice: it holds most LEDs, not all of them.
    """
    folds, extra_a = log(current_a / table.current_a), current_a - table.current_a
    low_v = 2 * table.voltage_v.low - table.voltage_v.typical
    high_v = 2 * table.voltage_v.high - table.voltage_v.typical
    slopes = [slope_v * folds for slope_v in (table.slope_v.low, table.slope_v.high)]
    drops = [ohm * extra_a for ohm in (table.resistance_ohm.low, table.resistance_ohm.high)]
    return low_v + min(slopes) + min(drops), high_v + max(slopes) + max(drops)


def _half(band: Band) -> float:
    """The wider side of a band; over the root of 3 it is a standard uncertainty (JCGM 100, 4.3.7)."""
    return max(band.high - band.typical, band.typical - band.low)
