"""Step pictures in a real browser: no text on another, none cut off, no line through a word."""

from __future__ import annotations

import pytest

from tests.browser.test_drawings import CROSSED, READ, outside, overlapping
from tests.drawings.step_builds import every_feed, project, step_pictures, studied
from tests.guide.projects import fed

BUILDS = {
    "one bulb": lambda: every_feed(1),
    "two bulbs": lambda: every_feed(2),
    "cut and joined, outdoors": lambda: every_feed(
        31, place__exposure="open outdoors", supply__stands="outdoors", supply__ip="IPX4"
    ),
    "many bulbs": lambda: project(
        fed("middle", 1100, resistor="1 ohm", resistor_rating="50 W"),
        strings__drop__bulbs=400,
        strings__drop__wire={"area": "4 mm2"},
        supply__rated_current="60 A",
    ),
    "no feeder": lambda: project(
        *[{**fed(feed, 12, name=feed), "feeder": None} for feed in ("one end", "opposite ends")]
    ),
    "no resistor": lambda: project(
        *[fed("one end", 12, name=f"rail {number}", resistor="none") for number in range(2)],
        strings__drop__leds_in_series=3,
        strings__drop__group_resistor="560 ohm",
        supply__voltage="12 V",
    ),
    "eight runs": lambda: project(*[fed("middle", 12, name=f"rail {number}") for number in range(8)]),
}


@pytest.fixture
def page(browser):
    context = browser.new_context(viewport={"width": 720, "height": 600})
    yield context.new_page()
    context.close()


@pytest.mark.parametrize("build", BUILDS)
def test_step_pictures_are_readable(page, tmp_path, build):
    file = tmp_path / "step.svg"
    faults = {}
    for picture_id, picture in step_pictures(studied(BUILDS[build]())).items():
        file.write_text(picture.svg, encoding="utf-8")
        page.goto(file.as_uri())
        read = page.evaluate(READ)
        found = [*overlapping(read["texts"]), *outside(read["texts"], read["frame"]), *page.evaluate(CROSSED)]
        if found:
            faults[picture_id] = found
    assert faults == {}
