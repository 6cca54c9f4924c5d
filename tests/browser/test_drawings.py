"""Every drawing in a real browser: no text on another, none cut off, no line through a word."""

from __future__ import annotations

import pytest

from guidegen.circuit.points import test_points as points_of
from guidegen.circuit.solve import solve
from guidegen.drawings.charts import draw_charts
from guidegen.drawings.schematic import draw_schematics
from tests.drawings.builds import AWKWARD, FEEDS, arrangement, run

RUNS = (1, 2, 4, 8, 12)

# All in CSS pixels of the picture at its own size.  Half a pixel of overlap is rounding.
READ = """
() => {
  const texts = [...document.querySelectorAll('text')].filter(t => t.textContent.trim()).map(t => {
    const b = t.getBoundingClientRect();
    return {words: t.textContent.trim(), left: b.left, right: b.right, top: b.top, bottom: b.bottom};
  });
  const frame = document.documentElement.getBoundingClientRect();
  return {texts, frame: {left: frame.left, right: frame.right, top: frame.top, bottom: frame.bottom}};
}
"""
# A stroke runs through a word when a place along it lies inside the word's letters: the middle
# half of its height, since a box of text has room for accents above and tails below.
CROSSED = """
() => {
  const boxes = [...document.querySelectorAll('text')].filter(t => t.textContent.trim()).map(t => {
    const b = t.getBoundingClientRect();
    const air = b.height * 0.2;
    return {words: t.textContent.trim(), left: b.left + 0.5, right: b.right - 0.5,
            top: b.top + air, bottom: b.bottom - air};
  });
  const found = new Set();
  for (const stroke of document.querySelectorAll('path, polygon, ellipse, circle, line, polyline')) {
    if (stroke.closest('defs') || getComputedStyle(stroke).stroke === 'none') continue;
    const matrix = stroke.getScreenCTM();
    const length = stroke.getTotalLength();
    for (let along = 0; along <= length; along += 2) {
      const place = stroke.getPointAtLength(along).matrixTransform(matrix);
      const {x, y} = place;
      for (const b of boxes)
        if (x > b.left && x < b.right && y > b.top && y < b.bottom) found.add(b.words);
    }
  }
  return [...found];
}
"""


def build(feeds, runs: int, name: str = AWKWARD):
    """So many runs, their feeds in turn, strings of many lengths among them."""
    bulbs = (24, 120, 6, 50)
    return arrangement(
        *[
            run(feeds[i % len(feeds)], bulbs=bulbs[i % 4], name=name, half=i % 5 == 4, feeder=i % 7 != 6)
            for i in range(runs)
        ]
    )


def schematics(plan):
    """Every figure of the schematic."""
    return draw_schematics(plan, solve(plan), points_of(plan))


def pictures(plan):
    """Every schematic and chart of an arrangement, the charts with a band."""
    solution = solve(plan)
    band = [(solved.light * 0.9, solved.light) for solved in solution.runs]
    yield from draw_schematics(plan, solution, points_of(plan))
    yield from draw_charts(plan, solution, 0.5, band)


def overlapping(texts) -> list[tuple[str, str]]:
    """Pairs of lines that share more than half a pixel either way."""
    return [
        (a["words"], b["words"])
        for place, a in enumerate(texts)
        for b in texts[place + 1 :]
        if min(a["right"], b["right"]) - max(a["left"], b["left"]) > 0.5
        and min(a["bottom"], b["bottom"]) - max(a["top"], b["top"]) > 0.5
    ]


def outside(texts, frame) -> list[str]:
    """Lines that leave the picture."""
    return [
        text["words"]
        for text in texts
        if text["left"] < frame["left"]
        or text["right"] > frame["right"]
        or text["top"] < frame["top"]
        or text["bottom"] > frame["bottom"]
    ]


@pytest.fixture
def page(browser):
    """A page as large as any picture."""
    context = browser.new_context(viewport={"width": 720, "height": 1200})
    yield context.new_page()
    context.close()


def assert_readable(page, tmp_path, shown):
    """Open every picture by itself, as a file, and look at its words."""
    for picture in shown:
        file = tmp_path / f"{picture.id}.svg"
        file.write_text(picture.svg, encoding="utf-8")
        page.goto(file.as_uri())
        read = page.evaluate(READ)
        assert len(read["texts"]) > 10
        assert overlapping(read["texts"]) == [], picture.id
        assert outside(read["texts"], read["frame"]) == [], picture.id
        assert page.evaluate(CROSSED) == [], picture.id


@pytest.mark.parametrize("feed", FEEDS)
@pytest.mark.parametrize("runs", RUNS)
def test_schematics_are_readable(page, tmp_path, feed, runs):
    assert_readable(page, tmp_path, schematics(build((feed,), runs)))


@pytest.mark.parametrize("runs", RUNS)
def test_schematics_and_charts_of_mixed_feeds_are_readable(page, tmp_path, runs):
    assert_readable(page, tmp_path, pictures(build(FEEDS, runs)))


@pytest.mark.parametrize("name", ["W" * 40, "灯" * 40, "i" * 60, "x"])
def test_names_of_any_width_keep_to_their_room(page, tmp_path, name):
    assert_readable(page, tmp_path, pictures(build(FEEDS, 8, name)))


def test_higher_volts_and_five_digit_bulbs_keep_to_their_tags(page, tmp_path):
    plan = arrangement(run("middle", bulbs=10_000), run("both ends", bulbs=1), volts=59.5)
    assert_readable(page, tmp_path, pictures(plan))


def test_the_checks_see_a_fault(page, tmp_path):
    """Two words on one another, one outside, one crossed."""
    svg = (
        '<svg xmlns="http://www.w3.org/2000/svg" width="200" height="100" viewBox="0 0 200 100">'
        '<text x="10" y="50">first</text><text x="15" y="52">second</text><text x="190" y="90">out</text>'
        '<path d="M 0 46 L 60 46" style="stroke:black"/></svg>'
    )
    file = tmp_path / "faulty.svg"
    file.write_text(svg, encoding="utf-8")
    page.goto(file.as_uri())
    read = page.evaluate(READ)
    assert overlapping(read["texts"]) == [("first", "second")]
    assert outside(read["texts"], read["frame"]) == ["out"]
    assert "first" in page.evaluate(CROSSED)
