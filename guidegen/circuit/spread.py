"""Expected readings with their ranges, and the band of light, from random builds.

A range holds 95 % of correct builds (JCGM 101), the meter's own accuracy
included.  An in-line ammeter lowers the current it shows: its resistance is
solved into the nominal circuit, and the random currents are scaled alike.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

import numpy as np

from guidegen.calc.light import raw_light
from guidegen.circuit.arrangement import Arrangement, Floats
from guidegen.circuit.draws import DRAWS, Draws, draw_builds
from guidegen.circuit.expected import ExpectedReading
from guidegen.circuit.points import TestPoint, test_points
from guidegen.circuit.solution import Solution
from guidegen.circuit.solve import solve
from guidegen.circuit.variants import with_resistor
from guidegen.tables.limits import (
    METER_AMPERES,
    METER_BURDEN_OHM,
    METER_MILLIAMPERES_TO_A,
    METER_TEN_AMPERES,
    METER_TEN_AMPERES_BURDEN_OHM,
    METER_VOLTS,
    MeterRange,
)

#: Ends of the coverage interval, percent.
COVERAGE = (2.5, 97.5)


@dataclass(frozen=True, eq=False)
class Spread:
    """Expected readings in the order of the test points, then the currents in line.

    `light_low` and `light_high`: band of every bulb's light, one (n,) a run.
    """

    readings: tuple[ExpectedReading, ...]
    light_low: tuple[Floats, ...]
    light_high: tuple[Floats, ...]


def expected_spread(arrangement: Arrangement, nominal: Solution, count: int = DRAWS) -> Spread:
    """What a meter will show at every test point of correct builds."""
    draws = draw_builds(arrangement, nominal, count)
    volts = [_volts_at(point, nominal, draws) for point in test_points(arrangement)]
    amperes = _currents_in_line(arrangement, nominal, draws)
    low, high = _light_band(arrangement, nominal, draws)
    return Spread((*volts, *amperes), low, high)


def _volts_at(point: TestPoint, nominal: Solution, draws: Draws) -> ExpectedReading:
    if point.run is None:
        return _reading("volts", nominal.terminal_v, draws.terminal_v, METER_VOLTS, point=point)
    run, drawn = nominal.runs[point.run], draws.runs[point.run]
    if point.kind == "resistor volts":
        expected, values = run.resistor_v, drawn.resistor_v
    elif point.kind == "after resistor":
        expected, values = run.after_resistor_v, drawn.after_resistor_v
    else:
        bulb = (point.bulb or 1) - 1
        expected, values = float(run.bulb_v[bulb]), drawn.bulb_v[:, bulb]
    return _reading("volts", expected, values, METER_VOLTS, point=point, run=point.run)


def _currents_in_line(arrangement: Arrangement, nominal: Solution, draws: Draws) -> Iterator[ExpectedReading]:
    """As a meter in line with each run shows them, and in line with the supply."""
    for index, run in enumerate(arrangement.runs):
        true_a = nominal.runs[index].current_a
        meter, burden_ohm = _ammeter(true_a)
        metered = solve(with_resistor(arrangement, index, run.resistor.ohm + burden_ohm))
        shown_a = metered.runs[index].current_a
        values = _share(shown_a, true_a) * draws.runs[index].current_a
        yield _reading("amperes in line", shown_a, values, meter, run=index)
    meter, burden_ohm = _ammeter(nominal.supply_a)
    supply = arrangement.supply
    metered = solve(replace(arrangement, supply=replace(supply, output_ohm=supply.output_ohm + burden_ohm)))
    values = _share(metered.supply_a, nominal.supply_a) * draws.supply_a
    yield _reading("amperes in line", metered.supply_a, values, meter)


def _ammeter(current_a: float) -> tuple[MeterRange, float]:
    """Range for a current, and its resistance in ohm."""
    if current_a <= METER_MILLIAMPERES_TO_A.value:
        return METER_AMPERES, METER_BURDEN_OHM.value
    return METER_TEN_AMPERES, METER_TEN_AMPERES_BURDEN_OHM.value


def _share(shown_a: float, true_a: float) -> float:
    return shown_a / true_a if true_a else 0.0


def _reading(
    quantity: str,
    expected: float,
    values: Floats,
    meter: MeterRange,
    point: TestPoint | None = None,
    run: int | None = None,
) -> ExpectedReading:
    low, high = np.percentile(values, COVERAGE)
    return ExpectedReading(
        quantity=quantity,  # type: ignore[arg-type]
        expected=expected,
        low=max(0.0, float(low) - _meter_error(float(low), meter)),
        high=float(high) + _meter_error(float(high), meter),
        point=point,
        run=run,
    )


def _meter_error(value: float, meter: MeterRange) -> float:
    return abs(value) * meter.share + meter.digits * meter.step


def _light_band(
    arrangement: Arrangement, nominal: Solution, draws: Draws
) -> tuple[tuple[Floats, ...], tuple[Floats, ...]]:
    """2.5 and 97.5 percentiles of every bulb's light over the nominal brightest bulb."""
    exponent = arrangement.light_exponent
    pairs = list(zip(arrangement.runs, nominal.runs, draws.runs, strict=True))
    brightest = (
        max(float(raw_light(plan.leds_lit, run.led_a, exponent).max()) for plan, run, _ in pairs) or 1.0
    )
    bands = [
        np.percentile(raw_light(plan.leds_lit, drawn.led_a, exponent), COVERAGE, axis=0) / brightest
        for plan, _, drawn in pairs
    ]
    return tuple(band[0] for band in bands), tuple(band[1] for band in bands)
