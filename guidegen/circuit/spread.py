"""Expected readings with their ranges, and the band of light, from random builds.

A range holds 95 % of correct builds (JCGM 101), the meter's own accuracy
included; a wider one holds all readings of the sheet at once in 95 % of
them.  An in-line ammeter lowers the current it shows: its resistance is
solved into the nominal circuit, and the random currents are scaled alike.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

import numpy as np

from guidegen.calc.light import raw_light
from guidegen.calc.monte_carlo import coverage, joint_factor, rectangular
from guidegen.circuit.arrangement import Arrangement, Floats
from guidegen.circuit.draws import DRAWS, SEED, Draws, draw_builds
from guidegen.circuit.expected import ExpectedReading
from guidegen.circuit.meter import Meter, error_of
from guidegen.circuit.points import TestPoint, test_points
from guidegen.circuit.solution import Solution
from guidegen.circuit.solve import solve
from guidegen.circuit.variants import with_resistor
from guidegen.tables.limits import MeterRange


@dataclass(frozen=True, eq=False)
class Spread:
    """Expected readings in the order of the test points, then the currents in line, then other bulbs.

    `light_low` and `light_high`: band of every bulb's light, one (n,) a run;
    `draws` are the random builds behind them.
    """

    readings: tuple[ExpectedReading, ...]
    light_low: tuple[Floats, ...]
    light_high: tuple[Floats, ...]
    draws: Draws


@dataclass(frozen=True, eq=False)
class _Sheet:
    """Readings of the nominal build without ranges, what every draw shows (S, K), and the ranges used."""

    bare: tuple[ExpectedReading, ...]
    values: Floats
    scales: tuple[MeterRange, ...]


def expected_spread(
    arrangement: Arrangement,
    nominal: Solution,
    count: int = DRAWS,
    meter: Meter | None = None,
    more_bulbs: tuple[tuple[int, int], ...] = (),
) -> Spread:
    """What a meter will show at every test point of correct builds.

    `more_bulbs`: index of the run and number of a bulb, for bulbs that are
    no test points and are read all the same.
    """
    draws = draw_builds(arrangement, nominal, count)
    sheet = _sheet(arrangement, nominal, draws, meter or Meter(), more_bulbs)
    low, high = _light_band(arrangement, nominal, draws)
    return Spread(_ranges(sheet), low, high, draws)


def _sheet(
    arrangement: Arrangement, nominal: Solution, draws: Draws, meter: Meter, more: tuple[tuple[int, int], ...]
) -> _Sheet:
    rows = [
        *(_volts_at(point, nominal, draws, meter) for point in test_points(arrangement)),
        *_currents_in_line(arrangement, nominal, draws, meter),
        *(_other_bulb(run, bulb, nominal, draws, meter) for run, bulb in more),
    ]
    bare, values, scales = zip(*rows, strict=True)
    return _Sheet(bare, np.column_stack(values), scales)


_Row = tuple[ExpectedReading, Floats, MeterRange]


def _volts_at(point: TestPoint, nominal: Solution, draws: Draws, meter: Meter) -> _Row:
    if point.run is None:
        return _volts(nominal.terminal_v, point=point), draws.terminal_v, meter.volts
    run, drawn = nominal.runs[point.run], draws.runs[point.run]
    if point.kind == "resistor volts":
        expected, values = run.resistor_v, drawn.resistor_v
    elif point.kind == "after resistor":
        expected, values = run.after_resistor_v, drawn.after_resistor_v
    else:
        bulb = (point.bulb or 1) - 1
        expected, values = float(run.bulb_v[bulb]), drawn.bulb_v[:, bulb]
    return _volts(expected, point, point.run, point.bulb), values, meter.volts


def _volts(
    expected: float, point: TestPoint | None = None, run: int | None = None, bulb: int | None = None
) -> ExpectedReading:
    return ExpectedReading("volts", expected, expected, expected, point, run, bulb)


def _other_bulb(run: int, bulb: int, nominal: Solution, draws: Draws, meter: Meter) -> _Row:
    expected = float(nominal.runs[run].bulb_v[bulb - 1])
    return _volts(expected, None, run, bulb), draws.runs[run].bulb_v[:, bulb - 1], meter.volts


def _currents_in_line(
    arrangement: Arrangement, nominal: Solution, draws: Draws, meter: Meter
) -> Iterator[_Row]:
    """As a meter in line with each run shows them, and in line with the supply."""
    for index, solved in enumerate(nominal.runs):
        scale, burden_ohm = meter.ammeter(solved.current_a)
        shown_a = solve(with_burden(arrangement, index, burden_ohm), near=nominal).runs[index].current_a
        values = _share(shown_a, solved.current_a) * draws.runs[index].current_a
        yield _amperes(shown_a, index), values, scale
    scale, burden_ohm = meter.ammeter(nominal.supply_a)
    shown_a = solve(with_burden(arrangement, None, burden_ohm), near=nominal).supply_a
    yield _amperes(shown_a, None), _share(shown_a, nominal.supply_a) * draws.supply_a, scale


def with_burden(arrangement: Arrangement, run: int | None, burden_ohm: float) -> Arrangement:
    """The arrangement with a meter in line with a run, or with all of them."""
    if run is not None:
        return with_resistor(arrangement, run, arrangement.runs[run].resistor.ohm + burden_ohm)
    supply = arrangement.supply
    return replace(arrangement, supply=replace(supply, output_ohm=supply.output_ohm + burden_ohm))


def _amperes(shown_a: float, run: int | None) -> ExpectedReading:
    return ExpectedReading("amperes in line", shown_a, shown_a, shown_a, run=run)


def _share(shown_a: float, true_a: float) -> float:
    return shown_a / true_a if true_a else 0.0


def _ranges(sheet: _Sheet) -> tuple[ExpectedReading, ...]:
    """The readings with their own ranges, and with those that all hold at once."""
    low, high = coverage(sheet.values)
    expected = np.array([reading.expected for reading in sheet.bare])
    low = np.minimum(low - _errors(sheet.scales, low), expected)
    high = np.maximum(high + _errors(sheet.scales, high), expected)
    below, above = np.maximum(expected - low, _LEAST), np.maximum(high - expected, _LEAST)
    factor = max(1.0, joint_factor(_as_shown(sheet), expected, below, above))
    return tuple(
        replace(
            reading,
            low=max(0.0, float(low[k])),
            high=float(high[k]),
            out_low=max(0.0, float(expected[k] - factor * below[k])),
            out_high=float(expected[k] + factor * above[k]),
        )
        for k, reading in enumerate(sheet.bare)
    )


#: Width of a range that would have none, volt or ampere.
_LEAST = 1e-9


def _errors(scales: tuple[MeterRange, ...], values: Floats) -> Floats:
    return np.array([error_of(scale, float(value)) for scale, value in zip(scales, values, strict=True)])


def _as_shown(sheet: _Sheet) -> Floats:
    """What the draws' meters show: every reading is off by itself, within the meter's accuracy."""
    random = np.random.default_rng(SEED + 1)
    share = np.array([scale.share for scale in sheet.scales])
    steps = np.array([scale.digits * scale.step for scale in sheet.scales])
    limits = share * np.abs(sheet.values) + steps
    shown: Floats = sheet.values + limits * rectangular(random, -1.0, 1.0, sheet.values.shape)
    return shown


def _light_band(
    arrangement: Arrangement, nominal: Solution, draws: Draws
) -> tuple[tuple[Floats, ...], tuple[Floats, ...]]:
    """Band of every bulb's light over the nominal brightest bulb."""
    exponent = arrangement.light_exponent
    pairs = list(zip(arrangement.runs, nominal.runs, draws.runs, strict=True))
    brightest = (
        max(float(raw_light(plan.leds_lit, run.led_a, exponent).max()) for plan, run, _ in pairs) or 1.0
    )
    bands = [
        np.array(coverage(raw_light(plan.leds_lit, drawn.led_a, exponent))) / brightest
        for plan, _, drawn in pairs
    ]
    return tuple(band[0] for band in bands), tuple(band[1] for band in bands)
