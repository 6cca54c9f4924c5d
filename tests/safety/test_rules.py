"""The rules as data: each has its words, its reason and its source."""

from __future__ import annotations

import re
from collections import Counter
from string import Formatter

import pytest

from guidegen.safety.findings import LEVELS
from guidegen.safety.judge import ALL, HAZARDS
from guidegen.safety.rule import Rule
from guidegen.safety.topics import TOPICS

EVERY = pytest.mark.parametrize("rule", ALL, ids=lambda rule: rule.id)


@EVERY
def test_rule_has_reason_source_title_sentence_and_advice(rule: Rule[object]) -> None:
    for words in (rule.reason, rule.source, rule.title, rule.sentence):
        assert words.strip()
    assert rule.avoid
    assert all(sentence.endswith((".", "!")) for sentence in (rule.sentence, rule.reason, *rule.avoid))


@EVERY
def test_rule_has_a_level_a_topic_and_a_kebab_case_id(rule: Rule[object]) -> None:
    assert rule.level in LEVELS
    assert rule.topics
    assert set(rule.topics) <= set(TOPICS)
    assert rule.id == rule.id.lower()
    assert all(part.isalnum() for part in rule.id.split("-"))


@EVERY
def test_notices_alone_are_about_no_injury(rule: Rule[object]) -> None:
    # ANSI Z535.6: NOTICE is for what does not injure (from memory).
    assert bool(rule.consequence) == (rule.level != "notice")


@EVERY
def test_sentence_names_values_by_their_unit(rule: Rule[object]) -> None:
    names = [name for _text, name, _spec, _kind in Formatter().parse(rule.sentence) if name]
    assert all("{" not in name and name.isidentifier() for name in names)


def test_no_two_rules_share_an_id() -> None:
    assert [rule for rule, times in Counter(rule.id for rule in ALL).items() if times > 1] == []


def test_every_hazard_is_a_refusal() -> None:
    assert {rule.level for rule in HAZARDS} == {"refusal"}


#: Numbers that stand in words of the rules: names of classes and marks, times, and usual supply volts.
NUMBERS = ("Class 2", "IPX4", "IP44", "5 V, 12 V or 24 V", "24 V or less")


@EVERY
def test_limits_come_from_the_tables_not_from_the_words(rule: Rule[object]) -> None:
    said = re.sub(r"\{\w+\}", "", " ".join((rule.sentence, rule.consequence, rule.reason, *rule.avoid)))
    for name in NUMBERS:
        said = said.replace(name, "")
    assert not [letter for letter in said if letter.isdigit()], said


def test_no_rule_tells_how_to_work_on_the_mains() -> None:
    # Words of installation work, by hand; the guide leaves them to the qualified person.
    forbidden = (
        "live conductor",
        "neutral",
        "breaker",
        "junction box",
        "terminal block",
        "earth wire",
        "consumer unit",
    )
    for rule in ALL:
        said = " ".join((rule.sentence, rule.consequence, rule.reason, *rule.avoid)).lower()
        assert not [word for word in forbidden if word in said], rule.id
