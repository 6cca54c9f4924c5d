"""How far what is not known of a curve reaches into what is worked out with it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from math import sqrt

import numpy as np
from numpy.typing import NDArray

from guidegen.bench.known import THERMAL_V
from guidegen.calc.led import Curve

Floats = NDArray[np.float64]

#: An even spread ends at this many standard uncertainties.
_EDGE = sqrt(3)
#: Moved volts keep at least this share of themselves, and as much is left to the junction.
_LEAST_SHARE = 0.1


@dataclass(frozen=True, eq=False)
class Predicted:
    """Values worked out with a curve, and their standard uncertainties by it alone; same shape, same unit."""

    value: Floats
    u: Floats


def predict(
    curve: Curve, covariance: tuple[tuple[float, ...], ...], work_out: Callable[[Curve], Floats]
) -> Predicted:
    """Work something out with a curve whose volts, slope (V) and resistance (ohm) have this covariance.

    The curve is moved both ways to the edges of three independent spreads
    that make up the covariance.  The farther side counts, since a dim bulb
    far down the wire answers anything but in proportion (JCGM 100, 5.1.2,
    note, asks for more than the first order there).  `work_out` returns an
    array (K,).
    """
    value = work_out(curve)
    variance = np.zeros_like(value)
    for move in spreads(np.array(covariance)):
        sides = [np.abs(work_out(moved(curve, sign * _EDGE * move)) - value) for sign in (-1, 1)]
        variance += (np.maximum(*sides) / _EDGE) ** 2
    return Predicted(value, np.sqrt(variance))


def spreads(covariance: Floats) -> Floats:
    """Independent moves (3, 3), one a row, whose squares add up to the covariance (3, 3)."""
    size = np.sqrt(np.diag(covariance))
    size = np.where(size > 0, size, 1.0)
    variances, directions = np.linalg.eigh(covariance / np.outer(size, size))
    moves: Floats = (directions * np.sqrt(np.maximum(variances, 0.0))).T * size
    return moves


def moved(curve: Curve, move: Floats) -> Curve:
    """The curve with volts, slope (V) and resistance (ohm) moved by `move` (3,), as far as there is one."""
    voltage_v = max(curve.voltage_v + move[0], _LEAST_SHARE * curve.voltage_v)
    slope_v = max(curve.slope_v + move[1], min(THERMAL_V, curve.slope_v))
    most_ohm = (1 - _LEAST_SHARE) * voltage_v / curve.current_a
    resistance_ohm = min(max(curve.resistance_ohm + move[2], 0.0), most_ohm)
    return Curve(float(voltage_v), curve.current_a, float(slope_v), float(resistance_ohm))
