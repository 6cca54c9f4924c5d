"""Many candidates solved in one go, each under every condition asked for."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property

import numpy as np

from guidegen.calc.light import raw_light
from guidegen.calc.network import Bulbs, Network, Rails, Sources, solve_network
from guidegen.choose.pool import Field, Ints, Pool, Trials, ranges
from guidegen.circuit.arrangement import Floats
from guidegen.circuit.conditions import NOMINAL, Conditions
from guidegen.circuit.netlist import join_bulbs, join_rails
from guidegen.project.schema import Run

#: Mismatch of a bulb's current accepted in the search, as a share of its run's; the few arrangements that
#: are shown in the end are solved again to the last digit.
TOLERANCE = 1e-8
#: A source of so many volts behind a resistance to match drives a known current.
STIFF_V = 1e6


@dataclass(frozen=True, eq=False)
class Chains:
    """Runs of many candidates, K of them, candidate by candidate.

    `trial` (K,): the candidate's number, 0 to n - 1; `shape` (K,): run of
    the pool; `feeder_ohm` (K,): one conductor at nominal values, `feeder`
    (K,): its size's index; `first` (n,): first run of a candidate.
    """

    pool: Pool
    count: int
    trial: Ints
    shape: Ints
    feeder_ohm: Floats
    feeder: Ints
    first: Ints

    @cached_property
    def at(self) -> Ints:
        """Every bulb (N,) in the pool."""
        return ranges(self.pool.starts[self.shape], self.pool.sizes[self.shape])

    @cached_property
    def at_shape(self) -> Ints:
        """The run of every bulb (N,) in the pool."""
        return np.repeat(self.shape, self.pool.sizes[self.shape])

    @cached_property
    def starts(self) -> Ints:
        """First bulb of every run (K,)."""
        sizes = self.pool.sizes[self.shape]
        return np.cumsum(sizes) - sizes


def chains_of(field: Field, trials: Trials) -> Chains:
    """The runs of these candidates."""
    counts = field.counts[trials.layout]
    parts = ranges(field.first[trials.layout], counts)
    feeder = np.repeat(trials.feeder, counts)
    shape = field.part_shape[np.repeat(trials.extra, counts), parts]
    per_m = np.array([wire.ohm_per_m for wire in field.conductors])
    return _laid_out(
        field.pool,
        shape,
        np.repeat(np.arange(len(trials)), counts),
        field.part_feeder_m[parts] * per_m[feeder],
        feeder,
    )


def _laid_out(pool: Pool, shape: Ints, trial: Ints, feeder_ohm: Floats, feeder: Ints) -> Chains:
    first = np.flatnonzero(np.diff(trial, prepend=-1))
    return Chains(
        pool=pool,
        count=len(first),
        trial=trial,
        shape=shape,
        feeder_ohm=feeder_ohm,
        feeder=feeder,
        first=first,
    )


def solve_chains(
    field: Field, chains: Chains, ohm: Floats, cases: tuple[Conditions, ...], start_a: Floats
) -> Network:
    """Every candidate with these resistors (K,) under every condition, the conditions end to end.

    `start_a` (N,): currents of one LED to start from.
    """
    bulbs, rails = zip(*(_wired(field.pool, chains, case) for case in cases), strict=True)
    tolerance, supply = resistor_tolerance(), field.supply.supply
    share = {"low": 1 - tolerance, "nominal": 1.0, "high": 1 + tolerance}
    feeder_factor = [np.array([case.wire_factor(wire) for wire in field.conductors]) for case in cases]
    source_v = [supply.voltage_v if case.source_v is None else case.source_v for case in cases]
    common_ohm = [supply.output_ohm + 2 * case.cable_ohm(supply.lead) for case in cases]
    sources = Sources(
        series_ohm=np.concatenate(
            [
                ohm * share[case.resistor] + 2 * chains.feeder_ohm * factor[chains.feeder]
                for case, factor in zip(cases, feeder_factor, strict=True)
            ]
        ),
        installation=np.concatenate([chains.trial + k * chains.count for k in range(len(cases))]),
        source_v=np.repeat(source_v, chains.count),
        common_ohm=np.repeat(common_ohm, chains.count),
    )
    start = np.tile(start_a, len(cases))
    return solve_network(join_bulbs(list(bulbs)), join_rails(list(rails)), sources, start, TOLERANCE)


def _wired(pool: Pool, chains: Chains, case: Conditions) -> tuple[Bulbs, Rails]:
    return (
        pool.bulbs(chains.at, chains.at_shape, case),
        pool.rails(chains.at, chains.at_shape, chains.starts, case),
    )


def resistor_tolerance() -> float:
    """Tolerance of the resistors proposed, a ratio: the default of the project file."""
    return float(Run.model_fields["resistor_tolerance"].default)


def aimed_start_a(field: Field, chains: Chains) -> Floats:
    """LED currents (N,) to start a solution from: those aimed at."""
    return field.pool.aim_a[chains.at_shape]


@dataclass(frozen=True, eq=False)
class DrivenRuns:
    """Every run of the pool with a known current through it, at nominal values.

    `chain_a` and `feed_v` (S,): current and volts at its feed point; `dim`
    and `bright` (S,): light of its dimmest lit and its brightest bulb, in no
    unit; `led_a` and `light` (T,): current of one LED and light of every
    bulb, infinite where it is not lit.
    """

    chain_a: Floats
    feed_v: Floats
    dim: Floats
    bright: Floats
    led_a: Floats
    light: Floats


def driven(field: Field, share: float, start_a: Floats | None = None) -> DrivenRuns:
    """Every run of the pool at this share of the LED current aimed at.

    `start_a` (T,): currents of one LED to start the solution from.
    """
    pool = field.pool
    every = np.arange(len(pool.plans))
    chains = _laid_out(pool, every, every, np.zeros(len(every)), np.zeros(len(every), dtype=np.intp))
    bulbs, rails = _wired(pool, chains, NOMINAL)
    wanted_a = share * pool.aim_a * pool.lit_groups
    sources = Sources(
        STIFF_V / np.maximum(wanted_a, 1e-9), every, np.full(len(every), STIFF_V), np.zeros(len(every))
    )
    start_a = share * aimed_start_a(field, chains) if start_a is None else start_a
    network = solve_network(bulbs, rails, sources, start_a, TOLERANCE)
    led_a, light = network.group_a, raw_light(pool.leds, network.group_a, field.supply.light_exponent)
    return DrivenRuns(
        network.chain_a,
        network.feed_v,
        *dim_and_bright(field, chains, led_a, chains.starts),
        led_a,
        np.where(pool.leds > 0, light, np.inf),
    )


def dim_and_bright(field: Field, chains: Chains, led_a: Floats, starts: Ints) -> tuple[Floats, Floats]:
    """Light of the dimmest lit and of the brightest bulb of every stretch that begins at `starts`."""
    leds = field.pool.leds[chains.at]
    light = raw_light(leds, led_a, field.supply.light_exponent)
    dim = np.minimum.reduceat(np.where(leds > 0, light, np.inf), starts)
    return dim, np.maximum.reduceat(light, starts)
