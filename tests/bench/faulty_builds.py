"""Faulty builds for the diagnosis to find, made without any of its code.

A build is a list of resistors and LEDs: every part drawn at random within
its stated tolerance, the fault put in by hand, the circuit solved, and the
readings taken with a meter that is off by up to 0.5 % and 10 mV at each of
them.  Every bulb has LEDs of its own.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field

import numpy as np

from guidegen.bench.spots import Spot, Taken
from guidegen.calc.network import Bulbs, Network, Rails, Sources, solve_network
from guidegen.circuit.arrangement import Arrangement, RunPlan
from guidegen.tables.leds import LED_SPREAD_V, VOLTS_PER_K
from guidegen.tables.limits import MeterRange

#: The meter of the issue: 0.5 % and 10 mV; amperes as usual.
VOLTS = MeterRange(0.005, 1, 0.01, "0.5 % + 10 mV")
#: Resistance that stands for none, and for a broken wire.
NONE_OHM, BROKEN_OHM = 1e-6, 1e12


@dataclass
class Built:
    """One run as built: resistances of every piece of wire, of both rails, and what hangs between them."""

    plan: RunPlan
    resistor_ohm: float
    ahead_ohm: float
    feeder_ohm: float
    link_ohm: dict[str, np.ndarray]
    lead_in_ohm: dict[str, float]
    extra_ohm: dict[str, float]
    groups: np.ndarray
    voltage_v: np.ndarray
    slope_v: float
    resistance_ohm: float
    dead: np.ndarray = field(default_factory=lambda: np.zeros(0, dtype=bool))
    unfed: bool = False


@dataclass
class House:
    """The whole installation as built."""

    source_v: float
    output_ohm: float
    lead_ohm: float
    runs: list[Built]
    burden_ohm: float = 1.5


def sound_house(arrangement: Arrangement, random: np.random.Generator) -> House:
    """A build without fault, every part somewhere within its tolerance."""
    supply = arrangement.supply
    air_k = random.uniform(arrangement.coldest_c, arrangement.warmest_c) - 20
    curves = {}
    for run in arrangement.runs:
        moves = random.multivariate_normal(np.zeros(3), run.led.spread)
        curves.setdefault(run.string, moves)
    lead_ohm = 0.0 if supply.lead is None else 2 * supply.lead.ohm * (1 + 0.0039 * air_k)
    return House(
        source_v=supply.voltage_v * (1 + random.uniform(-1, 1) * supply.tolerance),
        output_ohm=supply.output_ohm,
        lead_ohm=lead_ohm * random.uniform(0.95, 1.05),
        runs=[_sound_run(run, curves[run.string], air_k, random) for run in arrangement.runs],
    )


def _sound_run(run: RunPlan, move: np.ndarray, air_k: float, random: np.random.Generator) -> Built:
    wire = run.conductor
    factor = random.uniform(wire.low_factor, wire.high_factor) * (1 + wire.per_k * air_k)
    segment_ohm = np.maximum(run.segment_m * wire.ohm_per_m * factor, NONE_OHM)
    extra_ohm = NONE_OHM
    if run.extra is not None:
        other = run.extra.conductor
        extra_ohm = run.extra.ohm * random.uniform(other.low_factor, other.high_factor) * (1 + 0.0039 * air_k)
    leds = np.maximum(run.lit_groups * run.leds_in_series, 1)
    own_v = random.normal(0, LED_SPREAD_V.value / 2 / np.sqrt(leds))
    feeder_ohm = 0.0 if run.feeder is None else 2 * run.feeder.ohm * (1 + 0.0039 * air_k)
    return Built(
        plan=run,
        resistor_ohm=run.resistor.ohm * (1 + random.uniform(-1, 1) * run.resistor.tolerance),
        ahead_ohm=0.0,
        feeder_ohm=feeder_ohm,
        link_ohm={rail: segment_ohm[1:].copy() for rail in ("plus", "minus")},
        lead_in_ohm=dict.fromkeys(("plus", "minus"), float(segment_ohm[0])),
        extra_ohm=dict.fromkeys(("plus", "minus"), float(extra_ohm)),
        groups=run.lit_groups.copy(),
        voltage_v=run.led.curve.voltage_v + move[0] + own_v + VOLTS_PER_K.typical * air_k,
        slope_v=float(run.led.curve.slope_v * np.exp(move[1] / run.led.curve.slope_v)),
        resistance_ohm=float(max(run.led.curve.resistance_ohm + move[2], 0.0)),
    )


def _feeds(run: Built) -> dict[str, np.ndarray]:
    """Conductance from the feed point to every bulb, by rail, as DESIGN section 3 feeds the four."""
    count, feed = len(run.groups), run.plan.feed
    found = {}
    for rail in ("plus", "minus"):
        to = np.zeros(count)
        if feed in ("one end", "both ends") or (feed == "opposite ends" and rail == "plus"):
            to[0] += 1 / run.lead_in_ohm[rail]
        if feed == "both ends" or (feed == "opposite ends" and rail == "minus"):
            to[-1] += 1 / run.extra_ohm[rail]
        if feed == "middle":
            to[-(-run.plan.bulbs // 2) - 1] += 1 / run.extra_ohm[rail]
        found[rail] = to
    return found


def solved(house: House) -> Network:
    """The circuit solved."""
    parts = [_run_arrays(run) for run in house.runs]
    sizes = [len(run.groups) for run in house.runs]
    bulbs = Bulbs(*(np.concatenate([part[0][k] for part in parts]) for k in range(6)))
    rails = Rails(
        *(np.concatenate([part[1][k] for part in parts]) for k in range(4)), np.cumsum([0, *sizes[:-1]])
    )
    series = [run.resistor_ohm + run.ahead_ohm + run.feeder_ohm for run in house.runs]
    sources = Sources(
        np.array(series),
        np.zeros(len(series), dtype=np.intp),
        np.array([house.source_v]),
        np.array([house.output_ohm + house.lead_ohm]),
    )
    return solve_network(bulbs, rails, sources, tolerance=1e-9)


def _run_arrays(run: Built) -> tuple[list[np.ndarray], list[np.ndarray]]:
    ones = np.ones(len(run.groups))
    junction_v = run.voltage_v - run.plan.led.curve.current_a * run.resistance_ohm
    saturation_a = run.plan.led.curve.current_a / np.expm1(junction_v / run.slope_v)
    groups = np.where(run.dead, 0.0, run.groups) if len(run.dead) else run.groups
    series = ones * run.plan.leds_in_series
    bulbs = [groups, series, ones * run.plan.group_ohm]
    bulbs += [ones * run.slope_v, saturation_a, ones * run.resistance_ohm]
    feeds = _feeds(run)
    rails = [np.append(1 / run.link_ohm[rail], 0.0) for rail in ("plus", "minus")]
    return bulbs, [*rails, feeds["plus"], feeds["minus"]]


def true_value(house: House, network: Network, spot: Spot) -> float:
    """What is truly there; the last bulb is the real last one."""
    bus_v = house.source_v - (house.output_ohm + house.lead_ohm) * network.total_a[0]
    if spot.run is None:
        no_load_v = house.source_v - house.output_ohm * network.total_a[0]
        return float(no_load_v if spot.kind == "supply" else network.total_a[0])
    run, current_a = house.runs[spot.run], network.chain_a[spot.run]
    if spot.kind == "current":
        return float(current_a)
    if spot.kind == "resistor volts":
        return float(current_a * run.resistor_ohm)
    if spot.kind == "after resistor":
        return 0.0 if run.unfed else float(bus_v - current_a * (run.resistor_ohm + run.ahead_ohm))
    bulb = (spot.bulb or 1) - 1
    if spot.bulb == run.plan.bulbs:
        bulb = len(run.groups) - 1
    if len(run.dead) and run.dead[bulb]:
        return 0.0
    before = sum(len(other.groups) for other in house.runs[: spot.run])
    return float(network.bulb_v[before + bulb])


def usual_spots(arrangement: Arrangement) -> tuple[Spot, ...]:
    """Of each run: the resistor's volts, behind it, and the first, middle and last bulb."""
    found = []
    for index, run in enumerate(arrangement.runs):
        found += [Spot("resistor volts", index), Spot("after resistor", index)]
        found += [Spot("bulb", index, bulb) for bulb in sorted({1, -(-run.bulbs // 2), run.bulbs})]
    return tuple(found)


def readings(
    house: House, spots: tuple[Spot, ...], random: np.random.Generator, amperes: MeterRange
) -> tuple[Taken, ...]:
    """What the meter shows at these spots; currents with the meter in line with that run."""
    network, found = solved(house), []
    for spot in spots:
        scale, value = VOLTS, 0.0
        if spot.kind == "current":
            scale = amperes
            value = true_value(house, _in_line(house, spot.run), spot)
        else:
            value = true_value(house, network, spot)
        limit = scale.share * abs(value) + scale.digits * scale.step
        found.append(Taken(spot, max(0.0, value + random.uniform(-1, 1) * limit)))
    return tuple(found)


def _in_line(house: House, run: int | None) -> Network:
    assert run is not None
    house.runs[run].ahead_ohm += house.burden_ohm
    network = solved(house)
    house.runs[run].ahead_ohm -= house.burden_ohm
    return network


Change = Callable[[House, np.random.Generator], "Truth"]


@dataclass(frozen=True)
class Truth:
    """What was put into a build: kind of fault, run, and where."""

    kind: str
    run: int | None = None
    place: str | None = None
    bulb: int = 0
    piece: int = 0
    ohm: float = 0.0


E12 = (1.0, 1.2, 1.5, 1.8, 2.2, 2.7, 3.3, 3.9, 4.7, 5.6, 6.8, 8.2)


def _some_run(house: House, random: np.random.Generator) -> tuple[int, Built]:
    index = int(random.integers(len(house.runs)))
    return index, house.runs[index]


def neighbour_value(house: House, random: np.random.Generator) -> Truth:
    """The next value of the series, up or down."""
    index, run = _some_run(house, random)
    nominal = run.plan.resistor.ohm
    decade = 10 ** np.floor(np.log10(nominal) + 1e-9)
    at = int(np.argmin(np.abs(np.array(E12) - nominal / decade)))
    step = int(random.choice([-1, 1]))
    other = E12[(at + step) % 12] * decade * (10.0 ** ((at + step) // 12))
    run.resistor_ohm *= other / nominal
    return Truth("resistor value", index, ohm=float(other))


def wrong_band(house: House, random: np.random.Generator) -> Truth:
    """Ten times too much, or a tenth."""
    index, run = _some_run(house, random)
    factor = float(random.choice([0.1, 10.0]))
    run.resistor_ohm *= factor
    return Truth("resistor decade", index, ohm=run.plan.resistor.ohm * factor)


def wrong_supply(house: House, random: np.random.Generator) -> Truth:
    """8 to 30 % off its label, up or down."""
    house.source_v *= 1 + float(random.choice([-1, 1])) * random.uniform(0.08, 0.3)
    return Truth("supply")


def reversed_piece(house: House, random: np.random.Generator) -> Truth:
    """One string joined the wrong way round: dark, but its wires still carry."""
    index, run = _some_run(house, random)
    piece = int(random.integers(len(run.plan.pieces)))
    ends = np.cumsum([each.bulbs for each in run.plan.pieces])
    run.groups[ends[piece] - run.plan.pieces[piece].bulbs : ends[piece]] = 0.0
    return Truth("reversed", index, piece=piece)


def broken(house: House, random: np.random.Generator) -> Truth:
    """Both wires, or one, broken between two bulbs."""
    index, run = _some_run(house, random)
    behind = int(random.integers(1, run.plan.bulbs))
    rails = [("plus", "minus"), ("plus",), ("minus",)][int(random.integers(3))]
    if run.plan.feed == "both ends":
        rails = ("plus", "minus")  # one wire broken puts nothing out: it is fed from both sides
    feeds, dark = _feeds(run), np.zeros(run.plan.bulbs, dtype=bool)
    for rail in rails:
        run.link_ohm[rail][behind - 1] = BROKEN_OHM
        for side in (slice(None, behind), slice(behind, None)):
            if not np.any(feeds[rail][side] > 0):
                dark[side] = True
    run.dead = dark
    return Truth("open", index, place="behind bulb", bulb=behind)


def bad_joint(house: House, random: np.random.Generator) -> Truth:
    """2 to 30 ohm in one of the joints there are."""
    index, run = _some_run(house, random)
    ohm = float(np.exp(random.uniform(np.log(2), np.log(30))))
    places = ["ahead of resistor", "feeder", *(f"behind {bulb}" for bulb in run.plan.joins)]
    if run.plan.feed != "middle":
        places.append("lead-in")
    if run.plan.feed != "one end":
        places.append("extra wire")
    place = str(random.choice(places))
    rail = str(random.choice(["plus", "minus"]))
    if place == "ahead of resistor":
        run.ahead_ohm += ohm
    elif place == "feeder":
        run.feeder_ohm += ohm
    elif place == "lead-in":
        run.lead_in_ohm["plus" if run.plan.feed == "opposite ends" else rail] += ohm
    elif place == "extra wire":
        run.extra_ohm["minus" if run.plan.feed == "opposite ends" else rail] += ohm
    else:
        bulb = int(place.split()[1])
        run.link_ohm[rail][bulb - 1] += ohm
        return Truth("joint", index, place="behind bulb", bulb=bulb)
    return Truth("joint", index, place=place)


def dead_leds(house: House, random: np.random.Generator) -> Truth:
    """Each LED group of a run dead with one chance, 15 to 70 %, wherever it sits."""
    index, run = _some_run(house, random)
    share = random.uniform(0.15, 0.7)
    run.groups = random.binomial(run.groups.astype(int), 1 - share).astype(float)
    return Truth("dead leds", index)


def more_burden(house: House, random: np.random.Generator) -> Truth:
    """4 to 40 ohm more in the meter than allowed for; it only shows in line."""
    house.burden_ohm += float(np.exp(random.uniform(np.log(4), np.log(40))))
    return Truth("meter burden")


def left_in_line(house: House, random: np.random.Generator) -> Truth:
    """The meter left in line, on a low range, while volts were read with another."""
    index, run = _some_run(house, random)
    run.ahead_ohm += float(np.exp(random.uniform(np.log(3), np.log(20))))
    return Truth("meter burden", index)


def more_bulbs(house: House, random: np.random.Generator) -> Truth:
    """A fifth more bulbs than stated, up to twice as many."""
    index, run = _some_run(house, random)
    more = int(random.integers(max(3, run.plan.bulbs // 5), run.plan.bulbs + 1))
    step_ohm = run.link_ohm["plus"][-1] if len(run.link_ohm["plus"]) else run.lead_in_ohm["plus"]
    for rail in ("plus", "minus"):
        run.link_ohm[rail] = np.append(run.link_ohm[rail], np.full(more, step_ohm))
    run.groups = np.append(run.groups, np.full(more, run.plan.lit_groups.max()))
    run.voltage_v = np.append(run.voltage_v, random.choice(run.voltage_v, more))
    return Truth("more bulbs", index)


#: Eight classes of faults; what the resistor and the break can be are shown apart.
FAULTS: dict[str, Change] = {
    "resistor, next value": neighbour_value,
    "resistor, band x10": wrong_band,
    "supply off": wrong_supply,
    "string reversed": reversed_piece,
    "open from bulb n on": broken,
    "joint of extra ohms": bad_joint,
    "part of the LEDs dead": dead_leds,
    "meter burden": more_burden,
    "meter left in line": left_in_line,
    "more bulbs than stated": more_bulbs,
}
