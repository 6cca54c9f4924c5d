"""Steps through preferred values: the next one up, and all between two limits.

Values are made from their decimal digits, so 4.7 is the float that a
person's "4.7" becomes.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator

from guidegen.tables.preferred import SERIES

#: A need this close above a value counts as met by it.
_ROUNDING = 1e-9


def values_from(series: str, start: float) -> Iterator[float]:
    """Values of a series ("E6", "E12", "E24") not below `start` (above zero), ascending without end."""
    if not (start > 0 and math.isfinite(start)):
        raise ValueError(f"not a finite number above zero: {start}")
    decade = math.floor(math.log10(start)) - 1
    while True:
        for digits in SERIES[series]:
            value = float(f"{digits}e{decade - 1}")
            if value >= start * (1 - _ROUNDING):
                yield value
        decade += 1


def not_below(series: str, needed: float) -> float:
    """Smallest value of the series that is not below `needed`."""
    return next(values_from(series, needed))


def next_above(series: str, value: float) -> float:
    """The value that follows: the smallest of the series truly above `value`."""
    return next(each for each in values_from(series, value) if each > value * (1 + _ROUNDING))


def between(series: str, low: float, high: float) -> tuple[float, ...]:
    """All values of the series from `low` to `high`, both included, ascending."""
    found: list[float] = []
    for value in values_from(series, low):
        if value > high * (1 + _ROUNDING):
            return tuple(found)
        found.append(value)
    raise AssertionError("the series has no end")


def is_preferred(series: str, value: float) -> bool:
    """Whether a value belongs to the series."""
    return math.isclose(not_below(series, value), value, rel_tol=_ROUNDING)


def smallest_not_below(values: Iterable[float], needed: float) -> float | None:
    """Smallest of some ratings that is not below `needed`; None when all are."""
    return min((value for value in values if value >= needed * (1 - _ROUNDING)), default=None)
