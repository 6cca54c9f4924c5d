"""Plan and side view in the browser: no words over each other or out of the picture, whatever the hooks."""

from __future__ import annotations

import math
from pathlib import Path

import pytest

from guidegen.drawings.plan import draw_plan
from guidegen.hanging.advice import supply_paths
from guidegen.hanging.make import hanging_plan
from guidegen.study import study
from tests.browser.test_drawings import READ, outside, overlapping
from tests.guide.projects import changed, fed, make

ROOT = Path(__file__).parents[2]
FILES = (ROOT / "tests" / "examples" / "l-shape.yaml", ROOT / "sample_project" / "potting-bench.yaml")
OPPOSITE = [fed("opposite ends", 12)]
TWO = [fed("middle", 12), {**fed("both ends", 12), "name": "sill"}]


def hooks(*places: tuple[float, float]) -> list[dict[str, str]]:
    return [{"x": f"{x} m", "y": f"{y} m"} for x, y in places]


def circle(count: int, radius: float) -> list[dict[str, str]]:
    turns = [2 * math.pi * k / count for k in range(count)]
    return hooks(*((round(radius * math.cos(t), 3), round(radius * math.sin(t), 3)) for t in turns))


PLANS = {
    "one span": (OPPOSITE, [{"spans": ["2.5 m"]}]),
    "uneven spans": (OPPOSITE, [{"spans": ["0.3 m", "2 m", "0.5 m", "1 m"]}]),
    "many hooks": (OPPOSITE, [{"spans": ["10 cm"] * 40}]),
    "two rows by spans": (
        TWO,
        [{"runs": ["shelf"], "spans": ["1.5 m"] * 2}, {"runs": ["sill"], "spans": ["1 m", "2 m"]}],
    ),
    "upwards": (OPPOSITE, [{"hooks": hooks((0, 0), (0, 1.5), (0, 3))}]),
    "a zigzag": (TWO, [{"hooks": hooks((0, 0), (1, 1.2), (2, 0), (3, 1.2), (4, 0), (5, 1.2))}]),
    "a square": (TWO, [{"hooks": hooks((0, 0), (2, 0), (2, 2), (0, 2), (0, 0.2))}]),
    "a circle": (TWO, [{"hooks": circle(10, 1.1)}]),
    "slanting": (OPPOSITE, [{"hooks": hooks((0, 0), (1, 0.8), (2.2, 1.5))}]),
}


def readable(page, tmp_path: Path, pictures) -> None:
    for picture in pictures:
        file = tmp_path / f"{picture.id}.svg"
        file.write_text(picture.svg, encoding="utf-8")
        page.goto(file.as_uri())
        read = page.evaluate(READ)
        assert overlapping(read["texts"]) == [], picture.id
        assert outside(read["texts"], read["frame"]) == [], picture.id


@pytest.fixture
def page(browser):
    context = browser.new_context(viewport={"width": 720, "height": 1200})
    yield context.new_page()
    context.close()


def drawn(project, arrangement):
    plan = hanging_plan(project, arrangement)
    assert plan is not None
    return draw_plan(plan, arrangement, supply_paths(project, arrangement, plan))


@pytest.mark.parametrize("name", PLANS)
@pytest.mark.parametrize("supply_at", ["start", "middle", "1 m"])
def test_the_plan_is_readable(page, tmp_path, name, supply_at) -> None:
    runs, lines = PLANS[name]
    project = changed(runs=runs, hanging={"sag": "6 cm", "lines": lines})
    project["place"] = {**project["place"], "supply_at": supply_at}
    matter = make(project).matter
    readable(
        page,
        tmp_path,
        drawn(matter.project, matter.arrangement),
    )


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem)
def test_the_plans_of_the_examples_are_readable(page, tmp_path, path) -> None:
    found = study(path)
    assert found.solved is not None
    readable(page, tmp_path, drawn(found.project, found.solved.arrangement))


@pytest.mark.parametrize("name", ["W" * 40, "灯" * 40, "<b>&"])
def test_names_of_any_width_keep_to_their_room(page, tmp_path, name) -> None:
    runs = [{**fed("one end", 12), "name": name}]
    matter = make(
        changed(runs=runs, hanging={"sag": "6 cm", "lines": [{"spans": ["1.5 m", "1.5 m"]}]})
    ).matter
    readable(
        page,
        tmp_path,
        drawn(matter.project, matter.arrangement),
    )
