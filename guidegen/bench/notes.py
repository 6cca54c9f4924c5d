"""Sets of readings that cannot be true as they stand, as data; the words are found elsewhere."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from itertools import pairwise
from math import hypot, inf
from typing import Literal

import numpy as np

from guidegen.bench.known import widest_volts
from guidegen.bench.model import Around, BenchModel
from guidegen.bench.readings import Reading
from guidegen.locale import N_
from guidegen.project.schema import LightString
from guidegen.tables.leds import TYPICAL, typical
from guidegen.tables.limits import LEADS_MULTIPLE
from guidegen.tables.sourced import Sourced

NoteKind = Literal[
    "no current",
    "tells nothing",
    "led volts",
    "current disagrees",
    "reading unexplained",
    "wire near leads",
    "not regulated",
    "not fitted",
]

#: Volts on the label of one cell.
CELL_LABEL_V: Mapping[str, float] = {"AAA": 1.5, "AA": 1.5, "C": 1.5, "D": 1.5, "CR2032": 3.0}
#: A loaded source this many times its label is not regulated (fresh cells: 1.1 times).
FAR_ABOVE_LABEL = Sourced(1.15, N_("own policy"))
#: Disagreement counts from this many standard uncertainties on.
CLEARLY = 3.0


@dataclass(frozen=True)
class BenchNote:
    """One thing wrong with the readings of a string.

    `row`: bench row from 1, None for the string; `values` in SI units by
    name.  By kind:

    - "no current": volts after the resistor not below the source's:
      `supply_v`, `after_resistor_v`;
    - "tells nothing": no resistor to lose volts over: `after_resistor_v`;
    - "led volts": no LED of that colour shows these volts at that current:
      `led_v`, `led_a`, `least_v`, `most_v`;
    - "current disagrees": amperes by meter against volts over the resistor:
      `meter_a`, `resistor_a`, `expected_a` with burden `burden_ohm`,
      `needed_burden_ohm` that would explain it (left out where none would);
    - "reading unexplained": `measured`, `predicted`, `u` of a reading that
      no curve meets together with the others;
    - "wire near leads": `reading_ohm`, `leads_ohm`, `result_ohm`;
    - "not regulated": `supply_v`, `label_v`;
    - "not fitted": no curve was found; the typical or given one stands.
    """

    kind: NoteKind
    row: int | None = None
    values: Mapping[str, float] = field(default_factory=dict)


def impossible(readings: tuple[Reading, ...]) -> Iterator[BenchNote]:
    """Readings that cannot be used in a fit at all."""
    for reading in readings:
        if reading.tells:
            continue
        if reading.what == "after resistor" and reading.resistor_ohm == 0:
            yield BenchNote("tells nothing", reading.row, {"after_resistor_v": reading.measured})
        else:
            values = {"supply_v": reading.supply_v, "after_resistor_v": reading.rough_v}
            yield BenchNote("no current", reading.row, values)


def wire(kind: LightString) -> Iterator[BenchNote]:
    """A measured resistance that is mostly the meter's own leads."""
    reading_ohm = kind.wire.one_conductor if kind.wire.loop is None else kind.wire.loop
    leads_ohm = kind.wire.meter_leads or 0.0
    if reading_ohm is not None and reading_ohm - leads_ohm < LEADS_MULTIPLE.value * leads_ohm:
        result_ohm = reading_ohm - leads_ohm
        values = {"reading_ohm": reading_ohm, "leads_ohm": leads_ohm, "result_ohm": result_ohm}
        yield BenchNote("wire near leads", None, values)


def labels(kind: LightString, supply_label_v: float | None) -> Iterator[BenchNote]:
    """Sources whose loaded volts are far above every label they could have."""
    cells = kind.came_with
    known_v = [] if supply_label_v is None else [supply_label_v]
    if cells is not None:
        known_v.append(cells.cells * CELL_LABEL_V[cells.size])
    for number, row in enumerate(kind.bench, start=1):
        if known_v and row.supply > FAR_ABOVE_LABEL.value * max(known_v):
            yield BenchNote("not regulated", number, {"supply_v": row.supply, "label_v": max(known_v)})


def disagreements(kind: LightString, model: BenchModel, around: Around) -> Iterator[BenchNote]:
    """Readings that can be used, but not all be true, beside the fitted curve."""
    yield from _led_volts(kind, model, around)
    currents = tuple(_currents(model, around))
    told = {note.row for note in currents}
    yield from currents
    yield from (note for note in _unexplained(model, around) if note.row not in told)


def _led_volts(kind: LightString, model: BenchModel, around: Around) -> Iterator[BenchNote]:
    """LED volts that no LED of the stated colour (any colour, where none is) has at that current."""
    stated = kind.led.typical if "led" in kind.model_fields_set else None
    colours = [stated] if stated else list(TYPICAL)
    seen: set[int] = set()
    for reading, wire_v in zip(model.readings, around.wire_v, strict=True):
        led_a = reading.rough_a / model.string.lit_groups
        led_v = (reading.rough_v - wire_v - led_a * kind.group_resistor) / kind.leds_in_series
        limits = [widest_volts(typical(colour), led_a) for colour in colours]
        least_v, most_v = min(low for low, _ in limits), max(high for _, high in limits)
        first = reading.row not in seen  # a current beside volts is judged against them, not by itself
        seen.add(reading.row)
        if first and not least_v <= led_v <= most_v:
            values = {"led_v": led_v, "led_a": led_a, "least_v": least_v, "most_v": most_v}
            yield BenchNote("led volts", reading.row, values)


def _currents(model: BenchModel, around: Around) -> Iterator[BenchNote]:
    """Amperes by meter against volts over the resistor, as the curve relates them."""
    readings, chain_a = model.readings, around.mean_led_a * model.string.lit_groups
    for k, (volts, amperes) in enumerate(pairwise(readings)):
        if volts.row != amperes.row:
            continue
        ratio = chain_a[k + 1] / chain_a[k]
        per_ohm = around.by_burden[k + 1] / chain_a[k]
        missing = amperes.measured / volts.rough_a - ratio
        if abs(missing) > CLEARLY * _ratio_u(volts, amperes, ratio, per_ohm):
            values = {
                "meter_a": amperes.measured,
                "resistor_a": volts.rough_a,
                "expected_a": volts.rough_a * ratio,
                "burden_ohm": amperes.burden_ohm,
            }
            needed_ohm = amperes.burden_ohm + (_more_ohm(ratio, per_ohm, missing) if per_ohm < 0 else -inf)
            if needed_ohm > 0:
                values["needed_burden_ohm"] = needed_ohm
            yield BenchNote("current disagrees", volts.row, _floats(values))


def _more_ohm(ratio: float, per_ohm: float, missing: float) -> float:
    """Burden to add for the ratio to change by `missing`: 1 / ratio grows evenly with the ohms in line."""
    return ratio * missing / (per_ohm * (ratio + missing))


def _ratio_u(volts: Reading, amperes: Reading, ratio: float, per_ohm: float) -> float:
    """Standard uncertainty of meter amperes over resistor amperes, less what the curve says of it."""
    resistor_v = volts.supply_v - volts.measured
    return ratio * hypot(
        amperes.u / amperes.measured,
        hypot(volts.u, volts.supply_u_v) / resistor_v,
        volts.resistor_u_ohm / volts.resistor_ohm,
        per_ohm * amperes.burden_u_ohm / ratio,
    )


def _unexplained(model: BenchModel, around: Around) -> Iterator[BenchNote]:
    """Readings that the fitted curve misses by more than their uncertainty can explain."""
    u = np.sqrt(np.diag(model.covariance(around)))
    for reading, predicted, spread in zip(model.readings, around.predicted, u, strict=True):
        if abs(reading.measured - predicted) > CLEARLY * spread:
            values = {"measured": reading.measured, "predicted": predicted, "u": spread}
            yield BenchNote("reading unexplained", reading.row, _floats(values))


def _floats(values: Mapping[str, float]) -> dict[str, float]:
    return {name: float(value) for name, value in values.items()}
