"""The helper behind all step pictures: plain SVG, one set of line weights, our own symbols.

Places are in CSS pixels, y downwards.  Black on white with one accent, which
marks what the step does: where to cut, where to hold the meter, what to
close.  What is accented is dashed, ringed or named too, so that it survives
print in black and white.  As in the schematic, + is drawn thick and - thin.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from html import escape
from typing import Literal

from guidegen.drawings.picture import Picture, plain_line, shortened, text_width
from guidegen.locale import _, language

Place = tuple[float, float]
Anchor = Literal["start", "middle", "end"]

WIDTH = 340.0
FONT = "Arial, Helvetica, sans-serif"
LETTERS, SMALL = 13.0, 12.0
ACCENT = "#b3400e"
#: From the + wire of a cable down to its - wire.
GAP = 20.0
_LINES = {
    "plus": 'stroke="black" stroke-width="2.8"',
    "minus": 'stroke="black" stroke-width="1.4"',
    "outline": 'stroke="black" stroke-width="1.2"',
    "thin": 'stroke="black" stroke-width="0.8"',
    "unseen": 'stroke="black" stroke-width="1.4" stroke-dasharray="0.1 5" stroke-linecap="round"',
    "hidden": 'stroke="black" stroke-width="1" stroke-dasharray="4 3"',
    "accent": f'stroke="{ACCENT}" stroke-width="1.8"',
    "meter": f'stroke="{ACCENT}" stroke-width="1.6" stroke-dasharray="3 2.4"',
    "cut": f'stroke="{ACCENT}" stroke-width="2" stroke-dasharray="6 3"',
}
Line = Literal["plus", "minus", "outline", "thin", "unseen", "hidden", "accent", "meter", "cut"]


@dataclass
class Sketch:
    """A step picture while it is drawn; what lies above `top` is left out."""

    height: float
    width: float = WIDTH
    top: float = 0.0
    _parts: list[str] = field(default_factory=list)

    def line(self, *places: Place, kind: Line = "outline") -> None:
        """A line through places."""
        points = " ".join(f"{x:g},{y:g}" for x, y in places)
        self._parts.append(f'<polyline points="{points}" {_LINES[kind]}/>')

    def curve(self, path: str, kind: Line = "outline") -> None:
        """A line along an SVG path."""
        self._parts.append(f'<path d="{path}" {_LINES[kind]}/>')

    def box(
        self, x: float, y: float, w: float, h: float, kind: Line = "outline", fill: str = "none", r: float = 3
    ) -> None:
        """A rectangle with its upper left corner at (x, y)."""
        self._parts.append(
            f'<rect x="{x:g}" y="{y:g}" width="{w:g}" height="{h:g}" rx="{r:g}" fill="{fill}" '
            f"{_LINES[kind]}/>"
        )

    def circle(self, x: float, y: float, r: float, kind: Line = "outline", fill: str = "white") -> None:
        """A circle round (x, y)."""
        self._parts.append(f'<circle cx="{x:g}" cy="{y:g}" r="{r:g}" fill="{fill}" {_LINES[kind]}/>')

    def text(
        self,
        x: float,
        y: float,
        words: str,
        anchor: Anchor = "start",
        size: float = LETTERS,
        room: float = 0.0,
        *,
        bold: bool = False,
    ) -> None:
        """A line of text on the base line `y`, cut where it would be wider than `room`."""
        line = shortened(words, size * (1.08 if bold else 1.0), room) if room else plain_line(words)
        weight = ' font-weight="bold"' if bold else ""
        self._parts.append(
            f'<text x="{x:g}" y="{y:g}" font-size="{size:g}" text-anchor="{anchor}"{weight} '
            f'fill="black" stroke="none">{escape(line)}</text>'
        )

    def sign(self, x: float, y: float, words: str) -> None:
        """A pole or another sign of one letter, centred on (x, y)."""
        self.text(x, y + 5, words, "middle", 14, bold=True)

    def poles(self, x: float, y: float) -> None:
        """The signs + and - at the begin of a cable, centred on `x`."""
        self.sign(x, y, "+")
        self.sign(x, y + GAP, "−")

    def cable(self, left: float, right: float, y: float) -> None:
        """Both wires of a string from left to right, + at `y`."""
        self.line((left, y), (right, y), kind="plus")
        self.line((left, y + GAP), (right, y + GAP), kind="minus")

    def left_out(self, left: float, right: float, y: float) -> None:
        """A cable that goes on with bulbs left out of the drawing."""
        self.line((left + 3, y), (right - 2, y), kind="unseen")
        self.line((left + 3, y + GAP), (right - 2, y + GAP), kind="unseen")

    def bulb(self, x: float, y: float, number: int | str = "") -> float:
        """A bulb across both wires, centred on `x`; returns half its width.  Draw no wire through it."""
        words = str(number)
        half = max(13.0, text_width(words, LETTERS) / 2 + 6)
        self.box(x - half, y - 8, 2 * half, GAP + 16, r=12, fill="white")
        if words:
            self.text(x, y + GAP / 2 + 4.3, words, "middle", LETTERS, bold=True)
        return half

    def string(self, left: float, right: float, y: float, bulbs: dict[float, int | str]) -> None:
        """A cable with bulbs at places along it, its wires broken at every bulb."""
        from_x = left
        for x, number in sorted(bulbs.items()):
            half = self.bulb(x, y, number)
            self.cable(from_x, x - half, y)
            from_x = x + half
        if from_x < right:
            self.cable(from_x, right, y)

    def joint(self, x: float, y: float) -> None:
        """A soldered joint."""
        self.circle(x, y, 4.2, "outline", "black")

    def ring(self, x: float, y: float) -> None:
        """A place for a probe of the meter."""
        self.circle(x, y, 3.4, "accent")

    def meter(self, x: float, y: float, sign: str) -> float:
        """A meter and what it is set to, V or ohm, or a test point; returns half its width."""
        half = max(12.0, text_width(sign, 13) / 2 + 7)
        self.box(x - half, y - 12, 2 * half, 24, "accent", "white", 12)
        self.text(x, y + 4.5, sign, "middle", 13, bold=True)
        return half

    def upright_tag(self, x: float, top: float, bottom: float, sign: str) -> None:
        """A meter between an upper and a lower wire."""
        middle = (top + bottom) / 2
        self.line((x, top), (x, middle - 12), kind="meter")
        self.line((x, middle + 12), (x, bottom), kind="meter")
        self.ring(x, top)
        self.ring(x, bottom)
        self.meter(x, middle, sign)

    def upright_meter(
        self,
        x: float,
        top: float,
        bottom: float,
        sign: str,
        *,
        red_below: bool = False,
        named_left: bool = False,
    ) -> None:
        """A meter between an upper and a lower wire, its leads named on its right or its left."""
        middle = (top + bottom) / 2
        self.upright_tag(x, top, bottom, sign)
        upper, lower = (_("black"), _("red")) if red_below else (_("red"), _("black"))
        at: tuple[float, Anchor] = (x - 8, "end") if named_left else (x + 8, "start")
        self.text(at[0], middle - 14, upper, at[1], SMALL, 50)
        self.text(at[0], middle + 22, lower, at[1], SMALL, 50)

    def meter_over(self, left: Place, right: Place, sign: str, y: float) -> None:
        """A meter over (or under) two places, at height `y`."""
        middle = (left[0] + right[0]) / 2
        half = self.meter(middle, y, sign)
        self.line(left, (left[0], y), (middle - half, y), kind="meter")
        self.line((middle + half, y), (right[0], y), right, kind="meter")
        self.ring(*left)
        self.ring(*right)

    def meter_round(self, left: Place, right: Place, sign: str, y: float, outside: float) -> None:
        """As `meter_over`, with the right lead led round at `outside` and in from the side."""
        middle = (left[0] + outside) / 2
        half = self.meter(middle, y, sign)
        self.line(left, (left[0], y), (middle - half, y), kind="meter")
        self.line((middle + half, y), (outside, y), (outside, right[1]), right, kind="meter")
        self.ring(*left)
        self.ring(*right)

    def resistor(self, x: float, y: float, width: float = 44, height: float = 14) -> None:
        """A resistor's body from `x` on, centred on `y`."""
        self.box(x, y - height / 2, width, height, r=1, fill="white")

    def connector(self, x: float, y: float, sign: str = "") -> None:
        """A terminal or connector, centred, with its pole in it."""
        self.box(x - 10, y - 10, 20, 20, r=2, fill="white")
        if sign:
            self.sign(x, y, sign)
        else:
            self.circle(x, y, 3)

    def cut(self, x: float, top: float, bottom: float) -> None:
        """Cut here: a dashed line with scissors over it."""
        self.line((x, top), (x, bottom), kind="cut")
        self.line((x - 5, top - 14), (x + 2, top), kind="accent")
        self.line((x + 5, top - 14), (x - 2, top), kind="accent")
        self.circle(x - 6, top - 17, 3.2, "accent")
        self.circle(x + 6, top - 17, 3.2, "accent")

    def sleeve(self, left: float, right: float, y: float, half: float = 6) -> None:
        """A sleeve over a wire, see-through so that the joint in it shows."""
        self.box(left, y - half, right - left, 2 * half, r=4)

    def cap(self, x: float, y: float, *, to_right: bool = True) -> None:
        """A cap sleeve over the end of a wire at `x`, closed beyond it."""
        left = x - 16 if to_right else x - 12
        self.box(left, y - 6, 28, 12, "accent", "white", 5)

    def tie(self, x: float, top: float, bottom: float) -> None:
        """A cable tie round cables."""
        self.box(x - 3, top - 5, 6, bottom - top + 10, "accent", "white", 2)

    def span(self, left: float, right: float, y: float, words: str) -> None:
        """A length from left to right, named over its line."""
        self.line((left, y - 4), (left, y + 4), kind="thin")
        self.line((right, y - 4), (right, y + 4), kind="thin")
        self.line((left, y), (right, y), kind="thin")
        for x, way in ((left, 1), (right, -1)):
            self.line((x + 5 * way, y - 2.5), (x, y), (x + 5 * way, y + 2.5), kind="thin")
        self.text((left + right) / 2, y - 5, words, "middle", SMALL)

    def picture(self, picture_id: str, title: str, alt: str) -> Picture:
        """The finished picture."""
        ids = f"{picture_id}-title", f"{picture_id}-desc"
        height = self.height - self.top
        svg = (
            f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 {self.top:g} {self.width:g} {height:g}" '
            f'width="{self.width:g}" height="{height:g}" lang="{language()}" role="img" '
            f'aria-labelledby="{" ".join(ids)}">'
            f'<title id="{ids[0]}">{escape(plain_line(title))}</title>'
            f'<desc id="{ids[1]}">{escape(plain_line(alt))}</desc>'
            f'<rect y="{self.top:g}" width="{self.width:g}" height="{height:g}" fill="white"/>'
            f'<g fill="none" font-family="{FONT}" stroke-linejoin="round">{"".join(self._parts)}</g></svg>'
        )
        return Picture(picture_id, svg, alt, "", round(self.width), round(height))
