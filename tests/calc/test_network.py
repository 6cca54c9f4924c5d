"""The two-rail solver against closed forms, tables and textbooks."""

import numpy as np
import pytest
from numpy.testing import assert_allclose

from guidegen.calc.network import (
    Bulbs,
    NotConvergedError,
    Rails,
    Sources,
    drops_for_loads,
    kirchhoff_residual_a,
    power_imbalance_w,
    solve_network,
)

SMALL_OHM = 1e-9  # stands for no resistance


def resistors(count: int, ohm: float) -> Bulbs:
    """Bulbs that are plain resistors."""
    ones = np.ones(count)
    return Bulbs(ones, 0 * ones, ohm * ones, ones, ones, 0 * ones)


def one_end(segment_ohm: list[float], minus_ohm: list[float] | None = None) -> Rails:
    """Rails fed at bulb 1; `segment_ohm[k]` lies in front of bulb k + 1 in the + rail."""
    plus_s = 1 / np.array(segment_ohm)
    minus_s = plus_s if minus_ohm is None else 1 / np.array(minus_ohm)
    feed = np.zeros((2, len(plus_s)))
    feed[:, 0] = plus_s[0], minus_s[0]
    return Rails(np.append(plus_s[1:], 0), np.append(minus_s[1:], 0), feed[0], feed[1], np.array([0]))


def both_ends(segment_ohm: list[float]) -> Rails:
    """Rails fed at both ends; one more segment than bulbs, - without resistance."""
    plus_s = 1 / np.array(segment_ohm)
    count = len(plus_s) - 1
    feed = np.zeros(count)
    feed[0] += plus_s[0]
    feed[-1] += plus_s[-1]
    stiff = np.full(count, 1 / SMALL_OHM)
    return Rails(np.append(plus_s[1:-1], 0), np.append(stiff[1:], 0), feed, stiff, np.array([0]))


def source(volts: float, series_ohm: float = 0.0) -> Sources:
    return Sources(np.array([series_ohm]), np.array([0]), np.array([volts]), np.array([0.0]))


def input_ohm(bulbs: Bulbs, rails: Rails) -> float:
    return 1.0 / float(solve_network(bulbs, rails, source(1.0)).total_a[0])


def test_a_ladder_of_unit_series_and_shunt_ohms_gives_fibonacci_ratios() -> None:
    # Morgan-Voyce, IRE Trans. CT-6 (1959), recomputed: F(2N+1)/F(2N) -> golden ratio.
    for sections, expected in ((1, 2), (2, 5 / 3), (3, 13 / 8), (20, (1 + 5**0.5) / 2)):
        rails = one_end([1.0] * sections, [SMALL_OHM] * sections)
        assert_allclose(input_ohm(resistors(sections, 1.0), rails), expected, rtol=1e-7)


def test_a_two_rail_ladder_of_unit_ohms_gives_its_exact_fractions() -> None:
    # Exact fractions by hand: R' = 2 + R / (1 + R), from 3 on; limit 1 + sqrt 3.
    fractions = (3, 11 / 4, 41 / 15, 153 / 56, 571 / 209, 2131 / 780)
    for sections, expected in enumerate(fractions, start=1):
        assert_allclose(input_ohm(resistors(sections, 1.0), one_end([1.0] * sections)), expected, rtol=1e-13)
    assert_allclose(input_ohm(resistors(60, 1.0), one_end([1.0] * 60)), 1 + 3**0.5, rtol=1e-13)


def test_a_ladder_of_resistors_follows_the_hyperbolic_cosine() -> None:
    # Closed form (uniform ladder), digits recomputed with exact fractions; both rails share 0.2 ohm.
    network = solve_network(resistors(4, 200.0), one_end([0.1] * 4), source(5.0))
    expected = [4.980148780101264, 4.965277709, 4.955371916, 4.950421494]
    assert_allclose(network.bulb_v, expected, rtol=1e-9)


@pytest.mark.parametrize(("count", "segment_ohm", "bulb_ohm"), [(7, 0.3, 12.0), (40, 0.05, 900.0)])
def test_the_hyperbolic_cosine_holds_for_any_length(count: int, segment_ohm: float, bulb_ohm: float) -> None:
    # V_k = V_0 cosh((N + 1/2 - k) t) / cosh((N + 1/2) t), t = 2 asinh(sqrt(r / R) / 2)
    theta = 2 * np.arcsinh(np.sqrt(2 * segment_ohm / bulb_ohm) / 2)
    places = np.arange(1, count + 1)
    expected = 5 * np.cosh((count + 0.5 - places) * theta) / np.cosh((count + 0.5) * theta)
    network = solve_network(resistors(count, bulb_ohm), one_end([segment_ohm] * count), source(5.0))
    assert_allclose(network.bulb_v, expected, rtol=1e-12)


def test_equal_loads_on_a_trolley_line_drop_as_in_bell() -> None:
    # L. Bell, Power Distribution for Electric Railroads (1897): ten sections of 0.05 ohm,
    # 20 A taken off at the end of each: drops 10, 9, ... 1 V, 55 V in all.
    drop_v, _rise = drops_for_loads(one_end([0.05] * 10), np.full(10, 20.0))
    assert_allclose(np.diff(drop_v, prepend=0.0), np.arange(10, 0, -1), rtol=1e-12)
    assert_allclose(drop_v[-1], 55.0, rtol=1e-12)


def test_equal_loads_fed_at_one_end_drop_half_of_one_load_at_the_end() -> None:
    # By hand: sum of k for k = 1..N is N (N + 1) / 2, so the drop is I R (N + 1) / (2 N).
    count, total_a, total_ohm = 24, 0.24, 2.4
    drop_v, _rise = drops_for_loads(one_end([total_ohm / count] * count), np.full(count, total_a / count))
    assert_allclose(drop_v[-1], total_a * total_ohm * (count + 1) / (2 * count), rtol=1e-12)


def test_a_distributor_fed_at_both_ends_drops_an_eighth() -> None:
    # Uniform load: largest drop I R / 8 in the middle (Mehta, Principles of Power System, ch. 13),
    # reached as the loads grow many: N + 1 equal sections, N loads.
    count, total_a, total_ohm = 1999, 10.0, 2.0
    rails = both_ends([total_ohm / (count + 1)] * (count + 1))
    drop_v, _rise = drops_for_loads(rails, np.full(count, total_a / count))
    assert_allclose(drop_v.max(), total_a * total_ohm / 8, rtol=1e-3)


def test_mehta_example_13_1_two_wire_distributor_fed_at_one_end() -> None:
    # Mehta, Principles of Power System, ex. 13.1: answers 295.0 291.0 288.0 287.6 V (read); 300 V at
    # the feed, 0.01 ohm per km and conductor, loads of 100 150 200 50 A at 500 1000 1600 2000 m
    # (from memory).
    metres = np.diff([0, 500, 1000, 1600, 2000])
    rails = one_end(list(1e-5 * metres))
    drop_v, rise_v = drops_for_loads(rails, np.array([100.0, 150.0, 200.0, 50.0]))
    assert_allclose(300 - drop_v - rise_v, [295.0, 291.0, 288.0, 287.6], rtol=1e-12)


def test_mehta_example_13_14_fed_at_both_ends_with_equal_volts() -> None:
    # Mehta ex. 13.14: 6.25 V, lowest 213.75 V (read); 1000 m, 0.5 A per m, 0.05 ohm per km and conductor,
    # 220 V at both ends (from memory).  Loads every half metre stand for the uniform one.
    count = 1999
    rails = both_ends([0.1 / (count + 1)] * (count + 1))
    drop_v, _rise = drops_for_loads(rails, np.full(count, 0.25))
    assert_allclose(drop_v.max(), 6.25, rtol=1e-3)
    assert_allclose(220 - drop_v.max(), 213.75, rtol=1e-4)


def test_mehta_example_13_15_fed_at_both_ends_with_unequal_volts() -> None:
    # Mehta ex. 13.15: lowest 246 V at 300 m (read); 500 m, 1 A per m, 0.1 ohm per km and conductor,
    # 255 V and 250 V at the ends (from memory).  The 5 V between the ends fall evenly along the line.
    count = 999
    rails = both_ends([0.1 / (count + 1)] * (count + 1))
    drop_v, _rise = drops_for_loads(rails, np.full(count, 0.5))
    metres = 0.5 * np.arange(1, count + 1)
    volts = 255 - drop_v - 5 * metres / 500
    assert_allclose(metres[np.argmin(volts)], 300, atol=0.5)
    assert_allclose(volts.min(), 246, rtol=1e-5)


def leds(count: int, groups: float = 3.0, series: float = 1.0, group_ohm: float = 0.0) -> Bulbs:
    """White LEDs by hand: 2.8 V at 3 mA, slope 0.09 V, 10 ohm (typical, from memory)."""
    ones = np.ones(count)
    saturation_a = 3e-3 / np.expm1((2.8 - 0.03) / 0.09)
    return Bulbs(groups * ones, series * ones, group_ohm * ones, 0.09 * ones, saturation_a * ones, 10 * ones)


def opposite_ends(count: int, segment_ohm: float) -> Rails:
    """+ enters at bulb 1, - leaves from the last bulb through an equal segment."""
    link = np.append(np.full(count - 1, 1 / segment_ohm), 0.0)
    plus, minus = np.zeros(count), np.zeros(count)
    plus[0] = minus[-1] = 1 / segment_ohm
    return Rails(link, link, plus, minus, np.array([0]))


def test_one_led_meets_banwell_and_jayakumar() -> None:
    # Electronics Letters 36 (2000) 291, worked case: V 0.9, R 249.3, I_s 25 fA, m 0.0257025 V
    # -> 1.0848517 mA.
    one = np.ones(1)
    bulbs = Bulbs(one, one, 0 * one, 0.0257025 * one, 25e-15 * one, 249.3 * one)
    network = solve_network(bulbs, one_end([SMALL_OHM]), source(0.9))
    assert_allclose(network.bulb_a, [1.0848517e-3], rtol=1e-6)


@pytest.mark.parametrize(
    ("volts", "ohm", "expected_a"),
    # Lambert W, recomputed: T 298.15 K, I_s 1e-24 A, n 2, so m = 2 k T / q.
    [(5.0, 100.0, 23.530183892e-3), (12.0, 470.0, 19.9182586834e-3), (2.5, 100.0, 0.504571307026e-3)],
)
def test_one_led_behind_a_resistor_meets_lambert_w(volts: float, ohm: float, expected_a: float) -> None:
    slope_v = 2 * 1.380649e-23 * 298.15 / 1.602176634e-19
    one = np.ones(1)
    bulbs = Bulbs(one, one, 0 * one, slope_v * one, 1e-24 * one, 0 * one)
    network = solve_network(bulbs, one_end([SMALL_OHM]), source(volts, ohm))
    assert_allclose(network.total_a, [expected_a], rtol=1e-9)


@pytest.mark.parametrize("count", [1, 2, 30, 500, 10_000])
@pytest.mark.parametrize("volts", [2.0, 5.06, 12.0])
def test_kirchhoff_and_power_balance_hold(count: int, volts: float) -> None:
    bulbs, rails, feed = leds(count), one_end([0.09] * count), source(volts, 6.8)
    network = solve_network(bulbs, rails, feed)
    assert kirchhoff_residual_a(bulbs, rails, network)[0] <= 1e-9 * network.total_a[0]
    assert abs(power_imbalance_w(rails, feed, network)[0]) <= 1e-9 * volts * network.total_a[0]
    assert network.steps <= 25


def test_volts_never_rise_away_from_the_feed() -> None:
    network = solve_network(leds(60), one_end([0.09] * 60), source(5.06, 6.8))
    assert np.all(np.diff(network.bulb_v) < 0)


def test_opposite_ends_are_mirror_symmetric() -> None:
    network = solve_network(leds(31), opposite_ends(31, 0.09), source(5.06, 6.8))
    assert_allclose(network.bulb_a, network.bulb_a[::-1], rtol=1e-12)
    assert_allclose(network.plus_drop_v, network.minus_rise_v[::-1], rtol=1e-9)


def test_without_wire_resistance_every_bulb_is_alike() -> None:
    network = solve_network(leds(24), one_end([SMALL_OHM] * 24), source(5.0, 10.0))
    assert_allclose(network.bulb_a, network.bulb_a[0], rtol=1e-6)
    assert_allclose(network.total_a[0] * 10 + network.feed_v[0], 5.0, rtol=1e-14)


def test_groups_of_three_at_three_times_the_volts_are_the_same_string() -> None:
    # By hand: s LEDs in series at s V with s times every resistance carry the same current.
    single = solve_network(leds(10, 2.0), one_end([0.1] * 10), source(5.0, 10.0))
    triple = solve_network(leds(10, 2.0, series=3.0), one_end([0.3] * 10), source(15.0, 30.0))
    assert_allclose(triple.bulb_a, single.bulb_a, rtol=1e-12)


def test_unlit_bulbs_draw_nothing_and_do_not_disturb() -> None:
    bulbs = leds(8)
    bulbs.groups[1::2] = 0.0
    network = solve_network(bulbs, one_end([0.2] * 8), source(5.0, 22.0))
    alone = solve_network(leds(4), one_end([0.2, 0.4, 0.4, 0.4]), source(5.0, 22.0))
    assert_allclose(network.bulb_a[1::2], 0.0, atol=0)
    assert_allclose(network.bulb_a[0::2], alone.bulb_a, rtol=1e-10)


def test_installations_side_by_side_do_not_know_each_other() -> None:
    first, second = leds(5), leds(9)
    alone = [
        solve_network(first, one_end([0.1] * 5), source(5.0, 10.0)),
        solve_network(second, one_end([0.2] * 9), source(4.5, 22.0)),
    ]
    names = ("groups", "series", "group_ohm", "slope_v", "saturation_a", "resistance_ohm")
    bulbs = Bulbs(*(np.concatenate([getattr(first, name), getattr(second, name)]) for name in names))
    parts = (one_end([0.1] * 5), one_end([0.2] * 9))
    names = ("plus_link_s", "minus_link_s", "plus_feed_s", "minus_feed_s")
    rails = Rails(
        *(np.concatenate([getattr(part, name) for part in parts]) for name in names), np.array([0, 5])
    )
    sources = Sources(np.array([10.0, 22.0]), np.array([0, 1]), np.array([5.0, 4.5]), np.zeros(2))
    together = solve_network(bulbs, rails, sources)
    assert_allclose(together.bulb_a, np.concatenate([each.bulb_a for each in alone]), rtol=1e-9)


def test_a_warm_start_gives_the_same_answer_sooner() -> None:
    cold = solve_network(leds(30), one_end([0.09] * 30), source(5.06, 6.8))
    warm = solve_network(leds(30), one_end([0.09] * 30), source(5.06, 6.8), start_a=cold.group_a)
    assert_allclose(warm.bulb_a, cold.bulb_a, rtol=1e-9)
    assert warm.steps < cold.steps


def test_nonsense_does_not_loop_for_ever() -> None:
    with pytest.raises(NotConvergedError):
        solve_network(leds(3), one_end([0.09] * 3), source(float("nan"), 6.8))
