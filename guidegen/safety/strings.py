"""Rules about the light strings: what may be cut, what stays dark, what stays live."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from guidegen.circuit.arrangement import RunPlan
from guidegen.locale import N_
from guidegen.project.schema import LightString
from guidegen.safety.rule import Case, Hit, Rule, RunCase, exceeds, when
from guidegen.tables.limits import LED_REVERSE_V


def cut_or_rewired(plan: RunPlan) -> bool:
    """Whether the run needs any cut, any join, or a feed other than its string's own tail."""
    first = plan.pieces[0]
    as_sold = len(plan.pieces) == 1 and first.has_tail and not first.cut_behind
    return not as_sold or plan.feed != "one end"


def not_parallel(case: Case) -> Iterator[Hit]:
    """One hit for each run that cuts or rewires a string not known to be parallel."""
    return (Hit(run.plan.name) for run in case.runs if cut_or_rewired(run.plan) and not is_parallel(run.kind))


def in_series(case: Case) -> Iterator[Hit]:
    """One hit for each kind of string in use whose bulbs are stated to be in series."""
    return (Hit(name) for name, kind in case.used_strings if kind.between_bulbs == "series")


def is_parallel(kind: LightString) -> bool:
    """Whether all bulbs sit between the same two wires, as far as the file tells."""
    return kind.between_bulbs == "parallel" and kind.wires != 3


def box_kept(case: Case) -> Iterator[Hit]:
    """One hit for each kind of string in use that is to keep its box."""
    return (Hit(name) for name, kind in case.used_strings if kind.box == "kept")


def not_for_rain(case: Case) -> Iterator[Hit]:
    """One hit for each kind of string that hangs outdoors and is not known to be made for it."""
    outside = case.project.place.exposure != "indoors"
    return (Hit(name) for name, kind in case.used_strings if outside and kind.waterproof != "yes")


def parallel_assumed(case: Case) -> Iterator[Hit]:
    """One hit for each kind of string that is cut or rewired though `between_bulbs` was left out."""
    cut = {run.string for run in case.arrangement.runs if cut_or_rewired(run)}
    return (
        Hit(name)
        for name, kind in case.used_strings
        if name in cut and is_parallel(kind) and not case.states("strings", name, "between_bulbs")
    )


def solved_as_parallel(case: Case) -> Iterator[Hit]:
    """One hit for each kind of string in use that is not known to be parallel."""
    return (Hit(name) for name, kind in case.used_strings if not is_parallel(kind))


def half_dark(case: Case) -> Iterator[Hit]:
    """One hit for each kind of two-way string in use."""
    return (Hit(name) for name, kind in case.used_strings if kind.lit_on_dc != "all")


def reversed_hard(case: Case) -> Iterator[Hit]:
    """One hit for each two-way run whose dark LEDs are reversed beyond what one LED bears."""
    for run in case.runs:
        reverse_v = reverse_volts(case, run)
        if run.kind.lit_on_dc != "all" and exceeds(reverse_v, LED_REVERSE_V.value):
            yield Hit(run.plan.name, {"reverse_v": reverse_v, "limit_v": LED_REVERSE_V.value})


def reverse_volts(case: Case, run: RunCase) -> float:
    """Reverse volts of each dark LED, V: the largest of any bulb, the supply at its upper volts."""
    upper = 1 + case.arrangement.supply.tolerance
    return float(run.solved.bulb_v.max()) * upper / run.plan.leds_in_series


def dead_ends(case: Case) -> Iterable[Hit]:
    """One hit for each run that leaves bare conductors under volts: an unused tail or a cut end."""
    return (Hit(run.plan.name) for run in case.runs if has_dead_end(run.plan))


def has_dead_end(plan: RunPlan) -> bool:
    """Whether a tail, a far end or a stub of the run stays live and unused."""
    if plan.feed == "one end":
        return plan.pieces[-1].cut_behind
    return plan.feed != "both ends"


def came_with_cells(case: Case) -> Iterable[Hit]:
    """One hit if any string in use was sold with cells."""
    return when(any(kind.came_with is not None for _name, kind in case.used_strings))


def flashing(case: Case) -> Iterable[Hit]:
    """One hit if any string in use has a chip in each bulb, which may flash."""
    return when(any(_has_chips(kind) for _name, kind in case.used_strings))


def _has_chips(kind: LightString) -> bool:
    return kind.between_bulbs == "chip"


RULES: tuple[Rule[Case], ...] = (
    Rule(
        id="bulbs-in-series",
        level="refusal",
        topics=("strings-identify",),
        title=N_("Bulbs in series keep the supply they came with"),
        sentence=N_(
            "You said that the bulbs are in series; only strings whose bulbs are all in parallel are worked "
            "out here."
        ),
        consequence=N_("No figure holds for it, and another supply can overheat its LEDs."),
        avoid=(
            N_("Run this string whole on the supply it came with, or buy one whose bulbs are parallel."),
            N_("If you are not sure, read the volts at its first and last bulb, and state what you find."),
        ),
        reason=N_("Bulbs in series share the volts; the circuit solved here gives each bulb all of them."),
        source=N_("common practice"),
        applies=in_series,
    ),
    Rule(
        id="not-parallel",
        level="refusal",
        topics=("strings-identify",),
        title=N_("This string may not be cut"),
        sentence=N_("The run cuts or rewires a string whose bulbs are not known to be all in parallel."),
        consequence=N_("What is left gets too many volts, or nothing lights at all."),
        avoid=(
            N_("Keep such a string whole and feed it at its own tail, or buy one whose bulbs are parallel."),
        ),
        reason=N_("Series bulbs share the volts and chips need their data wire; a cut breaks both."),
        source=N_("common practice"),
        applies=not_parallel,
    ),
    Rule(
        id="box-kept",
        level="refusal",
        topics=("strings-identify",),
        title=N_("The box is to stay on"),
        sentence=N_("This string is to keep its box, and this guide feeds strings at their own two wires."),
        consequence=N_("Cells left in the box are charged by the supply, and leak, burst or catch fire."),
        avoid=(
            N_("Use the string on its box as it was sold, apart from this build."),
            N_("Or, if all bulbs are parallel, state that the box is removed, and accept what then lights."),
        ),
        reason=N_("A box may hold cells, a resistor or a controller, and no figure here counts them."),
        source=N_("own policy; cells after IEC 60086-5"),
        applies=box_kept,
    ),
    Rule(
        id="between-bulbs-assumed",
        level="warning",
        topics=("strings-identify", "conversion"),
        title=N_("Find out how the bulbs are joined before any cut"),
        sentence=N_("Nobody has stated how the bulbs are joined; all in parallel is assumed."),
        consequence=N_("A cut through a series string puts too many volts on what is left."),
        avoid=(
            N_(
                "On its own cells, read the volts at the first and at the last bulb: nearly the same, "
                "and two wires all the way, means parallel."
            ),
            N_("If not, do not cut."),
        ),
        reason=N_("Series, parallel and chip strings look alike."),
        source=N_("common practice"),
        applies=parallel_assumed,
    ),
    Rule(
        id="figures-for-parallel",
        level="warning",
        topics=("strings-identify", "bench-power"),
        title=N_("Figures hold for parallel bulbs only"),
        sentence=N_("The bulbs are not known to be all in parallel, but every figure takes them so."),
        consequence=N_("Currents can be far from the expected ones, and overheat LEDs or resistor."),
        avoid=(N_("Find out on the bench first; power it only as its maker says."),),
        reason=N_("The circuit that is solved has every bulb between the same two wires."),
        source=N_("common practice"),
        applies=solved_as_parallel,
    ),
    Rule(
        id="two-way-dark-leds-reverse",
        level="warning",
        topics=("two-way", "first-power"),
        title=N_("Dark LEDs reversed too hard"),
        sentence=N_("Each dark LED stands {reverse_v} in reverse; an LED bears about {limit_v}."),
        consequence=N_("LEDs break down, and may short the run."),
        avoid=(N_("Feed such a string through the box it came with, or use one that lights on DC."),),
        reason=N_("On direct current the other half of a two-way string is reversed all the time."),
        source=LED_REVERSE_V.source,
        applies=reversed_hard,
    ),
    Rule(
        id="string-not-for-rain",
        level="warning",
        topics=("strings-identify", "hanging"),
        title=N_("String not made for rain"),
        sentence=N_("Nobody has stated that this string is made for outdoors."),
        consequence=N_("Water in its bulbs corrodes them, and a wet short heats wire and resistor."),
        avoid=(
            N_("Use strings sold for outdoors, or hang these where neither rain nor spray comes."),
            N_("Unplug them in wet weather."),
        ),
        reason=N_("Bulbs of indoor strings are open at wire and cover."),
        source=N_("common practice"),
        applies=not_for_rain,
    ),
    Rule(
        id="dead-ends",
        level="warning",
        topics=("dead-ends",),
        title=N_("Live dead ends"),
        sentence=N_("Tails, far ends and cut stubs that feed nothing are live all the same."),
        consequence=N_("Bare ends that touch short the run and heat wire and resistor."),
        avoid=(N_("Cut the two conductors to different lengths and cap each one by itself."),),
        reason=N_("A short there may last, since the resistor holds the current below what opens the fuse."),
        source=N_("common practice"),
        applies=dead_ends,
    ),
    Rule(
        id="cells-left-in",
        level="warning",
        topics=("cells", "first-power"),
        title=N_("No cells beside the supply"),
        sentence=N_("Cells left in the box are charged by the supply."),
        consequence=N_("They leak, burst or catch fire."),
        avoid=(N_("Take the cells out and cut the box off before the supply is joined."),),
        reason=N_("Primary cells must never be charged."),
        source=N_("common practice, after IEC 60086-5"),
        applies=came_with_cells,
    ),
    Rule(
        id="flashing-lights",
        level="warning",
        topics=("flashing", "first-power"),
        title=N_("Flashing lights"),
        sentence=N_("Bulbs with chips in them may flash."),
        consequence=N_("Flashing can bring on a seizure in some people."),
        avoid=(N_("Use a steady mode, and tell people if it can flash."),),
        reason=N_("Some people are sensitive to light that flashes more than three times a second."),
        source="WCAG 2.2, criterion 2.3.1",
        applies=flashing,
    ),
    Rule(
        id="two-way-half-dark",
        level="notice",
        topics=("two-way",),
        title=N_("Half of a two-way string stays dark"),
        sentence=N_("On direct current this two-way string lights only half of its LEDs."),
        consequence="",
        avoid=(
            N_(
                "Accept half, or keep it whole on its own box; with plus and minus swapped the other half "
                "lights."
            ),
        ),
        reason=N_("Its LEDs are wired both ways round, for a box that swaps + and −."),
        source=N_("common practice"),
        applies=half_dark,
    ),
)
