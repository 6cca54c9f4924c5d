"""Two preferred resistors in place of one: in series or in parallel, and how they share its watts.

Validity: plain resistors on direct current.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from guidegen.calc.preferred import between, not_below
from guidegen.calc.resistor import pick_rating_w

How = Literal["series", "parallel"]
#: Most of the watts that one of the two may take.
_MOST_SHARE = 0.8
#: What a share beyond one half counts against ohms beyond those asked for; own assumption.
_SHARE_WEIGHT = 0.3
_ROUNDING = 1e-9


@dataclass(frozen=True)
class Pair:
    """Two resistors and what they make together.

    `first_ohm`, `second_ohm`: their values; `total_ohm`: both together, ohm;
    `share`: the larger of their two shares of the watts, 0.5 to 1;
    `rating_w`: rating each of them needs.
    """

    how: How
    first_ohm: float
    second_ohm: float
    total_ohm: float
    share: float
    rating_w: float


def pair_for(how: How, ohm: float, rating_w: float, most_off: float, series: str = "E12") -> Pair | None:
    """Two values of a series that stand in for one resistor of `ohm` and `rating_w`.

    Together they have no less than its ohms, so that no more current flows,
    and at most the share `most_off` more.  In series R = R1 + R2 and each
    takes P R1/R; in parallel 1/R = 1/R1 + 1/R2 and each takes P R/R1.  None
    where no two values fit or their watts are not on sale.
    """
    found = [pair for pair in _pairs(how, ohm, rating_w, series) if pair.total_ohm <= ohm * (1 + most_off)]
    return min(found, key=lambda pair: _badness(pair, ohm), default=None)


def series_ohm(first_ohm: float, second_ohm: float) -> float:
    """Both in series, ohm."""
    return first_ohm + second_ohm


def parallel_ohm(first_ohm: float, second_ohm: float) -> float:
    """Both in parallel, ohm."""
    return first_ohm * second_ohm / (first_ohm + second_ohm)


def _pairs(how: How, ohm: float, rating_w: float, series: str) -> Iterator[Pair]:
    for first_ohm in _firsts(how, ohm, series):
        second_ohm = _second(how, ohm, first_ohm, series)
        together = series_ohm if how == "series" else parallel_ohm
        total_ohm = together(first_ohm, second_ohm)
        larger = max(first_ohm, second_ohm) / total_ohm
        share = larger if how == "series" else total_ohm / min(first_ohm, second_ohm)
        each_w = pick_rating_w(share * rating_w)
        if share <= _MOST_SHARE and each_w is not None:
            yield Pair(how, first_ohm, second_ohm, total_ohm, share, each_w)


def _firsts(how: How, ohm: float, series: str) -> tuple[float, ...]:
    """Values for the first of the two: the one that takes the larger part."""
    if how == "series":
        return between(series, ohm / 2, _MOST_SHARE * ohm)
    return between(series, ohm / _MOST_SHARE, 2 * ohm * (1 + _ROUNDING))


def _second(how: How, ohm: float, first_ohm: float, series: str) -> float:
    """Smallest value with which both together have no less than `ohm`."""
    if how == "series":
        return not_below(series, max(ohm - first_ohm, ohm * (1 - _MOST_SHARE)))
    return not_below(series, ohm * first_ohm / (first_ohm - ohm))


def _badness(pair: Pair, ohm: float) -> float:
    return pair.total_ohm / ohm - 1 + _SHARE_WEIGHT * (pair.share - 0.5)
