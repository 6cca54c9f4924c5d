"""The diode with series resistance, both ways.

R: read in a page that quotes the source; C: recomputed; M: from memory.
"""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.optimize import brentq

from guidegen.calc import led
from guidegen.calc.led import (
    Curve,
    diode_current_a,
    forward_current,
    forward_voltage,
    group_current_a,
    group_voltage_v,
)

WHITE = Curve(2.80, 3e-3, 0.09, 10.0)
# k/q, CODATA 2018 (exact).
VOLTS_PER_KELVIN = 1.380649e-23 / 1.602176634e-19

curves = st.builds(
    lambda junction, current, slope, ohm: Curve(junction + current * ohm, current, slope, ohm),
    st.floats(0.5, 15),
    st.floats(1e-4, 0.1),
    st.floats(0.03, 0.3),
    st.floats(0, 500),
)


def test_banwell_and_jayakumars_worked_case():
    # Electronics Letters 36 (2000) 291 (R, C): 0.9 V, 249.3 ohm, 25 fA, 25.7025 mV -> 1.0848517 mA.
    found = diode_current_a(0.9, 0.0257025, math.log(25e-15), 249.3)
    assert found == pytest.approx(1.0848517e-3, rel=1e-5)


# Lambert W (C): 298.15 K, saturation 1e-24 A, ideality 2.
@pytest.mark.parametrize(
    ("volts", "ohm", "milliampere"),
    [(5.0, 100.0, 23.530183892), (12.0, 470.0, 19.9182586834), (2.5, 100.0, 0.504571307026)],
)
def test_lambert_w_rows(volts, ohm, milliampere):
    found = diode_current_a(volts, 2 * VOLTS_PER_KELVIN * 298.15, math.log(1e-24), ohm)
    assert found * 1e3 == pytest.approx(milliampere, rel=1e-9)


@given(curves, st.floats(1e-12, 1e12))
def test_round_trip_holds_from_far_below_to_far_above_the_saturation_current(curve, times):
    current_a = times * curve.saturation_a
    found = forward_current(curve, forward_voltage(curve, current_a))
    assert found == pytest.approx(current_a, rel=1e-9)


@given(curves, st.floats(1e-9, 1.0))
def test_current_at_the_voltage_of_a_current_is_that_current(curve, current_a):
    volts = forward_voltage(curve, current_a)
    assert forward_current(curve, volts) == pytest.approx(current_a, rel=1e-9)


@given(curves, st.floats(0.5, 20))
def test_voltage_at_the_current_of_a_voltage_is_that_voltage(curve, volts):
    current = forward_current(curve, volts)
    if math.isfinite(current):
        assert forward_voltage(curve, current) == pytest.approx(volts, rel=1e-9)


@given(curves)
def test_the_curve_passes_through_the_point_it_was_made_from(curve):
    assert forward_voltage(curve, curve.current_a) == pytest.approx(curve.voltage_v, rel=1e-12)


@given(curves, st.floats(0.6, 6))
def test_the_formula_agrees_with_a_bracketing_search_on_the_diode_equation(curve, volts):
    # Independent method: the root of Kirchhoff's voltage law in ln I.
    def excess(log_current):
        current = math.exp(log_current)
        # ln(1 + I/Is) by logaddexp: independent of log1p and sound at any ratio.
        return (
            curve.slope_v * np.logaddexp(0, log_current - math.log(curve.saturation_a))
            + current * curve.resistance_ohm
            - volts
        )

    found = math.exp(brentq(excess, -900, 60, xtol=1e-12, rtol=1e-15))
    assert forward_current(curve, volts) == pytest.approx(found, rel=1e-9)


def test_no_volts_no_current():
    assert forward_current(WHITE, 0.0) == pytest.approx(0, abs=1e-15 * WHITE.saturation_a)
    assert forward_voltage(WHITE, 0.0) == 0


def test_backwards_nothing_but_the_saturation_current_flows():
    assert forward_current(WHITE, -5.0) == pytest.approx(-WHITE.saturation_a, rel=1e-12)


def test_without_resistance_one_slope_more_volts_is_e_times_the_current():
    # Limit in the head: I ~ exp(V/m) when I >> Is.
    curve = Curve(2.8, 3e-3, 0.09, 0.0)
    assert forward_current(curve, 2.8 + 0.09) == pytest.approx(math.e * 3e-3, rel=1e-9)


def test_the_smallest_resistance_changes_nothing():
    # The Wright omega form must run into the plain exponential, not jump.
    plain, tiny = Curve(2.8, 3e-3, 0.09, 0.0), Curve(2.8, 3e-3, 0.09, 1e-9)
    assert forward_current(tiny, 2.85) == pytest.approx(forward_current(plain, 2.85), rel=1e-8)


def test_far_above_the_knee_only_the_resistance_counts():
    # Limit in the head: dV/dI -> R.
    rise = forward_current(WHITE, 1001.0) - forward_current(WHITE, 1000.0)
    assert rise == pytest.approx(1 / WHITE.resistance_ohm, rel=1e-3)


@pytest.mark.parametrize("folds", [1e-6, 1.0, 40.0, 92.1, 300.0, 600.0])
def test_saturation_is_sound_from_almost_linear_to_beyond_forty_decades(folds):
    curve = Curve(folds * 0.01, 1e-3, 0.01, 0.0)
    # By hand: ln(I/Is) = ln(expm1(V/m)); 92.1 folds are 1e40.
    expected = folds + math.log(-math.expm1(-folds))
    assert math.log(1e-3) - math.log(curve.saturation_a) == pytest.approx(expected, rel=1e-9)


def test_a_current_beyond_floats_is_infinite():
    assert forward_current(Curve(2.8, 3e-3, 0.09, 0.0), 1e6) == math.inf


def test_arrays_give_what_each_of_their_numbers_gives():
    volts = np.array([[-1.0, 0.5], [2.7, 5.0]])
    expected = [[forward_current(WHITE, v) for v in row] for row in volts.tolist()]
    np.testing.assert_allclose(forward_current(WHITE, volts), expected, rtol=1e-14)


def test_a_group_is_its_leds_and_its_resistor_in_series():
    one = forward_voltage(WHITE, 0.018)
    found = group_voltage_v(0.018, 3, WHITE.slope_v, WHITE.saturation_a, WHITE.resistance_ohm, 150.0)
    assert found == pytest.approx(3 * one + 0.018 * 150)  # by hand


@given(curves, st.integers(1, 12), st.floats(0, 500), st.floats(1e-9, 0.5))
def test_a_groups_current_at_its_voltage_is_that_current(curve, series, group_ohm, current_a):
    volts = group_voltage_v(
        current_a, series, curve.slope_v, curve.saturation_a, curve.resistance_ohm, group_ohm
    )
    assert group_current_a(curve, volts, series, group_ohm) == pytest.approx(current_a, rel=1e-9)


def test_warming_moves_the_volts_at_the_same_current():
    # By hand: 20 K x -3 mV/K = -60 mV.
    warm = led.warmed(WHITE, 20, -0.003)
    assert forward_voltage(warm, 3e-3) == pytest.approx(2.74)
    assert warm.slope_v == WHITE.slope_v


def test_warming_by_nothing_changes_nothing():
    assert led.warmed(WHITE, 0, -0.003) == WHITE


@pytest.mark.parametrize(
    ("voltage", "current", "slope", "ohm", "why"),
    [
        (2.8, 0.0, 0.09, 10, "above zero"),
        (2.8, 3e-3, 0.0, 10, "above zero"),
        (2.8, 3e-3, 0.09, -1, "above zero"),
        (2.8, 3e-3, 0.09, 1000, "takes all of its volts"),
        (2.8, math.nan, 0.09, 10, "above zero"),
        (2.8, 3e-3, 0.001, 10, "not that small"),
        (math.inf, 3e-3, 0.09, 10, "not that small"),
    ],
)
def test_what_is_no_led_is_refused(voltage, current, slope, ohm, why):
    with pytest.raises(ValueError, match=why):
        Curve(voltage, current, slope, ohm)
