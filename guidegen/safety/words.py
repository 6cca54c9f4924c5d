"""Findings as words: one sentence for a list, or a whole caution for the guide."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace

from guidegen.locale import N_, _
from guidegen.safety.amounts import shown
from guidegen.safety.findings import Finding, Level
from guidegen.safety.judge import RULE_BY_ID

_SIGNAL_WORDS: dict[Level, str] = {
    "refusal": N_("STOP"),
    "danger": N_("DANGER"),
    "warning": N_("WARNING"),
    "caution": N_("CAUTION"),
    "notice": N_("NOTICE"),
}


@dataclass(frozen=True)
class CautionText:
    """A finding in full, translated.

    `hazard` says what was found, `consequence` what can happen (empty in a
    notice), `avoid` what to do or what to do instead, `reason` why.
    """

    rule: str
    level: Level
    signal_word: str
    title: str
    hazard: str
    consequence: str
    avoid: tuple[str, ...]
    reason: str
    source: str
    topics: tuple[str, ...]


def signal_word(level: Level) -> str:
    """The word that heads a finding of this level, in the language in force."""
    return _(_SIGNAL_WORDS[level])


def text(finding: Finding) -> str:
    """What was found, in one sentence that names what it is about."""
    return _about([finding.subject], _sentence(finding))


def describe(finding: Finding) -> CautionText:
    """The finding in full."""
    rule = RULE_BY_ID[finding.rule]
    return CautionText(
        rule=rule.id,
        level=finding.level,
        signal_word=signal_word(finding.level),
        title=_(rule.title),
        hazard=text(finding),
        consequence=_(rule.consequence),
        avoid=tuple(_filled(sentence, finding) for sentence in rule.avoid),
        reason=_(rule.reason),
        source=_(rule.source),
        topics=rule.topics,
    )


def described(findings: Iterable[Finding]) -> tuple[CautionText, ...]:
    """One caution a rule, in the order of the findings; its hazard tells each thing that was found."""
    by_rule: dict[str, list[Finding]] = {}
    for finding in findings:
        by_rule.setdefault(finding.rule, []).append(finding)
    return tuple(replace(describe(same[0]), hazard=_together(same)) for same in by_rule.values())


def _together(findings: list[Finding]) -> str:
    """What one rule found in several places; the same sentence about two of them is said once."""
    subjects: dict[str, list[str]] = {}
    for finding in findings:
        subjects.setdefault(_sentence(finding), []).append(finding.subject)
    return " ".join(_about(names, sentence) for sentence, names in subjects.items())


def _about(subjects: list[str], sentence: str) -> str:
    named = ", ".join(subject for subject in subjects if subject)
    return _("{subject}: {sentence}").format(subject=named, sentence=sentence) if named else sentence


def _sentence(finding: Finding) -> str:
    return _filled(RULE_BY_ID[finding.rule].sentence, finding)


def _filled(sentence: str, finding: Finding) -> str:
    return _(sentence).format(**shown(finding.values))
