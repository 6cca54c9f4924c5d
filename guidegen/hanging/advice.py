"""Which end or middle of a run to feed, and where the supply takes the least wire, by the hanging plan."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from functools import cached_property

from guidegen.circuit.arrangement import Arrangement, Feed, RunPlan
from guidegen.hanging.laid import positions_m
from guidegen.hanging.lay import Laid
from guidegen.hanging.paths import SupplyPaths, WirePath
from guidegen.hanging.plan import HangingPlan
from guidegen.hanging.routes import LEAST_EXTRA_M, HungRoute, hung_route
from guidegen.hanging.supply import spot_of, ways_of, where_on_line
from guidegen.hanging.ways import Place, Ways
from guidegen.project.schema import Project
from guidegen.project.supply_at import SupplyPlace

#: A feeder shorter than this is not drawn, metre.
_SHOWN_M = 0.05


@dataclass(frozen=True)
class FeedWay:
    """One way to feed a run: at its middle, or at the end that `turned` tells; `hooks`: where it is fed."""

    feed: Feed
    turned: bool
    route: HungRoute
    hooks: str


@dataclass(frozen=True)
class RunWays:
    """Ways to feed one run from one place of the supply, the least wire first; `own`: as it is fed now."""

    run: int
    own: FeedWay
    ways: tuple[FeedWay, ...]

    @property
    def least_as_fed_m(self) -> float:
        """Wire of its own feed, hung whichever way round takes less."""
        return min(way.route.wire_m for way in self.ways if way.feed == self.own.feed)


@dataclass(frozen=True)
class SupplyWire:
    """Feeders and extra wires of all runs from one place of the supply."""

    place: SupplyPlace
    spot: Place
    runs: tuple[RunWays, ...]

    @cached_property
    def wire_m(self) -> float:
        """Route of all of them together, every run hung whichever way round takes less."""
        return sum(run.least_as_fed_m for run in self.runs)

    @cached_property
    def as_hung_m(self) -> float:
        """Route of all of them together, every run hung as it is."""
        return sum(run.own.route.wire_m for run in self.runs)


def supply_wires(project: Project, arrangement: Arrangement, plan: HangingPlan) -> tuple[SupplyWire, ...]:
    """Every place of the supply, the least wire first; empty where the plan does not tell all distances."""
    ways = ways_of(project)
    if ways is None or plan.not_hung:
        return ()
    found = [_from(ways, place, arrangement, plan) for place in project.place.supply_places]
    return tuple(sorted(found, key=lambda each: each.wire_m))


def supply_paths(project: Project, arrangement: Arrangement, plan: HangingPlan) -> SupplyPaths:
    """The supply at the place of the least wire for the runs as they hang, and its wires.

    Of several places the first counts, without wires, if distances are not known.
    """
    ways = Ways(tuple(line.spans for line in plan.lines))
    found = supply_wires(project, arrangement, plan)
    if not found:
        return SupplyPaths(spot_of(ways, project.place.supply_places[0]), ())
    order = project.place.supply_places
    nearest = min(found, key=lambda each: (each.as_hung_m, order.index(each.place)))
    wires = tuple(wire for each in nearest.runs for wire in _paths(ways, nearest.spot, each))
    return SupplyPaths(nearest.spot, wires)


def _paths(ways: Ways, spot: Place, run: RunWays) -> Iterator[WirePath]:
    route = run.own.route
    if route.feeder_m >= _SHOWN_M:
        yield WirePath(run.run, False, ways.path(spot, route.entry))
    if route.extra_m > LEAST_EXTRA_M:
        yield WirePath(run.run, True, ways.path(route.entry, route.goal))


def _from(ways: Ways, place: SupplyPlace, arrangement: Arrangement, plan: HangingPlan) -> SupplyWire:
    spot = spot_of(ways, place)
    runs = [
        _run_ways(ways, spot, index, arrangement.runs[index], number, laid)
        for number, line in enumerate(plan.lines)
        for index, laid in zip(line.runs, line.laid, strict=True)
    ]
    return SupplyWire(place, spot, tuple(sorted(runs, key=lambda each: each.run)))


def _run_ways(ways: Ways, spot: Place, index: int, run: RunPlan, line: int, laid: Laid) -> RunWays:
    """Every way that its kind allows: its own feed and one end from either end, and the middle."""
    middle_m = float(positions_m(run)[-(-run.bulbs // 2) - 1])

    def way(feed: Feed, turned: bool) -> FeedWay:
        route = hung_route(ways, spot, feed, line, replace(laid, turned=turned), middle_m)
        fed = route.goal if feed == "middle" else route.entry
        return FeedWay(feed, turned, route, where_on_line(ways, fed))

    feeds: tuple[Feed, ...] = ("one end", "middle") if run.cuttable else ("one end",)
    choices = {(feed, turn) for feed in (*feeds, run.feed) for turn in (False, True)}
    choices -= {("middle", not laid.turned)}
    found = sorted((way(*choice) for choice in sorted(choices)), key=lambda each: each.route.wire_m)
    return RunWays(index, way(run.feed, laid.turned), tuple(found))
