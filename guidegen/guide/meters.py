"""How to set the meter, in one place, so that every page says it the same way."""

from __future__ import annotations

from guidegen.guide.format import quantity
from guidegen.locale import _
from guidegen.tables.limits import METER_MILLIAMPERES_TO_A


def dc_volts() -> str:
    """Setting for direct volts."""
    return _("Meter on DC volts, leads in COM and V")


def ohms() -> str:
    """Setting for resistance."""
    return _("Meter on ohms, lowest range, unplugged")


def high_ohms() -> str:
    """Setting for insulation."""
    return _("Meter on ohms, 2 MΩ range, unplugged")


def continuity() -> str:
    """Setting for the beeper."""
    return _("Meter on the beeper (continuity), unplugged")


def diode() -> str:
    """Setting for the diode test."""
    return _("Meter on diode test (arrow with a bar), everything unplugged")


def amperes_in_line() -> str:
    """Setting for current, in line."""
    return _(
        "Meter on DC amperes, red lead in the A socket that suits the current, in line with the + wire; "
        "never across the supply"
    )


def in_line_for(current_a: float, burden_ohm: float) -> str:
    """Setting for a current of which the socket, and the meter's own ohms, are known."""
    socket = _("10 A") if current_a > METER_MILLIAMPERES_TO_A.value else _("400 mA (10 A if it bears less)")
    return _("Meter on DC amperes, leads in COM and {socket}; allowed for: {ohm} of its own").format(
        socket=socket, ohm=quantity(burden_ohm, "Ω")
    )
