"""Hooks and spans of a line, with one level pull in all spans.

One level pull is what a wire takes that may slide over its hooks; then no
hook in a straight row is pulled sideways.
"""

from __future__ import annotations

import math
from itertools import accumulate, pairwise

from guidegen.calc.catenary import Catenary, from_sag
from guidegen.hanging.hooks import HookPoint, Span
from guidegen.project.hung import Hanging, Line

_HALVINGS = 200
#: Half a span over the catenary parameter, at most and at least: a loop, and a wire as taut as can be.
_SLACKEST, _TAUTEST = 300.0, 1e-6


def hook_points(hanging: Hanging, line: Line, before: int) -> tuple[HookPoint, ...]:
    """The hooks of a line; `before` hooks are numbered already."""
    if line.hooks is not None:
        places = [(hook.x, hook.y, hook.height) for hook in line.hooks]
    else:
        places = [(x, 0.0, None) for x in accumulate(line.spans or (), initial=0.0)]
    return tuple(
        HookPoint(before + index, x, y, hanging.height if height is None else height)
        for index, (x, y, height) in enumerate(places, start=1)
    )


def spans_of(hanging: Hanging, line: Line, hooks: tuple[HookPoint, ...]) -> tuple[Span, ...]:
    """The spans between the hooks, hung by the line's sag or length."""
    ways = [(_distance_m(a, b), _rise_m(a, b)) for a, b in pairwise(hooks)]
    if line.length is not None:
        c_m = _parameter_for(ways, line.length)
    else:
        sag = line.sag if line.sag is not None else hanging.sag
        assert sag is not None, "the reader asks for a sag or a length"
        longest = max(ways)
        c_m = from_sag(longest[0], sag, longest[1]).c_m
    wires = [Catenary(span, rise, c_m) for span, rise in ways]
    starts = accumulate((wire.length_m for wire in wires), initial=0.0)
    return tuple(
        Span(first, second, wire, start)
        for (first, second), wire, start in zip(pairwise(hooks), wires, starts, strict=False)
    )


def _distance_m(first: HookPoint, second: HookPoint) -> float:
    return math.hypot(second.x_m - first.x_m, second.y_m - first.y_m)


def _rise_m(first: HookPoint, second: HookPoint) -> float:
    if first.height_m is None or second.height_m is None:
        return 0.0
    return second.height_m - first.height_m


def _parameter_for(ways: list[tuple[float, float]], length_m: float) -> float:
    """The parameter at which all spans together take so much wire, by halving.

    A wire too short for hooks of unequal height comes out as taut as can be.
    """
    longest, shortest = max(span for span, _rise in ways), min(span for span, _rise in ways)
    low, high = longest / (2 * _SLACKEST), shortest / (2 * _TAUTEST)
    for _halving in range(_HALVINGS):
        middle = math.sqrt(low * high)
        total = sum(Catenary(span, rise, middle).length_m for span, rise in ways)
        low, high = (middle, high) if total > length_m else (low, middle)
    return math.sqrt(low * high)
