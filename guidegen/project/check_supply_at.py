"""Checks of the places that the supply may have, in themselves and against the hanging plan."""

from __future__ import annotations

from collections.abc import Iterator

from guidegen.locale import _
from guidegen.project.complaint import Complaint
from guidegen.project.hung import Hanging
from guidegen.project.keys import Key
from guidegen.project.schema import Project
from guidegen.project.supply_at import AtHook, AtPoint, SupplyPlace


def supply_places(project: Project) -> Iterator[Complaint]:
    """Every place is named once, and is in the hanging plan where it needs one."""
    places = project.place.supply_places
    whole: Key = ("place", "supply_at")
    for index, place in enumerate(places):
        key = (*whole, index) if isinstance(project.place.supply_at, tuple) else whole
        if place in places[:index]:
            yield Complaint(key, _("each place once"), _("delete it"))
        elif project.hanging is not None:
            yield from _in_plan(key, place, project.hanging)
        elif isinstance(place, AtHook | AtPoint):
            mend = _("add the key hanging, or write start, middle, or a distance along the lights")
            yield Complaint(key, _("a hook or a point only with a hanging plan"), mend)


def _in_plan(key: Key, place: SupplyPlace, hanging: Hanging) -> Iterator[Complaint]:
    hooks = sum(len(line.hooks or ()) or len(line.spans or ()) + 1 for line in hanging.lines)
    if isinstance(place, AtHook) and not 1 <= place.number <= hooks:
        expected = _("a hook from H1 to H{last}").format(last=hooks)
        yield Complaint(key, expected, _("hooks are counted over all lines, in the order of the file"))
    elif isinstance(place, AtPoint) and any(line.hooks is None for line in hanging.lines):
        mend = _("write the hooks with x and y, or name the nearest hook, such as H1")
        yield Complaint(key, _("a point only where every line states its hooks"), mend)
