"""Which way the wire of one run goes: from the supply to its feed."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass

from guidegen.circuit.arrangement import Feed
from guidegen.hanging.lay import Laid
from guidegen.hanging.ways import OnLine, Place, Ways

#: Lengths are planned in centimetres, rounded up.
_PER_M = 100
#: Shortest extra wire worth planning, metre.
LEAST_EXTRA_M = 0.1


@dataclass(frozen=True)
class HungRoute:
    """Wire of one run along the hooks, metre: a feeder from supply to `entry`, extra wire on to `goal`."""

    feeder_m: float
    extra_m: float
    entry: OnLine
    goal: OnLine

    @property
    def wire_m(self) -> float:
        """Feeder and extra wire together, as a route."""
        return self.feeder_m + self.extra_m


def hung_route(ways: Ways, supply: Place, feed: Feed, line: int, laid: Laid, middle_m: float) -> HungRoute:
    """The wire of a run that lies so, `middle_m` from its fed end to the bulb in its middle.

    A run is fed at the end with its bulb 1; a middle by the way that is
    shortest, over that end or straight from the supply.
    """
    near, far = OnLine(line, laid.start_m), OnLine(line, laid.end_m)
    if laid.turned:
        near, far = far, near
    if feed == "middle":
        return _to_middle(ways, supply, line, laid, laid.at_m(middle_m))
    feeder_m = up(ways.way_m(supply, near))
    if feed == "one end":
        return HungRoute(feeder_m, 0.0, near, near)
    return HungRoute(feeder_m, up(ways.way_m(near, far)), near, far)


def _to_middle(ways: Ways, supply: Place, line: int, laid: Laid, along_m: float) -> HungRoute:
    """Over an end of the run, over a hook within it, or along it from a supply within it."""
    goal = OnLine(line, along_m)
    entries = [(ways.way_m(supply, entry), entry) for entry in _entries(ways, supply, line, laid)]
    feeder_m, entry = min(
        entries, key=lambda each: (round(each[0] + abs(each[1].along_m - along_m), 6), round(each[0], 6))
    )
    extra_m = abs(max(entry.along_m, 0.0) - along_m)
    return HungRoute(up(feeder_m), max(LEAST_EXTRA_M, up(extra_m)), entry, goal)


def _entries(ways: Ways, supply: Place, line: int, laid: Laid) -> Iterator[OnLine]:
    """Where the supply's wire may come to a run: its ends, the hooks within, the supply's own place."""
    yield OnLine(line, max(laid.start_m, 0.0))
    yield OnLine(line, laid.end_m)
    yield from (OnLine(line, float(m)) for m in ways.starts[line] if laid.start_m < m < laid.end_m)
    if isinstance(supply, OnLine) and supply.line == line and laid.start_m < supply.along_m < laid.end_m:
        yield supply


def up(length_m: float) -> float:
    """A length in whole centimetres, rounded up."""
    return math.ceil(round(length_m * _PER_M, 6)) / _PER_M
