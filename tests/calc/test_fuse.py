"""The fuse rule, whether a short reaches it, and what lasts behind it."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from guidegen.calc import fuse

amperes = st.floats(0.001, 100)


def test_the_worst_current_is_at_most_eight_tenths_of_the_fuse():
    assert fuse.fuse_needed_a(0.4) == pytest.approx(0.5)  # common practice, no source; by hand


@pytest.mark.parametrize(
    ("worst_a", "rating_a"),
    # IEC 60127-1 ratings (R); by hand worst / 0.8, next up.
    [(0.4, 0.5), (0.41, 0.63), (0.25, 0.315), (1.0, 1.25), (8.0, 10.0), (8.1, None)],
)
def test_the_smallest_rating_that_meets_the_rule_is_picked(worst_a, rating_a):
    assert fuse.pick_fuse_a(fuse.fuse_needed_a(worst_a)) == rating_a


@pytest.mark.parametrize(("kind", "opens_a"), [("IEC", 2.1), ("UL", 2.0)])
def test_a_one_ampere_fuse_must_open_at_its_standards_multiple(kind, opens_a):
    # IEC 60127-2 (R), UL 248-14 (R).
    assert fuse.must_open_a(1.0, fuse.must_open_multiple(kind)) == opens_a


def test_the_supplys_limit_caps_a_dead_short():
    assert fuse.fault_current_a(5.0, 0.0, 2.4) == 2.4


def test_a_long_wire_caps_the_fault_before_the_supply_does():
    assert fuse.fault_current_a(5.0, 5.0, 2.4) == 1.0  # by hand


def test_a_resistor_ahead_of_the_short_keeps_the_fuse_whole():
    # By hand: 5 V over 10 ohm is 0.5 A, a 1 A fuse needs 2.1 A.
    fault = fuse.fault_current_a(5.0, 10.0, 2.4)
    assert not fuse.sure_to_open(fault, fuse.must_open_a(1.0, 2.1))


def test_a_fault_of_just_the_must_open_current_opens():
    assert fuse.sure_to_open(2.1, 2.1)
    assert not fuse.sure_to_open(2.0999, 2.1)


@pytest.mark.parametrize(
    ("opens_a", "limit_a", "ohm", "lasting_a"),
    # By hand: the least of the three, at 5 V.
    [(2.1, 5.0, 0.1, 2.1), (8.4, 2.4, 0.1, 2.4), (2.1, 2.4, 10.0, 0.5), (math.inf, 2.4, 0.0, 2.4)],
)
def test_the_lasting_current_is_the_least_of_fuse_supply_and_resistance(opens_a, limit_a, ohm, lasting_a):
    assert fuse.lasting_current_a(opens_a, limit_a, 5.0, ohm) == lasting_a


@given(amperes, amperes, amperes, st.floats(0, 1000))
def test_no_more_lasts_than_fuse_or_supply_let_through(opens_a, limit_a, volts, ohm):
    assert fuse.lasting_current_a(opens_a, limit_a, volts, ohm) <= min(opens_a, limit_a)
