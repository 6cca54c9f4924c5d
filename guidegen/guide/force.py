"""Forces as a maker feels them: newton, and the weight that pulls as much."""

from __future__ import annotations

from guidegen.guide.format import number, quantity
from guidegen.locale import _
from guidegen.tables.hanging import GRAVITY


def force(newton: float) -> str:
    """ "12.3 N (1.25 kg)"."""
    return _("{force} ({weight})").format(force=quantity(newton, "N"), weight=weight(newton / GRAVITY))


def weight(kilogram: float) -> str:
    """Grams below a kilogram."""
    return quantity(kilogram * 1000, "g") if kilogram < 1 else quantity(kilogram, "kg")


def per_metre(newton_per_m: float) -> str:
    """A load per metre of wire, as the weight of a metre."""
    return _("{grams} g a metre").format(grams=number(1000 * newton_per_m / GRAVITY))
