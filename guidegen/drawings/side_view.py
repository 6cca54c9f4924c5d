"""Each different span from the side, in its true shape, with sag, distance and pull of the eye."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from guidegen.drawings.picture import Picture
from guidegen.drawings.plan_pen import PlanPen
from guidegen.drawings.sketch import SMALL
from guidegen.hanging.hooks import Span
from guidegen.hanging.plan import HangingPlan, HungBulb
from guidegen.locale import _, ngettext
from guidegen.locale.numerals import fixed, with_unit

_PANEL, _ROOM = 340.0, 232.0
_TALLEST = 150.0
_MOST = 8
_HEAD, _FOOT = 30.0, 50.0
_POINTS = 41


@dataclass(frozen=True)
class Shape:
    """Spans of one shape: the first of them, its bulbs, and how many more there are."""

    span: Span
    bulbs: tuple[HungBulb, ...]
    more: int


def shapes_of(plan: HangingPlan) -> tuple[Shape, ...]:
    """Spans that differ in distance, rise or sag, to the centimetre (sag: millimetre)."""
    alike: dict[tuple[float, float, float], list[tuple[Span, tuple[HungBulb, ...]]]] = {}
    for line in plan.lines:
        for number, span in enumerate(line.spans):
            wire = span.wire
            key = round(wire.span_m, 2), round(wire.rise_m, 2), round(wire.sag_m, 3)
            bulbs = tuple(bulb for bulb in line.bulbs if bulb.span == number)
            alike.setdefault(key, []).append((span, bulbs))
    return tuple(Shape(*spans[0], len(spans) - 1) for spans in alike.values())


def draw_spans(plan: HangingPlan) -> Picture:
    """One panel a shape, two in a row."""
    every = shapes_of(plan)
    shapes = every[:_MOST]
    scale = min(_ROOM / shape.span.wire.span_m for shape in shapes)
    scale = min(scale, _TALLEST / max(_depth_m(shape.span) for shape in shapes))
    heights = [_HEAD + _FOOT + _depth_m(shape.span) * scale for shape in shapes]
    rows = [max(heights[start : start + 2]) for start in range(0, len(shapes), 2)]
    pen = PlanPen(height=sum(rows), width=2 * _PANEL)
    for index, shape in enumerate(shapes):
        row, column = divmod(index, 2)
        _panel(pen, shape, column * _PANEL, sum(rows[:row]), scale)
    caption = _("Each different span from the side, in its true shape")
    picture = pen.picture("spans", caption, _alt(shapes, len(every) - len(shapes)))
    return Picture(picture.id, picture.svg, picture.alt, caption, picture.width, picture.height)


def _depth_m(span: Span) -> float:
    """From the upper hook down to the lowest place."""
    return max(span.wire.rise_m, 0.0) - span.wire.low_point_m


def _panel(pen: PlanPen, shape: Shape, left: float, top: float, scale: float) -> None:
    """One span with its hooks, bulbs, sag and distance."""
    wire = shape.span.wire
    x0 = left + (_PANEL - wire.span_m * scale) / 2 - 24
    y0 = top + _HEAD + max(wire.rise_m, 0.0) * scale
    level = np.linspace(0.0, wire.span_m, _POINTS)
    curve = [(x0 + x * scale, y0 - y * scale) for x, y in zip(level, wire.height_m(level), strict=True)]
    first, second = curve[0], curve[-1]
    pen.text(left + 14, top + 13, _name(shape), room=_PANEL - 20, bold=True)
    pen.line(first, second, kind="hidden")
    pen.run([(float(x), float(y)) for x, y in curve], 0)
    for bulb in shape.bulbs:
        x = float(wire.x_at_m(bulb.from_m))
        pen.lamp((x0 + x * scale, y0 - float(wire.height_m(x)) * scale), 3.4, lit=bulb.lit)
    pen.hook(first)
    pen.hook(second)
    _sag(pen, (first[0] + second[0]) / 2, (first[1] + second[1]) / 2, wire.sag_m, scale, second[0])
    bottom = top + _HEAD + _depth_m(shape.span) * scale + 26
    pen.span(first[0], second[0], bottom + 8, with_unit(fixed(wire.span_m, 2), "m"))


def _sag(pen: PlanPen, x: float, y: float, sag_m: float, scale: float, right: float) -> None:
    """The dip in the middle, named at the right of the span."""
    deep = sag_m * scale
    pen.line((x, y), (x, y + deep), kind="accent")
    pen.line((x, y + deep), (right + 12, y + deep), kind="thin")
    words = _("sag {centimetres} cm").format(centimetres=fixed(100 * sag_m, 1))
    pen.text(right + 16, y + deep + 4, words, size=SMALL)


def _name(shape: Shape) -> str:
    name = _("{first} to {last}").format(first=shape.span.first.label, last=shape.span.second.label)
    if not shape.more:
        return name
    more = ngettext("{name} and {count} more alike", "{name} and {count} more alike", shape.more)
    return more.format(name=name, count=shape.more)


def _alt(shapes: tuple[Shape, ...], left_out: int) -> str:
    parts = [
        _("{name}: {metres} m apart, sag {centimetres} cm, {bulbs} bulbs.").format(
            name=_name(shape),
            metres=fixed(shape.span.wire.span_m, 2),
            centimetres=fixed(100 * shape.span.wire.sag_m, 1),
            bulbs=len(shape.bulbs),
        )
        for shape in shapes
    ]
    if left_out:
        parts.append(_("{count} more shapes are in the table of spans alone.").format(count=left_out))
    return " ".join(parts)
