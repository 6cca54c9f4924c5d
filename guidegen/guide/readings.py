"""Readings: what the meter should show at every test point, and blanks to fill in."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from guidegen.circuit.expected import ExpectedReading
from guidegen.circuit.points import TestPoint
from guidegen.guide.blocks import Caution, ReadingGroup, ReadingRow
from guidegen.guide.cautions import Placed
from guidegen.guide.format import metered, span
from guidegen.guide.matter import Matter
from guidegen.guide.meters import amperes_in_line, dc_volts
from guidegen.guide.pages import ReadingsPage
from guidegen.guide.places import if_high, if_low, place
from guidegen.locale import _

_TOPICS = {"meter", "polarity", "first-power", "resistor-mounting"}


def readings_page(matter: Matter, cautions: Sequence[Placed]) -> ReadingsPage:
    """The sheet: the supply first, then run by run."""
    groups = [_group(matter, None, _("Supply and all runs together"))]
    groups += [_group(matter, index, run.name) for index, run in enumerate(matter.runs)]
    return ReadingsPage(
        how=(
            _("All runs lit for five minutes, with their own resistors, fuse in place."),
            _(
                "The range holds 95 of 100 readings of a build without fault: spread of parts, supply, "
                "warmth and the meter are in it. A reading just outside is a reason to look, not proof of a "
                "fault."
            ),
            _(
                "Volts across the resistor divided by its ohms tell the current best. A meter in line adds "
                "ohms of its own; the currents below already allow for that."
            ),
        ),
        cautions=_cautions(cautions),
        groups=tuple(group for group in groups if group.rows),
    )


def _cautions(cautions: Sequence[Placed]) -> tuple[Caution, ...]:
    """The meter's own caution in full, the others of working under power as a line."""
    return tuple(
        replace(each.caution, full="meter" in each.topics)
        for each in cautions
        if _TOPICS & set(each.topics) and each.caution.signal in ("danger", "warning", "caution")
    )


def _group(matter: Matter, run: int | None, title: str) -> ReadingGroup:
    rows = [_volts_row(matter, point) for point in matter.points_of(run)]
    current = matter.current_of(run)
    if current is not None:
        rows.append(_current_row(current, run))
    return ReadingGroup(title, tuple(rows))


def _volts_row(matter: Matter, point: TestPoint) -> ReadingRow:
    reading = matter.reading_at(point)
    return ReadingRow(
        identity=f"t{point.number}",
        point=point.label,
        what=place(matter, point),
        meter=dc_volts(),
        unit="V",
        expected=reading.expected,
        low=reading.low,
        high=reading.high,
        expected_text=metered(reading.expected, reading.low, reading.high, "V"),
        range_text=span(reading.low, reading.high, "V"),
        if_low=if_low(point),
        if_high=if_high(point),
    )


def _current_row(reading: ExpectedReading, run: int | None) -> ReadingRow:
    return ReadingRow(
        identity="current-all" if run is None else f"current-run-{run + 1}",
        point=_("in line"),
        what=_("Current of all runs, behind the fuse")
        if run is None
        else _("Current of this run, in its + wire"),
        meter=amperes_in_line(),
        unit="mA",
        expected=1e3 * reading.expected,
        low=1e3 * reading.low,
        high=1e3 * reading.high,
        expected_text=metered(reading.expected, reading.low, reading.high, "A"),
        range_text=span(reading.low, reading.high, "A"),
        if_low=_("bulbs dark, a joint with too many ohms, or a meter with more ohms than allowed for."),
        if_high=_("a wrong resistor, a short in the run, or the supply high."),
    )
