"""Every run at a few known currents, and curves through them.

The current through a run settles everything in it.  So its volts and the
light of a bulb are smooth curves over that current, and a polynomial through
the values at a few currents lies within some millionths of them.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

from guidegen.choose.circuits import DrivenRuns, driven
from guidegen.choose.pool import Field, Ints
from guidegen.circuit.arrangement import Floats

Flags = NDArray[np.bool_]

#: Shares of the current aimed at that every run is worked out at; a resistor is at most a quarter above
#: what would give the aim, so a run with one above the smallest carries at least four fifths of it.
SHARES = (1.0, 0.95, 0.9, 0.85, 0.8)
#: Room left for what the curves are off, relative: a hundred times more than they ever were in the tests.
ROOM = 1e-5
#: Shares are scaled to lie between -1 and 1, so that the polynomials keep their digits.
_MIDDLE, _PER_SHARE = (SHARES[0] + SHARES[-1]) / 2, 2 / (SHARES[0] - SHARES[-1])


@dataclass(frozen=True, eq=False)
class Bounds:
    """Every run of the pool at every share of the current aimed at, and curves over the share.

    `feed_v`: its volts; `dim`, `bright`: light of two of its bulbs, those
    that are the dimmest and the brightest at the share in the middle; all
    (shares, S), the coefficients of polynomials.  `lit` (S,): whether it has
    bulbs that light.
    """

    at: tuple[DrivenRuns, ...]
    feed_v: Floats
    dim: Floats
    bright: Floats
    lit: Flags

    @property
    def at_aim(self) -> DrivenRuns:
        """Every run at the current aimed at."""
        return self.at[0]


def make_bounds(field: Field) -> Bounds:
    """Work out every run of the pool at every share, each from the one before it."""
    at = [driven(field, SHARES[0])]
    for before, share in pairwise(SHARES):
        at.append(driven(field, share, share / before * at[-1].led_a))
    lit = np.isfinite(at[0].dim)
    light = np.stack([each.light for each in at])
    middle = light[len(SHARES) // 2]
    dimmest = _lowest(field, middle)
    brightest = _lowest(field, np.where(np.isfinite(middle), -middle, np.inf))
    return Bounds(
        at=tuple(at),
        feed_v=_through(np.stack([each.feed_v for each in at])),
        dim=_through(np.where(lit, light[:, dimmest], 0.0)),
        bright=_through(np.where(lit, light[:, brightest], 0.0)),
        lit=lit,
    )


def _lowest(field: Field, of_bulb: Floats) -> Ints:
    """The bulb of every run (S,) with the lowest of these values (T,)."""
    pool = field.pool
    run = np.repeat(np.arange(len(pool.sizes)), pool.sizes)
    return np.lexsort((of_bulb, run))[pool.starts]


def _through(values: Floats) -> Floats:
    """Coefficients of the polynomials through these values at every share (shares, S), lowest power first."""
    powers = np.vander(_scaled(np.array(SHARES)), increasing=True)
    return np.linalg.solve(powers, values).astype(np.float64)


def _scaled(share: Floats) -> Floats:
    return (share - _MIDDLE) * _PER_SHARE


def curve_at(curve: Floats, share: Floats) -> tuple[Floats, Floats]:
    """Values of curves (shares, K) at shares (K,), and their slopes."""
    at, value, slope = _scaled(share), curve[-1], np.zeros_like(share)
    for coefficient in curve[-2::-1]:
        slope = slope * at + value
        value = value * at + coefficient
    return value, slope * _PER_SHARE
