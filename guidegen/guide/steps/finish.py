"""Closing the joints, the first hour, and hanging."""

from __future__ import annotations

from guidegen.guide.blocks import Check
from guidegen.guide.format import quantity
from guidegen.guide.heat import ResistorHeat, resistor_heat
from guidegen.guide.matter import Matter
from guidegen.guide.steps.checks import look_check, volts_check
from guidegen.guide.steps.draft import Draft, DraftGroup
from guidegen.guide.steps.identify import supply_text
from guidegen.guide.tools import Tool
from guidegen.locale import _
from guidegen.parts.wires import resistor_reference

#: What a ventilated box may add to a resistor's surface, kelvin; own assumption.
BOX_K = 15.0


def finish(matter: Matter) -> DraftGroup:
    """Close, watch, hang."""
    return DraftGroup(
        anchor="finish",
        title=_("Close, watch, hang"),
        intro=_("Only what has been tested is closed, and only what has been watched is hung."),
        steps=(_close(matter), _watch(matter), _hang(matter), _last_reading(matter)),
    )


def _close(matter: Matter) -> Draft:
    lines = [
        _("Unplug the supply."),
        _("Take the paper out. Push each inner sleeve over the middle of its joint and shrink it."),
        _("Push the outer sleeve over both and shrink it from its middle outwards."),
    ]
    if matter.outdoors:
        lines.append(
            _(
                "Look for a ring of molten glue at both ends of each outer sleeve. None: warm it again or "
                "use a new sleeve."
            )
        )
    return Draft(
        identity="close-joints",
        title=_("Shrink the sleeves"),
        why=_("A joint that is closed before its test has to be cut out again."),
        parts=(_("the sleeves already on the cables"),),
        tools=(Tool.HOT_AIR, Tool.GLASSES),
        topics=("outdoors-joints", "dead-ends"),
        do=(*lines, _("Pull gently at both cables of every joint: nothing moves.")),
        checks=(
            look_check(
                _("Both ends of every outer sleeve"),
                _("a ring of glue all round") if matter.outdoors else _("tight all round"),
                (_("Warm it once more, evenly. Still open: cut it off and use a new sleeve."),),
            ),
        ),
    )


def _watch(matter: Matter) -> Draft:
    heats = [resistor_heat(matter, index) for index, run in enumerate(matter.runs) if run.resistor.fitted]
    do = [
        _("Lay everything out on a floor that does not burn: tile, stone or concrete. Plug in."),
        _("Stay in the room for one hour. Look and smell every ten minutes."),
        _("Hold the thermometer to each resistor, fuse holder, connector and joint. Do not touch them."),
        _("Unplug at once for smoke, a smell of hot plastic, a flickering bulb, or a reading out of range."),
    ]
    return Draft(
        identity="first-hour",
        title=_("Watch the first hour"),
        why=_(
            "Poor joints and hot parts show themselves within the first hour. “It works” is not yet a test."
        ),
        parts=(supply_text(matter),),
        tools=(Tool.THERMOMETER, Tool.CLOCK),
        topics=("first-hour-watched", "resistor-mounting"),
        do=tuple(do),
        checks=(*(_heat_check(heat) for heat in heats), _joint_check()),
    )


def _heat_check(heat: ResistorHeat) -> Check:
    return Check(
        what=_("Surface of {resistor} after one hour, in a room at 20 °C").format(
            resistor=resistor_reference(heat.run)
        ),
        meter=_("Thermometer, never a finger; the box may add {kelvin}").format(kelvin=quantity(BOX_K, "°C")),
        expected=_("about {running}").format(running=quantity(round(heat.running_c), "°C")),
        range=_("it is below {worst}").format(worst=quantity(round(heat.worst_c + BOX_K), "°C")),
        if_not=(_("Hotter: unplug. Measure its ohms and the volts across it; give it more air."),),
    )


def _joint_check() -> Check:
    return Check(
        what=_("Every joint, connector and the fuse holder after one hour"),
        meter=_("Thermometer, never a finger"),
        expected=_("as warm as the room"),
        range=_("it is less than 10 °C above the room"),
        if_not=(_("Warmer: that contact is poor. Unplug and make it again."),),
    )


def _hang(matter: Matter) -> Draft:
    lines = [
        _("Unplugged: carry the finished runs to their place. Nothing is soldered up there."),
        _("Hook the cable itself, never a bulb or a joint. Leave slack at every joint."),
        _("Keep the low-voltage wires apart from mains cables."),
    ]
    if matter.project.place.children_or_animals != "no":
        lines.append(_("Keep every wire out of reach of children and animals."))
    if matter.outdoors:
        lines += [
            _(
                "Let every cable hang in a loop lower than the joint or entry it leads to, so that water "
                "drips off before it."
            ),
            _("Keep joints off the ground and out of gutters."),
        ]
    if matter.project.supply.stands == "indoors":
        lines.append(_("The supply and the ventilated box stay indoors, dry, with air around them."))
    return Draft(
        identity="hang",
        title=_("Hang the lights"),
        why=_("The cables carry their own weight; joints and bulbs must not."),
        parts=(_("hooks for the cable"),),
        tools=(Tool.LADDER,),
        topics=("hanging",),
        do=tuple(lines),
        checks=(
            look_check(
                _("Every joint and bulb, once it hangs"),
                _("slack, carries nothing"),
                (_("Move the hook along the cable until the joint hangs loose."),),
            ),
        ),
    )


def _last_reading(matter: Matter) -> Draft:
    points = [matter.point("bulb", index, run.bulbs) for index, run in enumerate(matter.runs)]
    return Draft(
        identity="last-readings",
        title=_("Read the last bulb of every run once more"),
        why=_("A joint that was pulled while hanging shows here."),
        parts=(supply_text(matter),),
        tools=(Tool.METER,),
        topics=("meter",),
        do=(
            _("Plug in. Take the readings before the last covers are closed, from firm ground."),
            _("Keep this guide with its readings near the supply."),
        ),
        checks=tuple(
            volts_check(
                matter,
                matter.reading_at(point),
                _("“{run}”, at bulb {bulb}").format(run=matter.runs[point.run or 0].name, bulb=point.bulb),
                (_("Other than before hanging: look at the joints between feed and this bulb."),),
            )
            for point in points
        ),
    )
