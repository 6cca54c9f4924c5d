"""Layouts: every split with every feed, and where its wires go; sizes of wire are still open."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from itertools import groupby, islice, product
from typing import get_args

import numpy as np

from guidegen.choose.hooks import Hooks
from guidegen.choose.line import Ground, Measure, Route, Straight, Stretch
from guidegen.choose.splits import MOST_RUNS, Sizes, splits
from guidegen.circuit.arrangement import Feed
from guidegen.hanging.laid import JOINT_TAKES_M
from guidegen.hanging.supply import ways_of
from guidegen.project.check_runs import run_name
from guidegen.project.schema import LightString, Project
from guidegen.safety.strings import is_parallel

FEEDS: tuple[Feed, ...] = get_args(Feed)
#: Layouts of several kinds of string that are looked at one by one.
MOST_LAYOUTS = 3_000


@dataclass(frozen=True)
class Part:
    """One run of a layout: its kind of string, its first bulb counted over all strings, its wire.

    `place`: index of the supply's place; `line`: of the line of hooks.
    """

    string: str
    used: int
    bulbs: int
    feed: Feed
    route: Route
    place: int = 0
    line: int = 0


Layout = tuple[Part, ...]


@dataclass
class _Measures:
    """Lengths of runs, each worked out once."""

    kinds: Mapping[str, LightString]
    known: dict[tuple[str, int, int], Measure] = field(default_factory=dict)

    def of(self, stretch: Stretch) -> Measure:
        """Lengths of the run."""
        kind = self.kinds[stretch.string]
        key = (stretch.string, stretch.used % kind.bulbs, stretch.bulbs)
        if key not in self.known:
            self.known[key] = _measure(kind, *key[1:])
        return self.known[key]


def _measure(kind: LightString, used: int, bulbs: int) -> Measure:
    numbers = np.arange(used, used + bulbs) % kind.bulbs
    segment_m = np.where(numbers == 0, kind.tail_m, kind.spacing)
    joined = (numbers == 0) & (np.arange(bulbs) > 0)
    position_m = np.cumsum(segment_m)
    hung_m = position_m - np.cumsum(np.where(joined, JOINT_TAKES_M, 0.0))
    middle = -(-bulbs // 2) - 1
    return Measure(
        whole_m=float(position_m[-1]),
        middle_m=float(position_m[middle]),
        hung_m=float(hung_m[-1]),
        hung_middle_m=float(hung_m[middle]),
        lead_m=float(segment_m[0]),
        spacing_m=kind.spacing,
    )


@dataclass(frozen=True)
class _Lot:
    """Bulbs of one kind of string that hang on one line."""

    string: str
    used: int
    bulbs: int
    line: int


def _lots(project: Project, ground: Ground) -> list[_Lot]:
    """The bulbs to use, line by line; on one line all of them."""
    if isinstance(ground, Hooks) and len(ground.ways.lines) > 1:
        return list(_lots_on_lines(project))
    return [_Lot(name, 0, bulbs, 0) for name, bulbs in bulbs_to_use(project).items()]


def _lots_on_lines(project: Project) -> Iterator[_Lot]:
    """Every line keeps as many bulbs as its runs in the file have."""
    assert project.hanging is not None, "there are lines"
    runs = {run_name(index, run): run for index, run in enumerate(project.runs or ())}
    used = dict.fromkeys(project.strings, 0)
    for number, line in enumerate(project.hanging.lines):
        here: dict[str, int] = {}
        for name in line.runs or ():
            kind = runs[name].string or next(iter(project.strings))
            here[kind] = here.get(kind, 0) + runs[name].bulbs
        for kind, bulbs in here.items():
            yield _Lot(kind, used[kind], bulbs, number)
            used[kind] += bulbs


def bulbs_to_use(project: Project) -> dict[str, int]:
    """Bulbs of every kind of string: as many as the runs in the file use, else all that were bought."""
    if project.runs is None:
        return {name: kind.bought * kind.bulbs for name, kind in project.strings.items()}
    used = dict.fromkeys(project.strings, 0)
    for run in project.runs:
        used[run.string or ""] += run.bulbs
    return {name: bulbs for name, bulbs in used.items() if bulbs}


def layouts(project: Project) -> tuple[Layout, ...]:
    """Every layout that is looked at, in a fixed order.

    Runs of one kind of string and one size on one line are fed alike.  Where
    several kinds or lines make too many layouts, all runs of a kind on a line
    are fed alike, and then all runs.  Of layouts that differ by the supply's
    place alone, that with the least wire comes first.
    """
    ground = ground_of(project)
    choices = [list(_of_kind(project.strings[lot.string], lot)) for lot in _lots(project, ground)]
    placing, places = _Placing(ground, _Measures(project.strings)), range(len(project.place.supply_places))
    return tuple(
        layout
        for stretches in _together(choices)
        for layout in sorted((placing.layout(stretches, place) for place in places), key=wire_m)
    )


def ground_of(project: Project) -> Ground:
    """Where the runs lie: on the hooks if all distances between them are known."""
    ways = ways_of(project)
    return Straight(project.place.supply_places) if ways is None else Hooks(project, ways)


def wire_m(layout: Layout) -> float:
    """Feeders and extra wire of a layout, as routes."""
    return round(sum(part.route.feeder_m + part.route.extra_m for part in layout), 6)


_Choices = list[list[tuple[Stretch, ...]]]


def _together(choices: _Choices) -> Iterator[tuple[Stretch, ...]]:
    """One choice of every kind in every combination that is looked at."""
    alike = [[each for each in choice if len({part.feed for part in each}) == 1] for choice in choices]
    if _count(choices) <= MOST_LAYOUTS or len(choices) == 1:
        yield from _several(choices)
    elif _count(alike) <= MOST_LAYOUTS:
        yield from _several(alike)
    else:
        for feed in FEEDS:
            fed = [[each for each in choice if each[0].feed == feed] or choice[:1] for choice in alike]
            yield from islice(_several(fed), MOST_LAYOUTS // len(FEEDS))


def _count(choices: _Choices) -> float:
    return math.prod(float(len(choice)) for choice in choices)


def _several(choices: _Choices) -> Iterator[tuple[Stretch, ...]]:
    """One choice of every kind, with no more runs together than are looked at."""
    fewest = [min((len(each) for each in choice), default=0) for choice in choices]
    yield from _joined(choices, fewest, max(MOST_RUNS, sum(fewest)))


def _joined(choices: _Choices, fewest: list[int], most_runs: int) -> Iterator[tuple[Stretch, ...]]:
    if not choices:
        yield ()
        return
    left = most_runs - sum(fewest[1:])
    for first in choices[0]:
        if len(first) <= left:
            for others in _joined(choices[1:], fewest[1:], most_runs - len(first)):
                yield (*first, *others)


def _of_kind(kind: LightString, lot: _Lot) -> Iterator[tuple[Stretch, ...]]:
    feeds = FEEDS if is_parallel(kind) else FEEDS[:1]
    for sizes in splits(kind, lot.bulbs):
        for chosen in product(feeds, repeat=len(set(sizes))):
            yield _stretches(lot, sizes, dict(zip(dict.fromkeys(sizes), chosen, strict=True)))


def _stretches(lot: _Lot, sizes: Sizes, feed: Mapping[int, Feed]) -> tuple[Stretch, ...]:
    used = lot.used + np.concatenate([[0], np.cumsum(sizes)])
    return tuple(
        Stretch(lot.string, int(first), size, feed[size], lot.line)
        for first, size in zip(used[:-1], sizes, strict=True)
    )


@dataclass
class _Placing:
    """Where runs lie; what hangs on one line does not depend on the others and is worked out once."""

    ground: Ground
    measures: _Measures
    known: dict[tuple[tuple[Stretch, ...], int], Layout] = field(default_factory=dict)

    def layout(self, stretches: tuple[Stretch, ...], place: int) -> Layout:
        """These runs with their wire from one of the supply's places."""
        lines = groupby(stretches, key=lambda each: each.line)
        return tuple(part for _line, here in lines for part in self._on_line(tuple(here), place))

    def _on_line(self, stretches: tuple[Stretch, ...], place: int) -> Layout:
        key = stretches, place
        if key not in self.known:
            routes = self.ground.routes(stretches, [self.measures.of(each) for each in stretches], place)
            self.known[key] = tuple(
                Part(each.string, each.used, each.bulbs, each.feed, route, place, each.line)
                for each, route in zip(stretches, routes, strict=True)
            )
        return self.known[key]
