"""What the plan shows of the supply: where it stands, its feeders beside the lights, and where they enter."""

from __future__ import annotations

import math
from dataclasses import dataclass
from itertools import pairwise

from guidegen.circuit.arrangement import Arrangement, RunPlan
from guidegen.drawings.plan_pen import PlanPen, feed_words
from guidegen.drawings.plan_room import Room, words_box
from guidegen.drawings.plan_view import View, inward, place_at, span_at
from guidegen.drawings.sketch import Place
from guidegen.hanging import ways
from guidegen.hanging.paths import SupplyPaths, WirePath
from guidegen.hanging.plan import HangingPlan, HungLine
from guidegen.hanging.ways import OnLine

#: The first feeder keeps so far from the lights' wire, and every other one so far from the one before it.
_BESIDE, _APART = 7.5, 3.0
#: An arrow's tip keeps so far from the wire, and so far from the feeders beside it.
_TIP, _TIP_APART = 7.0, 2.5
#: More wires side by side than this are drawn over each other.
_MOST_LANES = 6
#: An arrow so near to a wire's end keeps clear of it, metre.
_NEAR_M = 0.2
#: How much farther out the words at an arrow may stand, nearest first.
_STEMS = (0.0, 12.0, 24.0, 36.0)
#: Degrees by which an arrow may come aslant, the least first.
_TURNS = (0.0, 40.0, -40.0)
#: A corner is cut when its point would lie farther out than this many times the distance beside the wire.
_SHARPEST = 2.0
#: Sides whose directions add up to less than this look away from each other.
_OPPOSED = 0.1


def feeds_of(run: RunPlan) -> tuple[tuple[int, str], ...]:
    """Bulbs at which a run is fed, and the poles that enter there."""
    last = run.bulbs
    return {
        "one end": ((1, "+ −"),),
        "middle": ((run.fed_bulb, "+ −"),),
        "both ends": ((1, "+ −"), (last, "+ −")),
        "opposite ends": ((1, "+"), (last, "−")),
    }[run.feed]


@dataclass(frozen=True)
class Lane:
    """A wire of the supply and how many wires lie between it and the lights."""

    wire: WirePath
    number: int


def lanes_of(paths: SupplyPaths) -> tuple[Lane, ...]:
    """Every wire in the nearest lane where no other one lies beside the same lights."""
    found: list[Lane] = []
    for wire in paths.wires:
        beside = {lane.number for lane in found if _side_by_side(lane.wire, wire)}
        free = min(number for number in range(len(found) + 1) if number not in beside)
        found.append(Lane(wire, min(free, _MOST_LANES - 1)))
    return tuple(found)


def _side_by_side(first: WirePath, second: WirePath) -> bool:
    return any(
        one[0] == other[0] and one[1] < other[2] and other[1] < one[2]
        for one in _stretches(first)
        for other in _stretches(second)
    )


def _stretches(wire: WirePath) -> list[tuple[int, float, float]]:
    """Stretches of lines that a wire follows: line, from, to."""
    return [
        (before.line, min(before.along_m, after.along_m), max(before.along_m, after.along_m))
        for before, after in pairwise(wire.places)
        if isinstance(before, OnLine) and isinstance(after, OnLine) and before.line == after.line
    ]


def _lanes_at(lanes: tuple[Lane, ...], line: int, along_m: float) -> int:
    """How many lanes an arrow at that place has to keep clear of."""
    near = [
        lane.number + 1
        for lane in lanes
        for index, low, high in _stretches(lane.wire)
        if index == line and low - _NEAR_M <= along_m <= high + _NEAR_M
    ]
    return max(near, default=0)


def draw_wires(pen: PlanPen, view: View, plan: HangingPlan, lanes: tuple[Lane, ...], room: Room) -> None:
    """Feeders and extra wires side by side, on the inner side of the lights."""
    for lane in lanes:
        way = _way(view, plan, lane.wire.places, _BESIDE + lane.number * _APART)
        pen.feeder(way, extra=lane.wire.extra)
        for (ax, ay), (bx, by) in pairwise(way):
            steps = max(1, int(math.dist((ax, ay), (bx, by)) / 8))
            for step in range(steps + 1):
                share = step / steps
                room.take((ax + share * (bx - ax), ay + share * (by - ay)), 1.0, 1.0)


def _way(view: View, plan: HangingPlan, places: tuple[ways.Place, ...], off: float) -> list[Place]:
    """Pixels of a way over these places, `off` beside the lights where it follows them."""
    found: list[Place] = []
    for before, after in pairwise(places):
        if isinstance(before, OnLine) and isinstance(after, OnLine) and before.line == after.line:
            found += _along(view, plan.lines[before.line], (before, after), off)
        else:
            found += [_beside(view, plan, before, off), _beside(view, plan, after, off)]
    last = places[-1]
    assert isinstance(last, OnLine), "a wire ends at a run"
    return [*found, place_at(view, last.line, plan.lines[last.line], last.along_m)]


def _along(view: View, line: HungLine, ends: tuple[OnLine, OnLine], off: float) -> list[Place]:
    low, high = sorted(max(end.along_m, 0.0) for end in ends)
    hooks = [span.start_m for span in line.spans if low < span.start_m < high]
    found = [_moved(view, ends[0].line, line, along, off) for along in (low, *hooks, high)]
    return found if ends[0].along_m <= ends[1].along_m else found[::-1]


def _beside(view: View, plan: HangingPlan, place: ways.Place, off: float) -> Place:
    if isinstance(place, OnLine):
        return _moved(view, place.line, plan.lines[place.line], max(place.along_m, 0.0), off)
    return view.place(0, place.x_m, place.y_m)


def inner_side(view: View, index: int, line: HungLine, along_m: float) -> Place:
    """The direction to the inner side at a place of a line; between both sides at a hook."""
    ax, ay = inward(view, index, span_at(line, max(along_m - 1e-6, 0.0)))
    bx, by = inward(view, index, span_at(line, along_m + 1e-6))
    length = math.hypot(ax + bx, ay + by)
    return ((ax + bx) / length, (ay + by) / length) if length > _OPPOSED else (bx, by)


def _moved(view: View, index: int, line: HungLine, along_m: float, off: float) -> Place:
    """A place on the wire, moved to the inner side; at a corner so that both sides keep their distance."""
    x, y = place_at(view, index, line, along_m)
    nx, ny = inner_side(view, index, line, along_m)
    bx, by = inward(view, index, span_at(line, along_m + 1e-6))
    far = off / max(nx * bx + ny * by, 1 / _SHARPEST)
    return x + far * nx, y + far * ny


def draw_feeds(
    pen: PlanPen,
    view: View,
    plan: HangingPlan,
    arrangement: Arrangement,
    room: Room,
    lanes: tuple[Lane, ...],
) -> None:
    """An arrow at every place where a run is fed: from inside or from outside, where its words fit."""
    for index, line in enumerate(plan.lines):
        for run in line.runs:
            planned = arrangement.runs[run]
            along = {bulb.bulb: bulb.along_m for bulb in line.bulbs if bulb.run == run}
            for bulb, poles in feeds_of(planned):
                at_m = max(along[bulb], 0.0)
                feed = at_m, f"{run + 1}: {poles}", _lanes_at(lanes, index, at_m)
                _draw_feed(pen, view, index, line, room, feed)


def _draw_feed(
    pen: PlanPen, view: View, index: int, line: HungLine, room: Room, feed: tuple[float, str, int]
) -> None:
    at_m, words, beside = feed
    place = place_at(view, index, line, at_m)
    inside = inward(view, index, span_at(line, at_m))
    past = _BESIDE + (beside - 1) * _APART + _TIP_APART if beside else _TIP
    choices = [
        _Arrow(place, _turned(side, turn), words, start, stem)
        for stem in _STEMS
        for turn in _TURNS
        for side, start in ((inside, past), ((-inside[0], -inside[1]), _TIP))
    ]
    arrow = next((each for each in choices if each.fits(room)), choices[0])
    pen.feed(place, arrow.normal, words, arrow.start, arrow.stem)
    room.take_words(arrow.words_at, words)
    for spot in arrow.body:
        room.take(spot, 4.5, 4.5)


@dataclass(frozen=True)
class _Arrow:
    """An arrow at a feed as it might be drawn: from which side, how far out."""

    place: Place
    normal: Place
    words: str
    start: float
    stem: float

    @property
    def words_at(self) -> Place:
        """The middle of its words."""
        return feed_words(self.place, self.normal, self.words, self.start - _TIP + self.stem)

    @property
    def body(self) -> list[Place]:
        """Places along the arrow itself."""
        (x, y), (nx, ny) = self.place, self.normal
        return [
            (x + far * nx, y + far * ny) for far in range(int(self.start), int(self.start + 9 + self.stem), 4)
        ]

    def fits(self, room: Room) -> bool:
        """Whether its words are free, and it lies on no others."""
        free = room.free(words_box(self.words_at, self.words))
        return free and not any(room.crosses_words(spot, 3.0) for spot in self.body)


def _turned(side: Place, degrees: float) -> Place:
    cos, sin = math.cos(math.radians(degrees)), math.sin(math.radians(degrees))
    return side[0] * cos - side[1] * sin, side[0] * sin + side[1] * cos
