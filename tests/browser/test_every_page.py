"""What holds for every page and drawing of the sample guide."""

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
from tests.browser.surfing import DESKTOP, PAPER, PHONE

LOOKS = {
    "light": {"color_scheme": "light"},
    "dark": {"color_scheme": "dark"},
    "phone": {"viewport": PHONE},
}


@pytest.fixture
def on_every_page(opened, guide, page_names):
    """Put every page to a check; returns what was found by page, so {} when all is well."""

    def run(check, **options) -> dict[str, list[str]]:
        found = {}
        for name in page_names:
            with opened(guide / name, **options) as page:
                found[name] = check(page)
        assert len(found) >= 8  # the pages of the guide that the design names
        return {name: faults for name, faults in found.items() if faults}

    return run


@pytest.mark.parametrize("look", LOOKS)
def test_axe_finds_nothing(on_every_page, look):
    assert on_every_page(axe_findings, **LOOKS[look]) == {}


def test_no_request_leaves_the_page(on_every_page, guide):
    assert on_every_page(lambda page: requests_outside(page, guide)) == {}


def test_the_console_stays_silent(on_every_page):
    assert on_every_page(lambda page: page.complaints) == {}


@pytest.mark.parametrize(
    ("media", "window"),
    [("screen", PHONE), ("screen", {"width": 320, "height": 640}), ("screen", DESKTOP), ("print", PAPER)],
    ids=["phone", "page zoomed to 400 %", "desktop", "paper"],
)
def test_nothing_reaches_over_the_edge(on_every_page, media, window):
    assert on_every_page(too_wide, media=media, viewport=window) == {}


@pytest.mark.parametrize("window", [PHONE, DESKTOP], ids=["phone", "desktop"])
def test_no_text_of_a_drawing_in_a_page_lies_on_another(on_every_page, window):
    assert on_every_page(lambda page: text_overlaps(page) + text_outside(page), viewport=window) == {}


def test_no_text_of_a_drawing_file_lies_on_another(opened, guide):
    faults = {}
    for path in sorted(guide.rglob("*.svg")):
        with opened(path) as page:
            faults[path.name] = text_overlaps(page) + text_outside(page)
    assert faults
    assert {name: found for name, found in faults.items() if found} == {}


def headings(page) -> list[str]:
    """The headings that a reader sees."""
    seen = "found => found.filter(h => h.checkVisibility()).map(h => h.innerText)"
    return page.locator("h1, h2, h3").evaluate_all(seen)


def test_every_heading_is_there_without_javascript(opened, guide, page_names):
    for name in page_names:
        with opened(guide / name) as page:
            expected = headings(page)
        with opened(guide / name, java_script_enabled=False) as page:
            assert headings(page) == expected
        assert expected, f"{name} has no heading"


def test_every_picture_is_shown_and_has_a_text_equivalent(on_every_page):
    broken = (
        "() => [...document.images].filter(i => !i.naturalWidth || !i.hasAttribute('alt')).map(i => i.src)"
    )

    def look_for_broken(page) -> list[str]:
        # Pictures far down are loaded late: come near them first.
        page.evaluate("() => [...document.images].forEach(i => { i.loading = 'eager' })")
        page.wait_for_load_state("networkidle")
        return page.evaluate(broken)

    assert on_every_page(look_for_broken) == {}


def test_the_html_is_valid(guide, page_names):
    assert html_faults(guide / name for name in page_names) == []


@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_every_page_prints_with_its_heading_first(on_every_page, tmp_path, paper):
    from pypdf import PdfReader

    def heading_missing(page) -> list[str]:
        path = tmp_path / "page.pdf"
        page.pdf(path=path, format=paper)
        text = " ".join(PdfReader(path).pages[0].extract_text().split())
        heading = " ".join(page.locator("h1").first.inner_text().split())
        return [] if heading in text else [heading]

    assert on_every_page(heading_missing) == {}
