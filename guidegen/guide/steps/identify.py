"""Before anything is cut: are these the strings and the supply that the guide was worked out for?"""

from __future__ import annotations

from guidegen.guide.format import fixed, quantity
from guidegen.guide.matter import Matter
from guidegen.guide.steps.checks import look_check, predicted_volts
from guidegen.guide.steps.draft import Draft, DraftGroup
from guidegen.guide.steps.strings import string_steps
from guidegen.guide.tools import Tool
from guidegen.locale import _
from guidegen.locale.numerals import with_unit


def identify(matter: Matter) -> DraftGroup:
    """Tests that refuse wrong parts while everything can still go back to the shop."""
    strings = [step for name, kind in matter.kinds for step in string_steps(matter, name, kind)]
    mains = [_stop_for_mains()] if _is_new(matter) else []
    return DraftGroup(
        anchor="identify",
        title=_("Before you cut: are these the right parts?"),
        intro=_("Every test here can end with “stop”. Do them all while the parts can still go back."),
        steps=(*mains, _supply_marks(matter), _supply_volts(matter), *strings),
    )


def _is_new(matter: Matter) -> bool:
    """Whether the outlet is still to come."""
    return matter.project.place.mains == "new fixed wiring"


def _into_outlet(matter: Matter) -> str:
    if _is_new(matter):
        return _("Plug the supply into the outlet that the licensed person handed over.")
    return _("Plug the supply into an outlet that is already there.")


def _stop_for_mains() -> Draft:
    return Draft(
        identity="stop-for-mains",
        title=_("Stop: the outlet is a licensed person's work"),
        why=_(
            "This project needs new fixed wiring. Nothing in this guide tells how, and nobody should guess."
        ),
        topics=("mains",),
        do=(
            _("Ask a licensed electrician for a switched outlet at that place, for one plug-in supply."),
            _("Give them the sheet “For the electrician”: it states load, place and protection."),
            _(
                "A supply that is wired in is not for this guide: the plug of yours is pulled before every "
                "change."
            ),
            _("Go on only when that person has tested the outlet and handed it over."),
        ),
        checks=(
            look_check(
                _("Outlet"), _("tested and handed over"), (_("Stop here. Do none of this work yourself."),)
            ),
        ),
    )


def supply_text(matter: Matter) -> str:
    """The supply in a few words."""
    supply = matter.project.supply
    return _("supply, {volts} DC, {amperes} or more").format(
        volts=quantity(supply.voltage, "V"), amperes=quantity(supply.rated_current, "A")
    )


def _supply_marks(matter: Matter) -> Draft:
    supply = matter.project.supply
    marks = [
        _("Read the output volts: about {volts}, marked DC (a straight line over a dashed one).").format(
            volts=quantity(supply.voltage, "V")
        ),
        _(
            "Read the output current: {amperes} or more. More does no harm: the lights take only what they "
            "need."
        ).format(amperes=quantity(supply.rated_current, "A")),
        _(
            "Find the double square (one square inside another: double insulation), and beside it SELV, LPS, "
            "ES1 or the sign of a safety transformer (IEC 61558-2-6). The square alone is not enough."
        ),
        _("Find an approval mark of your country on the case itself."),
        _("Look at the case: no crack, no open seam, no bent pin, never opened by anyone."),
    ]
    if supply.stands == "outdoors":
        marks.append(_("Find the IP mark: {ip} or better.").format(ip=supply.ip or "IPX4"))
    return Draft(
        identity="supply-marks",
        title=_("Read the marks on the supply"),
        why=_("The supply alone keeps the mains away from you, so it must be a sound and approved one."),
        parts=(supply_text(matter),),
        topics=("supply", "outdoors"),
        do=tuple(marks),
        checks=(look_check(_("All these marks"), _("all there"), (_("Stop. Take another supply."),)),),
    )


def _rcd_lines(matter: Matter) -> tuple[str, ...]:
    """The protection of an outdoor outlet is tried before anything is plugged in."""
    if not matter.outdoors and matter.project.supply.stands == "indoors":
        return ()
    return (
        _(
            "Press the test button of the outlet's residual-current device (RCD or GFCI): it must trip. Set "
            "it again. No such device, or no trip: stop, and ask an electrician."
        ),
    )


def _supply_volts(matter: Matter) -> Draft:
    return Draft(
        identity="supply-volts",
        title=_("Measure the supply with nothing connected"),
        why=_(
            "All figures rest on these volts. An adapter without regulation shows far more than its label."
        ),
        parts=(supply_text(matter), _("socket that fits the supply's plug")),
        tools=(Tool.METER, Tool.PEN),
        topics=("supply-volts", "mains", "meter"),
        do=(
            _("Push the supply's plug into the socket. Leave the socket's two terminals open."),
            *_rcd_lines(matter),
            _into_outlet(matter),
            _("Hold one meter lead on each terminal. A minus sign on the display: swap the leads."),
            _("Mark the terminal under the red lead + and the other one −."),
            _("Unplug the supply from the outlet."),
        ),
        checks=(
            predicted_volts(
                _("Between the two terminals of the socket, nothing connected"),
                matter.supply_reads,
                _if_other_volts(matter),
            ),
        ),
    )


def _if_other_volts(matter: Matter) -> tuple[str, ...]:
    """What to do about a supply that reads outside its range: rarely, and with other resistors, use it."""
    most_v = max((row.supply_v for row in matter.supply_rows if row.usable), default=0.0)
    too_low = (
        _("Too low or nothing: try another supply. If that fails too, ask the licensed person.")
        if _is_new(matter)
        else _("Too low or nothing: try another outlet, then another supply.")
    )
    if not matter.supply_rows:
        return (_("Too high: it is not regulated, or made for other volts. Do not use it."), too_low)
    volts = with_unit(fixed(max(most_v, matter.supply_reads.high), 2), "V")
    return (
        _("Above {volts}: it is not regulated, or made for other volts. Do not use it.").format(volts=volts),
        too_low,
        _("Steady, but outside the range: “If your supply differs” in “The numbers” tells what it needs."),
    )
