"""Checks that several steps share."""

from __future__ import annotations

import math

from guidegen.circuit.expected import ExpectedReading
from guidegen.guide.blocks import Check
from guidegen.guide.format import NO_BREAK, fixed, metered, quantity, span
from guidegen.guide.matter import Matter
from guidegen.guide.meters import continuity, dc_volts, diode, ohms
from guidegen.guide.predicted import Predicted
from guidegen.locale import _

#: Below this the ohmmeter shows a short, ohm; LEDs that block show far more.
NO_SHORT_OHM = 1000.0


def volts_check(matter: Matter, reading: ExpectedReading, what: str, if_not: tuple[str, ...]) -> Check:
    """Volts at a numbered test point, from the expected readings."""
    assert reading.point is not None, "volts are read at a test point"
    return Check(
        what=what,
        meter=dc_volts(),
        expected=metered(reading.expected, reading.low, reading.high, "V"),
        range=span(reading.low, reading.high, "V"),
        if_not=if_not,
        points=(reading.point.label,),
    )


def predicted_volts(what: str, reading: Predicted, if_not: tuple[str, ...]) -> Check:
    """Volts in a state that only this step makes."""
    return Check(
        what=what,
        meter=dc_volts(),
        expected=metered(reading.expected, reading.low, reading.high, "V"),
        range=span(reading.low, reading.high, "V"),
        if_not=if_not,
    )


def ohms_check(what: str, reading: Predicted, if_not: tuple[str, ...]) -> Check:
    """Ohms as a meter shows them, to a tenth, its leads taken off."""
    low, high = math.floor(10 * reading.low) / 10, math.ceil(10 * reading.high) / 10
    limits = (
        _("{low} to {high}").format(low=fixed(low, 1), high=_ohm(high))
        if low > 0
        else _("it is not more than {high}").format(high=_ohm(high))
    )
    return Check(
        what=what,
        meter=ohms(),
        expected=_ohm(reading.expected),
        range=_("{range}, once you have taken off what the meter leads read").format(range=limits),
        if_not=if_not,
    )


def look_check(what: str, expected: str, if_not: tuple[str, ...]) -> Check:
    """A check with the eyes or the hands."""
    return Check(what=what, meter="", expected=expected, range="", if_not=if_not)


def _ohm(value: float) -> str:
    return f"{fixed(value, 1)}{NO_BREAK}Ω"


def beep_check(what: str, if_not: tuple[str, ...]) -> Check:
    """Continuity that must be there."""
    return Check(what=what, meter=continuity(), expected=_("a beep"), range="", if_not=if_not)


def no_short_check(what: str, if_not: tuple[str, ...]) -> Check:
    """No short between + and -, with the LEDs blocking."""
    return Check(
        what=what,
        meter=_("{ohms}; red lead on − and black lead on +, so that the LEDs block").format(ohms=ohms()),
        expected=_("“OL”"),
        range=_("it shows “OL” or more than {least}").format(least=quantity(NO_SHORT_OHM, "Ω")),
        if_not=if_not,
    )


def same_way_round_check(what: str, if_not: tuple[str, ...]) -> Check:
    """No LED conducts backwards; a reversed piece would."""
    return Check(
        what=what,
        meter=_("{diode}; red lead on −, black lead on +").format(diode=diode()),
        expected=_("“OL”, and nothing glows"),
        range="",
        if_not=if_not,
    )
