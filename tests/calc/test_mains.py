"""What a supply takes in, by hand."""

import pytest

from guidegen.calc.mains import apparent_va, input_w, mains_a


def test_watts_in_are_watts_out_over_efficiency():
    assert input_w(12.0, 0.75) == pytest.approx(16.0)  # by hand


def test_apparent_power_is_power_over_the_power_factor():
    assert apparent_va(16.0, 0.5) == pytest.approx(32.0)  # by hand


def test_mains_current_is_apparent_power_over_mains_volts():
    assert mains_a(32.0, 230.0) == pytest.approx(0.13913, rel=1e-4)  # by hand
