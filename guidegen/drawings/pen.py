"""A pen that draws circuit symbols and remembers what it joined.

Places are in points of print, y downwards; the schematic library's own unit
is 24 points and its y goes upwards.
"""

from __future__ import annotations

import sys
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from typing import Any, Literal

from guidegen.drawings.picture import clean_label, text_width

Place = tuple[float, float]
Pole = Literal["+", "-", ""]

POLES: tuple[Pole, Pole] = ("+", "-")
UNIT = 24.0
FONT = "Arial, Helvetica, sans-serif"
_THICK = {"+": 2.0, "-": 1.1, "": 0.7}
_MPL = "schemdraw.backends.mpl"


def library() -> tuple[Any, Any]:
    """The schematic library and its elements, with the SVG backend only.

    Its other backend draws through pyplot, which costs more to load than
    the whole schematic to draw; the library does without it where that is
    missing, so it is kept from being found while the library loads.
    """
    missing = "schemdraw" not in sys.modules
    if missing:
        sys.modules[_MPL] = None  # type: ignore[assignment]
    try:
        import schemdraw  # noqa: PLC0415
        import schemdraw.elements  # noqa: PLC0415
    finally:
        if missing:
            del sys.modules[_MPL]
    return schemdraw, schemdraw.elements


@contextmanager
def real_text(schemdraw: Any) -> Iterator[None]:
    """Letters as text, not as outlines, even where the library could draw outlines."""
    before = schemdraw.svgconfig.text
    schemdraw.svgconfig.text = "text"
    try:
        yield
    finally:
        schemdraw.svgconfig.text = before


@dataclass(frozen=True)
class Wire:
    """A drawn conductor: its pole and its corners; `whole` unless bulbs are left out along it."""

    pole: Pole
    places: tuple[Place, ...]
    whole: bool = True


class Pen:
    """Draws one figure; `wires`, `dots` and `symbols` tell afterwards what was drawn."""

    def __init__(self) -> None:
        self._schemdraw, self._elements = library()
        from schemdraw import segments  # noqa: PLC0415 - costs time, see library()

        self._segments = segments
        self._drawing = self._schemdraw.Drawing(
            canvas="svg", show=False, inches_per_unit=UNIT / 72, fontsize=8, font=FONT, lw=1.1
        )
        self._ink = self._elements.Element()
        self.wires: list[Wire] = []
        self.dots: list[Place] = []
        self.symbols: dict[str, Any] = {}

    def wire(self, pole: Pole, *places: Place) -> None:
        """A conductor from place to place; + is drawn thick, - thin."""
        self.wires.append(Wire(pole, places))
        self.line(*places, width=_THICK[pole])

    def named_wire(self, pole: Pole, words: str, middle: Place, *places: Place) -> None:
        """A conductor with its name in a break of its level stretch between the 2nd and 3rd place."""
        self.wires.append(Wire(pole, places))
        half = text_width(words, 8) / 2 + 3
        x, y = middle
        self.line(*places[:2], (x - half, y), width=_THICK[pole])
        self.line((x + half, y), *places[2:], width=_THICK[pole])
        self.text(middle, words, 8)

    def line(self, *places: Place, width: float = 0.7, style: Any = "-") -> None:
        """A line that conducts nothing."""
        self._add(self._segments.Segment([_unit(place) for place in places], lw=width, ls=style))

    def meter_line(self, *places: Place) -> None:
        """From a tag to where the probe goes."""
        self.line(*places, width=0.7, style="1.6,1.6")

    def left_out(self, pole: Pole, *places: Place) -> None:
        """A conductor that goes on unseen, with bulbs left out of the drawing."""
        self.wires.append(Wire(pole, places, whole=False))
        self.line(*places, width=_THICK[pole], style="0.1,4")

    def hop(self, pole: Pole, place: Place, radius: float) -> None:
        """A conductor from left to right that jumps over another at `place`."""
        x, y = place
        self.wires.append(Wire(pole, ((x - radius, y), (x + radius, y))))
        self.arch(place, radius, _THICK[pole])

    def arch(self, place: Place, radius: float, width: float) -> None:
        """The upper half of a circle, that conducts nothing."""
        size = 2 * radius / UNIT
        self._add(self._segments.SegmentArc(_unit(place), size, size, theta1=0, theta2=180, lw=width))

    def dot(self, place: Place) -> None:
        """Conductors joined here."""
        self.dots.append(place)
        self.sign_dot(place)

    def sign_dot(self, place: Place) -> None:
        """The sign for a joint, where none is."""
        self._circle(place, 2.6, "black")

    def ring(self, place: Place) -> None:
        """A place for a probe of the meter."""
        self._circle(place, 2.4, "white")

    def _circle(self, place: Place, radius: float, fill: str) -> None:
        """A small circle over the wires."""
        self._add(
            self._segments.SegmentCircle(
                _unit(place), radius / UNIT, color="black", fill=fill, lw=1, zorder=5
            )
        )

    def cap(self, place: Place, width: float = 7.0) -> None:
        """A cap over the end of a conductor, `place` at its middle."""
        x, y = place
        self.box((x - width / 2, y - 2.8), (x + width / 2, y + 2.8), fill="white")

    def box(self, corner: Place, other: Place, fill: str = "none", width: float = 1.0) -> None:
        """A rectangle between two corners."""
        (x0, y0), (x1, y1) = corner, other
        corners = [_unit(place) for place in ((x0, y0), (x1, y0), (x1, y1), (x0, y1))]
        self._add(self._segments.SegmentPoly(corners, color="black", fill=fill, lw=width, zorder=5))

    def ellipse(self, middle: Place, width: float, height: float) -> None:
        """A loop round the conductors of one cable."""
        size = width / UNIT, height / UNIT
        self._add(self._segments.SegmentArc(_unit(middle), *size, theta1=0, theta2=360, lw=0.8))

    def text(
        self,
        place: Place,
        words: str,
        size: float = 8,
        align: Literal["left", "center", "right"] = "center",
    ) -> None:
        """One line of text, centred on the height of `place`."""
        self._add(
            self._segments.SegmentText(
                _unit(place),
                clean_label(words),
                align=(align, "center"),
                fontsize=size,
                font=FONT,
                color="black",
                zorder=6,
            )
        )

    def resistor(self, reference: str, start: Place, end: Place) -> None:
        """A resistor, as IEC 60617 draws it."""
        self._symbol(reference, self._elements.ResistorIEC(), start, end)
        self._thicken(start, end)

    def fuse(self, reference: str, start: Place, end: Place) -> None:
        """A fuse, as IEC 60617 draws it."""
        self._symbol(reference, self._elements.FuseIEC(), start, end)
        self._thicken(start, end)

    def led(self, reference: str, anode: Place, cathode: Place) -> None:
        """A lit LED with its rays."""
        element = self._elements.LED(arrow_lw=0.7, arrowwidth=0.12, arrowlength=0.14)
        self._symbol(reference, element, anode, cathode)

    def dark_led(self, reference: str, anode: Place, cathode: Place) -> None:
        """An LED that stays dark: no rays."""
        self._symbol(reference, self._elements.Diode(), anode, cathode)

    def _symbol(self, reference: str, element: Any, start: Place, end: Place) -> None:
        """Place a two-ended symbol and remember it by its reference."""
        placed = element.endpoints(_unit(start), _unit(end))
        self.symbols[reference] = self._drawing.add(placed)

    def _thicken(self, start: Place, end: Place) -> None:
        """Draw a symbol's own leads as thick as the + conductor it sits in."""
        (x0, y0), (x1, y1) = start, end
        length = abs(x1 - x0) + abs(y1 - y0)
        part = (length - UNIT) / 2 / length
        step = ((x1 - x0) * part, (y1 - y0) * part)
        self.line(start, (x0 + step[0], y0 + step[1]), width=_THICK["+"])
        self.line((x1 - step[0], y1 - step[1]), end, width=_THICK["+"])

    def ends(self, reference: str) -> tuple[Place, Place]:
        """Where the symbol's anchors `start` (an LED's anode) and `end` came to lie."""
        anchors = self.symbols[reference].absanchors
        start, end = (anchors[name] for name in ("start", "end"))
        return (start[0] * UNIT, -start[1] * UNIT), (end[0] * UNIT, -end[1] * UNIT)

    def _add(self, segment: Any) -> None:
        """Put a stroke on the one element that holds everything but symbols."""
        self._ink.segments.append(segment)

    def svg(self) -> str:
        """Everything drawn, as SVG text, in points from (0, 0)."""
        self._drawing.add(self._ink.at((0, 0)).theta(0))
        with real_text(self._schemdraw):
            image: bytes = self._drawing.draw(show=False).getimage()
        return image.decode("utf-8")


def _unit(place: Place) -> Place:
    """A place in the library's unit, y upwards."""
    return place[0] / UNIT, -place[1] / UNIT
