"""Wiring: how to read the schematic, test points with their volts, wires, and runs."""

from __future__ import annotations

from guidegen.circuit.points import TestPoint
from guidegen.guide.blocks import Column, Table
from guidegen.guide.format import NOTHING, metered, quantity, span
from guidegen.guide.matter import Matter
from guidegen.guide.pages import WiringPage
from guidegen.guide.places import place
from guidegen.guide.resistors import resistor_name
from guidegen.guide.words import feed_text
from guidegen.locale import _
from guidegen.parts.wires import FUSE, resistor_reference, wire_rows


def wiring_page(matter: Matter) -> WiringPage:
    """The page; its pictures are filled in once the schematic is drawn."""
    return WiringPage(
        pictures=("schematic-1",),
        how_to_read=_how_to_read(matter),
        points=_points(matter),
        wires=_wires(matter),
        runs=_runs(matter),
    )


def _how_to_read(matter: Matter) -> tuple[str, ...]:
    lines = [
        _(
            "Plus leaves the supply, goes through the fuse {fuse}, and branches to every run; minus comes "
            "back."
        ).format(fuse=FUSE),
        _(
            "A run is a stretch of bulbs behind one resistor (R). Its bulbs are numbered from 1. S1, "
            "S2, … are "
            "the strings' own cables."
        ),
        _("T1, T2, … are test points, where metal is bare until the readings are taken: red lead on +."),
        _("Few bulbs are drawn; dots stand for those between."),
    ]
    if any(run.feed == "opposite ends" for run in matter.runs):
        lines.append(
            _("In a run fed at opposite ends plus comes in at bulb 1 and minus leaves from the last bulb.")
        )
    return tuple(lines)


def _points(matter: Matter) -> Table:
    return Table(
        caption=_("Test points, all runs lit"),
        columns=(
            Column(_("Point")),
            Column(_("Run")),
            Column(_("Where")),
            Column(_("Volts"), numeric=True),
            Column(_("Range"), numeric=True),
        ),
        rows=tuple(_point_row(matter, point) for point in matter.solved.points),
        note=_("The range holds 95 of 100 builds without fault, the meter's accuracy included."),
    )


def _point_row(matter: Matter, point: TestPoint) -> tuple[str, ...]:
    reading = matter.reading_at(point)
    run = _("all") if point.run is None else matter.runs[point.run].name
    return (
        point.label,
        run,
        place(matter, point),
        metered(reading.expected, reading.low, reading.high, "V"),
        span(reading.low, reading.high, "V"),
    )


def _wires(matter: Matter) -> Table:
    return Table(
        caption=_("Wires, as the schematic names them"),
        columns=(
            Column(_("Wire")),
            Column(_("What")),
            Column(_("From")),
            Column(_("To")),
            Column(_("Kind")),
            Column(_("Cores"), numeric=True),
            Column(_("Route"), numeric=True),
            Column(_("Ohms of one core"), numeric=True),
            Column(_("Current"), numeric=True),
            Column(_("Limit"), numeric=True),
        ),
        rows=tuple(
            (
                row.reference,
                row.what,
                row.from_place,
                row.to_place,
                ", ".join(row.conductor),
                str(row.cores),
                quantity(row.length_m, "m"),
                quantity(row.ohm, "Ω"),
                NOTHING if row.running_a is None else quantity(row.running_a, "A"),
                quantity(row.limit_a, "A"),
            )
            for row in wire_rows(matter.arrangement, matter.solution)
        ),
        note=_("Ohms at 20 °C. The limit is the largest lasting current of that size in a cable."),
    )


def _runs(matter: Matter) -> Table:
    return Table(
        caption=_("Runs"),
        columns=(
            Column(_("Run")),
            Column(_("String")),
            Column(_("Bulbs"), numeric=True),
            Column(_("Feed")),
            Column(_("Resistor")),
            Column(_("Current"), numeric=True),
            Column(_("Behind the resistor"), numeric=True),
        ),
        rows=tuple(_run_row(matter, index) for index in range(len(matter.runs))),
    )


def _run_row(matter: Matter, index: int) -> tuple[str, ...]:
    run, solved = matter.runs[index], matter.solution.runs[index]
    resistor = (
        f"{resistor_reference(index)}: {resistor_name(run.resistor)}" if run.resistor.fitted else _("none")
    )
    return (
        run.name,
        run.string,
        str(run.bulbs),
        feed_text(run),
        resistor,
        quantity(solved.current_a, "A"),
        quantity(solved.after_resistor_v, "V"),
    )
