"""Random builds of one arrangement, all solved at once (JCGM 101, Monte Carlo).

Every draw is a whole installation of its own: its supply, resistors, wires,
LEDs and air temperature lie somewhere within their spread.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from guidegen.calc.monte_carlo import correlated, rectangular
from guidegen.calc.network import Bulbs, Network, Rails, Sources, solve_network
from guidegen.circuit.arrangement import Arrangement, Cable, Conductor, Floats, LedEstimate, RunPlan
from guidegen.circuit.netlist import feeding, join_bulbs, join_rails, scaled_rails
from guidegen.circuit.solution import Solution
from guidegen.tables.conductors import REFERENCE_DEGC
from guidegen.tables.leds import LED_SPREAD_V, VOLTS_PER_K

#: Draws of JCGM 101 and the seed that makes them the same every time.
DRAWS = 2_000
SEED = 20_000
#: Volts, slope and resistance (S, 1) of the mean LED of a kind of string.
_Curves = tuple[Floats, Floats, Floats]
#: Mismatch of a bulb's current accepted in a draw: far below what a meter shows.
TOLERANCE = 1e-5


@dataclass(frozen=True, eq=False)
class RunDraws:
    """One run in S draws: current and volts (S,); `bulb_v` and `led_a` (S, n)."""

    current_a: Floats
    resistor_v: Floats
    after_resistor_v: Floats
    bulb_v: Floats
    led_a: Floats


@dataclass(frozen=True, eq=False)
class Draws:
    """S random builds: volts at the supply's terminals and its current (S,), and every run."""

    terminal_v: Floats
    supply_a: Floats
    runs: tuple[RunDraws, ...]


def draw_builds(arrangement: Arrangement, nominal: Solution, count: int = DRAWS, seed: int = SEED) -> Draws:
    """Solve `count` random builds of an arrangement whose nominal solution is known.

    Rectangular within their limits: supply volts, resistors, wires, air.
    and the mean LED's volts where they are a stated band.  Normal: a curve
    fitted on the bench, with the fit's covariance; slope and resistance of
    any other; the LED-to-LED spread of every bulb.
    """
    random, supply = np.random.default_rng(seed), arrangement.supply
    air_c = rectangular(random, arrangement.coldest_c, arrangement.warmest_c, (count, 1))
    air_k = air_c - REFERENCE_DEGC
    source_v = _around(random, supply.voltage_v, supply.tolerance, count)
    lead_ohm = 2 * _cable_ohm(random, supply.lead, air_k)
    kinds = {run.string: run.led for run in arrangement.runs}
    curves = {name: _draw_curves(random, led, count) for name, led in kinds.items()}
    drawn = [_draw_run(random, run, air_k, curves[run.string]) for run in arrangement.runs]
    sources = Sources(
        series_ohm=np.concatenate([run.resistor_ohm + run.feeder_ohm for run in drawn]),
        installation=np.tile(np.arange(count), len(drawn)),
        source_v=source_v,
        common_ohm=supply.output_ohm + lead_ohm,
    )
    network = solve_network(
        join_bulbs([run.bulbs for run in drawn]),
        join_rails([run.rails for run in drawn]),
        sources,
        np.concatenate([np.tile(run.led_a, count) for run in nominal.runs]),
        TOLERANCE,
    )
    bus_v = source_v - (supply.output_ohm + lead_ohm) * network.total_a
    return Draws(
        terminal_v=source_v - supply.output_ohm * network.total_a,
        supply_a=network.total_a,
        runs=tuple(_collect(network, drawn, index, bus_v) for index in range(len(drawn))),
    )


@dataclass(frozen=True, eq=False)
class _DrawnRun:
    bulbs: Bulbs
    rails: Rails
    resistor_ohm: Floats
    feeder_ohm: Floats


def _draw_run(random: np.random.Generator, run: RunPlan, air_k: Floats, curves: _Curves) -> _DrawnRun:
    count = len(air_k)
    own = _wire_factor(random, run.conductor, air_k)
    extra = own if run.extra is None else _wire_factor(random, run.extra.conductor, air_k)
    return _DrawnRun(
        bulbs=_draw_bulbs(random, run, air_k, curves),
        rails=scaled_rails(feeding(run), own, extra),
        resistor_ohm=_around(random, run.resistor.ohm, run.resistor.tolerance, count),
        feeder_ohm=2 * _cable_ohm(random, run.feeder, air_k),
    )


def _draw_bulbs(random: np.random.Generator, run: RunPlan, air_k: Floats, curves: _Curves) -> Bulbs:
    """Bulbs of S draws end to end: one curve a draw and kind of string, shifted a little in every bulb."""
    count, current_a = len(air_k), run.led.curve.current_a
    mean_v, slope_v, ohm = curves
    per_bulb_v = LED_SPREAD_V.value / 2 / np.sqrt(np.maximum(run.lit_groups * run.leds_in_series, 1))
    bulb_v = mean_v + per_bulb_v * random.standard_normal((count, run.bulbs)) + VOLTS_PER_K.typical * air_k
    folds = np.maximum(bulb_v - current_a * ohm, slope_v) / slope_v
    saturation_a = current_a * np.exp(-folds) / -np.expm1(-folds)

    def spread(values: Floats | float) -> Floats:
        return np.broadcast_to(values, saturation_a.shape).ravel()

    return Bulbs(
        groups=spread(run.lit_groups),
        series=spread(float(run.leds_in_series)),
        group_ohm=spread(run.group_ohm),
        slope_v=spread(slope_v),
        saturation_a=saturation_a.ravel(),
        resistance_ohm=spread(ohm),
    )


def _draw_curves(random: np.random.Generator, led: LedEstimate, count: int) -> _Curves:
    """Volts, slope and resistance (S, 1) of S possible curves.

    The slope spreads in its logarithm, so that it stays above zero; a
    resistance stays at zero at least.
    """
    curve, moves = led.curve, correlated(random, led.spread, count)
    volts = curve.voltage_v + moves[:, 0:1]
    if led.source != "bench":
        volts = rectangular(random, led.voltage_low_v, led.voltage_high_v, (count, 1))
    slope_v = curve.slope_v * np.exp(moves[:, 1:2] / curve.slope_v)
    return volts, slope_v, np.maximum(curve.resistance_ohm + moves[:, 2:3], 0.0)


def _around(random: np.random.Generator, nominal: float, tolerance: float, count: int) -> Floats:
    return rectangular(random, nominal * (1 - tolerance), nominal * (1 + tolerance), (count,))


def _wire_factor(random: np.random.Generator, wire: Conductor, air_k: Floats) -> Floats:
    side = rectangular(random, wire.low_factor, wire.high_factor, air_k.shape)
    return side * (1 + wire.per_k * air_k)


def _cable_ohm(random: np.random.Generator, cable: Cable | None, air_k: Floats) -> Floats:
    if cable is None:
        return np.zeros(len(air_k))
    return cable.ohm * _wire_factor(random, cable.conductor, air_k)[:, 0]


def _collect(network: Network, drawn: list[_DrawnRun], index: int, bus_v: Floats) -> RunDraws:
    count = len(bus_v)
    before = sum(len(run.bulbs.groups) for run in drawn[:index])
    here = slice(before, before + len(drawn[index].bulbs.groups))
    current_a = network.chain_a[index * count : (index + 1) * count]
    resistor_v = current_a * drawn[index].resistor_ohm
    return RunDraws(
        current_a=current_a,
        resistor_v=resistor_v,
        after_resistor_v=bus_v - resistor_v,
        bulb_v=network.bulb_v[here].reshape(count, -1),
        led_a=network.group_a[here].reshape(count, -1),
    )
