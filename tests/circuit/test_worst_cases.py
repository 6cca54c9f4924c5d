"""Worst-case corners, shorts and wire sections."""

from pathlib import Path

import pytest
from numpy.testing import assert_allclose

from guidegen.circuit.conditions import Conditions
from guidegen.circuit.solve import solve
from guidegen.study import Solved
from tests.circuit.test_arrange import FEEDER, solved


def test_the_worst_corners_lie_outside_the_nominal_values(tmp_path: Path) -> None:
    found = solved(tmp_path, {})
    nominal, worst = found.solution.runs[0], found.margins.runs[0]
    assert worst.led_max_a > nominal.led_a.max()
    assert worst.current_max_a > nominal.current_a
    assert worst.resistor_w > nominal.resistor_w
    assert worst.led_min_a < nominal.led_a.min()
    assert found.margins.load > found.solution.load


def test_without_any_spread_the_worst_case_is_the_nominal_one(tmp_path: Path) -> None:
    # Air at 20 degC (almost), no tolerances: only the LED's and the wire's own spread are left.
    changes: dict[str, object] = {
        "place.coldest": "19.99 degC",
        "place.warmest": "20.01 degC",
        "supply.tolerance": "0 %",
        "runs.0.resistor_tolerance": "0 %",
    }
    found = solved(tmp_path, changes)
    only_led = solve(found.arrangement, Conditions(led="low", wire="low"))
    assert_allclose(found.margins.supply_a, only_led.supply_a, rtol=1e-3)


def test_the_highest_current_is_at_high_volts_low_resistor_low_wire_and_low_leds(tmp_path: Path) -> None:
    arrangement = solved(tmp_path, {}).arrangement
    upper, lower = arrangement.supply.upper_v, arrangement.supply.lower_v
    corner = solve(arrangement, Conditions(upper, "low", "low", "low")).supply_a
    for other in (
        Conditions(lower, "low", "low", "low"),
        Conditions(upper, "high", "low", "low"),
        Conditions(upper, "low", "high", "low"),
        Conditions(upper, "low", "low", "high"),
    ):
        assert solve(arrangement, other).supply_a < corner


def test_watts_of_a_shorted_run_are_upper_volts_squared_over_lower_ohms(tmp_path: Path) -> None:
    # By hand: 5 V + 5 % = 5.25 V, 68 ohm - 5 % = 64.6 ohm, 5.25^2 / 64.6 = 0.42666 W.
    assert_allclose(solved(tmp_path, {}).margins.runs[0].shorted_w, 5.25**2 / 64.6, rtol=1e-12)


def test_the_fuse_must_open_at_2_1_times_its_rating_by_iec_and_twice_by_ul(tmp_path: Path) -> None:
    # IEC 60127-2: 2.1 In; UL 248-14: 2 In (read).
    assert solved(tmp_path, {"fuse": "1 A"}).protection.must_open_a == pytest.approx(2.1)
    assert solved(tmp_path, {"fuse": "1 A", "fuse_type": "UL"}).protection.must_open_a == pytest.approx(2.0)


def test_a_short_at_the_supply_gives_no_more_than_the_supply_is_sure_to_give(tmp_path: Path) -> None:
    found = solved(tmp_path, {"supply.current_limit": "0.3 A", "fuse": "200 mA"}).protection
    assert (found.fault_a, found.sure) == (0.3, False)
    found = solved(tmp_path, {"supply.current_limit": "0.42 A", "fuse": "200 mA"}).protection
    assert (found.fault_a, found.sure) == (0.42, True)


def test_a_short_behind_the_resistor_is_limited_by_it(tmp_path: Path) -> None:
    # By hand: (5 V - 5 %) / (68 ohm + 5 %) = 66.5 mA, far under 2.1 x 200 mA.
    found = solved(tmp_path, {}).protection
    assert_allclose(found.fault_after_resistor_a, [4.75 / 71.4], rtol=1e-12)
    assert found.sure_after_resistor == (False,)


def sections(found: Solved) -> dict[str, float]:
    return {section.key: section.lasting_a for section in found.protection.sections}


def test_each_section_lasts_with_the_least_of_fuse_supply_and_resistance(tmp_path: Path) -> None:
    changes: dict[str, object] = {"supply.lead": FEEDER, "runs.0.feeder": FEEDER, "fuse": "200 mA"}
    lasting = sections(solved(tmp_path, changes))
    assert lasting["lead"] == pytest.approx(0.42)  # 2.1 x 200 mA
    # By hand: 5.25 V / (64.6 ohm + lead of 2 x 2 m x 34.5 mohm/m - 5 %, cold) is about 81 mA.
    assert lasting["feeder"] == pytest.approx(0.0811, rel=2e-3)
    assert lasting["string"] < lasting["feeder"]
    lasting = sections(solved(tmp_path, changes | {"supply.current_limit": "0.25 A"}))
    assert lasting["lead"] == pytest.approx(0.25)


def test_thin_wire_known_by_ohms_alone_counts_as_its_copper_area_scaled(tmp_path: Path) -> None:
    # 1 ohm/m is 1/58 mm2 of copper: 1 A x (0.01724 / 0.05) of the table's smallest row (DIN VDE 0100).
    found = solved(tmp_path, {"strings.drop.wire": {"per_length": "1 ohm/m"}})
    string = found.protection.sections[-1]
    assert string.inferred
    assert_allclose(string.limit_a, 1 / 58 / 0.05, rtol=1e-9)


def test_a_section_holds_up_to_1_45_times_its_limit(tmp_path: Path) -> None:
    # IEC 60364-4-43 cl. 433.1 (from memory): 1.45 Iz.  Lead of 0.05 mm2 (1 A) behind 2.1 In of the fuse.
    thin = {"length": "1 m", "wire": {"area": "0.05 mm2"}}
    for fuse, holds in (("0.69 A", True), ("0.7 A", False)):
        lead = solved(tmp_path, {"supply.lead": thin, "fuse": fuse}).protection.sections[0]
        assert (lead.key, lead.limit_a, lead.holds) == ("lead", 1.0, holds)


def test_one_low_led_among_nominal_ones_takes_more_than_its_share(tmp_path: Path) -> None:
    # By hand: 50 mV at 0.09 V per e-fold is exp(0.05/0.09) = 1.74 times the current; the ohms hold some back.
    found = solved(tmp_path, {})
    ratio = found.margins.runs[0].low_led_a / found.solution.runs[0].led_a.max()
    assert 1.2 < ratio < 1.75
