"""Resistance of the wires: per metre, by length, and at the ends of the temperature range."""

from __future__ import annotations

from collections.abc import Iterator

from guidegen.calc import wire as physics
from guidegen.calc.worked import Worked, work
from guidegen.circuit.arrangement import Cable
from guidegen.guide.blocks import Calculation, CalculationGroup, Column, Table
from guidegen.guide.format import listed
from guidegen.guide.matter import Matter
from guidegen.guide.worked import calculation, shown
from guidegen.locale import _
from guidegen.parts.wires import LEAD, extra_reference, feeder_reference, string_reference
from guidegen.project.schema import LightString, StringWire, WirePiece
from guidegen.tables.conductors import MATERIALS


def wire_sums(matter: Matter) -> CalculationGroup:
    """Every kind of wire per metre, then every length: the first one worked, all in a table."""
    lengths = _lengths(matter)
    reference, worked = lengths[0]
    first = calculation(worked, _("Resistance of {reference}").format(reference=reference))
    return CalculationGroup(
        anchor="wires",
        title=_("Wires"),
        intro=_(
            "Resistances hold at 20 °C; the worst cases below count the wires as cold and as warm as they "
            "get."
        ),
        calculations=(*_kinds(matter), first),
        tables=(_table(lengths),),
    )


def _kinds(matter: Matter) -> Iterator[Calculation]:
    for name, kind in matter.kinds:
        yield from _string_wire(name, kind)
    seen: list[StringWire] = []
    for piece in _pieces(matter):
        if piece.wire not in seen:
            seen.append(piece.wire)
            yield from _per_metre(piece.wire, _("Wire per metre"))


def _pieces(matter: Matter) -> Iterator[WirePiece]:
    runs = matter.project.runs or ()
    pieces = [matter.project.supply.lead]
    for run in runs:
        pieces += [run.feeder, run.extra_wire if run.feed != "one end" else None]
    return (piece for piece in pieces if piece is not None and piece.length > 0)


def _string_wire(name: str, kind: LightString) -> Iterator[Calculation]:
    wire, title = kind.wire, _("Wire of the string “{name}” per metre").format(name=name)
    length_m = kind.tail_m + (kind.bulbs - 1) * kind.spacing
    leads_ohm = wire.meter_leads or 0.0
    if wire.one_conductor is not None:
        worked = work(
            physics.measured_ohm_per_m,
            one_conductor_ohm=wire.one_conductor,
            leads_ohm=leads_ohm,
            length_m=length_m,
        )
        yield calculation(worked, title, _("The length is the tail and all spacings of one string."))
    elif wire.loop is not None:
        worked = work(physics.loop_ohm_per_m, loop_ohm=wire.loop, leads_ohm=leads_ohm, length_m=length_m)
        yield calculation(worked, title, _("The length is the tail and all spacings of one string."))
    else:
        yield from _per_metre(wire, title)


def _per_metre(wire: StringWire, title: str) -> Iterator[Calculation]:
    """A stated gauge or area; ohms per metre that the file gives need no sum."""
    area_m2 = wire.area
    if wire.gauge is not None:
        diameter = work(physics.gauge_diameter_m, gauge=wire.gauge)
        area = work(physics.circle_area_m2, diameter_m=diameter.value)
        yield calculation(diameter)
        yield calculation(area)
        area_m2 = area.value
    if area_m2 is not None:
        resistivity = MATERIALS[wire.material or "copper"].resistivity_ohm_m
        yield calculation(work(physics.ohm_per_m, area_m2=area_m2, resistivity_ohm_m=resistivity), title)


def _lengths(matter: Matter) -> list[tuple[str, Worked]]:
    """Every wire's reference and its resistance worked."""
    found = []
    if matter.arrangement.supply.lead is not None:
        found.append((LEAD, _length(matter.arrangement.supply.lead)))
    for index, run in enumerate(matter.runs):
        if run.feeder is not None:
            found.append((feeder_reference(index), _length(run.feeder)))
        if run.extra is not None and run.feed != "one end":
            cores = 1 if run.feed == "opposite ends" else 2
            found.append((extra_reference(index), _length(run.extra, cores)))
        found.append((string_reference(index), _length(Cable(run.length_m, run.conductor))))
    return found


def _length(cable: Cable, conductors: int = 2) -> Worked:
    return work(
        physics.wire_ohm,
        per_m_ohm=cable.conductor.ohm_per_m,
        length_m=cable.length_m,
        conductors=float(conductors),
    )


def _table(lengths: list[tuple[str, Worked]]) -> Table:
    """The same formula for every wire, a row each."""
    first = lengths[0][1]
    return Table(
        caption=_("Every wire by the same formula, {formula}").format(formula=first.formula),
        columns=(
            Column(_("Wire")),
            *(Column(term.symbol, numeric=True) for term in (*first.terms, first.result)),
        ),
        rows=tuple(
            (reference, *(shown(term) for term in (*worked.terms, worked.result)))
            for reference, worked in lengths
        ),
        note=_("{wires} are the wires of “Wiring”.").format(
            wires=listed([reference for reference, _w in lengths])
        ),
    )
