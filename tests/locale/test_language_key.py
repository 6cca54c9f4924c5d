"""The key `language`: what is known, what is said of a misspelt one, and from when on it is spoken."""

from __future__ import annotations

import json
import re
from pathlib import Path

import pytest

from guidegen import locale
from guidegen.build import build
from guidegen.errors import ProjectError
from guidegen.locale import LANGUAGES, language, speaking_language, translations_of
from guidegen.project.read import read_project
from guidegen.project.schema import Project
from guidegen.report.check import check_text
from guidegen.report.figures import figures_json, figures_text
from guidegen.study import study
from tests.locale.catalogue import ROOT
from tests.locale.marked import Marking

SAMPLE = ROOT / "sample_project" / "potting-bench.yaml"


@pytest.fixture
def german(tmp_path: Path):
    """The sample in German, changed by the given replacements."""

    def write(**changes: str) -> Path:
        text = "language: de\n" + SAMPLE.read_text(encoding="utf-8")
        for old, new in changes.items():
            assert old in text
            text = text.replace(old, new)
        path = tmp_path / "bench.yaml"
        path.write_text(text, encoding="utf-8")
        return path

    return write


def test_the_languages_of_the_key_are_those_that_have_a_catalogue():
    annotation = Project.model_fields["language"].annotation
    assert annotation.__args__ == tuple(LANGUAGES)
    assert all(translations_of(tag) for tag in LANGUAGES)


@pytest.mark.parametrize("written", ["german", "Deutsch", "de-AT", "DE", "dee"])
def test_a_language_by_another_name_is_told_its_tag(german, written):
    path = german(**{"language: de": f"language: {written}"})
    with pytest.raises(ProjectError) as caught:
        read_project(path)
    fault = caught.value.faults[0]
    assert (fault.line, fault.key) == (1, "language")
    assert "en, de" in fault.expected
    assert "did you mean de?" in fault.mend


def test_an_unknown_language_is_told_the_known_ones(german):
    with pytest.raises(ProjectError) as caught:
        read_project(german(**{"language: de": "language: tlh"}))
    assert "en, de" in caught.value.faults[0].expected


def test_faults_of_the_file_are_told_in_english(german, monkeypatch):
    monkeypatch.setattr(locale, "translations_of", lambda _tag: Marking())
    with pytest.raises(ProjectError) as caught:
        read_project(german(**{"voltage: 5.1 V": "voltage: 5,1 V"}))
    assert "⟦" not in caught.value.format_message()


@pytest.mark.parametrize("tell", [check_text, figures_text, figures_json])
def test_what_is_said_of_a_project_is_in_its_language(german, monkeypatch, tell):
    monkeypatch.setattr(
        locale, "translations_of", lambda tag: Marking() if tag == "de" else translations_of(tag)
    )
    said = tell(study(german()), "utf-8") if tell is check_text else tell(study(german()))
    assert "⟦" in said or "\\u27e6" in said


def test_numbers_in_json_stay_numbers(german):
    plain = json.loads(figures_json(study(SAMPLE)))
    spoken = json.loads(figures_json(study(german())))
    assert spoken["runs"] == plain["runs"]
    assert spoken["supply"] == plain["supply"]


def test_a_run_without_a_name_is_numbered_in_the_language_wherever_it_is_named(german, monkeypatch):
    monkeypatch.setattr(locale, "translations_of", lambda _tag: Marking())
    readings = "readings:\n  - {run: run 1, at: after resistor, value: 2.95 V}\ntitle:"
    path = german(**{"name: back rail": "series: E12", "[back rail]": "[run 1]", "title:": readings})
    project = read_project(path).project
    assert [run.name for run in project.runs or ()] == ["⟦run 1⟧", "front rail"]
    assert project.readings[0].run == "⟦run 1⟧"
    assert project.hanging is not None
    assert project.hanging.lines[0].runs == ("⟦run 1⟧",)


def test_a_number_that_another_run_has_for_a_name_is_not_given_twice(german, monkeypatch):
    monkeypatch.setattr(locale, "translations_of", lambda _tag: Marking())
    path = german(**{"name: back rail": "series: E12", "[back rail]": "[run 1]", "front rail": "⟦run 1⟧"})
    assert [run.name for run in read_project(path).project.runs or ()] == ["run 1", "⟦run 1⟧"]


def test_after_a_project_english_is_in_force_again(german):
    check_text(study(german()))
    assert language() == "en"


def test_languages_do_not_mix(german):
    """A German project first, then the English one: no cache keeps a word of the first."""
    before = check_text(study(SAMPLE), "utf-8")
    with speaking_language("de"):
        check_text(study(german()), "utf-8")
    assert check_text(study(SAMPLE), "utf-8") == before


def test_every_page_names_its_language(german, tmp_path):
    build(german(), tmp_path / "guide")
    pages = list((tmp_path / "guide").glob("*.html"))
    assert pages
    assert {re.search(r'<html lang="(\w+)"', page.read_text(encoding="utf-8"))[1] for page in pages} == {"de"}


def test_drawings_have_the_numbers_of_the_language(german, tmp_path):
    build(german(), tmp_path / "guide")
    drawn = (tmp_path / "guide" / "drawings" / "schematic-1.svg").read_text(encoding="utf-8")
    assert 'lang="de"' in drawn
    assert "5,1\u00a0V DC" in drawn
    assert not re.search(r">[^<]*\d\.\d+\u00a0V<", drawn)
