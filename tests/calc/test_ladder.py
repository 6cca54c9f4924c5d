"""Ladders with published or exact answers."""

import math
from fractions import Fraction
from itertools import pairwise

import networkx as nx
import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from guidegen.calc import ladder


def test_rungs_on_a_ladder_as_recomputed_with_exact_fractions():
    # C: V0 5, N 4, r 0.2, R 200; exact fractions agree.
    expected = [4.980148780101264, 4.965277709, 4.955371916, 4.950421494]
    found = ladder.rung_volts(5, 4, 0.2, 200)
    assert found[0] == pytest.approx(expected[0], rel=1e-14)
    assert found.tolist() == pytest.approx(expected, abs=5e-10)  # ten digits


@given(st.integers(1, 40), st.floats(1e-4, 10), st.floats(0.1, 1000))
def test_rung_volts_obey_kirchhoff(rungs, segment_ohm, rung_ohm):
    # Independent method: volts counted up from the far end.
    volts, current = [1.0], 1 / rung_ohm
    for _ in range(rungs):
        volts.append(volts[-1] + current * segment_ohm)
        current += volts[-1] / rung_ohm
    expected = np.array(volts[:-1][::-1]) / volts[-1] * 5
    np.testing.assert_allclose(ladder.rung_volts(5, rungs, segment_ohm, rung_ohm), expected, rtol=1e-9)


def test_a_very_long_ladder_does_not_overflow():
    found = ladder.rung_volts(5, 100_000, 1.0, 1.0)
    assert np.all(np.isfinite(found))
    assert found[0] < 5


def test_rungs_on_thick_rails_all_see_the_source():
    assert ladder.rung_volts(5, 3, 1e-12, 100).tolist() == pytest.approx([5, 5, 5])


def test_ladder_volts_agree_with_networkx_resistance():
    # Independent method: resistance_distance of the same ladder gives the current, thus the first drop.
    rungs, segment, rung = 6, 0.2, 30.0
    graph = nx.Graph()
    for k in range(rungs):
        graph.add_edge(k, k + 1, r=segment)
    graph = nx.MultiGraph(graph)
    for k in range(1, rungs + 1):
        graph.add_edge(k, "return", r=rung)
    total = nx.resistance_distance(graph, 0, "return", weight="r")
    first = ladder.rung_volts(1.0, rungs, segment, rung)[0]
    assert first == pytest.approx(1 - segment / total, rel=1e-10)
    assert ladder.input_ohm(rungs, segment, rung) == pytest.approx(total, rel=1e-10)


def test_ten_equal_cars_on_bells_line():
    # L. Bell, Power Distribution for Electric Railroads (1897) (R): ten sections of 0.05 ohm, 20 A each.
    volts = ladder.sink_volts(0.0, np.full(10, 0.05), np.full(10, 20.0))
    steps = -np.diff(np.concatenate([[0.0], volts]))
    assert steps.tolist() == pytest.approx([10, 9, 8, 7, 6, 5, 4, 3, 2, 1])
    assert -volts[-1] == pytest.approx(55)
    assert ladder.equal_sinks_drop_v(200, 0.5, 10) == pytest.approx(55)


@given(st.integers(1, 200), st.floats(0.01, 10), st.floats(0.01, 10))
def test_equal_sinks_drop_is_that_of_adding_up_every_section(count, total_a, total_ohm):
    volts = ladder.sink_volts(0.0, np.full(count, total_ohm / count), np.full(count, total_a / count))
    assert ladder.equal_sinks_drop_v(total_a, total_ohm, count) == pytest.approx(-volts[-1], rel=1e-9)


def test_one_bulb_at_the_end_sees_the_whole_resistance():
    assert ladder.equal_sinks_drop_v(2.0, 3.0, 1) == 6.0


def test_mehtas_feeder_with_four_loads():
    # Mehta, Principles of Power System, ex. 13.1: answers 295.0 291.0 288.0 287.6 V (R);
    # its data (M): 300 V, 100, 150, 200, 50 A at 500, 1000, 1600, 2000 m, 0.01 ohm/km a conductor.
    sections = np.diff([0, 500, 1000, 1600, 2000]) * 2 * 0.01 / 1000
    found = ladder.sink_volts(300, sections, np.array([100.0, 150, 200, 50]))
    assert found.tolist() == pytest.approx([295.0, 291.0, 288.0, 287.6])


def test_mehtas_feeder_fed_at_both_ends_with_the_same_volts():
    # Mehta, ex. 13.14: largest drop 6.25 V, lowest 213.75 V (R); 500 A over 0.1 ohm from 220 V (M).
    assert ladder.both_ends_drop_v(500, 0.1) == pytest.approx(6.25)
    where_m, lowest_v = ladder.uniform_lowest(220, 220, 500, 1.0, 0.1 / 500)
    assert (where_m, lowest_v) == (pytest.approx(250), pytest.approx(213.75))


def test_mehtas_feeder_fed_at_both_ends_with_unlike_volts():
    # Mehta, ex. 13.15: lowest at 300 m, 246 V (R); 255 and 250 V, 500 m, 1 A/m, 0.1 ohm/km a conductor (M).
    where_m, lowest_v = ladder.uniform_lowest(255, 250, 500, 1.0, 2 * 0.1 / 1000)
    assert (where_m, lowest_v) == (pytest.approx(300), pytest.approx(246))


def test_a_much_weaker_second_end_is_itself_the_lowest_point():
    assert ladder.uniform_lowest(255, 200, 500, 1.0, 2e-4) == (500, 200)
    assert ladder.uniform_lowest(200, 255, 500, 1.0, 2e-4) == (0, 200)


# Morgan-Voyce, IRE Trans. CT-6 (1959) (R, C): F(2N+1)/F(2N).
@pytest.mark.parametrize(("sections", "ohm"), [(1, Fraction(2)), (2, Fraction(5, 3)), (3, Fraction(13, 8))])
def test_the_unit_ladder_goes_by_fibonacci(sections, ohm):
    assert ladder.input_ohm(sections, 1, 1) == pytest.approx(float(ohm), rel=1e-15)


def test_the_unit_ladder_ends_at_the_golden_ratio():
    assert ladder.input_ohm(60, 1, 1) == pytest.approx((1 + math.sqrt(5)) / 2, rel=1e-15)


# R, C: two rails, all 1 ohm.
@pytest.mark.parametrize(
    ("sections", "ohm"),
    [
        (1, 3),
        (2, Fraction(11, 4)),
        (3, Fraction(41, 15)),
        (4, Fraction(153, 56)),
        (5, Fraction(571, 209)),
        (6, Fraction(2131, 780)),
    ],
)
def test_two_rails_of_one_ohm(sections, ohm):
    assert ladder.input_ohm(sections, 2, 1) == pytest.approx(float(ohm), rel=1e-15)


def test_two_endless_rails_end_at_one_plus_root_three():
    assert ladder.input_ohm(60, 2, 1) == pytest.approx(1 + math.sqrt(3), rel=1e-15)


def test_every_further_section_lowers_the_resistance():
    found = [ladder.input_ohm(count, 1, 1) for count in range(1, 15)]
    assert all(later < earlier for earlier, later in pairwise(found))
