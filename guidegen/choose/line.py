"""Where the runs lie, and the wire that their feeds need.

Assumed: the runs lie one after the other along one line, each with its first
bulb towards the supply; the supply's wire meets the line at
`place.supply_at`, and feeders and extra wires go along the line.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Literal

from guidegen.circuit.arrangement import Feed

#: Lengths are planned in centimetres, rounded up.
_PER_M = 100
#: Shortest extra wire worth planning, metre.
LEAST_EXTRA_M = 0.1


@dataclass(frozen=True)
class Route:
    """Wire of one run in metres, one way: from where the supply meets the line, and on to its feed."""

    feeder_m: float
    extra_m: float


def supply_position_m(supply_at: float | Literal["start", "middle"], line_m: float) -> float:
    """Where the supply's wire meets a line of that length, metre from its start."""
    if supply_at == "start":
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
            return Route(0.0, max(LEAST_EXTRA_M, _up(abs(start_m + middle_m - supply_m))))
        return Route(_up(_outside_m(start_m, end_m, supply_m)), max(LEAST_EXTRA_M, _up(middle_m)))
    near_m = min(supply_m - start_m, end_m - supply_m) if inside else _outside_m(start_m, end_m, supply_m)
    return Route(_up(near_m), 0.0 if feed == "one end" else _up(length_m))


def _outside_m(start_m: float, end_m: float, supply_m: float) -> float:
    return max(start_m - supply_m, supply_m - end_m, 0.0)


def _up(length_m: float) -> float:
    return math.ceil(round(length_m * _PER_M, 6)) / _PER_M
