"""A figure of small charts, one panel a run, at fixed places so that nothing overlaps.

Places are in points of print.  The plotting library is loaded inside, and
its settings are put back behind every figure.
"""

from __future__ import annotations

import warnings
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass
from io import StringIO
from typing import Any

from guidegen.circuit.arrangement import Floats, RunPlan
from guidegen.drawings.picture import css_px, finish_svg, shortened, text_width
from guidegen.locale import _
from guidegen.locale.numerals import general

WIDTH = 510.0
_LEFT, _RIGHT, _BETWEEN = 36.0, 10.0, 42.0
_FIGURE_HEAD, _PANEL_FOOT, _FIGURE_FOOT = 15.0, 18.0, 33.0
#: Room over the axes: name and figures in one line, or in two where there are two columns.
_ONE_LINE, _TWO_LINES = 34.0, 47.0
#: Height of a panel's axes by the number of rows; the last one for all more.
_AXES_HEIGHTS = (130.0, 74.0, 70.0, 66.0, 60.0, 52.0)
_MANY = 4
_NAME, _SMALL, _LEGEND, _TICKS = 9.5, 8.5, 8.0, 8.0
_MARKED_BULBS = 60
_SETTINGS: Any = {
    "svg.fonttype": "none",
    "text.parse_math": False,
    "font.family": ["DejaVu Sans", "sans-serif"],
    "font.size": _SMALL,
    "axes.linewidth": 0.7,
    "lines.linewidth": 1.2,
    "xtick.labelsize": _TICKS,
    "ytick.labelsize": _TICKS,
    "xtick.major.size": 2.5,
    "ytick.major.size": 2.5,
    "xtick.major.pad": 2.5,
    "ytick.major.pad": 2.5,
    "axes.unicode_minus": True,
}


@dataclass(frozen=True)
class PanelText:
    """What stands over one panel: the run, and its figures in a line."""

    name: str
    figures: str


def load_plotting() -> None:
    """Load the plotting library, which takes longer than a chart to draw."""
    import matplotlib.backends.backend_svg  # noqa: PLC0415
    import matplotlib.figure  # noqa: F401, PLC0415


@contextmanager
def _settings(salt: str) -> Iterator[None]:
    """The library's own defaults and ours, whatever the person has set for themselves."""
    import matplotlib as mpl  # noqa: PLC0415

    with mpl.rc_context(), warnings.catch_warnings():
        # Letters of a script its font lacks are measured as boxes; the reader's browser has them.
        warnings.filterwarnings("ignore", message="Glyph .* missing from")
        mpl.rcdefaults()
        mpl.rcParams.update(_SETTINGS | {"svg.hashsalt": salt})
        yield


class PanelFigure:
    """A figure with one pair of axes a run; use inside `drawing`."""

    def __init__(self, runs: Sequence[RunPlan], texts: Sequence[PanelText], heading: str) -> None:
        from matplotlib.figure import Figure  # noqa: PLC0415 - costs time, wanted for charts only

        self.columns = 1 if len(runs) <= _MANY else 2
        self.rows = -(-len(runs) // self.columns)
        self._axes_height = _AXES_HEIGHTS[min(self.rows, len(_AXES_HEIGHTS)) - 1]
        self._head = _ONE_LINE if self.columns == 1 else _TWO_LINES
        self._pitch = self._head + self._axes_height + _PANEL_FOOT
        self.height = _FIGURE_HEAD + self.rows * self._pitch + _FIGURE_FOOT
        self.figure = Figure(figsize=(WIDTH / 72, self.height / 72))
        self._write(4, self.height - 10, heading, _SMALL)
        self._write(
            WIDTH / 2,
            _FIGURE_FOOT - 10,
            _("metres along the run, from where its string begins"),
            _SMALL,
            "center",
        )
        self.axes = [
            self._panel(place, run, text) for place, (run, text) in enumerate(zip(runs, texts, strict=True))
        ]

    def _write(self, x: float, y: float, words: str, size: float, align: str = "left") -> None:
        """A line of text at a place of the figure, baseline at `y` from the bottom."""
        self.figure.text(x / WIDTH, y / self.height, words, fontsize=size, ha=align, va="baseline")

    @property
    def _axes_width(self) -> float:
        """Width of one pair of axes."""
        between = (self.columns - 1) * _BETWEEN
        return (WIDTH - _LEFT - _RIGHT - between) / self.columns

    def _panel(self, place: int, run: RunPlan, text: PanelText) -> Any:
        """Axes of one run with its name, its figures, metres below and bulb numbers above."""
        row, column = divmod(place, self.columns)
        left = _LEFT + column * (self._axes_width + _BETWEEN)
        top = self.height - _FIGURE_HEAD - row * self._pitch - self._head
        bottom = top - self._axes_height
        axes = self.figure.add_axes(
            (
                left / WIDTH,
                bottom / self.height,
                self._axes_width / WIDTH,
                self._axes_height / self.height,
            )
        )
        self._title(left - _LEFT + 4, top + 20.5, text)
        self._write(left - 6, top + 5, _("bulb"), _TICKS, "right")
        self._write(left - 6, bottom - 14, _("m"), _TICKS, "right")
        self._scale_x(axes, run)
        return axes

    def _title(self, left: float, y: float, text: PanelText) -> None:
        """The run's name, and its figures at the right or below."""
        # The letters of this figure run about a tenth wider than those the estimate is for.
        room = (self._axes_width + _LEFT - 8) / 1.15
        if self.columns > 1:
            self._write(left, y + 13.5, shortened(text.name, _NAME, room), _NAME)
            self._write(left, y, shortened(text.figures, _SMALL, room), _SMALL)
            return
        figures = shortened(text.figures, _SMALL, room)
        name_room = room - text_width(figures, _SMALL) - 12
        self._write(left, y, shortened(text.name, _NAME, name_room), _NAME)
        self._write(WIDTH - _RIGHT, y, figures, _SMALL, "right")

    def _scale_x(self, axes: Any, run: RunPlan) -> None:
        """Metres from 0 to the last bulb; bulb numbers along the top."""
        from matplotlib.ticker import MaxNLocator  # noqa: PLC0415

        reach = run.length_m * 1.03
        axes.set_xlim(0, reach)
        axes.xaxis.set_major_locator(MaxNLocator(nbins=8 if self.columns == 1 else 5, steps=[1, 2, 5, 10]))
        axes.xaxis.set_major_formatter(lambda metres, _place: general(metres, 6))
        self._number_bulbs(axes, run, reach)
        axes.grid(visible=True, color="0.85", linewidth=0.5)
        axes.set_axisbelow(True)

    def _number_bulbs(self, axes: Any, run: RunPlan, reach: float) -> None:
        """A tick and a number over each bulb, drawn plainly: a second axis would take far longer."""
        over = axes.get_xaxis_transform()
        bulbs = numbered_bulbs(run.position_m, reach, self._axes_width)
        places = [float(run.position_m[bulb - 1]) for bulb in bulbs]
        length = 2.5 / self._axes_height
        axes.vlines(places, 1, 1 + length, transform=over, color="black", linewidth=0.8, clip_on=False)
        for bulb, place in zip(bulbs, places, strict=True):
            axes.text(
                place, 1 + 2 * length, str(bulb), transform=over, fontsize=_TICKS, ha="center", va="bottom"
            )

    def legend(self, entries: Sequence[tuple[Any, str]]) -> None:
        """The signs used, in a line at the bottom."""
        handles, words = zip(*entries, strict=True)
        self.figure.legend(
            handles,
            words,
            loc="lower center",
            bbox_to_anchor=(0.5, 0),
            ncols=len(words),
            frameon=False,
            fontsize=_LEGEND,
            handlelength=2.2,
            borderaxespad=0.2,
            borderpad=0.1,
        )


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


@contextmanager
def drawing(picture_id: str) -> Iterator[None]:
    """Everything between making a figure and `svg_text` happens in here."""
    with _settings(picture_id):
        yield


def svg_text(panels: PanelFigure, picture_id: str, title: str, alt: str) -> str:
    """The figure as SVG text that stands alone."""
    from matplotlib.backends.backend_svg import FigureCanvasSVG  # noqa: PLC0415

    sheet = StringIO()
    canvas: Any = FigureCanvasSVG(panels.figure)
    canvas.print_svg(sheet, metadata={"Date": None, "Creator": None})
    return finish_svg(sheet.getvalue(), picture_id, title, alt, (0.0, 0.0, WIDTH, panels.height))


def size_px(panels: PanelFigure) -> tuple[int, int]:
    """Width and height in CSS pixels."""
    return css_px(WIDTH), css_px(panels.height)
