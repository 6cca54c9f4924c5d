"""The resistor of every run of many candidates: as `parts.picks` would choose it, for all at once.

The current through a run settles everything in it, so the volts at its feed
point at the current aimed at are worked out once, whatever feeds it.  With
every run at its aim the shared lead drops most; the resistors that this
asks for are not above those to be found.  From there a resistor goes up a
step while its run is above its aim, which ends at the smallest values that
keep every run within it.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from guidegen.calc.network import Network
from guidegen.calc.preferred import between
from guidegen.choose.circuits import Chains, DrivenRuns, aimed_start_a, solve_chains
from guidegen.choose.pool import Field, Ints
from guidegen.circuit.arrangement import Floats
from guidegen.circuit.conditions import NOMINAL
from guidegen.parts.picks import LARGEST_OHM, SMALLEST_OHM

#: Relative room for rounding: a resistor that falls this little short of what is asked for is tried first.
_ROUNDING = 2e-5
#: Rounds in which the runs of a candidate settle; each can only raise a value.
MOST_ROUNDS = 40


def values_ohm(field: Field) -> Floats:
    """Resistors to choose from, ohm, ascending; 0 stands for none."""
    return np.array([0.0, *between(field.project.goals.series, SMALLEST_OHM, LARGEST_OHM)])


def bus_v(field: Field, chains: Chains, at_aim: DrivenRuns, share: float) -> Floats:
    """Volts where the runs branch, for every chain (K,), all runs at this share of the current aimed at."""
    supply = field.supply.supply
    lead_ohm = 0.0 if supply.lead is None else 2 * supply.lead.ohm
    total_a = share * np.add.reduceat(at_aim.chain_a[chains.shape], chains.first)
    volts: Floats = (supply.voltage_v - (supply.output_ohm + lead_ohm) * total_a)[chains.trial]
    return volts


def needed_ohm(field: Field, chains: Chains, at_aim: DrivenRuns, share: float) -> Floats:
    """Resistor (K,) that gives a run its aim while all of them drop the lead's volts as at this share."""
    spare_v = bus_v(field, chains, at_aim, share) - at_aim.feed_v[chains.shape]
    return spare_v / np.maximum(at_aim.chain_a[chains.shape], 1e-12) - 2 * chains.feeder_ohm


def least_steps(field: Field, chains: Chains, at_aim: DrivenRuns) -> Ints:
    """Indexes (K,) into `values_ohm` of resistors that are certainly not too large."""
    values, needed = values_ohm(field), needed_ohm(field, chains, at_aim, 1.0)
    steps = np.searchsorted(values, needed * (1 - _ROUNDING) - _ROUNDING)
    return np.clip(steps, field.pool.least_step[chains.shape], len(values) - 1)


@dataclass(frozen=True, eq=False)
class Fitted:
    """Resistors of every chain, index and ohm (K,), and the nominal solution with them."""

    step: Ints
    ohm: Floats
    nominal: Network


def fit_resistors(field: Field, chains: Chains, at_aim: DrivenRuns) -> Fitted:
    """The smallest resistors at which no run's mean LED current is above its aim."""
    values = values_ohm(field)
    step, start_a = least_steps(field, chains, at_aim), aimed_start_a(field, chains)
    most_a = (field.pool.aim_a * field.pool.lit_groups)[chains.shape]
    for _round in range(MOST_ROUNDS):
        nominal = solve_chains(field, chains, values[step], (NOMINAL,), start_a)
        above = (nominal.chain_a > most_a) & (step < len(values) - 1)
        if not above.any():
            break
        step, start_a = step + above, nominal.group_a
    return Fitted(step, values[step], nominal)
