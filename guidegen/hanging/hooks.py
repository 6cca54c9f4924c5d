"""Hooks, and the wire between two of them; metre, seen from above with x to the right, y upwards."""

from __future__ import annotations

from dataclasses import dataclass

from guidegen.calc.catenary import Catenary


@dataclass(frozen=True)
class HookPoint:
    """A hook: its number over all lines from 1, its place, its height above the ground if it is known."""

    number: int
    x_m: float
    y_m: float
    height_m: float | None

    @property
    def label(self) -> str:
        """As the drawing names it: H1, H2, ..."""
        return f"H{self.number}"


@dataclass(frozen=True)
class Span:
    """Wire between two hooks; `start_m` is where it begins, along the wire from the line's first hook."""

    first: HookPoint
    second: HookPoint
    wire: Catenary
    start_m: float

    @property
    def length_m(self) -> float:
        """Wire in this span."""
        return self.wire.length_m

    @property
    def lowest_m(self) -> float | None:
        """Height of its lowest point above the ground, if the hooks' heights are known."""
        return None if self.first.height_m is None else self.first.height_m + self.wire.low_point_m
