"""Checks of the runs, each by itself and against the strings."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator

from guidegen.locale import _
from guidegen.project.complaint import Complaint
from guidegen.project.keys import Key
from guidegen.project.schema import MOST_BULBS, Project, Run
from guidegen.project.words import numbered_run
from guidegen.project.writing import nearest


def run_name(index: int, run: Run) -> str:
    """The run's name, or the one it gets by its place in the list (from 0)."""
    return run.name if run.name is not None else numbered_run(index)


def kind_of(project: Project, run: Run) -> str | None:
    """The kind of string of a run; the only kind where it is left out; None if that is not known."""
    if run.string is not None:
        return run.string
    return next(iter(project.strings)) if len(project.strings) == 1 else None


def runs_there(project: Project) -> Iterator[Complaint]:
    """A list of runs has runs in it; without the key they are proposed."""
    if project.runs is not None and not project.runs:
        expected = _("a list of runs: stretches of bulbs, each fed through one resistor")
        mend = _("write the runs, each behind a dash, or delete the key runs to have them proposed")
        yield Complaint(("runs",), expected, mend)


def names_differ(project: Project) -> Iterator[Complaint]:
    """No two runs have one name, whatever the letters' case."""
    first: dict[str, int] = {}
    for index, run in enumerate(project.runs or ()):
        name = run_name(index, run)
        other = first.setdefault(name.casefold(), index)
        if other != index:
            expected = _("a name that no other run has; run {number} has it").format(number=other + 1)
            yield Complaint(("runs", index, "name"), expected, _("give this run a name of its own"), name)


def string_known(project: Project, index: int, run: Run) -> Iterator[Complaint]:
    """A run is made of a kind of string that is in the file."""
    kinds = list(project.strings)
    expected = _("one of the strings in this file: {names}").format(names=", ".join(kinds))
    key = ("runs", index, "string")
    if run.string is None and len(kinds) > 1:
        yield Complaint(key, expected, _("add the key string; it may be left out only with one kind"))
    elif run.string is not None and run.string not in project.strings:
        near = nearest(run.string, kinds)
        mend = _("did you mean {name}?").format(name=near) if near else _("write one of these names")
        yield Complaint(key, expected, mend)


def bulbs_enough(project: Project) -> Iterator[Complaint]:
    """The runs of a kind use no more bulbs than were bought; told at the first run beyond."""
    used: dict[str, int] = defaultdict(int)
    for index, run in enumerate(project.runs or ()):
        kind = kind_of(project, run)
        if kind is None or kind not in project.strings:
            continue
        string = project.strings[kind]
        bought = string.bought * string.bulbs
        if used[kind] <= bought < used[kind] + run.bulbs:
            expected = _("at most {left} bulbs; {bought} of {name} were bought, {used} are in earlier runs")
            yield Complaint(
                ("runs", index, "bulbs"),
                expected.format(left=bought - used[kind], bought=bought, name=kind, used=used[kind]),
                _("use fewer bulbs, or raise strings.{name}.bought").format(name=kind),
            )
        used[kind] += run.bulbs


def not_too_many(project: Project) -> Iterator[Complaint]:
    """The solver is made for so many bulbs."""
    total = sum(run.bulbs for run in project.runs or ())
    if total > MOST_BULBS:
        expected = _("at most {count} bulbs in all runs together").format(count=MOST_BULBS)
        came = _("{count} bulbs").format(count=total)
        yield Complaint(("runs",), expected, _("split the project into several files"), came)


def extra_wire(key: Key, run: Run) -> Iterator[Complaint]:
    """Every feed but one end needs extra wire, and one end has no use for it."""
    inner = (*key, "extra_wire")
    if run.feed == "one end" and run.extra_wire is not None:
        expected = _("no extra_wire with the feed one end")
        yield Complaint(inner, expected, _("delete extra_wire, or write the feed that uses it"))
    if run.feed != "one end" and run.extra_wire is None:
        expected = _("the wire that the feed {feed} needs: length and wire").format(feed=run.feed)
        mend = _("add extra_wire: {length: 2 m, wire: {area: 0.5 mm2}} with your own figures, or use one end")
        yield Complaint(inner, expected, mend)


def resistor_there(key: Key, run: Run) -> Iterator[Complaint]:
    """Without a resistor there is nothing to rate."""
    for word in ("resistor_rating", "resistor_kind"):
        if run.resistor == "none" and getattr(run, word) is not None:
            expected = _("no {key} with resistor: none").format(key=word)
            yield Complaint((*key, word), expected, _("delete it, or write the resistor's ohms"))
