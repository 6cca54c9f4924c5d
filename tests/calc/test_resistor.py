"""Watts, ratings, temperatures and markings of resistors."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from guidegen.calc import marking, preferred, resistor
from guidegen.calc.supply import current_through_a, series_resistor_ohm
from guidegen.tables.resistors import KINDS

values = st.builds(lambda digits, power: float(f"{digits}e{power}"), st.integers(10, 99), st.integers(-2, 6))
e24 = st.builds(lambda start: preferred.not_below("E24", start), st.floats(0.1, 1e7))


@pytest.mark.parametrize(
    ("supply_v", "ohm", "milliwatt"),
    # Lessons in Electric Circuits III ch. 3 (R): LED 1.6 V at 20 mA.
    [(6.0, 220.0, 88.0), (24.0, 1120.0, 448.0)],
)
def test_led_resistors_of_lessons_in_electric_circuits(supply_v, ohm, milliwatt):
    found = series_resistor_ohm(supply_v, 1.6, 0.020)
    assert found == pytest.approx(ohm)
    assert resistor.running_w(0.020, found) * 1e3 == pytest.approx(milliwatt)


def test_led_resistor_of_an_a_level_tutorial():
    # A-level electronics tutorial (R): 12 V, LED 3.4 V 15 mA -> 573 ohm, E24 620; 560 gives 15.4 mA.
    needed = series_resistor_ohm(12, 3.4, 0.015)
    assert needed == pytest.approx(573, abs=0.5)
    assert preferred.not_below("E24", needed) == 620
    assert current_through_a(12, 560, after_v=3.4) * 1e3 == pytest.approx(15.4, abs=0.05)


def test_three_leds_in_series_leave_less_for_the_resistor():
    assert series_resistor_ohm(12, 3.0, 0.02, series=3) == pytest.approx(150)  # by hand: 3 V / 20 mA


def test_doubled_current_is_four_times_the_watts():
    assert resistor.running_w(0.4, 10) == pytest.approx(4 * resistor.running_w(0.2, 10))


def test_no_resistance_no_watts():
    assert resistor.running_w(1.0, 0.0) == 0


def test_a_shorted_run_leaves_the_upper_supply_across_the_lower_resistor():
    # By hand: 5 V + 5 %, 10 ohm - 5 % -> 5.25^2 / 9.5 = 2.9013 W.
    assert resistor.shorted_w(5.25, resistor.lower_ohm(10, 0.05)) == pytest.approx(2.9013, abs=5e-5)


def test_tolerance_goes_both_ways():
    assert resistor.lower_ohm(10, 0.05) == pytest.approx(9.5)
    assert resistor.upper_ohm(10, 0.05) == pytest.approx(10.5)


@pytest.mark.parametrize(
    ("degc", "share"),
    # Film data-sheet curve, IEC 60115-1 rating temperature (R).
    [(20, 1.0), (70, 1.0), (100, 0.647), (125, 0.353), (155, 0.0), (200, 0.0)],
)
def test_film_derates_from_70_to_155_degrees(degc, share):
    assert resistor.rating_at_w(1.0, degc, "film") == pytest.approx(share, abs=5e-4)  # three decimals


@pytest.mark.parametrize("kind", ["cement", "wirewound"])
def test_cement_and_wirewound_have_nothing_left_at_275_degrees(kind):
    # Data sheets (R).
    assert resistor.rating_at_w(5.0, 275, kind) == 0
    assert resistor.rating_at_w(5.0, 200, kind) > 0


@pytest.mark.parametrize("degc", [20, 70, 100, 140, 200])
def test_an_unknown_kind_counts_as_the_worst(degc):
    assert resistor.rating_at_w(5.0, degc, None) == min(
        resistor.rating_at_w(5.0, degc, each) for each in KINDS
    )


def test_an_unknown_kind_gets_as_hot_as_the_hottest():
    assert resistor.hottest_rise_k(None) == max(kind.rise_at_rating_k for kind in KINDS.values()) == 205


def test_without_load_the_body_is_as_warm_as_the_air():
    assert resistor.body_degc(35, 205, 0.0, 5.0) == 35


def test_half_the_rating_is_half_the_rise():
    # Own assumption: in proportion; by hand 25 + 85/2.
    assert resistor.body_degc(25, 85, 0.5, 1.0) == pytest.approx(67.5)


@pytest.mark.parametrize("kind", KINDS.values(), ids=lambda kind: kind.name)
def test_at_full_load_in_70_degrees_the_body_reaches_the_end_of_its_line(kind):
    full = resistor.body_degc(kind.full_degc, kind.rise_at_rating_k, 1.0, 1.0)
    assert full == kind.zero_degc


def test_half_load_doubles_the_rating_needed():
    assert resistor.rating_needed_w(0.4, 0.5) == pytest.approx(0.8)  # by hand


@pytest.mark.parametrize(
    ("need", "rating"), [(0.1, 0.25), (0.8, 1.0), (2.9, 3.0), (3.0, 3.0), (7.2, 10.0), (11, None)]
)
def test_the_smallest_rating_on_sale_is_picked(need, rating):
    assert resistor.pick_rating_w(need) == rating


BANDS = [
    # IEC 60062 (R).
    (1e3, 0.05, 4, "brown black red gold"),
    (4.7e3, 0.05, 4, "yellow violet red gold"),
    (10.0, 0.01, 5, "brown black black gold brown"),
    # By hand from the same colours.
    (10.0, 0.05, 4, "brown black black gold"),
    (6.8, 0.05, 4, "blue grey gold gold"),
    (0.47, 0.10, 4, "yellow violet silver silver"),
    (220e3, 0.02, 5, "red red black orange red"),
]


@pytest.mark.parametrize(("ohm", "tolerance", "bands", "colours"), BANDS)
def test_colour_bands(ohm, tolerance, bands, colours):
    assert " ".join(marking.band_colours(ohm, tolerance, bands)) == colours
    assert marking.value_of_bands(colours.split()) == (ohm, tolerance)


@given(values, st.sampled_from([4, 5]), st.sampled_from([0.01, 0.02, 0.05, 0.10]))
def test_bands_read_back_are_the_value_painted(ohm, bands, tolerance):
    if bands == 5 and ohm < 1:
        ohm *= 100
        ohm = float(f"{ohm:.3g}")
    assert marking.value_of_bands(marking.band_colours(ohm, tolerance, bands)) == (ohm, tolerance)


@pytest.mark.parametrize(
    ("ohm", "tolerance", "bands", "why"),
    [
        (123.0, 0.05, 4, "more than 2 digits"),
        (10.0, 0.07, 4, "no marking"),
        (0.01, 0.05, 4, "no marking"),
        (0.0, 0.05, 4, "above zero"),
        (10.0, 0.05, 6, "4 or 5 bands"),
    ],
)
def test_what_no_bands_can_show_is_refused(ohm, tolerance, bands, why):
    with pytest.raises(ValueError, match=why):
        marking.band_colours(ohm, tolerance, bands)


@pytest.mark.parametrize(
    "colours", ["pink black red gold", "gold black red gold", "brown black red grey", "brown black"]
)
def test_bands_without_meaning_are_refused(colours):
    with pytest.raises(ValueError, match=r"no such colour|4 or 5 bands"):
        marking.value_of_bands(colours.split())


@pytest.mark.parametrize(
    ("ohm", "code"),
    # IEC 60062: the letter stands for the decimal point (M).
    [
        (10, "10R"),
        (4.7, "4R7"),
        (0.47, "R47"),
        (0.05, "R05"),
        (100, "100R"),
        (1e3, "1K"),
        (1.5e3, "1K5"),
        (2.2e6, "2M2"),
    ],
)
def test_letters_stand_for_the_decimal_point(ohm, code):
    assert marking.value_code(ohm) == code


def test_a_five_watt_ten_ohm_five_percent_body_reads_5w10rj():
    assert marking.printed(10, 0.05, 5) == "5W10RJ"  # common practice, no source
    assert marking.printed(6.8, 0.1) == "6R8K"


@given(e24)
def test_every_e24_value_has_four_bands(ohm):
    assert len(marking.band_colours(ohm, 0.05)) == 4
