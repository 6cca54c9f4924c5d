"""From the project file to the arrangement: which bulb of which string is where in which run."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping

import numpy as np

from guidegen.circuit.arrangement import (
    Arrangement,
    Cable,
    Floats,
    Fuse,
    LedEstimate,
    LedLimit,
    Piece,
    Resistor,
    RunPlan,
    SupplyPlan,
    half_lit,
)
from guidegen.circuit.conductors import cable_conductor, string_conductor
from guidegen.project.schema import LightString, Project, Run, WirePiece
from guidegen.tables.limits import COLDEST_INDOORS_DEGC, COLDEST_OUTDOORS_DEGC, WARMEST_DEGC


def arrange(project: Project, leds: Mapping[str, LedEstimate], limits: Mapping[str, LedLimit]) -> Arrangement:
    """Lay the bought strings end to end and cut them where a run ends.

    `leds` and `limits`: what is known of the LEDs and the largest current of
    one, by kind of string.  Resistors, ratings
    and a fuse that the file leaves out stay open.
    """
    place = project.place
    coldest = COLDEST_INDOORS_DEGC if place.exposure == "indoors" else COLDEST_OUTDOORS_DEGC
    next_bulb = dict.fromkeys(project.strings, 0)
    runs = []
    for run in project.runs or ():
        assert run.string is not None, "the reader fills in the only kind of string"
        kind = project.strings[run.string]
        pieces = tuple(take_bulbs(kind.bulbs, next_bulb[run.string], run.bulbs))
        next_bulb[run.string] += run.bulbs
        runs.append(plan_run(run, kind, leds[run.string], limits[run.string], pieces, project.goals.series))
    return Arrangement(
        supply=_plan_supply(project),
        fuse=Fuse(project.fuse, project.fuse_type, chosen=project.fuse is None),
        runs=tuple(runs),
        coldest_c=coldest.value if place.coldest is None else place.coldest,
        warmest_c=WARMEST_DEGC.value if place.warmest is None else place.warmest,
        light_exponent=project.goals.light_exponent,
        outdoors=place.exposure != "indoors",
    )


def take_bulbs(string_bulbs: int, used: int, wanted: int) -> Iterator[Piece]:
    """Pieces that give `wanted` bulbs when `used` are gone from strings of `string_bulbs` each."""
    while wanted > 0:
        number, first = divmod(used, string_bulbs)
        taken = min(wanted, string_bulbs - first)
        yield Piece(number + 1, first + 1, first + taken, string_bulbs)
        used += taken
        wanted -= taken


def plan_run(
    run: Run,
    kind: LightString,
    led: LedEstimate,
    limit: LedLimit,
    pieces: tuple[Piece, ...],
    series: str = "E12",
) -> RunPlan:
    """One run made of `pieces` of strings of one `kind`."""
    segment_m = _segments_m(kind, pieces)
    conductor = string_conductor(kind)
    return RunPlan(
        name=run.name or "",
        string=run.string or "",
        feed=run.feed,
        pieces=pieces,
        lit_groups=_lit_groups(kind, pieces),
        segment_m=segment_m,
        position_m=np.cumsum(segment_m),
        conductor=conductor,
        groups=kind.groups,
        leds_in_series=kind.leds_in_series,
        group_ohm=kind.group_resistor,
        led=led,
        led_limit=limit,
        resistor=_plan_resistor(run),
        feeder=_cable(run.feeder),
        extra=_cable(run.extra_wire),
        cuttable=kind.between_bulbs == "parallel",
        series=run.series or series,
    )


def string_alone(kind: LightString, led: LedEstimate, resistor_ohm: float) -> RunPlan:
    """One whole string as bought, fed through its tail and a resistor: as on the bench."""
    run = Run.model_construct(bulbs=kind.bulbs, name="string", resistor=resistor_ohm)
    whole = (Piece(1, 1, kind.bulbs, kind.bulbs),)
    return plan_run(run, kind, led, LedLimit(math.inf, "stated"), whole)


def _segments_m(kind: LightString, pieces: tuple[Piece, ...]) -> Floats:
    """Wire in front of each bulb: a tail where a string begins, else one spacing."""
    parts = []
    for piece in pieces:
        part = np.full(piece.bulbs, kind.spacing)
        if piece.has_tail:
            part[0] = kind.tail_m
        parts.append(part)
    return np.concatenate(parts)


def _lit_groups(kind: LightString, pieces: tuple[Piece, ...]) -> Floats:
    if kind.lit_on_dc == "half of each bulb":
        return np.full(sum(piece.bulbs for piece in pieces), kind.groups // 2, dtype=float)
    numbers = np.concatenate([np.arange(piece.first, piece.last + 1) for piece in pieces])
    lit = half_lit(numbers) if kind.lit_on_dc == "half" else np.ones(len(numbers), dtype=bool)
    return np.where(lit, float(kind.groups), 0.0)


def _plan_resistor(run: Run) -> Resistor:
    none = run.resistor in {"none", 0}
    ohm = float(run.resistor) if isinstance(run.resistor, float) else 0.0
    return Resistor(
        ohm=ohm,
        tolerance=run.resistor_tolerance,
        rating_w=run.resistor_rating,
        kind=run.resistor_kind,
        fitted=not none,
        chosen=run.resistor is None,
        rating_chosen=not none and run.resistor_rating is None,
        kind_chosen=not none and run.resistor_kind is None and run.resistor_rating is None,
    )


def _plan_supply(project: Project) -> SupplyPlan:
    supply = project.supply
    return SupplyPlan(
        voltage_v=supply.voltage,
        tolerance=supply.tolerance,
        rated_a=supply.rated_current,
        output_ohm=supply.output_resistance,
        limit_a=supply.rated_current if supply.current_limit is None else supply.current_limit,
        lead=_cable(supply.lead),
    )


def _cable(piece: WirePiece | None) -> Cable | None:
    if piece is None or piece.length == 0:
        return None
    return Cable(piece.length, cable_conductor(piece))
