"""What draws the pictures of a guide, by name: each loads its module only where it draws.

To order a picture from the second process (`apart.py`), nothing of drawing need be loaded in the first.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Collection, Iterable

    from guidegen.circuit.arrangement import Arrangement
    from guidegen.circuit.points import TestPoint
    from guidegen.circuit.solution import Solution
    from guidegen.drawings.bought import Bought
    from guidegen.drawings.charts import Band
    from guidegen.drawings.picture import Picture
    from guidegen.guide.blocks import ResistorBody
    from guidegen.hanging.paths import SupplyPaths
    from guidegen.hanging.plan import HangingPlan


def schematics(
    arrangement: Arrangement, solution: Solution, points: tuple[TestPoint, ...]
) -> tuple[Picture, ...]:
    """As `schematic.draw_schematics`."""
    from guidegen.drawings.schematic import draw_schematics  # noqa: PLC0415

    return draw_schematics(arrangement, solution, points)


def charts(
    arrangement: Arrangement, solution: Solution, goal_evenness: float | None, band: Band
) -> tuple[Picture, ...]:
    """As `charts.draw_charts`."""
    from guidegen.drawings.charts import draw_charts  # noqa: PLC0415

    return draw_charts(arrangement, solution, goal_evenness, band)


def plan(hanging: HangingPlan, arrangement: Arrangement, supply: SupplyPaths) -> tuple[Picture, ...]:
    """As `plan.draw_plan`."""
    from guidegen.drawings.plan import draw_plan  # noqa: PLC0415

    return draw_plan(hanging, arrangement, supply)


def steps(
    named: Collection[str], bought: Bought, arrangement: Arrangement, points: tuple[TestPoint, ...]
) -> tuple[Picture, ...]:
    """As `steps.draw_steps`."""
    from guidegen.drawings.steps import draw_steps  # noqa: PLC0415

    return draw_steps(named, bought, arrangement, points)


def bodies(every: Iterable[tuple[ResistorBody, ...]]) -> tuple[Picture, ...]:
    """As `resistors.draw_bodies`."""
    from guidegen.drawings.resistors import draw_bodies  # noqa: PLC0415

    return draw_bodies(every)
