"""Reading the theme's HTML in tests: elements in order, each with its attributes and text."""

from __future__ import annotations

from dataclasses import dataclass, field
from html.parser import HTMLParser

_EMPTY = frozenset({"meta", "link", "img", "input", "br", "hr"})


@dataclass
class Element:
    tag: str
    attributes: dict[str, str]
    texts: list[str] = field(default_factory=list)

    @property
    def text(self) -> str:
        return " ".join("".join(self.texts).split())

    def has_class(self, name: str) -> bool:
        return name in self.attributes.get("class", "").split()


class _Reader(HTMLParser):
    def __init__(self) -> None:
        super().__init__()
        self.elements: list[Element] = []
        self.stack: list[Element] = []
        self.misnested: list[str] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        element = Element(tag, {name: value or "" for name, value in attrs})
        self.elements.append(element)
        if tag not in _EMPTY:
            self.stack.append(element)

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.elements.append(Element(tag, {name: value or "" for name, value in attrs}))

    def handle_endtag(self, tag: str) -> None:
        if not self.stack or self.stack.pop().tag != tag:
            self.misnested.append(tag)

    def handle_data(self, data: str) -> None:
        for element in self.stack:
            element.texts.append(data)


def read_elements(html: str) -> list[Element]:
    """Every element in the order of its start tag; raises AssertionError when tags are misnested."""
    reader = _Reader()
    reader.feed(html)
    reader.close()
    assert not reader.misnested, reader.misnested
    assert not reader.stack, [element.tag for element in reader.stack]
    return reader.elements
