"""Light along the run: what the charts say, and every bulb as a table."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from guidegen.calc.light import seen_evenness
from guidegen.guide.blocks import Column, Table
from guidegen.guide.format import NOTHING, fixed, numbers_listed, percent, quantity
from guidegen.guide.matter import Matter
from guidegen.guide.pages import LightPage
from guidegen.locale import _

#: Bulbs count as equally bright within this share: rounding alone tells them apart.
_ALIKE = 1e-6


def light_page(matter: Matter) -> LightPage:
    """The page of charts and tables."""
    return LightPage(
        message=(_whole(matter), *(_run(matter, index) for index in range(len(matter.runs))), _seen()),
        pictures=("light", "volts"),
        tables=tuple(_table(matter, index) for index in range(len(matter.runs))),
    )


def _whole(matter: Matter) -> str:
    evenness, goal = matter.solution.evenness, matter.project.goals.evenness
    if evenness >= goal:
        text = _(
            "The dimmest of all bulbs gives {evenness} of the brightest one's light. The goal is {goal}: met."
        )
    else:
        text = _(
            "The dimmest of all bulbs gives {evenness} of the brightest one's light. The goal is {goal}: "
            "missed."
        )
    return text.format(evenness=percent(evenness), goal=percent(goal))


def _run(matter: Matter, index: int) -> str:
    run, solved = matter.runs[index], matter.solution.runs[index]
    lit = np.flatnonzero(solved.lit)
    if not len(lit):
        return _("{run}: no bulb lights.").format(run=run.name)
    light = solved.light[lit]
    return _(
        "{run}: brightest at bulb {brightest}, dimmest at bulb {dimmest}, which gives {evenness} of that "
        "light; to the eye about {seen}."
    ).format(
        run=run.name,
        brightest=_bulbs(lit, light >= light.max() * (1 - _ALIKE)),
        dimmest=_bulbs(lit, light <= light.min() * (1 + _ALIKE)),
        evenness=percent(solved.evenness),
        seen=percent(seen_evenness(solved.evenness)),
    )


def _bulbs(lit: NDArray[np.intp], chosen: NDArray[np.bool_]) -> str:
    """Numbers of the bulbs chosen among the lit ones, the first and the last where there are many."""
    numbers = [int(each) + 1 for each in lit[chosen]]
    return numbers_listed(numbers if len(numbers) < 3 else [numbers[0], numbers[-1]])


def _seen() -> str:
    return _(
        "How even it looks is an estimate: the eye makes differences smaller than they are. The physical "
        "figure is the one that goals are held against."
    )


def _table(matter: Matter, index: int) -> Table:
    run, solved = matter.runs[index], matter.solution.runs[index]
    rows = tuple(
        (
            str(bulb + 1),
            quantity(float(run.position_m[bulb]), "m", 4),
            quantity(float(solved.bulb_v[bulb]), "V", 4),
            quantity(float(solved.led_a[bulb]), "A") if solved.lit[bulb] else NOTHING,
            fixed(float(solved.light[bulb]), 2) if solved.lit[bulb] else _("dark"),
        )
        for bulb in range(run.bulbs)
    )
    return Table(
        caption=_("{run}, bulb by bulb").format(run=run.name),
        columns=(
            Column(_("Bulb"), numeric=True),
            Column(_("Position"), numeric=True),
            Column(_("Volts"), numeric=True),
            Column(_("Current of one LED"), numeric=True),
            Column(_("Light"), numeric=True),
        ),
        rows=rows,
        note=_("Position: wire from the begin of the run. Light: the brightest bulb of all runs is 1."),
    )
