"""A finished picture: SVG text, and the words that stand for it."""

from __future__ import annotations

import re
import unicodedata
import xml.etree.ElementTree as ET
from dataclasses import dataclass

from guidegen.locale import language

_SVG = "http://www.w3.org/2000/svg"
_XLINK = "http://www.w3.org/1999/xlink"
_POINT_PX = 96 / 72
# Widths of Helvetica's letters in em (from its published metrics), by class; what is
# not listed counts as wide as a digit, East Asian wide letters and signs as a full em.
_WIDTHS = {
    0.24: "ijl'|",
    0.30: " \u00a0.,:;/\\!ftI[]",
    0.35: "r-()`{}·",
    0.52: "ckszxvyJ",
    0.68: "ABEKPSVXY&",
    0.74: "CDHNRUw",
    0.79: "GOQ",
    0.86: "mM",
    1.0: "W%@…",
}
_SPACE = re.compile(r"[^\S\u00a0]+")
_LETTER_WIDTH = {letter: width for width, letters in _WIDTHS.items() for letter in letters}


@dataclass(frozen=True)
class Picture:
    """One picture of the guide.

    `svg` stands alone (a file of its own, with title and description);
    `alt` is its text equivalent; `width` and `height` are in CSS pixels.
    """

    id: str
    svg: str
    alt: str
    caption: str
    width: int
    height: int


def clean_label(text: str) -> str:
    """One line of text as the schematic library takes it.

    It reads `$..$` as mathematics and breaks on `&`; entities pass through
    it unharmed, and it escapes `<` and `>` itself.
    """
    return plain_line(text).replace("&", "&amp;").replace("$", "&#36;")


def plain_line(text: str) -> str:
    """The text on one line, without characters that XML forbids; no-break spaces stay."""
    return _SPACE.sub(" ", "".join(letter for letter in text if _allowed(letter))).strip()


def _allowed(letter: str) -> bool:
    """Whether XML 1.0 takes the character (white space is turned into spaces later)."""
    return letter.isspace() or (
        unicodedata.category(letter) not in {"Cc", "Cs"} and ord(letter) % 65536 < 0xFFFE
    )


def text_width(text: str, size: float) -> float:
    """About how wide a line is in a sans-serif letter of `size`, in the unit of `size`."""
    return size * sum(_width(letter) for letter in text)


def _width(letter: str) -> float:
    """Width of a letter, em."""
    wide = unicodedata.east_asian_width(letter) in {"W", "F"}
    return 1.0 if wide else _LETTER_WIDTH.get(letter, 0.57)


def shortened(text: str, size: float, width: float) -> str:
    """The line, cut with an ellipsis where it would be wider than `width`."""
    line = plain_line(text)
    if text_width(line, size) <= width:
        return line
    while line and text_width(line + "…", size) > width:
        line = line[:-1]
    return line.rstrip() + "…"


def finish_svg(
    svg: str, picture_id: str, title: str, alt: str, box: tuple[float, float, float, float]
) -> str:
    """Give the drawing its title, description, size and white ground.

    `box` is what of it shows: left, top, width and height in points.  Ids
    carry the picture's own, since several pictures may share a page.
    """
    ET.register_namespace("", _SVG)
    ET.register_namespace("xlink", _XLINK)
    root = ET.fromstring(svg)
    _make_private(root)
    root.attrib.clear()
    left, top, width, height = box
    ids = f"{picture_id}-title", f"{picture_id}-desc"
    root.attrib |= {
        "viewBox": f"{left:g} {top:g} {width:g} {height:g}",
        "width": f"{css_px(width)}",
        "height": f"{css_px(height)}",
        "stroke-linejoin": "round",
        "role": "img",
        "lang": language(),
        "aria-labelledby": " ".join(ids),
    }
    ground = {
        "x": f"{left:g}",
        "y": f"{top:g}",
        "width": f"{width:g}",
        "height": f"{height:g}",
        "fill": "white",
    }
    for place, (tag, text, attributes) in enumerate(
        (("title", title, {"id": ids[0]}), ("desc", alt, {"id": ids[1]}), ("rect", None, ground))
    ):
        element = ET.Element(f"{{{_SVG}}}{tag}", attributes)
        element.text = plain_line(text) if text else None
        root.insert(place, element)
    return ET.tostring(root, encoding="unicode")


def _make_private(root: ET.Element) -> None:
    """Take out what would reach beyond the picture on a page: style sheets, metadata, unused ids."""
    for parent in list(root.iter()):
        for child in list(parent):
            if child.tag in {f"{{{_SVG}}}style", f"{{{_SVG}}}metadata"}:
                parent.remove(child)
    used = " ".join(text for element in root.iter() for name, text in element.items() if name != "id")
    for element in root.iter():
        if f"#{element.get('id', '')}" not in used:
            element.attrib.pop("id", None)


def css_px(points: float) -> int:
    """Points in whole CSS pixels."""
    return round(points * _POINT_PX)
