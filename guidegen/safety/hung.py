"""Rules about the hanging plan: what hangs too low, pulls too hard, or finds no hook."""

from __future__ import annotations

from collections.abc import Iterator

from guidegen.locale import N_
from guidegen.safety.place import hangs_over_path
from guidegen.safety.rule import Case, Hit, Rule, exceeds, when
from guidegen.tables.hanging import COPPER_PULL_PA, GUIDE_LOAD, HOOK_LOAD
from guidegen.tables.limits import OVER_PATH_M


def too_low(case: Case) -> tuple[Hit, ...]:
    """One hit if people may pass below, and the lowest point of the plan is known and too low."""
    lowest_m = None if case.hung is None else case.hung.lowest_m
    below = bool(hangs_over_path(case)) and lowest_m is not None and exceeds(OVER_PATH_M.value, lowest_m)
    return when(below, lowest_m=lowest_m, least_m=OVER_PATH_M.value)


def hook_overloaded(case: Case) -> tuple[Hit, ...]:
    """One hit if the largest pull on a hook is over what its stated rating allows."""
    plan = case.hung
    if plan is None or plan.hooks_hold is not False:
        return ()
    worst = plan.worst_hook
    values = {"pull_n": worst.worst_n, "hook": worst.hook.label, "limit_n": plan.hook_limit_n}
    return (Hit("", {**values, "share_percent": HOOK_LOAD.value}),)


def wire_overpulled(case: Case) -> Iterator[Hit]:
    """One hit if the wire that bears the lights is pulled harder than it may be."""
    plan = case.hung
    if plan is not None and plan.wire_holds is False:
        wire = N_("the guide wire") if plan.guide_wire else N_("the strings' own wire")
        yield Hit("", {"bearer": wire, "pull_n": plan.tension_n, "limit_n": plan.wire_limit_n})


def wind_left_out(case: Case) -> tuple[Hit, ...]:
    """One hit if a plan for the open air reckons with no wind."""
    hanging, exposure = case.project.hanging, case.project.place.exposure
    return when(hanging is not None and hanging.wind is None and exposure == "open outdoors")


def bulbs_beyond(case: Case) -> Iterator[Hit]:
    """One hit for each line whose last hook comes before its last bulb."""
    for line in () if case.hung is None else case.hung.lines:
        if line.beyond:
            values = {"count": len(line.beyond), "hook": line.hooks[-1].label, "wire_m": -line.spare_m}
            yield Hit("", values)


RULES: tuple[Rule[Case], ...] = (
    Rule(
        id="hung-too-low",
        level="warning",
        topics=("hanging",),
        title=N_("Wires too low above a path"),
        sentence=N_(
            "By the hanging plan the lowest point of the wire is {lowest_m} above the ground; where people "
            "pass it must be at least {least_m}."
        ),
        consequence=N_("A sagging wire catches a head, a hand or a load, and pulls everything down."),
        avoid=(
            N_("Set the hooks higher, give the wire less sag, or keep people out from below."),
            N_("If nobody passes below, say so under place.over_path."),
        ),
        reason=N_("Wires sag with time, heat, wind and ice."),
        source=OVER_PATH_M.source,
        applies=too_low,
    ),
    Rule(
        id="hook-overloaded",
        level="warning",
        topics=("hanging",),
        title=N_("Hook pulled too hard"),
        sentence=N_(
            "By the hanging plan hook {hook} is pulled with {pull_n}; {share_percent} of its rating is "
            "{limit_n}."
        ),
        consequence=N_("A hook tears out, and everything comes down on whoever is below."),
        avoid=(N_("Use stronger hooks, more of them, or more sag."),),
        reason=N_("A rating holds for a new hook in sound wood or wall; wind and age take their share."),
        source=HOOK_LOAD.source,
        applies=hook_overloaded,
    ),
    Rule(
        id="hung-wire-overpulled",
        level="caution",
        topics=("hanging",),
        title=N_("Hanging wire pulled too hard"),
        sentence=N_("By the hanging plan {bearer} is pulled with {pull_n}; it may bear {limit_n} for good."),
        consequence=N_("Wire stretches, joints loosen, and the line breaks and comes down."),
        avoid=(N_("Hang it from a stronger guide wire, or give it more sag."),),
        reason=N_("The flatter a wire hangs, the harder it is pulled."),
        source=f"{COPPER_PULL_PA.source}; {GUIDE_LOAD.source}",
        applies=wire_overpulled,
    ),
    Rule(
        id="hung-without-wind",
        level="caution",
        topics=("hanging",),
        title=N_("No wind in the hanging plan"),
        sentence=N_("The lights hang in the open, but no wind is in the pulls of the hanging plan."),
        consequence=N_("Wind pulls several times as hard as the weight, and hooks or wire give way."),
        avoid=(N_("State wind, and ice, under hanging; or take the lights down before it blows."),),
        reason=N_("Wind and ice pull harder than what hangs weighs."),
        source=N_("common practice"),
        applies=wind_left_out,
    ),
    Rule(
        id="bulbs-beyond-hooks",
        level="notice",
        topics=("hanging",),
        title=N_("Bulbs beyond the last hook"),
        sentence=N_(
            "By the hanging plan the wire goes on {wire_m} beyond the last hook {hook}, with bulbs that find "
            "no hook on it: {count}."
        ),
        consequence="",
        avoid=(N_("Add a hook, set the hooks farther apart, or use fewer bulbs."),),
        reason=N_("What hangs loose swings, and pulls at the last hook."),
        source=N_("common practice"),
        applies=bulbs_beyond,
    ),
)
