"""Propagation of distributions by random draws (JCGM 101:2008).

Draw the inputs, work out the outputs of every draw, and read the intervals
off them.  Quantities are (S,) or (S, K) arrays, one row a draw.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]

#: Share of the draws that an interval holds.
COVERAGE = 0.95


@dataclass(frozen=True)
class Summary:
    """Mean, standard uncertainty and the ends of the coverage interval of one quantity."""

    mean: float
    u: float
    low: float
    high: float


def rectangular(
    random: np.random.Generator, low: Floats | float, high: Floats | float, shape: tuple[int, ...]
) -> Floats:
    """Draws from a rectangular distribution between two limits (JCGM 101, 6.4.2)."""
    return random.uniform(low, high, shape)


def correlated(random: np.random.Generator, covariance: Floats, count: int) -> Floats:
    """Draws (S, P) of a multivariate normal distribution about zero (JCGM 101, 6.4.8).

    `covariance` (P, P) may be singular, as where nothing is uncertain about
    a quantity.  Quantities of very different size are brought to one size first.
    """
    size = np.sqrt(np.diag(covariance))
    size = np.where(size > 0, size, 1.0)
    variances, directions = np.linalg.eigh(covariance / np.outer(size, size))
    moves = (directions * np.sqrt(np.maximum(variances, 0.0))).T * size
    drawn: Floats = random.standard_normal((count, len(size))) @ moves
    return drawn


def coverage(values: Floats, share: float = COVERAGE) -> tuple[Floats, Floats]:
    """Ends of the probabilistically symmetric interval that holds `share` of the draws (JCGM 101, 7.7).

    `values` (S,) or (S, K); the ends have the shape of one draw.
    """
    tail = 50 * (1 - share)
    low, high = np.percentile(values, (tail, 100 - tail), axis=0)
    return low, high


def summary(values: Floats, share: float = COVERAGE) -> Summary:
    """Mean, standard uncertainty (JCGM 101, 7.6) and interval of draws (S,)."""
    low, high = coverage(values, share)
    return Summary(float(values.mean()), float(values.std(ddof=1)), float(low), float(high))


def joint_factor(
    values: Floats, centre: Floats, below: Floats, above: Floats, share: float = COVERAGE
) -> float:
    """By how much intervals must widen about their centres so that `share` of the draws lie in all at once.

    `values` (S, K); `centre` (K,), and how far each interval reaches `below`
    and `above` it (K,).  The share is raised by twice the standard error of
    so many draws, so that chance in them does not make the intervals too
    narrow.
    """
    out = np.where(values < centre, (centre - values) / below, (values - centre) / above)
    sure = min(share + 2 * np.sqrt(share * (1 - share) / len(values)), 1.0)
    return float(np.quantile(out.max(axis=1), sure))
