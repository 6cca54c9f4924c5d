"""The checks themselves: each finds the fault that it is for."""

from __future__ import annotations

import pytest

from tests.browser.checks import (
    axe_findings,
    html_faults,
    requests_outside,
    text_outside,
    text_overlaps,
    too_wide,
)
from tests.browser.surfing import PHONE
from tests.publish.sample import publish_text

HEAD = '<!doctype html><html lang="en"><head><meta charset="utf-8"><title>t</title></head><body>'
DRAWING = '<svg xmlns="http://www.w3.org/2000/svg" width="200" height="100" font-size="10">{}</svg>'


@pytest.fixture
def written(tmp_path, opened):
    """Open a file with this text."""

    def write_and_open(text: str, name: str = "page.html", **options):
        path = tmp_path / name
        path.write_text(text)
        return opened(path, **options)

    return write_and_open


def test_texts_on_one_another_are_found(written):
    texts = (
        '<text x="10" y="20">first</text><text x="20" y="22">second</text><text x="10" y="60">third</text>'
    )
    with written(DRAWING.format(texts), "drawing.svg") as page:
        assert text_overlaps(page) == ['"first" on "second"']


def test_texts_below_one_another_are_right(written):
    texts = '<text x="10" y="20">first</text><text x="10" y="31">second</text>'
    with written(HEAD + DRAWING.format(texts)) as page:
        assert text_overlaps(page) == []


def test_texts_of_two_drawings_are_not_compared(written):
    drawing = DRAWING.format('<text x="10" y="20">first</text>')
    with written(f'{HEAD}<div>{drawing}</div><div style="margin-top: -100px">{drawing}</div>') as page:
        assert text_overlaps(page) == []


def test_a_text_cut_off_by_its_drawing_is_found(written):
    texts = '<text x="10" y="20">inside</text><text x="190" y="50">reaches out</text>'
    with written(DRAWING.format(texts), "drawing.svg") as page:
        assert text_outside(page) == ["reaches out"]


def test_what_is_wider_than_the_window_is_found(written):
    with written(HEAD + '<p class="wide" style="width: 500px">wide</p>', viewport=PHONE) as page:
        (fault,) = too_wide(page)
        assert fault == "p.wide"


def test_a_request_to_the_network_is_found(written, tmp_path):
    with written(HEAD + '<img src="http://127.0.0.1:9/a.png" alt="">') as page:
        assert requests_outside(page, tmp_path) == ["http://127.0.0.1:9/a.png"]


def test_a_complaint_on_the_console_is_found(written):
    with written(HEAD + "<script>throw new Error('broken')</script>") as page:
        assert page.complaints == ["broken"]


def test_axe_finds_a_picture_without_a_text(written):
    with written(
        HEAD + '<main><h1>t</h1><img src="data:image/gif;base64,R0lGODlhAQABAAAAACw="></main>'
    ) as page:
        assert [finding.split(":")[0] for finding in axe_findings(page)] == ["image-alt"]


def test_axe_finds_faint_text(written):
    with written(HEAD + '<main><h1>t</h1><p style="color: #999; background: #fff">faint</p></main>') as page:
        assert [finding.split(":")[0] for finding in axe_findings(page)] == ["color-contrast"]


def test_invalid_html_is_found(tmp_path):
    (tmp_path / "page.html").write_text(HEAD + "<p><div>in a paragraph</div></p>")
    (fault,) = html_faults([tmp_path / "page.html"])
    assert "No “p” element in scope" in fault


def test_the_pages_of_the_test_theme_pass(opened, tmp_path):
    guide = publish_text(tmp_path / "guide").folder
    for path in guide.glob("*.html"):
        with opened(path, viewport=PHONE) as page:
            assert axe_findings(page) + too_wide(page) + page.complaints == []
            assert requests_outside(page, guide) == []
    assert html_faults(guide.glob("*.html")) == []
