"""How even a candidate can be at most, before it is solved.

Every run is worked out once at a few known currents.  What lies between them
is reckoned (`reckon.py`), which is all but exact; a small room is left for
that.  For the few candidates where it cannot be reckoned, two facts about a
run are used, both tested against solved runs: a smaller current makes it more
even, and makes every bulb of it dimmer.  So a run that carries at least some
share of the current aimed at is at most as even as at that share.
"""

from __future__ import annotations

import numpy as np

from guidegen.choose.circuits import Chains, chains_of
from guidegen.choose.curves import ROOM, Bounds, Flags
from guidegen.choose.pool import Field, Trials
from guidegen.choose.reckon import Reckoned, reckon
from guidegen.choose.resistors import bus_v, least_steps, needed_ohm, values_ohm
from guidegen.circuit.arrangement import Floats


def most_evenness(field: Field, trials: Trials, bounds: Bounds, found: Reckoned | None = None) -> Floats:
    """More than the evenness of each candidate can be (n,); `found`: what was reckoned of them."""
    found = found or reckon(field, chains_of(field, trials), bounds)
    evenness = found.evenness + ROOM
    open_ones = np.flatnonzero(~found.sure)
    if len(open_ones):
        evenness[open_ones] = _loose(field, trials.some(open_ones), bounds)
    return np.minimum(1.0, evenness)


def _loose(field: Field, trials: Trials, bounds: Bounds) -> Floats:
    """A bound that holds whatever the runs' resistors come to (n,)."""
    chains = chains_of(field, trials)
    least, aimed = bounds.at[-1], bounds.at_aim
    sure = _sure_of_least(field, chains, bounds) & (least.bright[chains.shape] > 0)
    dim, bright = least.dim[chains.shape], np.where(sure, least.bright[chains.shape], 1.0)
    alone = np.minimum.reduceat(np.where(sure, dim / bright, 1.0), chains.first)
    top = np.maximum.reduceat(np.where(sure, bright, 0.0), chains.first)
    together = np.minimum.reduceat(aimed.dim[chains.shape], chains.first)
    together = np.where(top > 0, together / np.where(top > 0, top, 1.0), 1.0)
    return np.minimum(alone, together) + ROOM


def _sure_of_least(field: Field, chains: Chains, bounds: Bounds) -> Flags:
    """Which runs (K,) are sure to carry the least of the shares.

    With the resistor that is not too large they do so if the volts suffice
    while the shared lead drops most.  A larger one is fitted only where the
    run is above its aim, and is at most a quarter above the one before it.
    """
    values, step = values_ohm(field), least_steps(field, chains, bounds.at_aim)
    least = bounds.at[-1]
    asked_v = (values[step] + 2 * chains.feeder_ohm) * least.chain_a[chains.shape] + least.feed_v[
        chains.shape
    ]
    may_rise = needed_ohm(field, chains, bounds.at_aim, 0.0) * (1 + ROOM) + ROOM > values[step]
    sure: Flags = (asked_v <= bus_v(field, chains, bounds.at_aim, 1.0)) & ((step > 0) | ~may_rise)
    return sure
