"""Small charts of arrangements: one scale, the numbers of the solution, words for those who see none."""

from __future__ import annotations

import re
import xml.etree.ElementTree as ET
from pathlib import Path

import pytest

from guidegen.choose.choice import Choice
from guidegen.drawings.arrangements import draw_arrangements, x_of, y_of
from guidegen.drawings.picture import Picture
from guidegen.study import study

SAMPLE = Path(__file__).parents[2] / "sample_project" / "potting-bench.yaml"
SVG = "{http://www.w3.org/2000/svg}"


@pytest.fixture(scope="module")
def choice() -> Choice:
    return study(SAMPLE).choice


@pytest.fixture(scope="module")
def pictures(choice: Choice) -> tuple[Picture, ...]:
    return draw_arrangements(choice, 0.5)


def dots(picture: Picture) -> list[tuple[float, float]]:
    """Where the bulbs of a chart are drawn, left to right."""
    paths = [each.get("d", "") for each in ET.fromstring(picture.svg).iter(f"{SVG}path") if each.get("class")]
    return [(float(x), float(y)) for d in paths for x, y in re.findall(r"M([\d.]+) ([\d.]+)h0", d)]


def marks(picture: Picture) -> dict[str, tuple[str, str]]:
    """Places of the scale's marks by what they say."""
    texts = ET.fromstring(picture.svg).iter(f"{SVG}text")
    return {
        each.text or "": (each.get("x", ""), each.get("y", ""))
        for each in texts
        if each.text in {"0", "0.5", "1"} and each.get("text-anchor") == "end"
    }


def test_there_is_a_chart_for_every_arrangement(choice: Choice, pictures: tuple[Picture, ...]) -> None:
    assert [picture.id for picture in pictures] == [
        f"arrangement-{number}" for number in range(1, len(choice.proposals) + 1)
    ]


def test_the_scale_is_the_same_in_all(pictures: tuple[Picture, ...]) -> None:
    assert len(marks(pictures[0])) == 3
    assert all(marks(picture) == marks(pictures[0]) for picture in pictures)
    assert len({(picture.width, picture.height) for picture in pictures}) == 1


def test_every_bulb_stands_at_its_light(choice: Choice, pictures: tuple[Picture, ...]) -> None:
    for picture, proposal in zip(pictures, choice.proposals, strict=True):
        light = [float(each) for run in proposal.worked.solution.runs for each in run.light]
        found = dots(picture)
        assert [y for _x, y in found] == pytest.approx([y_of(each) for each in light], abs=0.006)
        assert [x for x, _y in found] == pytest.approx(
            [x_of(bulb, len(light)) for bulb in range(1, len(light) + 1)], abs=0.006
        )


def test_the_words_tell_evenness_goal_and_every_run(choice: Choice, pictures: tuple[Picture, ...]) -> None:
    for picture, proposal in zip(pictures, choice.proposals, strict=True):
        assert f"Dimmest bulb {proposal.evenness:.2f}" in picture.alt
        assert "goal of 0.50" in picture.alt
        assert picture.alt.count(", bulbs ") == len(proposal.runs)


def test_a_goal_that_is_missed_is_told(choice: Choice) -> None:
    assert all("misses the goal of 0.99" in picture.alt for picture in draw_arrangements(choice, 0.99))


def test_dark_bulbs_of_two_way_strings_have_no_dot() -> None:
    found = study(Path(__file__).parents[1] / "examples" / "two-way-strings.yaml").choice
    for picture, proposal in zip(draw_arrangements(found, 0.5), found.proposals, strict=True):
        lit = sum(int(run.lit.sum()) for run in proposal.worked.solution.runs)
        assert len(dots(picture)) in {0, lit}


def test_the_same_choice_gives_the_same_bytes(choice: Choice, pictures: tuple[Picture, ...]) -> None:
    assert draw_arrangements(choice, 0.5) == pictures
