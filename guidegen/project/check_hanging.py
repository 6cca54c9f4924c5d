"""Checks of the hanging plan, in itself and against the runs."""

from __future__ import annotations

import itertools
import math
from collections.abc import Iterator

from guidegen.locale import _
from guidegen.project.check_runs import run_name
from guidegen.project.complaint import Complaint
from guidegen.project.hung import Hanging, Line
from guidegen.project.keys import Key
from guidegen.project.schema import Project
from guidegen.project.writing import nearest

#: Hooks nearer to each other are one hook, metre.
NEAREST_M = 0.01


def lines_there(hanging: Hanging) -> Iterator[Complaint]:
    """A hanging plan has hooks in it."""
    if not hanging.lines:
        expected = _("a list of lines: hooks in a row, each list entry behind a dash")
        yield Complaint(("hanging", "lines"), expected, _("write the hooks, or delete the key hanging"))


def guide_wire(hanging: Hanging) -> Iterator[Complaint]:
    """What is said of a guide wire needs one."""
    for word in ("guide_wire_weight", "guide_wire_strength"):
        if hanging.guide_wire == "no" and getattr(hanging, word) is not None:
            expected = _("{key} only with guide_wire: yes").format(key=word)
            yield Complaint(("hanging", word), expected, _("write guide_wire: yes, or delete it"))


def hooks_or_spans(key: Key, line: Line) -> Iterator[Complaint]:
    """A line has either hooks or spans, and enough of them."""
    if (line.hooks is None) == (line.spans is None):
        expected = _("either hooks or spans")
        mend = _("write spans: [2 m, 2 m] for a straight row, or hooks with x and y of each")
        yield Complaint(key, expected, mend)
    elif line.hooks is not None and len(line.hooks) < 2:
        yield Complaint((*key, "hooks"), _("at least two hooks"), _("add the hook at the other end"))
    elif line.spans is not None and not line.spans:
        yield Complaint((*key, "spans"), _("at least one span"), _("write the distance between two hooks"))


def hooks_apart(key: Key, line: Line) -> Iterator[Complaint]:
    """No hook is where the one before it is."""
    hooks = line.hooks or ()
    for index in range(1, len(hooks)):
        here, before = hooks[index], hooks[index - 1]
        if math.hypot(here.x - before.x, here.y - before.y) < NEAREST_M:
            expected = _("a hook at least {least:g} cm from the one before it").format(least=100 * NEAREST_M)
            yield Complaint((*key, "hooks", index), expected, _("check x and y, or leave this hook out"))


def sag_or_length(hanging: Hanging, key: Key, line: Line) -> Iterator[Complaint]:
    """How deep it hangs is told once."""
    if line.sag is not None and line.length is not None:
        mend = _("delete one of the two; the other follows from it")
        yield Complaint((*key, "length"), _("either sag or length"), mend)
    elif line.sag is None and line.length is None and hanging.sag is None:
        yield Complaint(key, _("how deep this line hangs"), _("add sag: 10 cm with your own figure"))


def long_enough(key: Key, line: Line) -> Iterator[Complaint]:
    """The wire of a line reaches from its first hook to its last."""
    straight = sum(spans_m(line))
    if line.length is not None and line.length <= straight:
        expected = _("more than {straight:.4g} m, which is the way from hook to hook").format(
            straight=straight
        )
        mend = _("give the wire some slack; a wire pulled straight tears its hooks out")
        yield Complaint((*key, "length"), expected, mend)


def spans_m(line: Line) -> list[float]:
    """Straight distances from hook to hook, heights left out."""
    if line.spans is not None:
        return list(line.spans)
    hooks = line.hooks or ()
    return [math.hypot(b.x - a.x, b.y - a.y) for a, b in itertools.pairwise(hooks)]


def runs_named(project: Project, hanging: Hanging) -> Iterator[Complaint]:
    """Every line says which runs hang on it, unless there is one line alone; no run hangs twice."""
    known = [run_name(index, run) for index, run in enumerate(project.runs or ())]
    hung: dict[str, int] = {}
    for index, line in enumerate(hanging.lines):
        key: Key = ("hanging", "lines", index)
        if line.runs is None and len(hanging.lines) > 1:
            mend = _("add runs: [name, name]; they may be left out only with one line")
            yield Complaint(key, _("the runs on this line"), mend)
        for place, name in enumerate(line.runs or ()):
            yield from _name(known, (*key, "runs", place), name)
            other = hung.setdefault(name, index)
            if other != index:
                expected = _("a run that hangs on no other line; line {number} has it")
                yield Complaint(
                    (*key, "runs", place), expected.format(number=other + 1), _("name every run once")
                )


def _name(known: list[str], key: Key, name: str) -> Iterator[Complaint]:
    if not known:
        mend = _("write the runs of the project first; guidegen compare proposes some to copy")
        yield Complaint(key, _("no names while the runs are left to be proposed"), mend)
    elif name not in known:
        near = nearest(name, known)
        expected = _("one of the runs in this file: {names}").format(names=", ".join(known))
        mend = _("did you mean {name}?").format(name=near) if near else _("write one of these names")
        yield Complaint(key, expected, mend)
