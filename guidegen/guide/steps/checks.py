"""Checks that several steps share."""

from __future__ import annotations

from guidegen.circuit.expected import ExpectedReading
from guidegen.guide.blocks import Check
from guidegen.guide.format import quantity, span
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
        expected=quantity(reading.expected, "V"),
        range=span(reading.low, reading.high, "V"),
        if_not=if_not,
        points=(reading.point.label,),
    )


def predicted_volts(what: str, reading: Predicted, if_not: tuple[str, ...]) -> Check:
    """Volts in a state that only this step makes."""
    return Check(
        what=what,
        meter=dc_volts(),
        expected=quantity(reading.expected, "V"),
        range=span(reading.low, reading.high, "V"),
        if_not=if_not,
    )


def ohms_check(what: str, reading: Predicted, if_not: tuple[str, ...]) -> Check:
    """Ohms, the meter's leads taken off."""
    return Check(
        what=what,
        meter=ohms(),
        expected=quantity(reading.expected, "Ω"),
        range=_("{range}, after you take off what the meter shows with its leads touched together").format(
            range=span(reading.low, reading.high, "Ω")
        ),
        if_not=if_not,
    )


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
