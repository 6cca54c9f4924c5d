"""Small charts of light, one an arrangement, all on one scale; plain SVG, since there may be eight of them.

Bulbs are counted along the whole line, run after run; the feed's poles
stand below the bulbs where they enter.
"""

from __future__ import annotations

from collections.abc import Iterator

from guidegen.choose.choice import Choice, Proposal
from guidegen.choose.light import LightChart, LightOfRun, light_charts
from guidegen.choose.why import title_of
from guidegen.circuit.arrangement import RunPlan
from guidegen.drawings.picture import Picture, text_width
from guidegen.drawings.sketch import SMALL, Place, Sketch
from guidegen.locale import _
from guidegen.locale.numerals import fixed, general

#: The chart's frame inside its picture, CSS pixels.
LEFT, RIGHT, TOP, BOTTOM = 44.0, 330.0, 32.0, 128.0
_WIDTH, _HEIGHT = 340.0, 170.0
#: Light at the frame's upper edge; the same in every chart.
MOST_LIGHT = 1.1
#: Bulbs up to which each has its dot.
_MARKED_BULBS = 60
_POLES, _NUMBERS = BOTTOM + 18, BOTTOM + 34


class _Pen(Sketch):
    """A sketch that draws light along a line."""

    def light(self, places: list[Place], *, dots: bool) -> None:
        """Lit bulbs joined by a line, each with a dot while they can be told apart."""
        points = " ".join(f"{x:.2f},{y:.2f}" for x, y in places)
        self._parts.append(f'<polyline points="{points}" stroke="black" stroke-width="1.2"/>')
        if dots:
            path = "".join(f"M{x:.2f} {y:.2f}h0" for x, y in places)
            style = 'stroke="black" stroke-width="4.4" stroke-linecap="round"'
            self._parts.append(f'<path class="bulbs" d="{path}" {style}/>')

    def level(self, y: float, style: str) -> None:
        """A line across the frame."""
        self._parts.append(f'<path d="M{LEFT:g} {y:.2f}H{RIGHT:g}" {style}/>')

    def divide(self, x: float) -> None:
        """Where one run ends and the next begins."""
        self._parts.append(f'<path d="M{x:.2f} {TOP:g}V{BOTTOM + 22:g}" {_FAINT}/>')


_FAINT = 'stroke="#767676" stroke-width="0.8"'
_GRID = 'stroke="#d4d4d4" stroke-width="0.8"'
_GOAL = 'stroke="black" stroke-width="1" stroke-dasharray="5 3"'


def draw_arrangements(choice: Choice, goal: float) -> tuple[Picture, ...]:
    """A chart of every arrangement, "arrangement-1" and so on; `goal`: of evenness, 0 to 1."""
    charts = light_charts(choice.proposals)
    most = max(chart.bulbs for chart in charts)
    return tuple(
        _draw(number, title_of(proposal, choice), proposal, chart, most, goal)
        for number, (proposal, chart) in enumerate(zip(choice.proposals, charts, strict=True), 1)
    )


def picture_id(number: int) -> str:
    """Id of the chart of the arrangement with this number, counted from 1."""
    return f"arrangement-{number}"


def _draw(number: int, title: str, proposal: Proposal, chart: LightChart, most: int, goal: float) -> Picture:
    pen = _Pen(_HEIGHT, _WIDTH)
    _head(pen, proposal.evenness, goal)
    _frame(pen, goal)
    for run in chart.runs:
        if len(run.bulb):
            places = [
                (x_of(bulb, most), y_of(light)) for bulb, light in zip(run.bulb, run.light, strict=True)
            ]
            pen.light(places, dots=most <= _MARKED_BULBS)
    _line(pen, proposal.worked.arrangement.runs, most)
    caption = f"{number}. {title[:1].upper()}{title[1:]}"
    return pen.picture(picture_id(number), caption, light_words(proposal, chart, goal))


def x_of(bulb: float, most: int) -> float:
    """Where a bulb of the line is drawn; `most`: bulbs of the longest line compared."""
    return LEFT + (RIGHT - LEFT) * (bulb - 0.5) / most


def y_of(light: float) -> float:
    """Where an amount of light (0 to 1) is drawn."""
    return BOTTOM - (BOTTOM - TOP) * light / MOST_LIGHT


def _head(pen: Sketch, evenness: float, goal: float) -> None:
    """What is drawn, the sign of the goal, and the light of the dimmest bulb."""
    words = _("light (brightest bulb = 1)")
    pen.text(2, 16, words, size=SMALL, room=150)
    dimmest = _("dimmest {light}").format(light=fixed(evenness, 2))
    pen.text(RIGHT, 16, dimmest, "end", SMALL, 86, bold=True)
    begin = 2 + min(150.0, text_width(words, SMALL)) + 10
    pen.curve(f"M{begin:.2f} 12h20", "hidden")
    named = _("goal {goal}").format(goal=fixed(goal, 2))
    pen.text(begin + 24, 16, named, size=SMALL, room=RIGHT - 86 - begin - 24)


def _frame(pen: _Pen, goal: float) -> None:
    """The scale of light, the same in every chart, and the goal."""
    for mark in (0.0, 0.5, 1.0):
        pen.level(y_of(mark), _GRID if mark else _FAINT)
        pen.text(LEFT - 5, y_of(mark) + 4, general(mark), "end", SMALL)
    pen.level(y_of(goal), _GOAL)


def _line(pen: _Pen, runs: tuple[RunPlan, ...], most: int) -> None:
    """Runs below the frame: their poles, and the numbers of their first bulbs and of the last one."""
    before, free = 0, 0.0
    pen.text(LEFT - 5, _POLES, _("poles"), "end", SMALL, LEFT - 6)
    pen.text(LEFT - 5, _NUMBERS, _("bulb"), "end", SMALL, LEFT - 5)
    last = sum(run.bulbs for run in runs)
    for run in runs:
        if before:
            pen.divide(x_of(before + 0.5, most))
        _poles(pen, run, before, most)
        if x_of(before + 1, most) >= free and x_of(before + 1, most) + 28 < x_of(last, most):
            pen.text(x_of(before + 1, most), _NUMBERS, str(before + 1), "middle", SMALL)
            free = x_of(before + 1, most) + 24
        before += run.bulbs
    pen.text(x_of(last, most), _NUMBERS, str(last), "middle", SMALL)


def _poles(pen: Sketch, run: RunPlan, before: int, most: int) -> None:
    """The poles of a run's feed, below the bulbs where they enter; left out where there is no room."""
    begin, end = x_of(before + 0.5, most) + 2, x_of(before + run.bulbs + 0.5, most) - 2
    at_begin, at_end = {
        "one end": ("+−", ""),
        "middle": ("", ""),
        "both ends": ("+−", "+−"),
        "opposite ends": ("+", "−"),
    }[run.feed]
    if run.feed == "middle":
        pen.text(x_of(before + run.fed_bulb, most), _POLES, "+−", "middle", SMALL, bold=True)
    if text_width(at_begin + at_end, SMALL) * 1.2 <= end - begin:
        pen.text(begin, _POLES, at_begin, "start", SMALL, bold=True)
        if at_end:
            pen.text(end, _POLES, at_end, "end", SMALL, bold=True)


def light_words(proposal: Proposal, chart: LightChart, goal: float) -> str:
    """What a chart shows, in words and numbers."""
    if proposal.evenness >= goal:
        whole = _("Dimmest bulb {light} of the brightest one's light, which meets the goal of {goal}.")
    else:
        whole = _("Dimmest bulb {light} of the brightest one's light, which misses the goal of {goal}.")
    whole = whole.format(light=fixed(proposal.evenness, 2), goal=fixed(goal, 2))
    return " ".join([whole, *_runs(proposal, chart)])


def _runs(proposal: Proposal, chart: LightChart) -> Iterator[str]:
    before = 0
    for plan, run in zip(proposal.worked.arrangement.runs, chart.runs, strict=True):
        first, last = before + 1, before + plan.bulbs
        yield _run(run, first, last)
        before = last


def _run(run: LightOfRun, first: int, last: int) -> str:
    if not len(run.bulb):
        return _("{run}, bulbs {first} to {last}: none lights.").format(run=run.name, first=first, last=last)
    dim, bright = int(run.light.argmin()), int(run.light.argmax())
    text = _("{run}, bulbs {first} to {last}: {most} at bulb {bright}, {least} at bulb {dim}.")
    return text.format(
        run=run.name,
        first=first,
        last=last,
        most=fixed(float(run.light[bright]), 2),
        bright=int(run.bulb[bright]),
        least=fixed(float(run.light[dim]), 2),
        dim=int(run.bulb[dim]),
    )
