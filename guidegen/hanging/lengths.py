"""The lengths of wire that a project file states, beside their ways over the hooks."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from guidegen.circuit.arrangement import Arrangement, RunPlan
from guidegen.hanging.laid import laid_on_line, positions_m, runs_on
from guidegen.hanging.lay import Laid
from guidegen.hanging.routes import HungRoute, hung_route, up
from guidegen.hanging.supply import spot_of, ways_of
from guidegen.hanging.ways import Place, Ways
from guidegen.project.schema import Project
from guidegen.project.supply_at import SupplyPlace


@dataclass(frozen=True)
class WireLength:
    """Wire of one run (index): the length stated and its way over the hooks, metre.

    `wire`: which one; "to middle" is feeder and extra wire of a run fed at
    its middle, where one may make up for the other.
    """

    run: int
    wire: Literal["feeder", "extra", "to middle"]
    stated_m: float
    way_m: float


@dataclass(frozen=True)
class StatedLengths:
    """Feeders and extra wires as stated, the supply at the nearest of its places."""

    place: SupplyPlace
    wires: tuple[WireLength, ...]


@dataclass(frozen=True)
class _Hung:
    """A run as it lies on its line (indices)."""

    run: int
    plan: RunPlan
    line: int
    laid: Laid


def stated_lengths(project: Project, arrangement: Arrangement) -> StatedLengths | None:
    """Stated lengths and their ways; None where the plan does not tell all distances.

    The nearest place of the supply has the least wire to the runs as they
    hang; the drawing of the plan shows it there too.
    """
    ways = ways_of(project)
    if ways is None:
        return None
    hung = sorted(_hung(project, arrangement), key=lambda each: each.run)
    spots = [(place, spot_of(ways, place)) for place in project.place.supply_places]
    routes = [[_route(ways, spot, run) for run in hung] for _place, spot in spots]
    nearest = min(range(len(spots)), key=lambda number: sum(route.wire_m for route in routes[number]))
    place, spot = spots[nearest]
    found = zip(hung, routes[nearest], strict=True)
    wires = (wire for run, route in found for wire in _lengths(ways, spot, run.plan, run.run, route))
    return StatedLengths(place, tuple(wires))


def _hung(project: Project, arrangement: Arrangement) -> Iterator[_Hung]:
    hanging = project.hanging
    assert hanging is not None, "there are hooks"
    for number, line in enumerate(hanging.lines):
        runs = runs_on(line, arrangement)
        for index, laid in zip(runs, laid_on_line(project, hanging, arrangement, runs), strict=True):
            yield _Hung(index, arrangement.runs[index], number, laid)


def _route(ways: Ways, spot: Place, run: _Hung) -> HungRoute:
    middle_m = float(positions_m(run.plan)[-(-run.plan.bulbs // 2) - 1])
    return hung_route(ways, spot, run.plan.feed, run.line, run.laid, middle_m)


def _lengths(ways: Ways, spot: Place, plan: RunPlan, run: int, route: HungRoute) -> Iterator[WireLength]:
    """What is stated of a run, beside its way; without a feeder the extra wire begins at the supply."""
    feeder, extra = plan.feeder, plan.extra
    if plan.feed == "middle" and extra is not None:
        if feeder is None:
            yield WireLength(run, "extra", extra.length_m, route.wire_m)
        else:
            yield WireLength(run, "to middle", feeder.length_m + extra.length_m, route.wire_m)
        return
    if feeder is not None:
        yield WireLength(run, "feeder", feeder.length_m, route.feeder_m)
    if extra is not None:
        way_m = route.extra_m if feeder is not None else up(ways.way_m(spot, route.goal))
        yield WireLength(run, "extra", extra.length_m, way_m)
