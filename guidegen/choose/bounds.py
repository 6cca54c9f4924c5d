"""How even a candidate can be at most, before it is solved.

Two facts about a run are used, both tested against solved runs: a smaller
current makes it more even, and makes every bulb of it dimmer.  So a run that
carries at least some share of the current aimed at is at most as even as at
that share.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from guidegen.choose.circuits import Chains, DrivenRuns, chains_of, driven
from guidegen.choose.pool import Field, Trials
from guidegen.choose.resistors import bus_v, least_steps, needed_ohm, values_ohm
from guidegen.circuit.arrangement import Floats

#: Shares of the current aimed at that every run is worked out at; a resistor is at most a quarter above
#: what would give the aim, so a run with one above the smallest carries at least four fifths of it.
SHARES = (1.0, 0.95, 0.9, 0.85, 0.8)
#: Relative room for the search's rounding.
_ROOM = 1e-6


@dataclass(frozen=True, eq=False)
class Bounds:
    """Every run of the pool at every share of the current aimed at."""

    at: tuple[DrivenRuns, ...]

    @property
    def at_aim(self) -> DrivenRuns:
        """Every run at the current aimed at."""
        return self.at[0]


def make_bounds(field: Field) -> Bounds:
    """Work out every run of the pool at every share."""
    return Bounds(tuple(driven(field, share) for share in SHARES))


def most_evenness(field: Field, trials: Trials, bounds: Bounds) -> Floats:
    """More than the evenness of each candidate can be (n,)."""
    chains = chains_of(field, trials)
    place = _share_reached(field, chains, bounds)
    dim, bright = (np.stack([getattr(each, name) for each in bounds.at]) for name in ("dim", "bright"))
    unknown = place == len(SHARES)
    row = np.minimum(place, len(SHARES) - 1)
    dim_then, bright_then = dim[row, chains.shape], bright[row, chains.shape]
    alone = np.where(
        unknown | (bright_then <= 0), 1.0, dim_then / np.where(bright_then > 0, bright_then, 1.0)
    )
    least_bright = np.where(unknown, 0.0, bright_then)
    top = np.maximum.reduceat(least_bright, chains.first)
    together = np.minimum.reduceat(dim[0, chains.shape], chains.first) / np.where(top > 0, top, np.inf)
    together = np.where(top > 0, together, 1.0)
    return np.minimum(1.0, np.minimum(np.minimum.reduceat(alone, chains.first), together) + _ROOM)


def _share_reached(field: Field, chains: Chains, bounds: Bounds) -> np.ndarray[tuple[int], np.dtype[np.intp]]:
    """Index of the share that each run (K,) is sure to reach; as many as there are shares where none is."""
    at_aim = bounds.at_aim
    values, step = values_ohm(field), least_steps(field, chains, at_aim)
    # With every run at the least share the lead drops least, and the largest resistors are needed.
    needed_most = needed_ohm(field, chains, at_aim, SHARES[-1]) * (1 + _ROOM) + _ROOM
    may_rise = needed_most > values[step]
    least_bus_v = bus_v(field, chains, at_aim, 1.0)
    place = np.full(len(step), len(SHARES), dtype=np.intp)
    for index in reversed(range(len(SHARES))):
        at = bounds.at[index]
        current_a = at.chain_a[chains.shape]
        needed_v = (values[step] + 2 * chains.feeder_ohm) * current_a + at.feed_v[chains.shape]
        place = np.where(needed_v <= least_bus_v, index, place)
    last = len(SHARES) - 1
    raised = np.where(step > 0, last, len(SHARES))
    return np.where(may_rise, np.maximum(place, raised), place)
