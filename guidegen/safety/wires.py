"""Rules about wires, their size, and the fuse that protects them."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator

from guidegen.calc.fuse import fuse_needed_a, must_open_a, must_open_multiple, pick_fuse_a, sure_to_open
from guidegen.locale import N_
from guidegen.safety.rule import Case, Hit, Rule, exceeds, when
from guidegen.tables.ampacity import OVERLOAD_FACTOR
from guidegen.tables.limits import FUSE_LOAD, LEADS_MULTIPLE

_SECTIONS = {
    "lead": N_("the supply lead"),
    "feeder": N_("the feeder"),
    "extra": N_("the extra wire"),
    "string": N_("the string's own wire"),
}


def over_limit(case: Case) -> Iterator[Hit]:
    """One hit for each wire section whose lasting fault current is over its limit."""
    for section in case.protection.sections:
        if not section.holds:
            bears_a = OVERLOAD_FACTOR.value * section.limit_a
            yield Hit(
                section.run,
                {"wire": _SECTIONS[section.key], "lasting_a": section.lasting_a, "bears_a": bears_a},
            )


def size_inferred(case: Case) -> Iterator[Hit]:
    """One hit for each wire section of a run whose size was worked out from its ohms alone."""
    for section in case.protection.sections:
        if section.inferred:
            yield Hit(section.run, {"wire": _SECTIONS[section.key], "area_m2": section.area_m2})


def reading_near_leads(case: Case) -> Iterator[Hit]:
    """One hit for each string whose wire reads less than twice what the meter's leads read."""
    for name, kind in case.used_strings:
        reading_ohm = kind.wire.loop if kind.wire.one_conductor is None else kind.wire.one_conductor
        leads_ohm = kind.wire.meter_leads or 0.0
        if reading_ohm is not None and exceeds(LEADS_MULTIPLE.value * leads_ohm, reading_ohm - leads_ohm):
            yield Hit(name, {"wire_ohm": reading_ohm - leads_ohm, "leads_ohm": leads_ohm})


def fuse_too_small(case: Case) -> Iterable[Hit]:
    """One hit if the fuse, given or the largest of the table, may open as the lights run."""
    fuse_a, worst_a = case.arrangement.fuse.rating_a, case.margins.supply_a
    small = fuse_a is not None and exceeds(worst_a, FUSE_LOAD.value * fuse_a)
    return when(small, worst_a=worst_a, limit_percent=FUSE_LOAD.value, fuse_a=fuse_a)


def smaller_fuse_a(case: Case, fault_a: float) -> float | None:
    """A smaller fuse that carries the lights and is sure to open at `fault_a`, ampere, if there is one."""
    fuse, fits_a = case.arrangement.fuse, pick_fuse_a(fuse_needed_a(case.margins.supply_a))
    if fuse.rating_a is None or fits_a is None or fits_a >= fuse.rating_a:
        return None
    opens_a = must_open_a(fits_a, must_open_multiple(fuse.standard))
    return fits_a if sure_to_open(fault_a, opens_a) else None


def _with_smaller(case: Case, subject: str, fault_a: float) -> Hit:
    """A short that may last, with the smaller fuse that would end it if there is one."""
    values: dict[str, object] = {"fault_a": fault_a, "open_a": case.protection.must_open_a}
    smaller_a = smaller_fuse_a(case, fault_a)
    return Hit(subject, values if smaller_a is None else {**values, "smaller_a": smaller_a})


def fuse_not_sure(case: Case) -> Iterator[Hit]:
    """One hit if a short right behind the fuse is not sure to open it."""
    if not case.protection.sure:
        yield _with_smaller(case, "", case.protection.fault_a)


def far_short_lasts(case: Case) -> Iterator[Hit]:
    """One hit for each run without a resistor whose far short the fuse is not sure to end."""
    guard = case.protection
    for run in case.runs:
        if not run.plan.resistor.fitted and guard.sure and not guard.sure_far_end[run.index]:
            yield _with_smaller(case, run.plan.name, guard.fault_far_end_a[run.index])


def where(found: Callable[[Case], Iterator[Hit]], *, smaller: bool) -> Callable[[Case], Iterator[Hit]]:
    """Only the hits that a smaller fuse would mend, or only the others."""
    return lambda case: (hit for hit in found(case) if ("smaller_a" in hit.values) == smaller)


RULES: tuple[Rule[Case], ...] = (
    Rule(
        id="wire-over-limit",
        level="refusal",
        topics=("wire", "fuse"),
        title=N_("Wire too thin for a lasting fault"),
        sentence=N_("In a fault {wire} can carry {lasting_a} for long; it bears {bears_a}."),
        consequence=N_("The wire's insulation melts and can catch fire before anything switches off."),
        avoid=(
            N_("Use thicker wire there, a smaller fuse that still carries the lights, or a larger resistor."),
        ),
        reason=N_("What flows without opening the fuse must be less than the wire bears."),
        source=N_("IEC 60364-4-43 cl. 433.1 (not checked against its text), DIN VDE 0100"),
        applies=over_limit,
    ),
    Rule(
        id="fuse-not-sure",
        level="warning",
        topics=("fuse",),
        title=N_("A short may not open the fuse"),
        sentence=N_(
            "The supply is sure to give only {fault_a} into a short; the fuse need not open below {open_a}."
        ),
        consequence=N_("A short can last, with wires and supply warm, and nobody notices."),
        avoid=(
            N_("Unplug whenever lights stay dark or dim, and look for the short."),
            N_("Use a fuse of {smaller_a}: it carries the lights, and such a short is sure to open it."),
        ),
        reason=N_("A small supply limits its own current below what opens a fuse."),
        source=N_("must-open currents of IEC 60127-2 and UL 248-14"),
        applies=where(fuse_not_sure, smaller=True),
    ),
    Rule(
        id="smallest-fuse-not-sure",
        level="warning",
        topics=("fuse",),
        title=N_("A short may not open the fuse"),
        sentence=N_(
            "The supply is sure to give only {fault_a} into a short; the fuse need not open below {open_a}."
        ),
        consequence=N_("A short can last, with wires and supply warm, and nobody notices."),
        avoid=(
            N_("Unplug whenever lights stay dark or dim, and look for the short."),
            N_(
                "No smaller fuse that carries the lights is sure to open. A supply of the same volts that is "
                "sure to give more than {open_a} opens this one: put its figures into the file and make the "
                "guide anew, since the wires have to bear that current."
            ),
        ),
        reason=N_("A small supply limits its own current below what opens a fuse."),
        source=N_("must-open currents of IEC 60127-2 and UL 248-14"),
        applies=where(fuse_not_sure, smaller=False),
    ),
    Rule(
        id="far-short-not-cleared",
        level="warning",
        topics=("fuse", "first-power"),
        title=N_("A short far out may not open the fuse"),
        sentence=N_(
            "A short at the far end drives only about {fault_a}; the fuse need not open below {open_a}."
        ),
        consequence=N_("The wires bear it, but stay warm for as long as the short lasts."),
        avoid=(
            N_("If a run goes dark or dim, unplug at once and look for the short."),
            N_("Use a fuse of {smaller_a}: it carries the lights, and such a short is sure to open it."),
        ),
        reason=N_("Thin, long wire holds the current below what opens a fuse."),
        source=N_("must-open currents of IEC 60127-2 and UL 248-14"),
        applies=where(far_short_lasts, smaller=True),
    ),
    Rule(
        id="smallest-fuse-far-short",
        level="warning",
        topics=("fuse", "first-power"),
        title=N_("A short far out may not open the fuse"),
        sentence=N_(
            "A short at the far end drives only about {fault_a}; the fuse need not open below {open_a}."
        ),
        consequence=N_("The wires bear it, but stay warm for as long as the short lasts."),
        avoid=(
            N_("If a run goes dark or dim, unplug at once and look for the short."),
            N_("Use thicker wire; no smaller fuse that carries the lights is sure to open."),
        ),
        reason=N_("Thin, long wire holds the current below what opens a fuse."),
        source=N_("must-open currents of IEC 60127-2 and UL 248-14"),
        applies=where(far_short_lasts, smaller=False),
    ),
    Rule(
        id="fuse-too-small",
        level="notice",
        topics=("fuse",),
        title=N_("Fuse may open in use"),
        sentence=N_("The lights can draw {worst_a}, more than {limit_percent} of the {fuse_a} fuse."),
        consequence="",
        avoid=(N_("Use the next larger standard fuse that the wires bear; never bridge one."),),
        reason=N_("Fuses that run near their rating open without a fault."),
        source=FUSE_LOAD.source,
        applies=fuse_too_small,
    ),
    Rule(
        id="wire-size-inferred",
        level="notice",
        topics=("wire", "strings-identify"),
        title=N_("Wire size worked out from ohms"),
        sentence=N_("For {wire} only ohms are known: it counts as copper of {area_m2}."),
        consequence="",
        avoid=(N_("State area or gauge if a marking or a caliper tells it."),),
        reason=N_("What a wire bears goes by its size; ohms tell the size only if it is copper."),
        source=N_("own assumption"),
        applies=size_inferred,
    ),
    Rule(
        id="wire-reading-near-leads",
        level="notice",
        topics=("meter-ohms",),
        title=N_("Wire reading close to the meter leads' own"),
        sentence=N_("The wire reads {wire_ohm} beside {leads_ohm} of meter leads."),
        consequence="",
        avoid=(N_("Measure the loop of the whole string, or several strings in a row."),),
        reason=N_("So small a difference of two readings is mostly error."),
        source=LEADS_MULTIPLE.source,
        applies=reading_near_leads,
    ),
)
