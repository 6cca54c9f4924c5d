"""Cautions of the guide, and their place: first of all, and again at the step where they bite."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace

from guidegen.guide.blocks import Caution
from guidegen.guide.format import NO_BREAK, slug
from guidegen.locale import _
from guidegen.safety.findings import LEVELS, Finding
from guidegen.safety.words import CautionText, described

#: The space between a number and its unit, which no line may end at.
_BEFORE_UNIT = re.compile(r"(?<=\d) (?=(?:[mk]?[AVWΩ]|c?m|mm²|°C|%)(?!\w))")
#: A word that rules and steps share: what a danger is about.
Topic = str


@dataclass(frozen=True)
class Placed:
    """A caution and the topics of its rule."""

    caution: Caution
    topics: tuple[Topic, ...]


def placed_cautions(findings: Iterable[Finding]) -> tuple[Placed, ...]:
    """One caution a rule, most severe first."""
    return tuple(
        Placed(_caution(text), (text.rule, *text.topics))
        for text in sorted(described(findings), key=lambda text: LEVELS.index(text.level))
        if text.level != "refusal"
    )


def _caution(text: CautionText) -> Caution:
    assert text.level != "refusal", "there is no guide to a refused project"
    return Caution(
        anchor=slug(text.rule),
        signal=text.level,
        word=text.signal_word,
        title=text.title,
        hazard=_unbroken(text.hazard),
        consequence=_unbroken(text.consequence),
        avoid=tuple(_unbroken(line) for line in text.avoid),
        source=_("Why: {reason} Source: {source}.").format(
            reason=text.reason, source=text.source.rstrip(".")
        ),
    )


def _unbroken(text: str) -> str:
    """The text with its numbers kept beside their units."""
    return _BEFORE_UNIT.sub(NO_BREAK, text)


#: Topics that almost every rule of their kind carries; they place only what nothing else places.
_BROAD: tuple[Topic, ...] = ("supply", "strings-identify")


def cautions_of_steps(
    placed: Sequence[Placed], steps: Sequence[tuple[Topic, ...]], told: Iterable[str] = ()
) -> tuple[tuple[Caution, ...], ...]:
    """For each step, given by its topics, the cautions that bite there.

    A step may name a rule, which then stands at such steps only.  The whole
    box stands at the first step, one line at the later ones; a notice, about no
    injury, stands once.  `told` are anchors of boxes that stand whole before
    the first step.
    """
    chosen = [_words_for(each.topics, steps) for each in placed]
    seen = set(told)
    found = []
    for topics in steps:
        here = []
        for each, words in zip(placed, chosen, strict=True):
            again = each.caution.anchor in seen
            if words & set(topics) and not (again and each.caution.signal == "notice"):
                here.append(replace(each.caution, full=not again))
                seen.add(each.caution.anchor)
        found.append(tuple(here))
    return tuple(found)


def _words_for(topics: tuple[Topic, ...], steps: Sequence[tuple[Topic, ...]]) -> set[Topic]:
    """The words a caution is placed by: its rule's name, else narrow topics, else broad ones."""
    used = {topic for step in steps for topic in step}
    rule, *others = topics
    narrow = {topic for topic in others if topic not in _BROAD}
    for words in ({rule}, narrow, set(others)):
        if words & used:
            return words & used
    return set()
