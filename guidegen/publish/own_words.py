"""The maker's own words: simple Markdown in, clean HTML out.

Two fences stand one behind the other: the renderer takes no HTML and makes
no picture and no link but to the web, and what it makes is cleaned by a list
of what may pass.  Both libraries are loaded when there are words to render.
"""

from __future__ import annotations

import re
from typing import TYPE_CHECKING
from urllib.parse import urlsplit
from xml.etree.ElementTree import Element

from markupsafe import Markup

from guidegen.errors import OutputError
from guidegen.locale import _

if TYPE_CHECKING:
    from markdown import Markdown

_TAGS = {"p", "em", "strong", "ul", "ol", "li", "a", "br", "hr", "code", "blockquote"}
_SCHEMES = {"http", "https"}
_BARE = "bare"  # of a link that shows its address, which paper need not show again
_HEADINGS = ("h1", "h2", "h3", "h4", "h5", "h6")
#: The renderer wants a blank line before a list; people leave it out.
_LIST_BEHIND_TEXT = re.compile(r"^(?![-*+] |\d+\. )(\S.*)\n(?=[-*+] \S|1\. \S)", re.MULTILINE)


def own_words(text: str, heading: int) -> Markup:
    """Safe HTML of a text in simple Markdown; its headings, of whatever rank, become `heading` (1 to 6).

    HTML in it is shown as it is written.  Links lead to http and https; of
    any other link, and of a picture, only the words stay.  Raises OutputError
    for a text that nests too deep to be rendered.
    """
    # Loaded where there are words: most guides have none.
    import nh3  # noqa: PLC0415

    clean = nh3.clean(
        _rendered(text, heading),
        tags=_TAGS | {f"h{heading}"},
        attributes={"a": {"href"}},
        attribute_filter=lambda _tag, name, value: value if name != "href" or _leads_to_web(value) else None,
        allowed_classes={"a": {_BARE}},
        url_schemes=_SCHEMES,
        link_rel="noopener noreferrer",
    )
    return Markup(clean)


class _MadePlain:
    """Goes over what was rendered, while it is a tree."""

    def __init__(self, heading: int) -> None:
        self.heading = heading

    def run(self, root: Element) -> None:
        """Make every element plain."""
        for element in root.iter():
            _make_plain(element, self.heading)


def _rendered(text: str, heading: int) -> str:
    renderer = _renderer(heading)
    try:
        return str(renderer.convert(_LIST_BEHIND_TEXT.sub(r"\1\n\n", text)))
    except RecursionError as error:
        said = _("A text in the project file nests too deep: {text} … Write it with fewer quotes and lists.")
        raise OutputError(said.format(text=text[:60])) from error


def _renderer(heading: int) -> Markdown:
    """A renderer without HTML and blocks of code, whose tree is made plain before it becomes HTML."""
    from markdown import Markdown  # noqa: PLC0415

    renderer = Markdown(output_format="html", extensions=["sane_lists"])
    renderer.preprocessors.deregister("html_block")
    renderer.inlinePatterns.deregister("html")
    renderer.parser.blockprocessors.deregister("code")
    renderer.treeprocessors.register(_MadePlain(heading), "made-plain", 15)  # behind "inline", which is 20
    return renderer


def _make_plain(element: Element, heading: int) -> None:
    """One rank of headings; of a picture, and of a link that leads elsewhere, the words alone."""
    if element.tag in _HEADINGS:
        element.tag = f"h{heading}"
    elif element.tag == "img":
        element.tag, element.text = "span", element.get("alt")
    elif element.tag == "a" and not _leads_to_web(element.get("href") or ""):
        element.tag = "span"
    elif element.tag == "a" and element.text == element.get("href"):
        element.set("class", _BARE)
    if element.tag == "span":
        element.attrib.clear()


def _leads_to_web(url: str) -> bool:
    """Whether an address is a whole one of the web."""
    try:
        parts = urlsplit(url)
    except ValueError:
        return False
    return parts.scheme in _SCHEMES and bool(parts.hostname)
