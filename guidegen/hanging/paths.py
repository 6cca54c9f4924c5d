"""The supply and the ways of its wires among the hooks, for the plan to show."""

from __future__ import annotations

from dataclasses import dataclass

from guidegen.hanging.ways import Place


@dataclass(frozen=True)
class WirePath:
    """The places that a run's feeder or extra wire goes over."""

    run: int
    extra: bool
    places: tuple[Place, ...]


@dataclass(frozen=True)
class SupplyPaths:
    """Where the supply stands in the plan, and the ways of its wires."""

    spot: Place
    wires: tuple[WirePath, ...]
