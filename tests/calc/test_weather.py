"""Wind and ice, by hand."""

import math

import pytest

from guidegen.calc import weather


def test_a_coat_of_ice_on_a_wire():
    # By hand: ring from 3 mm to 13 mm diameter, pi/4 (13^2 - 3^2) mm2 = 125.66 mm2, 900 kg/m3: 0.1131 kg/m.
    assert weather.ice_n_per_m(0.003, 0.005) == pytest.approx(0.11310 * 9.80665, rel=1e-4)


def test_a_coat_of_ice_on_a_bulb():
    # By hand: ball from 2 cm to 3 cm diameter: pi/6 (27 - 8) cm3 = 9.948 cm3, 0.9 g/cm3: 8.954 g.
    assert weather.bulb_ice_n(0.02, 0.005) == pytest.approx(8.954e-3 * 9.80665, rel=1e-3)


def test_no_ice_weighs_nothing():
    assert weather.ice_n_per_m(0.003, 0.0) == 0
    assert weather.bulb_ice_n(0.02, 0.0) == 0


def test_the_pressure_of_a_wind_of_20_metres_a_second():
    # By hand: 1.25/2 20^2 = 250 Pa; on 3 mm with drag 1.2: 0.9 N/m.
    assert weather.wind_pa(20) == pytest.approx(250)
    assert weather.wind_n_per_m(20, 0.003) == pytest.approx(0.9)


def test_weight_and_wind_add_as_the_sides_of_a_right_angle():
    # 3, 4, 5.
    assert weather.together_n_per_m(3, 4) == pytest.approx(5)
    assert weather.together_n_per_m(3, 0) == 3
    assert math.isfinite(weather.together_n_per_m(0, 0))
