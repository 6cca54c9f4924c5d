"""A guide with the maker's photos, words and steps, in a browser."""

from __future__ import annotations

import io
from pathlib import Path

import pytest

from guidegen.build import build
from tests.browser.checks import axe_findings, html_faults, requests_outside, too_wide
from tests.browser.surfing import DESKTOP, PAPER, PHONE
from tests.build.test_own import write_project

PAGES = ("index.html", "build.html")
LOOKS = {
    "light": {"color_scheme": "light"},
    "dark": {"color_scheme": "dark"},
    "phone": {"viewport": PHONE},
    "print": {"media": "print", "viewport": PAPER},
}
LONG = "an-address-without-any-place-to-break-it-" * 4
OWN = f"""
steps:
  - before: hang
    title: Paint the hooks
    text: Twice. See <https://shop.example/{LONG}>.
    note: "`{LONG}`"
    photo: {{file: photos/unlit.png, alt: Hooks}}
  - {{after: hang, title: Sweep up, text: "- wire-ends\\n- drops-of-tin"}}
photos:
  cover: {{file: lit.jpg, alt: Both rows}}
  lit: {{file: lit.jpg, alt: Lit}}
  unlit: {{file: photos/unlit.png, alt: Dark}}
story: "# Why\\n> quoted {LONG}\\n\\n1. one\\n2. two"
licence: CC BY 4.0
"""


@pytest.fixture(scope="module")
def own_guide(tmp_path_factory) -> Path:
    """A guide with photos wide and tall, long addresses, and steps of the maker's own."""
    folder = tmp_path_factory.mktemp("own")
    build(write_project(folder / "project", OWN), folder / "guide")
    return folder / "guide"


@pytest.mark.parametrize("name", PAGES)
@pytest.mark.parametrize("look", LOOKS)
def test_axe_finds_nothing(opened, own_guide, name, look):
    with opened(own_guide / name, **LOOKS[look]) as page:
        assert axe_findings(page) == []


def test_the_html_is_valid(own_guide):
    assert html_faults([own_guide / name for name in PAGES]) == []


@pytest.mark.parametrize("name", PAGES)
@pytest.mark.parametrize(
    ("media", "window"),
    [("screen", PHONE), ("screen", {"width": 320, "height": 640}), ("screen", DESKTOP), ("print", PAPER)],
    ids=["phone", "page zoomed to 400 %", "desktop", "paper"],
)
def test_nothing_reaches_over_the_edge(opened, own_guide, name, media, window):
    with opened(own_guide / name, media=media, viewport=window) as page:
        assert too_wide(page) == []


@pytest.mark.parametrize("name", PAGES)
def test_no_request_leaves_the_page(opened, own_guide, name):
    with opened(own_guide / name) as page:
        assert requests_outside(page, own_guide) == []
        assert page.complaints == []


@pytest.mark.parametrize("window", [PHONE, DESKTOP], ids=["phone", "desktop"])
@pytest.mark.parametrize("name", PAGES)
def test_photos_have_their_room_before_they_have_come(opened, own_guide, name, window):
    """The page is as long without its photos as with them."""
    with opened(own_guide / name, viewport=window) as page:
        page.wait_for_load_state("networkidle")
        whole = page.evaluate("document.documentElement.scrollHeight")
        waiting = []
        page.route("**/photos/*", lambda route: waiting.append(route))  # noqa: PLW0108 - playwright marks it
        page.reload(wait_until="domcontentloaded")
        assert page.evaluate("document.documentElement.scrollHeight") == whole
        assert waiting
        for route in waiting:
            route.abort()


def test_photos_keep_their_shape(opened, own_guide):
    with opened(own_guide / "index.html") as page:
        for photo in page.locator(".photo img").all():
            shown, true = photo.evaluate(
                "p => [p.clientWidth / p.clientHeight, p.naturalWidth / p.naturalHeight]"
            )
            assert shown == pytest.approx(true, rel=0.02)  # whole pixels


def test_lit_and_unlit_stand_beside_each_other_even_on_a_phone(opened, own_guide):
    with opened(own_guide / "index.html", viewport=PHONE) as page:
        lit, unlit = (photo.bounding_box() for photo in page.locator(".views .photo").all())
        assert lit["y"] == unlit["y"]
        assert lit["x"] + lit["width"] <= unlit["x"]


def test_an_own_step_is_ticked_off_counted_and_remembered(opened, own_guide):
    with opened(own_guide / "build.html") as page:
        steps = page.locator(".step").count()
        page.locator("#own-sweep-up input[type=checkbox]").check()
        assert page.locator("[data-progress] .count").inner_text() == f"1 of {steps} steps done"
        page.reload()
        assert page.locator("#own-sweep-up input[type=checkbox]").is_checked()


def test_the_next_step_to_do_may_be_an_own_one(opened, own_guide):
    with opened(own_guide / "build.html") as page:
        for tick in page.locator(".step:not(.own-step) input[type=checkbox]").all():
            tick.check()
        assert page.locator("[data-progress] a").get_attribute("href") == "#own-paint-the-hooks"


def test_the_number_of_a_step_puts_its_id_into_the_address(opened, own_guide):
    with opened(own_guide / "build.html") as page:
        page.locator("#fuse-in .step-number a").click()
        assert page.url.endswith("build.html#fuse-in")


def test_a_keyboard_does_not_stop_at_the_numbers(opened, own_guide):
    with opened(own_guide / "build.html") as page:
        assert page.locator(".step-number a:not([tabindex='-1'])").count() == 0


def test_paper_shows_where_a_link_leads_once(opened, own_guide):
    from pypdf import PdfReader

    with opened(own_guide / "build.html", media="print") as page:
        text = "".join(sheet.extract_text() for sheet in PdfReader(io.BytesIO(page.pdf(format="A4"))).pages)
    assert "".join(text.split()).count(f"https://shop.example/{LONG}") == 1


@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_an_own_step_is_not_split_on_paper(opened, own_guide, paper):
    from pypdf import PdfReader

    with opened(own_guide / "build.html", media="print") as page:
        sheets = PdfReader(io.BytesIO(page.pdf(format=paper))).pages
    texts = ["".join(sheet.extract_text().split()) for sheet in sheets]
    (sheet,) = [text for text in texts if "Sweepup" in text]
    assert "wire-ends" in sheet
    assert "drops-of-tin" in sheet
