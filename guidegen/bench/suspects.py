"""Every fault that can be looked for in an arrangement, solved once for all readings taken of it."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from guidegen.bench.faults import Family, Fault, families
from guidegen.bench.faulty import solve_faults
from guidegen.bench.spots import Spot, value_at, volts_at
from guidegen.circuit.arrangement import Arrangement, Floats
from guidegen.circuit.draws import Draws
from guidegen.circuit.meter import Meter
from guidegen.circuit.solution import Solution


@dataclass(frozen=True, eq=False)
class Suspects:
    """The faults of an arrangement and what each makes of it.

    `states`: one a fault, in the order of the families; `scatter`: random
    correct builds.
    """

    arrangement: Arrangement
    nominal: Solution
    families: tuple[Family, ...]
    states: Draws
    scatter: Draws
    meter: Meter

    @property
    def faults(self) -> tuple[Fault, ...]:
        """The faults in the order of their states."""
        return tuple(fault for family in self.families for fault in family.faults)

    def burden_ohm(self, spot: Spot) -> float:
        """What the meter puts in line to read the current at a spot, ohm."""
        runs = self.nominal.runs
        current_a = self.nominal.supply_a if spot.run is None else runs[spot.run].current_a
        return self.meter.ammeter(current_a)[1]

    def under_faults(self, spot: Spot) -> Floats:
        """What the meter would show (F,) at a spot under every fault, were it free of error."""
        if spot.unit == "V":
            return volts_at(self.states, spot)
        return self.shown(self.arrangement, self.faults, spot)

    def shown(
        self,
        arrangements: Arrangement | tuple[Arrangement, ...],
        faults: tuple[Fault, ...],
        spot: Spot,
        more_ohm: float = 0.0,
    ) -> Floats:
        """What it would show of these builds; a current with its burden, and `more_ohm`, in line."""
        burden = None if spot.unit == "V" else (spot.run, self.burden_ohm(spot) + more_ohm)
        return value_at(solve_faults(arrangements, self.nominal, faults, burden), spot)

    def in_builds(self, spots: tuple[Spot, ...]) -> Floats:
        """What is true (S, M) of random correct builds at these spots."""
        return np.column_stack([value_at(self.scatter, spot) for spot in spots])


def suspects(
    arrangement: Arrangement,
    nominal: Solution,
    scatter: Draws,
    runs: tuple[int, ...],
    *,
    currents: bool = False,
    meter: Meter | None = None,
) -> Suspects:
    """Solve every fault that is looked for in these runs.

    `scatter`: random correct builds of the same arrangement; `currents`:
    whether a current was read in line.
    """
    found = families(arrangement, runs, currents=currents)
    faults = tuple(fault for family in found for fault in family.faults)
    states = solve_faults(arrangement, nominal, faults)
    return Suspects(arrangement, nominal, found, states, scatter, meter or Meter())
