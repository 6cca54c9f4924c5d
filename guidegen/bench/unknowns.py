"""Everything uncertain about a correct build, each moved by one standard uncertainty."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from math import sqrt

import numpy as np

from guidegen.bench.faults import Fault
from guidegen.bench.predict import moved, spreads
from guidegen.calc.led import warmed
from guidegen.circuit.arrangement import Arrangement, Cable, Conductor, RunPlan
from guidegen.tables.leds import VOLTS_PER_K


def moved_builds(arrangement: Arrangement, fault: Fault) -> Iterator[tuple[Arrangement, Fault]]:
    """The arrangement and the fault with one unknown after another moved.

    Rectangular spreads count with their half-width over the root of three
    (JCGM 100, 4.3.7).  The first pair is unmoved.
    """
    yield arrangement, fault
    supply = arrangement.supply
    off_v = supply.voltage_v * supply.tolerance / sqrt(3)
    yield replace(arrangement, supply=replace(supply, voltage_v=supply.voltage_v + off_v)), fault
    yield _warmer(arrangement, (arrangement.warmest_c - arrangement.coldest_c) / sqrt(12)), fault
    for move, string in _curve_moves(arrangement):
        runs = [_with_curve(run, move) if run.string == string else run for run in arrangement.runs]
        yield replace(arrangement, runs=tuple(runs)), fault
    for index, run in enumerate(arrangement.runs):
        for other, share in _moved_runs(run):
            here = fault.run == index and fault.kind.startswith("resistor")
            yield (
                _with_run(arrangement, index, other),
                replace(fault, amount=fault.amount * (1 + share * here)),
            )


def _warmer(arrangement: Arrangement, change_k: float) -> Arrangement:
    runs = [
        replace(
            run,
            led=replace(run.led, curve=warmed(run.led.curve, change_k, VOLTS_PER_K.typical)),
            conductor=_longer(run.conductor, run.conductor.per_k * change_k),
            extra=_stretched(run.extra, 0.0 if run.extra is None else run.extra.conductor.per_k * change_k),
        )
        for run in arrangement.runs
    ]
    return replace(arrangement, runs=tuple(runs))


def _curve_moves(arrangement: Arrangement) -> Iterator[tuple[np.ndarray, str]]:
    leds = {run.string: run.led for run in arrangement.runs}
    for string, led in leds.items():
        yield from ((move, string) for move in spreads(led.spread) if np.any(move))


def _with_curve(run: RunPlan, move: np.ndarray) -> RunPlan:
    return replace(run, led=replace(run.led, curve=moved(run.led.curve, move)))


def _moved_runs(run: RunPlan) -> Iterator[tuple[RunPlan, float]]:
    """The run with its resistor, its string's wire and its extra wire moved, and the resistor's share."""
    share = run.resistor.tolerance / sqrt(3)
    if run.resistor.ohm > 0:
        yield replace(run, resistor=replace(run.resistor, ohm=run.resistor.ohm * (1 + share))), share
    yield replace(run, conductor=_longer(run.conductor, _wire_u(run.conductor))), 0.0
    if run.extra is not None:
        yield replace(run, extra=_stretched(run.extra, _wire_u(run.extra.conductor))), 0.0
    if run.feeder is not None:
        yield replace(run, feeder=_stretched(run.feeder, _wire_u(run.feeder.conductor))), 0.0


def _wire_u(wire: Conductor) -> float:
    return (wire.high_factor - wire.low_factor) / 2 / sqrt(3)


def _longer(wire: Conductor, share: float) -> Conductor:
    return replace(wire, ohm_per_m=wire.ohm_per_m * (1 + share))


def _stretched(cable: Cable | None, share: float) -> Cable | None:
    return None if cable is None else replace(cable, conductor=_longer(cable.conductor, share))


def _with_run(arrangement: Arrangement, index: int, run: RunPlan) -> Arrangement:
    runs = list(arrangement.runs)
    runs[index] = run
    return replace(arrangement, runs=tuple(runs))
