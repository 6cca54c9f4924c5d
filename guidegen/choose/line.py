"""Where the runs lie without a hanging plan, and the wire that their feeds need.

Assumed: the runs lie one after the other along one line, each with its first
bulb towards the supply; the supply's wire meets the line at
`place.supply_at`, and feeders and extra wires go along the line.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import accumulate
from typing import Protocol

from guidegen.circuit.arrangement import Feed
from guidegen.hanging.routes import LEAST_EXTRA_M, up
from guidegen.project.supply_at import AtHook, AtPoint, SupplyPlace


@dataclass(frozen=True)
class Route:
    """Wire of one run in metres, one way: from where the supply meets the line, and on to its feed.

    `turned`: the run hangs with its last bulb first along the hooks.
    """

    feeder_m: float
    extra_m: float
    turned: bool = False


@dataclass(frozen=True)
class Stretch:
    """Bulbs of one run and its feed on a line of hooks, before anything is known of its place."""

    string: str
    used: int
    bulbs: int
    feed: Feed
    line: int = 0


@dataclass(frozen=True)
class Measure:
    """Lengths of a run, metre.

    `whole_m`, `middle_m`: from the begin of its lead-in to its last bulb and
    to the one in its middle; `hung_m`, `hung_middle_m`: the same less what
    joints take; `lead_m`: its lead-in.
    """

    whole_m: float
    middle_m: float
    hung_m: float
    hung_middle_m: float
    lead_m: float
    spacing_m: float


class Ground(Protocol):
    """Where runs lie: along a straight line, or on hooks."""

    def routes(self, stretches: tuple[Stretch, ...], measures: list[Measure], place: int) -> list[Route]:
        """The wire of every run from one of the supply's places."""


@dataclass(frozen=True)
class Straight:
    """One straight line, with the places that the supply may have on it."""

    places: tuple[SupplyPlace, ...]

    def routes(self, stretches: tuple[Stretch, ...], measures: list[Measure], place: int) -> list[Route]:
        """The wire of every run from one of the supply's places."""
        ends_m = list(accumulate(measure.whole_m for measure in measures))
        supply_m = supply_position_m(self.places[place], ends_m[-1])
        return [
            route(stretch.feed, end_m - each.whole_m, each.whole_m, each.middle_m, supply_m)
            for stretch, each, end_m in zip(stretches, measures, ends_m, strict=True)
        ]


def supply_position_m(supply_at: SupplyPlace, line_m: float) -> float:
    """Where the supply's wire meets a line of that length, metre from its start.

    Hooks and points are unknown here and count as the start.
    """
    if supply_at == "start" or isinstance(supply_at, AtHook | AtPoint):
        return 0.0
    return line_m / 2 if supply_at == "middle" else float(supply_at)


def route(feed: Feed, start_m: float, length_m: float, middle_m: float, supply_m: float) -> Route:
    """The wire of a run that lies from `start_m` on, `length_m` long.

    `middle_m`: from its start to the bulb in its middle.  The feeder goes to
    the run's nearer end; a middle that the supply's wire reaches without
    passing an end is fed straight from there.
    """
    end_m = start_m + length_m
    inside = start_m < supply_m < end_m
    if feed == "middle":
        if inside:
            return Route(0.0, max(LEAST_EXTRA_M, up(abs(start_m + middle_m - supply_m))))
        return Route(up(_outside_m(start_m, end_m, supply_m)), max(LEAST_EXTRA_M, up(middle_m)))
    near_m = min(supply_m - start_m, end_m - supply_m) if inside else _outside_m(start_m, end_m, supply_m)
    return Route(up(near_m), 0.0 if feed == "one end" else up(length_m))


def _outside_m(start_m: float, end_m: float, supply_m: float) -> float:
    return max(start_m - supply_m, supply_m - end_m, 0.0)
