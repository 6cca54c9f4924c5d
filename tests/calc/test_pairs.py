"""Two resistors for one: values and shares by hand, series rules as in any textbook."""

from __future__ import annotations

import math
from typing import get_args

import pytest
from hypothesis import given
from hypothesis import strategies as st

from guidegen.calc.pairs import How, pair_for, parallel_ohm, series_ohm
from guidegen.calc.preferred import is_preferred
from guidegen.tables.preferred import RESISTOR_RATINGS_W

OHMS = st.floats(0.5, 1e5)
WATTS = st.sampled_from(RESISTOR_RATINGS_W)


def test_equal_resistors_double_in_series_and_halve_in_parallel() -> None:
    assert series_ohm(22, 22) == 44
    assert parallel_ohm(22, 22) == 11


def test_ten_ohm_five_watt_is_two_of_three_watt_in_series() -> None:
    """5.6 + 4.7 = 10.3; the larger takes 5.6/10.3 = 54 % of 5 W, 2.72 W: the next rating is 3 W."""
    pair = pair_for("series", 10, 5, 0.05)
    assert pair is not None
    assert (pair.first_ohm, pair.second_ohm, pair.rating_w) == (5.6, 4.7, 3)
    assert pair.share == pytest.approx(5.6 / 10.3)


def test_in_parallel_the_smaller_takes_more() -> None:
    """33 || 15 = 10.3125 ohm: the 15 ohm takes 33/48 of the watts."""
    pair = pair_for("parallel", 10, 5, 0.05)
    assert pair is not None
    assert (pair.first_ohm, pair.second_ohm) == (15, 33)
    assert pair.share == pytest.approx(33 / 48)


def test_a_value_out_of_reach_has_no_pair() -> None:
    """No E6 values make 10 to 10.001 ohm with either taking 80 % at the most: 6.8 + 3.3 is 10.1."""
    assert pair_for("series", 10, 5, 0.0001, "E6") is None


def test_watts_that_are_not_sold_have_no_pair() -> None:
    """Half of 100 W is more than any rating of the table."""
    assert pair_for("series", 22, 100, 0.05) is None


@pytest.mark.parametrize("how", get_args(How))
@given(ohm=OHMS, rating_w=WATTS)
def test_a_pair_is_never_below_the_value_and_bears_its_share(how: How, ohm: float, rating_w: float) -> None:
    pair = pair_for(how, ohm, rating_w, 0.05)
    if pair is None:
        return
    assert ohm * (1 - 1e-9) <= pair.total_ohm <= ohm * 1.05
    assert pair.rating_w >= pair.share * rating_w * (1 - 1e-9)
    assert is_preferred("E12", pair.first_ohm) and is_preferred("E12", pair.second_ohm)


@pytest.mark.parametrize("how", get_args(How))
@given(ohm=OHMS, rating_w=WATTS)
def test_shares_are_those_of_ohms_law(how: How, ohm: float, rating_w: float) -> None:
    """One volt across the pair: watts from V^2/R of each, no formula of shares."""
    pair = pair_for(how, ohm, rating_w, 0.05)
    if pair is None:
        return
    both = (pair.first_ohm, pair.second_ohm)
    current_a = 1 / pair.total_ohm
    watts = [current_a**2 * each if how == "series" else 1 / each for each in both]
    assert math.isclose(max(watts) / sum(watts), pair.share, rel_tol=1e-9)
