"""What the project file left unsaid although it matters, and what was assumed instead."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from guidegen.locale import N_
from guidegen.project.keys import key_text
from guidegen.safety.rule import Case, Hit, Rule, when

#: Keys that safety rests on, with what is assumed when the file is silent.
_ASSUMED: tuple[tuple[tuple[str, ...], str], ...] = (
    (("place", "near_water"), N_("no water near")),
    (("place", "children_or_animals"), N_("small children or animals come near")),
    (("supply", "approved"), N_("the supply's approval is not known")),
    (("supply", "output"), N_("output DC")),
    (("supply", "type"), N_("constant voltage")),
    (("supply", "tolerance"), N_("supply tolerance 5 %")),
    (("supply", "stands"), N_("supply indoors")),
    (("supply", "current_limit"), N_("current into a short as rated")),
    (("supply", "limited_power"), N_("no mark of limited power")),
    (("supply", "unregulated"), N_("the supply may be without regulation")),
)
#: Keys of the place that matter outdoors only.
_OUTDOORS: tuple[tuple[tuple[str, ...], str], ...] = (
    (("place", "over_path"), N_("people pass below the lights")),
)
#: Keys of every kind of string in use, likewise.
_OF_STRINGS: tuple[tuple[str, str], ...] = (
    ("runs_on", N_("strings made for low voltage")),
    ("wires", N_("two wires from bulb to bulb")),
    ("box", N_("the string's box is cut off")),
)
_OF_STRINGS_OUTDOORS: tuple[tuple[str, str], ...] = (("waterproof", N_("strings not made for rain")),)


def left_unsaid(case: Case) -> Iterator[Hit]:
    """One hit with everything that was assumed, if anything was."""
    outside = case.project.place.exposure != "indoors"
    keys = _ASSUMED + (_OUTDOORS if outside else ())
    of_strings = _OF_STRINGS + (_OF_STRINGS_OUTDOORS if outside else ())
    names = [name for name, _kind in case.used_strings]
    unsaid = {words: key_text(key) for key, words in keys if not case.states(*key)}
    unsaid |= {
        words: key_text(("strings", names[0] if len(names) == 1 else N_("NAME"), key))
        for key, words in of_strings
        if not all(case.states("strings", name, key) for name in names)
    }
    if unsaid:
        yield Hit("", {"assumed": tuple(unsaid), "keys": tuple(unsaid.values())})


def runs_left_out(case: Case) -> Iterable[Hit]:
    """One hit if the file has no runs, so that the arrangement is a proposal."""
    return when(not case.states("runs"), count=len(case.arrangement.runs))


RULES: tuple[Rule[Case], ...] = (
    Rule(
        id="runs-proposed",
        level="notice",
        topics=("goals",),
        title=N_("The arrangement is a proposal"),
        sentence=N_(
            "The project file has no runs, so they are proposed; number of runs here: {count}. Assumed: they "
            "hang one after the other along one line, each with its first bulb towards the supply."
        ),
        consequence="",
        avoid=(
            N_("Measure feeders and extra wires where they will hang, and write the runs into the file."),
        ),
        reason=N_("Lengths of wire follow from the place, which the file tells only in part."),
        source=N_("own assumption"),
        applies=runs_left_out,
    ),
    Rule(
        id="not-stated",
        level="notice",
        topics=("supply", "strings-identify"),
        title=N_("Taken for granted"),
        sentence=N_("The project file does not say it, so this is assumed: {assumed}."),
        consequence="",
        avoid=(
            N_("Check each one; say in the file what is so, and build the guide again. The keys: {keys}."),
        ),
        reason=N_("Safety rests on these, and only the maker knows them."),
        source=N_("own policy"),
        applies=left_unsaid,
    ),
)
