"""One LED, and a group of LEDs in series with its resistor.

An LED follows the diode equation with a series resistance,
I = I_s (exp((V - I R) / m) - 1), with the slope m in volts per e-fold of
current.  Both directions are exact: V(I) by its logarithm, I(V) by the
Wright omega function (T. C. Banwell and A. Jayakumar, "Exact analytical
solution for current flow through diode with series resistance",
Electronics Letters 36, 2000, p. 291).
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TypeVar

import numpy as np
from numpy.typing import NDArray

from guidegen.calc.worked import formula
from guidegen.locale import N_

#: A float, or an array of them of any shape.
Number = TypeVar("Number", float, NDArray[np.float64])

_SOURCE = N_(
    "Diode equation with series resistance: Banwell and Jayakumar, Electronics Letters 36 (2000) 291"
)


#: Most e-folds of current in the volts of one diode; real ones stay below 130, floats end near 700.
MOST_FOLDS = 600.0


class NotAnLed(ValueError):  # noqa: N818 - says what is wrong
    """These numbers are no LED's."""


@dataclass(frozen=True)
class Curve:
    """An LED by a point of its curve, its slope and its resistance.

    `voltage_v` (the resistance's share included) at `current_a`; `slope_v`
    in volts per e-fold of current; `resistance_ohm` in series.
    NotAnLed (a ValueError) unless current and slope are positive, the
    resistance is not negative, its share leaves the diode some volts, and
    the slope is not absurdly small for them (`MOST_FOLDS`).
    """

    voltage_v: float
    current_a: float
    slope_v: float
    resistance_ohm: float

    def __post_init__(self) -> None:
        if not (self.current_a > 0 and self.slope_v > 0 and self.resistance_ohm >= 0):
            raise NotAnLed("an LED's current and slope are above zero, its resistance not below")
        if not self.junction_v > 0:
            raise NotAnLed("an LED's resistance takes all of its volts")
        if not self.junction_v <= MOST_FOLDS * self.slope_v:
            raise NotAnLed("an LED's slope is not that small against its volts")

    @property
    def junction_v(self) -> float:
        """Volts of the diode alone at `current_a`, V - I R."""
        return self.voltage_v - self.current_a * self.resistance_ohm

    @property
    def log_saturation(self) -> float:
        """ln(I_s / 1 A)."""
        folds = self.junction_v / self.slope_v
        return float(np.log(self.current_a) - folds - np.log(-np.expm1(-folds)))

    @property
    def saturation_a(self) -> float:
        """I_s = I / (exp((V - I R)/m) - 1), ampere, so that the curve passes through its point."""
        folds = self.junction_v / self.slope_v
        return float(self.current_a * np.exp(-folds) / -np.expm1(-folds))


@formula(
    title=N_("Volts across one LED"),
    text="V = m · ln(1 + I / I_s) + I · R",
    result=("V", "V", N_("volts across one LED")),
    symbols={
        "slope_v": ("m", "V", N_("slope of the LED's curve, volts per e-fold of current")),
        "current_a": ("I", "A", N_("current of one LED")),
        "saturation_a": ("I_s", "A", N_("saturation current")),
        "resistance_ohm": ("R", "Ω", N_("series resistance of one LED")),
    },
    source=_SOURCE,
)
def led_voltage_v(current_a: Number, slope_v: float, saturation_a: float, resistance_ohm: float) -> Number:
    """V = m ln(1 + I/I_s) + I R; amperes in, volts out, any shape; NaN below -I_s."""
    voltage: Number = slope_v * np.log1p(current_a / saturation_a) + current_a * resistance_ohm
    return voltage


@formula(
    title=N_("Volts across a group of LEDs"),
    text="V = s · (m · ln(1 + I / I_s) + I · R) + I · R_g",
    result=("V", "V", N_("volts across the group")),
    symbols={
        "series": ("s", "", N_("LEDs in series")),
        "slope_v": ("m", "V", N_("slope of the LED's curve, volts per e-fold of current")),
        "current_a": ("I", "A", N_("current of the group")),
        "saturation_a": ("I_s", "A", N_("saturation current")),
        "resistance_ohm": ("R", "Ω", N_("series resistance of one LED")),
        "group_ohm": ("R_g", "Ω", N_("resistor of the group")),
    },
    source=_SOURCE,
)
def group_voltage_v(
    current_a: Number,
    series: float,
    slope_v: float,
    saturation_a: float,
    resistance_ohm: float,
    group_ohm: float,
) -> Number:
    """V = s V_led(I) + I R_g; amperes in, volts out, any shape."""
    one = led_voltage_v(current_a, slope_v, saturation_a, resistance_ohm)
    voltage: Number = series * one + current_a * group_ohm
    return voltage


def forward_voltage(curve: Curve, current_a: Number) -> Number:
    """Volts across one LED at a current (ampere, any shape, above -I_s)."""
    return led_voltage_v(current_a, curve.slope_v, curve.saturation_a, curve.resistance_ohm)


def forward_current(curve: Curve, voltage_v: Number) -> Number:
    """Current of one LED at a voltage (volt, any shape, also negative), ampere; exact to rounding."""
    return diode_current_a(voltage_v, curve.slope_v, curve.log_saturation, curve.resistance_ohm)


def group_current_a(curve: Curve, voltage_v: Number, series: int = 1, group_ohm: float = 0.0) -> Number:
    """Current of a group of LEDs in series and their resistor at a voltage (volt, any shape), ampere.

    A group is one diode with s times the slope and s R + R_g in series.
    """
    return diode_current_a(
        voltage_v,
        series * curve.slope_v,
        curve.log_saturation,
        series * curve.resistance_ohm + group_ohm,
    )


def diode_current_a(
    voltage_v: Number, slope_v: float, log_saturation: float, resistance_ohm: float
) -> Number:
    """Current of a diode with series resistance at a voltage (volt, any shape), ampere.

    `slope_v` in volts per e-fold, `log_saturation` = ln(I_s / 1 A),
    `resistance_ohm` in series.
    With w = omega(ln(I_s R/m) + (V + I_s R)/m), where omega(z) solves
    omega + ln omega = z, the current is I = (m/R) w - I_s, and the same
    thing as I = I_s (exp((V + I_s R)/m - w) - 1), which keeps its digits
    where the resistance hardly counts.  Infinite where no float can hold it.
    """
    # Loaded where it is needed: drawing has curves in hand, and solves none.
    from scipy.special import wrightomega  # noqa: PLC0415

    saturation_a = np.exp(log_saturation)
    folds = (voltage_v + saturation_a * resistance_ohm) / slope_v
    with np.errstate(over="ignore"):
        current: Number
        if resistance_ohm == 0:
            current = saturation_a * np.expm1(folds)
            return current
        share = wrightomega(log_saturation + np.log(resistance_ohm) - np.log(slope_v) + folds)
        diode_rules = saturation_a * np.expm1(folds - share)
        resistance_rules = slope_v * share / resistance_ohm - saturation_a
        current = np.where(share < 1, diode_rules, resistance_rules)[()]
    return current


def warmed(curve: Curve, change_k: float, volts_per_k: float) -> Curve:
    """The curve `change_k` kelvin warmer: its volts move by `volts_per_k` (V/K) at the same current."""
    return replace(curve, voltage_v=curve.voltage_v + change_k * volts_per_k)
