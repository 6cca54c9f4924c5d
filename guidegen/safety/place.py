"""Rules about the place: rain, joints outdoors, and what the lights hang from."""

from __future__ import annotations

from guidegen.locale import N_
from guidegen.safety.rule import Case, Hit, Rule, always, outdoors, when
from guidegen.tables.limits import JOINT_ABOVE_GROUND_M, OVER_PATH_M, OVERHEAD_LINE_M


def little_ones_near(case: Case) -> tuple[Hit, ...]:
    """One hit unless the file says that no small children or animals come near."""
    return when(case.project.place.children_or_animals != "no")


def hangs_over_path(case: Case) -> tuple[Hit, ...]:
    """One hit if people may pass below: as stated, else assumed outdoors."""
    place = case.project.place
    below = place.over_path == "yes" or (place.over_path is None and place.exposure != "indoors")
    return when(below, least_m=OVER_PATH_M.value)


def open_air(case: Case) -> tuple[Hit, ...]:
    """One hit if the lights hang outdoors, where there may be overhead lines."""
    return when(case.project.place.exposure != "indoors", least_m=OVERHEAD_LINE_M.value)


def rain_runs_along(case: Case) -> tuple[Hit, ...]:
    """One hit if any part of the installation stands outdoors."""
    return when(case.outdoors, least_m=JOINT_ABOVE_GROUND_M.value)


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
        avoid=(N_("Hang wires out of reach, drip loops small; clear up every offcut."),),
        reason=N_("Decorative lights draw small children and animals."),
        source=N_("common practice"),
        applies=little_ones_near,
    ),
    Rule(
        id="overhead-lines",
        level="warning",
        topics=("hanging",),
        title=N_("Overhead lines"),
        sentence=N_("A ladder, a pole or a thrown wire can come near a power line above."),
        consequence=N_("A power line kills without being touched."),
        avoid=(N_("Look up first. Stay at least {least_m} away from every line, ladder and wire included."),),
        reason=N_("Overhead lines are mostly bare, and current jumps a gap."),
        source=OVERHEAD_LINE_M.source,
        applies=open_air,
    ),
    Rule(
        id="over-path",
        level="warning",
        topics=("hanging",),
        title=N_("Wires above a path"),
        sentence=N_("People may pass below these wires."),
        consequence=N_("A sagging wire catches a head, a hand or a load, and pulls everything down."),
        avoid=(N_("Keep the lowest point at least {least_m} above the ground, higher where vehicles pass."),),
        reason=N_("Wires sag with time, heat, wind and ice."),
        source=OVER_PATH_M.source,
        applies=hangs_over_path,
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
            N_("Keep every joint at least {least_m} above ground, puddles and snow."),
        ),
        reason=N_("The lowest point of a wire is where water drips off."),
        source=JOINT_ABOVE_GROUND_M.source,
        applies=rain_runs_along,
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
