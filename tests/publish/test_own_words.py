"""The maker's own words: Markdown in, clean HTML out, and nothing gets through that could run or fetch."""

from __future__ import annotations

from html.parser import HTMLParser

import pytest
from hypothesis import given
from hypothesis import strategies as st

from guidegen.errors import OutputError
from guidegen.publish.own_words import own_words

MAY_PASS = {"p", "em", "strong", "ul", "ol", "li", "a", "br", "hr", "code", "blockquote", "h3"}

# What Markdown and HTML are made of, to be put together at random.
PIECES = (
    *"<>&\"'()[]!*`\\ #:/=a\n",
    "\n\n",
    "&#58;",
    "javascript",
    "https://a.example",
    "script",
    "img",
    "onerror=",
    "data:",
    "- ",
    "\n    ",
    "](",
)


class Reading(HTMLParser):
    """Elements with their attributes, and the text as a reader sees it."""

    def __init__(self, html: str) -> None:
        super().__init__()
        self.elements: list[tuple[str, dict[str, str | None]]] = []
        self.text = ""
        self.other: list[str] = []
        self.feed(html)
        self.close()

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.elements.append((tag, dict(attrs)))

    def handle_data(self, data: str) -> None:
        self.text += data

    def handle_comment(self, data: str) -> None:
        self.other.append(data)

    def handle_decl(self, decl: str) -> None:
        self.other.append(decl)

    def handle_pi(self, data: str) -> None:
        self.other.append(data)

    def unknown_decl(self, data: str) -> None:
        self.other.append(data)


def read(text: str) -> Reading:
    return Reading(str(own_words(text, 3)))


def links(text: str) -> list[str | None]:
    return [attributes.get("href") for tag, attributes in read(text).elements if tag == "a"]


def unclean(reading: Reading) -> list[object]:
    """What is in the page that may not be there."""
    wrong: list[object] = [*reading.other]
    for tag, attributes in reading.elements:
        if tag not in MAY_PASS:
            wrong.append(tag)
        if set(attributes) - ({"href", "rel", "class"} if tag == "a" else set()):
            wrong.append(attributes)
        if not (attributes.get("href") or "https://").startswith(("http://", "https://")):
            wrong.append(attributes)
    return wrong


def test_a_blank_line_parts_paragraphs() -> None:
    assert own_words("One.\n\nTwo.", 3) == "<p>One.</p>\n<p>Two.</p>"


def test_stars_stress() -> None:
    assert own_words("*a* and **b**", 3) == "<p><em>a</em> and <strong>b</strong></p>"


def test_a_list_needs_no_blank_line_before_it() -> None:
    assert own_words("Take:\n- wire\n- tape", 3) == (
        "<p>Take:</p>\n<ul>\n<li>wire</li>\n<li>tape</li>\n</ul>"
    )


def test_a_numbered_list() -> None:
    tags = [tag for tag, _attributes in read("1. wash\n2. dry").elements]
    assert tags == ["ol", "li", "li"]


def test_a_year_at_the_start_of_a_line_begins_no_list() -> None:
    assert own_words("It was\n2024. Then", 3) == "<p>It was\n2024. Then</p>"


@pytest.mark.parametrize("heading", [3, 4])
@pytest.mark.parametrize("text", ["# A", "## A", "###### A", "A\n=", "A\n---"])
def test_headings_of_every_rank_become_one(text: str, heading: int) -> None:
    assert own_words(text, heading) == f"<h{heading}>A</h{heading}>"


def test_a_link_to_the_web_stays_and_tells_the_other_side_nothing() -> None:
    assert own_words("[shop](https://shop.example/a?b=1&c=2)", 3) == (
        '<p><a href="https://shop.example/a?b=1&amp;c=2" rel="noopener noreferrer">shop</a></p>'
    )


def test_a_link_that_shows_its_address_is_marked_for_paper() -> None:
    assert 'class="bare"' in own_words("<https://shop.example/>", 3)
    assert 'class="bare"' not in own_words("[shop](https://shop.example/)", 3)


@pytest.mark.parametrize(
    "address",
    [
        "javascript:alert(1)",
        "JaVaScRiPt:alert(1)",
        "javascript&#58;alert(1)",
        "javascript&colon;alert(1)",
        "&#106;avascript:alert(1)",
        "java\tscript:alert(1)",
        "<javascript:alert(1)>",
        "  javascript:alert(1)",
        "data:text/html,<script>alert(1)</script>",
        "data:text/html;base64,PHNjcmlwdD4=",
        "vbscript:x",
        "file:///etc/passwd",
        "ftp://files.example/a",
        "mailto:ann@bench.example",
        "//evil.example/a",
        "\\\\evil.example\\a",
        "/root.html",
        "build.html",
        "#top",
        "http:evil.example",
        "https://",
        "http://[",
        "?a=b",
    ],
)
def test_of_a_link_that_leads_elsewhere_only_the_words_stay(address: str) -> None:
    reading = read(f"[words]({address})")
    assert unclean(reading) == []
    assert [tag for tag, _attributes in reading.elements if tag == "a"] == []
    assert "words" in reading.text


@pytest.mark.parametrize(
    "text", ["[words][x]\n\n[x]: javascript:alert(1)", "[words]\n\n[words]: data:text/html,x 'title'"]
)
def test_nor_is_an_address_taken_from_elsewhere_in_the_text(text: str) -> None:
    assert links(text) == []


def test_an_address_in_pointed_brackets_may_only_be_one_of_the_web() -> None:
    assert links("<javascript:alert(1)> <ann@bench.example> <https://a.example>") == ["https://a.example"]


@pytest.mark.parametrize(
    "html",
    [
        "<script>alert(1)</script>",
        "<SCRIPT SRC=https://evil.example/x.js></SCRIPT>",
        "<img src=x onerror=alert(1)>",
        "<svg onload=alert(1)>",
        "<div onclick='alert(1)'>\n\n*x*\n\n</div>",
        "<style>*{background:url(https://evil.example)}</style>",
        "<iframe src='https://evil.example'></iframe>",
        "<a href='javascript:alert(1)'>x</a>",
        "<b>bold</b>",
        "<p style='position:fixed'>x</p>",
        "<!-- a comment -->",
        "<![CDATA[x]]>",
        "<?php echo 1 ?>",
        "</div></main><h1>x</h1>",
        "<math><mtext></p><style><img src=x onerror=alert(1)></style>",
    ],
)
def test_html_is_shown_as_it_is_written(html: str) -> None:
    reading = read(html)
    assert unclean(reading) == []
    assert html.split("\n", maxsplit=1)[0] in reading.text


@pytest.mark.parametrize(
    ("text", "seen"),
    [
        ("AT&T & co", "AT&T & co"),
        ("1 < 2 > 0", "1 < 2 > 0"),
        ("&lt;script&gt;", "<script>"),
        ("&amp;lt;", "&lt;"),
        ("&#60;b&#62;", "<b>"),
        ("\"both\" 'kinds'", "\"both\" 'kinds'"),
        ("`<b>` in a code", "<b> in a code"),
        ("5 Ω ± 5 %", "5 Ω ± 5 %"),
    ],
)
def test_signs_are_escaped_once(text: str, seen: str) -> None:
    reading = read(text)
    assert reading.text == seen
    assert unclean(reading) == []


@pytest.mark.parametrize(
    "picture", ["![a lamp](x.jpg)", "![a lamp](https://evil.example/x.png 'T')", "![a lamp][x]\n\n[x]: y.jpg"]
)
def test_of_a_picture_the_words_stay(picture: str) -> None:
    reading = read(picture)
    assert reading.text == "a lamp"
    assert unclean(reading) == []


def test_a_quote_in_an_address_or_in_alternative_words_opens_no_attribute() -> None:
    for text in (
        '[a](https://a.example/"onclick="alert\\(1\\))',
        '![x" onerror="alert(1)](y.jpg)',
        '<https://a.example/"x="y>',
    ):
        assert unclean(read(text)) == []


def test_words_nested_beyond_all_sense_are_an_error_and_no_crash() -> None:
    with pytest.raises(OutputError, match="nests too deep"):
        own_words("1. " * 1000, 3)


@pytest.mark.parametrize("sign", [">", "> ", "*", "_a", "`", "<", "&#", "\\", "- ", "**a_"])
def test_a_thousand_signs_in_a_row_are_rendered(sign: str) -> None:
    assert unclean(read(sign * 1000)) == []


@given(
    st.lists(
        st.sampled_from(PIECES),
        max_size=25,
    )
)
def test_whatever_is_typed_nothing_unclean_comes_out(pieces: list[str]) -> None:
    assert unclean(read("".join(pieces))) == []
