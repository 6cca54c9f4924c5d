"""Rules about the place: rain, joints outdoors, and what the lights hang from."""

from __future__ import annotations

from guidegen.locale import N_
from guidegen.safety.rule import Case, Rule, always, outdoors

RULES: tuple[Rule[Case], ...] = (
    Rule(
        id="sleeve-outdoors",
        level="warning",
        topics=("outdoors-joints",),
        title=N_("Joints outdoors need adhesive-lined sleeve"),
        sentence=N_("Tape and plain sleeve let water into a joint."),
        consequence=N_("Joints corrode, heat up and short."),
        avoid=(
            N_("Shrink adhesive-lined sleeve over each conductor and one over both; stagger the joints."),
        ),
        reason=N_("Only a sleeve glued to the wire all round keeps water out for years."),
        source=N_("common practice"),
        applies=outdoors,
    ),
    Rule(
        id="fixings-off-services",
        level="warning",
        topics=("hanging",),
        title=N_("Fixings clear of cables and pipes"),
        sentence=N_("A screw, nail or staple can hit a hidden cable or pipe, or the string itself."),
        consequence=N_("Shock, fire or flood."),
        avoid=(
            N_("Keep clear of lines straight up, down and beside outlets and switches; use a detector."),
            N_("Never staple through or across a wire."),
        ),
        reason=N_("Cables and pipes run unseen behind walls and boards."),
        source=N_("common practice"),
        applies=always,
    ),
    Rule(
        id="children-and-animals",
        level="warning",
        topics=("hanging",),
        title=N_("Children and animals"),
        sentence=N_("Hanging wires can strangle, and small parts can be swallowed or chewed."),
        consequence=N_("Strangling, choking, a short in a mouth."),
        avoid=(N_("Hang wires out of reach and taut, with no loops; clear up every offcut."),),
        reason=N_("Decorative lights draw small children and animals."),
        source=N_("common practice"),
        applies=always,
    ),
    Rule(
        id="drip-loop",
        level="caution",
        topics=("outdoors-joints", "hanging"),
        title=N_("Water runs along wires"),
        sentence=N_("Rain runs down a wire into whatever the wire leads to."),
        consequence=N_("Water in a joint, a plug or the supply."),
        avoid=(
            N_("Leave a loop that hangs lower than each joint and entry, with strain relief on both sides."),
            N_("Keep joints off the ground and out of puddles."),
        ),
        reason=N_("The lowest point of a wire is where water drips off."),
        source=N_("common practice"),
        applies=outdoors,
    ),
    Rule(
        id="maker-rating-ends",
        level="notice",
        topics=("conversion",),
        title=N_("The maker's ratings end here"),
        sentence=N_("Converting a string ends its maker's outdoor rating, approval and warranty."),
        consequence="",
        avoid=(N_("Answer for it yourself: do not sell it or lend it as an approved product."),),
        reason=N_("A maker's rating holds for the string as it was sold."),
        source=N_("common practice"),
        applies=always,
    ),
    Rule(
        id="gutter-no-fixing",
        level="notice",
        topics=("hanging",),
        title=N_("Gutters are no fixing"),
        sentence=N_("Gutters and downpipes are not made to hold wires."),
        consequence="",
        avoid=(N_("Use hooks in sound wood or wall, and never lean a ladder on a gutter."),),
        reason=N_("They bend, come loose and have sharp edges."),
        source=N_("common practice"),
        applies=outdoors,
    ),
)
