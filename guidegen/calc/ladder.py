"""Ladders with a closed form: to check the network solver and to teach with.

`segment_ohm` counts both rails of a segment together unless said otherwise.
"""

from __future__ import annotations

import math

import numpy as np
from numpy.typing import NDArray

from guidegen.calc.worked import formula
from guidegen.locale import N_

Floats = NDArray[np.float64]


def rung_volts(source_v: float, rungs: int, segment_ohm: float, rung_ohm: float) -> Floats:
    """Volts at every rung (N,) of N equal resistors on equal segments, fed at one end.

    V_k = V_0 cosh((N + 1/2 - k) theta) / cosh((N + 1/2) theta), k = 1..N,
    with theta = 2 asinh(sqrt(r/R) / 2).  Written with decaying exponentials,
    so long ladders do not overflow.  Source: linear recurrence of Kirchhoff's laws.
    """
    theta = 2 * math.asinh(math.sqrt(segment_ohm / rung_ohm) / 2)
    k = np.arange(1, rungs + 1)
    end = (rungs + 0.5) * theta
    here = (rungs + 0.5 - k) * theta
    volts: Floats = source_v * np.exp(here - end) * (1 + np.exp(-2 * here)) / (1 + math.exp(-2 * end))
    return volts


@formula(
    title=N_("Volts lost at the last bulb when every bulb draws the same"),
    text="V = I · R · (N + 1) / (2 · N)",
    result=("V", "V", N_("volts lost at the last bulb")),
    symbols={
        "total_a": ("I", "A", N_("current of all bulbs together")),
        "total_ohm": ("R", "Ω", N_("resistance of the whole run, both conductors")),
        "bulbs": ("N", "", N_("number of bulbs")),
    },
    source=N_("Kirchhoff's laws; L. Bell, Power Distribution for Electric Railroads (1897)"),
)
def equal_sinks_drop_v(total_a: float, total_ohm: float, bulbs: float) -> float:
    """Drop at the last of N equal current sinks on N equal segments, fed at one end."""
    return total_a * total_ohm * (bulbs + 1) / (2 * bulbs)


@formula(
    title=N_("Volts lost in the middle of a run fed at both ends"),
    text="V = I · R / 8",
    result=("V", "V", N_("volts lost in the middle")),
    symbols={
        "total_a": ("I", "A", N_("current of all bulbs together")),
        "total_ohm": ("R", "Ω", N_("resistance of the whole run, both conductors")),
    },
    source=N_("V. K. Mehta, Principles of Power System, chapter 13"),
)
def both_ends_drop_v(total_a: float, total_ohm: float) -> float:
    """Largest drop of an evenly loaded run fed at both ends with the same volts."""
    return total_a * total_ohm / 8


def sink_volts(source_v: float, segments_ohm: Floats, sinks_a: Floats) -> Floats:
    """Volts at every sink (N,) of given currents behind given segments (N,), fed at one end."""
    carried: Floats = np.cumsum(sinks_a[::-1])[::-1]
    volts: Floats = source_v - np.cumsum(segments_ohm * carried)
    return volts


def uniform_lowest(
    first_v: float, second_v: float, length_m: float, load_a_per_m: float, ohm_per_m: float
) -> tuple[float, float]:
    """Where an evenly loaded feeder fed at both ends is lowest, and its volts there.

    Returns metres from the first end and volts; `ohm_per_m` counts both
    conductors.  The lowest point lies where the two feeds' currents meet:
    x = L/2 + (V_1 - V_2)/(i r L), kept inside the feeder.
    Source: Mehta, Principles of Power System, chapter 13.
    """
    meeting = length_m / 2 + (first_v - second_v) / (load_a_per_m * ohm_per_m * length_m)
    if meeting >= length_m:
        return length_m, second_v
    if meeting <= 0:
        return 0.0, first_v
    return meeting, first_v - load_a_per_m * ohm_per_m * meeting**2 / 2


def input_ohm(sections: int, series_ohm: float, shunt_ohm: float) -> float:
    """Resistance into a ladder of N sections, each a series resistor and then a shunt.

    R_k = series + shunt R_(k-1) / (shunt + R_(k-1)), R_0 open.  With
    ones: F(2N+1)/F(2N), toward the golden ratio; with series 2 (two rails of
    1 ohm): 3, 11/4, ... toward 1 + sqrt 3.  Source: A. M. Morgan-Voyce,
    IRE Transactions CT-6 (1959).
    """
    resistance = math.inf
    for _ in range(sections):
        resistance = series_ohm + 1 / (1 / shunt_ohm + 1 / resistance)
    return resistance
