"""The hanging wire, against a statics example, an independent integration, and the shallow parabola."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from scipy.integrate import solve_ivp
from scipy.optimize import root

from guidegen.calc import catenary
from guidegen.calc.catenary import Catenary, from_length, from_sag

# Statics notes (R, recomputed, 1e-3): cable 140 m over a span of 120 m, 3 kg/m, g 9.81 m/s2.
SPAN, LENGTH, WEIGHT = 120.0, 140.0, 3 * 9.81


def test_the_statics_example_has_its_parameter_sag_and_tension() -> None:
    wire = from_length(SPAN, LENGTH)
    assert wire.c_m == pytest.approx(61.45, rel=1e-3)
    assert wire.sag_m == pytest.approx(31.70, rel=1e-3)
    assert math.hypot(*wire.ends_n(WEIGHT)[0]) == pytest.approx(2740, rel=1e-3)


def test_the_statics_example_backwards_from_its_sag() -> None:
    assert from_sag(SPAN, 31.70).length_m == pytest.approx(LENGTH, rel=1e-3)


def integrated(span: float, length: float, rise: float) -> tuple[float, float, float]:
    """Level pull over weight, sag and first slope by shooting: y'' = sqrt(1 + y'^2) / c, no cosh in it."""
    steps = np.linspace(0, span, 3)

    def shape(unknown: np.ndarray) -> np.ndarray:
        slope, inverse = unknown
        found = solve_ivp(
            lambda _x, y: [y[1], inverse * math.hypot(1, y[1]), math.hypot(1, y[1])],
            (0, span),
            [0.0, slope, 0.0],
            t_eval=steps,
            rtol=1e-10,
            atol=1e-12,
        )
        return found.y

    start = [(rise - length + span) / span, 2 / length]
    found = root(lambda unknown: shape(unknown)[[0, 2], -1] - [rise, length], start, tol=1e-11)
    assert found.success
    slope, inverse = found.x
    return 1 / inverse, rise / 2 - shape(found.x)[0, 1], slope


@pytest.mark.parametrize(
    ("span", "length", "rise"), [(120, 140, 0), (2, 2.05, 0), (2, 2.4, 0.7), (1.5, 1.9, -1)]
)
def test_an_independent_integration_gives_the_same_shape(span: float, length: float, rise: float) -> None:
    wire = from_length(span, length, rise)
    c, sag, slope = integrated(span, length, rise)
    assert wire.c_m == pytest.approx(c, rel=1e-6)
    assert wire.sag_m == pytest.approx(sag, rel=1e-6)
    level, down = wire.ends_n(1.0)[0]
    assert down / level == pytest.approx(-slope, rel=1e-6)


def test_a_shallow_wire_is_a_parabola() -> None:
    """Shallow limit: H = w L^2/(8 f), length L (1 + 8/3 (f/L)^2); the next terms are of order (f/L)^2."""
    wire = from_sag(2.0, 0.02)
    assert wire.ends_n(0.2)[0][0] == pytest.approx(catenary.parabola_pull_n(0.2, 2.0, 0.02), rel=1e-3)
    assert wire.length_m - 2.0 == pytest.approx(catenary.parabola_length_m(2.0, 0.02) - 2.0, rel=1e-3)


def test_the_parabola_is_under_two_percent_off_at_a_tenth_of_the_span() -> None:
    """By hand: c = L^2/(8 f) (1 + 4/3 (f/L)^2 ...) for a catenary, so 1.3 % at a tenth."""
    exact = from_sag(2.0, 0.2).ends_n(1.0)[0][0]
    assert exact / catenary.parabola_pull_n(1.0, 2.0, 0.2) == pytest.approx(1 + 4 / 3 * 0.01, abs=1e-3)


spans = st.floats(0.05, 50)
ratios = st.floats(1e-4, 3)
slopes = st.floats(-2, 2)


@given(spans, ratios, slopes)
def test_sag_and_length_lead_to_one_wire(span: float, sag_ratio: float, slope: float) -> None:
    wire = from_sag(span, span * sag_ratio, span * slope)
    assert wire.sag_m == pytest.approx(span * sag_ratio, rel=1e-9)
    assume(wire.length_m > math.hypot(span, span * slope) * (1 + 1e-9))
    # Length barely tells a taut wire's shape: its excess over the straight line is what counts.
    assert from_length(span, wire.length_m, span * slope).sag_m == pytest.approx(wire.sag_m, rel=1e-4)


@given(spans, ratios, slopes, st.floats(0.01, 5))
def test_the_hooks_bear_the_whole_weight_and_pull_alike(
    span: float, sag_ratio: float, slope: float, load: float
) -> None:
    wire = from_sag(span, span * sag_ratio, span * slope)
    (first_level, first_down), (second_level, second_down) = wire.ends_n(load)
    assert first_level == second_level
    assert first_down + second_down == pytest.approx(load * wire.length_m, rel=1e-9)


@given(spans, st.floats(1e-3, 3), slopes)
def test_the_wire_ends_at_both_hooks(span: float, sag_ratio: float, slope: float) -> None:
    wire = from_sag(span, span * sag_ratio, span * slope)
    ends = wire.height_m(np.array([0.0, span]))
    assert ends == pytest.approx([0, span * slope], abs=1e-7 * span * (1 + 1 / sag_ratio))
    assert wire.x_at_m(np.array([0.0, wire.length_m])) == pytest.approx([0, span], abs=1e-7 * span)


def test_places_along_the_wire_are_as_far_apart_as_the_wire_between_them() -> None:
    """By adding up short straight pieces."""
    wire = from_sag(2.0, 0.4, 0.3)
    x = wire.x_at_m(np.linspace(0.2, 0.7, 2001))
    y = wire.height_m(x)
    assert np.hypot(np.diff(x), np.diff(y)).sum() == pytest.approx(0.5, rel=1e-6)


def test_the_lowest_point_of_a_level_span_is_one_sag_down() -> None:
    assert from_sag(2.0, 0.1).low_point_m == pytest.approx(-0.1)


def test_a_wire_pulled_up_steeply_is_lowest_at_its_lower_hook() -> None:
    assert from_sag(2.0, 0.05, 1.5).low_point_m == pytest.approx(0.0)


@pytest.mark.parametrize("length", [2.0, 1.9])
def test_a_wire_no_longer_than_the_straight_line_does_not_hang(length: float) -> None:
    with pytest.raises(ValueError, match="does not hang"):
        from_length(2.0, length)


@pytest.mark.parametrize(("span", "sag"), [(0.0, 0.1), (2.0, 0.0), (2.0, -0.1)])
def test_a_sag_or_span_of_nothing_is_refused(span: float, sag: float) -> None:
    with pytest.raises(ValueError, match="above zero"):
        from_sag(span, sag)


def test_the_worked_formulas_are_the_same_wire() -> None:
    wire = from_sag(2.0, 0.3)
    assert catenary.level_length_m(2.0, wire.c_m) == pytest.approx(wire.length_m)
    assert catenary.level_sag_m(2.0, wire.c_m) == pytest.approx(0.3)
    assert catenary.level_pull_n(0.2, wire.c_m) == wire.ends_n(0.2)[0][0]


def test_the_dead_load_of_wire_and_bulbs() -> None:
    """By hand: 10 g/m and four bulbs of 2 g to the metre are 18 g/m, times 9.80665 m/s2."""
    assert catenary.dead_load_n_per_m(0.010, 0.002, 4) == pytest.approx(0.018 * 9.80665)


def test_a_catenary_keeps_its_numbers() -> None:
    """By hand: c = 1 m, span 2 m, level: length 2 sinh 1, sag cosh 1 - 1."""
    wire = Catenary(2.0, 0.0, 1.0)
    assert wire.length_m == pytest.approx(2 * math.sinh(1))
    assert wire.sag_m == pytest.approx(math.cosh(1) - 1)
