"""The link check: what counts as broken, and what as right."""

from __future__ import annotations

import pytest

from guidegen.errors import OutputError
from guidegen.publish.links import check_links

GOOD = {
    "index.html": '<main id="main"><a href="b.html#part">b</a></main>',
    "b.html": '<h2 id="part">part</h2><img src="drawings/a.svg" alt="a">',
    "css/style.css": "body { background: url(../drawings/a.svg) }",
    "drawings/a.svg": '<svg xmlns="http://www.w3.org/2000/svg"><g id="g"/><g clip-path="url(#g)"/></svg>',
}


@pytest.fixture
def check(tmp_path):
    """Check a good site with these files put in or changed; returns the fault lines."""

    def run(**changed: str) -> list[str]:
        names = {"css": "css/style.css", "svg": "drawings/a.svg"}
        files = GOOD | {names.get(key, f"{key}.html"): text for key, text in changed.items()}
        for name, text in files.items():
            path = tmp_path / name
            path.parent.mkdir(exist_ok=True)
            path.write_text(text)
        try:
            check_links(tmp_path)
        except OutputError as error:
            return [line.strip() for line in error.format_message().splitlines()[1:]]
        return []

    return run


@pytest.mark.parametrize(
    "markup",
    [
        '<a href="b.html">b</a>',
        '<a href="#x">x</a><p id="x">',
        '<a href="#">top</a>',
        '<a href="#top">top</a>',
        '<a href="https://example.org/datasheet">source</a>',
        '<a href="mailto:someone@example.org">write</a>',
        '<img src="data:image/gif;base64,R0lGODlhAQABAAAAACw=" alt="">',
        '<img src="drawings%2Fa.svg" srcset="drawings/a.svg 1x, drawings/a.svg 2x" alt="">',
        '<p title="url(gone.png)">url(gone.png) href="gone.html"</p>',
        '<label for="x">x</label><input id="x" aria-describedby="x y"><p id="y">',
        '<svg><use href="#g"/><g id="g"/></svg>',
        '<!-- <a href="gone.html"> --><script>var a = "<a href=gone.html>"</script>',
        "<style>p { background: url('drawings/a.svg') } /* url(gone.png) */</style>",
    ],
)
def test_what_resolves_is_right(check, markup):
    assert check(index=markup) == []


@pytest.mark.parametrize(
    ("markup", "named"),
    [
        ('<a href="gone.html">x</a>', "'gone.html' is not a file"),
        ('<a href="B.html">x</a>', "'B.html' is not a file"),
        ('<a href="b.html#gone">x</a>', "'b.html#gone' names a place that b.html does not have"),
        ('<a href="#gone">x</a>', "'#gone' names a place that index.html does not have"),
        ('<a href="drawings/">x</a>', "'drawings/' is not a file"),
        ('<a href="../index.html">x</a>', "'../index.html' is not a file"),
        ('<a href="/index.html">x</a>', "'/index.html' is not a file"),
        ('<a href="file:///index.html">x</a>', "'file:///index.html' leads out"),
        ('<a href="javascript:alert(1)">x</a>', "'javascript:alert(1)' leads out"),
        ('<a href="data:text/html,x">x</a>', "'data:text/html,x' leads out"),
        ('<img src="gone.png">', "'gone.png' is not a file"),
        ('<img src="https://example.org/a.png">', "'https://example.org/a.png' leads out"),
        ('<img src="//example.org/a.png">', "'//example.org/a.png' leads out"),
        ('<img srcset="drawings/a.svg 1x, gone.png 2x">', "'gone.png' is not a file"),
        ('<script src="http://example.org/a.js"></script>', "'http://example.org/a.js' leads out"),
        ('<link rel="stylesheet" href="https://example.org/a.css">', "'https://example.org/a.css' leads out"),
        ('<form action="https://example.org/"></form>', "'https://example.org/' leads out"),
        ('<label for="gone">x</label>', "'#gone' names a place"),
        ('<p aria-describedby="main gone" id="main">', "'#gone' names a place"),
        ('<svg><use xlink:href="#gone"/></svg>', "'#gone' names a place"),
        ('<svg><g clip-path="url(#gone)"/></svg>', "'#gone' names a place"),
        ('<p style="background: url(gone.png)">', "'gone.png' is not a file"),
        ("<style>@import 'gone.css';</style>", "'gone.css' is not a file"),
        ('<style>@font-face { src: url("https://example.org/a.woff") }</style>', "leads out"),
        ('<p id="x"><p id="x">', "the id 'x' comes up twice"),
    ],
)
def test_what_does_not_resolve_is_named(check, markup, named):
    faults = check(index=markup)
    assert len(faults) == 1
    assert faults[0].startswith("index.html: ")
    assert named in faults[0]


def test_a_style_sheet_is_read_from_its_own_folder(check):
    assert check(css="body { background: url(drawings/a.svg) }") == [
        "css/style.css: 'drawings/a.svg' is not a file of the guide"
    ]


@pytest.mark.parametrize(
    ("inner", "named"),
    [
        ('<g clip-path="url(#gone)"/>', "'#gone' names a place"),
        ('<image href="gone.png"/>', "'gone.png' is not a file"),
        ("<style>g { fill: url(#gone) }</style>", "'#gone' names a place"),
    ],
)
def test_a_drawing_is_checked_too(check, inner, named):
    (fault,) = check(svg=f'<svg xmlns="http://www.w3.org/2000/svg">{inner}</svg>')
    assert named in fault


def test_text_in_a_drawing_is_no_reference(check):
    assert check(svg='<svg xmlns="http://www.w3.org/2000/svg"><text>url(gone.png)</text></svg>') == []


def test_a_drawing_that_is_not_xml_is_an_error(tmp_path):
    (tmp_path / "a.svg").write_text("<svg><text>A & B</text></svg>")
    with pytest.raises(OutputError, match=r"a\.svg is not well-formed"):
        check_links(tmp_path)
