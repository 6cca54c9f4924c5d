"""A German guide in the browser: readings typed as Germans type them, and every number in its form."""

from __future__ import annotations

import re

import pytest

from guidegen.build import build
from tests.browser.surfing import PHONE, ROOT

SAMPLE = ROOT / "sample_project" / "potting-bench.yaml"


@pytest.fixture(scope="module")
def german_guide(tmp_path_factory):
    folder = tmp_path_factory.mktemp("german")
    for photo in SAMPLE.parent.glob("*.png"):
        (folder / photo.name).write_bytes(photo.read_bytes())
    file = folder / SAMPLE.name
    file.write_text("language: de\n" + SAMPLE.read_text(encoding="utf-8"), encoding="utf-8")
    build(file, folder / "guide")
    return folder / "guide"


def test_a_reading_typed_with_a_comma_is_judged_in_german(opened, german_guide):
    with opened(german_guide / "readings.html") as page:
        row = page.locator(".reading").first
        low, high = float(row.get_attribute("data-low")), float(row.get_attribute("data-high"))
        for typed, said in (((low + high) / 2, "im Bereich"), (low - 2, "zu niedrig"), (high + 2, "zu hoch")):
            page.locator(".reading input").first.fill(f"{typed:.2f} V".replace(".", ","))
            assert page.locator(".judgement").first.inner_text().strip() == said


def test_what_is_no_number_is_told_in_german(opened, german_guide):
    with opened(german_guide / "readings.html") as page:
        page.locator(".reading input").first.fill("viel")
        assert page.locator(".judgement").first.inner_text().strip() == "keine Zahl"


def test_readings_filled_in_are_counted_in_german(opened, german_guide):
    with opened(german_guide / "readings.html") as page:
        page.locator(".reading input").first.fill("5,1")
        assert "1 von " in page.locator("[data-tally] .count").inner_text()


@pytest.mark.parametrize("name", ["readings.html", "light.html", "wiring.html", "hanging.html"])
def test_no_number_has_a_decimal_point(opened, german_guide, name):
    """Clauses of standards, as in 60364-4-41 cl. 414.4, are no numbers: they have no unit behind them."""
    with opened(german_guide / name) as page:
        text = page.locator("body").inner_text()
    assert re.findall(r"\d\.\d+\s(?:V|mA|A|Ω|W|mW|cm|m|mm²|%|€)(?!\w)", text) == []


def test_the_narrow_page_does_not_scroll_sideways(opened, german_guide):
    for path in sorted(german_guide.glob("*.html")):
        with opened(path, viewport=PHONE) as page:
            assert page.evaluate("document.documentElement.scrollWidth") <= PHONE["width"], path.name


@pytest.mark.parametrize("width", [360, 740, 768, 1024, 1100, 1280])
def test_the_long_heads_of_arrangements_fit(opened, german_guide, width):
    with opened(german_guide / "arrangements.html", viewport={"width": width, "height": 900}) as page:
        over = "[...document.querySelectorAll('.table')].map(each => each.scrollWidth - each.clientWidth)"
        assert set(page.evaluate(over)) == {0}
