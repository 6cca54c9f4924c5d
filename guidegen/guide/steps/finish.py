"""Closing, the first hour, and hanging."""

from __future__ import annotations

import math

from guidegen.circuit.meter import error_of
from guidegen.circuit.points import TestPoint
from guidegen.guide.blocks import Check
from guidegen.guide.cut_list import hung_rows
from guidegen.guide.format import listed, quantity
from guidegen.guide.heat import ResistorHeat, resistor_heat
from guidegen.guide.matter import Matter
from guidegen.guide.places import place
from guidegen.guide.steps.checks import look_check, volts_check
from guidegen.guide.steps.closing import closing_steps
from guidegen.guide.steps.draft import Draft, DraftGroup
from guidegen.guide.steps.identify import supply_text
from guidegen.guide.steps.supply_end import place_line
from guidegen.guide.tools import Tool
from guidegen.hanging.make import hanging_plan
from guidegen.hanging.plan import HangingPlan
from guidegen.locale import _
from guidegen.parts.wires import resistor_reference

#: What a ventilated box may add to a resistor's surface, kelvin; own assumption.
BOX_K = 15.0
#: By how much a supply's volts wander from one hour to the next, as a share; own assumption.
DRIFT = 0.005
#: Largest distance of hooks, metre; common practice, no source.
HOOKS_M = 1.0


def finish(matter: Matter) -> DraftGroup:
    """Close, watch, hang."""
    return DraftGroup(
        anchor="finish",
        title=_("Close, watch, hang"),
        intro=_("Only what has been tested is closed, and only what has been watched is hung."),
        steps=(*closing_steps(matter), _watch(matter), _hang(matter), _last_reading(matter)),
    )


def _watch(matter: Matter) -> Draft:
    heats = [resistor_heat(matter, index) for index, run in enumerate(matter.runs) if run.resistor.fitted]
    return Draft(
        identity="first-hour",
        title=_("Watch the first hour"),
        why=_("Poor joints and hot parts show themselves within the first hour."),
        parts=(supply_text(matter),),
        tools=(Tool.TILE, Tool.METER, Tool.THERMOMETER, Tool.CLOCK, Tool.SCREWDRIVER),
        topics=("first-hour-watched", "resistor-mounting"),
        do=(
            _("Lay everything out on tile, stone or concrete. Plug in, box closed."),
            _("Stay in the room for one hour. Look and smell every ten minutes."),
            _("Unplug at once for smoke, a smell of hot plastic, or a bulb that flickers or goes dark."),
            _("Then open the lid, touch nothing, take the readings, unplug, close it."),
        ),
        checks=(
            *(_heat_check(heat) for heat in heats),
            *(_again_check(matter, point) for point in _again_points(matter)),
            _joint_check(),
        ),
    )


def _again_points(matter: Matter) -> tuple[TestPoint, ...]:
    """Where a run is read once it is closed: in the box."""
    return tuple(
        matter.point("resistor volts" if run.resistor.fitted else "after resistor", index)
        for index, run in enumerate(matter.runs)
    )


def _again_check(matter: Matter, point: TestPoint) -> Check:
    reading = matter.reading_at(point)
    text = _("Other than on your sheet by more than {volts}: look at the joints of this run.")
    volts = _again_v(matter, reading.expected)
    return volts_check(matter, reading, place(matter, point), (text.format(volts=quantity(volts, "V")),))


def _again_v(matter: Matter, expected_v: float) -> float:
    """By how much a second reading may differ though nothing has changed, to the next tenth of a volt.

    Twice the meter's error, and what the supply's own volts may wander.
    """
    wander_v = DRIFT * matter.arrangement.supply.voltage_v
    return math.ceil(10 * (2 * error_of(matter.study.meter.volts, expected_v) + wander_v) - 1e-9) / 10


def _heat_check(heat: ResistorHeat) -> Check:
    return Check(
        what=_("Surface of {resistor} after one hour, in a room at 20 °C").format(
            resistor=resistor_reference(heat.run)
        ),
        meter=_("Thermometer probe, never a finger; the box may add {kelvin}").format(
            kelvin=quantity(BOX_K, "°C")
        ),
        expected=_("about {running}").format(running=quantity(round(heat.running_c), "°C")),
        range=_("it is below {worst}").format(worst=quantity(round(heat.worst_c + BOX_K), "°C")),
        if_not=(_("Hotter: unplug. Measure its ohms and the volts across it; give it more air."),),
    )


def _joint_check() -> Check:
    return Check(
        what=_("Every joint, connector and the fuse holder after one hour"),
        meter=_("Thermometer, never a finger"),
        expected=_("as warm as the air around it"),
        range=_("it is less than 10 °C above that"),
        if_not=(_("Warmer: that contact is poor. Unplug and make it again."),),
    )


def _hook_lines(plan: HangingPlan | None) -> tuple[str, ...]:
    """How far apart the cable is hooked: by the plan if there is one."""
    if plan is None:
        far = _("Hook the cable itself, at most {far} apart, never a bulb or a joint. Joints hang slack.")
        return (far.format(far=quantity(HOOKS_M, "m")),)
    spans = {
        quantity(span.wire.span_m, "m"): None
        for span in sorted((s for line in plan.lines for s in line.spans), key=lambda s: s.wire.span_m)
    }
    return (
        _(
            "Hang by the sheet “Hanging plan”: hooks {first} to {last}, with spans of {spans}. It tells "
            "which bulb comes where."
        ).format(
            first=plan.lines[0].hooks[0].label, last=plan.lines[-1].hooks[-1].label, spans=listed([*spans])
        ),
        _("Hold the cable itself at each hook with a soft tie, never a bulb or a joint. Joints hang slack."),
    )


def _hook_parts(matter: Matter, plan: HangingPlan | None) -> tuple[str, ...]:
    """What the lights hang from, as on the shopping list."""
    if plan is None:
        return (_("hooks for the cable"),)
    return tuple(f"{name}: {needed}" for name, needed, _buy in hung_rows(matter, plan))


def _hang(matter: Matter) -> Draft:
    plan = hanging_plan(matter.project, matter.arrangement)
    lines = [
        _("Unplugged: carry the finished runs to their place. Nothing is soldered up there."),
        *_hook_lines(plan),
        _("Keep the low-voltage wires apart from mains cables."),
    ]
    if matter.project.place.children_or_animals != "no":
        lines.append(_("Keep every wire out of reach of children and animals."))
    if matter.outdoors:
        lines += [
            _("A small loop lower than each joint or entry lets water drip off before it."),
            _("Keep joints off the ground and out of gutters."),
            place_line(matter),
        ]
    if matter.outdoors and matter.project.supply.stands == "indoors":
        lines.append(
            _(
                "Lead cables out through a bushed hole that slopes down outwards; a window or door that "
                "closes on them cuts into them."
            )
        )
    return Draft(
        identity="hang",
        title=_("Hang the lights"),
        why=_("The cables carry their own weight; joints and bulbs must not."),
        parts=_hook_parts(matter, plan),
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
    lines = [_("From firm ground: plug in, open the lid, read, unplug, close it.")]
    if not all(matter.solved.protection.sure_everywhere(index) for index in range(len(matter.runs))):
        lines.append(
            _(
                "Not every short opens the fuse; then only you end it. Never leave the lights on unattended "
                "or overnight."
            )
        )
    return Draft(
        identity="last-readings",
        title=_("Read every run once more"),
        why=_("A joint that was pulled while hanging shows here."),
        parts=(supply_text(matter),),
        tools=(Tool.METER, Tool.SCREWDRIVER),
        topics=("meter",),
        do=(*lines, _("Keep this guide with its readings near the supply.")),
        checks=tuple(_again_check(matter, point) for point in _again_points(matter)),
    )
