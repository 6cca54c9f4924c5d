"""What the project file left unsaid although it matters, and what was assumed instead."""

from __future__ import annotations

from collections.abc import Iterator

from guidegen.locale import N_
from guidegen.safety.rule import Case, Hit, Rule

#: Keys that safety rests on, with what is assumed when the file is silent.
_ASSUMED: tuple[tuple[tuple[str, ...], str], ...] = (
    (("place", "near_water"), N_("no water near")),
    (("supply", "output"), N_("output DC")),
    (("supply", "type"), N_("constant voltage")),
    (("supply", "tolerance"), N_("supply tolerance 5 %")),
    (("supply", "stands"), N_("supply indoors")),
    (("supply", "current_limit"), N_("current into a short as rated")),
)


def left_unsaid(case: Case) -> Iterator[Hit]:
    """One hit with everything that was assumed, if anything was."""
    assumed = tuple(words for key, words in _ASSUMED if not case.states(*key))
    if assumed:
        yield Hit("", {"assumed": assumed})


RULES: tuple[Rule[Case], ...] = (
    Rule(
        id="not-stated",
        level="notice",
        topics=("supply", "strings-identify"),
        title=N_("Taken for granted"),
        sentence=N_("The project file does not say it, so this is assumed: {assumed}."),
        consequence="",
        avoid=(N_("Check each one; where it is otherwise, say so in the file and build the guide again."),),
        reason=N_("Safety rests on these, and only the maker knows them."),
        source=N_("own policy"),
        applies=left_unsaid,
    ),
)
