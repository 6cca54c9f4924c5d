"""Supply, meter and energy, against textbooks."""

import pytest

from guidegen.calc import energy, meter, supply
from guidegen.calc.wire import at_temperature_ohm


def test_a_load_at_the_end_of_two_long_wires():
    # Lessons in Electric Circuits I ch. 12 (R): 14 V, two wires of 15 ohm, 250 ohm -> 50 mA, 12.5 V.
    current = supply.current_through_a(14, 250 + 2 * 15)
    assert current == pytest.approx(0.050)
    assert supply.voltage_after_v(14, current, 30) == pytest.approx(12.5)


def test_the_same_load_on_a_warm_day():
    # The same, at 35 C with alpha 0.004041 (R): 49.677 mA, 12.42 V.
    wires = 2 * at_temperature_ohm(15, 35, 0.004041)
    current = supply.current_through_a(14, 250 + wires)
    assert current * 1e3 == pytest.approx(49.677, abs=5e-4)
    assert supply.voltage_after_v(14, current, wires) == pytest.approx(12.42, abs=5e-3)


def test_a_source_with_resistance_inside():
    # Lessons in Electric Circuits I ch. 11 (R): 10 V, 0.2 ohm inside, 1 ohm -> 8.333 A.
    current = supply.current_through_a(10, 1 + 0.2)
    assert current == pytest.approx(8.333, abs=5e-4)
    assert supply.voltage_after_v(10, current, 0.2) == pytest.approx(8.333, abs=5e-4)


def test_a_meter_in_a_branch_of_3_ohm():
    # Lessons in Electric Circuits I ch. 8 (R): 0.5 ohm meter, 3 ohm branch, 2 V: 666.7 -> 571.43 mA.
    assert meter.burdened_current_a(2, 3, 0) * 1e3 == pytest.approx(666.7, abs=0.05)
    assert meter.burdened_current_a(2, 3, 0.5) * 1e3 == pytest.approx(571.43, abs=5e-3)


@pytest.mark.parametrize(
    ("reading", "share", "digits", "step", "expected"),
    # Meter makers' examples (R): +-(2.5 % + 3 digits) at 32.00 V; 3 % + 5 counts of 10 uV at 0.5 V.
    # The first is printed rounded: 0.8 V + 0.03 V.
    [(32.00, 0.025, 3, 0.01, 0.83), (0.5, 0.03, 5, 10e-6, 15.05e-3)],
)
def test_meter_accuracy(reading, share, digits, step, expected):
    assert meter.accuracy(reading, share, digits, step) == pytest.approx(expected)


def test_accuracy_is_the_same_with_the_leads_swapped():
    assert meter.accuracy(-5, 0.01, 2, 0.01) == meter.accuracy(5, 0.01, 2, 0.01)


def test_a_sixty_watt_lamp_for_a_thousand_hours():
    # OpenStax College Physics 20.8 (R): 60 kWh, $7.20 at $0.12.
    used = energy.energy_kwh(60, 1000)
    assert used == 60
    assert energy.cost(used, 0.12) == pytest.approx(7.20)


def test_a_battery_lasts_twice_as_long_at_half_the_current():
    assert energy.cell_hours(2.2, 0.05) == 2 * energy.cell_hours(2.2, 0.1)


def test_watts_and_load():
    assert supply.power_w(5.1, 0.4) == pytest.approx(2.04)  # by hand
    assert supply.load_share(0.4, 2.0) == pytest.approx(0.2)


def test_tolerance_goes_both_ways():
    assert supply.upper_voltage_v(5.0, 0.05) == pytest.approx(5.25)  # USB 2.0 port, 4.75 to 5.25 V (R)
    assert supply.lower_voltage_v(5.0, 0.05) == pytest.approx(4.75)


def test_no_current_no_drop():
    assert supply.voltage_after_v(5, 0, 100) == 5


@pytest.mark.parametrize(
    ("volts", "most_va"),
    # IEC 60950-1 Table 2B (R): 5 VA a volt up to 20 V, 100 VA up to 30 V.
    [(5, 25), (12, 60), (20, 100), (24, 100), (30, 100), (30.1, None)],
)
def test_limited_power_by_open_circuit_volts(volts, most_va):
    assert supply.limited_power_va(volts) == most_va


@pytest.mark.parametrize(
    ("volts", "current", "power", "within"),
    # IEC 60950-1 Table 2B (R): 8 A at most.
    [(5, 2.4, 12, True), (12, 8, 60, True), (12, 8.1, 50, False), (12, 5, 61, False), (48, 1, 48, False)],
)
def test_within_limited_power(volts, current, power, within):
    assert supply.within_limited_power(volts, current, power) is within
