"""Relative light, evenness and lightness."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from guidegen.calc import light

ALL = np.array([True, True, True])


def test_the_brightest_bulb_is_one():
    found = light.relative_light(light.raw_light(np.array([3.0, 3.0]), np.array([0.002, 0.004])))
    assert found.tolist() == [0.5, 1.0]  # by hand


def test_light_may_be_held_against_a_brighter_bulb_elsewhere():
    assert light.relative_light(np.array([1.0, 2.0]), brightest=4.0).tolist() == [0.25, 0.5]


def test_a_bulb_with_twice_the_leds_gives_twice_the_light():
    found = light.raw_light(np.array([6.0, 3.0]), np.array([0.003, 0.003]))
    assert found[0] == 2 * found[1]


def test_the_exponent_bends_current_into_light():
    found = light.raw_light(np.array([1.0, 1.0]), np.array([0.001, 0.004]), 0.5)
    assert found[1] / found[0] == pytest.approx(2)  # by hand: sqrt 4


def test_evenness_leaves_unlit_bulbs_out():
    assert light.evenness(np.array([0.8, 0.0, 0.4]), np.array([True, False, True])) == 0.5


def test_equal_bulbs_are_even():
    assert light.evenness(np.array([0.3, 0.3, 0.3]), ALL) == 1


def test_nothing_lit_is_not_even_and_not_bright():
    assert light.evenness(np.zeros(3), ALL) == 0
    assert light.relative_light(np.zeros(3)).tolist() == [0, 0, 0]


def test_a_quarter_of_the_light_looks_half_as_bright():
    # Stevens, Psychophysics (1975) (R): exponent 0.5 for a point source; by hand.
    assert light.seen_evenness(0.25) == 0.5


@given(st.floats(0, 1))
def test_what_is_seen_is_never_less_even_than_what_is_measured(even):
    assert light.seen_evenness(even) >= even


def test_a_five_degree_target_by_stevens():
    # Stevens (R): exponent 0.33; by hand 8^(-0.33).
    assert light.seen_evenness(1 / 8, 0.33) == pytest.approx(0.5035, abs=5e-5)


# CIE 15, ISO/CIE 11664-4 (R).
@pytest.mark.parametrize(
    ("luminance", "lightness"), [(50, 76.069261), (18.4186518512, 50), (12.19722535, 41.5278758)]
)
def test_cie_lightness(luminance, lightness):
    assert light.lightness(luminance) == pytest.approx(lightness, abs=5e-7)


def test_lightness_runs_from_nothing_to_a_hundred_without_a_jump():
    assert light.lightness(0) == pytest.approx(0, abs=1e-12)
    assert light.lightness(100) == pytest.approx(100)
    knee = 100 * (6 / 29) ** 3
    assert light.lightness(knee * (1 + 1e-9)) == pytest.approx(light.lightness(knee * (1 - 1e-9)), abs=1e-6)
