"""Tests of a light string while it is still whole."""

from __future__ import annotations

from guidegen.guide.blocks import Check
from guidegen.guide.format import quantity, slug, span
from guidegen.guide.matter import Matter
from guidegen.guide.meters import dc_volts
from guidegen.guide.steps.checks import look_check
from guidegen.guide.steps.draft import Draft
from guidegen.guide.steps.two_way import flashing_line
from guidegen.guide.tools import Tool
from guidegen.locale import _
from guidegen.project.schema import LightString


def identity_of(matter: Matter, stem: str, name: str) -> str:
    """A step's identity; the kind of string is part of it only where there are several."""
    return stem if len(matter.kinds) == 1 else f"{stem}-{slug(name)}"


def string_steps(matter: Matter, name: str, kind: LightString) -> list[Draft]:
    """Is it low-voltage, are its bulbs in parallel, does it light one way only?"""
    return [_low_voltage(matter, name), _wires(matter, name, kind), _as_sold(matter, name, kind)]


def _string_text(name: str) -> str:
    return _("strings “{name}”").format(name=name)


def _low_voltage(matter: Matter, name: str) -> Draft:
    return Draft(
        identity=identity_of(matter, "low-voltage-string", name),
        title=_("Make sure that the string “{name}” is low-voltage").format(name=name),
        why=_("A mains string looks much the same, and a cut in it can kill."),
        parts=(_string_text(name),),
        topics=("strings-identify", "cells", "string-not-for-rain"),
        do=(
            _("Look at what feeds the string: a box for cells, a USB plug, or a small adapter of its own."),
            _("Read its label: volts, and DC. Only 24 V or less will do here."),
            _("An adapter of its own needs the same marks as the supply of this build."),
            _("Leave the cells out until a step asks for them."),
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
            "Only strings with all bulbs in parallel may be cut. They have two wires from bulb to bulb; so "
            "have some others, which later readings tell."
        ),
        parts=(_string_text(name),),
        tools=(Tool.TAPE_MEASURE,),
        topics=("strings-identify",),
        do=(
            _("Count the wires between two bulbs, all along the string. Count the bulbs: {bulbs}.").format(
                bulbs=kind.bulbs
            ),
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


def _as_sold(matter: Matter, name: str, kind: LightString) -> Draft:
    one_way = kind.lit_on_dc == "all"
    return Draft(
        identity=identity_of(matter, "parallel-test", name),
        title=_("See “{name}” light as it was sold").format(name=name),
        why=_(
            "It finds faulty strings while they can still go back, and two-way strings: half of their LEDs "
            "face the other way and stay dark on direct current."
        ),
        parts=(_string_text(name), _("the cells or adapter it came with")),
        tools=(Tool.METER,),
        topics=("flashing", "two-way", "cells"),
        do=(
            _("Light every string on what it came with, in its steady mode: one colour, no bulb flashes."),
            _("Measure volts where the two wires leave the box, for ten seconds."),
            flashing_line(kind),
            _("Take the cells out for good, or put the adapter away for good."),
        ),
        checks=(_one_way_check(matter, name) if one_way else _two_way_check(),),
    )


def _one_way_check(matter: Matter, name: str) -> Check:
    volts = _bulb_volts(matter, name)
    return Check(
        what=_("At the string's feed, lit as it was sold"),
        meter=dc_volts(),
        expected=_("{volts} or a little more, steady").format(volts=quantity(volts, "V")),
        range=span(0.8 * volts, 1.3 * volts, "V"),
        if_not=(
            _("Far more: bulbs in series. Stop; this string may not be cut."),
            _("Swinging, or near 0 V while it shines: a two-way string. Stop; send it back."),
            _("Too low: weak cells. Bulbs dark: send the string back."),
        ),
    )


def _two_way_check() -> Check:
    return Check(
        what=_("Volts at the feed while it shines"),
        meter=dc_volts(),
        expected=_("swinging, or near 0 V"),
        range="",
        if_not=(
            _(
                "Steady volts: no two-way string. Write “lit_on_dc: all” into the project file and make the "
                "guide anew."
            ),
            _("Bulbs dark on its own box: send the string back."),
        ),
    )


def _bulb_volts(matter: Matter, name: str) -> float:
    solved = matter.solution.runs[matter.first_run_of(name)]
    return float(solved.bulb_v[solved.lit].max())
