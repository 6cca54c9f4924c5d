"""An arrangement as the solver wants it: conductances of the rails, bulbs between them, sources."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from guidegen.calc.network import Bulbs, Rails, Sources
from guidegen.circuit.arrangement import Arrangement, Floats, RunPlan
from guidegen.circuit.conditions import NOMINAL, Conditions

#: Resistance that stands for a wire of no length, ohm: under a centimetre of any wire.
LEAST_WIRE_OHM = 1e-6


def rails_of(run: RunPlan, case: Conditions = NOMINAL) -> Rails:
    """Conductances of one run's rails, fed as the run says."""
    extra_factor = 1.0 if run.extra is None else case.wire_factor(run.extra.conductor)
    return scaled_rails(feeding(run), np.array(case.wire_factor(run.conductor)), np.array(extra_factor))


@dataclass(frozen=True, eq=False)
class Feeding:
    """Nominal conductances of one run's wires, siemens, each (n,).

    `link_s` bulb to bulb, the same in + and -; `own_*_s` from the feed point
    through the lead-in, `extra_*_s` through the extra wire.
    """

    link_s: Floats
    own_plus_s: Floats
    own_minus_s: Floats
    extra_plus_s: Floats
    extra_minus_s: Floats


def feeding(run: RunPlan) -> Feeding:
    """Which bulbs of a run its lead-in and its extra wire reach, and through what conductance."""
    segment_s = 1 / np.maximum(run.segment_m * run.conductor.ohm_per_m, LEAST_WIRE_OHM)
    extra_s = 1 / max(0.0 if run.extra is None else run.extra.ohm, LEAST_WIRE_OHM)
    first, middle, last = 0, run.fed_bulb - 1, run.bulbs - 1
    own = {"middle": ((), ()), "opposite ends": ((first,), ())}.get(run.feed, ((first,), (first,)))
    extra = {
        "middle": ((middle,), (middle,)),
        "both ends": ((last,), (last,)),
        "opposite ends": ((), (last,)),
    }.get(run.feed, ((), ()))
    return Feeding(
        np.append(segment_s[1:], 0.0),
        *(_at(run.bulbs, places, float(segment_s[0])) for places in own),
        *(_at(run.bulbs, places, extra_s) for places in extra),
    )


def scaled_rails(feed: Feeding, own_factor: Floats, extra_factor: Floats) -> Rails:
    """Rails whose resistances are these factors times the nominal ones.

    Factors are scalars, or (S, 1) for S draws at once; the chains of the
    draws then lie end to end.
    """
    link_s = feed.link_s / own_factor
    plus_s = feed.own_plus_s / own_factor + feed.extra_plus_s / extra_factor
    minus_s = feed.own_minus_s / own_factor + feed.extra_minus_s / extra_factor
    starts = np.arange(0, link_s.size, len(feed.link_s))
    return Rails(link_s.ravel(), link_s.ravel().copy(), plus_s.ravel(), minus_s.ravel(), starts)


def _at(count: int, places: tuple[int, ...], value: float) -> Floats:
    array = np.zeros(count)
    array[list(places)] = value
    return array


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


def netlist(arrangement: Arrangement, case: Conditions) -> tuple[Bulbs, Rails, Sources]:
    """The arrangement as the solver wants it: one chain a run, one installation."""
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


def join_installations(parts: list[tuple[Bulbs, Rails, Sources]]) -> tuple[Bulbs, Rails, Sources]:
    """Several installations side by side, each with its own supply."""
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
