"""The sentences come from the figures; the expected ones are put together by hand."""

from __future__ import annotations

from dataclasses import replace

import pytest

from guidegen.choose.choice import Change, Choice, Miss, Proposal, Rival
from guidegen.choose.choose import choose
from guidegen.choose.why import assumptions, in_words, more, name_of, title_of, why, why_none
from guidegen.locale import speaking_language
from guidegen.study import fit_leds
from tests.choose.making import thirty


@pytest.fixture(scope="module")
def choice() -> Choice:
    project = thirty(evenness=0.5)
    return choose(project, fit_leds(project))


def costing(proposal: Proposal, **cost: object) -> Proposal:
    return replace(proposal, cost=replace(proposal.cost, **cost))


def test_numbers_to_eight_are_words() -> None:
    assert [in_words(number) for number in (1, 2, 8, 9)] == ["one", "two", "eight", "9"]


def test_no_cuts_are_a_phrase_of_their_own(choice: Choice) -> None:
    """In German the answer "no" is another word than the one of "no cuts"."""
    uncut = costing(choice.proposals[0], cuts=0)
    alone = replace(choice, proposals=(uncut,))
    assert " and no cuts" in why(uncut, alone)
    with speaking_language("de"):
        assert "keine Schnitte" in why(uncut, alone)
        assert "nein" not in why(uncut, alone)


def test_names_of_typical_prices_are_translated(choice: Choice) -> None:
    wired = costing(choice.proposals[0], typical=("wire", "joint"))
    with speaking_language("de"):
        told = assumptions(replace(choice, proposals=(wired,)))[-1]
    assert "Leitung" in told
    assert "wire" not in told and "joint" not in told


def test_the_name_counts_runs_that_are_alike(choice: Choice) -> None:
    assert name_of(choice.proposals[0]) == "two runs of 15, fed at opposite ends"


def test_the_first_tells_what_it_gives_and_costs_and_what_another_feed_would_give(choice: Choice) -> None:
    first = replace(
        costing(choice.proposals[0], extra_wire_m=3.0, cuts=1),
        rival=Rival("one end", 0.2345),
    )
    alone = replace(choice, proposals=(first,))
    assert why(first, alone) == (
        f"Two runs of 15, fed at opposite ends: evenness {first.evenness:.2f} for 3 m of extra wire and one "
        "cut; fed at one end it would be 0.23."
    )


def test_any_other_tells_what_it_gains_and_costs_against_the_first(choice: Choice) -> None:
    first = costing(choice.proposals[0], money=10.0)
    other = costing(choice.proposals[1], money=12.5)
    more = round(other.evenness, 2) - round(first.evenness, 2)
    sentence = why(other, replace(choice, proposals=(first, other)))
    side = "more" if more >= 0 else "less"
    assert sentence.endswith(f"against the first {abs(more):.2f} {side} even and 2.50 EUR dearer.")


@pytest.mark.parametrize(
    ("one", "other", "expected"),
    [(0.5049, 0.5051, -0.01), (0.5051, 0.5149, 0.0), (0.6, 0.6, 0.0), (1.005, 0.0, 1.0)],
)
def test_figures_differ_as_they_read(one: float, other: float, expected: float) -> None:
    # By hand from two decimals: 0.50 and 0.51; 0.51 and 0.51; 1.005 is held a little below itself.
    assert more(one, other) == expected


def test_those_of_one_name_are_told_apart_by_the_first_thing_that_does(choice: Choice) -> None:
    first = choice.proposals[0]
    further = costing(first, feeder_m=9.0)
    told = [title_of(each, replace(choice, proposals=(first, further))) for each in (first, further)]
    assert told[0] != told[1]
    assert told[1].startswith("two runs of 15, fed at opposite ends, 9.00\u00a0m of feeder and ")


def test_two_that_differ_by_their_wire_alone_say_so(choice: Choice) -> None:
    first = choice.proposals[0]
    sentence = why(first, replace(choice, proposals=(first, first)))
    assert sentence.startswith("Two runs of 15, fed at opposite ends, wire of ")


def test_leds_that_get_too_little_are_told(choice: Choice) -> None:
    first = replace(choice.proposals[0], led_share=0.5)
    assert "its LEDs get 50 % of the current aimed at" in why(first, replace(choice, proposals=(first,)))


def test_nothing_is_said_of_a_miss_when_there_is_none(choice: Choice) -> None:
    assert why_none(choice) == ""


def test_a_miss_is_told_with_what_stands_in_the_way_and_the_smallest_change(choice: Choice) -> None:
    changes = (Change("evenness", 0.9, 0.84), Change("led current", 3e-3, 1e-3), Change("supply volts", 5, 9))
    told = why_none(replace(choice, miss=Miss(("wire resistance", "supply rating"), changes)))
    assert told == (
        "No arrangement meets the goals; the first comes nearest. In the way: the resistance of the string's "
        "wire, the supply's rated current. The smallest change that would do: a goal of 0.84 for evenness "
        "instead of 0.90. Or: an LED current of at most 1 mA instead of 3 mA; a supply of 9 V instead of 5 V."
    )


def test_typical_prices_are_marked_as_such(choice: Choice) -> None:
    assert assumptions(choice)[-1] == (
        "Typical prices, own assumption, stand in for: wire, resistors, fuse, joints."
    )
