"""The hanging plan as pictures: from above to scale, and each different span from the side."""

from __future__ import annotations

import math
from collections.abc import Iterator
from functools import partial

from guidegen.circuit.arrangement import Arrangement
from guidegen.drawings.picture import Picture
from guidegen.drawings.plan_pen import PlanPen, dimension_words
from guidegen.drawings.plan_room import Box, Room
from guidegen.drawings.plan_view import (
    HEAD,
    WIDTH,
    View,
    place_at,
    span_at,
    stretch,
    view_of,
)
from guidegen.drawings.plan_wires import draw_feeds, draw_wires, feeds_of, inner_side, lanes_of
from guidegen.drawings.side_view import draw_spans
from guidegen.drawings.sketch import Place
from guidegen.hanging import ways
from guidegen.hanging.hooks import HookPoint, Span
from guidegen.hanging.paths import SupplyPaths
from guidegen.hanging.plan import HangingPlan, HungLine
from guidegen.hanging.ways import Beside, OnLine
from guidegen.locale import _, ngettext
from guidegen.locale.numerals import fixed, general, with_unit

#: Spans shorter than this get no dimension of their own, and hooks no more than a few labels.
_LEAST_PX = 44.0
_MOST_BULBS = 600
_KEY = 78.0
#: From the line to the supply beside it, nearest first, and before the line's start.
_SUPPLY_OFFS, _START_OFF = (70.0, 95.0, 120.0, 150.0), 58.0
#: From the supply's middle to any line.
_LINE_CLEAR = 58.0
#: Places along a line that are looked at for room.
_STEPS = 40
#: Ways out from a place: down, up, left, right, aslant.
_AROUND = (
    (0.0, 1.0),
    (0.0, -1.0),
    (-1.0, 0.0),
    (1.0, 0.0),
    (-0.7, -0.7),
    (0.7, -0.7),
    (-0.7, 0.7),
    (0.7, 0.7),
)
#: A place on a way so near to a hook is at it, metre.
_AT_HOOK_M = 1e-6


def draw_plan(plan: HangingPlan, arrangement: Arrangement, supply: SupplyPaths) -> tuple[Picture, ...]:
    """Two pictures, "plan" and "spans", with the supply and its feeders."""
    return _top_view(plan, arrangement, supply), draw_spans(plan)


def _top_view(plan: HangingPlan, arrangement: Arrangement, supply: SupplyPaths) -> Picture:
    view = view_of(plan, (supply.spot,) if isinstance(supply.spot, Beside) else ())
    lanes = lanes_of(supply)
    rows = -(-(len(arrangement.runs) + len({wire.extra for wire in supply.wires})) // 2)
    room = _taken(view, plan)
    spots = _supply_spots(view, plan, supply, room)
    top = _unused(view, plan, spots[1])
    pen = PlanPen(height=view.bottom + _KEY + 22 + 18 * rows, width=WIDTH, top=top)
    draw_wires(pen, view, plan, lanes, room)
    for index, line in enumerate(plan.lines):
        _draw_line(pen, view, index, line)
    _draw_supply(pen, spots, beside=isinstance(supply.spot, Beside))
    room.take(spots[1], 27, 12)
    draw_feeds(pen, view, plan, arrangement, room, lanes)
    _draw_key(pen, view, plan, arrangement, supply)
    caption = _("Plan from above, to scale; how deep the wire hangs does not show here")
    alt = _alt(plan, arrangement, supply)
    picture = pen.picture("plan", caption, alt)
    return Picture(picture.id, picture.svg, alt, caption, picture.width, picture.height)


def _taken(view: View, plan: HangingPlan) -> Room:
    """Everything that words must keep clear of: wires, bulbs, hooks and their names, dimensions."""
    room = Room()
    for index, line in enumerate(plan.lines):
        for step in range(_STEPS + 1):
            room.take(place_at(view, index, line, line.wire_m * step / _STEPS), 4.0, 4.0)
        for place, hook in _labels(view, index, line):
            room.take_words(place, hook.label)
        for span in line.spans:
            ends = _ends(view, index, span)
            if math.dist(ends[0], ends[1]) >= _LEAST_PX:
                room.take_words(dimension_words(*ends), _span_words(span))
                _take_dimension(room, *ends)
    return room


def _take_dimension(room: Room, first: Place, second: Place, normal: Place, off: float) -> None:
    for step in range(_STEPS + 1):
        share = step / _STEPS
        x, y = (a + share * (b - a) + off * n for a, b, n in zip(first, second, normal, strict=True))
        room.take((x, y), 1.0, 1.0)


def _unused(view: View, plan: HangingPlan, supply_middle: Place) -> float:
    """Pixels at the top that nothing is drawn in; dimensions over the plan need most of the margin."""
    upwards = any(
        view.normal(index, span)[1] < -0.5 for index, line in enumerate(plan.lines) for span in line.spans
    )
    supply_top = supply_middle[1] - 14
    return max(0.0, min(HEAD - 62 if upwards else HEAD - 26, supply_top))


def _draw_line(pen: PlanPen, view: View, index: int, line: HungLine) -> None:
    whole = [view.hook(index, hook) for hook in line.hooks]
    pen.faint(*whole)
    for run in line.runs:
        bulbs = [bulb for bulb in line.bulbs if bulb.run == run and bulb.span is not None]
        if bulbs:
            pen.run(stretch(view, index, line, bulbs[0].along_m, bulbs[-1].along_m), run)
    _draw_dimensions(pen, view, index, line)
    for hook in line.hooks:
        pen.hook(view.hook(index, hook))
    _draw_bulbs(pen, view, index, line)
    _label_hooks(pen, view, index, line)


def _draw_bulbs(pen: PlanPen, view: View, index: int, line: HungLine) -> None:
    if len(line.bulbs) > _MOST_BULBS:
        return
    apart = view.scale * line.lights_m / max(len(line.bulbs) - 1, 1)
    radius = min(3.4, max(1.2, apart / 3))
    for bulb in line.bulbs:
        if bulb.x_m is not None and bulb.y_m is not None:
            pen.lamp(view.place(index, bulb.x_m, bulb.y_m), radius, lit=bulb.lit)


def _draw_dimensions(pen: PlanPen, view: View, index: int, line: HungLine) -> None:
    """The distance of every span, outside the hooks' labels."""
    for span in line.spans:
        first, second, normal, off = _ends(view, index, span)
        if math.dist(first, second) < _LEAST_PX:
            continue
        pen.dimension(first, second, normal, off, _span_words(span))


def _span_words(span: Span) -> str:
    return with_unit(fixed(span.wire.span_m, 2), "m")


def _label_hooks(pen: PlanPen, view: View, index: int, line: HungLine) -> None:
    for place, hook in _labels(view, index, line):
        pen.centred(place, hook.label, bold=True)


def _labels(view: View, index: int, line: HungLine) -> Iterator[tuple[Place, HookPoint]]:
    """H1, H2, ... outside; not every one where they are close."""
    lengths = [math.dist(view.hook(index, s.first), view.hook(index, s.second)) for s in line.spans]
    step = max(1, math.ceil(26 / min(lengths)))
    last = len(line.hooks) - 1
    for place, hook in enumerate(line.hooks):
        if place != last and (place % step or last - place < step):
            continue
        beside = [view.normal(index, span) for span in line.spans[max(place - 1, 0) : place + 1]]
        nx, ny = sum(n[0] for n in beside), sum(n[1] for n in beside)
        length = math.hypot(nx, ny) or 1.0
        x, y = view.hook(index, hook)
        away = 17 if abs(ny) > abs(nx) else 21
        yield (x + away * nx / length, y + away * ny / length), hook


def _draw_supply(pen: PlanPen, spots: tuple[Place, Place], *, beside: bool) -> None:
    """The supply beside the lights, with a dashed line to the place where its wire begins."""
    place, middle = spots
    off = math.dist(place, middle)
    near = [a + 8 * (b - a) / off for a, b in zip(place, middle, strict=True)]
    if beside:
        pen.box(place[0] - 3, place[1] - 3, 6, 6, fill="black", r=0)
        near = list(place)
    pen.line((near[0], near[1]), middle, kind="hidden")
    pen.box(middle[0] - 27, middle[1] - 12, 54, 24, fill="white")
    pen.centred(middle, _("supply"))


def _supply_spots(view: View, plan: HangingPlan, supply: SupplyPaths, room: Room) -> tuple[Place, Place]:
    """Where the supply's wire begins, and the middle of the box that stands for the supply.

    Before the start of a line if it is there; else inside, or outside where there is no room.
    """
    if isinstance(supply.spot, Beside):
        x, y = view.place(0, supply.spot.x_m, supply.spot.y_m)
        spots = [(x + off * nx, y + off * ny) for off in _SUPPLY_OFFS for nx, ny in _AROUND]
        return (x, y), next((spot for spot in spots if _has_room(view, plan, spot, room)), spots[0])
    index, line = supply.spot.line, plan.lines[supply.spot.line]
    at_m = min(supply.spot.along_m, line.wire_m)
    (x, y), span = place_at(view, index, line, at_m), span_at(line, at_m)
    if at_m <= 0:
        (ax, ay), (bx, by) = view.hook(index, span.first), view.hook(index, span.second)
        share = _START_OFF / math.dist((ax, ay), (bx, by))
        return (x, y), (x + share * (ax - bx), y + share * (ay - by))
    sides = inner_side(view, index, line, at_m), view.normal(index, span), *_AROUND
    spots = [(x + off * nx, y + off * ny) for off in _SUPPLY_OFFS for nx, ny in sides]
    return (x, y), next((spot for spot in spots if _has_room(view, plan, spot, room)), spots[0])


def _has_room(view: View, plan: HangingPlan, spot: Place, room: Room) -> bool:
    """Whether the supply's box fits there: inside the picture, over the key, away from all lines."""
    inside = 14 <= spot[1] <= view.bottom + _KEY - 34 and 30 <= spot[0] <= WIDTH - 30
    lines = [
        math.dist(spot, place_at(view, index, line, line.wire_m * step / _STEPS))
        for index, line in enumerate(plan.lines)
        for step in range(_STEPS + 1)
    ]
    return inside and min(lines) > _LINE_CLEAR and room.free(Box(spot, 30.0, 15.0))


def _ends(view: View, index: int, span: Span) -> tuple[Place, Place, Place, float]:
    """Both hooks of a span, the side its distance is written on, and how far off."""
    nx, ny = view.normal(index, span)
    off = 36.0 if abs(ny) > abs(nx) else 54.0
    return view.hook(index, span.first), view.hook(index, span.second), (nx, ny), off


def _draw_key(
    pen: PlanPen, view: View, plan: HangingPlan, arrangement: Arrangement, supply: SupplyPaths
) -> None:
    """Scale, signs, and the style of every run."""
    top = view.bottom + _KEY
    _draw_scale(pen, view, top)
    x = 250.0
    pen.hook((x, top))
    pen.text(x + 10, top + 4, _("hook"))
    pen.lamp((x + 62, top), 3.4, lit=True)
    pen.text(x + 70, top + 4, _("bulb, lit"))
    if any(not bulb.lit for line in plan.lines for bulb in line.bulbs):
        pen.lamp((x + 136, top), 3.4, lit=False)
        pen.text(x + 144, top + 4, _("bulb, dark on DC"))
    pen.feed((x + 268, top + 12), (0.0, -1.0), "")
    pen.text(x + 280, top + 4, _("fed here: run, poles"))
    for index, run in enumerate(arrangement.runs):
        row, column = divmod(index, 2)
        left, y = 14 + 330 * column, top + 28 + 18 * row
        pen.run([(left, y), (left + 54, y)], index)
        words = _("{number}: {run}").format(number=index + 1, run=run.name)
        pen.text(left + 62, y + 4, words, room=258)
    for place, extra in enumerate(sorted({wire.extra for wire in supply.wires}), len(arrangement.runs)):
        row, column = divmod(place, 2)
        left, y = 14 + 330 * column, top + 28 + 18 * row
        pen.feeder([(left, y), (left + 54, y)], extra=extra)
        words = _("extra wire, beside the lights") if extra else _("feeder, beside the lights")
        pen.text(left + 62, y + 4, words, room=258)


def _draw_scale(pen: PlanPen, view: View, y: float) -> None:
    """A bar of a round length, about a quarter of the width."""
    lengths = [base * 10.0**power for power in range(-2, 4) for base in (1, 2, 5)]
    metres = max(length for length in lengths if length * view.scale <= max(190.0, lengths[0] * view.scale))
    width = metres * view.scale
    pen.span(14, 14 + width, y + 4, with_unit(general(metres, 6), "m"))


def _alt(plan: HangingPlan, arrangement: Arrangement, supply: SupplyPaths) -> str:
    """What the plan shows, in words; the tables below it hold the numbers."""
    hooks = ngettext("{count} hook", "{count} hooks", plan.hooks).format(count=plan.hooks)
    sentences = [_("Plan of {hooks} seen from above.").format(hooks=hooks)]
    for line in plan.lines:
        names = ", ".join(arrangement.runs[run].name for run in line.runs)
        text = _("From {first} to {last}: {runs}.")
        sentences.append(text.format(first=line.hooks[0].label, last=line.hooks[-1].label, runs=names))
    for index, run in enumerate(arrangement.runs):
        fed = ", ".join(
            _("{poles} at bulb {bulb}").format(poles=poles, bulb=bulb) for bulb, poles in feeds_of(run)
        )
        sentences.append(_("Run {number} is fed {fed}.").format(number=index + 1, fed=fed))
    for number, places in ((wire.run, wire.places) for wire in supply.wires if not wire.extra):
        hooks_passed = [hook for hook in map(partial(_hook_at, plan), places[1:-1]) if hook]
        text = _("The feeder of run {number} goes from the supply by {hooks}.")
        if not hooks_passed:
            text = _("The feeder of run {number} goes from the supply without passing a hook.")
        sentences.append(text.format(number=number + 1, hooks=", ".join(hooks_passed)))
    sentences.append(_("The tables of hooks, spans and bulbs hold every place and length."))
    return " ".join(sentences)


def _hook_at(plan: HangingPlan, place: ways.Place) -> str:
    """The label of the hook at a place on a way; empty where there is none."""
    if not isinstance(place, OnLine):
        return ""
    line = plan.lines[place.line]
    starts = [*((span.start_m, span.first) for span in line.spans), (line.wire_m, line.hooks[-1])]
    return next((hook.label for m, hook in starts if abs(m - place.along_m) < _AT_HOOK_M), "")
