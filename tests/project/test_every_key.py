"""The sample file with every key: true to the models, whole, and buildable."""

from __future__ import annotations

import re

import pytest

from guidegen.project.fields import inner_type, model_of
from guidegen.project.read import read_project
from guidegen.project.schema import Model, Project
from guidegen.study import study
from tests.project.every_key import FILE, every_key

TEXT = FILE.read_text("utf-8")
KEYS = re.findall(r"(?m)^[# ]*(?:- )?([a-z_]+):", TEXT)


def models(model: type[Model] = Project) -> set[type[Model]]:
    """Every model of the schema."""
    kinds = [inner_type(model, name) for name in model.model_fields]
    inside = {found for kind in kinds for found in (model_of(kind), model_of(inner_type(kind, 0))) if found}
    return {model}.union(*(models(child) for child in inside))


def test_the_file_is_what_the_models_say() -> None:
    """After a change of the models: python -m tests.project.every_key."""
    assert every_key() == TEXT


@pytest.mark.parametrize("model", sorted(models(), key=lambda model: model.__name__))
def test_every_key_of_every_part_stands_in_the_file(model: type[Model]) -> None:
    assert set(model.model_fields) <= set(KEYS)


def test_what_a_key_means_stands_above_it() -> None:
    words = " ".join(line.strip().lstrip("# ") for line in TEXT.splitlines())
    told = [field.description for model in models() for field in model.model_fields.values()]
    assert [text for text in told if text and " ".join(text.split()) not in words] == []


def test_the_file_is_a_project_that_no_rule_refuses() -> None:
    assert not study(FILE).refused


def test_most_keys_are_stated_and_only_those_that_exclude_one_another_are_notes() -> None:
    noted = set(re.findall(r"(?m)^ *# ([a-z_]+): ?(?=[0-9a-z]*)", TEXT))
    stated = {re.split(r"[.\[]", key)[-1] for key in read_project(FILE).given}
    one_of_several = {"loop", "per_length", "gauge", "material", "typical", "hooks", "before", "after"}
    assert noted - stated == one_of_several
