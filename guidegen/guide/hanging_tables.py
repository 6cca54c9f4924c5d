"""The hanging plan as tables: hooks, spans, bulbs, and wire used against wire bought."""

from __future__ import annotations

from guidegen.guide.blocks import Column, Table
from guidegen.guide.format import NOTHING, fixed, listed, percent, quantity
from guidegen.guide.matter import Matter
from guidegen.hanging.hooks import Span
from guidegen.hanging.plan import HangingPlan, HungBulb, HungLine, Pull
from guidegen.locale import _

#: A level pull under this share of the whole counts as none.
_HARDLY = 0.1


def _metres(value: float | None) -> str:
    return NOTHING if value is None else f"{fixed(value, 2)}\u00a0m"


def hook_table(plan: HangingPlan) -> Table:
    """Every hook with its place and what pulls at it."""
    rows = tuple(
        _hook_row(plan, line, place, pull)
        for line, pulls in zip(plan.lines, plan.pulls, strict=True)
        for place, pull in enumerate(pulls.hooks)
    )
    return Table(
        caption=_("Hooks and what pulls at them"),
        columns=(
            Column(_("Hook")),
            Column(_("Right of H1"), numeric=True),
            Column(_("Up from H1, in the plan"), numeric=True),
            Column(_("Height"), numeric=True),
            Column(_("Pulled")),
            Column(_("Both sides together"), numeric=True),
            Column(_("One side alone"), numeric=True),
            Column(_("Of what it may bear"), numeric=True),
        ),
        rows=rows,
        note=_(
            "One side alone: what pulls while the other side is not hung yet, or has come off. What "
            "a hook may "
            "bear is half its rating."
        ),
    )


def _hook_row(plan: HangingPlan, line: HungLine, place: int, pull: Pull) -> tuple[str, ...]:
    hook, origin, limit = pull.hook, plan.lines[0].hooks[0], plan.hook_limit_n
    return (
        hook.label,
        _metres(hook.x_m - origin.x_m),
        _metres(hook.y_m - origin.y_m),
        _metres(hook.height_m),
        _direction(line, place, pull),
        quantity(pull.together_n, "N", 2),
        quantity(pull.alone_n, "N", 2),
        NOTHING if limit is None else percent(pull.worst_n / limit),
    )


def _direction(line: HungLine, place: int, pull: Pull) -> str:
    """Where the wire on both sides pulls the hook."""
    level = (pull.x_n**2 + pull.y_n**2) ** 0.5
    if level < _HARDLY * pull.together_n:
        return _("down")
    hooks = line.hooks
    if place == 0:
        return _("towards {hook}").format(hook=hooks[1].label)
    if place == len(hooks) - 1:
        return _("towards {hook}").format(hook=hooks[-2].label)
    before, after = hooks[place - 1], hooks[place + 1]
    return _("between {before} and {after}").format(before=before.label, after=after.label)


def span_table(plan: HangingPlan) -> Table:
    """Every span."""
    rows = tuple(_span_row(span, plan) for line in plan.lines for span in line.spans)
    return Table(
        caption=_("Spans"),
        columns=(
            Column(_("From hook to hook")),
            Column(_("Distance"), numeric=True),
            Column(_("Wire"), numeric=True),
            Column(_("Sag in the middle"), numeric=True),
            Column(_("Lowest point above ground"), numeric=True),
        ),
        rows=rows,
        note=_("Sag: below a cord drawn tight from hook to hook."),
    )


def _span_row(span: Span, _plan: HangingPlan) -> tuple[str, ...]:
    wire = span.wire
    return (
        _("{first} to {last}").format(first=span.first.label, last=span.second.label),
        _metres(wire.span_m),
        f"{fixed(wire.length_m, 3)}\u00a0m",
        quantity(wire.sag_m, "m"),
        _metres(span.lowest_m),
    )


def bulb_table(matter: Matter, plan: HangingPlan, index: int) -> Table:
    """Where every bulb of a line lands."""
    line = plan.lines[index]
    return Table(
        caption=_("Line {number}, bulb by bulb").format(number=index + 1),
        columns=(
            Column(_("Run, bulb")),
            Column(_("Between the hooks"), numeric=True),
            Column(_("Wire from the first of them"), numeric=True),
            Column(_("Height"), numeric=True),
        ),
        rows=tuple(_bulb_row(line, bulb) for bulb in line.bulbs),
        note=_(
            "{runs}. Wire that the joints take is in these figures. Measure along the wire, not along the "
            "wall."
        ).format(runs=listed([_numbered(matter, run) for run in line.runs])),
    )


def _numbered(matter: Matter, run: int) -> str:
    return _("Run {number} is {run}").format(number=run + 1, run=matter.runs[run].name)


def _bulb_row(line: HungLine, bulb: HungBulb) -> tuple[str, ...]:
    number = _("{run}, {bulb}") if bulb.lit else _("{run}, {bulb} (dark)")
    number = number.format(run=bulb.run + 1, bulb=bulb.bulb)
    if bulb.span is None:
        where = _("beyond {hook}").format(hook=line.hooks[-1].label)
        return number, where, quantity(bulb.from_m, "m"), NOTHING
    span = line.spans[bulb.span]
    where = _("{first} and {last}").format(first=span.first.label, last=span.second.label)
    return number, where, f"{fixed(100 * bulb.from_m, 0)}\u00a0cm", _metres(bulb.height_m)


def gap_lines(matter: Matter, plan: HangingPlan) -> tuple[str, ...]:
    """Dark stretches, in words."""
    found = []
    for line in plan.lines:
        if not line.laid[0].turned:
            text = _("Unlit wire before bulb 1 of {run}: {length}.")
            name = matter.runs[line.runs[0]].name
            found.append(text.format(run=name, length=quantity(line.lead_in_m, "m")))
        found += [
            _("{length} without light between bulb {before} and bulb {after}.").format(
                length=quantity(gap.length_m, "m"),
                before=_of_run(matter, gap.before),
                after=_of_run(matter, gap.after),
            )
            for gap in line.gaps
        ]
    return tuple(found)


def _of_run(matter: Matter, place: tuple[int, int]) -> str:
    return _("{bulb} of {run}").format(bulb=place[1], run=matter.runs[place[0]].name)


def usage_table(plan: HangingPlan) -> Table:
    """Length used against length bought."""
    rows = tuple(
        (
            usage.string,
            quantity(usage.bought_m, "m", 4),
            quantity(usage.used_m, "m", 4),
            quantity(usage.joints_m, "m"),
            str(usage.bulbs_left),
        )
        for usage in plan.usage
    )
    return Table(
        caption=_("Wire of the strings"),
        columns=(
            Column(_("String")),
            Column(_("Bought"), numeric=True),
            Column(_("Used, tails included"), numeric=True),
            Column(_("Of it joints take"), numeric=True),
            Column(_("Bulbs left over"), numeric=True),
        ),
        rows=rows,
    )
