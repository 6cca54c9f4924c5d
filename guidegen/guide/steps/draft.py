"""A step before it has a number and its cautions."""

from __future__ import annotations

from dataclasses import dataclass

from guidegen.guide.blocks import Check, OwnWords
from guidegen.guide.cautions import Topic
from guidegen.guide.tools import Tool


@dataclass(frozen=True)
class Draft:
    """One step; `topics` are the dangers it brings, `picture` a picture's id or empty.

    `own` is what the maker adds; `is_own`: a step that is the maker's altogether.
    """

    identity: str
    title: str
    why: str
    do: tuple[str, ...]
    parts: tuple[str, ...] = ()
    tools: tuple[Tool, ...] = ()
    topics: tuple[Topic, ...] = ()
    checks: tuple[Check, ...] = ()
    picture: str = ""
    own: OwnWords | None = None
    is_own: bool = False


@dataclass(frozen=True)
class DraftGroup:
    """Steps that belong together."""

    anchor: str
    title: str
    intro: str
    steps: tuple[Draft, ...]
