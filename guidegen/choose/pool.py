"""All runs that layouts are made of, each once, as arrays from which many circuits are put together."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, fields, replace
from itertools import chain

import numpy as np
from numpy.typing import NDArray

from guidegen.calc.network import Bulbs, Rails
from guidegen.choose.aims import led_goal_a
from guidegen.choose.layouts import Layout, Part
from guidegen.circuit.arrange import plan_run, take_bulbs
from guidegen.circuit.arrangement import (
    Arrangement,
    Cable,
    Conductor,
    Feed,
    Floats,
    LedEstimate,
    LedLimit,
    RunPlan,
)
from guidegen.circuit.conditions import Conditions
from guidegen.circuit.conductors import cable_conductor
from guidegen.circuit.netlist import LEAST_WIRE_OHM, Feeding, feeding
from guidegen.parts.cuts import run_cuts
from guidegen.parts.joints import run_joints
from guidegen.project.schema import Project, Run, StringWire, WirePiece
from guidegen.tables.prices import CHOICE_MM2

Ints = NDArray[np.intp]

#: What makes two runs the same circuit: kind, first bulb of its string, bulbs, feed, extra wire in m and mm2.
ShapeKey = tuple[str, int, int, Feed, float, float]
_BareKey = tuple[str, int, int, Feed]


def wire_piece(length_m: float, area_mm2: float) -> WirePiece | None:
    """Copper wire of a size; None where there is no length."""
    if length_m <= 0:
        return None
    return WirePiece.model_construct(length=length_m, wire=StringWire.model_construct(area=area_mm2 / 1e6))


def size_conductor(area_mm2: float) -> Conductor:
    """One conductor of copper wire of a size."""
    piece = wire_piece(1.0, area_mm2)
    assert piece is not None
    return cable_conductor(piece)


@dataclass(frozen=True, eq=False)
class Pool:
    """Runs, S of them, whose bulbs (T in all) lie end to end; resistors and feeders are open.

    `starts`, `sizes` (S,): first bulb and bulbs of a run; `aim_a`, `limit_a`
    (S,): mean current aimed at and largest one, of one LED; `lit_groups`
    (S,): lit groups of the run; `least_step` (S,): 0 where no resistor is
    needed, else 1; `extra_m`, `core_m` (S,).
    `kinds`: one run of every kind of string, `kind` (S,) its index; likewise
    `extra_wires` and `extra_wire`.  `leds`, `groups`, `series`, `group_ohm`
    (T,): as of a bulb; `feeds` (T,): its wires at nominal values.
    """

    plans: tuple[RunPlan, ...]
    kinds: tuple[RunPlan, ...]
    kind: Ints
    extra_wires: tuple[Conductor | None, ...]
    extra_wire: Ints
    starts: Ints
    sizes: Ints
    aim_a: Floats
    limit_a: Floats
    lit_groups: Floats
    least_step: Ints
    extra_m: Floats
    core_m: Floats
    leds: Floats
    groups: Floats
    series: Floats
    group_ohm: Floats
    feeds: Feeding

    def bulbs(self, at: Ints, shape: Ints, case: Conditions) -> Bulbs:
        """What hangs between the rails at these bulbs (of these runs) under a condition."""
        curves = [case.led_curve(plan.led) for plan in self.kinds]
        kind = self.kind[shape]
        return Bulbs(
            self.groups[at],
            self.series[at],
            self.group_ohm[at],
            np.array([curve.slope_v for curve in curves])[kind],
            np.array([curve.saturation_a for curve in curves])[kind],
            np.array([curve.resistance_ohm for curve in curves])[kind],
        )

    def rails(self, at: Ints, shape: Ints, starts: Ints, case: Conditions) -> Rails:
        """The rails at these bulbs (of these runs) under a condition."""
        own = np.array([case.wire_factor(plan.conductor) for plan in self.kinds])[self.kind[shape]]
        factors = [1.0 if wire is None else case.wire_factor(wire) for wire in self.extra_wires]
        extra = np.array(factors)[self.extra_wire[shape]]
        feeds = self.feeds
        link_s = feeds.link_s[at] / own
        return Rails(
            link_s,
            link_s,
            feeds.own_plus_s[at] / own + feeds.extra_plus_s[at] / extra,
            feeds.own_minus_s[at] / own + feeds.extra_minus_s[at] / extra,
            starts,
        )


def shape_key(part: Part, string_bulbs: int, extra_mm2: float) -> ShapeKey:
    """What tells one run's circuit from another's."""
    size = extra_mm2 if part.route.extra_m > 0 else 0.0
    return part.string, part.used % string_bulbs, part.bulbs, part.feed, part.route.extra_m, size


def make_pool(
    project: Project,
    leds: Mapping[str, LedEstimate],
    limits: Mapping[str, LedLimit],
    keys: Iterable[ShapeKey],
    dim: float = 1.0,
) -> Pool:
    """The runs with these keys; `dim`: LED current aimed at over the usual aim."""
    plans, feeds = _plans(project, leds, limits, keys)
    sizes = np.array([plan.bulbs for plan in plans], dtype=np.intp)
    kinds = [project.strings[plan.string] for plan in plans]
    aims = [
        dim * led_goal_a(project, kind, plan.led_limit.current_a)
        for plan, kind in zip(plans, kinds, strict=True)
    ]
    kind_of = {plan.string: plan for plan in reversed(plans)}
    extras = [None if plan.extra is None else plan.extra.conductor for plan in plans]
    extra_wires = tuple(dict.fromkeys(extras))
    single = np.array([plan.feed == "opposite ends" for plan in plans])
    extra_m = np.array([0.0 if plan.extra is None else plan.extra.length_m for plan in plans])
    return Pool(
        plans=plans,
        kinds=tuple(kind_of.values()),
        kind=np.array([list(kind_of).index(plan.string) for plan in plans], dtype=np.intp),
        extra_wires=extra_wires,
        extra_wire=np.array([extra_wires.index(each) for each in extras], dtype=np.intp),
        starts=np.cumsum(sizes) - sizes,
        sizes=sizes,
        aim_a=np.array(aims),
        limit_a=np.array([plan.led_limit.current_a for plan in plans]),
        lit_groups=np.array([plan.lit_groups.sum() for plan in plans]),
        least_step=np.array([0 if kind.group_resistor > 0 else 1 for kind in kinds], dtype=np.intp),
        extra_m=extra_m,
        core_m=np.where(single, 1, 2) * extra_m,
        leds=np.concatenate([plan.leds_lit for plan in plans]),
        groups=np.concatenate([plan.lit_groups for plan in plans]),
        series=np.repeat([float(plan.leds_in_series) for plan in plans], sizes),
        group_ohm=np.repeat([plan.group_ohm for plan in plans], sizes),
        feeds=feeds,
    )


def _plans(
    project: Project,
    leds: Mapping[str, LedEstimate],
    limits: Mapping[str, LedLimit],
    keys: Iterable[ShapeKey],
) -> tuple[tuple[RunPlan, ...], Feeding]:
    """The runs with these keys, and all their wires; what differs by the extra wire alone is made once."""
    known: dict[_BareKey, tuple[RunPlan, Feeding]] = {}
    conductors: dict[float, Conductor] = {}
    plans, fed = [], []
    for string, first, bulbs, feed, extra_m, size in keys:
        key = string, first, bulbs, feed
        if key not in known:
            plan = _bare_plan(project, leds, limits, key)
            known[key] = plan, feeding(plan)
        bare, wires = known[key]
        fed.append(wires)
        if extra_m > 0 and size not in conductors:
            conductors[size] = size_conductor(size)
        plans.append(replace(bare, extra=Cable(extra_m, conductors[size])) if extra_m > 0 else bare)
    return tuple(plans), _feeds(plans, fed)


def _bare_plan(
    project: Project, leds: Mapping[str, LedEstimate], limits: Mapping[str, LedLimit], key: _BareKey
) -> RunPlan:
    name, first, bulbs, feed = key
    kind = project.strings[name]
    run = Run.model_construct(bulbs=bulbs, name=name, string=name, feed=feed)
    pieces = tuple(take_bulbs(kind.bulbs, first, bulbs))
    return plan_run(run, kind, leds[name], limits[name], pieces, project.goals.series)


def _feeds(plans: list[RunPlan], bare: list[Feeding]) -> Feeding:
    """The wires of these runs end to end; `bare`: those of each before its extra wire was known."""
    extra_ohm = np.array([0.0 if plan.extra is None else plan.extra.ohm for plan in plans])
    extra_s = np.repeat(1 / np.maximum(extra_ohm, LEAST_WIRE_OHM), [plan.bulbs for plan in plans])
    link_s, own_plus_s, own_minus_s, plus_s, minus_s = (
        np.concatenate([getattr(each, each_field.name) for each in bare]) for each_field in fields(Feeding)
    )
    extras = (np.where(each > 0, extra_s, 0.0) for each in (plus_s, minus_s))
    return Feeding(link_s, own_plus_s, own_minus_s, *extras)


@dataclass(frozen=True, eq=False)
class Trials:
    """Layouts with sizes of wire, n of them, each a candidate.

    `layout`, `feeder`, `extra` (n,): indexes of the layout and of the sizes
    (`CHOICE_MM2`).
    """

    layout: Ints
    feeder: Ints
    extra: Ints

    def some(self, which: NDArray[np.generic]) -> Trials:
        """These of them."""
        return Trials(self.layout[which], self.feeder[which], self.extra[which])

    def __len__(self) -> int:
        return len(self.layout)


@dataclass(frozen=True, eq=False)
class Field:
    """Everything that the search works on.

    `supply` is the arrangement without runs: supply, fuse and air;
    `part_shape` (sizes, P): run of the pool of every part with every size of
    extra wire; `part_feeder_m`, `part_joints`, `part_cuts` (P,); `first`, `counts` (layouts,): parts of a
    layout; `sizes_mm2` and `conductors` of the wires that may be chosen;
    `dim`: LED current aimed at over the usual aim.
    """

    project: Project
    supply: Arrangement
    layouts: tuple[Layout, ...]
    pool: Pool
    part_shape: Ints
    part_feeder_m: Floats
    part_joints: Floats
    part_cuts: Floats
    first: Ints
    counts: Ints
    sizes_mm2: tuple[float, ...]
    conductors: tuple[Conductor, ...]
    dim: float

    def all_trials(self) -> Trials:
        """Every layout with every size of wire that makes a difference, in a fixed order."""
        sizes = len(self.sizes_mm2)
        layout, feeder, extra = (
            each.ravel() for each in np.indices((len(self.layouts), sizes, sizes), dtype=np.intp)
        )
        has_feeder = np.add.reduceat(self.part_feeder_m, self.first) > 0
        has_extra = np.add.reduceat(self.pool.extra_m[self.part_shape[0]], self.first) > 0
        differs = ((feeder == 0) | has_feeder[layout]) & ((extra == 0) | has_extra[layout])
        return Trials(layout[differs], feeder[differs], extra[differs])


def make_field(
    project: Project,
    supply: Arrangement,
    found: tuple[Layout, ...],
    leds: Mapping[str, LedEstimate],
    limits: Mapping[str, LedLimit],
    sizes_mm2: tuple[float, ...],
    dim: float = 1.0,
) -> Field:
    """The layouts with everything that is worked out once for all of them."""
    parts, part = _each_once(found)
    index: dict[ShapeKey, int] = {}
    rows = []
    for size in sizes_mm2:
        keys = [shape_key(each, project.strings[each.string].bulbs, size) for each in parts]
        rows.append([index.setdefault(key, len(index)) for key in keys])
    counts = np.array([len(layout) for layout in found], dtype=np.intp)
    pool = make_pool(project, leds, limits, index, dim)
    feeder_m = np.array([each.route.feeder_m for each in parts])
    joined, cut = _work_counts(pool.plans, rows[0], feeder_m)
    return Field(
        project=project,
        supply=supply,
        layouts=found,
        pool=pool,
        part_shape=np.array(rows, dtype=np.intp)[:, part],
        part_feeder_m=feeder_m[part],
        part_joints=joined[part],
        part_cuts=cut[part],
        first=np.cumsum(counts) - counts,
        counts=counts,
        sizes_mm2=sizes_mm2,
        conductors=tuple(size_conductor(size) for size in sizes_mm2),
        dim=dim,
    )


def _each_once(found: tuple[Layout, ...]) -> tuple[list[Part], Ints]:
    """The parts that layouts share, each once, and the index of every layout's parts, end to end (P,)."""
    index: dict[int, int] = {}
    once: list[Part] = []
    places = []
    for part in chain.from_iterable(found):
        # By identity: comparing thousands of parts would take longer than what is saved.
        place = index.setdefault(id(part), len(once))
        if place == len(once):
            once.append(part)
        places.append(place)
    return once, np.array(places, dtype=np.intp)


def _work_counts(plans: tuple[RunPlan, ...], shapes: list[int], feeder_m: Floats) -> tuple[Floats, Floats]:
    """Soldered joints of one conductor, and cuts, of every part (P,)."""
    some = Cable(1.0, size_conductor(CHOICE_MM2[0]))
    known: dict[tuple[int, bool], tuple[int, int]] = {}
    for shape, length_m in zip(shapes, feeder_m, strict=True):
        key = (shape, bool(length_m > 0))
        if key not in known:
            plan = replace(plans[shape], feeder=some if key[1] else None)
            joined = sum(len(joint.poles) for joint in run_joints(plan, 0))
            known[key] = (joined, len(run_cuts(plan, 0)))
    counts = [known[shape, bool(length_m > 0)] for shape, length_m in zip(shapes, feeder_m, strict=True)]
    joints, cuts = np.array(counts, dtype=float).T
    return joints, cuts


def ranges(firsts: Ints, counts: Ints) -> Ints:
    """first, first + 1, ... for every pair, one after the other."""
    ends = np.cumsum(counts)
    return np.repeat(firsts - (ends - counts), counts) + np.arange(ends[-1] if len(ends) else 0)
