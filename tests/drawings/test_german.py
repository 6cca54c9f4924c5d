"""Pictures in German, whose words are longer: none is cut short, and numbers have a decimal comma."""

from __future__ import annotations

import re
import xml.etree.ElementTree as ET
from pathlib import Path

import pytest

from guidegen.drawings.arrangements import draw_arrangements
from guidegen.drawings.charts import draw_charts
from guidegen.drawings.picture import Picture
from guidegen.locale import speaking_language
from guidegen.study import Study, study
from tests.drawings.step_builds import project, step_pictures, studied
from tests.guide.projects import FEEDS, fed

EXAMPLES = Path(__file__).parents[1] / "examples"
SVG = "{http://www.w3.org/2000/svg}"


def words(picture: Picture) -> list[str]:
    """Every line of text of a drawing."""
    return ["".join(element.itertext()) for element in ET.fromstring(picture.svg).iter(f"{SVG}text")]


def cut_short(pictures: tuple[Picture, ...]) -> list[tuple[str, str]]:
    """Lines that end in dots for want of room."""
    return [(each.id, line) for each in pictures for line in words(each) if line.endswith("…")]


def feeds(lit: str, leds: int) -> Study:
    """A short run for every way to feed it, of strings that light so."""
    runs = [fed(feed, 12, name=f"Reihe {number}", resistor="330 ohm") for number, feed in enumerate(FEEDS)]
    return studied(project(*runs, strings__drop__lit_on_dc=lit, strings__drop__leds_per_bulb=leds))


@pytest.mark.parametrize(("lit", "leds"), [("all", 3), ("half", 3), ("half of each bulb", 4)])
def test_no_word_of_a_step_picture_is_cut_short(lit: str, leds: int) -> None:
    with speaking_language("de"):
        assert cut_short(tuple(step_pictures(feeds(lit, leds)).values())) == []


def test_no_word_of_the_arrangements_charts_is_cut_short() -> None:
    found = study(EXAMPLES / "two-way-strings.yaml")
    with speaking_language("de"):
        drawn = draw_arrangements(found.choice, found.project.goals.evenness)
    assert cut_short(drawn) == []
    assert {"Pole", "Lampe"} <= set(words(drawn[0]))


def test_the_scales_of_the_charts_have_a_decimal_comma() -> None:
    found = studied(project(fed("one end", 12)))
    assert found.solved is not None
    solved = found.solved.arrangement, found.solved.solution
    with speaking_language("de"):
        german = draw_charts(*solved, 0.5)
    scales = {each.id: [line for line in words(each) if re.fullmatch(r"\d+[.,]\d+", line)] for each in german}
    assert scales["light"] and scales["volts"]
    assert not [line for lines in scales.values() for line in lines if "." in line]
