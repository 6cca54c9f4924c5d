"""Steps through the E series, against the independent package eseries (IEC 60063, R)."""

import eseries
import pytest
from hypothesis import given
from hypothesis import strategies as st

from guidegen.calc import preferred

names = st.sampled_from(["E6", "E12", "E24"])
#: Six digits, so that no need lies within rounding of a value without being it.
needs = st.floats(0.01, 1e7).map(lambda need: float(f"{need:.6g}"))


@given(names, needs)
def test_the_value_not_below_is_that_of_eseries(name, need):
    expected = eseries.find_greater_than_or_equal(eseries.ESeries[name], need)
    assert preferred.not_below(name, need) == pytest.approx(expected, rel=2e-9)


@given(names, needs)
def test_a_value_meets_itself_and_the_next_is_larger(name, need):
    value = preferred.not_below(name, need)
    assert preferred.not_below(name, value) == value
    assert preferred.next_above(name, value) > value
    assert preferred.is_preferred(name, value)


@pytest.mark.parametrize("name", ["E6", "E12", "E24"])
def test_all_values_between_are_those_of_eseries(name):
    expected = list(eseries.erange(eseries.ESeries[name], 1, 1e4))
    assert list(preferred.between(name, 1, 1e4)) == pytest.approx(expected)


# By hand, from the series.
@pytest.mark.parametrize(
    ("name", "need", "value"),
    [("E12", 10.0, 10.0), ("E12", 10.01, 12.0), ("E24", 91.5, 100.0), ("E6", 0.7, 1.0), ("E12", 8.3, 10.0)],
)
def test_the_smallest_value_not_below(name, need, value):
    assert preferred.not_below(name, need) == value


@pytest.mark.parametrize(("value", "following"), [(10, 12), (82, 100), (4.7, 5.6), (11, 12)])
def test_the_value_that_follows(value, following):
    assert preferred.next_above("E12", value) == following


def test_values_are_the_floats_a_person_types():
    assert preferred.between("E12", 3.3, 6.8) == (3.3, 3.9, 4.7, 5.6, 6.8)


def test_between_crossed_limits_lies_nothing():
    assert preferred.between("E12", 5.0, 4.8) == ()


def test_eleven_is_e24_but_not_e12():
    assert preferred.is_preferred("E24", 11)
    assert not preferred.is_preferred("E12", 11)


@pytest.mark.parametrize("start", [0.0, -1.0, float("nan"), float("inf")])
def test_no_series_starts_at_nothing(start):
    with pytest.raises(ValueError, match="above zero"):
        preferred.not_below("E12", start)


def test_ratings_too_small_are_none():
    assert preferred.smallest_not_below((1.0, 2.0), 2.5) is None
