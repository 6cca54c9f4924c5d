"""Solved circuits put back into Kirchhoff's voltage law."""

import pytest

from guidegen.calc import kirchhoff
from guidegen.calc.led import Curve, group_current_a
from guidegen.calc.supply import current_through_a


def test_the_loop_of_a_textbook_circuit_uses_what_the_source_gives():
    # Lessons in Electric Circuits I ch. 12 (R): 14 V, two wires of 15 ohm, 250 ohm load -> 50 mA, 12.5 V.
    used = kirchhoff.loop_sum_v(0.05, 0.0, 0.05, 0.0, 30.0, 0.0, 12.5)
    assert kirchhoff.residual_v(14, used) == pytest.approx(0, abs=1e-12)


def test_every_part_of_the_loop_counts_once():
    # By hand: 0.4 x 0.1 + 0.2 x (10 + 0.5) + 0.03 + 2.8.
    assert kirchhoff.loop_sum_v(0.4, 0.1, 0.2, 10, 0.5, 0.03, 2.8) == pytest.approx(4.97)


def test_one_led_behind_a_resistor_leaves_nothing_over():
    # Independent of the loop: the resistor taken into the diode's own exact formula.
    curve = Curve(2.8, 3e-3, 0.09, 10.0)
    current = group_current_a(curve, 5.0, series=1, group_ohm=680)
    bulb_v = 5.0 - 680 * current
    assert current_through_a(5.0, 680, after_v=bulb_v) == pytest.approx(current)
    assert group_current_a(curve, bulb_v, series=1, group_ohm=0) == pytest.approx(current, rel=1e-10)
