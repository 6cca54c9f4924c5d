"""Hours that cells last: the circuit stepped down the cell's discharge curve."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]


def hours_reached(used_ah: Floats, current_a: Floats) -> Floats:
    """Hours after which so much charge is used: t = integral of dq / I(q).

    `used_ah` (n,): charge taken from the cells, ampere hours, rising from 0;
    `current_a` (n,): what the circuit draws at that state, A.  Between two
    states 1 / I is taken as a straight line.  A state that the current does
    not reach lies at infinity.
    """
    with np.errstate(divide="ignore"):
        slowness = 1.0 / np.maximum(current_a, 0.0)
    steps = np.diff(used_ah) * (slowness[1:] + slowness[:-1]) / 2
    return np.concatenate(([0.0], np.cumsum(steps)))


def first_below(hours: Floats, values: Floats, limit: float) -> float:
    """Hours at which falling `values` (n,) first reach `limit`; infinity when they never do."""
    below = np.flatnonzero(values <= limit)
    if not len(below):
        return float("inf")
    at = int(below[0])
    if at == 0 or not np.isfinite(hours[at]):
        return float(hours[max(at - 1, 0)])
    share = (values[at - 1] - limit) / (values[at - 1] - values[at])
    return float(hours[at - 1] + share * (hours[at] - hours[at - 1]))
