"""What a file of the guide refers to, and the ids it offers, read from its HTML, CSS or SVG."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from functools import lru_cache
from html import unescape
from pathlib import Path
from xml.parsers import expat

from guidegen.errors import OutputError
from guidegen.locale import _

# Attributes whose value is a URL. `srcset` holds several and is read apart.
_URL_ATTRIBUTES = frozenset(
    {"href", "xlink:href", "src", "poster", "data", "action", "formaction", "background", "cite", "manifest"}
)
# Attributes whose value is one or more ids of the same page.
_ID_ATTRIBUTES = frozenset(
    {"for", "headers", "list", "form", "aria-labelledby", "aria-describedby", "aria-controls", "aria-details"}
    | {"aria-owns", "aria-flowto", "aria-errormessage", "aria-activedescendant", "popovertarget"}
)
# Attributes whose value is CSS.
_CSS_ATTRIBUTES = frozenset(
    {"style", "fill", "stroke", "clip-path", "mask", "filter", "cursor"}
    | {"marker-start", "marker-mid", "marker-end"}
)
_SETS = frozenset({"srcset", "imagesrcset"})
_LINKS = frozenset({"a", "area"})
_REFERRING = _URL_ATTRIBUTES | _ID_ATTRIBUTES | _CSS_ATTRIBUTES | _SETS
_CSS_URL = re.compile(
    r"""url\(\s*(?:"([^"]*)"|'([^']*)'|([^)"']*?))\s*\)|@import\s+(?:"([^"]*)"|'([^']*)')"""
)
# Comments, and start tags with the raw text behind those of scripts and style sheets (HTML, 13.1.2).
_ATTRIBUTES = r"""[^"'>]*(?:(?:"[^"]*"|'[^']*')[^"'>]*)*"""
_HTML_PART = re.compile(
    rf"""<!--.*?-->|<(?P<tag>(?P<rawtag>script|style)\b|[a-z][^\s/>]*)(?P<attributes>{_ATTRIBUTES})>"""
    r"""(?(rawtag)(?P<raw>.*?)</(?P=rawtag)\s*>)""",
    re.DOTALL | re.IGNORECASE,
)
_ATTRIBUTE = re.compile(
    r"""(?P<name>[^\s"'<>/=]+)(?:\s*=\s*(?:"(?P<double>[^"]*)"|'(?P<single>[^']*)'|(?P<bare>[^\s"'=<>`]+)))?"""
)
_CSS_COMMENT = re.compile(r"/\*.*?\*/", re.DOTALL)


@dataclass(frozen=True)
class Reference:
    """A URL as written; `is_link` tells what a reader may follow from what the page itself loads."""

    url: str
    is_link: bool = False


@dataclass
class Document:
    """The references and ids of one file, in the order in which they stand."""

    references: list[Reference] = field(default_factory=list)
    ids: set[str] = field(default_factory=set)
    repeated_ids: list[str] = field(default_factory=list)

    def take_element(self, tag: str, attributes: Mapping[str, str]) -> None:
        """Add what one element refers to, and its id."""
        self._take_id(attributes.get("id", ""))
        for name, value in attributes.items():
            if name in _REFERRING:
                self.references.extend(_references(tag, name, value))

    def take_css(self, text: str) -> None:
        """Add what a style sheet, or a `style` attribute, loads."""
        self.references.extend(_css_references(text))

    def _take_id(self, given: str) -> None:
        if given in self.ids:
            self.repeated_ids.append(given)
        if given:
            self.ids.add(given)


def read_document(path: Path) -> Document:
    """Read one HTML, CSS or SVG file, told apart by its suffix.

    Raises OutputError when a drawing is not well-formed XML.
    """
    readers = {".html": _read_html, ".svg": _read_svg, ".css": _read_css}
    try:
        return readers[path.suffix](path.read_bytes())
    except expat.ExpatError as error:
        raise OutputError(
            _("The drawing {file} is not well-formed: {reason}").format(file=path.name, reason=error)
        ) from error


def _references(tag: str, name: str, value: str) -> Iterator[Reference]:
    """What one attribute refers to."""
    if name in _URL_ATTRIBUTES:
        yield Reference(value.strip(), is_link=tag in _LINKS)
    elif name in _ID_ATTRIBUTES:
        yield from (Reference(f"#{part}") for part in value.split())
    elif name in _SETS:
        yield from (Reference(part.split()[0]) for part in value.split(",") if part.strip())
    elif name in _CSS_ATTRIBUTES:
        yield from _css_references(value)


def _css_references(text: str) -> Iterator[Reference]:
    if "url(" not in text and "@import" not in text:
        return
    for match in _CSS_URL.finditer(_CSS_COMMENT.sub("", text)):
        yield Reference("".join(part for part in match.groups() if part))


def _read_css(content: bytes) -> Document:
    document = Document()
    document.take_css(content.decode())
    return document


def _read_html(content: bytes) -> Document:
    """Read the start tags and style sheets of a page.

    By pattern, not by the standard parser: that one takes a third of a
    build's writing time, and text and end tags do not matter here.
    """
    document = Document()
    for match in _HTML_PART.finditer(content.decode()):
        if match["tag"]:
            tag, attributes = match["tag"].lower(), match["attributes"]
            document.take_element(tag, _attributes(attributes))
            if tag == "style":
                document.take_css(match["raw"] or "")
    return document


@lru_cache(maxsize=5_000)
def _attributes(text: str) -> Mapping[str, str]:
    """Names and values of a tag's attributes, of those that matter; most tags are like an earlier one."""
    found = ((each["name"].lower(), each) for each in _ATTRIBUTE.finditer(text))
    return {name: _value(each) for name, each in found if name == "id" or name in _REFERRING}


def _value(attribute: re.Match[str]) -> str:
    return unescape(attribute["double"] or attribute["single"] or attribute["bare"] or "")


def _read_svg(content: bytes) -> Document:
    """Read a drawing with the XML parser: much faster than the HTML one, and drawings are long."""
    reader = _SvgReader()
    parser = expat.ParserCreate()
    parser.buffer_text = True
    parser.StartElementHandler = reader.start
    parser.EndElementHandler = reader.end
    parser.CharacterDataHandler = reader.text
    parser.Parse(content, True)
    return reader.document


class _SvgReader:
    """Hands every element, and the text of `style` elements, to a document."""

    def __init__(self) -> None:
        self.document = Document()
        self._in_style = False

    def start(self, tag: str, attributes: dict[str, str]) -> None:
        """Take one start tag."""
        self._in_style = tag == "style"
        self.document.take_element(tag, attributes)

    def end(self, _tag: str) -> None:
        """Take one end tag."""
        self._in_style = False

    def text(self, text: str) -> None:
        """Take text, which matters in a style sheet alone."""
        if self._in_style:
            self.document.take_css(text)
