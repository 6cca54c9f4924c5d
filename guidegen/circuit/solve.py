"""Solve an arrangement: volts and current at every bulb, all runs and the supply together."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from guidegen.calc.light import evenness, raw_light, relative_light, seen_evenness
from guidegen.calc.network import Network, kirchhoff_residual_a, power_imbalance_w, solve_network
from guidegen.circuit.arrangement import Arrangement, Floats
from guidegen.circuit.conditions import NOMINAL, Conditions
from guidegen.circuit.netlist import join_installations, netlist
from guidegen.circuit.solution import RunSolution, Solution


def solve(
    arrangement: Arrangement, conditions: Conditions = NOMINAL, near: Solution | None = None
) -> Solution:
    """Solve one arrangement under the given conditions; `near` as in `solve_each`.

    Raises NotConvergedError when no solution is found.
    """
    return solve_each(arrangement, (conditions,), near)[0]


def solve_each(
    arrangement: Arrangement, cases: tuple[Conditions, ...], near: Solution | None = None
) -> tuple[Solution, ...]:
    """Solve the arrangement under several conditions in one go, faster from a solution that is `near`."""
    bulbs, rails, sources = join_installations([netlist(arrangement, case) for case in cases])
    start_a = None if near is None else np.tile(np.concatenate([run.led_a for run in near.runs]), len(cases))
    network = solve_network(bulbs, rails, sources, start_a)
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
