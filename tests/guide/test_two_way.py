"""Two-way strings: which bulbs shine is told, plus is found by them, ohms are read both ways."""

from __future__ import annotations

from typing import Any

import pytest

from guidegen.guide.lit import numbers_text
from tests.guide.projects import EXTRA, FEEDER, Made, changed, fed, make

HALF, EACH = "half", "half of each bulb"


def two_way(lit: str, *runs: dict[str, Any], **strings: Any) -> Made:
    """A build of two-way strings; of each bulb half can light only if its groups are even in number."""
    keys = {f"strings__drop__{key}": value for key, value in strings.items()}
    return make(
        changed(
            strings__drop__lit_on_dc=lit,
            strings__drop__leds_per_bulb=4,
            **keys,
            runs=list(runs) or [fed("one end")],
        )
    )


@pytest.fixture(scope="module")
def half() -> Made:
    return two_way(HALF)


@pytest.fixture(scope="module")
def each() -> Made:
    return two_way(EACH)


@pytest.fixture(scope="module")
def odd() -> Made:
    """Strings of 9 bulbs: 14 of them in the first run, and 4 from bulb 6 of the second on in the second."""
    return two_way(HALF, fed("one end", 14), {**fed("one end", 4), "name": "sill"}, bulbs=9)


@pytest.fixture(scope="module")
def mixed() -> Made:
    """A two-way run and a one-way one, outdoors."""
    star = {"name": "sill", "string": "star", "bulbs": 8, "resistor": "22 ohm", "feeder": FEEDER}
    project = changed(place__exposure="open outdoors", runs=[{**fed("one end"), "string": "drop"}, star])
    project["strings"]["star"] = {**project["strings"]["drop"], "bulbs": 8}
    project["strings"]["drop"]["lit_on_dc"] = HALF
    return make(project)


def said(made: Made, identity: str) -> str:
    """All that a step says: why, what to do, and every check with its ways out."""
    step = made.step(identity)
    checks = [
        " ".join((each.what, each.meter, each.expected, each.range, *each.if_not)) for each in step.checks
    ]
    return " ".join([step.title, step.why, *step.do, *checks]).replace("\u00a0", " ")


@pytest.mark.parametrize(
    ("numbers", "expected"),
    [
        ((), "none"),
        ((3,), "3"),
        ((1, 3, 5, 7), "1, 3, 5, 7"),
        ((1, 3, 5, 7, 9, 11), "1, 3, 5, … 11"),
        ((1, 3, 5, 7, 9, 10, 12), "1, 3, 5, … 9, 10, 12"),
    ],
)
def test_long_rows_of_numbers_are_cut_short(numbers: tuple[int, ...], expected: str) -> None:
    assert numbers_text(numbers) == expected


def test_on_the_bench_plus_is_told_by_the_bulbs_that_shine(half: Made) -> None:
    """DESIGN, section 3: of 12 bulbs 1, 3, 5, 7, 9, 11 are lit."""
    text = said(half, "bench-reading")
    assert "the others stay dark, plus is the wire at the resistor: 1, 3, 5, … 11." in text
    assert "If these shine instead, unplug at once and swap the two wires: 2, 4, 6, … 12." in text
    assert "lit: 1, 3, 5, … 11; dark: 2, 4, 6, … 12" in text


@pytest.mark.parametrize("identity", ["bench-reading", "test-pieces-run-1"])
def test_where_half_of_each_bulb_lights_either_way_works(each: Made, identity: str) -> None:
    text = said(each, identity)
    assert "either way works. Choose one: plus is the wire at the resistor." in text


@pytest.mark.parametrize("lit", [HALF, EACH])
def test_nothing_waits_for_a_two_way_string_to_be_dark(lit: str) -> None:
    made = two_way(lit)
    for identity in ("bench-reading", "test-pieces-run-1"):
        assert not any(line.startswith("Dark: unplug") for line in made.step(identity).do)
        assert "only stays dark" not in made.step(identity).why


def test_every_piece_has_its_own_numbers(odd: Made) -> None:
    """By hand: string 1 is bulbs 1 to 9 of the run; bulbs 1, 3, 5 of string 2 are 10, 12, 14."""
    do = odd.step("test-pieces-run-1").do
    assert {"Piece 1: 1, 3, 5, … 9.", "Piece 2: 10, 12, 14."} <= set(do)
    assert "lit: 1, 3, 5, … 9, 10, 12, 14; the others dark" in said(odd, "test-pieces-run-1")


def test_a_piece_that_begins_with_an_even_bulb_is_counted_in_the_run(odd: Made) -> None:
    """By hand: bulbs 6 to 9 of string 2 are 1 to 4 of the run; 7 and 9 light, so 2 and 4."""
    assert "Piece 1: 2, 4." in odd.step("test-pieces-run-2").do


def test_a_piece_of_which_nothing_lights_is_told_by_its_other_bulb() -> None:
    """By hand: of 12 bulbs 11 are in the first run; bulb 12, which is dark, is 1 of the second."""
    made = two_way(HALF, fed("one end", 11), {**fed("one end", 4), "name": "sill"}, bulbs=12)
    assert "Piece 1: none; the other way round 1 shines." in made.step("test-pieces-run-2").do


def test_first_power_names_the_bulbs_that_glow(half: Made, each: Made, plain: Made) -> None:
    assert "glow dimly, the others stay dark: 1, 3, 5, … 11." in said(half, "larger-resistor-run-1")
    assert "Every bulb glows dimly, with half of its LEDs." in said(each, "larger-resistor-run-1")
    assert "Every bulb glows dimly. Take" in said(plain, "larger-resistor-run-1")


def test_with_all_runs_on_the_bulbs_that_shine_are_named(half: Made, each: Made, plain: Made) -> None:
    assert "“shelf”: these bulbs shine, the others stay dark: 1, 3, 5, … 11." in half.step("all-runs").do
    assert "“shelf”: every bulb shines, with half of its LEDs." in each.step("all-runs").do
    assert "no bulb dark" not in said(half, "all-runs")
    assert "no bulb dark" in said(plain, "all-runs")


def test_no_step_leaves_open_what_is_meant_to_light(half: Made, each: Made, plain: Made) -> None:
    for made in (half, each, plain):
        assert not [step.identity for step in made.steps if "meant to light" in said(made, step.identity)]


@pytest.mark.parametrize("lit", [HALF, EACH])
@pytest.mark.parametrize("feed", ["one end", "both ends"])
def test_no_step_says_that_two_way_leds_block(lit: str, feed: str) -> None:
    made = two_way(lit, fed(feed))
    assert not [step.identity for step in made.steps if "so that the LEDs block" in said(made, step.identity)]


@pytest.mark.parametrize("identity", ["cold-test-run-1", "close-joints"])
def test_a_short_of_a_two_way_string_is_looked_for_both_ways(half: Made, identity: str) -> None:
    text = said(half, identity)
    assert "once red lead on −, black lead on +, then the other way round" in text
    assert "“OL” or more than 100 Ω, both ways" in text
    assert "The same few ohms both ways: a short." in text


def test_one_way_runs_beside_two_way_ones_keep_their_test(mixed: Made) -> None:
    """Outdoors the one-way run is tested for damp too, which high ohms of the other would hide."""
    checks = mixed.step("close-joints").checks
    block = [check for check in checks if "so that the LEDs block" in check.meter]
    both = [check for check in checks if "then the other way round" in check.meter]
    assert ["sill" in check.what and "shelf" not in check.what for check in block] == [True]
    assert ["shelf" in check.what and "sill" not in check.what for check in both] == [True]
    assert any("sill" in check.what and "MΩ" in check.range for check in checks)


def test_terminals_without_leds_are_tested_without_a_word_of_leds(plain: Made) -> None:
    assert not any("LEDs" in check.meter for check in plain.step("fuse-holder").checks)


def test_the_first_page_says_which_bulbs_shine(half: Made, plain: Made) -> None:
    assert "“shelf”: these bulbs shine, the others stay dark: 1, 3, 5, … 11." in half.page("index.html").what
    assert not any("stay dark" in line for line in plain.page("index.html").what)


def test_what_is_dark_and_should_not_be_is_looked_for(half: Made) -> None:
    assert "bulbs dark that should shine" in said(half, "readings-run-1")


def test_every_two_way_picture_is_of_its_kind(half: Made, each: Made, plain: Made) -> None:
    assert half.step("test-pieces-run-1").picture == "step-half-piece-1"
    assert each.step("test-pieces-run-1").picture == "step-either-way-piece"
    assert plain.step("test-pieces-run-1").picture == "step-test-piece"


def test_an_extra_pair_of_a_two_way_run_is_tested_both_ways() -> None:
    made = two_way(HALF, {**fed("both ends"), "extra_wire": EXTRA})
    assert any("then the other way round" in check.meter for check in made.step("far-end-run-1").checks)
