"""Battery cells: what current a string drew on the cells it came with, and how long they last."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

from guidegen.locale import N_
from guidegen.tables.sourced import Sourced


@dataclass(frozen=True)
class Cell:
    """A fresh cell: volts with no load, resistance inside (ohm), capacity (ampere hours) and its source."""

    size: str
    open_v: float
    inside_ohm: float
    capacity_ah: float
    source: str
    capacity_source: str


_MEMORY = N_("typical fresh cell, no single data sheet")
_AA = N_("data sheet of an alkaline AA: 43 ohm, 4 hours a day, down to 0.9 V; ±10 %")

#: Cells by size; all alkaline but the lithium coin cell CR2032.
CELLS: Mapping[str, Cell] = MappingProxyType(
    {
        "AAA": Cell("AAA", 1.6, 0.25, 1.0, _MEMORY, _MEMORY),
        "AA": Cell("AA", 1.6, 0.15, 2.2, _MEMORY, _AA),
        "C": Cell("C", 1.6, 0.12, 7.0, _MEMORY, _MEMORY),
        "D": Cell("D", 1.6, 0.1, 15.0, _MEMORY, _MEMORY),
        "CR2032": Cell("CR2032", 3.2, 15.0, 0.22, _MEMORY, _MEMORY),
    }
)


@dataclass(frozen=True)
class Discharge:
    """Volts of one cell at next to no load, state by state, as it is used up at some tens of milliampere.

    `used`: share of the capacity taken (1: the capacity of the data sheet is
    gone, at its end volts); `volts` at these states; `inside_factor`:
    resistance inside over that of a fresh cell, on average over its life.
    """

    used: tuple[float, ...]
    volts: tuple[float, ...]
    inside_factor: float
    source: str


#: Volts at which a cell counts as flat.
FLAT_V = Sourced(0.9, N_("end of the data sheet's test"))
_ALKALINE = Discharge(
    used=(0.0, 0.03, 0.08, 0.15, 0.25, 0.35, 0.45, 0.55, 0.65, 0.75, 0.83, 0.90, 0.95, 1.0, 1.03, 1.06),
    volts=(1.60, 1.53, 1.47, 1.42, 1.37, 1.33, 1.29, 1.26, 1.23, 1.19, 1.15, 1.10, 1.04, 0.92, 0.75, 0.4),
    inside_factor=2.0,
    source=N_("typical curve of an alkaline cell, scaled to the data sheet's capacity"),
)
_LITHIUM = Discharge(
    used=(0.0, 0.05, 0.2, 0.4, 0.6, 0.75, 0.85, 0.92, 1.0, 1.05),
    volts=(3.20, 3.00, 2.95, 2.92, 2.88, 2.82, 2.72, 2.55, 2.0, 1.2),
    inside_factor=2.0,
    source=N_("typical curve of a lithium coin cell, no single data sheet"),
)


def discharge_of(size: str) -> Discharge:
    """The discharge curve of a size of cell; lithium for the coin cell, alkaline for all others."""
    return _LITHIUM if size == "CR2032" else _ALKALINE


def flat_v(size: str) -> float:
    """Volts at which a cell of this size counts as flat."""
    return 2.0 if size == "CR2032" else FLAT_V.value


#: Price of one cell by size; the number stands for every currency, as in `tables.prices`.
PRICES: Mapping[str, float] = MappingProxyType({"AAA": 0.7, "AA": 0.7, "C": 1.8, "D": 2.2, "CR2032": 0.8})
PRICE_SOURCE = N_("typical, own assumption")
