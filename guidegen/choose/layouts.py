"""Layouts: every split with every feed, and where its wires go; sizes of wire are still open."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from itertools import islice, product
from typing import get_args

import numpy as np

from guidegen.choose.line import Route, route, supply_position_m
from guidegen.choose.splits import MOST_RUNS, Sizes, splits
from guidegen.circuit.arrangement import Feed
from guidegen.project.schema import LightString, Project
from guidegen.safety.strings import is_parallel

FEEDS: tuple[Feed, ...] = get_args(Feed)
#: Layouts of several kinds of string that are looked at one by one.
MOST_LAYOUTS = 3_000


@dataclass(frozen=True)
class Part:
    """One run of a layout: its kind of string, its first bulb counted over all strings, its wire."""

    string: str
    used: int
    bulbs: int
    feed: Feed
    route: Route


Layout = tuple[Part, ...]


@dataclass(frozen=True)
class _Stretch:
    """Bulbs of one run and its feed, before anything is known of its place."""

    string: str
    used: int
    bulbs: int
    feed: Feed


@dataclass
class _Measures:
    """Lengths of runs, each worked out once."""

    kinds: Mapping[str, LightString]
    known: dict[tuple[str, int, int], tuple[float, float]] = field(default_factory=dict)

    def of(self, stretch: _Stretch) -> tuple[float, float]:
        """Length of the run, and from its start to the bulb in its middle, metre."""
        kind = self.kinds[stretch.string]
        key = (stretch.string, stretch.used % kind.bulbs, stretch.bulbs)
        if key not in self.known:
            self.known[key] = _lengths_m(kind, *key[1:])
        return self.known[key]


def _lengths_m(kind: LightString, used: int, bulbs: int) -> tuple[float, float]:
    numbers = np.arange(used, used + bulbs) % kind.bulbs
    position_m = np.cumsum(np.where(numbers == 0, kind.tail_m, kind.spacing))
    return float(position_m[-1]), float(position_m[-(-bulbs // 2) - 1])


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

    Runs of one kind of string and one size are fed alike.  Where several
    kinds make too many layouts, all runs of a kind are fed alike, and then
    all runs of all kinds.
    """
    bulbs = bulbs_to_use(project)
    choices = [list(_of_kind(name, project.strings[name], count)) for name, count in bulbs.items()]
    measures = _Measures(project.strings)
    return tuple(_placed(stretches, project, measures) for stretches in _together(choices))


_Choices = list[list[tuple[_Stretch, ...]]]


def _together(choices: _Choices) -> Iterator[tuple[_Stretch, ...]]:
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


def _several(choices: _Choices) -> Iterator[tuple[_Stretch, ...]]:
    """One choice of every kind, with no more runs together than are looked at."""
    fewest = [min((len(each) for each in choice), default=0) for choice in choices]
    yield from _joined(choices, fewest, max(MOST_RUNS, sum(fewest)))


def _joined(choices: _Choices, fewest: list[int], most_runs: int) -> Iterator[tuple[_Stretch, ...]]:
    if not choices:
        yield ()
        return
    left = most_runs - sum(fewest[1:])
    for first in choices[0]:
        if len(first) <= left:
            for others in _joined(choices[1:], fewest[1:], most_runs - len(first)):
                yield (*first, *others)


def _of_kind(name: str, kind: LightString, bulbs: int) -> Iterator[tuple[_Stretch, ...]]:
    feeds = FEEDS if is_parallel(kind) else FEEDS[:1]
    for sizes in splits(kind, bulbs):
        for chosen in product(feeds, repeat=len(set(sizes))):
            yield _stretches(name, sizes, dict(zip(dict.fromkeys(sizes), chosen, strict=True)))


def _stretches(name: str, sizes: Sizes, feed: Mapping[int, Feed]) -> tuple[_Stretch, ...]:
    used = np.concatenate([[0], np.cumsum(sizes)])
    return tuple(
        _Stretch(name, int(first), size, feed[size]) for first, size in zip(used[:-1], sizes, strict=True)
    )


def _placed(stretches: tuple[_Stretch, ...], project: Project, measures: _Measures) -> Layout:
    lengths = [measures.of(stretch) for stretch in stretches]
    ends_m = np.cumsum([length_m for length_m, _ in lengths])
    supply_m = supply_position_m(project.place.supply_at, float(ends_m[-1]))
    return tuple(
        Part(
            *(stretch.string, stretch.used, stretch.bulbs, stretch.feed),
            route(stretch.feed, float(end_m) - length_m, length_m, middle_m, supply_m),
        )
        for stretch, end_m, (length_m, middle_m) in zip(stretches, ends_m, lengths, strict=True)
    )
