"""The ways that wire may take over the hooks, and the shortest of them.

Wire hangs between hooks, as the lights do.  So a feeder or an extra wire
follows the lights from hook to hook.  It goes straight across no farther than
the longest span: from a supply beside the hooks to a hook, from one line to
another, and where a line comes back to itself, if that halves the way.  Where
a supply or a line is farther away, it goes by the shortest crossing there is.
"""

from __future__ import annotations

import math
from bisect import bisect_left
from dataclasses import dataclass, field
from itertools import permutations

import numpy as np
from numpy.typing import NDArray

from guidegen.circuit.arrangement import Floats
from guidegen.hanging.hooks import HookPoint, Span

#: A way straight across a line is taken if it is at most this share of the way along it.
_WORTH = 0.5
_ROUNDING_M = 1e-9

Flags = NDArray[np.bool_]


@dataclass(frozen=True)
class OnLine:
    """A place on a line: the line's index, metres of wire from its first hook.

    Before the first hook counts as at it; what is beyond the last one hangs
    on from there.
    """

    line: int
    along_m: float


@dataclass(frozen=True)
class Beside:
    """A place beside the hooks, seen from above, metre."""

    x_m: float
    y_m: float


Place = OnLine | Beside


@dataclass(frozen=True)
class Reach:
    """Wire from one place: metres to every hook, and the hook before it on the way (-1: from the place)."""

    place: Place
    hook_m: Floats
    before: NDArray[np.intp]


@dataclass
class Ways:
    """The hooks of all lines, numbered from 0 in the order of the lines."""

    lines: tuple[tuple[Span, ...], ...]
    _known: dict[Place, Reach] = field(default_factory=dict)
    _to_hooks_m: dict[Place, list[float]] = field(default_factory=dict)

    def __post_init__(self) -> None:
        self.hooks = [hook for spans in self.lines for hook in _hooks(spans)]
        counts = [len(spans) + 1 for spans in self.lines]
        self.first = [sum(counts[:index]) for index in range(len(counts))]
        self.starts = [np.array([span.start_m for span in spans]) for spans in self.lines]
        self._places = _places(self.hooks)
        self._line = np.repeat(np.arange(len(self.lines)), counts)
        # Kept as plain numbers too: thousands of places are looked up, and a span works its length out anew.
        self._starts_m = [[span.start_m for span in spans] for spans in self.lines]
        self._lengths_m = [[span.length_m for span in spans] for spans in self.lines]
        ends = [[*starts, self.end_m(index)] for index, starts in enumerate(self._starts_m)]
        self._along_m = np.concatenate(ends)
        self._longest_m = max(span.wire.span_m for spans in self.lines for span in spans)
        self._crossing_m = self._crossings()
        self._step_m = self._steps()
        self._apart_m = _shortest(self._step_m)

    def end_m(self, line: int) -> float:
        """Wire of a line from its first hook to its last."""
        return self._starts_m[line][-1] + self._lengths_m[line][-1]

    def hook_place(self, hook: int) -> OnLine:
        """A hook as a place on its line."""
        line = max(index for index, first in enumerate(self.first) if first <= hook)
        place = hook - self.first[line]
        end = place == len(self.lines[line])
        return OnLine(line, self.end_m(line) if end else self.lines[line][place].start_m)

    def reach(self, place: Place) -> Reach:
        """The shortest ways from a place to every hook (Dijkstra)."""
        if place not in self._known:
            self._known[place] = self._reach(place)
        return self._known[place]

    def way_m(self, start: Place, end: OnLine) -> float:
        """Wire from one place to a place on a line."""
        if start not in self._to_hooks_m:
            over_m = [wire_m + self._apart_m[hook] for hook, wire_m in self._near(start)]
            self._to_hooks_m[start] = np.min(over_m, axis=0).tolist()
        hook_m = self._to_hooks_m[start]
        over = (hook_m[hook] + rest_m for hook, rest_m in self._next_to(end))
        return min(self._straight_m(start, end), *over)

    def path(self, start: Place, end: OnLine) -> tuple[Place, ...]:
        """The places that the shortest way goes over, from start to end."""
        reach, near = self.reach(start), self._next_to(end)
        hook, rest_m = min(near, key=lambda each: reach.hook_m[each[0]] + each[1])
        if self._straight_m(start, end) <= reach.hook_m[hook] + rest_m + _ROUNDING_M:
            return (start, *self._hooks_between(start, end), end)
        places: list[Place] = [end]
        while hook >= 0:
            places.append(self.hook_place(hook))
            hook = int(reach.before[hook])
        return (start, *reversed(places))

    def _hooks_between(self, start: Place, end: OnLine) -> list[OnLine]:
        """The hooks of a line that a way along it passes, in its order."""
        assert isinstance(start, OnLine), "the way stays on a line"
        low, high = sorted((start.along_m, end.along_m))
        inner = [float(m) for m in self._along_m[self._line == end.line] if low < m < high]
        found = [OnLine(end.line, m) for m in inner if m - low > _ROUNDING_M and high - m > _ROUNDING_M]
        return found if start.along_m <= end.along_m else found[::-1]

    def _straight_m(self, start: Place, end: OnLine) -> float:
        """Along one line without leaving it; without end where that is not possible."""
        if isinstance(start, OnLine) and start.line == end.line:
            return abs(max(start.along_m, 0.0) - max(end.along_m, 0.0))
        return math.inf

    def _next_to(self, place: OnLine) -> list[tuple[int, float]]:
        """The hooks on both sides of a place on a line, and the wire from each to it."""
        along_m, first, end_m = max(place.along_m, 0.0), self.first[place.line], self.end_m(place.line)
        starts_m, lengths_m = self._starts_m[place.line], self._lengths_m[place.line]
        if along_m >= end_m:
            return [(first + len(starts_m), along_m - end_m)]
        index = bisect_left(starts_m, along_m + _ROUNDING_M) - 1
        before_m = max(along_m - starts_m[index], 0.0)
        return [(first + index, before_m), (first + index + 1, lengths_m[index] - before_m)]

    def _near(self, place: Place) -> list[tuple[int, float]]:
        """The hooks that wire may go to from a place without touching another, and the wire to each."""
        if isinstance(place, OnLine):
            return self._next_to(place)
        straight_m = np.hypot(self._places[:, 0] - place.x_m, self._places[:, 1] - place.y_m)
        near = straight_m <= max(self._longest_m, straight_m.min()) + _ROUNDING_M
        return [(int(hook), float(straight_m[hook])) for hook in np.flatnonzero(near)]

    def _reach(self, place: Place) -> Reach:
        count = len(self.hooks)
        hook_m = np.full(count, np.inf)
        for hook, wire_m in self._near(place):
            hook_m[hook] = wire_m
        before, open_m = np.full(count, -1, dtype=np.intp), hook_m.copy()
        while np.isfinite(open_m).any():
            here = int(np.argmin(open_m))
            open_m[here] = np.inf
            then_m = hook_m[here] + self._step_m[here]
            shorter = then_m < hook_m - _ROUNDING_M
            hook_m[shorter], before[shorter], open_m[shorter] = then_m[shorter], here, then_m[shorter]
        return Reach(place, hook_m, before)

    def _steps(self) -> Floats:
        """Wire from hook to hook where it may go without touching a third (N, N); inf where not."""
        straight_m = np.sqrt(((self._places[:, None] - self._places) ** 2).sum(axis=2))
        apart_m = np.abs(self._along_m[:, None] - self._along_m)
        same: Flags = self._line[:, None] == self._line
        number = np.arange(len(same))
        beside = same & (np.abs(number[:, None] - number) == 1)
        back = same & (straight_m <= self._longest_m + _ROUNDING_M) & (straight_m <= _WORTH * apart_m)
        over = ~same & (straight_m <= self._crossing_m[self._line][:, self._line] + _ROUNDING_M)
        step_m: Floats = np.where(beside, apart_m, np.where(back | over, straight_m, np.inf))
        return step_m

    def _crossings(self) -> Floats:
        """How far wire may go straight from line to line (lines, lines)."""
        count = len(self.lines)
        nearest_m = np.zeros((count, count))
        for first, second in permutations(range(count), 2):
            ours, theirs = self._places[self._line == first], self._places[self._line == second]
            nearest_m[first, second] = min(
                float(np.sqrt(((theirs - place) ** 2).sum(axis=1)).min()) for place in ours
            )
        return np.maximum(nearest_m, self._longest_m)


def _shortest(step_m: Floats) -> Floats:
    """The shortest ways from hook to hook over any others (N, N), by Floyd and Warshall."""
    shortest_m = step_m.copy()
    np.fill_diagonal(shortest_m, 0.0)
    for over in range(len(shortest_m)):
        shortest_m = np.minimum(shortest_m, shortest_m[:, over, None] + shortest_m[over])
    return shortest_m


def _hooks(spans: tuple[Span, ...]) -> list[HookPoint]:
    return [spans[0].first, *(span.second for span in spans)]


def _places(hooks: list[HookPoint]) -> Floats:
    """Where the hooks are (N, 3); heights count where all are known."""
    known = all(hook.height_m is not None for hook in hooks)
    return np.array([(hook.x_m, hook.y_m, (hook.height_m or 0.0) if known else 0.0) for hook in hooks])
