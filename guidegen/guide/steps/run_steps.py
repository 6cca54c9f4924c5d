"""Making one run: cut, test every piece, join, feed. Its open ends are closed only after the readings."""

from __future__ import annotations

from guidegen.circuit.arrangement import RunPlan
from guidegen.guide.format import listed, quantity, slug
from guidegen.guide.matter import Matter
from guidegen.guide.steps.checks import look_check
from guidegen.guide.steps.cold_test import cold_test
from guidegen.guide.steps.draft import Draft, DraftGroup
from guidegen.guide.steps.feeds import feed_steps
from guidegen.guide.steps.joint_words import (
    JOINT_TOOLS,
    JOINT_TOPICS,
    across_joint_check,
    cover_at,
    joint_parts,
    sleeves_first,
    solder_both,
    stagger,
    tape_apart,
)
from guidegen.guide.steps.pieces import clip_line, find_plus_line, joined_ends
from guidegen.guide.steps.two_way import is_two_way, piece_check, piece_lines, piece_why
from guidegen.guide.tools import Tool
from guidegen.guide.words import bulbs_text, feed_text, step_identity
from guidegen.locale import _
from guidegen.parts.cuts import run_cuts
from guidegen.parts.joints import run_joints
from guidegen.parts.wires import string_reference


def run_group(matter: Matter, index: int) -> DraftGroup:
    """All steps of one run, up to its test without power."""
    run = matter.runs[index]
    joined = [joint.behind_bulb or 0 for joint in run_joints(run, index) if joint.place == "join"]
    steps = [_take(matter, index), _test_pieces(matter, index)]
    steps += [_join(matter, index, bulb) for bulb in joined]
    steps += [*feed_steps(matter, index), cold_test(matter, index)]
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
    do = [_piece_text(run, place) for place in range(len(run.pieces))]
    cuts = [*_boxes(run), *_string_cuts(run, index)]
    do += cuts
    do.append(
        _("Number bulbs of the run with tape: 1, {last}, and those beside a joint.").format(last=run.bulbs)
    )
    return Draft(
        identity=step_identity("take-pieces", index),
        title=_("Lay out the pieces and cut them"),
        why=_("A string is cut right behind a bulb, so that the rest keeps its lead wire."),
        parts=tuple(
            _("string {number} “{kind}”").format(number=piece.string_number, kind=run.string)
            for piece in run.pieces
        ),
        tools=(*((Tool.CUTTERS, Tool.GLASSES) if cuts else ()), Tool.TAPE, Tool.PEN),
        topics=("sharp", "conversion"),
        do=tuple(do),
        checks=(
            look_check(
                _("Bulbs of the run, counted from its begin"),
                str(run.bulbs),
                (_("Too few: a cut is at the wrong bulb. Count the pieces before you solder."),),
            ),
        ),
    )


def _string_cuts(run: RunPlan, index: int) -> list[str]:
    return [
        _(
            "Cut string {string} right behind bulb {bulb}, within 1 cm. The whole spacing stays "
            "with the next bulb."
        ).format(string=cut.string_number, bulb=cut.behind_bulb)
        for cut in run_cuts(run, index)
    ]


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
    with_tail = [str(piece.string_number) for piece in run.pieces if piece.has_tail]
    if not with_tail:
        return []
    return [
        _("Cut off the boxes still on string {strings}, no cells in them.").format(strings=listed(with_tail))
    ]


def _test_pieces(matter: Matter, index: int) -> Draft:
    run, test = matter.runs[index], matter.first_powers[index]
    kind = matter.kind_of(run)
    ohm = quantity(test.ohm, "Ω")
    return Draft(
        identity=step_identity("test-pieces", index),
        title=_("Light every piece through {ohm}, and mark its plus").format(ohm=ohm),
        why=piece_why(kind)
        if is_two_way(kind)
        else _("Once joined, a piece the wrong way round only stays dark and hides among the others."),
        parts=(_("test resistor {ohm}").format(ohm=ohm),),
        tools=(Tool.METER, Tool.CLIP_LEADS, Tool.TILE, Tool.STRIPPER, Tool.PEN),
        topics=("bench-power", "polarity", "meter"),
        do=(
            _(
                "Bare 10 mm of both wires at the begin of each piece. All bare ends apart, resistor "
                "on the tile."
            ),
            clip_line(ohm, _("the piece")),
            *(piece_lines(kind, run) if is_two_way(kind) else (find_plus_line(),)),
            _(
                "Mark plus there. Unplug. Follow it with the beeper to every other open end; mark it "
                "there too."
            ),
        ),
        checks=(piece_check(kind, run),),
    )


def _join(matter: Matter, index: int, bulb: int) -> Draft:
    run = matter.runs[index]
    return Draft(
        identity=f"join-behind-bulb-{bulb}-run-{index + 1}",
        title=_("Join the pieces behind bulb {bulb}").format(bulb=bulb),
        why=_("Plus goes on to plus and minus to minus."),
        parts=joint_parts(matter, cover_at(run, index, "join", bulb)),
        tools=JOINT_TOOLS,
        topics=JOINT_TOPICS,
        do=(
            sleeves_first(),
            *joined_ends(run, bulb),
            stagger(),
            solder_both(),
            tape_apart(),
        ),
        checks=(across_joint_check(),),
    )
