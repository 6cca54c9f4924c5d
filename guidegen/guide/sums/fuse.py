"""The fuse, shorts, and the largest lasting current of every wire."""

from __future__ import annotations

from guidegen.calc.fuse import (
    fault_current_a,
    fuse_needed_a,
    lasting_current_a,
    must_open_a,
    must_open_multiple,
)
from guidegen.calc.resistor import rating_at_w
from guidegen.calc.wire_limit import overload_limit_a
from guidegen.calc.worked import work
from guidegen.circuit.arrangement import RunPlan
from guidegen.circuit.solution import Section
from guidegen.guide.blocks import Calculation, CalculationGroup, Column, Table
from guidegen.guide.format import quantity, quoted
from guidegen.guide.matter import Matter
from guidegen.guide.worked import calculation
from guidegen.locale import _
from guidegen.tables.fuses import FUSE_TYPES


def fuse_sums(matter: Matter) -> CalculationGroup:
    """Fuse rating, what a short brings, and whether each wire bears what can last."""
    arrangement = matter.arrangement
    rating_a = arrangement.fuse.rating_a or 0.0
    needed = work(fuse_needed_a, worst_running_a=matter.solved.margins.supply_a)
    opens = work(must_open_a, rating_a=rating_a, multiple=must_open_multiple(arrangement.fuse.standard))
    return CalculationGroup(
        anchor="fuse",
        title=_("Fuse and shorts"),
        intro=_(
            "A fuse guards wires, not LEDs. At the current at which it must open it may still take "
            "{time}; and "
            "it opens only if the supply really gives that much for so long. Many shut down or pulse instead."
        ).format(time=_opening_time(arrangement.fuse.standard)),
        calculations=(
            calculation(needed, note=_("Fitted: {rating}.").format(rating=quantity(rating_a, "A"))),
            calculation(opens),
            _fault(matter),
            *_tightest(matter),
        ),
        tables=(_shorts(matter), _sections(matter)),
    )


def _opening_time(standard: str) -> str:
    """How long a fuse may take at its must-open current."""
    return quantity(FUSE_TYPES[standard].within_s / 60, _("minutes"))


def _fault(matter: Matter) -> Calculation:
    supply, guard = matter.arrangement.supply, matter.solved.protection
    worked = work(
        fault_current_a,
        voltage_v=supply.lower_v,
        resistance_ohm=supply.output_ohm,
        limit_a=supply.limit_a,
    )
    note = (
        _("As much as must open the fuse, if the supply gives it that long.")
        if guard.sure
        else _("Less than what must open the fuse: it may never open. Unplug when lights stay dark.")
    )
    return calculation(worked, _("Short right behind the fuse"), note)


def _tightest(matter: Matter) -> tuple[Calculation, ...]:
    """The section nearest to its limit, worked; the others stand in the table."""
    sections = matter.solved.protection.sections
    if not sections:
        return ()
    return (_lasting(matter, max(sections, key=lambda section: section.lasting_a / section.limit_a)),)


def _lasting(matter: Matter, section: Section) -> Calculation:
    supply = matter.arrangement.supply
    worked = work(
        lasting_current_a,
        opens_a=matter.solved.protection.must_open_a,
        limit_a=supply.limit_a,
        upper_voltage_v=supply.upper_v,
        lower_ohm=section.ahead_ohm,
    )
    return calculation(worked, _("Largest lasting current: {wire}").format(wire=section_name(section)))


def section_name(section: Section) -> str:
    """A wire section in words."""
    word = {
        "lead": _("shared lead"),
        "feeder": _("feeder"),
        "extra": _("extra wire"),
        "string": _("string wire"),
    }[section.key]
    return f"{word} {quoted(section.run)}" if section.run else word


def _yes(answer: bool) -> str:
    return _("yes") if answer else _("no")


def _shorts(matter: Matter) -> Table:
    rows = [_fuse_row(matter)]
    for index in range(len(matter.runs)):
        rows += _run_rows(matter, index)
    return Table(
        caption=_("What a short brings"),
        columns=(
            Column(_("Short")),
            Column(_("Current"), numeric=True),
            Column(_("Must open the fuse"), numeric=True),
            Column(_("Must it open?")),
            Column(_("Does the resistor survive?")),
            Column(_("Do the wires survive?")),
        ),
        rows=tuple(rows),
        note=_(
            "Current: what the supply is sure to give at its lowest volts, through parts at the high end of "
            "their tolerance. Survival: where the fuse need not open, the watts at the highest volts "
            "must be within the rating for good."
        ),
    )


def _fuse_row(matter: Matter) -> tuple[str, ...]:
    guard = matter.solved.protection
    wires = [section for section in guard.sections if section.key == "lead"]
    return (
        _("right behind the fuse"),
        quantity(guard.fault_a, "A"),
        quantity(guard.must_open_a, "A"),
        _yes(guard.sure),
        _("carries none of it"),
        _yes(all(section.holds for section in wires)) if wires else _("carry none of it"),
    )


def _run_rows(matter: Matter, index: int) -> list[tuple[str, ...]]:
    """Behind the resistor of a run, and where the way is longest."""
    guard, run = matter.solved.protection, matter.runs[index]
    behind = _("behind the resistor of “{run}”") if run.resistor.fitted else _("where “{run}” branches off")
    holds = _yes(all(section.holds for section in guard.sections if section.run in ("", run.name)))
    shorted_w = matter.solved.margins.runs[index].shorted_w
    places = (
        (behind, guard.fault_after_resistor_a[index], guard.sure_after_resistor[index], shorted_w),
        (
            _("at the far end of “{run}”"),
            guard.fault_far_end_a[index],
            guard.sure_far_end[index],
            guard.far_end_w[index],
        ),
    )
    return [
        (
            place.format(run=run.name),
            quantity(fault_a, "A"),
            quantity(guard.must_open_a, "A"),
            _yes(sure),
            _survival(matter, run, power_w, sure),
            holds,
        )
        for place, fault_a, sure, power_w in places
    ]


def _survival(matter: Matter, run: RunPlan, power_w: float, sure: bool) -> str:
    """Whether the resistor lives through a short: the fuse ends it, or the derated rating bears it."""
    resistor = run.resistor
    if not resistor.fitted or resistor.rating_w is None:
        return _("none fitted")
    if sure:
        return _("the fuse ends it")
    bears_w = rating_at_w(resistor.rating_w, matter.arrangement.warmest_c, resistor.kind)
    words = _("yes: {power} of {bears}") if power_w <= bears_w else _("no: {power} of {bears}")
    return words.format(power=quantity(power_w, "W"), bears=quantity(bears_w, "W"))


def _sections(matter: Matter) -> Table:
    return Table(
        caption=_("Wires: what can flow for long against what they bear"),
        columns=(
            Column(_("Wire")),
            Column(_("Running"), numeric=True),
            Column(_("Ohms ahead"), numeric=True),
            Column(_("Can last"), numeric=True),
            Column(_("Table limit"), numeric=True),
            Column(_("Bears"), numeric=True),
            Column(_("Enough?")),
        ),
        rows=tuple(
            (
                section_name(section),
                quantity(section.running_a, "A"),
                quantity(section.ahead_ohm, "Ω"),
                quantity(section.lasting_a, "A"),
                quantity(section.limit_a, "A"),
                quantity(overload_limit_a(section.limit_a), "A"),
                _yes(section.holds),
            )
            for section in matter.solved.protection.sections
        ),
        note=_(
            "Ohms ahead: the least resistance between supply and wire. A wire bears 1.45 times its table "
            "limit until a fuse opens (IEC 60364-4-43, clause 433.1); the table holds in air of 30 °C."
        ),
    )
