"""Caps, sleeves, strain relief and box: closing what has been measured."""

from __future__ import annotations

from guidegen.guide.format import listed
from guidegen.guide.matter import Matter
from guidegen.guide.steps.checks import look_check
from guidegen.guide.steps.cold_test import insulation_checks
from guidegen.guide.steps.draft import Draft
from guidegen.guide.steps.joint_words import caps_text, outer_text
from guidegen.guide.steps.supply_end import box_name
from guidegen.guide.tools import Tool
from guidegen.locale import _, ngettext
from guidegen.parts.bill import bill
from guidegen.parts.joints import Cover, DeadEnd, dead_ends, run_covers


def closing_steps(matter: Matter) -> tuple[Draft, ...]:
    """From the last reading to the closed box."""
    return (_shrink(matter), _strain_relief(matter), _box(matter))


def left_to_cap(matter: Matter) -> tuple[DeadEnd, ...]:
    """Live ends that stay open until the readings are taken; the others are capped beside their joint."""
    return tuple(
        end
        for cover in _covers(matter)
        for end in cover.ends
        if not (cover.joints and end.place == "lead-in")
    )


def _covers(matter: Matter) -> tuple[Cover, ...]:
    return tuple(cover for index, run in enumerate(matter.runs) for cover in run_covers(run, index))


def _closed_already(matter: Matter) -> Draft:
    """A run of whole strings without a soldered place has nothing to shrink."""
    return Draft(
        identity="close-joints",
        title=_("Look at the closed ends and test once more"),
        why=_("The ends carry the run's volts, and may touch nothing."),
        tools=(Tool.METER,),
        topics=("outdoors-joints", "dead-ends"),
        do=(_("Unplug; pull the supply's plug out of its socket."), *_cap_lines(matter, 0)),
        checks=insulation_checks(matter, tuple(range(len(matter.runs)))),
    )


def _shrink(matter: Matter) -> Draft:
    if not _covers(matter):
        return _closed_already(matter)
    caps = sum(len(end.poles) for end in left_to_cap(matter))
    alone = sum(not cover.joints for cover in _covers(matter))
    forks = bill(matter.arrangement).forks if matter.outdoors else 0
    soldered = any(cover.joints for cover in _covers(matter))
    parts = [_("the sleeves already on the cables")] if soldered else []
    if caps:
        parts.append(caps_text(caps))
    if alone:
        parts.append(outer_text(matter, alone))
    if forks:
        parts.append(
            ngettext(
                "{count} strip of hot-melt adhesive", "{count} strips of hot-melt adhesive", forks
            ).format(count=forks)
        )
    inner = (_("Inner sleeves over the middle of each soldered joint: shrink them."),) if soldered else ()
    return Draft(
        identity="close-joints",
        title=_("Cap the open ends and shrink the sleeves"),
        why=_("Live ends may touch nothing; and a joint closed before its test has to be cut out again."),
        parts=tuple(parts),
        tools=(*((Tool.CUTTERS, Tool.GLASSES) if caps else ()), Tool.CLOTH, Tool.HOT_AIR, Tool.METER),
        topics=("outdoors-joints", "dead-ends"),
        do=(
            _("Unplug; pull the supply's plug out of its socket. Take the tape off. Wipe flux away."),
            *_cap_lines(matter, caps),
            *inner,
            *_fork_lines(forks),
            _("Outer sleeve over all of it: shrink it from its middle outwards. Let it cool."),
        ),
        checks=(
            look_check(
                _("Both ends of every outer sleeve; then pull gently"),
                _("a ring of glue all round; nothing moves")
                if matter.outdoors
                else _("tight all round; nothing moves"),
                (_("Warm it once more, evenly. Still open: cut it off and use a new sleeve."),),
            ),
            *insulation_checks(matter, tuple(range(len(matter.runs)))),
        ),
    )


def _cap_lines(matter: Matter, caps: int) -> tuple[str, ...]:
    made = [end for end in dead_ends(matter.arrangement) if end.made]
    closed = tuple(
        _("“{run}” ends as its maker closed it: no bare metal, no crack? Then leave it.").format(
            run=matter.runs[end.run].name
        )
        for end in made
    )
    if not caps:
        return closed
    ends = listed([_end_text(matter, end) for end in left_to_cap(matter)])
    return (
        *closed,
        _(
            "Ends to cap: {ends}. Two ends together: cut one 2 cm shorter. Push a cap sleeve 1 cm beyond "
            "each end, shrink it, and pinch the tip shut while it is warm."
        ).format(ends=ends),
    )


def _end_text(matter: Matter, end: DeadEnd) -> str:
    run = matter.runs[end.run]
    poles = _("plus and minus") if len(end.poles) > 1 else _("plus") if end.poles[0] == "+" else _("minus")
    where = (
        _("in front of bulb 1") if end.place == "lead-in" else _("behind bulb {bulb}").format(bulb=run.bulbs)
    )
    return _("“{run}”, {poles} {where}").format(run=run.name, poles=poles, where=where)


def _fork_lines(forks: int) -> tuple[str, ...]:
    if not forks:
        return ()
    return (
        _(
            "Where two cables leave the same end of a sleeve it does not seal by itself: lay a strip of "
            "hot-melt adhesive between them first."
        ),
    )


def _strain_relief(matter: Matter) -> Draft:
    needed = bill(matter.arrangement)
    ties = ngettext("{count} cable tie", "{count} cable ties", needed.ties).format(count=needed.ties)
    joined = (
        (
            _(
                "At each soldered place lay the cables of both sides together in a small loop. Two ties hold "
                "them, at least 2 cm outside the sleeve."
            ),
        )
        if needed.soldered
        else ()
    )
    return Draft(
        identity="strain-relief",
        title=_("Take the pull off joints and terminals"),
        why=_("Solder breaks where a wire bends or pulls. The cable has to take the pull."),
        parts=(ties,),
        tools=(Tool.CUTTERS, Tool.GLASSES),
        topics=("outdoors-joints",),
        do=(
            *joined,
            _(
                "Where a cable goes into box or socket, one tie on its inside keeps it from being pulled "
                "out. Cut the ties' tails off."
            ),
        ),
        checks=(
            look_check(
                _("Every joint and terminal while you pull at its cables"),
                _("slack, nothing moves"),
                (_("It moves: tie it again, nearer."),),
            ),
        ),
    )


def _box(matter: Matter) -> Draft:
    return Draft(
        identity="close-box",
        title=_("Close the box"),
        why=_("Bare legs and terminals have to be out of reach."),
        parts=(box_name(matter),),
        tools=(Tool.SCREWDRIVER,),
        topics=("resistor-mounting",),
        do=(
            _("Unplugged: pull at every wire in its terminal. No strand stands out."),
            _(
                "Close the lid. Fix the box where leaves and dust cannot pile up on it, off anything "
                "that burns."
            ),
        ),
        checks=(
            look_check(
                _("Shake the box a little"),
                _("nothing moves or touches the wall"),
                (_("Open it and screw the loose part down."),),
            ),
        ),
    )
