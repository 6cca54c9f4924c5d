"""The hanging plan as pictures: from above to scale, and each different span from the side."""

from __future__ import annotations

import math
from typing import Literal

from guidegen.circuit.arrangement import Arrangement, RunPlan
from guidegen.drawings.picture import Picture
from guidegen.drawings.plan_pen import PlanPen, dimension_words, feed_words
from guidegen.drawings.plan_view import (
    HEAD,
    WIDTH,
    View,
    inward,
    place_at,
    span_at,
    stretch,
    view_of,
)
from guidegen.drawings.side_view import draw_spans
from guidegen.drawings.sketch import Place
from guidegen.hanging.plan import HangingPlan, HungLine, Span
from guidegen.locale import _, ngettext
from guidegen.locale.numerals import fixed, general, with_unit

#: Spans shorter than this get no dimension of their own, and hooks no more than a few labels.
_LEAST_PX = 44.0
#: Words at a feed stay so far from bulbs, hooks and other words.
_CLEAR_PX = 19.0
_MOST_BULBS = 600
_KEY = 78.0
#: From the line to the supply beside it, nearest first, and before the line's start.
_SUPPLY_OFFS, _START_OFF = (70.0, 95.0, 120.0, 150.0), 58.0
#: From the supply's middle to any line, and to any distance that is written.
_LINE_CLEAR, _WORDS_CLEAR = 58.0, 50.0
#: Places along a line that are looked at for room.
_STEPS = 40

SupplyAt = float | Literal["start", "middle"]


def draw_plan(plan: HangingPlan, arrangement: Arrangement, supply_at: SupplyAt) -> tuple[Picture, ...]:
    """Two pictures, "plan" and "spans"; `supply_at` as the file says."""
    return _top_view(plan, arrangement, supply_at), draw_spans(plan)


def _top_view(plan: HangingPlan, arrangement: Arrangement, supply_at: SupplyAt) -> Picture:
    view = view_of(plan)
    rows = -(-len(arrangement.runs) // 2)
    pen = PlanPen(height=view.bottom + _KEY + 22 + 18 * rows, width=WIDTH, top=_unused(view, plan, supply_at))
    _draw_supply(pen, view, plan, supply_at)
    for index, line in enumerate(plan.lines):
        _draw_line(pen, view, index, line, arrangement)
    _draw_key(pen, view, plan, arrangement)
    caption = _("Plan from above, to scale; how deep the wire hangs does not show here")
    alt = _alt(plan, arrangement)
    picture = pen.picture("plan", caption, alt)
    return Picture(picture.id, picture.svg, alt, caption, picture.width, picture.height)


def _unused(view: View, plan: HangingPlan, supply_at: SupplyAt) -> float:
    """Pixels at the top that nothing is drawn in; dimensions over the plan need most of the margin."""
    upwards = any(
        view.normal(index, span)[1] < -0.5 for index, line in enumerate(plan.lines) for span in line.spans
    )
    supply_top = _supply_spot(view, plan, supply_at)[1][1] - 14
    return max(0.0, min(HEAD - 62 if upwards else HEAD - 26, supply_top))


def _draw_line(pen: PlanPen, view: View, index: int, line: HungLine, arrangement: Arrangement) -> None:
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
    taken = [view.hook(index, hook) for hook in line.hooks]
    taken += [view.place(index, b.x_m, b.y_m) for b in line.bulbs if b.x_m is not None and b.y_m is not None]
    for run in line.runs:
        _draw_feeds(pen, view, index, line, (run, arrangement.runs[run]), taken)


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
        words = with_unit(fixed(span.wire.span_m, 2), "m")
        pen.dimension(first, second, normal, off, words)


def _label_hooks(pen: PlanPen, view: View, index: int, line: HungLine) -> None:
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
        pen.centred((x + away * nx / length, y + away * ny / length), hook.label, bold=True)


def feeds_of(run: RunPlan) -> tuple[tuple[int, str], ...]:
    """Bulbs at which a run is fed, and the poles that enter there."""
    last = run.bulbs
    return {
        "one end": ((1, "+ −"),),
        "middle": ((run.fed_bulb, "+ −"),),
        "both ends": ((1, "+ −"), (last, "+ −")),
        "opposite ends": ((1, "+"), (last, "−")),
    }[run.feed]


def _draw_feeds(
    pen: PlanPen, view: View, index: int, line: HungLine, which: tuple[int, RunPlan], taken: list[Place]
) -> None:
    """An arrow at every place where a run is fed: from inside, or from outside if something is there."""
    run, planned = which
    along = {bulb.bulb: bulb.along_m for bulb in line.bulbs if bulb.run == run}
    for bulb, poles in feeds_of(planned):
        at_m = along[bulb] if bulb > 1 else max(along[bulb], 0.0)
        place, span, words = place_at(view, index, line, at_m), span_at(line, at_m), f"{run + 1}: {poles}"
        inside = inward(view, index, span)
        near = min(math.dist(feed_words(place, inside, words), other) for other in taken)
        normal = inside if near >= _CLEAR_PX else view.normal(index, span)
        pen.feed(place, normal, words)
        taken.append(feed_words(place, normal, words))


def _draw_supply(pen: PlanPen, view: View, plan: HangingPlan, supply_at: SupplyAt) -> None:
    """The supply beside the first line, where the file says that its wire meets it."""
    place, middle = _supply_spot(view, plan, supply_at)
    off = math.dist(place, middle)
    near = [a + 8 * (b - a) / off for a, b in zip(place, middle, strict=True)]
    pen.line((near[0], near[1]), middle, kind="hidden")
    pen.box(middle[0] - 27, middle[1] - 12, 54, 24, fill="white")
    pen.centred(middle, _("supply"))


def _supply_spot(view: View, plan: HangingPlan, supply_at: SupplyAt) -> tuple[Place, Place]:
    """Where the supply's wire meets the first line, and the middle of the box that stands for the supply.

    Before the start of the line if it is there; else inside, or outside where there is no room.
    """
    line = plan.lines[0]
    along = {"start": 0.0, "middle": line.wire_m / 2}.get(str(supply_at), supply_at)
    at_m = min(float(along), line.wire_m)
    (x, y), span = place_at(view, 0, line, at_m), span_at(line, at_m)
    if at_m <= 0:
        (ax, ay), (bx, by) = view.hook(0, span.first), view.hook(0, span.second)
        share = _START_OFF / math.dist((ax, ay), (bx, by))
        return (x, y), (x + share * (ax - bx), y + share * (ay - by))
    spots = [(x + off * nx, y + off * ny) for off in _SUPPLY_OFFS for nx, ny in _sides(view, span)]
    return (x, y), next((spot for spot in spots if _has_room(view, plan, spot)), spots[-1])


def _sides(view: View, span: Span) -> tuple[Place, Place]:
    return inward(view, 0, span), view.normal(0, span)


def _has_room(view: View, plan: HangingPlan, spot: Place) -> bool:
    """Whether the supply's box fits there: inside the picture, over the key, away from all lines."""
    inside = 14 <= spot[1] <= view.bottom + _KEY - 34 and 30 <= spot[0] <= WIDTH - 30
    lines = [
        math.dist(spot, place_at(view, index, line, line.wire_m * step / _STEPS))
        for index, line in enumerate(plan.lines)
        for step in range(_STEPS + 1)
    ]
    words = [
        math.dist(spot, dimension_words(*_ends(view, index, span)))
        for index, line in enumerate(plan.lines)
        for span in line.spans
    ]
    return inside and min(lines) > _LINE_CLEAR and (spot[1] < HEAD - 60 or min(words) > _WORDS_CLEAR)


def _ends(view: View, index: int, span: Span) -> tuple[Place, Place, Place, float]:
    """Both hooks of a span, the side its distance is written on, and how far off."""
    nx, ny = view.normal(index, span)
    off = 36.0 if abs(ny) > abs(nx) else 54.0
    return view.hook(index, span.first), view.hook(index, span.second), (nx, ny), off


def _draw_key(pen: PlanPen, view: View, plan: HangingPlan, arrangement: Arrangement) -> None:
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


def _draw_scale(pen: PlanPen, view: View, y: float) -> None:
    """A bar of a round length, about a quarter of the width."""
    lengths = [base * 10.0**power for power in range(-2, 4) for base in (1, 2, 5)]
    metres = max(length for length in lengths if length * view.scale <= max(190.0, lengths[0] * view.scale))
    width = metres * view.scale
    pen.span(14, 14 + width, y + 4, with_unit(general(metres, 6), "m"))


def _alt(plan: HangingPlan, arrangement: Arrangement) -> str:
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
    sentences.append(_("The tables of hooks, spans and bulbs hold every place and length."))
    return " ".join(sentences)
