"""Resistors as they look: colour bands, each named beside it, or the letters on a block.

The names make the bands readable in black and white, and to everyone.
"""

from __future__ import annotations

from collections.abc import Iterable
from types import MappingProxyType

from guidegen.drawings.picture import Picture
from guidegen.drawings.sketch import SMALL, Sketch
from guidegen.guide.blocks import ResistorBody
from guidegen.guide.resistors import bodies_picture, body_words
from guidegen.locale import _

#: What a colour is drawn in.
FILLS = MappingProxyType(
    {
        "black": "#000000",
        "brown": "#7a4a21",
        "red": "#cc1f2d",
        "orange": "#f28c1a",
        "yellow": "#f7d417",
        "green": "#2a8a3a",
        "blue": "#2257b5",
        "violet": "#8040aa",
        "grey": "#8c8c8c",
        "white": "#ffffff",
        "gold": "#c9a227",
        "silver": "#c4c8cc",
    }
)
_BODY, _BLOCK = "#f1e6cd", "#f4f2ee"
#: From band to band, more before the tolerance, and from the first band to the body's end; CSS pixels.
_PITCH, _GAP, _MARGIN, _BAND = 24.0, 8.0, 15.0, 9.0
_HALF, _LEG = 12.0, 18.0
_WIDTH, _APART = 172.0, 66.0


def draw_bodies(every: Iterable[tuple[ResistorBody, ...]]) -> tuple[Picture, ...]:
    """One picture for each resistor, with all bodies that it may come in."""
    return tuple(_draw(bodies) for bodies in every)


def _draw(bodies: tuple[ResistorBody, ...]) -> Picture:
    sketch = Sketch(_APART * len(bodies) - (4 if bodies[0].bands else 16), _WIDTH)
    for index, body in enumerate(bodies):
        y = (31 if body.bands else 25) + index * _APART
        draw_body(sketch, _WIDTH / 2, y, body)
        if index:
            sketch.text(2, y - _APART / 2 + 4, _("or"), size=SMALL)
    words = _(" or ").join(body_words(body) for body in bodies)
    return sketch.picture(bodies_picture(bodies), _("How the resistor is marked"), words)


def draw_body(sketch: Sketch, x: float, y: float, body: ResistorBody) -> float:
    """A resistor centred on a place, with its legs; returns half its width without them."""
    half = _length(body) / 2
    for side in (-1, 1):
        sketch.line((x + side * half, y), (x + side * (half + _LEG), y), kind="minus")
    if body.bands:
        _banded(sketch, x - half, y, 2 * half, body.bands)
    else:
        sketch.box(x - half, y - _HALF - 4, 2 * half, 2 * _HALF + 8, fill=_BLOCK, r=2)
        sketch.text(x, y + 5, body.print, "middle", 15, 2 * half - 8, bold=True)
    return half


def _length(body: ResistorBody) -> float:
    return _PITCH * (len(body.bands) - 1) + _GAP + 2 * _MARGIN if body.bands else 112.0


def _banded(sketch: Sketch, left: float, y: float, length: float, bands: tuple[str, ...]) -> None:
    """Bands from left to right, named by turns above and below, the tolerance set apart."""
    sketch.box(left, y - _HALF, length, 2 * _HALF, fill=_BODY, r=7)
    for index, colour in enumerate(bands):
        x = left + _MARGIN + index * _PITCH + (_GAP if index == len(bands) - 1 else 0)
        sketch.box(x - _BAND / 2, y - _HALF, _BAND, 2 * _HALF, "thin", FILLS[colour], r=0)
        sketch.text(x, y - _HALF - 5 if index % 2 == 0 else y + _HALF + 13, _(colour), "middle", SMALL)
