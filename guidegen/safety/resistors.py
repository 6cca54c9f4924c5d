"""Rules about the resistor of a run: its watts, a short behind it, and its heat."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from guidegen.calc.resistor import body_degc, hottest_rise_k, rating_at_w
from guidegen.locale import N_
from guidegen.parts.trial_resistors import trials
from guidegen.safety.rule import Case, Hit, Rule, exceeds
from guidegen.tables.limits import HOT_SURFACE_DEGC, RESISTOR_LOAD


@dataclass(frozen=True)
class Heat:
    """Watts of one run's resistor beside what it bears in the warmest air.

    `bears_w`: its derated rating; `cleared`: whether the fuse is sure to end
    a short anywhere behind it; `shorted_w`: the watts of a short that may
    last, 0 where every one is ended; temperatures of its body in free air,
    degC.
    """

    name: str
    fault_a: float
    running_w: float
    worst_w: float
    shorted_w: float
    rating_w: float
    bears_w: float
    cleared: bool
    running_c: float
    shorted_c: float

    @property
    def over_rating(self) -> bool:
        """Whether it is over its rating as it runs."""
        return exceeds(self.running_w, self.bears_w)

    @property
    def bears_short(self) -> bool:
        """Whether its rating bears a lasting short behind it."""
        return not exceeds(self.shorted_w, self.bears_w)


def heats(case: Case) -> Iterator[Heat]:
    """The resistors fitted and rated, in the order of the runs."""
    air_c = case.arrangement.warmest_c
    for run in case.runs:
        resistor = run.plan.resistor
        if not resistor.fitted or resistor.rating_w is None:
            continue
        rise_k = hottest_rise_k(resistor.kind)
        shorted_w = case.protection.lasting_w(run.index, run.margins.shorted_w)
        yield Heat(
            name=run.plan.name,
            fault_a=_lasting_fault_a(case, run.index),
            running_w=run.solved.resistor_w,
            worst_w=run.margins.resistor_w,
            shorted_w=shorted_w,
            rating_w=resistor.rating_w,
            bears_w=rating_at_w(resistor.rating_w, air_c, resistor.kind),
            cleared=case.protection.sure_everywhere(run.index),
            running_c=body_degc(air_c, rise_k, run.margins.resistor_w, resistor.rating_w),
            shorted_c=body_degc(air_c, rise_k, shorted_w, resistor.rating_w),
        )


def _lasting_fault_a(case: Case, index: int) -> float:
    """What a short drives that may last: right behind the resistor if that one may, else at the far end."""
    guard = case.protection
    if guard.sure_after_resistor[index]:
        return guard.fault_far_end_a[index]
    return guard.fault_after_resistor_a[index]


def over_rating(case: Case) -> Iterator[Hit]:
    """One hit for each resistor over its rating at nominal values."""
    for heat in heats(case):
        if heat.over_rating:
            yield Hit(heat.name, {"running_w": heat.running_w, "bears_w": heat.bears_w})


def neither_bears_nor_cleared(case: Case) -> Iterator[Hit]:
    """One hit for each resistor that a short would overload for good."""
    for heat in heats(case):
        if not heat.bears_short and not heat.cleared:
            yield Hit(heat.name, {"shorted_w": heat.shorted_w, "bears_w": heat.bears_w})


def load_limit(case: Case) -> float:
    """Largest share of the rating to run at: the goal where it is tighter, never looser."""
    return min(case.project.goals.resistor_load, RESISTOR_LOAD.value)


def loaded_high(case: Case) -> Iterator[Hit]:
    """One hit for each resistor that runs within its rating but over the share kept to."""
    limit = load_limit(case)
    for heat in heats(case):
        if exceeds(heat.running_w, limit * heat.bears_w) and not heat.over_rating:
            yield Hit(heat.name, {"load_percent": heat.running_w / heat.bears_w, "limit_percent": limit})


def hot_when_shorted(case: Case) -> Iterator[Hit]:
    """One hit for each resistor that gets hot and whose short the fuse is not sure to end."""
    for heat in heats(case):
        if not heat.cleared and max(heat.running_c, heat.shorted_c) > HOT_SURFACE_DEGC.value:
            yield Hit(heat.name, {"running_c": heat.running_c, "shorted_c": heat.shorted_c})


def hot_running(case: Case) -> Iterator[Hit]:
    """One hit for each resistor that gets hot as it runs and whose short the fuse ends."""
    for heat in heats(case):
        if heat.cleared and heat.running_c > HOT_SURFACE_DEGC.value:
            yield Hit(heat.name, {"running_c": heat.running_c})


def hot_trials(case: Case) -> Iterator[Hit]:
    """One hit for each test resistor that gets hot while what it feeds is shorted."""
    for each in trials(case.arrangement, case.solution, dict(case.used_strings)):
        if each.shorted_c > HOT_SURFACE_DEGC.value:
            yield Hit("", {"ohm": each.ohm, "shorted_w": each.shorted_w, "shorted_c": each.shorted_c})


def short_not_cleared(case: Case) -> Iterator[Hit]:
    """One hit for each run whose short behind the resistor lasts, though the resistor bears it."""
    for heat in heats(case):
        if not heat.cleared and heat.bears_short:
            yield Hit(heat.name, {"fault_a": heat.fault_a, "open_a": case.protection.must_open_a})


_MOUNTING = (
    N_("Mount it in free air, off plastic, wood, hot glue and foam."),
    N_("Never judge it by touching: use a thermometer, or the back of a hand held near."),
)

RULES: tuple[Rule[Case], ...] = (
    Rule(
        id="resistor-over-rating",
        level="refusal",
        topics=("resistor",),
        title=N_("Resistor over its rating"),
        sentence=N_("The resistor would run at {running_w}; it bears {bears_w}."),
        consequence=N_("It overheats, chars what it touches, and can start a fire."),
        avoid=(N_("Use a resistor of a higher rating, best at least twice the watts it runs at."),),
        reason=N_("Over its rating a resistor gets hotter than its maker allows."),
        source=N_("the resistor's rating, derated for warm air as in IEC 60115-1"),
        applies=over_rating,
    ),
    Rule(
        id="resistor-shorted",
        level="refusal",
        topics=("resistor", "fuse"),
        title=N_("A short would overheat the resistor for good"),
        sentence=N_(
            "With its run shorted the resistor would take {shorted_w}; it bears {bears_w}, "
            "and the fuse need not open."
        ),
        consequence=N_("It glows and can set fire to what it touches, until somebody pulls the plug."),
        avoid=(N_("Use a resistor whose rating bears a lasting short, mounted in free air."),),
        reason=N_("A short that no fuse is sure to end must count as lasting for good."),
        source=N_("common practice; must-open currents of IEC 60127-2 and UL 248-14"),
        applies=neither_bears_nor_cleared,
    ),
    Rule(
        id="short-not-cleared",
        level="warning",
        topics=("fuse", "first-power"),
        title=N_("A short behind the resistor does not open the fuse"),
        sentence=N_(
            "A short behind the resistor drives only about {fault_a}; the fuse need not open below {open_a}."
        ),
        consequence=N_("The resistor bears it, but stays hot for as long as the short lasts."),
        avoid=(
            N_("If a run goes dark, unplug at once and look for the short before you go on."),
            N_("Nothing but you ends it: never leave the lights on unattended or overnight."),
        ),
        reason=N_("The resistor holds the current below what opens a fuse."),
        source=N_("must-open currents of IEC 60127-2 and UL 248-14"),
        applies=short_not_cleared,
    ),
    Rule(
        id="resistor-load",
        level="caution",
        topics=("resistor",),
        title=N_("Resistor well loaded"),
        sentence=N_(
            "The resistor runs at {load_percent} of what it bears; {limit_percent} is the most to plan for."
        ),
        consequence=N_("It runs hotter and ages sooner than it should."),
        avoid=(N_("Use the next higher rating."),),
        reason=N_("A rating holds on the maker's test bench; a real place is warmer and less airy."),
        source=RESISTOR_LOAD.source,
        applies=loaded_high,
    ),
    Rule(
        id="resistor-hot",
        level="caution",
        topics=("resistor-mounting", "first-power"),
        title=N_("Hot resistor"),
        sentence=N_(
            "In free air the resistor can reach about {running_c} running and {shorted_c} "
            "with its run shorted."
        ),
        consequence=N_("It burns skin and melts or chars what it touches."),
        avoid=_MOUNTING,
        reason=N_("All the volts the LEDs do not use turn to heat in it."),
        source=HOT_SURFACE_DEGC.source,
        applies=hot_when_shorted,
    ),
    Rule(
        id="resistor-hot-running",
        level="caution",
        topics=("resistor-mounting", "first-power"),
        title=N_("Hot resistor"),
        sentence=N_("In free air the resistor can reach about {running_c} running; a short opens the fuse."),
        consequence=N_("It burns skin and melts or chars what it touches."),
        avoid=_MOUNTING,
        reason=N_("All the volts the LEDs do not use turn to heat in it."),
        source=HOT_SURFACE_DEGC.source,
        applies=hot_running,
    ),
    Rule(
        id="test-resistor-hot",
        level="caution",
        topics=("bench-power", "first-power"),
        title=N_("Hot test resistor"),
        sentence=N_(
            "If what it feeds is shorted, the {ohm} test resistor takes {shorted_w} and reaches about "
            "{shorted_c}."
        ),
        consequence=N_("It burns skin and melts or chars what it touches."),
        avoid=(
            N_("Lay it on dry tile, stone or concrete, in free air; hands off while it has power."),
            N_("No light, or a smell: unplug at once, and let it cool before you touch it."),
            N_("Nothing but you ends such a short; the fuse need not open."),
        ),
        reason=N_("Shorts are looked for behind it, and then it takes all the volts of the supply."),
        source=HOT_SURFACE_DEGC.source,
        applies=hot_trials,
    ),
)
