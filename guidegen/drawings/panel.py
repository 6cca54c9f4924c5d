"""One panel of a chart: its frame, grid and scales, and what is drawn by them."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np

from guidegen.circuit.arrangement import Floats, RunPlan
from guidegen.drawings.sheet import Place, Sheet
from guidegen.locale import _
from guidegen.locale.numerals import fixed, general

TICKS = 8.0
_TICK = 2.5
#: From an edge of the frame to the baseline of the numbers over, under and beside it.
_OVER, _UNDER, _BESIDE = 7.0, -11.0, -3.0
#: Part of the width that is left free behind the last bulb.
_REACH = 1.03


@dataclass(frozen=True)
class Scale:
    """From where to where the scale at the left goes, and which values it names."""

    low: float
    high: float
    ticks: tuple[float, ...]
    words: tuple[str, ...]


def even_scale(low: float, high: float) -> Scale:
    """A scale that names a few round values."""
    ticks = round_values(low, high, 4, (1, 2, 2.5, 5, 10))
    step = min(np.diff(ticks), default=1.0)
    decimals = max(0, -math.floor(math.log10(step) + 1e-9))
    if not math.isclose(round(step, decimals), step):  # steps of 2.5
        decimals += 1
    return Scale(low, high, ticks, tuple(fixed(tick, decimals) for tick in ticks))


def round_values(low: float, high: float, most: int, steps: Sequence[float]) -> tuple[float, ...]:
    """Round values from `low` to `high` in at most so many equal steps, each a power of ten times a step."""
    from matplotlib.ticker import MaxNLocator  # noqa: PLC0415

    values = MaxNLocator(nbins=most, steps=steps).tick_values(low, high)
    air = 1e-9 * (high - low)
    return tuple(float(value) for value in values if low - air <= value <= high + air)


@dataclass(frozen=True)
class Panel:
    """The frame of one run on a sheet, points from the lower left corner."""

    sheet: Sheet
    left: float
    bottom: float
    width: float
    height: float
    run: RunPlan
    scale: Scale

    @property
    def top(self) -> float:
        """The frame's upper edge."""
        return self.bottom + self.height

    @property
    def right(self) -> float:
        """The frame's right edge."""
        return self.left + self.width

    @property
    def reach_m(self) -> float:
        """Metres along the run at the right edge."""
        return self.run.length_m * _REACH

    def x(self, metres: Any) -> Any:
        """Where places along the run come to lie."""
        return self.left + metres * (self.width / self.reach_m)

    def y(self, values: Any) -> Any:
        """Where values of the scale come to lie."""
        return self.bottom + (values - self.scale.low) * (self.height / (self.scale.high - self.scale.low))

    def line(self, metres: Floats, values: Floats, **style: Any) -> None:
        """Values along the run."""
        self.sheet.line(self.x(metres), self.y(values), **style)

    def level(self, value: float, **style: Any) -> None:
        """A value all along the panel."""
        self.sheet.line((self.left, self.right), (self.y(value),) * 2, **style)

    def band(self, metres: Floats, low: Floats, high: Floats, grey: str) -> None:
        """From low to high values along the run."""
        xs, ys = np.append(metres, metres[::-1]), np.append(low, high[::-1])
        self.sheet.area(np.column_stack((self.x(xs), self.y(ys))), grey)

    def draw_frame(self, most_metres: int, bulbs: Sequence[int]) -> None:
        """Frame and grid; metres below, the numbers of these bulbs above, values at the left."""
        metres = round_values(0, self.reach_m, most_metres, (1, 2, 5, 10))
        across = [self.x(metre) for metre in metres]
        over = [self.x(float(self.run.position_m[bulb - 1])) for bulb in bulbs]
        up = [self.y(tick) for tick in self.scale.ticks]
        self._draw_grid(across, up)
        self._draw_ticks(across, over, up)
        self._write_numbers(across, [general(metre, 6) for metre in metres], self.bottom + _UNDER)
        self._write_numbers(over, [str(bulb) for bulb in bulbs], self.top + _OVER)
        for y, words in zip(up, self.scale.words, strict=True):
            self.sheet.write(self.left - 2 * _TICK, y + _BESIDE, words, TICKS, "right")
        self.sheet.write(self.left - 6, self.top + _OVER, _("bulb"), TICKS, "right")
        self.sheet.write(self.left - 10, self.bottom + _UNDER, _("m"), TICKS, "right")

    def _draw_grid(self, across: Sequence[float], up: Sequence[float]) -> None:
        upright: list[tuple[Place, ...]] = [((x, self.bottom), (x, self.top)) for x in across]
        level: list[tuple[Place, ...]] = [((self.left, y), (self.right, y)) for y in up]
        self.sheet.strokes(upright + level, color="0.85", linewidth=0.5, zorder=0)

    def _draw_ticks(self, across: Sequence[float], over: Sequence[float], up: Sequence[float]) -> None:
        """The frame, with ticks outwards on three of its sides."""
        left, right, bottom, top = self.left, self.right, self.bottom, self.top
        frame = ((left, bottom), (right, bottom), (right, top), (left, top), (left, bottom), (right, bottom))
        ticks: list[tuple[Place, ...]] = [((x, bottom), (x, bottom - _TICK)) for x in across]
        ticks += [((x, top), (x, top + _TICK)) for x in over]
        ticks += [((left, y), (left - _TICK, y)) for y in up]
        self.sheet.strokes([frame, *ticks], linewidth=0.75, zorder=2.5)

    def _write_numbers(self, xs: Sequence[float], words: Sequence[str], y: float) -> None:
        for x, number in zip(xs, words, strict=True):
            self.sheet.write(x, y, number, TICKS, "center")
