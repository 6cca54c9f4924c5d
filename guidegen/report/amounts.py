"""Numbers for a terminal: three digits, a prefix that suits, plain ASCII."""

from __future__ import annotations

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
    return f"{share * 100:.0f} %"


def _digits(value: float) -> str:
    return f"{value:.3g}" if abs(value) < 1000 else f"{value:.0f}"
