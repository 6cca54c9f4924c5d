"""Before anything is cut: are these the strings and the supply that the guide was worked out for?"""

from __future__ import annotations

from guidegen.guide.blocks import Check
from guidegen.guide.format import quantity, slug, span
from guidegen.guide.matter import Matter
from guidegen.guide.meters import dc_volts
from guidegen.guide.predicted import metered_volts
from guidegen.guide.steps.checks import look_check, predicted_volts
from guidegen.guide.steps.draft import Draft, DraftGroup
from guidegen.guide.tools import Tool
from guidegen.locale import _
from guidegen.project.schema import LightString


def identify(matter: Matter) -> DraftGroup:
    """Tests that refuse wrong parts while everything can still go back to the shop."""
    strings = [step for name, kind in matter.kinds for step in _string_steps(matter, name, kind)]
    mains = [_stop_for_mains()] if matter.project.place.mains == "new fixed wiring" else []
    return DraftGroup(
        anchor="identify",
        title=_("Before you cut: are these the right parts?"),
        intro=_("Every test here can end with “stop”. Do them all while the parts can still go back."),
        steps=(*mains, _supply_marks(matter), _supply_volts(matter), *strings),
    )


def _stop_for_mains() -> Draft:
    return Draft(
        identity="stop-for-mains",
        title=_("Stop: the outlet is a licensed person's work"),
        why=_(
            "This project needs new fixed wiring. Nothing in this guide tells how, and nobody should guess."
        ),
        topics=("mains",),
        do=(
            _(
                "Ask a licensed electrician for a switched outlet, or for an enclosed, approved supply, at "
                "that place."
            ),
            _("Show them the load on “The numbers” and the place on “Start here”."),
            _("Go on only when that person has tested the outlet and handed it over."),
        ),
        checks=(
            look_check(
                _("Outlet"), _("tested and handed over"), (_("Stop here. Do none of this work yourself."),)
            ),
        ),
    )


def identity_of(matter: Matter, stem: str, name: str) -> str:
    """A step's identity; the kind of string is part of it only where there are several."""
    return stem if len(matter.kinds) == 1 else f"{stem}-{slug(name)}"


def supply_text(matter: Matter) -> str:
    """The supply in a few words."""
    supply = matter.project.supply
    return _("supply, {volts} DC, {amperes} or more").format(
        volts=quantity(supply.voltage, "V"), amperes=quantity(supply.rated_current, "A")
    )


def _supply_marks(matter: Matter) -> Draft:
    supply = matter.project.supply
    marks = [
        _("Read the output volts: {volts}, marked DC (a straight line over a dashed one).").format(
            volts=quantity(supply.voltage, "V")
        ),
        _(
            "Read the output current: {amperes} or more. More does no harm: the lights take only what they "
            "need."
        ).format(amperes=quantity(supply.rated_current, "A")),
        _("Find the double square (one square inside another): double insulation between mains and output."),
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
        topics=("supply", "mains", "outdoors"),
        do=tuple(marks),
        checks=(look_check(_("All these marks"), _("all there"), (_("Stop. Take another supply."),)),),
    )


def _supply_volts(matter: Matter) -> Draft:
    supply = matter.arrangement.supply
    return Draft(
        identity="supply-volts",
        title=_("Measure the supply with nothing connected"),
        why=_(
            "All figures rest on these volts. An adapter without regulation shows far more than its label."
        ),
        parts=(supply_text(matter), _("socket that fits the supply's plug")),
        tools=(Tool.METER, Tool.PEN),
        topics=("supply-volts", "meter"),
        do=(
            _("Push the supply's plug into the socket. Leave the socket's two terminals open."),
            _("Plug the supply into an outlet that is already there."),
            _(
                "Hold the red meter lead on one terminal and the black one on the other. A minus sign on the "
                "display means: swap the leads."
            ),
            _("Mark the terminal under the red lead + and the other one −."),
            _("Unplug the supply from the outlet."),
        ),
        checks=(
            predicted_volts(
                _("Between the two terminals of the socket, nothing connected"),
                metered_volts(supply.voltage_v, supply.lower_v, supply.upper_v),
                (
                    _("Too high: it is not regulated, or made for other volts. Do not use it."),
                    _("Too low or nothing: try another outlet, then another supply."),
                ),
            ),
        ),
    )


def _string_steps(matter: Matter, name: str, kind: LightString) -> list[Draft]:
    steps = [_low_voltage(matter, name, kind), _wires(matter, name, kind), _one_out(matter, name, kind)]
    return [*steps, _two_way(matter, name, kind)]


def _string_text(name: str) -> str:
    return _("strings “{name}”").format(name=name)


def _low_voltage(matter: Matter, name: str, kind: LightString) -> Draft:
    return Draft(
        identity=identity_of(matter, "low-voltage-string", name),
        title=_("Make sure that the string “{name}” is low-voltage").format(name=name),
        why=_("A mains string looks much the same, and a cut in it can kill."),
        parts=(_string_text(name),),
        topics=("strings-identify", "cells"),
        do=(
            _("Look at what feeds the string: a box for cells, a USB plug, or a small adapter of its own."),
            _("Read its label: volts, and DC. Only 24 V or less will do here."),
            _("Take the cells out of the box. They stay out for good."),
        ),
        checks=(
            look_check(
                _("What feeds the string"),
                _("cells, USB, or low-voltage DC"),
                (_("A mains plug at its end, or no label at all: stop. Do not cut it."),),
            ),
        ),
    )


def _wires(matter: Matter, name: str, kind: LightString) -> Draft:
    return Draft(
        identity=identity_of(matter, "count-wires", name),
        title=_("Count wires and bulbs of “{name}”").format(name=name),
        why=_(
            "Two wires from bulb to bulb mean that every bulb sits across both, in parallel. Such strings "
            "may be "
            "cut; others may not."
        ),
        parts=(_string_text(name),),
        tools=(Tool.TAPE_MEASURE,),
        topics=("strings-identify",),
        do=(
            _("Count the wires between two bulbs: there must be two, all along the string."),
            _("Count the bulbs: {bulbs} on every string.").format(bulbs=kind.bulbs),
            _("Measure from bulb to bulb: {spacing}. Measure the unlit wire before bulb 1: {tail}.").format(
                spacing=quantity(kind.spacing, "m"), tail=quantity(kind.tail_m, "m")
            ),
        ),
        checks=(
            look_check(
                _("Wires from bulb to bulb"),
                _("two"),
                (
                    _("One wire or three, or a chip in each bulb: stop. This string may not be cut."),
                    _("Other lengths or numbers: change them in the project file and make the guide anew."),
                ),
            ),
        ),
    )


def _one_out(matter: Matter, name: str, kind: LightString) -> Draft:
    return Draft(
        identity=identity_of(matter, "parallel-test", name),
        title=_("See “{name}” light as it was sold").format(name=name),
        why=_("It tells which bulbs light, and finds faulty strings while they can still go back."),
        parts=(_string_text(name), _("the cells or adapter it came with")),
        tools=(Tool.METER,),
        topics=("flashing",),
        do=(
            _("Light every string once on what it came with."),
            _("Look at all bulbs: all of one colour, steady, none flashing by itself."),
            _("Measure volts between the two wires at the string's feed, by the terminals of its box."),
            _("Take the cells out again, or unplug the adapter."),
        ),
        checks=(
            Check(
                what=_("At the string's feed, lit as it was sold"),
                meter=dc_volts(),
                expected=_("{volts} or a little more").format(volts=quantity(_bulb_volts(matter, name), "V")),
                range=span(0.8 * _bulb_volts(matter, name), 1.3 * _bulb_volts(matter, name), "V"),
                if_not=(
                    _(
                        "Far more: the bulbs are in series, not in parallel. Stop; this string may not be "
                        "cut."
                    ),
                    _("Single bulbs dark: send the string back."),
                ),
            ),
        ),
    )


def _bulb_volts(matter: Matter, name: str) -> float:
    index = next(index for index, run in enumerate(matter.runs) if run.string == name)
    return float(matter.solution.runs[index].bulb_v[matter.solution.runs[index].lit].max())


def _two_way(matter: Matter, name: str, kind: LightString) -> Draft:
    one_way = kind.lit_on_dc == "all"
    verdict = look_check(
        _("Volts at the feed while it shines"),
        _("steady") if one_way else _("swinging, or near 0 V"),
        (
            _(
                "They swing, or sit near 0 V: a two-way string. Stop; half of it would stay dark here. Keep "
                "its box, or "
                "send it back."
            )
            if one_way
            else _(
                "Steady volts: not a two-way string. Write “lit_on_dc: all” into the project file and make "
                "the "
                "guide anew."
            ),
        ),
    )
    return Draft(
        identity=identity_of(matter, "two-way-test", name),
        title=_("Find out whether “{name}” is a two-way string").format(name=name),
        why=_(
            "In a two-way string half the LEDs face the other way, and its box feeds them in turn. Direct "
            "current "
            "lights one half only. You must know that before you cut."
        ),
        parts=(_string_text(name), _("the cells or adapter it came with")),
        tools=(Tool.METER,),
        topics=("two-way",),
        do=(
            _("Light the string on what it came with, in its steady mode."),
            _("Measure DC volts where the two wires leave the box. Leave the meter there for ten seconds."),
            _("Try the flashing modes, if there are any: watch whether every second bulb goes its own way."),
            _("Take the cells out, or unplug the adapter."),
        ),
        checks=(verdict,),
    )
