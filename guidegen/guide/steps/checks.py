"""Checks that several steps share."""

from __future__ import annotations

import math

from guidegen.circuit.expected import ExpectedReading
from guidegen.guide.blocks import Check
from guidegen.guide.format import NO_BREAK, fixed, metered, quantity, span
from guidegen.guide.matter import Matter
from guidegen.guide.meters import continuity, dc_volts, high_ohms, ohms
from guidegen.guide.predicted import Predicted
from guidegen.locale import _

#: Dry insulation shows at least this, ohm; common practice, no source.
INSULATION_OHM = 1e6


def volts_check(matter: Matter, reading: ExpectedReading, what: str, if_not: tuple[str, ...]) -> Check:
    """Volts at a numbered test point: the range of most builds, and the wider one at which to stop."""
    assert reading.point is not None, "volts are read at a test point"
    return Check(
        what=what,
        meter=dc_volts(),
        expected=metered(reading.expected, reading.low, reading.high, "V"),
        range=_gated(reading, matter.study.meter.volts.step),
        if_not=if_not,
        points=(reading.point.label,),
    )


def _gated(reading: ExpectedReading, step_v: float) -> str:
    """Both ranges, or one alone where hardly a step of the meter lies between them."""
    text, wide = span(reading.low, reading.high, "V"), span(reading.out_low, reading.out_high, "V")
    if not math.isfinite(reading.out_high):
        return text
    apart = max(reading.low - reading.out_low, reading.out_high - reading.high)
    if wide == text or apart < 2 * step_v:
        return _("{range}; outside: stop").format(range=text)
    return _("{range}; stop outside {wide}").format(range=text, wide=wide)


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
        range=limits,
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


def apart_check(what: str, if_not: tuple[str, ...]) -> Check:
    """Two terminals that nothing connects yet."""
    return Check(what=what, meter=ohms(), expected=_("“OL”"), range="", if_not=if_not)


def no_short_check(what: str, if_not: tuple[str, ...]) -> Check:
    """No short between + and -, with the LEDs blocking."""
    return Check(
        what=what,
        meter=_("{ohms}; red lead on −, black lead on +, so that the LEDs block").format(ohms=ohms()),
        expected=_("“OL”"),
        range="",
        if_not=if_not,
    )


def insulation_check(what: str) -> Check:
    """Dry and clean between + and -, with the LEDs blocking."""
    return Check(
        what=what,
        meter=_("{ohms}; red lead on −, black lead on +").format(ohms=high_ohms()),
        expected=_("“OL”"),
        range=_("it shows “OL” or more than {least}").format(least=quantity(INSULATION_OHM, "Ω")),
        if_not=(_("Less: damp, flux or a strand bridges a joint. Clean, dry, and measure again."),),
    )
