"""Where the supply of a proposed arrangement stands, and the wire that it saves against the other places."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from guidegen.choose.layouts import Layout, wire_m
from guidegen.project.check_runs import run_name
from guidegen.project.schema import Project, Run
from guidegen.project.supply_at import SupplyPlace


@dataclass(frozen=True)
class Sited:
    """The supply's place, and feeders and extra wires from it and from other places, least first, metre."""

    place: SupplyPlace
    wire_m: float
    others: tuple[tuple[SupplyPlace, float], ...]


def sited(project: Project, found: Iterable[Layout], layout: Layout) -> Sited:
    """The place of this layout, beside those that the same runs, fed alike, have from other places."""
    places, same = project.place.supply_places, alike(layout)
    others = [each for each in found if each[0].place != layout[0].place and alike(each) == same]
    wires = sorted((wire_m(each), each[0].place) for each in others)
    return Sited(
        places[layout[0].place], wire_m(layout), tuple((places[place], metres) for metres, place in wires)
    )


def alike(layout: Layout) -> tuple[object, ...]:
    """What layouts have in common that differ by the supply's place alone."""
    return tuple((part.string, part.used, part.bulbs, part.feed, part.line) for part in layout)


def settled(project: Project, runs: tuple[Run, ...], layout: Layout | None) -> Project:
    """The project with a proposal's runs on their lines of hooks, and its place of the supply alone."""
    if layout is None:
        return project.model_copy(update={"runs": runs})
    place = project.place.supply_places[layout[0].place]
    changes: dict[str, object] = {
        "runs": runs,
        "place": project.place.model_copy(update={"supply_at": place}),
    }
    hanging = project.hanging
    if hanging is not None and len(hanging.lines) > 1:
        lines = [
            line.model_copy(update={"runs": _named(runs, layout, number)})
            for number, line in enumerate(hanging.lines)
        ]
        changes["hanging"] = hanging.model_copy(update={"lines": tuple(lines)})
    return project.model_copy(update=changes)


def _named(runs: tuple[Run, ...], layout: Layout, line: int) -> tuple[str, ...]:
    pairs = enumerate(zip(runs, layout, strict=True))
    return tuple(run_name(index, run) for index, (run, part) in pairs if part.line == line)
