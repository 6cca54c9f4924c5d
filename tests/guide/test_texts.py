"""Every text of every guide: nothing empty that must not be, nothing unfilled, nothing marked up."""

from __future__ import annotations

import re

import pytest

from guidegen.guide.compose import compose
from guidegen.study import Study
from tests.guide.projects import Made, changed, make, texts

#: Fields that may be empty: there is not always something to say.
MAY_BE_EMPTY = {
    *("author", "summary", "note", "picture", "range", "meter", "consequence"),
    *("marking", "rating", "why", "intro", "source"),
    *("measured_text", "verdict"),  # of readings that were not taken
    *("story", "licence"),  # of makers who state none
    "print",  # of resistors with bands
    "mark",  # of arrangements that the guide does not build
    "runs",  # of the maker's own arrangement
}


def test_no_text_is_empty_that_must_say_something(all_guides: tuple[Made, ...]) -> None:
    empty = {
        name
        for made in all_guides
        for name, text in texts(made.guide)
        if not text.strip() and name not in MAY_BE_EMPTY
    }
    assert empty == set()


def test_no_text_keeps_a_place_that_was_not_filled(all_guides: tuple[Made, ...]) -> None:
    left = [
        text
        for made in all_guides
        for name, text in texts(made.guide)
        if name != "project_file" and re.search(r"\{\w*\}", text)
    ]
    assert left == []


def test_no_number_is_shown_with_an_exponent_or_as_nan(all_guides: tuple[Made, ...]) -> None:
    odd = [
        text
        for made in all_guides
        for name, text in texts(made.guide)
        if name not in ("project_file", "key") and re.search(r"\d[eE][-+]?\d|\bnan\b|\binf\b", text)
    ]
    assert odd == []


def test_no_text_calls_anything_simple(all_guides: tuple[Made, ...]) -> None:
    everything = " ".join(text for made in all_guides for _name, text in texts(made.guide))
    assert re.search(r"\b(simply|easily|obviously)\b", everything, re.I) is None


def test_markup_in_the_project_file_stays_plain_text() -> None:
    """Escaping is the theme's work; the page models carry the words as they were written."""
    nasty = "<script>alert(1)</script>&amp;"
    project = changed(title=nasty, summary=nasty, author=nasty)
    project["strings"] = {nasty: project["strings"]["drop"]}
    project["runs"][0].update(name=nasty, string=nasty)
    guide = make(project).guide
    assert (guide.title, guide.summary, guide.author) == (nasty, nasty, nasty)
    assert any(nasty in text for name, text in texts(guide.pages) if name == "title")
    assert not any("&lt;" in text for _name, text in texts(guide.pages))


def test_braces_in_a_name_are_no_places_to_fill() -> None:
    project = changed()
    project["runs"][0]["name"] = "shelf {run} {0}"
    assert any("shelf {run} {0}" in text for _name, text in texts(make(project).guide))


def test_pages_stand_in_the_order_of_reading(plain: Made) -> None:
    assert [page.template for page in plain.guide.pages] == [
        *("start.html", "safe.html", "parts.html", "wiring.html"),
        *("numbers.html", "light.html", "arrangements.html"),
        *("build.html", "readings.html", "running.html", "print-set.html"),
    ]
    assert plain.guide.pages[0].name == "index.html"


def test_the_key_follows_the_project_file(plain: Made) -> None:
    same, other = make(changed()), make(changed(title="Other lights"))
    assert plain.guide.key == same.guide.key != other.guide.key


def test_the_same_study_gives_the_same_guide(plain: Made) -> None:
    assert compose(plain.study, plain.matter.readings) == plain.guide


def test_a_refused_project_gets_no_guide(plain: Made) -> None:
    refused = Study(plain.study.file, plain.study.project, {}, None, ())
    with pytest.raises(ValueError, match="refused"):
        compose(refused, ())
