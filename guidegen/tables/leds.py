"""Typical curves of one LED by colour: a fallback where nothing was measured."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

from guidegen.locale import N_
from guidegen.tables.sourced import Sourced


@dataclass(frozen=True)
class Band:
    """A typical value and how far real ones lie from it."""

    typical: float
    low: float
    high: float


@dataclass(frozen=True)
class TypicalLed:
    """Curve of one LED: `voltage_v` at `current_a`, slope in volts per e-fold, series resistance."""

    colour: str
    voltage_v: Band
    current_a: float
    slope_v: Band
    resistance_ohm: Band
    source: str


_SOURCE = N_("typical, from one public table and common experience")
#: The second family's bands of slope and resistance are white's, scaled.
_WHITE = (Band(2.80, 2.65, 2.95), Band(0.09, 0.05, 0.14), Band(10.0, 3.0, 20.0))
_RED = (Band(1.75, 1.60, 1.90), Band(0.055, 0.03, 0.085), Band(5.0, 1.5, 10.0))
_FAMILIES = {
    N_("white"): _WHITE,
    N_("warm white"): _WHITE,
    N_("blue"): _WHITE,
    N_("green"): _WHITE,
    N_("red"): _RED,
    N_("orange"): _RED,
    N_("yellow"): _RED,
}
_CURRENT_A = 3e-3

TYPICAL: Mapping[str, TypicalLed] = MappingProxyType(
    {
        colour: TypicalLed(colour, voltage, _CURRENT_A, slope, resistance, _SOURCE)
        for colour, (voltage, slope, resistance) in _FAMILIES.items()
    }
)
#: Names of the colours, as written in a project file.
COLOURS: tuple[str, ...] = tuple(TYPICAL)

#: Change of an LED's volts with temperature, V/K, and its band.
VOLTS_PER_K = Band(-0.003, -0.004, -0.002)
VOLTS_PER_K_SOURCE = N_("typical, no single source")
#: How far the volts of two LEDs of one lot may lie from their mean, V.
LED_SPREAD_V = Sourced(0.05, N_("common practice, no source"))
#: Volts backwards that an LED bears.
REVERSE_V = Sourced(5.0, N_("usual limit in data sheets"))


def typical(colour: str) -> TypicalLed:
    """The typical curve of a colour; KeyError when the table has no such colour (see `COLOURS`)."""
    return TYPICAL[colour]
