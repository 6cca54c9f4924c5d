"""An independent solution of one string fed at one end: guess the last bulb's volts and walk to the feed.

Nothing of guidegen's solver is used: the LED's current comes from Lambert's
W (scipy), the guess from bracketing.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from scipy.optimize import brentq
from scipy.special import wrightomega


@dataclass(frozen=True)
class TrueString:
    """A string whose truth is known: curve of one LED and everything around it."""

    voltage_v: float
    current_a: float
    slope_v: float
    resistance_ohm: float
    lit_groups: tuple[float, ...]
    segment_ohm: tuple[float, ...]
    series: int = 1
    group_ohm: float = 0.0


@dataclass(frozen=True)
class State:
    """What is true of it: volts after the resistor, string current, current of a group in each bulb."""

    after_v: float
    current_a: float
    group_a: np.ndarray


def state(true: TrueString, source_v: float, series_ohm: float) -> State:
    """The string on a source through `series_ohm`."""

    def walk(last_v: float) -> tuple[float, float, list[float]]:
        volts, total, group_a = last_v, 0.0, []
        for groups, ohm in zip(reversed(true.lit_groups), reversed(true.segment_ohm), strict=True):
            each = group_current(true, volts) if groups else 0.0
            group_a.append(each)
            total += groups * each
            volts += 2 * ohm * total
        return volts, total, group_a[::-1]

    def over(last_v: float) -> float:
        volts, total, _ = walk(last_v)
        return volts + total * series_ohm - source_v

    low, high = 0.0, true.series * 0.3
    while high < source_v and over(high) < 0:
        low, high = high, high + 0.05
    last_v = brentq(over, low, min(high, source_v), xtol=1e-15, rtol=1e-15)
    volts, total, group_a = walk(last_v)
    return State(volts, total, np.array(group_a))


def group_current(true: TrueString, volts: float) -> float:
    """Current of one group at these volts (Banwell and Jayakumar 2000)."""
    slope = true.series * true.slope_v
    ohm = true.series * true.resistance_ohm + true.group_ohm
    junction = true.voltage_v - true.current_a * true.resistance_ohm
    saturation = true.current_a / np.expm1(junction / true.slope_v)
    if ohm == 0:
        return float(saturation * np.expm1(volts / slope))
    start = np.log(saturation * ohm / slope) + (volts + saturation * ohm) / slope
    return float(slope / ohm * wrightomega(start).real - saturation)
