"""A language whose every translation stands between marks, and what of a guide stands outside of them."""

from __future__ import annotations

import re
import xml.etree.ElementTree as ET
from collections.abc import Iterator
from functools import cache
from gettext import NullTranslations
from html.parser import HTMLParser
from pathlib import Path

from tests.locale.catalogue import extracted, sentences, strings

OPEN, CLOSE = "⟦", "⟧"
SPOKEN = (
    *("alt", "title", "aria-label", "placeholder", "data-label", "data-say", "data-next", "data-clear"),
    *("data-sure", "data-copy", "data-copied", "data-unread", "data-in", "data-edge-low", "data-edge-high"),
)
# The maker's own words and formulas are the same in every language.
SAME = ("formula", "substituted", "result", "own-words")
SILENT_TAGS = ("script", "style", "pre")
VOID = ("meta", "link", "img", "input", "br", "hr", "path", "circle", "rect")

UNITS = (
    "V DC|V AC|mV|V|µA|mA|A|mΩ|kΩ|MΩ|Ω|mW|W|kWh|Wh|mAh|Ah|mm|cm|km|m|kg|g|kN|N|h|min|s|°C|K|J|mm²|AWG|EUR|€"
)
_PLAIN = re.compile(
    rf"""
    (?<![^\W_])(?:{UNITS})(?:/(?:m|km|h|kWh|year))?(?![^\W_])      # units
    |(?<![^\W_])[A-Z]{{1,2}}\d+(?:[-–][A-Z]?\d+)?(?![^\W_])        # T1, R2, W3, E12: references and series
    |\b(?:\d+(?:\.\d+)?W)?\d*[RKM]\d*[FGJK]\b                       # 5W10RJ: what is printed on a resistor
    |\b(?:IP(?:[X\d]+)?|RCD|LEDs?|DC|AC|AA|AAA|UL|IEC|EN|ISO|guidegen)\b
    |10[⁻⁰¹²³⁴-⁹]+                                                  # a power of ten
    |[^\W\d_](?![^\W_])(?<![^\W_].)                                  # a single letter: a symbol
    """,
    re.VERBOSE,
)
_WORD = re.compile(r"[^\W\d_]{2,}")


class Marking(NullTranslations):
    """Every sentence that the catalogue has, between marks; the others as they are."""

    def gettext(self, message: str) -> str:
        return f"{OPEN}{message}{CLOSE}" if message in _known() else message

    def ngettext(self, one: str, many: str, count: int) -> str:
        said = one if count == 1 else many
        return f"{OPEN}{said}{CLOSE}" if one in _known() else said


@cache
def _known() -> frozenset[str]:
    """The sentences that a translator is given."""
    return frozenset(strings(message.id)[0] for message in sentences(extracted()))


def outside(text: str) -> str:
    """What stands outside of every pair of marks; a mark without its other half reaches to the end."""
    depth, kept = 0, []
    for letter in text:
        if letter == OPEN:
            depth += 1
        elif letter == CLOSE:
            if depth == 0:
                kept.clear()
            depth = max(0, depth - 1)
            kept.append(" ")
        elif depth == 0:
            kept.append(letter)
    return "".join(kept)


def english_in(text: str, names: list[str]) -> str:
    """What of a text is neither marked nor name, number, unit or symbol; empty if all is well."""
    left = outside(text)
    for name in sorted(names, key=len, reverse=True):
        left = left.replace(name, " ")
    left = _PLAIN.sub(" ", left)
    return left.strip() if _WORD.search(left) else ""


class _Page(HTMLParser):
    def __init__(self) -> None:
        super().__init__()
        self.texts: list[tuple[str, str]] = []
        self._open: list[tuple[str, str]] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        given = dict(attrs)
        for name in SPOKEN:
            if given.get(name):
                self.texts.append((f"{tag} {name}", given[name] or ""))
        if given.get("name") == "description":
            self.texts.append(("meta", given.get("content") or ""))
        if tag not in VOID:
            self._open.append((tag, given.get("class") or ""))

    def handle_endtag(self, tag: str) -> None:
        while self._open and self._open.pop()[0] != tag:
            pass

    def handle_data(self, data: str) -> None:
        if not data.strip():
            return
        if any(tag in SILENT_TAGS or set(style.split()) & set(SAME) for tag, style in self._open):
            return
        if any(style == "symbols" for _tag, style in self._open) and self._open[-1][0] in ("dt", "sub"):
            return
        self.texts.append((" > ".join(f"{t}.{s}" if s else t for t, s in self._open[-3:]), data))


def page_texts(path: Path) -> list[tuple[str, str]]:
    """Every text of an HTML page with where it stands: nodes, and attributes that are read out."""
    page = _Page()
    page.feed(path.read_text(encoding="utf-8"))
    return page.texts


def drawing_texts(path: Path) -> Iterator[tuple[str, str]]:
    """Every text of a drawing: its lines, its title and its description."""
    for element in ET.parse(path).iter():
        tag = element.tag.rpartition("}")[2]
        if tag in ("text", "title", "desc"):
            yield tag, "".join(element.itertext())
