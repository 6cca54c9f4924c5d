"""A page of the guide as part of one file: ids and links told apart by page, files put in place.

Themes say what is not for one file: an element with `data-alone` belongs to
a page that stands alone, and is left out.
"""

from __future__ import annotations

from base64 import b64encode
from collections.abc import Callable, Mapping
from html import escape
from html.parser import HTMLParser
from pathlib import PurePosixPath
from urllib.parse import urldefrag

from guidegen.locale import _
from guidegen.publish.theme import theme_fault

#: Elements without an end tag (HTML, 13.1.2).
_VOID = frozenset(
    {"area", "base", "br", "col", "embed", "hr", "img", "input", "link", "meta", "source", "track", "wbr"}
)
_ID_ATTRIBUTES = frozenset(
    {"id", "for", "headers", "aria-labelledby", "aria-describedby", "aria-controls", "aria-details"}
)
_MEDIA = {
    ".svg": "image/svg+xml",
    ".png": "image/png",
    ".gif": "image/gif",
    ".jpg": "image/jpeg",
    ".webp": "image/webp",
}
#: One file has one `main` and one banner; a page in it keeps neither.
_PLAIN = {"main": "div", "header": "div"}
_ALONE = "data-alone"

Attributes = list[tuple[str, str | None]]


def sheet_name(page: str) -> str:
    """Name of a page inside one file: "stay-safe.html" becomes "stay-safe", the first page "start"."""
    stem = PurePosixPath(page).stem
    return "start" if stem == "index" else stem


def flatten(html: str, page: str, files: Mapping[str, bytes]) -> str:
    """The inside of a page's `body`, fit to stand in one file with the other pages.

    `files`: every file of the guide by its path; pictures among them are put
    in place of their addresses.  KeyError when a picture is missing.
    """
    parser = _Flattener(sheet_name(page), files)
    parser.feed(html)
    parser.close()
    return "".join(parser.parts)


def data_url(path: str, content: bytes) -> str:
    """A file's content as an address that needs no file; ThemeError for a kind that no browser shows so."""
    if PurePosixPath(path).suffix not in _MEDIA:
        text = _("a picture of this kind cannot stand in one file: {name}; take {kinds}")
        raise theme_fault([text.format(name=path, kinds=", ".join(_MEDIA))])
    return f"data:{_MEDIA[PurePosixPath(path).suffix]};base64,{b64encode(content).decode()}"


class _Flattener(HTMLParser):
    """Copies what is inside `body`, attributes rewritten, elements marked `data-alone` left out."""

    def __init__(self, sheet: str, files: Mapping[str, bytes]) -> None:
        super().__init__(convert_charrefs=False)
        self.parts: list[str] = []
        self._sheet = sheet
        self._files = files
        self._inside = False
        self._skipping = 0
        self._rewrite: Mapping[str, Callable[[str], str]] = {
            **dict.fromkeys(_ID_ATTRIBUTES, self._own_ids),
            "href": self._link,
            "src": self._picture,
        }

    def handle_starttag(self, tag: str, attrs: Attributes) -> None:
        """Copy a start tag, or begin to leave out."""
        if tag == "body":
            self._inside = True
        elif not self._inside:
            return
        elif self._skipping:
            self._skipping += tag not in _VOID
        elif any(name == _ALONE for name, _value in attrs):
            self._skipping = int(tag not in _VOID)
        else:
            self._write(f"<{_PLAIN.get(tag, tag)}{''.join(map(self._attribute, attrs))}>")

    def handle_startendtag(self, tag: str, attrs: Attributes) -> None:
        """Copy a tag that closes itself, as inside a drawing."""
        if self._inside and not self._skipping:
            self._write(f"<{tag}{''.join(map(self._attribute, attrs))}/>")

    def handle_endtag(self, tag: str) -> None:
        """Copy an end tag, or end leaving out."""
        if tag == "body":
            self._inside = False
        elif self._skipping:
            self._skipping -= 1
        else:
            self._write(f"</{_PLAIN.get(tag, tag)}>")

    def handle_data(self, data: str) -> None:
        """Copy text as it is written."""
        self._write(data)

    def handle_entityref(self, name: str) -> None:
        """Copy a named character as it is written."""
        self._write(f"&{name};")

    def handle_charref(self, name: str) -> None:
        """Copy a numbered character as it is written."""
        self._write(f"&#{name};")

    def _write(self, text: str) -> None:
        if self._inside and not self._skipping:
            self.parts.append(text)

    def _attribute(self, pair: tuple[str, str | None]) -> str:
        name, value = pair
        if value is None:
            return f" {name}"
        rewrite = self._rewrite.get(name)
        return f' {name}="{escape(rewrite(value) if rewrite else value)}"'

    def _own_ids(self, value: str) -> str:
        return " ".join(f"{self._sheet}-{part}" for part in value.split())

    def _link(self, value: str) -> str:
        page, fragment = urldefrag(value)
        if page and not page.endswith(".html"):
            return value
        sheet = sheet_name(page) if page else self._sheet
        return f"#{sheet}-{fragment}" if fragment else f"#{sheet}"

    def _picture(self, value: str) -> str:
        return data_url(value, self._files[value])
