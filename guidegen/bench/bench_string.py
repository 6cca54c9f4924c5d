"""One whole string on the bench: fed at one end through its tail, a resistor and perhaps a meter.

Many states of it (other curves, other source volts, other resistors) are
solved at once, each as an installation of its own.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import sqrt

import numpy as np
from numpy.typing import NDArray

from guidegen.calc.network import Bulbs, Network, Rails, Sources, solve_network
from guidegen.circuit.arrange import string_alone
from guidegen.circuit.arrangement import LedEstimate, RunPlan
from guidegen.circuit.conditions import Conditions
from guidegen.circuit.netlist import rails_of
from guidegen.project.schema import LightString

Floats = NDArray[np.float64]


@dataclass(frozen=True, eq=False)
class BenchString:
    """The string as the solver sees it.

    `run`: the whole string as one run fed at one end; `rails`: its wires at
    the bench's temperature; `wire_u`: standard uncertainty of their
    resistance, as a share.
    """

    run: RunPlan
    rails: Rails
    wire_u: float

    @property
    def lit_groups(self) -> float:
        """Groups that light in the whole string."""
        return float(self.run.lit_groups.sum())


@dataclass(frozen=True, eq=False)
class States:
    """States of the string; every array is (K,).

    `slope_v`, `saturation_a`, `resistance_ohm`: the LED curve; `source_v`:
    volts of the source, loaded; `series_ohm`: resistor and meter in line;
    `wire_factor`: resistance of the wires over that at the bench.
    """

    slope_v: Floats
    saturation_a: Floats
    resistance_ohm: Floats
    source_v: Floats
    series_ohm: Floats
    wire_factor: Floats


def bench_string(kind: LightString, led: LedEstimate) -> BenchString:
    """The whole string of this kind; `led` only fills the plan, states bring their own curves."""
    run = string_alone(kind, led, 0.0)
    rails = rails_of(run, Conditions(air_degc=kind.bench_temperature))
    half_width = (run.conductor.high_factor - run.conductor.low_factor) / 2
    return BenchString(run, rails, half_width / sqrt(3))


def solve_states(string: BenchString, states: States, start_a: Floats | None = None) -> Network:
    """Solve every state; chains of the network are the states in order.

    `start_a` (K n,): group currents to start from.  Raises NotConvergedError.
    """
    count, bulbs = len(states.source_v), string.run.bulbs
    run = string.run

    def each(values: Floats) -> Floats:
        return np.repeat(values, bulbs)

    def wires(conductance_s: Floats) -> Floats:
        return np.outer(1 / states.wire_factor, conductance_s).ravel()

    rails, full = string.rails, np.ones(count * bulbs)
    return solve_network(
        Bulbs(
            groups=np.tile(run.lit_groups, count),
            series=full * run.leds_in_series,
            group_ohm=full * run.group_ohm,
            slope_v=each(states.slope_v),
            saturation_a=each(states.saturation_a),
            resistance_ohm=each(states.resistance_ohm),
        ),
        Rails(
            wires(rails.plus_link_s),
            wires(rails.minus_link_s),
            wires(rails.plus_feed_s),
            wires(rails.minus_feed_s),
            np.arange(count) * bulbs,
        ),
        Sources(
            series_ohm=states.series_ohm,
            installation=np.arange(count),
            source_v=states.source_v,
            common_ohm=np.zeros(count),
        ),
        start_a,
    )
