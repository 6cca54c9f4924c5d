"""Test resistors: where shorts are looked for, they get hot, and the steps say so."""

from __future__ import annotations

import pytest

from guidegen.guide.steps.finish import _again_v
from tests.guide.projects import Made, example


@pytest.fixture(scope="module")
def volts_24() -> Made:
    return example("volts-24")


def plain_text(text: str) -> str:
    return text.replace("\u00a0", " ")


def test_a_short_is_told_with_its_heat_where_a_test_resistor_lights_a_run(volts_24: Made) -> None:
    """68 ohm of 10 W: (24.72 V)^2 / 64.6 ohm = 9.46 W; 35 degC and 205 K x 0.946 = 229 degC, by hand."""
    for step in (volts_24.step("larger-resistor-run-1"), volts_24.step("larger-resistor-run-2")):
        assert "little heat unless there is a short" in step.why
        assert "Then the 68 Ω resistor gets to about 229 °C: unplug at once" in plain_text(step.why)
        assert "nothing gets hot" not in step.why
    lines = [plain_text(line) for line in volts_24.step("bench-reading").do]
    assert any("may be a short: the resistor gets to 229 °C" in line for line in lines)


def test_first_power_does_not_promise_that_no_heat_shows(volts_24: Made) -> None:
    group = next(each for each in volts_24.page("build.html").groups if each.anchor == "first-power")
    assert "not in heat" not in group.intro
    assert "Only a short makes that resistor hot" in group.intro


def test_the_hot_test_resistor_is_boxed_first_on_the_bench_and_again_at_first_power(
    volts_24: Made, bench: Made
) -> None:
    for made in (volts_24, bench):
        boxed = {
            step.identity: each.full
            for step in made.steps
            for each in step.cautions
            if each.anchor == "test-resistor-hot"
        }
        first = [f"larger-resistor-run-{index + 1}" for index in range(len(made.matter.runs))]
        assert boxed == {"bench-reading": True, **dict.fromkeys(first, False)}


def test_a_test_resistor_is_rated_for_twice_its_short_where_the_series_has_it(
    volts_24: Made, bench: Made
) -> None:
    """By hand: 22 ohm in the sample takes 1.37 W, so 3 W; 68 ohm at 24 V 9.46 W, and 10 W is the most."""
    rated = {power.ohm: power.trial.rating_w for power in bench.matter.bench_powers.values()}
    assert rated == {22.0: 3.0}
    assert {power.trial.rating_w for power in volts_24.matter.first_powers} == {10.0}


def test_what_the_bench_asks_for_is_on_the_list_of_parts(plain: Made, two_kinds: Made) -> None:
    for made in (plain, two_kinds):
        listed = {power.ohm for power in made.matter.first_powers}
        listed |= {power.ohm for power in made.matter.bench_powers.values()}
        assert made.matter.next_readings
        for wanted in made.matter.next_readings.values():
            assert {each.resistor_ohm for each in wanted.asked} <= listed
            assert {each.supply_v for each in wanted.asked} == {made.matter.arrangement.supply.voltage_v}


def test_readings_that_gain_nothing_are_not_asked_for(volts_24: Made) -> None:
    """Its LEDs are given more closely than one bench reading tells."""
    assert volts_24.matter.next_readings == {}
    assert "bench reading" not in volts_24.step("bench-reading").why


def test_a_wrong_resistor_or_a_loose_terminal_is_found_before_power(bench: Made) -> None:
    for index in range(len(bench.matter.runs)):
        assert any(
            text.startswith("Too much or “OL”: a wrong resistor")
            for text in bench.step("all-runs").checks[index].if_not
        )


def test_a_second_reading_may_differ_by_what_meter_and_supply_allow(volts_24: Made, bench: Made) -> None:
    """24 V: 2 x (0.12 + 0.02) + 0.12 = 0.4 V; 2 V of 5.1 V: 2 x (0.01 + 0.02) + 0.0255, so 0.1 V; by hand."""
    assert _again_v(volts_24.matter, 24.0) == pytest.approx(0.4)
    assert _again_v(bench.matter, 2.0) == pytest.approx(0.1)
    assert any(
        "by more than 0.4 V" in plain_text(text)
        for check in volts_24.step("first-hour").checks
        for text in check.if_not
    )
