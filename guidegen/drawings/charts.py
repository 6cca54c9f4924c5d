"""The charts: light and volts along every run."""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import Any

import numpy as np

from guidegen.circuit.arrangement import Arrangement, Floats, RunPlan
from guidegen.circuit.solution import RunSolution, Solution
from guidegen.drawings.panel import Panel, Scale, even_scale
from guidegen.drawings.panels import PanelFigure, PanelText, Sign, marker_for
from guidegen.drawings.picture import Picture
from guidegen.drawings.sheet import drawing
from guidegen.locale import _
from guidegen.locale.numerals import fixed, general

#: Low and high light of every bulb (n,), one pair a run.
Band = Sequence[tuple[Floats, Floats]]


def draw_charts(
    arrangement: Arrangement,
    solution: Solution,
    goal_evenness: float | None,
    band: Band | None = None,
) -> tuple[Picture, ...]:
    """Two pictures, "light" and "volts".

    `goal_evenness` (0 to 1) is the goal of the whole installation; `band`
    the likely range of every bulb's light.
    """
    return _light(arrangement, solution, goal_evenness, band), _volts(arrangement, solution)


def _light(arrangement: Arrangement, solution: Solution, goal: float | None, band: Band | None) -> Picture:
    """Light of every bulb over that of the brightest."""
    runs = arrangement.runs
    texts = [_light_text(index, run, solution.runs[index]) for index, run in enumerate(runs)]
    alt = light_alt(arrangement, solution, goal)
    caption = _("Light of every bulb, the brightest bulb of all being 1")
    with drawing("light"):
        panels = PanelFigure(runs, texts, _("light (brightest bulb = 1)"), _light_scale(solution, band))
        for index, panel in enumerate(panels.panels):
            if band is not None:
                _plot_band(panel, solution.runs[index], band[index])
            _plot_light(panel, solution.runs[index], goal)
        dark = any(not solved.lit.all() for solved in solution.runs)
        panels.legend(_light_legend(goal, dark=dark, band=band is not None))
        svg = panels.svg("light", caption, alt)
    return Picture("light", svg, alt, caption, *panels.size_px())


def light_top(solution: Solution, band: Band | None) -> float:
    """Where the scale of light ends in every panel: over the brightest bulb and over the whole band."""
    highs = [
        float(high[solved.lit].max())
        for solved, (_low, high) in zip(solution.runs, band or (), strict=False)
        if solved.lit.any()
    ]
    return max(1.08, *(math.ceil(10 * high - 1e-9) / 10 for high in highs)) if highs else 1.08


def _light_scale(solution: Solution, band: Band | None) -> Scale:
    """The scale of light, marked at every half."""
    top = light_top(solution, band)
    ticks = tuple(0.5 * step for step in range(int(2 * top) + 1))
    return Scale(0, top, ticks, tuple(general(tick, 6) for tick in ticks))


_LIT: dict[str, Any] = {"marker": "o", "markersize": 2.8}
_GOAL: dict[str, Any] = {"linewidth": 0.9, "linestyle": (0, (5, 3)), "zorder": 1.9}
_BAND = "0.8"
_DARK: dict[str, Any] = {
    "linestyle": "",
    "marker": "o",
    "markersize": 3.2,
    "markerfacecolor": "white",
    "markeredgecolor": "black",
    "markeredgewidth": 0.7,
    "zorder": 3,
}


def _plot_band(panel: Panel, solved: RunSolution, band: tuple[Floats, Floats]) -> None:
    """The likely range of the lit bulbs."""
    low, high = band
    panel.band(panel.run.position_m[solved.lit], low[solved.lit], high[solved.lit], _BAND)


def _plot_light(panel: Panel, solved: RunSolution, goal: float | None) -> None:
    """One run: lit bulbs joined by a line, dark ones as empty rings at the bottom."""
    lit, place = solved.lit, panel.run.position_m
    marker = marker_for(panel.run.bulbs)
    if goal is not None:
        panel.level(goal, **_GOAL)
    panel.line(place[lit], solved.light[lit], **_LIT | {"marker": marker})
    if not lit.all():
        style = _DARK if marker else _DARK | {"markersize": 1.2}
        panel.line(place[~lit], np.zeros((~lit).sum()), **style)


def _light_legend(goal: float | None, *, dark: bool, band: bool) -> list[Sign]:
    """The signs that this chart uses."""
    signs = [Sign(_("lit bulb"), _LIT)]
    if dark:
        signs.append(Sign(_("dark on DC"), _DARK))
    if goal is not None:
        signs.append(Sign(_("goal: no lit bulb under {goal}").format(goal=fixed(goal, 2)), _GOAL))
    if band:
        signs.append(Sign(_("likely range"), {}, _BAND))
    return signs


def _light_text(index: int, run: RunPlan, solved: RunSolution) -> PanelText:
    """Name and figures over a run's panel."""
    dimmest = _dimmest(solved)
    figures = _("dimmest {light} (bulb {bulb}), evenness of this run {evenness}").format(
        light=fixed(solved.light[dimmest], 2), bulb=dimmest + 1, evenness=fixed(solved.evenness, 2)
    )
    return PanelText(run_name(index, run), figures)


def run_name(index: int, run: RunPlan) -> str:
    """Number and name of a run."""
    return _("Run {number}, {name}").format(number=index + 1, name=run.name)


def _dimmest(solved: RunSolution) -> int:
    """Index of the dimmest lit bulb of a run."""
    return int(np.argmin(np.where(solved.lit, solved.light, np.inf)))


def _brightest(solved: RunSolution) -> int:
    """Index of the brightest bulb of a run."""
    return int(np.argmax(solved.light))


def light_alt(arrangement: Arrangement, solution: Solution, goal: float | None) -> str:
    """What the chart of light shows, in words and numbers."""
    runs = solution.runs
    best = max(range(len(runs)), key=lambda index: float(runs[index].light.max()))
    worst = min(range(len(runs)), key=lambda index: float(runs[index].light[_dimmest(runs[index])]))
    dimmest = _dimmest(runs[worst])
    sentences = [
        _("Brightest: bulb {bulb} of run {run}.").format(bulb=_brightest(runs[best]) + 1, run=best + 1),
        _("Dimmest: bulb {bulb} of run {run}, with {light} of the brightest bulb's light.").format(
            bulb=dimmest + 1, run=worst + 1, light=fixed(runs[worst].light[dimmest], 2)
        ),
        _evenness_words(solution.evenness, goal),
    ]
    each = [
        f"{run_name(index, run)}: {text.figures}."
        for index, run in enumerate(arrangement.runs)
        for text in [_light_text(index, run, runs[index])]
    ]
    return " ".join([*sentences, *(each if len(each) > 1 else [])])


def _evenness_words(evenness: float, goal: float | None) -> str:
    """Evenness of the installation beside the goal."""
    if goal is None:
        sentence = _("Evenness {evenness}.")
    elif evenness >= goal:
        sentence = _("Evenness {evenness}, which meets the goal of {goal}.")
    else:
        sentence = _("Evenness {evenness}, which misses the goal of {goal}.")
    return sentence.format(evenness=fixed(evenness, 2), goal=fixed(goal or 0, 2))


def _volts(arrangement: Arrangement, solution: Solution) -> Picture:
    """Volts between the conductors at every bulb."""
    runs = arrangement.runs
    texts = [_volts_text(index, run, solution.runs[index]) for index, run in enumerate(runs)]
    alt = " ".join(f"{text.name}: {text.figures}." for text in texts)
    caption = _("Volts between + and − at every bulb, everything running")
    with drawing("volts"):
        scale = even_scale(*_volt_limits(solution))
        panels = PanelFigure(runs, texts, _("volts between + and −"), scale)
        for panel, solved in zip(panels.panels, solution.runs, strict=True):
            _plot_volts(panel, solved)
        panels.legend(_volts_legend())
        svg = panels.svg("volts", caption, alt)
    return Picture("volts", svg, alt, caption, *panels.size_px())


def _volt_limits(solution: Solution) -> tuple[float, float]:
    """One scale for all runs, with air above and below."""
    low = min(float(run.bulb_v.min()) for run in solution.runs)
    high = max(run.after_resistor_v for run in solution.runs)
    air = max(0.1 * (high - low), 0.01)
    return low - air, high + air


def _plot_volts(panel: Panel, solved: RunSolution) -> None:
    """One run: its bulbs, the feeder's far end, and the volts behind the resistor."""
    run = panel.run
    panel.level(solved.after_resistor_v, **_BEHIND)
    panel.line(run.position_m, solved.bulb_v, **_LIT | {"marker": marker_for(run.bulbs)})
    panel.line(np.array([feed_position_m(run)]), np.array([solved.feed_v]), **_FEED)


_BEHIND: dict[str, Any] = {"linewidth": 0.9, "linestyle": (0, (1.5, 2))}
_FEED: dict[str, Any] = {
    "linestyle": "",
    "marker": "v",
    "markersize": 5.5,
    "markerfacecolor": "white",
    "markeredgecolor": "black",
    "markeredgewidth": 0.9,
    "zorder": 4,
}


def feed_position_m(run: RunPlan) -> float:
    """Where the run's + enters the string, metres along the run."""
    return float(run.position_m[run.fed_bulb - 1]) if run.feed == "middle" else 0.0


def _volts_legend() -> list[Sign]:
    """The signs of the chart of volts."""
    return [
        Sign(_("at each bulb"), _LIT),
        Sign(_("feeder's far end, drawn where + enters"), _FEED),
        Sign(_("feeder's supply end, behind any resistor"), _BEHIND),
    ]


def _volts_text(index: int, run: RunPlan, solved: RunSolution) -> PanelText:
    """Name and figures over a run's panel."""
    volts = solved.bulb_v
    figures = _("feeder {after} to {feed} V, bulbs {low} to {high} V").format(
        after=fixed(solved.after_resistor_v, 2),
        feed=fixed(solved.feed_v, 2),
        low=fixed(volts.min(), 2),
        high=fixed(volts.max(), 2),
    )
    return PanelText(run_name(index, run), figures)
