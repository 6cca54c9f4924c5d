"""The list of page models for theme writers in DEVELOPERS.md says what the dataclasses hold."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import fields, is_dataclass
from pathlib import Path
from typing import Any, get_args, get_type_hints

import pytest

from guidegen.guide.pages import Guide
from tests.theme.test_plain_theme import PLAIN, WORKSHOP

DEVELOPERS = (Path(__file__).parents[2] / "DEVELOPERS.md").read_text()
_ROW = re.compile(r"^\| (\w+)(?: `([\w-]+\.html)`)? \| (.+) \|$", re.MULTILINE)
ROWS = {name: (template, text) for name, template, text in _ROW.findall(DEVELOPERS) if name != "model"}


def models(kind: Any) -> Iterator[type]:
    """The dataclass and every one that its fields lead to."""
    if is_dataclass(kind) and isinstance(kind, type):
        yield kind
        for inner in get_type_hints(kind).values():
            yield from models(inner)
    for inner in get_args(kind):
        yield from models(inner)


MODELS = {model.__name__: model for model in models(Guide)}


@pytest.mark.parametrize("name", MODELS)
def test_every_field_of_a_model_is_described(name: str) -> None:
    assert name in ROWS, f"{name} has no row in DEVELOPERS.md"
    told = set(re.findall(r"`(\w+)`", ROWS[name][1]))
    assert {field.name for field in fields(MODELS[name])} - told == set()


def test_no_model_is_described_that_is_none() -> None:
    listed = DEVELOPERS.split("| model | fields |")[1].split("\n\n")[0]
    assert {name for name, _template, _text in _ROW.findall(listed)} == set(MODELS)


@pytest.mark.parametrize("folder", [WORKSHOP, PLAIN], ids=["workshop", "plain"])
def test_every_template_of_the_list_is_in_both_themes(folder: Path) -> None:
    listed = {template for template, _text in ROWS.values() if template}
    assert listed
    assert {name for name in listed if not (folder / name).is_file()} == set()


def test_every_page_has_its_template_in_the_list() -> None:
    assert {name for name in MODELS if name.endswith("Page") and name != "Page"} == {
        name for name, (template, _text) in ROWS.items() if template
    }
