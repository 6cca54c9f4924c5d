"""Findings as words: sentences with their numbers, whole cautions, and another language."""

from __future__ import annotations

from gettext import NullTranslations
from pathlib import Path

import pytest

from guidegen.locale import speaking
from guidegen.project.supply_at import AtHook, AtPoint
from guidegen.safety.amounts import shown
from guidegen.safety.findings import Finding
from guidegen.safety.words import describe, described, text
from tests.safety.projects import Changes, study_of

CROWDED: Changes = {
    "place.exposure": "open outdoors",
    "place.mains": "new fixed wiring",
    "supply.rated_current": "30 mA",
    "strings.drop.max_led_current": "3.2 mA",
    "strings.drop.between_bulbs": "unknown",
    "runs.0.bulbs": 8,
    "runs.0.resistor_rating": "0.125 W",
}


class Shouting(NullTranslations):
    """A language for tests: English, its sentences without numbers in capitals."""

    def gettext(self, message: str) -> str:
        return message if "{" in message else message.upper()


@pytest.mark.parametrize(
    ("name", "value", "text_of_it"),
    [
        ("running_w", 0.4267, "0.427 W"),
        ("led_a", 0.00625, "6.25 mA"),
        ("fault_a", 2.4, "2.4 A"),
        ("least_m", 3.5, "3.5 m"),
        ("least_m", 0.25, "25 cm"),
        ("way_m", 12.34, "12.34 m"),
        ("way_m", 120.0, "120 m"),
        ("supply_place", AtHook(3), "H3"),
        ("supply_place", AtPoint(-1.0, 0.5), "the point -1 m, 0.5 m"),
        ("supply_place", "start", "the start of the line"),
        ("supply_place", 2.5, "2.5 m along the line"),
        ("area_m2", 7e-8, "0.07 mm²"),
        ("wire_ohm", 0.8, "0.8 Ω"),
        ("shorted_c", 158.7, "159 °C"),
        ("load_percent", 0.836, "84 %"),
        ("evenness_ratio", 0.4567, "0.46"),
        ("upper_v", 1234.0, "1234 V"),
        ("upper_v", 123456.0, "123456 V"),
        ("tiny_v", 0.0, "0 V"),
        ("tiny_v", 0.0000123, "0.0000123 V"),
        ("wire", "the feeder", "the feeder"),
        ("assumed", ("one", "two"), "one, two"),
        ("count", 3, "3"),
    ],
)
def test_value_is_shown_with_the_unit_its_name_ends_in(name: str, value: object, text_of_it: str) -> None:
    assert shown({name: value})[name] == text_of_it


def test_text_of_a_short_wire_names_run_wire_both_lengths_and_the_place() -> None:
    values = {"wire": "the feeder", "way_m": 12.31, "stated_m": 12.28, "supply_place": AtHook(3)}
    assert text(Finding("wire-short-of-way", "notice", "back rail", values)) == (
        "back rail: With the supply at H3, the feeder has 12.31 m to go over the hooks; "
        "the file gives it 12.28 m."
    )


def test_text_names_the_run_and_the_numbers() -> None:
    finding = Finding("resistor-over-rating", "refusal", "shelf", {"running_w": 3.2, "bears_w": 2.0})
    assert text(finding) == "shelf: The resistor would run at 3.2 W; it bears 2 W."


def test_text_about_the_whole_project_names_nothing() -> None:
    assert text(Finding("sharp-tools", "caution")).startswith("Knives")


def test_caution_carries_signal_word_hazard_consequence_advice_and_topics() -> None:
    caution = describe(Finding("meter-on-amps", "caution"))
    assert caution.signal_word == "CAUTION"
    assert caution.title == "Meter on amps"
    assert caution.hazard.startswith("A meter set to amps is a short")
    assert caution.consequence
    assert len(caution.avoid) == 2
    assert caution.source == "common practice"
    assert caution.topics == ("meter",)


def test_one_caution_a_rule_names_every_run_and_says_the_same_sentence_once() -> None:
    cautions = described([Finding("dead-ends", "warning", "back"), Finding("dead-ends", "warning", "front")])
    assert [caution.hazard for caution in cautions] == [
        "back, front: Tails, far ends and cut stubs that feed nothing are live all the same."
    ]


def test_one_caution_a_rule_tells_different_numbers_one_by_one() -> None:
    hot = [
        Finding("resistor-hot-running", "caution", name, {"running_c": celsius})
        for name, celsius in (("back", 71.0), ("front", 84.0))
    ]
    (caution,) = described(hot)
    assert "back: In free air the resistor can reach about 71 °C" in caution.hazard
    assert "front: In free air the resistor can reach about 84 °C" in caution.hazard


def test_texts_follow_the_language_in_force() -> None:
    finding = Finding("resistor-over-rating", "refusal", "shelf", {"running_w": 3.2, "bears_w": 2.0})
    with speaking(Shouting()):
        assert describe(finding).title == "RESISTOR OVER ITS RATING"


@pytest.mark.parametrize("changes", [{}, CROWDED, {"supply.case": "opened", "place.near_water": "pond"}])
def test_every_finding_of_a_project_can_be_said(tmp_path: Path, changes: Changes) -> None:
    for finding in study_of(tmp_path, changes).findings:
        said = " ".join((text(finding), *describe(finding).avoid))
        assert "{" not in said
        assert "None" not in said


def test_name_with_braces_and_markup_is_said_as_it_is(tmp_path: Path) -> None:
    finding = Finding("dead-ends", "warning", "<b>{x}</b>")
    assert text(finding).startswith("<b>{x}</b>: ")
