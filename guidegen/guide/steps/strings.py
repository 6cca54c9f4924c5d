"""Tests of a light string while it is still whole."""

from __future__ import annotations

from guidegen.guide.blocks import Check
from guidegen.guide.format import quantity, slug, span
from guidegen.guide.matter import Matter
from guidegen.guide.meters import dc_volts
from guidegen.guide.steps.checks import look_check
from guidegen.guide.steps.draft import Draft
from guidegen.guide.tools import Tool
from guidegen.locale import _
from guidegen.project.schema import LightString


def identity_of(matter: Matter, stem: str, name: str) -> str:
    """A step's identity; the kind of string is part of it only where there are several."""
    return stem if len(matter.kinds) == 1 else f"{stem}-{slug(name)}"


def string_steps(matter: Matter, name: str, kind: LightString) -> list[Draft]:
    """Is it low-voltage, are its bulbs in parallel, does it light one way only?"""
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
        topics=("strings-identify", "cells", "string-not-for-rain"),
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
            "may be cut; others may not."
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
    solved = matter.solution.runs[matter.first_run_of(name)]
    return float(solved.bulb_v[solved.lit].max())


def _two_way(matter: Matter, name: str, kind: LightString) -> Draft:
    one_way = kind.lit_on_dc == "all"
    verdict = Check(
        what=_("Volts at the feed while it shines"),
        meter=dc_volts(),
        expected=_("steady") if one_way else _("swinging, or near 0 V"),
        range="",
        if_not=(
            _(
                "They swing, or sit near 0 V: a two-way string. Stop; half of it would stay dark here. Keep "
                "its box, or send it back."
            )
            if one_way
            else _(
                "Steady volts: not a two-way string. Write “lit_on_dc: all” into the project file and make "
                "the guide anew."
            ),
        ),
    )
    return Draft(
        identity=identity_of(matter, "two-way-test", name),
        title=_("Find out whether “{name}” is a two-way string").format(name=name),
        why=_(
            "In a two-way string half the LEDs face the other way, and its box feeds them in turn. Direct "
            "current lights one half only. You must know that before you cut."
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
