"""What pulls at every hook, and in the wire itself."""

from __future__ import annotations

import math

from guidegen.hanging.hooks import HookPoint, Span
from guidegen.hanging.plan import HungLine, LinePulls, Loads, Pull

Vector = tuple[float, float, float]


def line_pulls(line: HungLine, loads: Loads) -> LinePulls:
    """Pulls of one line at its worst load.

    Wire that does not stretch keeps its shape under any even load, so that
    every pull grows with the load; wind turns the shape to the side.
    """
    pulls = tuple(_pull(line, place, loads.worst) for place in range(len(line.hooks)))
    return LinePulls(loads, pulls, max(_tension_n(span, loads.worst) for span in line.spans))


def _pull(line: HungLine, place: int, load: float) -> Pull:
    """Pull at the hook at `place` of the line."""
    sides = []
    if place > 0:
        sides.append(_side(line.spans[place - 1], line.hooks[place], load))
    if place < len(line.spans):
        sides.append(_side(line.spans[place], line.hooks[place], load))
    x, y, down = (sum(side[axis] for side in sides) for axis in range(3))
    alone = max(math.hypot(*side) for side in sides)
    return Pull(line.hooks[place], x, y, down, math.hypot(x, y, down), alone)


def _side(span: Span, hook: HookPoint, load: float) -> Vector:
    """Pull of one span at one of its hooks: x, y, downwards."""
    first, second = span.wire.ends_n(load)
    other, (level, down) = (span.second, first) if hook == span.first else (span.first, second)
    x, y = other.x_m - hook.x_m, other.y_m - hook.y_m
    return level * x / span.wire.span_m, level * y / span.wire.span_m, down


def _tension_n(span: Span, load: float) -> float:
    """Largest pull along the wire of a span: at its higher hook."""
    return max(math.hypot(*end) for end in span.wire.ends_n(load))
