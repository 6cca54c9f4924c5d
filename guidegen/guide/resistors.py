"""How a resistor is named, marked and read with a meter."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import suppress

from guidegen.calc.marking import band_colours, printed
from guidegen.circuit.arrangement import Resistor
from guidegen.guide.blocks import ResistorBody
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


def bodies(ohm: float, ratio: float, rating_w: float | None) -> tuple[ResistorBody, ...]:
    """What may stand on the body: four or five bands on small ones, letters on large ones; or nothing."""
    if rating_w is not None and rating_w > _BANDED_UP_TO_W:
        return tuple(_printed(ohm, ratio, rating_w))
    return tuple(dict.fromkeys(body for count in (4, 5) for body in _banded(ohm, ratio, count)))


def _printed(ohm: float, ratio: float, rating_w: float) -> Iterator[ResistorBody]:
    with suppress(ValueError):
        yield ResistorBody(print=printed(ohm, ratio, rating_w))


def _banded(ohm: float, ratio: float, count: int) -> Iterator[ResistorBody]:
    with suppress(ValueError):
        yield ResistorBody(bands=band_colours(ohm, ratio, count))


def marking(ohm: float, ratio: float, rating_w: float | None) -> str:
    """What stands on the body, in words; empty if it has no marks."""
    return _(" or ").join(_marks(body) for body in bodies(ohm, ratio, rating_w))


def _marks(body: ResistorBody) -> str:
    if body.bands:
        return "-".join(_(colour) for colour in body.bands)
    return _("printed {code}, or the same in words").format(code=body.print)


def body_words(body: ResistorBody) -> str:
    """A drawn body in words."""
    if body.bands:
        return _("body with bands {colours}, the last one set apart").format(colours=_marks(body))
    return _("white block printed {code}").format(code=body.print)


def bodies_picture(found: tuple[ResistorBody, ...]) -> str:
    """Id of the picture of these bodies; the same ones share it.  Empty if there are none."""
    return (
        "-".join(["resistor", *(body.print.replace(".", "-") or "-".join(body.bands) for body in found)])
        if found
        else ""
    )
