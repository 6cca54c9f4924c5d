"""Checks of what the maker adds to steps."""

from __future__ import annotations

from collections.abc import Iterator

from guidegen.locale import _
from guidegen.project.complaint import Complaint
from guidegen.project.keys import Key
from guidegen.project.own import OwnStep
from guidegen.project.schema import Project

PLACES = ("step", "before", "after")


def place_of(entry: OwnStep) -> str:
    """Which of `step`, `before` and `after` an entry gives; the first of several, "step" if none."""
    return next((word for word in PLACES if getattr(entry, word) is not None), "step")


def one_place(key: Key, entry: OwnStep) -> Iterator[Complaint]:
    """An entry is of one step, or stands before or after one."""
    given = [word for word in PLACES if getattr(entry, word) is not None]
    expected = _("one of step, before and after, with the id of a step")
    if not given:
        mend = _("add step to add words to a step, or before or after for a step of your own")
        yield Complaint(key, expected, mend)
    for word in given[1:]:
        yield Complaint((*key, word), expected, _("delete all but one; begin another entry for the other"))


def own_is_whole(key: Key, entry: OwnStep) -> Iterator[Complaint]:
    """A step of the maker's own has a title and says what to do."""
    if place_of(entry) == "step":
        return
    if entry.title is None:
        yield Complaint(
            (*key, "title"), _("a title for a step of your own"), _("add the key title"), _("nothing")
        )
    if not entry.text:
        yield Complaint(
            (*key, "text"), _("what to do in a step of your own"), _("add the key text"), _("nothing")
        )


def adds_something(key: Key, entry: OwnStep) -> Iterator[Complaint]:
    """Words for a step of the guide: some there are, and the step keeps its own title."""
    if entry.step is None or place_of(entry) != "step":
        return
    if entry.title is not None:
        expected = _("no title beside step; a step of the guide keeps its own")
        yield Complaint(
            (*key, "title"), expected, _("delete it, or write before or after in the place of step")
        )
    if not (entry.text or entry.note or entry.photo):
        yield Complaint(
            key, _("text, a note or a photo for the step"), _("add one of them, or delete the entry")
        )


def once(project: Project) -> Iterator[Complaint]:
    """All that is added to one step stands in one entry."""
    first: dict[str, int] = {}
    for index, entry in enumerate(project.steps):
        if entry.step is not None and first.setdefault(entry.step, index) != index:
            expected = _("a step that no other entry has; entry {number} has it")
            mend = _("write all that belongs to the step into one entry")
            yield Complaint(("steps", index, "step"), expected.format(number=first[entry.step] + 1), mend)
