"""The charts: light and volts along every run."""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import Any

import numpy as np

from guidegen.circuit.arrangement import Arrangement, Floats, RunPlan
from guidegen.circuit.solution import RunSolution, Solution
from guidegen.drawings.panels import PanelFigure, PanelText, drawing, marker_for, size_px, svg_text
from guidegen.drawings.picture import Picture
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
        panels = PanelFigure(runs, texts, _("light (brightest bulb = 1)"))
        top = light_top(solution, band)
        for index, (axes, run) in enumerate(zip(panels.axes, runs, strict=True)):
            if band is not None:
                _plot_band(axes, run, solution.runs[index], band[index])
            _plot_light(axes, run, solution.runs[index], goal)
            _scale_light(axes, top)
        dark = any(not solved.lit.all() for solved in solution.runs)
        panels.legend(_light_legend(goal, dark=dark, band=band is not None))
        svg = svg_text(panels, "light", caption, alt)
    return Picture("light", svg, alt, caption, *size_px(panels))


def light_top(solution: Solution, band: Band | None) -> float:
    """Where the scale of light ends in every panel: over the brightest bulb and over the whole band."""
    highs = [
        float(high[solved.lit].max())
        for solved, (_low, high) in zip(solution.runs, band or (), strict=False)
        if solved.lit.any()
    ]
    return max(1.08, *(math.ceil(10 * high - 1e-9) / 10 for high in highs)) if highs else 1.08


def _scale_light(axes: Any, top: float) -> None:
    """The scale of light, marked at every half."""
    ticks = [0.5 * step for step in range(int(2 * top) + 1)]
    axes.set_ylim(0, top)
    axes.set_yticks(ticks, [general(tick, 6) for tick in ticks])


def _plot_band(axes: Any, run: RunPlan, solved: RunSolution, band: tuple[Floats, Floats]) -> None:
    """The likely range of the lit bulbs."""
    low, high = band
    axes.fill_between(run.position_m[solved.lit], low[solved.lit], high[solved.lit], color="0.8", linewidth=0)


def _plot_light(axes: Any, run: RunPlan, solved: RunSolution, goal: float | None) -> None:
    """One run: lit bulbs joined by a line, dark ones as empty rings at the bottom."""
    lit = solved.lit
    marker = marker_for(run.bulbs)
    if goal is not None:
        axes.axhline(goal, color="black", linewidth=0.9, linestyle=(0, (5, 3)))
    axes.plot(run.position_m[lit], solved.light[lit], color="black", marker=marker, markersize=2.8)
    if not lit.all():
        style = _DARK if marker else _DARK | {"markersize": 1.2}
        axes.plot(run.position_m[~lit], np.zeros((~lit).sum()), **style, clip_on=False)


_DARK: dict[str, Any] = {
    "linestyle": "",
    "marker": "o",
    "markersize": 3.2,
    "markerfacecolor": "white",
    "markeredgecolor": "black",
    "markeredgewidth": 0.7,
}


def _light_legend(goal: float | None, *, dark: bool, band: bool) -> list[tuple[Any, str]]:
    """The signs that this chart uses."""
    from matplotlib.lines import Line2D  # noqa: PLC0415
    from matplotlib.patches import Patch  # noqa: PLC0415

    entries: list[tuple[Any, str]] = [
        (Line2D([], [], color="black", marker="o", markersize=2.8), _("lit bulb"))
    ]
    if dark:
        entries.append((Line2D([], [], **_DARK), _("dark on DC")))
    if goal is not None:
        line = Line2D([], [], color="black", linewidth=0.9, linestyle=(0, (5, 3)))
        entries.append((line, _("goal: no lit bulb under {goal}").format(goal=fixed(goal, 2))))
    if band:
        entries.append((Patch(color="0.8", linewidth=0), _("likely range")))
    return entries


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
        panels = PanelFigure(runs, texts, _("volts between + and −"))
        limits = _volt_limits(solution)
        for axes, run, solved in zip(panels.axes, runs, solution.runs, strict=True):
            _plot_volts(axes, run, solved)
            axes.set_ylim(*limits)
            axes.locator_params(axis="y", nbins=4)
        panels.legend(_volts_legend())
        svg = svg_text(panels, "volts", caption, alt)
    return Picture("volts", svg, alt, caption, *size_px(panels))


def _volt_limits(solution: Solution) -> tuple[float, float]:
    """One scale for all runs, with air above and below."""
    low = min(float(run.bulb_v.min()) for run in solution.runs)
    high = max(run.after_resistor_v for run in solution.runs)
    air = max(0.1 * (high - low), 0.01)
    return low - air, high + air


def _plot_volts(axes: Any, run: RunPlan, solved: RunSolution) -> None:
    """One run: its bulbs, the feeder's far end, and the volts behind the resistor."""
    axes.axhline(solved.after_resistor_v, **_BEHIND)
    axes.plot(run.position_m, solved.bulb_v, color="black", marker=marker_for(run.bulbs), markersize=2.8)
    axes.plot([feed_position_m(run)], [solved.feed_v], **_FEED, clip_on=False, zorder=4)


_BEHIND: dict[str, Any] = {"color": "black", "linewidth": 0.9, "linestyle": (0, (1.5, 2))}
_FEED: dict[str, Any] = {
    "linestyle": "",
    "marker": "v",
    "markersize": 5.5,
    "markerfacecolor": "white",
    "markeredgecolor": "black",
    "markeredgewidth": 0.9,
}


def feed_position_m(run: RunPlan) -> float:
    """Where the run's + enters the string, metres along the run."""
    return float(run.position_m[run.fed_bulb - 1]) if run.feed == "middle" else 0.0


def _volts_legend() -> list[tuple[Any, str]]:
    """The signs of the chart of volts."""
    from matplotlib.lines import Line2D  # noqa: PLC0415

    return [
        (Line2D([], [], color="black", marker="o", markersize=2.8), _("at each bulb")),
        (Line2D([], [], **_FEED), _("feeder's far end, drawn where + enters")),
        (Line2D([], [], **_BEHIND), _("feeder's supply end, behind any resistor")),
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
