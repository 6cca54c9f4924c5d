"""Where everything of the top view goes: scale, sides, and places along the wire; nothing is drawn here."""

from __future__ import annotations

import math
from dataclasses import dataclass

from guidegen.drawings.sketch import Place
from guidegen.hanging.hooks import HookPoint, Span
from guidegen.hanging.plan import HangingPlan, HungLine
from guidegen.hanging.ways import Beside

#: Width of the picture and the room its margins leave, CSS pixels.
WIDTH, SIDE, HEAD = 680.0, 104.0, 84.0
_TALLEST = 430.0
#: Rows given by spans alone are drawn so far apart.
ROW_APART = 120.0


@dataclass(frozen=True)
class View:
    """From metres to pixels: `scale` pixels a metre, `left` and `top` of the plan's own upper left corner.

    `rows`: pixels down for every line, 0 where its place is known.
    """

    scale: float
    left: float
    top: float
    x0_m: float
    y1_m: float
    rows: tuple[float, ...]
    bottom: float
    middle: Place

    def place(self, line: int, x_m: float, y_m: float) -> Place:
        """Where a place of a line is drawn."""
        x = self.left + (x_m - self.x0_m) * self.scale
        return x, self.top + (self.y1_m - y_m) * self.scale + self.rows[line]

    def hook(self, line: int, hook: HookPoint) -> Place:
        """Where a hook is drawn."""
        return self.place(line, hook.x_m, hook.y_m)

    def normal(self, line: int, span: Span) -> Place:
        """The side of a span that looks away from the middle of the plan; upwards where neither does."""
        (ax, ay), (bx, by) = self.hook(line, span.first), self.hook(line, span.second)
        length = math.hypot(bx - ax, by - ay)
        nx, ny = (by - ay) / length, -(bx - ax) / length
        outwards = nx * ((ax + bx) / 2 - self.middle[0]) + ny * ((ay + by) / 2 - self.middle[1])
        upwards = -ny if abs(ny) > 1e-6 else -nx
        turn = outwards if abs(outwards) > 2 else upwards
        return (nx, ny) if turn > 0 else (-nx, -ny)


def view_of(plan: HangingPlan, beside: tuple[Beside, ...] = ()) -> View:
    """The scale at which the whole plan fits, with places beside the hooks."""
    shown = [place for line in plan.lines for place in line.hooks] + list(beside)
    x0, x1 = min(place.x_m for place in shown), max(place.x_m for place in shown)
    y0, y1 = min(place.y_m for place in shown), max(place.y_m for place in shown)
    scale = (WIDTH - 2 * SIDE) / max(x1 - x0, 0.01)
    if (y1 - y0) * scale > _TALLEST:
        scale = _TALLEST / (y1 - y0)
    rows = _rows(plan)
    left = (WIDTH - (x1 - x0) * scale) / 2
    bottom = HEAD + (y1 - y0) * scale + max(rows)
    unmiddled = View(scale, left, HEAD, x0, y1, rows, bottom, (0.0, 0.0))
    places = [unmiddled.hook(k, hook) for k, line in enumerate(plan.lines) for hook in line.hooks]
    middle = sum(x for x, _y in places) / len(places), sum(y for _x, y in places) / len(places)
    return View(scale, left, HEAD, x0, y1, rows, bottom, middle)


def inward(view: View, line: int, span: Span) -> Place:
    """The other side of a span, that looks to the middle of the plan."""
    nx, ny = view.normal(line, span)
    return -nx, -ny


def _rows(plan: HangingPlan) -> tuple[float, ...]:
    """Rows whose place is not known go below each other, and below those that lie where they do."""
    free = [index for index, line in enumerate(plan.lines) if not line.placed]
    first = 0 if len(free) == len(plan.lines) else 1
    down = {index: (first + place) * ROW_APART for place, index in enumerate(free)}
    return tuple(down.get(index, 0.0) for index in range(len(plan.lines)))


def stretch(view: View, index: int, line: HungLine, from_m: float, to_m: float) -> list[Place]:
    """The way of the wire in the plan from one place along it to another, over the hooks between."""
    inner = [hook for hook, along in _hooks_along(line) if from_m < along < to_m]
    ends = [place_at(view, index, line, along) for along in (from_m, to_m)]
    return [ends[0], *(view.hook(index, hook) for hook in inner), ends[1]]


def place_at(view: View, index: int, line: HungLine, along_m: float) -> Place:
    """Where the place `along_m` along the wire is drawn; the nearest hook beyond the ends."""
    span = span_at(line, along_m)
    from_m = min(max(along_m - span.start_m, 0.0), span.length_m)
    share = min(max(float(span.wire.x_at_m(from_m)) / span.wire.span_m, 0.0), 1.0)
    (ax, ay), (bx, by) = view.hook(index, span.first), view.hook(index, span.second)
    return ax + share * (bx - ax), ay + share * (by - ay)


def span_at(line: HungLine, along_m: float) -> Span:
    """The span at a place along the wire; the first or last one beyond the ends."""
    return next((span for span in reversed(line.spans) if span.start_m <= along_m), line.spans[0])


def _hooks_along(line: HungLine) -> list[tuple[HookPoint, float]]:
    starts = [(span.first, span.start_m) for span in line.spans]
    last = line.spans[-1]
    return [*starts, (last.second, last.start_m + last.length_m)]
