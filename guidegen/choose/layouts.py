"""Layouts: every split with every feed, and where its wires go; sizes of wire are still open."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from itertools import product
from typing import get_args

import numpy as np

from guidegen.choose.line import Route, route, supply_position_m
from guidegen.choose.splits import MOST_RUNS, Sizes, splits
from guidegen.circuit.arrangement import Feed
from guidegen.project.schema import LightString, Project
from guidegen.safety.strings import is_parallel

FEEDS: tuple[Feed, ...] = get_args(Feed)
#: Layouts of several kinds of string that are looked at; beyond them the feeds of a kind are the same.
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

    Runs of one kind of string and one size are fed alike.
    """
    bulbs = bulbs_to_use(project)
    choices = [list(_of_kind(name, project.strings[name], count)) for name, count in bulbs.items()]
    if np.prod([float(len(choice)) for choice in choices]) > MOST_LAYOUTS and len(choices) > 1:
        choices = [[each for each in choice if len({part.feed for part in each}) == 1] for choice in choices]
    fewest = sum(min((len(each) for each in choice), default=0) for choice in choices)
    together = (sum(parts, ()) for parts in _several(choices, max(MOST_RUNS, fewest)))
    measures = _Measures(project.strings)
    return tuple(_placed(stretches, project, measures) for stretches in together)


def _several(
    choices: list[list[tuple[_Stretch, ...]]], most_runs: int
) -> Iterator[tuple[tuple[_Stretch, ...], ...]]:
    """One choice of every kind, as long as there are not too many runs or layouts."""
    count = 0
    for parts in product(*choices):
        if sum(map(len, parts)) <= most_runs:
            yield parts
            count += 1
            if count >= MOST_LAYOUTS:
                return


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
