"""Numbers as people read them: three figures, a prefix that suits, a space that does not break."""

from __future__ import annotations

import math
import re
from collections.abc import Callable
from typing import NamedTuple

from guidegen.locale import _
from guidegen.locale.numerals import NO_BREAK, NOTHING, decimals_of, fixed, number, percent, with_unit

__all__ = [
    "NOTHING",
    "NO_BREAK",
    "fixed",
    "listed",
    "metered",
    "number",
    "numbers_listed",
    "percent",
    "quantity",
    "quoted",
    "slug",
    "span",
    "tolerance",
    "value_and_unit",
]


class _Scale(NamedTuple):
    """A unit as shown, and how many of it make one SI unit; used from `least` on (SI)."""

    least: float
    unit: str
    per_si: float


_SCALES: dict[str, tuple[_Scale, ...]] = {
    "V": (_Scale(0.1, "V", 1.0), _Scale(0.0, "mV", 1e3)),
    "A": (_Scale(1.0, "A", 1.0), _Scale(1e-4, "mA", 1e3), _Scale(0.0, "µA", 1e6)),
    "Ω": (_Scale(1e6, "MΩ", 1e-6), _Scale(1e3, "kΩ", 1e-3), _Scale(0.01, "Ω", 1.0), _Scale(0.0, "mΩ", 1e3)),
    "W": (_Scale(0.01, "W", 1.0), _Scale(0.0, "mW", 1e3)),
    "m": (_Scale(1.0, "m", 1.0), _Scale(0.01, "cm", 1e2), _Scale(0.0, "mm", 1e3)),
    "m2": (_Scale(0.0, "mm²", 1e6),),
    "Ω/m": (_Scale(0.01, "Ω/m", 1.0), _Scale(0.0, "mΩ/m", 1e3)),
    "°C": (_Scale(0.0, "°C", 1.0),),
    "%": (_Scale(0.0, "%", 1e2),),
}


def quantity(value: float, unit: str, figures: int = 3) -> str:
    """`value` in the SI unit `unit` with a prefix that suits: 0.205 "A" is 205 mA.

    `unit` is V, A, Ω, W, m, m2 (shown as mm²), Ω/m, °C or % (a ratio).  Any other unit is shown as it
    comes, without a prefix.
    """
    if not math.isfinite(value):
        return NOTHING
    scale = _scale(value, unit)
    return with_unit(number(value * scale.per_si, figures), scale.unit)


def value_and_unit(value: float, unit: str, figures: int = 3) -> tuple[str, str]:
    """The number and the unit of `quantity`, apart."""
    scale = _scale(value, unit)
    return number(value * scale.per_si, figures), scale.unit


def span(low: float, high: float, unit: str, figures: int = 3) -> str:
    """A range in one prefix: "2.95 to 3.18 V"; both ends rounded outwards."""
    scale, decimals = _common(low, high, unit, figures)
    step = 10.0**-decimals
    lower = fixed(_outwards(low * scale.per_si, step, math.floor), decimals)
    upper = fixed(_outwards(high * scale.per_si, step, math.ceil), decimals)
    return _("{low} to {high}").format(low=lower, high=with_unit(upper, scale.unit))


def metered(value: float, low: float, high: float, unit: str, figures: int = 3) -> str:
    """A reading with the prefix and the decimals that its range has in `span`."""
    scale, decimals = _common(low, high, unit, figures)
    return with_unit(fixed(value * scale.per_si, decimals), scale.unit)


def tolerance(ratio: float) -> str:
    """A tolerance: "±5 %"."""
    return with_unit(f"±{number(100 * ratio)}", "%")


def quoted(name: str) -> str:
    """A name between the quotation marks of the language in force."""
    return _("“{name}”").format(name=name)


def listed(items: tuple[str, ...] | list[str]) -> str:
    """Words in a row: "a, b and c"."""
    if len(items) < 2:
        return "".join(items)
    return _("{first} and {last}").format(first=", ".join(items[:-1]), last=items[-1])


def numbers_listed(items: tuple[int, ...] | list[int]) -> str:
    """Whole numbers in a row: "12, 24 and 36"."""
    return listed([str(item) for item in items])


def slug(text: str) -> str:
    """`text` as part of an identity: lower case, letters, digits and hyphens alone."""
    return re.sub(r"[^a-z0-9]+", "-", text.lower()).strip("-") or "x"


def _scale(value: float, unit: str) -> _Scale:
    scales = _SCALES.get(unit)
    if scales is None:
        return _Scale(0.0, unit, 1.0)
    if value == 0:
        return next(scale for scale in scales if scale.per_si == 1.0 or len(scales) == 1)
    # Rounding may lift a number to the next prefix: 999.96 mA is 1 A.
    size = float(f"{abs(value):.3g}")
    return next(scale for scale in scales if size >= scale.least)


def _common(low: float, high: float, unit: str, figures: int) -> tuple[_Scale, int]:
    """The prefix that suits both ends of a range, and the decimals that give the larger one its figures."""
    largest = max(abs(low), abs(high))
    scale = _scale(largest, unit)
    return scale, decimals_of(largest * scale.per_si, figures)


def _outwards(value: float, step: float, rounder: Callable[[float], int]) -> float:
    nearest = round(value / step) * step
    if abs(nearest - value) < 1e-9 * max(abs(value), step):
        return nearest
    return rounder(value / step) * step
