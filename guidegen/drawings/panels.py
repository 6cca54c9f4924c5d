"""A chart of small panels, one a run, at fixed places so that nothing overlaps.

Places are in points of print.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Any

from guidegen.circuit.arrangement import Floats, RunPlan
from guidegen.drawings.panel import Panel, Scale
from guidegen.drawings.picture import css_px, shortened, text_width
from guidegen.drawings.sheet import Sheet
from guidegen.locale import _

WIDTH = 510.0
_LEFT, _RIGHT, _BETWEEN = 36.0, 10.0, 42.0
_FIGURE_HEAD, _PANEL_FOOT, _FIGURE_FOOT = 15.0, 18.0, 33.0
#: Room over the frame: name and figures in one line, or in two where there are two columns.
_ONE_LINE, _TWO_LINES = 34.0, 47.0
#: Height of a panel's frame by the number of rows; the last one for all more.
_FRAME_HEIGHTS = (130.0, 74.0, 70.0, 66.0, 60.0, 52.0)
_MANY = 4
_NAME, _SMALL, _LEGEND = 9.5, 8.5, 8.0
#: The letters of a chart run about a tenth wider than those that `text_width` is for.
_WIDER = 1.15
#: A sign of the legend, from it to its words, and from those to the next sign; their least.
_SIGN, _TO_WORDS, _TO_NEXT, _NEAREST = 18.0, 6.0, 18.0, 6.0
_LEGEND_UP = 5.0
_MARKED_BULBS = 60


@dataclass(frozen=True)
class PanelText:
    """What stands over one panel: the run, and its figures in a line."""

    name: str
    figures: str


@dataclass(frozen=True)
class Sign:
    """A sign of the legend: a line in its style, or an area in its grey, and what it says."""

    words: str
    style: dict[str, Any]
    grey: str = ""


class PanelFigure:
    """A sheet with one panel a run; use inside `drawing`."""

    def __init__(
        self, runs: Sequence[RunPlan], texts: Sequence[PanelText], heading: str, scale: Scale
    ) -> None:
        self.columns = 1 if len(runs) <= _MANY else 2
        self.rows = -(-len(runs) // self.columns)
        self._frame_height = _FRAME_HEIGHTS[min(self.rows, len(_FRAME_HEIGHTS)) - 1]
        self._head = _ONE_LINE if self.columns == 1 else _TWO_LINES
        self._pitch = self._head + self._frame_height + _PANEL_FOOT
        self.height = _FIGURE_HEAD + self.rows * self._pitch + _FIGURE_FOOT
        self.sheet = Sheet(WIDTH, self.height)
        self.sheet.write(4, self.height - 10, heading, _SMALL)
        words = _("metres along the run, from where its string begins")
        self.sheet.write(WIDTH / 2, _FIGURE_FOOT - 10, words, _SMALL, "center")
        self.panels = [self._panel(place, run, scale) for place, run in enumerate(runs)]
        for panel, text in zip(self.panels, texts, strict=True):
            self._title(panel, text)

    @property
    def _frame_width(self) -> float:
        """Width of one frame."""
        between = (self.columns - 1) * _BETWEEN
        return (WIDTH - _LEFT - _RIGHT - between) / self.columns

    def _panel(self, place: int, run: RunPlan, scale: Scale) -> Panel:
        """Frame of one run with metres below and bulb numbers above."""
        row, column = divmod(place, self.columns)
        left = _LEFT + column * (self._frame_width + _BETWEEN)
        top = self.height - _FIGURE_HEAD - row * self._pitch - self._head
        bottom = top - self._frame_height
        panel = Panel(self.sheet, left, bottom, self._frame_width, self._frame_height, run, scale)
        bulbs = numbered_bulbs(run.position_m, panel.reach_m, self._frame_width)
        panel.draw_frame(8 if self.columns == 1 else 5, bulbs)
        return panel

    def _title(self, panel: Panel, text: PanelText) -> None:
        """The run's name, and its figures at the right or below."""
        left, y = panel.left - _LEFT + 4, panel.top + 20.5
        room = (self._frame_width + _LEFT - 8) / _WIDER
        if self.columns > 1:
            self.sheet.write(left, y + 13.5, shortened(text.name, _NAME, room), _NAME)
            self.sheet.write(left, y, shortened(text.figures, _SMALL, room), _SMALL)
            return
        figures = shortened(text.figures, _SMALL, room)
        name_room = room - text_width(figures, _SMALL) - 12
        self.sheet.write(left, y, shortened(text.name, _NAME, name_room), _NAME)
        self.sheet.write(WIDTH - _RIGHT, y, figures, _SMALL, "right")

    def legend(self, signs: Sequence[Sign]) -> None:
        """The signs used, in a line at the bottom."""
        widths = [_SIGN + _TO_WORDS + _WIDER * text_width(sign.words, _LEGEND) for sign in signs]
        spare = (WIDTH - 8 - sum(widths)) / max(1, len(signs) - 1)
        between = min(_TO_NEXT, max(_NEAREST, spare))
        x = (WIDTH - sum(widths) - between * (len(signs) - 1)) / 2
        for sign, width in zip(signs, widths, strict=True):
            self._draw_sign(sign, x)
            self.sheet.write(x + _SIGN + _TO_WORDS, _LEGEND_UP, sign.words, _LEGEND)
            x += width + between

    def _draw_sign(self, sign: Sign, x: float) -> None:
        if sign.grey:
            low, high = _LEGEND_UP, _LEGEND_UP + 5.6
            self.sheet.area([(x, low), (x + _SIGN, low), (x + _SIGN, high), (x, high)], sign.grey)
            return
        xs = (x, x + _SIGN / 2, x + _SIGN)
        self.sheet.line(xs, (_LEGEND_UP + 2.8,) * 3, markevery=[1], **sign.style)

    def svg(self, picture_id: str, title: str, alt: str) -> str:
        """The figure as SVG text that stands alone."""
        return self.sheet.svg(picture_id, title, alt)

    def size_px(self) -> tuple[int, int]:
        """Width and height in CSS pixels."""
        return css_px(WIDTH), css_px(self.height)


def numbered_bulbs(position_m: Floats, reach_m: float, width: float) -> tuple[int, ...]:
    """Bulbs whose numbers fit along `width` points: the first, round numbers, the last."""
    last = len(position_m)
    room = 5.2 * len(str(last)) + 8
    step = next((step for step in _steps(last) if width * step / last >= room), last)
    chosen = [1]
    for bulb in range(step, last, step):
        if _apart(position_m, chosen[-1], bulb) * width / reach_m >= room:
            chosen.append(bulb)
    while len(chosen) > 1 and _apart(position_m, chosen[-1], last) * width / reach_m < room:
        chosen.pop()
    return tuple(chosen) if last == 1 else (*chosen, last)


def _steps(last: int) -> Iterator[int]:
    """1, 2, 5, 10, 20, 50, ... up to `last`."""
    power = 1
    while power <= last:
        yield from (power, 2 * power, 5 * power)
        power *= 10


def _apart(position_m: Floats, bulb: int, other: int) -> float:
    """Metres from one bulb to another."""
    return float(position_m[other - 1] - position_m[bulb - 1])


def marker_for(bulbs: int) -> str:
    """A dot for each bulb while they can be told apart."""
    return "o" if bulbs <= _MARKED_BULBS else ""
