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
from tests.browser.surfing import DESKTOP, PAPER, PHONE, TABLET

LOOKS = {
    "light": {"color_scheme": "light"},
    "dark": {"color_scheme": "dark"},
    "phone": {"viewport": PHONE},
    "dark phone": {"viewport": PHONE, "color_scheme": "dark"},
    "print": {"media": "print", "viewport": PAPER},
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
    [
        ("screen", PHONE),
        ("screen", TABLET),
        ("screen", {"width": 320, "height": 640}),
        ("screen", DESKTOP),
        ("print", PAPER),
    ],
    ids=["phone", "tablet", "page zoomed to 400 %", "desktop", "paper"],
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
        inside = page.locator(".set-sheet .block-title")
        shown = (inside if inside.count() else page.locator("h1")).first
        heading = " ".join(shown.inner_text().split())
        return [] if heading in text else [heading]

    assert on_every_page(heading_missing) == {}


_MOVED = """() => new Promise(done => {
  let sum = 0;
  new PerformanceObserver(list => list.getEntries().forEach(entry => { sum += entry.value; }))
    .observe({type: 'layout-shift', buffered: true});
  setTimeout(() => done(sum), 150);
})"""


@pytest.mark.parametrize("window", [PHONE, TABLET, DESKTOP], ids=["phone", "tablet", "desktop"])
def test_nothing_moves_while_a_page_loads(on_every_page, window):
    def moved(page) -> list[str]:
        shift = page.evaluate(_MOVED)
        # 0.1 is what the Web Vitals call good; nothing of ours has a reason to move at all.
        return [str(shift)] if shift > 0.01 else []

    assert on_every_page(moved, viewport=window) == {}


def test_whatever_takes_the_focus_shows_it_and_follows_the_order_of_reading(on_every_page):
    """WCAG 2.2, 2.4.3 and 2.4.7: an outline or a moved-in link at each of the first twenty stops."""

    def unseen(page) -> list[str]:
        faults, before = [], -1.0
        for _stop in range(20):
            page.keyboard.press("Tab")
            told = page.evaluate(
                """() => { const e = document.activeElement, box = e.getBoundingClientRect();
                     const all = [...document.querySelectorAll('*')];
                     return {at: all.indexOf(e), body: e === document.body, text: e.outerHTML.slice(0, 60),
                             outline: parseFloat(getComputedStyle(e).outlineWidth), height: box.height}; }"""
            )
            if told["body"]:
                break
            if told["outline"] < 2 or not told["height"] or told["at"] <= before:
                faults.append(told["text"])
            before = told["at"]
        return faults

    assert on_every_page(unseen) == {}


def test_a_link_to_a_step_is_not_hidden_by_what_stays_at_the_top(opened, guide):
    with opened(guide / "build.html") as page:
        step = page.locator(".step").nth(9)
        page.goto(f"{page.url}#{step.get_attribute('id')}")
        page.wait_for_timeout(100)
        bar = page.locator("[data-progress]").bounding_box()
        assert step.bounding_box()["y"] >= bar["y"] + bar["height"] - 1
        assert bar["y"] == 0


def test_the_step_that_is_read_is_told_and_marked(opened, guide):
    with opened(guide / "build.html") as page:
        step = page.locator(".step").nth(9)
        page.goto(f"{page.url}#{step.get_attribute('id')}")
        page.locator(".bulbs i.here").wait_for()
        assert "step 10:" in page.locator(".here-line").inner_text()
        assert (
            page.evaluate("[...document.querySelectorAll('.bulbs i')].findIndex(i => i.matches('.here'))")
            == 9
        )


@pytest.mark.parametrize(("window", "most"), [(DESKTOP, 1100), (PHONE, 2200)], ids=["desktop", "phone"])
def test_a_step_takes_little_more_than_a_window(opened, guide, window, most):
    """Pixels a step on average; a single column of roomy boxes took 1230 and 2253."""
    with opened(guide / "build.html", viewport=window) as page:
        height = page.evaluate("document.documentElement.scrollHeight")
        assert height / page.locator(".step").count() < most
