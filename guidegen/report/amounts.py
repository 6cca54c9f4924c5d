"""Numbers for a terminal: three digits, a prefix that suits, units and spaces in plain ASCII."""

from __future__ import annotations

from guidegen.locale import numerals
from guidegen.locale.numerals import NO_BREAK, fixed, general

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


def percent(share: float) -> str:
    """A ratio as a whole percentage."""
    return f"{fixed(share * 100, 0)} %"


def money(amount: float, currency: str) -> str:
    """An amount of money and its currency."""
    return numerals.money(amount, currency).replace(NO_BREAK, " ")


def _digits(value: float) -> str:
    return general(value) if abs(value) < 1000 else fixed(value, 0)
