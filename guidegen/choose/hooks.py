"""Where proposed runs hang, and the wire of their feeds, by the hanging plan."""

from __future__ import annotations

from dataclasses import dataclass, field
from functools import cached_property

from guidegen.choose.line import Measure, Route, Stretch
from guidegen.hanging.lay import Laid, lay
from guidegen.hanging.routes import hung_route
from guidegen.hanging.supply import spot_of
from guidegen.hanging.ways import OnLine, Ways
from guidegen.project.schema import Project

#: A run is hung the other way round if that saves at least so much feeder, metre.
_WORTH_M = 1e-6


@dataclass(frozen=True, eq=False)
class Hooks:
    """The hooks of a project, and the routes over them that were worked out already."""

    project: Project
    ways: Ways
    _known: dict[tuple[object, ...], Route] = field(default_factory=dict)

    @cached_property
    def _starts_at(self) -> str:
        hanging = self.project.hanging
        assert hanging is not None, "there are hooks"
        return hanging.starts_at

    def routes(self, stretches: tuple[Stretch, ...], measures: list[Measure], place: int) -> list[Route]:
        """The wire of every run from one of the supply's places.

        The runs of a line hang one behind the other, each with its bulb 1 at
        the end that is nearer to the supply.
        """
        before: dict[int, Laid] = {}
        found = []
        for stretch, measure in zip(stretches, measures, strict=True):
            laid, route = self._hung(stretch, measure, before.get(stretch.line), place)
            before[stretch.line] = laid
            found.append(route)
        return found

    def _hung(
        self, stretch: Stretch, measure: Measure, before: Laid | None, place: int
    ) -> tuple[Laid, Route]:
        lies = self._laid(measure, before, turned=False)
        if stretch.feed != "middle" and self._nearer_end(stretch.line, lies, place):
            lies = self._laid(measure, before, turned=True)
        key = place, stretch.line, stretch.feed, lies, measure.hung_middle_m
        if key not in self._known:
            spot = spot_of(self.ways, self.project.place.supply_places[place])
            way = hung_route(self.ways, spot, stretch.feed, stretch.line, lies, measure.hung_middle_m)
            self._known[key] = Route(way.feeder_m, way.extra_m, lies.turned)
        return lies, self._known[key]

    def _laid(self, measure: Measure, before: Laid | None, *, turned: bool) -> Laid:
        lengths = measure.hung_m, measure.lead_m, measure.spacing_m
        return lay(before, *lengths, turned=turned, starts_at=self._starts_at)

    def _nearer_end(self, line: int, lies: Laid, place: int) -> bool:
        """Whether the supply is nearer to the end of a run than to its start."""
        spot = spot_of(self.ways, self.project.place.supply_places[place])
        start_m, end_m = (self.ways.way_m(spot, OnLine(line, along)) for along in (lies.start_m, lies.end_m))
        return end_m < start_m - _WORTH_M
