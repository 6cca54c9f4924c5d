"""How a resistor is named, marked and read with a meter."""

from __future__ import annotations

from guidegen.calc.marking import band_colours, printed
from guidegen.circuit.arrangement import Resistor
from guidegen.guide.format import quantity, tolerance
from guidegen.locale import _

#: Ratings up to this carry colour bands, above it printed letters, watt.
_BANDED_UP_TO_W = 2.0


def resistor_name(resistor: Resistor) -> str:
    """Value, tolerance and, if known, rating and kind: "10 Ω ±5 %, 5 W, cement"."""
    words = [f"{quantity(resistor.ohm, 'Ω')} {tolerance(resistor.tolerance)}"]
    if resistor.rating_w is not None:
        words.append(quantity(resistor.rating_w, "W"))
    if resistor.kind is not None:
        words.append(_(resistor.kind))
    return ", ".join(words)


def marking(ohm: float, ratio: float, rating_w: float | None) -> str:
    """What stands on the body: colour bands on small ones, letters on large ones; empty if neither exists."""
    if rating_w is not None and rating_w > _BANDED_UP_TO_W:
        return _printed(ohm, ratio, rating_w)
    bands = [_bands(ohm, ratio, count) for count in (4, 5)]
    return _(" or ").join(dict.fromkeys(text for text in bands if text))


def _printed(ohm: float, ratio: float, rating_w: float) -> str:
    try:
        return _("printed {code}, or the same in words").format(code=printed(ohm, ratio, rating_w))
    except ValueError:
        return ""


def _bands(ohm: float, ratio: float, count: int) -> str:
    try:
        return "-".join(_(colour) for colour in band_colours(ohm, ratio, count))
    except ValueError:
        return ""
