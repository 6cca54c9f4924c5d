"""Largest LED current where the file states none: what the maker's own cells drive."""

from __future__ import annotations

from collections.abc import Mapping

import numpy as np

from guidegen.circuit.arrange import string_alone
from guidegen.circuit.arrangement import Arrangement, Fuse, LedEstimate, LedLimit, SupplyPlan
from guidegen.circuit.solve import solve
from guidegen.project.schema import CameWith, LightString, Project
from guidegen.tables.cells import CELLS
from guidegen.tables.limits import TYPICAL_MAX_LED_A


def led_limits(project: Project, leds: Mapping[str, LedEstimate]) -> dict[str, LedLimit]:
    """Largest current of one LED of every kind of string."""
    return {name: led_limit(kind, leds[name]) for name, kind in project.strings.items()}


def led_limit(kind: LightString, led: LedEstimate) -> LedLimit:
    """As stated; else what fresh cells drive through the brightest bulb's mean LED; else assumed."""
    if kind.max_led_current is not None:
        return LedLimit(kind.max_led_current, "stated")
    if kind.came_with is None:
        return LedLimit(TYPICAL_MAX_LED_A.value, "assumed")
    return LedLimit(current_on_cells_a(kind, led, kind.came_with), "cells")


def current_on_cells_a(kind: LightString, led: LedEstimate, cells: CameWith) -> float:
    """Current of one LED of the brightest bulb on fresh cells, ampere."""
    cell = CELLS[cells.size]
    supply = SupplyPlan(
        voltage_v=cells.cells * cell.open_v,
        tolerance=0.0,
        rated_a=1.0,
        output_ohm=cells.cells * cell.inside_ohm,
        limit_a=1.0,
        lead=None,
    )
    run = string_alone(kind, led, cells.resistor)
    on_cells = Arrangement(supply, Fuse(None, "IEC"), (run,), coldest_c=20.0, warmest_c=20.0)
    return float(np.max(solve(on_cells).runs[0].led_a))
