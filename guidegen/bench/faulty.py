"""Faulty builds, many at once: every fault is an installation of its own, all solved in one go."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Any

import numpy as np
from numpy.typing import NDArray

from guidegen.bench.faults import Fault
from guidegen.calc.network import Bulbs, Rails, Sources, solve_network
from guidegen.circuit.arrangement import Arrangement, Floats, RunPlan
from guidegen.circuit.draws import Draws, RunDraws
from guidegen.circuit.netlist import (
    Feeding,
    bulbs_of,
    feeding,
    join_bulbs,
    join_installations,
    join_rails,
    scaled_rails,
)
from guidegen.circuit.solution import Solution

#: Mismatch of a bulb's current accepted: far below what a meter shows.
TOLERANCE = 1e-6
#: Conductance of a broken wire, siemens: keeps a dead stretch solvable.
BROKEN_S = 1e-9
_ONE = np.ones(())
#: Places through which all of a run's current flows.
_BEFORE = ("feeder", "ahead of resistor")


@dataclass(frozen=True, eq=False)
class _Run:
    """One run as built.

    `ahead_ohm`: ahead of the resistor, not in its volts; `at` (n,): where each
    stated bulb is among the real ones; `cut_off` (n,): bulbs with no volts;
    `unfed`: no volts behind the resistor either.
    """

    bulbs: Bulbs
    rails: Rails
    series_ohm: float
    ahead_ohm: float
    resistor_ohm: float
    at: NDArray[np.intp]
    cut_off: NDArray[np.bool_]
    unfed: bool = False


@dataclass(frozen=True, eq=False)
class _Build:
    """A whole build; with `open_lead` nothing gets from the supply to the runs."""

    runs: tuple[_Run, ...]
    source_v: float
    common_ohm: float
    open_lead: bool = False

    @property
    def fed_v(self) -> float:
        """No-load volts that the runs get."""
        return 0.0 if self.open_lead else self.source_v


def solve_faults(
    arrangements: Arrangement | tuple[Arrangement, ...],
    nominal: Solution,
    faults: tuple[Fault, ...],
    burden: tuple[int | None, float] | None = None,
) -> Draws:
    """What is true under each fault, as states in their order.

    `arrangements`: one for all faults, or one for each, alike but for their
    values; `nominal`: a solution near them, to start from; `burden`: a meter
    in line with a run (None: with all) and its ohms; a fault of the meter's
    burden adds to it.
    """
    many = (arrangements,) * len(faults) if isinstance(arrangements, Arrangement) else arrangements
    sound = {each: tuple(_sound(run) for run in each.runs) for each in dict.fromkeys(many)}
    pairs = zip(many, faults, strict=True)
    builds = [_with_burden(_build(each, sound[each], fault), fault, burden) for each, fault in pairs]
    network = solve_network(
        *join_installations([_netlist(build) for build in builds]),
        _starts(builds, nominal),
        TOLERANCE,
    )
    return _collect(builds, network, many[0].supply.output_ohm)


def _sound(run: RunPlan) -> _Run:
    feeder_ohm = 0.0 if run.feeder is None else 2 * run.feeder.ohm
    return _Run(
        bulbs=bulbs_of(run),
        rails=scaled_rails(feeding(run), _ONE, _ONE),
        series_ohm=run.resistor.ohm + feeder_ohm,
        ahead_ohm=0.0,
        resistor_ohm=run.resistor.ohm,
        at=np.arange(run.bulbs),
        cut_off=np.zeros(run.bulbs, dtype=bool),
    )


def _build(arrangement: Arrangement, sound: tuple[_Run, ...], fault: Fault) -> _Build:
    supply = arrangement.supply
    lead_ohm = 0.0 if supply.lead is None else 2 * supply.lead.ohm
    source_v = supply.voltage_v
    runs = list(sound)
    if fault.kind == "supply":
        source_v *= fault.amount
    elif fault.kind == "joint" and fault.place == "lead":
        lead_ohm += fault.amount
    elif fault.run is not None:
        runs[fault.run] = _faulty(arrangement.runs[fault.run], sound[fault.run], fault)
    open_lead = fault.kind == "open" and fault.place == "lead"
    return _Build(tuple(runs), source_v, supply.output_ohm + lead_ohm, open_lead)


def _faulty(plan: RunPlan, run: _Run, fault: Fault) -> _Run:
    if fault.kind in ("resistor value", "resistor decade"):
        change_ohm = fault.amount - run.resistor_ohm
        return replace(run, series_ohm=run.series_ohm + change_ohm, resistor_ohm=fault.amount)
    if fault.kind == "dead leds":
        return replace(run, bulbs=replace(run.bulbs, groups=run.bulbs.groups * (1 - fault.amount)))
    if fault.kind == "more bulbs":
        return _longer(plan, run, round(fault.amount))
    if fault.kind == "reversed":
        return _turned(plan, run, _piece_bulbs(plan, fault.piece))
    if fault.kind == "open":
        return _broken(plan, run, fault)
    return _more_ohms(plan, run, fault)


def _more_ohms(plan: RunPlan, run: _Run, fault: Fault) -> _Run:
    """Extra ohms in front of the run, or in one rail of it."""
    if fault.place == "ahead of resistor":
        return replace(run, series_ohm=run.series_ohm + fault.amount, ahead_ohm=fault.amount)
    if fault.place == "feeder":
        return replace(run, series_ohm=run.series_ohm + fault.amount)
    if fault.place == "behind bulb":
        name = f"{fault.rail}_link_s"
        return replace(run, rails=_weaker(run.rails, name, fault.bulb - 1, fault.amount))
    return replace(run, rails=_weaker_feed(feeding(plan), fault))


def _weaker(rails: Rails, name: str, index: int, ohm: float) -> Rails:
    values = getattr(rails, name).copy()
    values[index] /= 1 + values[index] * ohm
    changed: dict[str, Any] = {name: values}
    return replace(rails, **changed)


def _weaker_feed(feed: Feeding, fault: Fault) -> Rails:
    name = f"{'own' if fault.place == 'lead-in' else 'extra'}_{fault.rail}_s"
    values = getattr(feed, name)
    changed: dict[str, Any] = {name: values / (1 + values * fault.amount)}
    return scaled_rails(replace(feed, **changed), _ONE, _ONE)


def _longer(plan: RunPlan, run: _Run, more: int) -> _Run:
    """More bulbs behind the last one; whoever reads "the last bulb" reads the real last one."""
    longer = replace(
        plan,
        segment_m=np.append(plan.segment_m, np.full(more, plan.segment_m[-1])),
        lit_groups=np.append(plan.lit_groups, np.full(more, plan.lit_groups.max())),
    )
    at = run.at.copy()
    at[-1] += more
    fed_where = feeding(longer)
    if plan.feed == "middle":
        fed_where = _fed_at(fed_where, plan.fed_bulb - 1)
    return replace(run, bulbs=bulbs_of(longer), rails=scaled_rails(fed_where, _ONE, _ONE), at=at)


def _fed_at(feed: Feeding, bulb: int) -> Feeding:
    """The extra pair moved to another bulb."""
    moved = np.zeros_like(feed.extra_plus_s)
    moved[bulb] = feed.extra_plus_s.max()
    return replace(feed, extra_plus_s=moved, extra_minus_s=moved)


def _piece_bulbs(plan: RunPlan, piece: int) -> NDArray[np.bool_]:
    ends = np.cumsum([each.bulbs for each in plan.pieces])
    numbers = np.arange(plan.bulbs)
    inside: NDArray[np.bool_] = (numbers >= ends[piece] - plan.pieces[piece].bulbs) & (numbers < ends[piece])
    return inside


def _turned(plan: RunPlan, run: _Run, turned: NDArray[np.bool_]) -> _Run:
    """Bulbs fed the wrong way round: the groups that face that way light, of a one-way string none."""
    other = plan.groups - plan.lit_groups
    return replace(run, bulbs=replace(run.bulbs, groups=np.where(turned, other, run.bulbs.groups)))


def _darkened(run: _Run, dark: NDArray[np.bool_]) -> _Run:
    return replace(run, bulbs=replace(run.bulbs, groups=np.where(dark, 0.0, run.bulbs.groups)))


def _broken(plan: RunPlan, run: _Run, fault: Fault) -> _Run:
    """A broken wire: what it no longer reaches draws nothing and shows no volts."""
    feed = feeding(plan)
    plus_link_s, minus_link_s = _links_s(feed.link_s, fault, "plus"), _links_s(feed.link_s, fault, "minus")
    plus_feed_s = _feed_s(feed.own_plus_s, feed.extra_plus_s, fault, "plus")
    minus_feed_s = _feed_s(feed.own_minus_s, feed.extra_minus_s, fault, "minus")
    cut_off = ~(_reached(plus_link_s, plus_feed_s) & _reached(minus_link_s, minus_feed_s))
    rails = Rails(
        plus_link_s=_hardly_broken(plus_link_s),
        minus_link_s=_hardly_broken(minus_link_s),
        plus_feed_s=np.maximum(plus_feed_s, BROKEN_S * (plus_feed_s.max() == 0)),
        minus_feed_s=np.maximum(minus_feed_s, BROKEN_S * (minus_feed_s.max() == 0)),
        starts=run.rails.starts,
    )
    unfed = fault.place == "ahead of resistor"
    return replace(_darkened(run, cut_off), rails=rails, cut_off=cut_off, unfed=unfed)


def _links_s(link_s: Floats, fault: Fault, rail: str) -> Floats:
    """A rail's links with the broken one at nothing."""
    links = link_s.copy()
    if fault.place == "behind bulb" and fault.rail in (rail, "both"):
        links[fault.bulb - 1] = 0.0
    return links


def _hardly_broken(link_s: Floats) -> Floats:
    """Links that can be solved: a broken one keeps a trace; there is none behind the last bulb."""
    links = np.maximum(link_s, BROKEN_S)
    links[-1] = 0.0
    return links


def _feed_s(own_s: Floats, extra_s: Floats, fault: Fault, rail: str) -> Floats:
    """What feeds a rail once the fault has taken its wire away."""
    here = fault.rail in (rail, "both")
    own = 0.0 if here and fault.place in ("lead-in", *_BEFORE) else 1.0
    extra = 0.0 if here and fault.place in ("extra wire", *_BEFORE) else 1.0
    return own * own_s + extra * extra_s


def _reached(link_s: Floats, feed_s: Floats) -> NDArray[np.bool_]:
    """Which bulbs of a rail still hang on the feed point."""
    stretch = np.concatenate([[0], np.cumsum(link_s[:-1] == 0)])
    fed = np.unique(stretch[feed_s > 0])
    reached: NDArray[np.bool_] = np.isin(stretch, fed)
    return reached


def _with_burden(build: _Build, fault: Fault, burden: tuple[int | None, float] | None) -> _Build:
    """The build with a meter in line."""
    if burden is None:
        return build
    run, ohm = burden
    ohm += fault.amount if fault.kind == "meter burden" and fault.run is None else 0.0
    if run is None:
        return replace(build, common_ohm=build.common_ohm + ohm)
    runs = list(build.runs)
    runs[run] = replace(runs[run], series_ohm=runs[run].series_ohm + ohm, ahead_ohm=runs[run].ahead_ohm + ohm)
    return replace(build, runs=tuple(runs))


def _netlist(build: _Build) -> tuple[Bulbs, Rails, Sources]:
    return (
        join_bulbs([run.bulbs for run in build.runs]),
        join_rails([run.rails for run in build.runs]),
        Sources(
            series_ohm=np.array([run.series_ohm for run in build.runs]),
            installation=np.zeros(len(build.runs), dtype=np.intp),
            source_v=np.array([build.fed_v]),
            common_ohm=np.array([build.common_ohm]),
        ),
    )


def _starts(builds: list[_Build], nominal: Solution) -> Floats:
    """Nominal currents; bulbs that are dark there start as the mean, bulbs too many as the last one."""
    parts = []
    for build in builds:
        for run, solved in zip(build.runs, nominal.runs, strict=True):
            more = len(run.bulbs.groups) - len(solved.led_a)
            led_a = np.where(solved.lit, solved.led_a, solved.mean_led_a)
            parts.append(np.append(led_a, np.full(more, led_a[-1])))
    return np.concatenate(parts)


def _collect(builds: list[_Build], network: Any, output_ohm: float) -> Draws:
    count, runs = len(builds), len(builds[0].runs)
    chain_a = network.chain_a.reshape(count, runs)
    sizes = np.array([len(run.bulbs.groups) for build in builds for run in build.runs])
    starts = (np.cumsum(sizes) - sizes).reshape(count, runs)
    source_v = np.array([build.source_v for build in builds])
    fed_v = np.array([build.fed_v for build in builds])
    bus_v = fed_v - np.array([build.common_ohm for build in builds]) * network.total_a
    found = []
    for index in range(runs):
        parts = [build.runs[index] for build in builds]
        where = starts[:, index : index + 1] + np.array([part.at for part in parts])
        dark = np.array([part.cut_off for part in parts])
        current_a = chain_a[:, index]
        resistor_v = current_a * np.array([part.resistor_ohm for part in parts])
        ahead_v = current_a * np.array([part.ahead_ohm for part in parts])
        fed = np.array([not part.unfed for part in parts])
        found.append(
            RunDraws(
                current_a=current_a,
                resistor_v=resistor_v,
                after_resistor_v=np.where(fed, bus_v - resistor_v - ahead_v, 0.0),
                bulb_v=np.where(dark, 0.0, network.bulb_v[where]),
                led_a=network.group_a[where],
            )
        )
    return Draws(source_v - output_ohm * network.total_a, network.total_a, tuple(found))
