"""A sheet for charts: lines, bands and words at places of it, drawn by the plotting library.

Places are in points of print from the lower left corner.  Lines alike are one
line with gaps, and nothing is laid out by the library: every object of its own
would cost more time than what it shows.  The library is loaded inside, and its
settings are put back behind every sheet.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from contextlib import contextmanager
from io import StringIO
from typing import Any, Literal

from guidegen.circuit.arrangement import Floats
from guidegen.drawings.picture import finish_svg

Place = tuple[float, float]
Align = Literal["left", "center", "right"]

_SETTINGS: Any = {
    "svg.fonttype": "none",
    "text.parse_math": False,
    "font.family": ["sans-serif"],
    "font.sans-serif": ["DejaVu Sans", "Verdana"],
}
#: A setting that the library would answer by choosing a way to show windows.
_WINDOWS = "backend"


def load_plotting() -> None:
    """Load what draws charts, which takes longer than a chart to draw."""
    import matplotlib.backends.backend_svg  # noqa: PLC0415
    import matplotlib.figure  # noqa: PLC0415
    import matplotlib.ticker  # noqa: F401, PLC0415

    import guidegen.drawings.words  # noqa: F401, PLC0415


@contextmanager
def drawing(picture_id: str) -> Iterator[None]:
    """The library's own defaults and ours, whatever the person has set; a sheet is used in here."""
    import matplotlib as mpl  # noqa: PLC0415

    with mpl.rc_context():
        defaults = {name: value for name, value in mpl.rcParamsDefault.items() if name != _WINDOWS}
        mpl.rcParams.update(defaults | _SETTINGS | {"svg.hashsalt": picture_id})
        yield


class Sheet:
    """A sheet of so many points; use inside `drawing`."""

    def __init__(self, width: float, height: float) -> None:
        from matplotlib.figure import Figure  # noqa: PLC0415 - costs time, wanted for charts only
        from matplotlib.transforms import Affine2D  # noqa: PLC0415

        self.width, self.height = width, height
        self._figure = Figure(figsize=(width / 72, height / 72), frameon=False)
        self._points: Any = Affine2D().scale(1 / width, 1 / height) + self._figure.transFigure

    def line(self, xs: Floats | Sequence[float], ys: Floats | Sequence[float], **style: Any) -> None:
        """A line through places, in a style of the library's lines; black and 1.2 points wide else."""
        from matplotlib.lines import Line2D  # noqa: PLC0415

        all_style: dict[str, Any] = {"color": "black", "linewidth": 1.2, "transform": self._points} | style
        self._figure.add_artist(Line2D(xs, ys, **all_style))

    def strokes(self, strokes: Iterable[tuple[Place, ...]], **style: Any) -> None:
        """Lines of one style, each through its places."""
        gap = (float("nan"), float("nan"))
        xs, ys = zip(*(place for stroke in strokes for place in (*stroke, gap)), strict=True)
        self.line(xs, ys, solid_capstyle="butt", **style)

    def area(self, outline: Sequence[Place] | Floats, grey: str) -> None:
        """An area filled with a grey, "0" to "1", under the lines; `outline`: its corners (n, 2)."""
        from matplotlib.patches import Polygon  # noqa: PLC0415

        self._figure.add_artist(Polygon(outline, transform=self._points, color=grey, linewidth=0))

    def write(self, x: float, y: float, words: str, size: float, align: Align = "left") -> None:
        """A line of text with its baseline at `y`."""
        from guidegen.drawings.words import Words  # noqa: PLC0415

        line = Words(x, y, words, size=size, horizontalalignment=align, transform=self._points, color="black")
        self._figure.add_artist(line)

    def svg(self, picture_id: str, title: str, alt: str) -> str:
        """The sheet as SVG text that stands alone."""
        from matplotlib.backends.backend_svg import FigureCanvasSVG  # noqa: PLC0415

        text = StringIO()
        canvas: Any = FigureCanvasSVG(self._figure)
        canvas.print_svg(text, metadata={"Date": None, "Creator": None})
        return finish_svg(text.getvalue(), picture_id, title, alt, (0.0, 0.0, self.width, self.height))
