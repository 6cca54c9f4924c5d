"""Feeding a run as the schematic shows: which wire to which bulb."""

from __future__ import annotations

from guidegen.circuit.arrangement import RunPlan
from guidegen.guide.blocks import Check
from guidegen.guide.matter import Matter
from guidegen.guide.steps.checks import beep_check, look_check, no_short_check, ohms_check
from guidegen.guide.steps.cold_test import between_ends, met_place
from guidegen.guide.steps.draft import Draft
from guidegen.guide.steps.feed_words import (
    free_leg,
    near_lines,
    near_title,
    near_why,
    plus_terminal,
    supply_side_lines,
)
from guidegen.guide.steps.joint_words import (
    JOINT_TOOLS,
    JOINT_TOPICS,
    across_joint_check,
    closed_end,
    cover_at,
    joint_parts,
    sleeves_first,
    solder_both,
    stagger,
    tape_apart,
)
from guidegen.guide.steps.pieces import joined_ends
from guidegen.guide.steps.two_way import is_two_way, no_short_both_ways
from guidegen.guide.tools import Tool
from guidegen.guide.words import step_identity
from guidegen.locale import _
from guidegen.parts.joints import JointPlace
from guidegen.parts.wires import extra_reference, feeder_reference


def feed_steps(matter: Matter, index: int) -> list[Draft]:
    """Steps that feed one run: near its begin, in its middle, at its far end, as its feed asks."""
    run = matter.runs[index]
    steps = [_near(matter, index) if run.feeder is not None else _into_terminals(matter, index)]
    if run.feed == "middle":
        steps.append(_tap(matter, index))
    if run.feed in ("both ends", "opposite ends"):
        steps.append(_far(matter, index))
    return steps


def _near(matter: Matter, index: int) -> Draft:
    run = matter.runs[index]
    place: JointPlace = "extension" if run.feed == "middle" else "feed"
    cover = cover_at(run, index, place)
    cap = _cap_lines() if cover.capped_poles else ()
    return Draft(
        identity=step_identity("feed", index),
        title=near_title(run, index),
        why=near_why(run, matter.solution.runs[index]),
        parts=(*_near_parts(run, index), *joint_parts(matter, cover, cover.capped_poles)),
        tools=(*JOINT_TOOLS, *((Tool.HOT_AIR,) if cap else ()), Tool.SCREWDRIVER),
        topics=(*JOINT_TOPICS, "dead-ends") if cap else JOINT_TOPICS,
        do=(
            sleeves_first(),
            *cap,
            stagger(),
            *near_lines(run, index),
            solder_both(),
            tape_apart(),
            *supply_side_lines(run, index),
        ),
        checks=(across_joint_check(), *_near_checks(run, index)),
    )


def _cap_lines() -> tuple[str, ...]:
    return (
        _(
            "Minus of the wire in front of bulb 1 feeds nothing: cut it 2 cm shorter than plus, push a cap "
            "sleeve 1 cm beyond its end, shrink it, and pinch the tip shut while it is warm."
        ),
    )


def _into_terminals(matter: Matter, index: int) -> Draft:
    """A run without a feeder goes straight into the connectors."""
    run = matter.runs[index]
    return Draft(
        identity=step_identity("feed", index),
        title=near_title(run, index),
        why=near_why(run, matter.solution.runs[index]),
        parts=_near_parts(run, index),
        tools=(*_terminal_tools(run), Tool.STRIPPER, Tool.SCREWDRIVER),
        topics=("polarity",),
        do=(
            _("Bare 8 mm of each end that goes into a connector."),
            *near_lines(run, index),
            *supply_side_lines(run, index),
        ),
        checks=_terminal_checks(run, index),
    )


def _terminal_tools(run: RunPlan) -> tuple[Tool, ...]:
    """Beside stripper and screwdriver: for the end that feeds nothing, and for ends kept open."""
    if run.feed == "opposite ends":
        return (Tool.CUTTERS, Tool.GLASSES)
    return (Tool.TAPE,) if run.feed == "middle" else ()


def _terminal_checks(run: RunPlan, index: int) -> tuple[Check, ...]:
    return (
        look_check(
            _("Each wire in its terminal, when pulled"),
            _("holds; the one marked + is in {terminal}").format(terminal=plus_terminal(run, index)),
            (_("It slips, or sits elsewhere: clamp it again."),),
        ),
    )


def _near_parts(run: RunPlan, index: int) -> tuple[str, ...]:
    parts = []
    if run.feeder is not None:
        parts.append(_("feeder {reference}").format(reference=feeder_reference(index)))
    if run.feed != "one end":
        parts.append(_("extra wire {extra}").format(extra=extra_reference(index)))
    return tuple(parts)


def _near_checks(run: RunPlan, index: int) -> tuple[Check, ...]:
    extra = _("the far end of {extra}").format(extra=extra_reference(index))
    joint = _("the joint in front of bulb 1")
    plus_to = extra if run.feed == "middle" else joint
    minus_to = extra if run.feed in ("middle", "opposite ends") else joint
    if_not = (_("No beep: a joint or terminal does not hold. Beep on the wrong wire: swap plus and minus."),)
    return (
        beep_check(
            _("From {source} to plus of {target}").format(source=free_leg(run, index), target=plus_to), if_not
        ),
        beep_check(_("From the − common connector to minus of {target}").format(target=minus_to), if_not),
    )


def _tap(matter: Matter, index: int) -> Draft:
    run = matter.runs[index]
    extra, bulb = extra_reference(index), run.fed_bulb
    at_end = bulb == run.bulbs
    joined = bulb in run.joins
    title = (
        _("Join the pieces and the extra pair {extra} behind bulb {bulb}")
        if joined
        else _("Join the extra pair {extra} at bulb {bulb}")
    )
    return Draft(
        identity=step_identity("tap", index),
        title=title.format(extra=extra, bulb=bulb),
        why=_("This is where the run gets its current: half the bulbs on one side, half on the other."),
        parts=(
            _("extra wire {extra}").format(extra=extra),
            *joint_parts(matter, cover_at(run, index, "tap")),
        ),
        tools=JOINT_TOOLS,
        topics=JOINT_TOPICS,
        do=(
            sleeves_first(),
            *_opened_at(run, bulb),
            stagger(),
            _("Plus of {extra} joins plus, minus joins minus.").format(extra=extra)
            if at_end
            else _(
                "Three wires meet at each joint: {extra}, the wire from bulb {bulb}, the wire to bulb {next}."
            ).format(extra=extra, bulb=bulb, next=bulb + 1),
            solder_both(),
            tape_apart(),
        ),
        checks=(
            across_joint_check(),
            beep_check(
                _("From {source} to the plus joint behind bulb {bulb}").format(
                    source=free_leg(run, index), bulb=bulb
                ),
                (_("No beep: solder the joint again. Beep to minus: swap plus and minus."),),
            ),
        ),
    )


def _opened_at(run: RunPlan, bulb: int) -> tuple[str, ...]:
    """How both wires are reached behind the fed bulb."""
    if bulb in run.joins:
        return joined_ends(run, bulb)
    if bulb == run.bulbs:
        return () if run.pieces[-1].cut_behind else (closed_end(bulb),)
    return (_("Right behind bulb {bulb}, within 2 cm, cut both wires of the string.").format(bulb=bulb),)


def _far(matter: Matter, index: int) -> Draft:
    run = matter.runs[index]
    extra, bulb = extra_reference(index), run.bulbs
    both = run.feed == "both ends"
    opened = () if run.pieces[-1].cut_behind else (closed_end(bulb),)
    return Draft(
        identity=step_identity("far-end", index),
        title=_("Join the extra wire {extra} at bulb {bulb}").format(extra=extra, bulb=bulb),
        why=_("At the far end the extra wire meets the last bulb.")
        if both
        else _("The run's minus leaves here."),
        parts=(
            _("extra wire {extra}").format(extra=extra),
            *joint_parts(matter, cover_at(run, index, "far end")),
        ),
        tools=JOINT_TOOLS,
        topics=JOINT_TOPICS,
        do=(sleeves_first(), *opened, *_far_lines(extra, bulb, both)),
        checks=(across_joint_check(), *(_loop_checks(matter, run) if both else (_return_check(run, index),))),
    )


def _far_lines(extra: str, bulb: int, both: bool) -> tuple[str, ...]:
    if both:
        return (
            stagger(),
            _("Plus of {extra} to plus of bulb {bulb}. Minus of {extra} to minus of bulb {bulb}.").format(
                extra=extra, bulb=bulb
            ),
            solder_both(),
            tape_apart(),
        )
    return (
        _("{extra} to minus of bulb {bulb}. Bare 15 mm of both, hook, solder, let it cool.").format(
            extra=extra, bulb=bulb
        ),
        _("Plus behind bulb {bulb} stays open for a reading: cut it 2 cm shorter, bare its end.").format(
            bulb=bulb
        ),
        _("Shrink nothing yet. Tape joint and open end apart."),
    )


def _return_check(run: RunPlan, index: int) -> Check:
    return beep_check(
        _("From the − common connector to the joint at bulb {bulb}").format(bulb=run.bulbs),
        (_("No beep: solder the joint again. Beep to plus: wrong conductor, change it."),),
    )


def _loop_checks(matter: Matter, run: RunPlan) -> tuple[Check, ...]:
    """Between the ends the extra pair lies beside the string: the ohms tell whether it is really joined."""
    no_short = no_short_both_ways if is_two_way(matter.kind_of(run)) else no_short_check
    return (
        no_short(
            _("From plus to minus at bulb {bulb}").format(bulb=run.bulbs),
            (_("Near zero: plus and minus of the extra pair are swapped at one end. Change them there."),),
        ),
        ohms_check(
            _("From plus of {place} to the plus joint at bulb {bulb}; then minus alike").format(
                place=met_place(run, "+"), bulb=run.bulbs
            ),
            between_ends(run),
            (_("Too much: the extra pair is not joined at one of its ends. Solder that joint again."),),
        ),
    )
