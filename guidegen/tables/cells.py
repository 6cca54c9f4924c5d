"""Battery cells: enough to tell what current a string drew on the cells it came with."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

from guidegen.locale import N_


@dataclass(frozen=True)
class Cell:
    """A fresh cell: volts with no load, resistance inside (ohm), capacity (ampere hours) and its source."""

    size: str
    open_v: float
    inside_ohm: float
    capacity_ah: float
    source: str
    capacity_source: str


_MEMORY = N_("typical fresh cell, from memory")
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
