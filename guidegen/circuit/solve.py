"""Solve an arrangement: volts and current at every bulb, all runs and the supply together."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Literal

import numpy as np

from guidegen.calc.led import Curve, warmed
from guidegen.calc.light import evenness, raw_light, relative_light, seen_evenness
from guidegen.calc.network import (
    Bulbs,
    Network,
    Rails,
    Sources,
    kirchhoff_residual_a,
    power_imbalance_w,
    solve_network,
)
from guidegen.calc.wire import temperature_factor
from guidegen.circuit.arrangement import Arrangement, Cable, Conductor, Floats, LedEstimate, RunPlan
from guidegen.circuit.solution import RunSolution, Solution
from guidegen.tables.conductors import REFERENCE_DEGC
from guidegen.tables.leds import VOLTS_PER_K

Side = Literal["low", "nominal", "high"]

#: Resistance that stands for a wire of no length, ohm: under a centimetre of any wire.
LEAST_WIRE_OHM = 1e-6


@dataclass(frozen=True)
class Conditions:
    """How the true build differs from the nominal one, each part within its own spread.

    `source_v`: no-load volts (None: nominal); `resistor`, `wire` and `led`:
    on which side of their nominal value all of them lie; `air_degc`.
    """

    source_v: float | None = None
    resistor: Side = "nominal"
    wire: Side = "nominal"
    led: Side = "nominal"
    air_degc: float = REFERENCE_DEGC

    def resistor_ohm(self, run: RunPlan) -> float:
        """True resistance of the run's resistor."""
        share = {"low": -run.resistor.tolerance, "nominal": 0.0, "high": run.resistor.tolerance}
        return run.resistor.ohm * (1 + share[self.resistor])

    def wire_factor(self, wire: Conductor) -> float:
        """True over nominal resistance of a wire."""
        side = {"low": wire.low_factor, "nominal": 1.0, "high": wire.high_factor}[self.wire]
        return side * temperature_factor(self.air_degc, wire.per_k)

    def cable_ohm(self, cable: Cable | None) -> float:
        """True resistance of one conductor of a cable; 0 where there is none."""
        return 0.0 if cable is None else cable.ohm * self.wire_factor(cable.conductor)

    def led_curve(self, led: LedEstimate) -> Curve:
        """The curve that all LEDs follow."""
        volts = {"low": led.voltage_low_v, "nominal": led.curve.voltage_v, "high": led.voltage_high_v}
        side = replace(led.curve, voltage_v=volts[self.led])
        return warmed(side, self.air_degc - REFERENCE_DEGC, VOLTS_PER_K.typical)


#: Every part at its nominal value, at 20 degC.
NOMINAL = Conditions()


def solve(arrangement: Arrangement, conditions: Conditions = NOMINAL) -> Solution:
    """Solve one arrangement under the given conditions.

    Raises NotConvergedError when no solution is found.
    """
    return solve_each(arrangement, (conditions,))[0]


def solve_each(arrangement: Arrangement, cases: tuple[Conditions, ...]) -> tuple[Solution, ...]:
    """Solve the arrangement under several conditions in one go."""
    bulbs, rails, sources = _join([_circuit(arrangement, case) for case in cases])
    network = solve_network(bulbs, rails, sources)
    residual_a = kirchhoff_residual_a(bulbs, rails, network)
    imbalance_w = power_imbalance_w(rails, sources, network)
    runs = len(arrangement.runs)
    ends = np.append(rails.starts, len(bulbs.groups))
    found = []
    for index, case in enumerate(cases):
        chains = slice(index * runs, (index + 1) * runs)
        stretches = [slice(ends[k], ends[k + 1]) for k in range(chains.start, chains.stop)]
        found.append(
            _solution(
                arrangement,
                case,
                _Part(network, chains, stretches, index),
                float(residual_a[chains].max()),
                float(imbalance_w[index]),
            )
        )
    return tuple(found)


def circuit_of(arrangement: Arrangement, case: Conditions = NOMINAL) -> tuple[Bulbs, Rails, Sources]:
    """The arrangement as the solver wants it, one chain a run, one installation."""
    return _circuit(arrangement, case)


def rails_of(run: RunPlan, case: Conditions = NOMINAL) -> Rails:
    """Conductances of one run's rails, fed as the run says."""
    per_m_ohm = run.conductor.ohm_per_m * case.wire_factor(run.conductor)
    segment_s = 1 / np.maximum(run.segment_m * per_m_ohm, LEAST_WIRE_OHM)
    link_s = np.append(segment_s[1:], 0.0)
    plus_feed_s, minus_feed_s = np.zeros(run.bulbs), np.zeros(run.bulbs)
    extra_s = 1 / max(case.cable_ohm(run.extra), LEAST_WIRE_OHM)
    if run.feed == "middle":
        plus_feed_s[run.fed_bulb - 1] = minus_feed_s[run.fed_bulb - 1] = extra_s
    else:
        plus_feed_s[0] = segment_s[0]
    if run.feed in ("one end", "both ends"):
        minus_feed_s[0] = segment_s[0]
    if run.feed == "both ends":
        plus_feed_s[-1] += extra_s
    if run.feed in ("both ends", "opposite ends"):
        minus_feed_s[-1] += extra_s
    return Rails(link_s, link_s.copy(), plus_feed_s, minus_feed_s, np.array([0]))


def bulbs_of(run: RunPlan, case: Conditions = NOMINAL) -> Bulbs:
    """What hangs between the rails of one run."""
    curve = case.led_curve(run.led)
    ones = np.ones(run.bulbs)
    return Bulbs(
        groups=run.lit_groups,
        series=ones * run.leds_in_series,
        group_ohm=ones * run.group_ohm,
        slope_v=ones * curve.slope_v,
        saturation_a=ones * curve.saturation_a,
        resistance_ohm=ones * curve.resistance_ohm,
    )


def _circuit(arrangement: Arrangement, case: Conditions) -> tuple[Bulbs, Rails, Sources]:
    supply = arrangement.supply
    rails = [rails_of(run, case) for run in arrangement.runs]
    bulbs = [bulbs_of(run, case) for run in arrangement.runs]
    series_ohm = [case.resistor_ohm(run) + 2 * case.cable_ohm(run.feeder) for run in arrangement.runs]
    source_v = supply.voltage_v if case.source_v is None else case.source_v
    sources = Sources(
        series_ohm=np.array(series_ohm),
        installation=np.zeros(len(series_ohm), dtype=np.intp),
        source_v=np.array([source_v]),
        common_ohm=np.array([supply.output_ohm + 2 * case.cable_ohm(supply.lead)]),
    )
    return join_bulbs(bulbs), join_rails(rails), sources


def join_bulbs(parts: list[Bulbs]) -> Bulbs:
    """Bulbs of several chains end to end."""
    fields = ("groups", "series", "group_ohm", "slope_v", "saturation_a", "resistance_ohm")
    return Bulbs(*(np.concatenate([getattr(part, name) for part in parts]) for name in fields))


def join_rails(parts: list[Rails]) -> Rails:
    """Rails of several chains end to end, without coupling."""
    fields = ("plus_link_s", "minus_link_s", "plus_feed_s", "minus_feed_s")
    joined = [np.concatenate([getattr(part, name) for part in parts]) for name in fields]
    sizes = np.array([len(part.plus_link_s) for part in parts])
    offsets = np.cumsum(sizes) - sizes
    starts = np.concatenate([part.starts + offset for part, offset in zip(parts, offsets, strict=True)])
    return Rails(joined[0], joined[1], joined[2], joined[3], starts)


def _join(parts: list[tuple[Bulbs, Rails, Sources]]) -> tuple[Bulbs, Rails, Sources]:
    sources = [part[2] for part in parts]
    return (
        join_bulbs([part[0] for part in parts]),
        join_rails([part[1] for part in parts]),
        Sources(
            series_ohm=np.concatenate([source.series_ohm for source in sources]),
            installation=np.concatenate([source.installation + k for k, source in enumerate(sources)]),
            source_v=np.concatenate([source.source_v for source in sources]),
            common_ohm=np.concatenate([source.common_ohm for source in sources]),
        ),
    )


@dataclass(frozen=True, eq=False)
class _Part:
    """One installation's share of a solved network."""

    network: Network
    chains: slice
    stretches: list[slice]
    index: int


def _solution(
    arrangement: Arrangement, case: Conditions, part: _Part, residual_a: float, imbalance_w: float
) -> Solution:
    supply = arrangement.supply
    source_v = supply.voltage_v if case.source_v is None else case.source_v
    total_a = float(part.network.total_a[part.index])
    terminal_v = source_v - supply.output_ohm * total_a
    lead_ohm = case.cable_ohm(supply.lead)
    bus = (terminal_v - 2 * lead_ohm * total_a, lead_ohm * total_a)
    lights = _lights(arrangement, part)
    runs = tuple(
        _run_solution(arrangement, case, part, index, bus, lights[index])
        for index in range(len(arrangement.runs))
    )
    lit = np.concatenate([run.lit for run in runs])
    power_w = source_v * total_a
    return Solution(
        source_v=source_v,
        terminal_v=terminal_v,
        bus_v=bus[0],
        supply_a=total_a,
        power_w=power_w,
        load=total_a / supply.rated_a,
        evenness=evenness(np.concatenate(lights), lit),
        runs=runs,
        residual=residual_a / total_a if total_a else 0.0,
        imbalance=imbalance_w / power_w if power_w else 0.0,
        steps=part.network.steps,
    )


def _lights(arrangement: Arrangement, part: _Part) -> list[Floats]:
    """Light of every bulb over the brightest of the installation, run by run."""
    leds = np.concatenate([run.leds_lit for run in arrangement.runs])
    led_a = np.concatenate([part.network.group_a[stretch] for stretch in part.stretches])
    every = relative_light(raw_light(leds, led_a, arrangement.light_exponent))
    return np.split(every, np.cumsum([run.bulbs for run in arrangement.runs])[:-1])


def _run_solution(
    arrangement: Arrangement,
    case: Conditions,
    part: _Part,
    index: int,
    bus: tuple[float, float],
    shine: Floats,
) -> RunSolution:
    run, network, here = arrangement.runs[index], part.network, part.stretches[index]
    bus_v, bus_minus_v = bus
    current_a = float(network.chain_a[part.chains][index])
    resistor_v = current_a * case.resistor_ohm(run)
    feeder_v = current_a * case.cable_ohm(run.feeder)
    feed_v = float(network.feed_v[part.chains][index])
    minus_v = bus_minus_v + feeder_v + network.minus_rise_v[here]
    lit = run.lit_groups > 0
    led_a = network.group_a[here]
    return RunSolution(
        name=run.name,
        current_a=current_a,
        resistor_v=resistor_v,
        resistor_w=resistor_v * current_a,
        after_resistor_v=bus_v - resistor_v,
        feed_v=feed_v,
        plus_v=bus_minus_v + feeder_v + feed_v - network.plus_drop_v[here],
        minus_v=minus_v,
        bulb_v=network.bulb_v[here],
        bulb_a=np.where(lit, network.bulb_a[here], 0.0),
        led_a=led_a,
        lit=lit,
        light=shine,
        evenness=evenness(shine, lit),
        seen_evenness=seen_evenness(evenness(shine, lit)),
        mean_led_a=float(np.average(led_a, weights=run.leds_lit)) if lit.any() else 0.0,
    )
