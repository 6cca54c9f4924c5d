"""Hold many candidates against the limits, in the worst case, and work out what they are worth.

The same limits as the safety rules', for all candidates at once: every
excess is a value over its limit, less 1.
"""

from __future__ import annotations

from dataclasses import dataclass, fields

import numpy as np

from guidegen.calc.fuse import ROUNDING as FUSE_ROUNDING
from guidegen.calc.fuse import must_open_multiple
from guidegen.calc.resistor import rating_at_w
from guidegen.calc.wire_limit import overload_limit_a
from guidegen.choose.circuits import (
    Chains,
    DrivenRuns,
    chains_of,
    dim_and_bright,
    resistor_tolerance,
    solve_chains,
)
from guidegen.choose.pool import Field, Ints, Trials
from guidegen.choose.resistors import Fitted, fit_resistors
from guidegen.circuit.arrangement import Floats
from guidegen.circuit.conditions import Conditions
from guidegen.circuit.margins import corners
from guidegen.parts.picks import LARGEST_FILM_W
from guidegen.safety.leds import GOAL_MET_FROM
from guidegen.safety.rule import ROUNDING
from guidegen.tables.fuses import RATINGS_A
from guidegen.tables.limits import FUSE_LOAD, SUPPLY_LOAD
from guidegen.tables.preferred import RESISTOR_RATINGS_W


@dataclass(frozen=True, eq=False)
class Excess:
    """By how much of its limit each of n candidates is over it (below 0: within); all (n,)."""

    led: Floats
    resistor: Floats
    supply: Floats
    wire: Floats

    @property
    def worst(self) -> Floats:
        """The largest of them."""
        worst: Floats = np.maximum.reduce([getattr(self, each.name) for each in fields(self)])
        return worst

    @property
    def within(self) -> np.ndarray[tuple[int], np.dtype[np.bool_]]:
        """Whether every limit is kept."""
        kept: np.ndarray[tuple[int], np.dtype[np.bool_]] = self.worst <= ROUNDING
        return kept


@dataclass(frozen=True, eq=False)
class Judged:
    """n candidates solved and judged.

    `evenness`; `led_share`: mean LED current of the least driven run over
    what is aimed at; `load`: nominal supply load; `parts_price`: of their
    resistors; `excess`; all (n,).  `ohm`, `rating_w` of every run,
    candidate by candidate (K,); `fuse_a` (n,); `light_low` (n,): dimmest bulb
    at its worst corner over the nominal brightest; NaN where not asked for.
    """

    chains: Chains
    evenness: Floats
    led_share: Floats
    load: Floats
    excess: Excess
    ohm: Floats
    rating_w: Floats
    fuse_a: Floats
    light_low: Floats


def judge_trials(field: Field, trials: Trials, at_aim: DrivenRuns, every_corner: bool = False) -> Judged:
    """Choose the resistors of these candidates, solve them at nominal and worst, hold them to the limits.

    `every_corner`: solve the corners of the least light as well, which no
    limit depends on.
    """
    chains = chains_of(field, trials)
    fitted = fit_resistors(field, chains, at_aim)
    at = corners(field.supply)
    cases = (*at.most, *at.least) if every_corner else at.most
    worst = _worst(field, chains, fitted, cases)
    dim, bright = dim_and_bright(field, chains, fitted.nominal.group_a, _first_bulbs(chains))
    dim = np.where(np.isfinite(dim), dim, 0.0)
    mean_a = fitted.nominal.chain_a / np.maximum(field.pool.lit_groups[chains.shape], 1.0)
    fuse_a = _fuses(field, worst.supply_a)
    resistor = _resistors(field, chains.trial, fitted.ohm, fitted.nominal.chain_a, worst.current_a, fuse_a)
    load = fitted.nominal.total_a / field.supply.supply.rated_a
    return Judged(
        chains=chains,
        evenness=dim / np.where(bright > 0, bright, 1.0),
        led_share=np.minimum.reduceat(mean_a / field.pool.aim_a[chains.shape], chains.first),
        load=load,
        excess=Excess(
            led=np.maximum.reduceat(worst.led_a / field.pool.limit_a[chains.shape], chains.first) - 1,
            resistor=np.maximum.reduceat(resistor.excess, chains.first),
            supply=_supply_excess(field, load, worst.supply_a),
            wire=_wire_excess(field, chains, fitted.ohm, fuse_a),
        ),
        ohm=fitted.ohm,
        rating_w=resistor.rating_w,
        fuse_a=fuse_a,
        light_low=worst.dim / np.where(bright > 0, bright, 1.0),
    )


def _first_bulbs(chains: Chains) -> np.ndarray[tuple[int], np.dtype[np.intp]]:
    first: np.ndarray[tuple[int], np.dtype[np.intp]] = chains.starts[chains.first]
    return first


@dataclass(frozen=True, eq=False)
class _Worst:
    """Largest LED current and current of every run (K,), of every supply (n,); least light `dim` (n,)."""

    led_a: Floats
    current_a: Floats
    supply_a: Floats
    dim: Floats


def _worst(field: Field, chains: Chains, fitted: Fitted, cases: tuple[Conditions, ...]) -> _Worst:
    solved = solve_chains(field, chains, fitted.ohm, cases, fitted.nominal.group_a)
    led_a = solved.group_a.reshape(len(cases), -1)
    brightest_a = np.maximum.reduceat(led_a[:2].max(axis=0), chains.starts)
    first = _first_bulbs(chains)
    dims = [dim_and_bright(field, chains, case_a, first)[0] for case_a in led_a[2:]]
    return _Worst(
        led_a=brightest_a,
        current_a=solved.chain_a.reshape(len(cases), -1)[:2].max(axis=0),
        supply_a=solved.total_a.reshape(len(cases), -1)[:2].max(axis=0),
        dim=np.minimum.reduce(dims) if dims else np.full(chains.count, np.nan),
    )


def _fuses(field: Field, worst_a: Floats) -> Floats:
    """The fuse of the file, or the smallest standard one that the worst current allows."""
    if field.supply.fuse.rating_a is not None:
        return np.full(len(worst_a), field.supply.fuse.rating_a)
    return _smallest_not_below(RATINGS_A, worst_a / FUSE_LOAD.value)


def _smallest_not_below(ratings: tuple[float, ...], needed: Floats) -> Floats:
    """Smallest rating not below the need; the largest where all are."""
    places = np.searchsorted(ratings, needed * (1 - FUSE_ROUNDING))
    return np.array(ratings)[np.minimum(places, len(ratings) - 1)]


@dataclass(frozen=True, eq=False)
class _Resistors:
    """Rating and excess of every resistor (K,)."""

    rating_w: Floats
    excess: Floats


def least_ratings_w(field: Field, chains: Chains, ohm: Floats, current_a: Floats) -> Floats:
    """Ratings (K,) of these resistors by their nominal currents alone: none gets a smaller one."""
    fuse_a = _fuses(field, np.add.reduceat(current_a, chains.first))
    return _resistors(field, chains.trial, ohm, current_a, current_a, fuse_a).rating_w


def _resistors(
    field: Field, trial: Ints, ohm: Floats, nominal_a: Floats, worst_a: Floats, fuse_a: Floats
) -> _Resistors:
    """Ratings for these resistors (K,) of these candidates, with the fuse of each (n,)."""
    supply, tolerance = field.supply.supply, resistor_tolerance()
    low_ohm, high_ohm = ohm * (1 - tolerance), ohm * (1 + tolerance)
    hot = Conditions(wire="high", air_degc=field.supply.warmest_c)
    path_ohm = supply.output_ohm + 2 * hot.cable_ohm(supply.lead) + high_ohm
    fault_a = np.minimum(_through(supply.lower_v, path_ohm), supply.limit_a)
    cleared = _opens_a(field, fuse_a)[trial] <= fault_a * (1 + FUSE_ROUNDING)
    running_w = nominal_a**2 * ohm
    worst_w = worst_a**2 * low_ohm
    short_w = np.where(low_ohm > 0, supply.upper_v**2 / np.where(low_ohm > 0, low_ohm, 1.0), 0.0)
    short_w = np.where(cleared, 0.0, short_w)
    load = field.project.goals.resistor_load
    rating_w = _smallest_not_below(
        RESISTOR_RATINGS_W, np.maximum.reduce([running_w / load, worst_w, short_w])
    )
    return _Resistors(rating_w, np.maximum(running_w, short_w) / _bears_w(field, rating_w) - 1)


def _bears_w(field: Field, rating_w: Floats) -> Floats:
    """What ratings are worth in the warmest air, the kind chosen by the rating."""
    bears = [
        rating_at_w(rating, field.supply.warmest_c, "film" if rating <= LARGEST_FILM_W else "cement")
        for rating in RESISTOR_RATINGS_W
    ]
    return np.array(bears)[np.searchsorted(RESISTOR_RATINGS_W, rating_w)]


def _opens_a(field: Field, fuse_a: Floats) -> Floats:
    return must_open_multiple(field.supply.fuse.standard) * fuse_a


def _through(voltage_v: float, ohm: Floats) -> Floats:
    return np.where(ohm > 0, voltage_v / np.where(ohm > 0, ohm, 1.0), np.inf)


def _supply_excess(field: Field, load: Floats, worst_a: Floats) -> Floats:
    supply, goals = field.supply.supply, field.project.goals
    limit = min(goals.supply_load, SUPPLY_LOAD.value)
    return np.maximum(load, worst_a / supply.rated_a / limit) - 1


def _wire_excess(field: Field, chains: Chains, ohm: Floats, fuse_a: Floats) -> Floats:
    """Largest lasting current over what the wire bears, over all sections of a candidate."""
    supply, pool = field.supply.supply, field.pool
    cold = Conditions(resistor="low", wire="low", air_degc=field.supply.coldest_c)
    before_ohm = np.full(len(ohm), supply.output_ohm + 2 * cold.cable_ohm(supply.lead))
    behind_ohm = before_ohm + ohm * (1 - resistor_tolerance())
    factor = np.array([cold.wire_factor(wire) for wire in field.conductors])
    far_ohm = behind_ohm + 2 * chains.feeder_ohm * factor[chains.feeder]
    opens_a = _opens_a(field, fuse_a)

    def over(ahead_ohm: Floats, limit_a: Floats) -> Floats:
        lasting_a = np.minimum(opens_a[chains.trial], supply.limit_a)
        return np.minimum(lasting_a, _through(supply.upper_v, ahead_ohm)) / overload_limit_a(1.0) / limit_a

    string_a = np.array([plan.conductor.limit_a for plan in pool.kinds])[pool.kind[chains.shape]]
    extra_a = np.array([np.inf if wire is None else wire.limit_a for wire in pool.extra_wires])
    feeder_a = np.array([wire.limit_a for wire in field.conductors])[chains.feeder]
    feeder_a = np.where(chains.feeder_ohm > 0, feeder_a, np.inf)
    worst = np.maximum.reduce(
        [
            over(behind_ohm, feeder_a),
            over(far_ohm, extra_a[pool.extra_wire[chains.shape]]),
            over(far_ohm, string_a),
        ]
    )
    if supply.lead is not None:
        lead_a = np.full(len(ohm), supply.lead.conductor.limit_a)
        worst = np.maximum(worst, over(np.full(len(ohm), supply.output_ohm), lead_a))
    return np.maximum.reduceat(worst, chains.first) - 1


def meets(field: Field, judged: Judged) -> np.ndarray[tuple[int], np.dtype[np.bool_]]:
    """Which candidates meet the goals (n,): evenness, LED current, supply load."""
    goals = field.project.goals
    met: np.ndarray[tuple[int], np.dtype[np.bool_]] = (
        (judged.evenness >= goals.evenness)
        & (field.dim * judged.led_share >= GOAL_MET_FROM)
        & (judged.load <= goals.supply_load)
    )
    return met
