"""How long a string lasts on its own cells: the solved circuit stepped down their discharge curve."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from guidegen.calc.discharge import first_below, hours_reached
from guidegen.circuit.arrange import string_alone
from guidegen.circuit.arrangement import Arrangement, Floats, Fuse, LedEstimate, SupplyPlan
from guidegen.circuit.conditions import Conditions
from guidegen.circuit.solve import solve_each
from guidegen.project.schema import CameWith, LightString
from guidegen.tables.cells import CELLS, discharge_of, flat_v

#: States of the cells that the circuit is solved at.
_STATES = 64
#: Light over that of fresh cells at which a set counts as used up, and at which it looks tired.
SPENT, TIRED = 0.1, 0.5


@dataclass(frozen=True)
class CellLife:
    """One string on one set of cells.

    `fresh_a`: current on fresh cells; `tired_h`: hours until it gives half
    the light of fresh cells; `spent_h`: hours until it gives a tenth or the
    cells are flat; `naive_h`: capacity over the fresh current, for
    comparison.
    """

    fresh_a: float
    tired_h: float
    spent_h: float
    naive_h: float


def cell_life(kind: LightString, led: LedEstimate, cells: CameWith, light_exponent: float = 1.0) -> CellLife:
    """Hours of one whole string, at 20 degC."""
    cell, curve = CELLS[cells.size], discharge_of(cells.size)
    used = np.linspace(0.0, curve.used[-1], _STATES)
    volts = cells.cells * np.interp(used, curve.used, curve.volts)
    inside_ohm = cells.cells * cell.inside_ohm * curve.inside_factor
    current, light = _solved(kind, led, cells, volts, inside_ohm, light_exponent)
    hours = hours_reached(used * cell.capacity_ah, current)
    flat = first_below(hours, (volts - inside_ohm * current) / cells.cells, flat_v(cells.size))
    return CellLife(
        fresh_a=float(current[0]),
        tired_h=min(first_below(hours, light, TIRED), flat),
        spent_h=min(first_below(hours, light, SPENT), flat),
        naive_h=cell.capacity_ah / float(current[0]),
    )


def _solved(
    kind: LightString,
    led: LedEstimate,
    cells: CameWith,
    volts: Floats,
    inside_ohm: float,
    exponent: float,
) -> tuple[Floats, Floats]:
    """Current (n,) and light over that of fresh cells (n,) at these volts of the whole set."""
    supply = SupplyPlan(float(volts[0]), 0.0, 1.0, inside_ohm, 1.0, None)
    run = string_alone(kind, led, cells.resistor)
    on_cells = Arrangement(supply, Fuse(None, "IEC"), (run,), coldest_c=20.0, warmest_c=20.0)
    cases = tuple(Conditions(source_v=float(each)) for each in volts)
    solutions = solve_each(on_cells, cases)
    light = np.array([float((run.leds_lit * each.runs[0].led_a ** exponent).sum()) for each in solutions])
    return np.array([each.supply_a for each in solutions]), light / light[0]
