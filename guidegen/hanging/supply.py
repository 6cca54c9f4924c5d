"""Where the supply may stand in a hanging plan, and what a builder calls those places."""

from __future__ import annotations

from guidegen.hanging.spans import hook_points, spans_of
from guidegen.hanging.ways import Beside, OnLine, Place, Ways
from guidegen.locale import _
from guidegen.locale.numerals import general
from guidegen.project.hung import Hanging
from guidegen.project.schema import Project
from guidegen.project.supply_at import AtHook, AtPoint, SupplyPlace

#: A place so near to a hook counts as at it, metre.
_AT_HOOK_M = 0.1


def ways_of(project: Project) -> Ways | None:
    """The ways of wire over a project's hooks; None where not all distances are known.

    They are known of one line, and of several whose hooks all have their
    places; and every run hangs on one of them.
    """
    hanging = project.hanging
    if hanging is None or not (_distances_known(hanging) and _all_hung(project, hanging)):
        return None
    lines, before = [], 0
    for line in hanging.lines:
        hooks = hook_points(hanging, line, before)
        lines.append(spans_of(hanging, line, hooks))
        before += len(hooks)
    return Ways(tuple(lines))


def _distances_known(hanging: Hanging) -> bool:
    return len(hanging.lines) == 1 or all(line.hooks is not None for line in hanging.lines)


def _all_hung(project: Project, hanging: Hanging) -> bool:
    if any(line.runs is None for line in hanging.lines):
        return True
    return sum(len(line.runs or ()) for line in hanging.lines) == len(project.runs or ())


def spot_of(ways: Ways, place: SupplyPlace) -> Place:
    """Where a place of the supply is among the hooks; start, middle and distances are of the first line."""
    if isinstance(place, AtHook):
        return ways.hook_place(place.number - 1)
    if isinstance(place, AtPoint):
        return Beside(place.x_m, place.y_m)
    if place == "start":
        return OnLine(0, 0.0)
    return OnLine(0, ways.end_m(0) / 2 if place == "middle" else float(place))


def place_name(place: SupplyPlace) -> str:
    """A place of the supply in words, to stand behind "supply at"."""
    if isinstance(place, AtHook):
        return f"H{place.number}"
    if isinstance(place, AtPoint):
        return _("the point {x} m, {y} m").format(x=general(place.x_m), y=general(place.y_m))
    if place == "start":
        return _("the start of the line")
    if place == "middle":
        return _("the middle of the line")
    return _("{metres} m along the line").format(metres=general(place))


def where_on_line(ways: Ways, place: OnLine) -> str:
    """The hook at a place, or those on both sides of it: "at H3", "between H3 and H4"."""
    for span in ways.lines[place.line]:
        if place.along_m <= span.start_m + _AT_HOOK_M:
            return _("at {hook}").format(hook=span.first.label)
        if place.along_m < span.start_m + span.length_m - _AT_HOOK_M:
            return _("between {first} and {last}").format(first=span.first.label, last=span.second.label)
    return _("at {hook}").format(hook=ways.lines[place.line][-1].second.label)
