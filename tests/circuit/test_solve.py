"""The solved arrangement against an independent solution of the whole circuit.

The independent method knows nothing of rails or bands: it builds a list of
resistors between named nodes, reduces it by nodal analysis with dense
matrices, and lets `scipy.optimize.root` find the currents at which
Kirchhoff's equations and the diode law agree.
"""

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from numpy.testing import assert_allclose
from scipy.optimize import root

from guidegen.calc.led import Curve
from guidegen.circuit.arrangement import (
    Arrangement,
    Cable,
    Conductor,
    Fuse,
    LedEstimate,
    LedLimit,
    Piece,
    Resistor,
    RunPlan,
    SupplyPlan,
)
from guidegen.circuit.solve import solve

#: Typical white, from memory: 2.80 V at 3 mA, 0.09 V per e-fold, 10 ohm.
WHITE = Curve(2.8, 3e-3, 0.09, 10.0)
FEEDS = ("one end", "middle", "both ends", "opposite ends")


def conductor(ohm_per_m: float) -> Conductor:
    return Conductor(ohm_per_m, 1e-7, False, False, 1.0, 0.95, 1.1)


def make_run(
    name: str = "a",
    bulbs: int = 6,
    feed: str = "one end",
    groups: int = 3,
    series: int = 1,
    group_ohm: float = 0.0,
    curve: Curve = WHITE,
    resistor_ohm: float = 10.0,
    wire_ohm_per_m: float = 0.3,
    spacing_m: float = 0.25,
    tails: dict[int, float] | None = None,
    dark: frozenset[int] = frozenset(),
    feeder: tuple[float, float] | None = None,
    extra: tuple[float, float] = (2.0, 0.04),
) -> RunPlan:
    segment_m = np.full(bulbs, spacing_m)
    for index, tail_m in (tails or {}).items():
        segment_m[index] = tail_m
    lit = np.array([0.0 if index in dark else float(groups) for index in range(bulbs)])
    return RunPlan(
        name=name,
        string="drop",
        feed=feed,  # type: ignore[arg-type]
        pieces=(Piece(1, 1, bulbs, bulbs),),
        lit_groups=lit,
        segment_m=segment_m,
        position_m=np.cumsum(segment_m),
        conductor=conductor(wire_ohm_per_m),
        groups=groups,
        leds_in_series=series,
        group_ohm=group_ohm,
        led=LedEstimate(curve, "given", curve.voltage_v, curve.voltage_v),
        led_limit=LedLimit(0.02, "stated"),
        resistor=Resistor(resistor_ohm, 0.05, 5.0, "cement"),
        feeder=None if feeder is None else Cable(feeder[0], conductor(feeder[1])),
        extra=None if feed == "one end" else Cable(extra[0], conductor(extra[1])),
        cuttable=True,
    )


def installation(
    *runs: RunPlan, volts: float = 5.1, output_ohm: float = 0.1, lead_m: float = 0.0
) -> Arrangement:
    lead = Cable(lead_m, conductor(0.035)) if lead_m else None
    return Arrangement(
        SupplyPlan(volts, 0.05, 2.4, output_ohm, 2.4, lead),
        Fuse(1.0, "IEC"),
        runs,
        coldest_c=-5,
        warmest_c=35,
    )


# --- the independent method -------------------------------------------------------------------------------


def edges_of(arrangement: Arrangement) -> list[tuple[object, object, float]]:
    """Every resistor of the circuit: node, node, ohm.  As drawn in DESIGN: feeds named by their wires."""
    supply = arrangement.supply
    edges: list[tuple[object, object, float]] = [("ideal", "terminal", supply.output_ohm)]
    lead_ohm = supply.lead.ohm if supply.lead else 0.0
    edges += [("terminal", "bus+", lead_ohm), ("bus-", "zero", lead_ohm)]
    for r, run in enumerate(arrangement.runs):
        feeder_ohm = run.feeder.ohm if run.feeder else 0.0
        edges += [("bus+", (r, "R"), run.resistor.ohm), ((r, "R"), (r, "F+"), feeder_ohm)]
        edges += [((r, "F-"), "bus-", feeder_ohm)]
        wire = run.segment_m * run.conductor.ohm_per_m
        last, middle = run.bulbs, (run.bulbs + 1) // 2
        for k in range(1, last):
            edges += [((r, "P", k), (r, "P", k + 1), wire[k]), ((r, "M", k), (r, "M", k + 1), wire[k])]
        extra_ohm = run.extra.ohm if run.extra else 0.0
        if run.feed == "one end":
            edges += [((r, "F+"), (r, "P", 1), wire[0]), ((r, "F-"), (r, "M", 1), wire[0])]
        elif run.feed == "middle":
            edges += [((r, "F+"), (r, "P", middle), extra_ohm), ((r, "F-"), (r, "M", middle), extra_ohm)]
        elif run.feed == "both ends":
            edges += [((r, "F+"), (r, "P", 1), wire[0]), ((r, "F-"), (r, "M", 1), wire[0])]
            edges += [((r, "F+"), (r, "P", last), extra_ohm), ((r, "F-"), (r, "M", last), extra_ohm)]
        else:
            edges += [((r, "F+"), (r, "P", 1), wire[0]), ((r, "F-"), (r, "M", last), extra_ohm)]
    return edges


def merged(edges: list[tuple[object, object, float]]) -> dict[object, object]:
    """Name of the node that each node is one with, through wires of no resistance."""
    parent: dict[object, object] = {}

    def find(node: object) -> object:
        parent.setdefault(node, node)
        return node if parent[node] == node else find(parent[node])

    for a, b, ohm in edges:
        if ohm == 0:
            parent[find(a)] = find(b)
        else:
            find(a), find(b)
    return {node: find(node) for node in parent}


def independent_bulb_currents(arrangement: Arrangement) -> list[np.ndarray]:
    edges = edges_of(arrangement)
    name = merged(edges)
    fixed = {name["ideal"]: arrangement.supply.voltage_v, name["zero"]: 0.0}
    free = sorted({n for n in name.values() if n not in fixed}, key=repr)
    number = {node: index for index, node in enumerate(free)}
    matrix, right = np.zeros((len(free), len(free))), np.zeros(len(free))
    for a, b, ohm in ((name[a], name[b], ohm) for a, b, ohm in edges if ohm > 0):
        for here, there in ((a, b), (b, a)):
            if here in number:
                matrix[number[here], number[here]] += 1 / ohm
                if there in number:
                    matrix[number[here], number[there]] -= 1 / ohm
                else:
                    right[number[here]] += fixed[there] / ohm
    lit = [
        (r, k) for r, run in enumerate(arrangement.runs) for k in range(run.bulbs) if run.lit_groups[k] > 0
    ]
    incidence = np.zeros((len(free), len(lit)))
    for column, (r, k) in enumerate(lit):
        incidence[number[name[(r, "P", k + 1)]], column] = 1.0
        incidence[number[name[(r, "M", k + 1)]], column] = -1.0
    open_v = incidence.T @ np.linalg.solve(matrix, right)
    inside_ohm = incidence.T @ np.linalg.solve(matrix, incidence)

    runs = [arrangement.runs[r] for r, _ in lit]
    groups = np.array([arrangement.runs[r].lit_groups[k] for r, k in lit])
    slope = np.array([run.leds_in_series * run.led.curve.slope_v for run in runs])
    ohm = np.array([run.leds_in_series * run.led.curve.resistance_ohm + run.group_ohm for run in runs])
    log_is = np.array([run.led.curve.log_saturation for run in runs])

    def breach(log_a: np.ndarray) -> np.ndarray:
        group_a = np.exp(log_a)
        needed_v = slope * (np.logaddexp(log_a, log_is) - log_is) + group_a * ohm
        return needed_v - (open_v - inside_ohm @ (groups * group_a))

    start = np.full(len(lit), np.log(1e-6))
    found = root(breach, start, method="lm", options={"xtol": 1e-14, "ftol": 1e-14, "maxiter": 20_000})
    assert np.max(np.abs(found.fun)) < 1e-9, found
    currents = [np.zeros(run.bulbs) for run in arrangement.runs]
    for (r, k), value in zip(lit, groups * np.exp(found.x), strict=True):
        currents[r][k] = value
    return currents


# --- what hypothesis makes --------------------------------------------------------------------------------


@st.composite
def some_run(draw: st.DrawFn, name: str) -> RunPlan:
    bulbs = draw(st.integers(1, 9))
    series = draw(st.sampled_from([1, 1, 1, 3]))
    curve = Curve(
        draw(st.floats(1.7, 3.0)),
        draw(st.floats(1e-3, 5e-3)),
        draw(st.floats(0.04, 0.15)),
        draw(st.floats(0, 20)),
    )
    dark = draw(st.sampled_from([frozenset(), frozenset(range(1, bulbs, 2))]))
    tails = draw(st.dictionaries(st.integers(0, bulbs - 1), st.floats(0.05, 1.0), max_size=2))
    return make_run(
        name,
        bulbs,
        draw(st.sampled_from(FEEDS)),
        draw(st.integers(1, 5)),
        series,
        draw(st.sampled_from([0.0, 22.0, 150.0])),
        curve,
        draw(st.sampled_from([0.0, 4.7, 10.0, 47.0])) or draw(st.just(2.2)),
        draw(st.floats(0.02, 1.0)),
        0.25,
        tails,
        dark,
        draw(st.sampled_from([None, (2.0, 0.035), (7.0, 0.1)])),
        (draw(st.floats(0.5, 8.0)), draw(st.floats(0.02, 0.3))),
    )


@st.composite
def some_installation(draw: st.DrawFn) -> Arrangement:
    runs = [draw(some_run(f"run {index}")) for index in range(draw(st.integers(1, 3)))]
    return installation(
        *runs,
        volts=draw(st.sampled_from([3.2, 5.1, 9.0, 12.0])),
        output_ohm=draw(st.sampled_from([0.0, 0.1, 0.5])),
        lead_m=draw(st.sampled_from([0.0, 1.0])),
    )


@settings(max_examples=220, deadline=None)
@given(some_installation())
def test_every_bulb_current_agrees_with_the_independent_solution(arrangement: Arrangement) -> None:
    solution = solve(arrangement)
    for solved, expected in zip(solution.runs, independent_bulb_currents(arrangement), strict=True):
        scale = max(expected.max(), 1e-9)
        assert_allclose(solved.bulb_a, expected, rtol=0, atol=1e-7 * scale)
    assert abs(solution.residual) <= 1e-9
    assert abs(solution.imbalance) <= 1e-9
    assert solution.steps <= 25


@pytest.mark.parametrize("feed", FEEDS)
def test_the_volts_of_each_run_add_up_to_the_source(feed: str) -> None:
    arrangement = installation(make_run(feed=feed, feeder=(2.0, 0.035)), make_run("b", 9), lead_m=1.0)
    solution = solve(arrangement)
    for plan, run in zip(arrangement.runs, solution.runs, strict=True):
        feeder_ohm = plan.feeder.ohm if plan.feeder else 0.0
        left = solution.source_v - solution.supply_a * (0.1 + 2 * 0.035)
        right = run.resistor_v + 2 * feeder_ohm * run.current_a + run.feed_v
        assert_allclose(left, right, rtol=1e-12)
        assert_allclose(run.after_resistor_v, right - run.resistor_v, rtol=1e-12)
        assert_allclose(run.bulb_v, run.plus_v - run.minus_v, rtol=1e-12)
        assert_allclose(run.current_a, run.bulb_a.sum(), rtol=1e-12)


@settings(max_examples=60, deadline=None)
@given(st.integers(1, 40), st.floats(0.01, 1.0), st.floats(3.0, 6.0))
def test_fed_at_one_end_volts_never_rise_away_from_the_feed(
    bulbs: int, ohm_per_m: float, volts: float
) -> None:
    run = solve(installation(make_run(bulbs=bulbs, wire_ohm_per_m=ohm_per_m), volts=volts)).runs[0]
    assert np.all(np.diff(run.bulb_v) <= 1e-15)


@settings(max_examples=60, deadline=None)
@given(st.integers(2, 40), st.floats(0.01, 1.0))
def test_opposite_ends_are_mirror_symmetric_when_the_segments_are(bulbs: int, ohm_per_m: float) -> None:
    # The extra wire has the resistance of one segment, as the lead-in has.
    run = make_run(bulbs=bulbs, feed="opposite ends", wire_ohm_per_m=ohm_per_m, extra=(0.25, ohm_per_m))
    solved = solve(installation(run)).runs[0]
    assert_allclose(solved.bulb_a, solved.bulb_a[::-1], rtol=1e-9)


def test_middle_feed_enters_at_half_the_bulbs_rounded_up() -> None:
    for bulbs, fed in ((1, 1), (2, 1), (7, 4), (24, 12)):
        run = make_run(bulbs=bulbs, feed="middle")
        assert run.fed_bulb == fed
        assert int(np.argmax(solve(installation(run)).runs[0].bulb_v)) + 1 == fed


def test_light_is_relative_to_the_brightest_bulb_of_the_installation() -> None:
    solution = solve(installation(make_run("a"), make_run("b", resistor_ohm=47.0)))
    assert max(run.light.max() for run in solution.runs) == 1.0
    dim, bright = sorted(run.light.max() for run in solution.runs)
    assert dim < bright
    everything = np.concatenate([run.light for run in solution.runs])
    assert_allclose(solution.evenness, everything.min() / everything.max(), rtol=1e-14)


def test_the_light_exponent_bends_light_but_not_currents() -> None:
    plain = installation(make_run(bulbs=12))
    bent = replace(plain, light_exponent=0.8)
    assert_allclose(solve(bent).runs[0].bulb_a, solve(plain).runs[0].bulb_a, rtol=0)
    assert_allclose(solve(bent).evenness, solve(plain).evenness ** 0.8, rtol=1e-12)


def test_dark_bulbs_count_neither_for_evenness_nor_for_the_mean() -> None:
    solved = solve(installation(make_run(bulbs=7, dark=frozenset({1, 3, 5})))).runs[0]
    assert list(solved.lit) == [True, False] * 3 + [True]
    assert_allclose(solved.mean_led_a, solved.led_a[solved.lit].mean(), rtol=1e-14)
    assert solved.evenness == pytest.approx(solved.led_a[6] / solved.led_a[0])
    assert np.all(solved.led_a[~solved.lit] == 0)


def test_power_is_no_load_volts_times_current() -> None:
    solution = solve(installation(make_run()))
    assert_allclose(solution.power_w, 5.1 * solution.supply_a, rtol=1e-15)
    assert_allclose(solution.load, solution.supply_a / 2.4, rtol=1e-15)
