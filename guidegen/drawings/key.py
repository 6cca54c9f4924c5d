"""The key of a schematic: what each sign in it means."""

from __future__ import annotations

from collections.abc import Callable

from guidegen.drawings import layout
from guidegen.drawings.layout import Sheet
from guidegen.drawings.pen import Pen
from guidegen.drawings.picture import shortened
from guidegen.locale import _

_LEFT, _MIDDLE, _TOP, _LINE = 122.0, 318.0, 8.0, 17.0
_SIGN = 38.0
Sign = Callable[[Pen, float, float], None]


def draw_key(pen: Pen, sheet: Sheet, *, dark: bool, capped: bool) -> None:
    """Draw the key to the right of the supply; signs that the figure lacks are left out."""
    entries: list[tuple[Sign, str]] = [
        (_plus_sign, _("+ conductor (thick)")),
        (_minus_sign, _("− conductor (thin)")),
        (_joint_sign, _("wires joined: terminal or solder")),
        (_hop_sign, _("wires cross, not joined")),
        (_cable_sign, _("cable, see the wire table")),
        (_bulb_sign, _("bulb 7 of the run, lit")),
    ]
    if dark:
        entries.append((_dark_sign, _("bulb 8, dark on DC")))
    entries.append((_gap_sign, _("bulbs not drawn, wired alike")))
    if capped:
        entries.append((_cap_sign, _("live free end: cap it by itself")))
    entries.append((_point_sign, _("test point: red probe on +, black on −")))
    for place, (sign, words) in enumerate(entries):
        x = (_LEFT, _MIDDLE)[place % 2]
        y = _TOP + _LINE * (place // 2)
        sign(pen, x, y)
        room = (_MIDDLE if place % 2 == 0 else layout.WIDTH) - x - _SIGN - 4
        pen.text((x + _SIGN, y), shortened(words, layout.LETTERS, room), layout.LETTERS, "left")
    if sheet.number > 1:
        _draw_note(pen, _("Supply, fuse and lead are those of figure 1, drawn again."))


def _draw_note(pen: Pen, words: str) -> None:
    """A line under the key."""
    pen.text((_LEFT, _TOP + _LINE * 5.7), words, layout.LETTERS, "left")


def _plus_sign(pen: Pen, x: float, y: float) -> None:
    pen.line((x, y), (x + 26, y), width=2.0)


def _minus_sign(pen: Pen, x: float, y: float) -> None:
    pen.line((x, y), (x + 26, y), width=1.1)


def _joint_sign(pen: Pen, x: float, y: float) -> None:
    pen.line((x, y), (x + 26, y), width=1.1)
    pen.line((x + 13, y), (x + 13, y + 6), width=1.1)
    pen.sign_dot((x + 13, y))


def _hop_sign(pen: Pen, x: float, y: float) -> None:
    pen.line((x, y), (x + 9, y), width=1.1)
    pen.arch((x + 13, y), 4.0, 1.1)
    pen.line((x + 17, y), (x + 26, y), width=1.1)
    pen.line((x + 13, y - 6.5), (x + 13, y + 6.5), width=2.0)


def _cable_sign(pen: Pen, x: float, y: float) -> None:
    pen.line((x, y - 2.5), (x + 26, y - 2.5), width=2.0)
    pen.line((x, y + 2.5), (x + 26, y + 2.5), width=1.1)
    pen.ellipse((x + 13, y), 6, 12)


def _bulb_sign(pen: Pen, x: float, y: float) -> None:
    pen.text((x + 2, y), "7", layout.LETTERS)
    pen.led("", (x + 13, y - 6.5), (x + 13, y + 6.5))


def _dark_sign(pen: Pen, x: float, y: float) -> None:
    pen.text((x + 2, y), "8", layout.LETTERS)
    pen.dark_led("", (x + 13, y + 6.5), (x + 13, y - 6.5))


def _gap_sign(pen: Pen, x: float, y: float) -> None:
    pen.line((x + 2, y), (x + 26, y), width=2.0, style="0.1,4")


def _cap_sign(pen: Pen, x: float, y: float) -> None:
    pen.line((x, y), (x + 18, y), width=1.1)
    pen.cap((x + 21.5, y))


def _point_sign(pen: Pen, x: float, y: float) -> None:
    pen.box((x + 6, y - 5.5), (x + 22, y + 5.5), width=0.7)
    pen.text((x + 14, y), "T9", layout.SMALL)
    for end, edge in ((x + 1, x + 6), (x + 27, x + 22)):
        pen.meter_line((end, y), (edge, y))
        pen.ring((end, y))
