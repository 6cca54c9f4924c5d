"""How to set the meter, in one place, so that every page says it the same way."""

from __future__ import annotations

from guidegen.locale import _


def dc_volts() -> str:
    """Setting for direct volts."""
    return _("Meter on DC volts (V with a straight line), leads in COM and V")


def ohms() -> str:
    """Setting for resistance."""
    return _("Meter on ohms (Ω), lowest range, leads in COM and Ω, everything unplugged")


def continuity() -> str:
    """Setting for the beeper."""
    return _("Meter on continuity (the beeper), everything unplugged")


def diode() -> str:
    """Setting for the diode test."""
    return _("Meter on diode test (arrow with a bar), everything unplugged")


def amperes_in_line() -> str:
    """Setting for current, in line."""
    return _(
        "Meter on DC amperes, red lead in the A socket that suits the current, in line with the + wire; "
        "never across the supply"
    )
