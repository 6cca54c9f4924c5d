"""Numbers for a terminal: three digits, a prefix that suits, units and spaces in plain ASCII."""

from __future__ import annotations

import math
from collections.abc import Callable

from guidegen.locale import numerals
from guidegen.locale.numerals import NO_BREAK, decimals_of, fixed, general

_PREFIXES = ((1e6, "M"), (1e3, "k"), (1.0, ""), (1e-3, "m"), (1e-6, "u"))


def amount(value: float, unit: str) -> str:
    """`value` in SI with its unit: 0.205, "A" gives "205 mA"; ohms stay ohms below a thousand."""
    size = abs(value)
    if size == 0:
        return f"0 {unit}"
    for factor, prefix in _PREFIXES:
        if size >= factor * 0.9995:
            return f"{_digits(value / factor)} {prefix}{unit}"
    return f"{_digits(value / 1e-6)} u{unit}"


def span_ends(low: float, high: float, unit: str) -> tuple[str, str]:
    """Both ends of a range (SI) in one prefix and with the same decimals, rounded outwards as the guide's."""
    largest = max(abs(low), abs(high))
    # As in the guide, volts stay volts down to a tenth.
    size = 10 * largest if unit == "V" and largest < 1 else largest
    factor, prefix = next((each for each in _PREFIXES if size >= each[0] * 0.9995), (1.0, ""))
    decimals = decimals_of(largest / factor, 3)
    ends = ((low, math.floor), (high, math.ceil))
    rounded = [_outwards(value / factor, 10.0**-decimals, rounder) for value, rounder in ends]
    lower, upper = (f"{fixed(value, decimals)} {prefix}{unit}" for value in rounded)
    return lower, upper


def _outwards(value: float, step: float, rounder: Callable[[float], int]) -> float:
    """The next multiple of `step`; `value` itself where it is one but for the last bits."""
    nearest = round(value / step)
    return step * (nearest if abs(nearest - value / step) < 1e-9 else rounder(value / step))


def percent(share: float) -> str:
    """A ratio as a whole percentage."""
    return f"{fixed(share * 100, 0)} %"


def money(amount: float, currency: str) -> str:
    """An amount of money and its currency."""
    return numerals.money(amount, currency).replace(NO_BREAK, " ")


def _digits(value: float) -> str:
    return general(value) if abs(value) < 1000 else fixed(value, 0)
