"""What the rules find: a level, a rule's name, measured value and limit; the text is composed late."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Literal

Level = Literal["refusal", "danger", "warning", "caution", "notice"]

#: Most severe first.
LEVELS: tuple[Level, ...] = ("refusal", "danger", "warning", "caution", "notice")


@dataclass(frozen=True)
class Finding:
    """One thing that a rule found.

    `rule` names the rule ("resistor-shorted"); `subject` what it is about
    (the name of a run, string or wire; empty for the whole project);
    `values` hold what the rule's text is composed with: numbers in SI under
    keys that end in their unit (`running_w`), and words of our own that are
    translated when they are shown.
    """

    rule: str
    level: Level
    subject: str = ""
    values: dict[str, object] = field(default_factory=dict)
