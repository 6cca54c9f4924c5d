"""Readings: what the meter should show at every test point, and blanks to fill in."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import TYPE_CHECKING

from guidegen.circuit.expected import ExpectedReading
from guidegen.circuit.meter import Meter
from guidegen.circuit.points import TestPoint
from guidegen.guide.blocks import Caution, Meaning, ReadingGroup, ReadingRow
from guidegen.guide.cautions import Placed
from guidegen.guide.format import NO_BREAK, metered, number, quantity, span
from guidegen.guide.matter import Matter
from guidegen.guide.meters import dc_volts, in_line_for
from guidegen.guide.pages import ReadingsPage
from guidegen.guide.places import if_high, if_low, place
from guidegen.locale import _, ngettext
from guidegen.report.causes import Words
from guidegen.tables.limits import MeterRange

if TYPE_CHECKING:  # few projects have readings to judge
    from guidegen.bench.as_built import Judged

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
                "warmth and the meter are in it. Borderline is just outside: look again, it may be chance. "
                "Out of range is so far off that only 5 of 100 sheets of sound builds have any such reading."
            ),
            _(
                "Volts across the resistor divided by its ohms tell the current best. A meter in line adds "
                "ohms of its own; the currents below already allow for that."
            ),
            _meter(matter.study.meter),
        ),
        cautions=_cautions(cautions),
        groups=tuple(group for group in groups if group.rows),
        meaning=_meaning(matter),
    )


def _meter(meter: Meter) -> str:
    return _(
        "Worked out for a meter with {volts} on volts, {amperes} on milliamperes and {burden} of its own in "
        "line. Yours is another? Write it into the project file under “meter”."
    ).format(
        volts=_accuracy(meter.volts, "V"),
        amperes=_accuracy(meter.amperes, "A"),
        burden=quantity(meter.burden_ohm, "Ω"),
    )


def _accuracy(scale: MeterRange, unit: str) -> str:
    """±(0.5 % + 2 digits of 10 mV)."""
    digits = ngettext("{count} digit", "{count} digits", scale.digits).format(count=scale.digits)
    return _("±({share} + {digits} of {step})").format(
        share=f"{number(100 * scale.share)}{NO_BREAK}%", digits=digits, step=quantity(scale.step, unit)
    )


def _meaning(matter: Matter) -> Meaning | None:
    """What the project file's readings of the finished build mean, if any is out of range."""
    built = matter.study.as_built
    if built is None or built.diagnosis is None:
        return None
    words, found = Words(matter.arrangement, quantity), built.diagnosis
    return Meaning(
        verdict=words.verdict(found),
        causes=tuple(words.ranked(cause, found) for cause in found.causes),
        next_reading=words.next_reading(found),
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
    rows += [
        _other_bulb_row(matter, reading)
        for reading in matter.readings
        if reading.bulb is not None and reading.point is None and reading.run == run
    ]
    current = matter.current_of(run)
    if current is not None:
        rows.append(_current_row(matter, current, run))
    return ReadingGroup(title, tuple(rows))


def _volts_row(matter: Matter, point: TestPoint) -> ReadingRow:
    reading = matter.reading_at(point)
    return replace(
        _row(matter, reading, 1.0),
        identity=f"t{point.number}",
        point=point.label,
        what=_place(matter, point),
        if_low=if_low(point),
        if_high=if_high(point),
    )


def _place(matter: Matter, point: TestPoint) -> str:
    """Where to read; with a resistor's volts, the current they tell."""
    where = place(matter, point)
    if point.kind != "resistor volts" or point.run is None:
        return where
    return _("{place} (divided by {ohm}: the run's current, {current})").format(
        place=where,
        ohm=quantity(matter.runs[point.run].resistor.ohm, "Ω"),
        current=quantity(matter.solution.runs[point.run].current_a, "A"),
    )


def _other_bulb_row(matter: Matter, reading: ExpectedReading) -> ReadingRow:
    """A bulb that was read although it is no test point."""
    return replace(
        _row(matter, reading, 1.0),
        identity=f"run-{(reading.run or 0) + 1}-bulb-{reading.bulb}",
        point=_("bulb"),
        what=_("At bulb {bulb}, plus to minus").format(bulb=reading.bulb),
    )


def _current_row(matter: Matter, reading: ExpectedReading, run: int | None) -> ReadingRow:
    true_a = matter.solution.supply_a if run is None else matter.solution.runs[run].current_a
    burden_ohm = matter.study.meter.ammeter(true_a)[1]
    return replace(
        _row(matter, reading, 1e3),
        identity="current-all" if run is None else f"current-run-{run + 1}",
        point=_("in line"),
        what=_("Current of all runs, behind the fuse")
        if run is None
        else _("Current of this run, in its + wire"),
        meter=in_line_for(true_a, burden_ohm),
        if_low=_(
            "bulbs dark that should shine, a joint with too many ohms, or a meter with more ohms than "
            "allowed for."
        ),
        if_high=_("a wrong resistor, a short in the run, or the supply high."),
    )


def _row(matter: Matter, reading: ExpectedReading, per_si: float) -> ReadingRow:
    """What all rows share; `per_si` of the row's unit make one volt or ampere."""
    unit = "A" if reading.quantity == "amperes in line" else "V"
    built = matter.study.as_built
    judged = built.at(reading) if built else None
    return ReadingRow(
        identity="",
        point="",
        what="",
        meter=dc_volts(),
        unit="V" if unit == "V" else "mA",
        expected=per_si * reading.expected,
        low=per_si * reading.low,
        high=per_si * reading.high,
        expected_text=metered(reading.expected, reading.low, reading.high, unit),
        range_text=span(reading.low, reading.high, unit),
        if_low="",
        if_high="",
        out_low=per_si * reading.out_low,
        out_high=per_si * reading.out_high,
        measured_text="" if judged is None else quantity(judged.taken.shown, unit),
        verdict="" if judged is None else _verdict(judged),
    )


def _verdict(judged: Judged) -> str:
    """As the page's script says it of a reading typed in."""
    if judged.verdict == "in range":
        return "in"
    side = "low" if judged.taken.shown < judged.expected.low else "high"
    return side if judged.verdict == "out of range" else f"edge-{side}"
