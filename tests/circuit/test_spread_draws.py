"""Draws and coverage against published cases and against propagation by another road."""

from __future__ import annotations

import numpy as np
import pytest
from uncertainties import correlated_values, ufloat, umath

from guidegen.calc.monte_carlo import correlated, coverage, joint_factor, rectangular, summary

#: JCGM 101, 9.2: a million draws.
MILLION = 1_000_000


def test_four_rectangular_quantities_of_jcgm_101() -> None:
    # JCGM 101, 9.2.3 (from memory): Y = X1 + X2 + X3 + X4, each rectangular about 0 with u = 1:
    # u(y) = 2.0, 95 % interval -3.88 to 3.88.
    random = np.random.default_rng(1)
    half = np.sqrt(3)
    drawn = rectangular(random, -half, half, (MILLION, 4)).sum(axis=1)
    found = summary(drawn)
    assert found.mean == pytest.approx(0.0, abs=0.01)
    assert found.u == pytest.approx(2.0, abs=0.01)
    assert found.low == pytest.approx(-3.88, abs=0.02)
    assert found.high == pytest.approx(3.88, abs=0.02)


def test_resistance_and_reactance_of_jcgm_100_h2() -> None:
    # JCGM 100:2008, H.2: five simultaneous observations of V, I and phi (table H.2); results (table H.4):
    # R 127.732(71), X 219.847(295), Z 254.260(236) ohm, r(R, X) = -0.588.
    observed = np.array(
        [
            [5.007, 4.994, 5.005, 4.990, 4.999],
            [19.663e-3, 19.639e-3, 19.640e-3, 19.685e-3, 19.678e-3],
            [1.0456, 1.0438, 1.0468, 1.0428, 1.0433],
        ]
    )
    covariance = np.cov(observed) / 5
    drawn = observed.mean(axis=1) + correlated(np.random.default_rng(2), covariance, MILLION)
    volts, ampere, phi = drawn.T
    z = volts / ampere
    resistance, reactance = z * np.cos(phi), z * np.sin(phi)
    for values, mean, spread in (
        (resistance, 127.732, 0.071),
        (reactance, 219.847, 0.295),
        (z, 254.26, 0.236),
    ):
        found = summary(values)
        assert found.mean == pytest.approx(mean, abs=0.003)
        # Printed with two or three digits.
        assert found.u == pytest.approx(spread, rel=0.006)
    assert np.corrcoef(resistance, reactance)[0, 1] == pytest.approx(-0.588, abs=0.01)


def test_correlated_inputs_agree_with_linear_propagation() -> None:
    # Nearly linear: small uncertainties; the package `uncertainties` propagates to first order.
    covariance = np.array([[4e-4, 1.5e-4], [1.5e-4, 9e-4]])
    a, b = correlated_values([2.0, 3.0], covariance)
    expected = umath.exp(a / b) + a * b
    x, y = (np.array([2.0, 3.0]) + correlated(np.random.default_rng(3), covariance, MILLION)).T
    found = summary(np.exp(x / y) + x * y)
    assert found.u == pytest.approx(expected.std_dev, rel=5e-3)
    assert found.mean == pytest.approx(expected.nominal_value, abs=2e-3)


def test_independent_inputs_agree_with_linear_propagation() -> None:
    supply, ohm = ufloat(5.0, 0.05), ufloat(10.0, 0.1)
    expected = supply / (ohm + 15.0)
    random = np.random.default_rng(4)
    drawn = random.normal(5.0, 0.05, MILLION) / (random.normal(10.0, 0.1, MILLION) + 15.0)
    assert summary(drawn).u == pytest.approx(expected.std_dev, rel=5e-3)


def test_a_quantity_without_uncertainty_stays_where_it_is() -> None:
    covariance = np.array([[1.0, 0.0], [0.0, 0.0]])
    drawn = correlated(np.random.default_rng(5), covariance, 1000)
    assert np.all(drawn[:, 1] == 0)
    assert drawn[:, 0].std() == pytest.approx(1.0, abs=0.1)


def test_coverage_of_a_normal_distribution() -> None:
    low, high = coverage(np.random.default_rng(6).standard_normal(MILLION))
    # 1.96 standard uncertainties: normal table.
    assert (low, high) == (pytest.approx(-1.96, abs=0.01), pytest.approx(1.96, abs=0.01))


def test_all_of_many_independent_readings_need_wider_intervals() -> None:
    # Ten independent normal values lie all within k in 95 % of cases when each does in 0.95 ** 0.1 = 99.49 %:
    # k = 2.80 (normal table), 1.43 times 1.96. The share is raised to 0.9544 for 10,000 draws: k = 2.84.
    values = np.random.default_rng(7).standard_normal((10_000, 10))
    ones = np.full(10, 1.96)
    assert joint_factor(values, np.zeros(10), ones, ones) == pytest.approx(2.82 / 1.96, rel=0.02)


def test_readings_that_move_together_need_hardly_any_more() -> None:
    one = np.random.default_rng(8).standard_normal((10_000, 1))
    ones = np.full(10, 1.96)
    assert joint_factor(np.repeat(one, 10, axis=1), np.zeros(10), ones, ones) == pytest.approx(1.0, abs=0.05)
