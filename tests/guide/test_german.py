"""A guide in German: numbers have a decimal comma, wherever they come from."""

from __future__ import annotations

import pytest

from guidegen.locale import speaking_language
from tests.guide.projects import Made, changed, fed, make


@pytest.fixture(scope="module")
def german() -> Made:
    project = changed(place__mains="new fixed wiring", runs=[fed("middle")], language="de")
    with speaking_language("de"):
        return make(project)


def test_widths_of_sleeves(german: Made) -> None:
    ratings = [part.rating for part in german.page("parts-and-tools.html").buy]
    assert any("4,8 mm" in rating.replace("\u00a0", " ") for rating in ratings)
    assert not any("4.8" in rating for rating in ratings)


def test_the_power_factor(german: Made) -> None:
    notes = [fact.note for fact in german.page("electrician.html").facts]
    assert any("0,5" in note for note in notes)
    assert not any("0.5" in note for note in notes)
