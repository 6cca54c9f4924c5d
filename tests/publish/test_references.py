"""What the quick reader of pages finds, held against the standard library's parser."""

from __future__ import annotations

from html.parser import HTMLParser
from pathlib import Path

import pytest

from guidegen.build import build
from guidegen.paths import data_folder
from guidegen.publish.references import Document, read_document


class Standard(HTMLParser):
    """The same, by `html.parser`."""

    def __init__(self) -> None:
        super().__init__(convert_charrefs=True)
        self.document = Document()
        self.in_style = False

    def handle_starttag(self, tag, attrs):
        self.in_style = tag == "style"
        self.document.take_element(tag, {name: value or "" for name, value in attrs})

    def handle_endtag(self, tag):
        self.in_style = False

    def handle_data(self, data):
        if self.in_style:
            self.document.take_css(data)


def by_the_standard_parser(html: str) -> Document:
    reader = Standard()
    reader.feed(html)
    reader.close()
    return reader.document


@pytest.mark.parametrize(
    "html",
    [
        '<a href="a.html">a</a>',
        "<A HREF='a.html' ID=x>a</A><img src=b.png><br/><img src=c.png />",
        '<a title="1 > 0" href="a.html?x=1&amp;y=2#b">a</a>',
        '<!-- <a href="no.html"> --><p id="p">1 < 2 & 3 > 2</p>',
        '<script>if (a<b) { x = "<a href=no.html>" }</script><a href="yes.html">',
        "<style>a { background: url(x.png) } b > c {}</style><p id=q>",
        '<input disabled value=""><label for="a b">x</label>',
        '<div\n  id="a"\n  style=\'background: url("y.png")\'\n>',
        '<svg><use xlink:href="#s"/><path d="M0 0"/></svg>',
        "<p>unfinished <b",
    ],
)
def test_tags_and_attributes_are_read_alike(html: str, tmp_path: Path) -> None:
    (tmp_path / "page.html").write_text(html)
    assert read_document(tmp_path / "page.html") == by_the_standard_parser(html)


def test_the_pages_of_the_sample_are_read_alike(tmp_path: Path) -> None:
    build(data_folder("sample_project") / "potting-bench.yaml", tmp_path / "guide")
    pages = sorted((tmp_path / "guide").glob("*.html"))
    assert len(pages) >= 8
    for page in pages:
        assert read_document(page) == by_the_standard_parser(page.read_text())
