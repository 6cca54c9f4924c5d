"""Rules about lengths of wire: what is stated against the way that it has to go."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from guidegen.circuit.arrangement import RunPlan
from guidegen.locale import N_
from guidegen.safety.rule import Case, Hit, Rule, exceeds
from guidegen.tables.limits import WAY_SPARE, WAY_SPARE_M, WAY_TOLERANCE_M

_WIRES = {
    "feeder": N_("the feeder"),
    "extra": N_("the extra wire"),
    "to middle": N_("the wire to the middle (feeder and extra wire together)"),
}


def extra_wire_short(case: Case) -> Iterator[Hit]:
    """One hit for each extra wire shorter than the run it bridges, where no hooks tell its way better."""
    if case.hooks_tell_ways:
        return
    for run in case.arrangement.runs:
        bridged_m = bridged_by_extra_m(run)
        if run.extra is not None and exceeds(bridged_m, run.extra.length_m):
            yield Hit(run.name, {"extra_m": run.extra.length_m, "bridged_m": bridged_m})


def bridged_by_extra_m(run: RunPlan) -> float:
    """String wire from the feeder's far end to where the extra wire joins, m."""
    bulb = run.fed_bulb if run.feed == "middle" else run.bulbs
    return float(run.position_m[bulb - 1])


def shorter_than_way(case: Case) -> Iterator[Hit]:
    """One hit for each stated wire that does not reach over the hooks."""
    return _held_against_way(case, too_short)


def longer_than_way(case: Case) -> Iterator[Hit]:
    """One hit for each stated wire far longer than its way over the hooks."""
    return _held_against_way(case, far_too_long)


def too_short(stated_m: float, way_m: float) -> bool:
    """Whether a wire is shorter than its way by more than measuring leaves open."""
    return exceeds(way_m, stated_m + WAY_TOLERANCE_M.value)


def far_too_long(stated_m: float, way_m: float) -> bool:
    """Whether a wire is longer than its way and what else it may have to go."""
    return exceeds(stated_m, WAY_SPARE.value * way_m + WAY_SPARE_M.value)


def _held_against_way(case: Case, off: Callable[[float, float], bool]) -> Iterator[Hit]:
    known = case.over_hooks
    for each in () if known is None else known.wires:
        if known is not None and off(each.stated_m, each.way_m):
            values = {"wire": _WIRES[each.wire], "stated_m": each.stated_m, "way_m": each.way_m}
            yield Hit(case.arrangement.runs[each.run].name, {**values, "supply_place": known.place})


RULES: tuple[Rule[Case], ...] = (
    Rule(
        id="extra-wire-short",
        level="notice",
        topics=("wire",),
        title=N_("Extra wire shorter than its way"),
        sentence=N_("The extra wire is {extra_m} long; along the run the way is {bridged_m}."),
        consequence="",
        avoid=(N_("That is right only if the run folds back towards its feed; else make it longer."),),
        reason=N_("A wire cut too short is only found when it hangs."),
        source=N_("common practice"),
        applies=extra_wire_short,
    ),
    Rule(
        id="wire-short-of-way",
        level="notice",
        topics=("wire",),
        title=N_("Wire shorter than its way over the hooks"),
        sentence=N_(
            "With the supply at {supply_place}, {wire} has {way_m} to go over the hooks; the file gives it "
            "{stated_m}."
        ),
        consequence="",
        avoid=(
            N_("Make it longer in the file, or say under place.supply_at where the supply stands."),
            N_("A tail that hangs free before the first hook may make up for a little of it."),
        ),
        reason=N_("A wire cut too short is only found when it hangs."),
        source=N_("common practice"),
        applies=shorter_than_way,
    ),
    Rule(
        id="wire-beyond-way",
        level="notice",
        topics=("wire",),
        title=N_("Wire far longer than its way over the hooks"),
        sentence=N_(
            "With the supply at {supply_place}, {wire} has {way_m} to go over the hooks; the file gives it "
            "{stated_m}, and the cut list cuts more than needed."
        ),
        consequence="",
        avoid=(
            N_("Make it shorter in the file, or say under place.supply_at where the supply stands."),
            N_("Leave it so if the wire also goes down to a socket or round something."),
        ),
        reason=N_("Wire that nobody needs costs money and volts."),
        source=N_("common practice"),
        applies=longer_than_way,
    ),
)
