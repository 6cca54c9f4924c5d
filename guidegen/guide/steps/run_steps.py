"""Making one run: cut, join, feed, and close what stays open."""

from __future__ import annotations

from guidegen.circuit.arrangement import RunPlan
from guidegen.guide.blocks import Check
from guidegen.guide.format import quantity, slug
from guidegen.guide.matter import Matter
from guidegen.guide.predicted import resistance
from guidegen.guide.steps.checks import look_check, ohms_check, same_way_round_check
from guidegen.guide.steps.cold_test import cold_test
from guidegen.guide.steps.draft import Draft, DraftGroup
from guidegen.guide.steps.ends import cap_ends, strain_relief
from guidegen.guide.steps.feeds import feed_steps
from guidegen.guide.steps.joint_words import cold_joint, joint_parts, solder_lines
from guidegen.guide.tools import Tool
from guidegen.guide.words import bulbs_text, feed_text, step_identity
from guidegen.locale import _
from guidegen.parts.cuts import JOINT_TAKES_M, run_cuts
from guidegen.parts.wires import string_reference


def run_group(matter: Matter, index: int) -> DraftGroup:
    """All steps of one run, up to its test without power."""
    run = matter.runs[index]
    steps = [_take(matter, index), *_joins(matter, index), *feed_steps(matter, index)]
    steps += cap_ends(matter, index)
    steps += [strain_relief(matter, index), cold_test(matter, index)]
    return DraftGroup(
        anchor=f"run-{index + 1}-{slug(run.name)}",
        title=_("Run {number}: {name}").format(number=index + 1, name=run.name),
        intro=_("{bulbs}, {feed}. The schematic calls its string {reference}.").format(
            bulbs=bulbs_text(run.bulbs), feed=feed_text(run), reference=string_reference(index)
        ),
        steps=tuple(steps),
    )


def _take(matter: Matter, index: int) -> Draft:
    run = matter.runs[index]
    cuts = run_cuts(run, index)
    do = [_piece_text(run, place) for place in range(len(run.pieces))]
    do += [
        _(
            "Cut string {string} right behind bulb {bulb}, within 1 cm of it. The whole spacing stays with "
            "the next bulb."
        ).format(string=cut.string_number, bulb=cut.behind_bulb)
        for cut in cuts
    ]
    do += _boxes(run)
    do.append(
        _(
            "Number the bulbs of the run from 1 to {last} with pieces of tape: 1, {last}, and every bulb "
            "beside a joint."
        ).format(last=run.bulbs)
    )
    return Draft(
        identity=step_identity("take-pieces", index),
        title=_("Lay out the pieces and cut them"),
        why=_("A string is cut right behind a bulb, so that the rest keeps its lead wire."),
        parts=tuple(
            _("string {number} “{kind}”").format(number=piece.string_number, kind=run.string)
            for piece in run.pieces
        ),
        tools=(Tool.CUTTERS, Tool.PEN, Tool.TAPE_MEASURE, Tool.GLASSES),
        topics=("sharp", "conversion"),
        do=tuple(do),
        checks=(
            look_check(
                _("Bulbs of the run, counted from its begin"),
                str(run.bulbs),
                (_("Count the pieces again before you solder. Too few: a cut is at the wrong bulb."),),
            ),
        ),
    )


def _piece_text(run: RunPlan, place: int) -> str:
    piece = run.pieces[place]
    start = sum(each.bulbs for each in run.pieces[:place]) + 1
    if piece.bulbs == piece.string_bulbs:
        return _(
            "Piece {place}: all of string {string}. Its bulbs are number {first} to {last} of the run."
        ).format(place=place + 1, string=piece.string_number, first=start, last=start + piece.bulbs - 1)
    return _(
        "Piece {place}: bulbs {from_bulb} to {to_bulb} of string {string}. They are number {first} to {last} "
        "of the run."
    ).format(
        place=place + 1,
        string=piece.string_number,
        from_bulb=piece.first,
        to_bulb=piece.last,
        first=start,
        last=start + piece.bulbs - 1,
    )


def _boxes(run: RunPlan) -> list[str]:
    with_tail = [piece.string_number for piece in run.pieces if piece.has_tail]
    return [
        _(
            "String {string}: if its box is still on, take the cells out and cut it off, right at the box."
        ).format(string=each)
        for each in with_tail
    ]


def _joins(matter: Matter, index: int) -> list[Draft]:
    run = matter.runs[index]
    return [_join(matter, index, place, bulb) for place, bulb in enumerate(run.joins)]


def _join(matter: Matter, index: int, place: int, bulb: int) -> Draft:
    run = matter.runs[index]
    segment_m = float(run.segment_m[bulb])
    nominal = segment_m * run.conductor.ohm_per_m
    reading = resistance(
        nominal, nominal * run.conductor.low_factor, nominal * run.conductor.high_factor + 0.1
    )
    closed_end = not run.pieces[place].cut_behind
    open_end = (
        _(
            "The last bulb of the string may end both wires inside. Open its cover far enough to reach them, "
            "or tap them within 1 cm in front of the bulb."
        )
        if closed_end
        else _("Bare 15 mm of both wires behind bulb {bulb}.").format(bulb=bulb)
    )
    return Draft(
        identity=f"join-behind-bulb-{bulb}-run-{index + 1}",
        title=_("Join the pieces behind bulb {bulb}").format(bulb=bulb),
        why=_(
            "Plus goes to plus and minus to minus. A piece the wrong way round stays dark and may hide a "
            "short."
        ),
        parts=(*joint_parts(matter, 2),),
        tools=(Tool.METER, Tool.STRIPPER, Tool.IRON, Tool.PEN, Tool.GLASSES),
        topics=("soldering", "outdoors-joints", "polarity"),
        do=(
            _find_plus(matter, run),
            open_end,
            _(
                "Bare 15 mm of both wires in front of bulb {bulb}. Cut one conductor 3 cm shorter on each "
                "side, so that the two joints do not lie side by side."
            ).format(bulb=bulb + 1),
            *solder_lines(),
            _("The joint takes about {length} of each cable.").format(length=quantity(JOINT_TAKES_M, "m")),
        ),
        checks=(
            ohms_check(
                _("From plus of bulb {bulb} to plus of bulb {next}").format(bulb=bulb, next=bulb + 1),
                reading,
                cold_joint(),
            ),
            ohms_check(
                _("From minus of bulb {bulb} to minus of bulb {next}").format(bulb=bulb, next=bulb + 1),
                reading,
                cold_joint(),
            ),
            *_way_round(matter, run, bulb),
        ),
    )


def _find_plus(matter: Matter, run: RunPlan) -> str:
    if matter.diode_test_tells(matter.kind_of(run)):
        return _(
            "Find plus of both pieces: on diode test the way round that shows volts has the red lead on "
            "plus. “OL” both ways: light the piece on its own box instead. Mark plus at the ends that meet."
        )
    return _(
        "Find plus of both pieces by lighting each on its own box, as before. Mark plus at the ends that "
        "meet."
    )


def _way_round(matter: Matter, run: RunPlan, bulb: int) -> tuple[Check, ...]:
    if not matter.diode_test_tells(matter.kind_of(run)):
        return ()
    return (
        same_way_round_check(
            _("From plus to minus of bulb {bulb}, all pieces joined so far").format(bulb=bulb),
            (
                _(
                    "It glows or shows volts: one piece is the wrong way round. Open the joint and swap the "
                    "wires."
                ),
            ),
        ),
    )
