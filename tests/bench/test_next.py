"""What to read next: computed, kept to what is safe for the LEDs, and true to what the fit then says."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from guidegen.bench.fit import fit_string
from guidegen.bench.next import NextReadings, Suggestion, next_readings
from guidegen.bench.predict import predict
from guidegen.calc.preferred import is_preferred
from guidegen.project.schema import Led, LightString
from tests.bench.making import currents, kind_of, row_of, true_string
from tests.bench.shooting import state

TRUE = true_string(curve=(2.80, 0.09, 10.0))  # the typical curve itself, so that it predicts the truth
EMPTY = kind_of(TRUE, [], led=Led(typical="white"))
MOST_A = 6e-3
SUPPLY_V, RESISTOR_OHM = 5.0, 10.0


def suggested(kind: LightString = EMPTY, most_a: float = MOST_A) -> NextReadings:
    work_out = currents(kind, fit_string(kind), 2, SUPPLY_V, RESISTOR_OHM)
    found = next_readings(kind, (4.5, SUPPLY_V), most_a, work_out)
    assert found is not None
    return found


def read(suggestion: Suggestion) -> dict[str, float]:
    """What a maker would then enter: the exact reading of the true string."""
    row = row_of(TRUE, suggestion.supply_v, suggestion.resistor_ohm, 1.5)
    unread = "current" if suggestion.what == "after resistor" else "after_resistor"
    return {name: value for name, value in row.items() if name not in (unread, "meter_burden")}


def test_a_reading_narrows_the_prediction_and_a_second_one_more() -> None:
    found = suggested()
    assert found.now > found.after_one > found.after_two


def test_what_is_promised_is_what_the_fit_says_once_it_is_read() -> None:
    found = suggested()
    kind = kind_of(TRUE, [read(found.one)], led=Led(typical="white"))
    fit = fit_string(kind)
    work_out = currents(kind, fit, 2, SUPPLY_V, RESISTOR_OHM)
    predicted = predict(fit.estimate.curve, fit.covariance, work_out)
    assert np.max(1.96 * predicted.u / predicted.value) == pytest.approx(found.after_one, rel=1e-3)


def test_the_expected_value_is_what_the_string_shows() -> None:
    one = suggested().one
    shown = read(one)["after_resistor" if one.what == "after resistor" else "current"]
    assert one.expected == pytest.approx(shown, rel=1e-6)


def test_no_other_first_reading_of_the_same_kind_does_better() -> None:
    found = suggested()
    for ohm in (18.0, 27.0, 39.0, 82.0, 180.0):  # under 15 ohm the first bulb is over its limit
        kind = kind_of(TRUE, [row_of(TRUE, SUPPLY_V, ohm)], led=Led(typical="white"))
        fit = fit_string(kind)
        predicted = predict(
            fit.estimate.curve, fit.covariance, currents(kind, fit, 2, SUPPLY_V, RESISTOR_OHM)
        )
        # A twentieth for what the ranking leaves out by being linear.
        assert np.max(1.96 * predicted.u / predicted.value) >= found.after_one * 0.95


def test_the_resistors_are_preferred_values() -> None:
    found = suggested()
    assert all(is_preferred("E12", each.resistor_ohm) for each in (found.one, *found.two))


def test_no_bulb_carries_more_than_its_leds_limit() -> None:
    most_a = 1.5e-3
    found = suggested(most_a=most_a)
    for each in (found.one, *found.two):
        in_line_ohm = 1.5 if each.what == "current" else 0.0
        assert state(TRUE, each.supply_v, each.resistor_ohm + in_line_ohm).group_a.max() <= most_a


def test_a_source_that_does_not_light_the_string_has_nothing_to_tell() -> None:
    three = kind_of(true_string(series=3), [])
    assert next_readings(three, (4.5,), MOST_A, lambda curve: np.array([curve.voltage_v])) is None


def test_with_given_resistors_no_other_is_asked_for() -> None:
    work_out = currents(EMPTY, fit_string(EMPTY), 2, SUPPLY_V, RESISTOR_OHM)
    found = next_readings(EMPTY, (SUPPLY_V,), MOST_A, work_out, at_hand_ohm=(23.0, 57.0))
    assert found is not None
    assert {each.resistor_ohm for each in (found.one, *found.two)} <= {23.0, 57.0}


def test_only_what_narrows_the_range_is_asked_for() -> None:
    found = suggested()
    assert found.asked == (found.one, *found.two)
    assert replace(found, after_one=found.now * 1.1).asked == found.two
    assert replace(found, after_one=found.now * 1.1, after_two=found.now).asked == ()
    assert replace(found, after_two=found.after_one).asked == (found.one,)
