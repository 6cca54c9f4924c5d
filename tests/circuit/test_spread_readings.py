"""Expected readings: ranges that correct builds keep to, by draws that had no part in making them."""

from __future__ import annotations

from dataclasses import replace
from functools import cache

import numpy as np
import pytest

from guidegen.calc.led import Curve
from guidegen.circuit.arrangement import Arrangement, LedEstimate
from guidegen.circuit.draws import SEED, Draws, draw_builds
from guidegen.circuit.expected import ExpectedReading
from guidegen.circuit.meter import Meter
from guidegen.circuit.solve import solve
from guidegen.circuit.spread import Spread, expected_spread
from guidegen.tables.limits import MeterRange
from tests.circuit.test_solve import installation, make_run

CURVE = Curve(2.8, 3e-3, 0.09, 10.0)
#: As after a bench fit: volts well known; slope and resistance not, and bound to one another.
FITTED = LedEstimate(
    CURVE, "bench", 2.77, 2.83, ("voltage",),
    voltage_u_v=0.015, slope_u_v=0.02, resistance_u_ohm=5.0,
    covariance=((2.25e-4, 0.0, 0.0), (0.0, 4e-4, -0.08), (0.0, -0.08, 25.0)),
)  # fmt: skip


def build(feed: str = "one end") -> Arrangement:
    run = make_run(bulbs=12, feed=feed)
    run = replace(run, led=FITTED, resistor=replace(run.resistor, tolerance=0.05))
    made = installation(run)
    return replace(made, supply=replace(made.supply, tolerance=0.05), coldest_c=5.0, warmest_c=30.0)


@cache
def made() -> tuple[Arrangement, Spread, Draws]:
    """An arrangement, what is expected of it, and builds drawn with another seed."""
    arrangement = build()
    nominal = solve(arrangement)
    return (
        arrangement,
        expected_spread(arrangement, nominal),
        draw_builds(arrangement, nominal, seed=SEED + 7),
    )


def shown(spread: Spread, draws: Draws) -> np.ndarray:
    """What meters show (S, K) of the drawn volts, each off by itself within its accuracy."""
    columns = [true(reading, draws) for reading in volts(spread)]
    values, meter = np.column_stack(columns), Meter().volts
    limits = meter.share * values + meter.digits * meter.step
    return values + limits * np.random.default_rng(9).uniform(-1, 1, values.shape)


def volts(spread: Spread) -> list[ExpectedReading]:
    return [reading for reading in spread.readings if reading.quantity == "volts"]


def true(reading: ExpectedReading, draws: Draws) -> np.ndarray:
    assert reading.point is not None
    run = draws.runs[0]
    values = {
        "supply": draws.terminal_v,
        "resistor volts": run.resistor_v,
        "after resistor": run.after_resistor_v,
        "bulb": run.bulb_v[:, (reading.bulb or 1) - 1],
    }
    return np.asarray(values[reading.point.kind])


def test_a_faultless_build_is_called_out_in_at_most_5_of_100() -> None:
    _, spread, draws = made()
    values = shown(spread, draws)
    out = [
        [reading.verdict(value) == "out of range" for reading, value in zip(volts(spread), row, strict=True)]
        for row in values
    ]
    assert np.any(out, axis=1).mean() <= 0.05


def test_each_reading_is_in_its_own_range_in_at_least_95_of_100() -> None:
    _, spread, draws = made()
    values = shown(spread, draws)
    for k, reading in enumerate(volts(spread)):
        inside = (values[:, k] >= reading.low) & (values[:, k] <= reading.high)
        # 2,000 draws: 0.95 less three standard errors of 0.0049.
        assert inside.mean() >= 0.935


def test_between_its_own_range_and_the_joint_one_a_reading_is_borderline() -> None:
    _, spread, _ = made()
    for reading in spread.readings:
        assert reading.out_low < reading.low < reading.expected < reading.high < reading.out_high
        assert reading.verdict((reading.high + reading.out_high) / 2) == "borderline"
        assert reading.verdict((reading.low + reading.out_low) / 2) == "borderline"
        assert reading.verdict(reading.expected) == "in range"
        assert reading.verdict(1.001 * reading.out_high) == "out of range"
        assert reading.verdict(0.999 * reading.out_low) == "out of range"


def test_the_correlation_of_a_fitted_curve_narrows_the_current() -> None:
    # Slope and resistance bound to one another with r = -0.8: a steeper curve has less resistance.
    arrangement = build()
    apart = replace(FITTED, covariance=())
    loose = replace(arrangement, runs=(replace(arrangement.runs[0], led=apart),))
    bound_u, loose_u = (
        draw_builds(each, solve(each)).runs[0].current_a.std() for each in (arrangement, loose)
    )
    assert bound_u < loose_u


def test_where_it_is_linear_the_draws_agree_with_linear_propagation() -> None:
    """Only the supply uncertain, by 1 %: u(I) is dI/dV times the half-width over the root of three."""
    sharp = LedEstimate(CURVE, "bench", 2.8, 2.8, ("voltage",))
    run = make_run(bulbs=40)  # enough bulbs for the spread of single LEDs to count for nothing
    wire = replace(run.conductor, low_factor=1.0, high_factor=1.0)
    run = replace(run, led=sharp, conductor=wire, resistor=replace(run.resistor, tolerance=0.0))
    arrangement = installation(run)
    arrangement = replace(
        arrangement, supply=replace(arrangement.supply, tolerance=0.01), coldest_c=20.0, warmest_c=20.0
    )
    nominal, volts = solve(arrangement), arrangement.supply.voltage_v
    more = solve(replace(arrangement, supply=replace(arrangement.supply, voltage_v=volts * 1.001)))
    slope = (more.runs[0].current_a - nominal.runs[0].current_a) / (0.001 * volts)
    expected_u = slope * 0.01 * volts / np.sqrt(3)
    drawn = draw_builds(arrangement, nominal).runs[0].current_a
    assert drawn.std() == pytest.approx(expected_u, rel=0.04)


def test_the_same_draws_every_time() -> None:
    arrangement, spread, _ = made()
    assert expected_spread(arrangement, solve(arrangement)).readings == spread.readings


def test_a_better_meter_narrows_every_range() -> None:
    arrangement, spread, _ = made()
    fine = Meter(volts=MeterRange(0.0005, 2, 0.001, "five and a half digits"))
    better = expected_spread(arrangement, solve(arrangement), meter=fine)
    for usual, fine_one in zip(volts(spread), volts(better), strict=True):
        assert fine_one.high - fine_one.low < usual.high - usual.low
        assert fine_one.expected == usual.expected


def test_more_burden_lowers_the_current_shown_in_line() -> None:
    arrangement, spread, _ = made()
    nominal = solve(arrangement)
    heavy = expected_spread(arrangement, nominal, meter=Meter(burden_ohm=5.0))
    (usual_a,) = (r.expected for r in spread.readings if r.quantity != "volts" and r.run == 0)
    (heavy_a,) = (r.expected for r in heavy.readings if r.quantity != "volts" and r.run == 0)
    assert heavy_a < usual_a < nominal.runs[0].current_a


def test_a_bulb_that_is_no_test_point_is_expected_when_asked_for() -> None:
    arrangement, spread, _ = made()
    nominal = solve(arrangement)
    more = expected_spread(arrangement, nominal, more_bulbs=((0, 5),))
    added = more.readings[-1]
    assert len(more.readings) == len(spread.readings) + 1
    assert (added.run, added.bulb, added.point) == (0, 5, None)
    assert added.expected == nominal.runs[0].bulb_v[4]
