"""All checks between keys, in lists; each finds complaints in the part it is given."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from guidegen.project import (
    check_hanging,
    check_own,
    check_place,
    check_prices,
    check_readings,
    check_runs,
    check_strings,
    check_supply,
    check_supply_at,
    check_wires,
)
from guidegen.project.complaint import Complaint
from guidegen.project.keys import Key
from guidegen.project.partial import attempt
from guidegen.project.schema import LightString, Project, Run, WirePiece

PROJECT_CHECKS = (
    check_runs.runs_there,
    check_runs.names_differ,
    check_runs.bulbs_enough,
    check_runs.not_too_many,
    check_prices.one_currency,
    check_prices.tariff_currency,
    check_readings.runs_there,
    check_readings.leads,
    check_readings.once,
    check_own.once,
    check_supply_at.supply_places,
)
PLACE_CHECKS = (check_place.temperatures, check_place.water)
STRING_CHECKS = (check_strings.name, check_strings.groups, check_strings.half_bulbs, check_strings.wires)
WIRE_CHECKS = (check_wires.string_wire, check_wires.meter_leads, check_wires.material)
BENCH_CHECKS = (
    check_strings.reading_there,
    check_strings.volts_drop,
    check_strings.current_fits,
    check_strings.burden,
)
READING_CHECKS = (
    check_readings.run_known,
    check_readings.place_there,
    check_readings.unit,
    check_readings.possible,
)
RUN_CHECKS = (check_runs.extra_wire, check_runs.resistor_there)
HANGING_CHECKS = (check_hanging.lines_there, check_hanging.guide_wire)
LINE_CHECKS = (check_hanging.hooks_or_spans, check_hanging.hooks_apart, check_hanging.long_enough)
OWN_CHECKS = (check_own.one_place, check_own.own_is_whole, check_own.adds_something)


def complaints(project: Project) -> Iterator[Complaint]:
    """Everything that does not agree; of a partial project, as far as it can be told."""
    yield from _all(PROJECT_CHECKS, project)
    yield from attempt(_place, project)
    yield from attempt(_supply, project)
    yield from attempt(_strings, project)
    yield from attempt(_runs, project)
    yield from attempt(_readings, project)
    yield from attempt(_hanging, project)
    yield from attempt(_own_steps, project)


def _all(checks: tuple[Any, ...], *parts: Any) -> Iterator[Complaint]:
    for check in checks:
        yield from attempt(check, *parts)


def _place(project: Project) -> Iterator[Complaint]:
    yield from _all(PLACE_CHECKS, project.place)


def _supply(project: Project) -> Iterator[Complaint]:
    yield from attempt(check_supply.limited_power, project.supply)
    if project.supply.lead is not None:
        yield from _piece(("supply", "lead"), project.supply.lead)


def _strings(project: Project) -> Iterator[Complaint]:
    for name, string in project.strings.items():
        key = ("strings", name)
        yield from _all(STRING_CHECKS, key, string)
        for part in (_string_wire, _led, _bench):
            yield from attempt(part, key, string)


def _string_wire(key: Key, string: LightString) -> Iterator[Complaint]:
    yield from _all(WIRE_CHECKS, (*key, "wire"), string.wire)


def _led(key: Key, string: LightString) -> Iterator[Complaint]:
    yield from attempt(check_strings.led, (*key, "led"), string.led)


def _bench(key: Key, string: LightString) -> Iterator[Complaint]:
    for index, row in enumerate(string.bench):
        yield from _all(BENCH_CHECKS, (*key, "bench", index), row)


def _runs(project: Project) -> Iterator[Complaint]:
    for index, run in enumerate(project.runs or ()):
        key = ("runs", index)
        yield from _all(RUN_CHECKS, key, run)
        yield from attempt(check_runs.string_known, project, index, run)
        for word in ("feeder", "extra_wire"):
            yield from attempt(_run_piece, key, run, word)


def _readings(project: Project) -> Iterator[Complaint]:
    for index, reading in enumerate(project.readings if project.runs else ()):
        yield from _all(READING_CHECKS, project, ("readings", index), reading)


def _run_piece(key: Key, run: Run, word: str) -> Iterator[Complaint]:
    piece = getattr(run, word)
    if piece is not None:
        yield from _piece((*key, word), piece)


def _piece(key: Key, piece: WirePiece) -> Iterator[Complaint]:
    yield from attempt(check_wires.piece_wire, key, piece)
    yield from attempt(_piece_rest, (*key, "wire"), piece)


def _piece_rest(key: Key, piece: WirePiece) -> Iterator[Complaint]:
    yield from _all((check_wires.meter_leads, check_wires.material), key, piece.wire)


def _hanging(project: Project) -> Iterator[Complaint]:
    hanging = project.hanging
    if hanging is None:
        return
    yield from _all(HANGING_CHECKS, hanging)
    for index, line in enumerate(hanging.lines):
        key = ("hanging", "lines", index)
        yield from _all(LINE_CHECKS, key, line)
        yield from attempt(check_hanging.sag_or_length, hanging, key, line)
    yield from attempt(check_hanging.runs_named, project, hanging)


def _own_steps(project: Project) -> Iterator[Complaint]:
    for index, entry in enumerate(project.steps):
        yield from _all(OWN_CHECKS, ("steps", index), entry)
