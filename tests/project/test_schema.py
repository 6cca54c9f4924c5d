"""The models explain themselves: they are what messages and the list of keys show."""

from __future__ import annotations

import re
from collections.abc import Iterator

import pytest

from guidegen.project.fields import full_type, inner_type, model_of, reader_of
from guidegen.project.model import Model
from guidegen.project.quantities import KINDS, GaugeReader, Quantity
from guidegen.project.schema import Project


def fields(model: type[Model], path: str = "") -> Iterator[tuple[str, type[Model], str]]:
    for name in model.model_fields:
        yield f"{path}{name}", model, name
        kind = inner_type(model, name)
        child = model_of(kind) or model_of(inner_type(kind, 0))
        if child:
            yield from fields(child, f"{path}{name}.")


FIELDS = {path: (model, name) for path, model, name in fields(Project)}


@pytest.mark.parametrize("path", FIELDS)
def test_every_key_is_described(path: str) -> None:
    model, name = FIELDS[path]
    assert len(model.model_fields[name].description or "") > 5


@pytest.mark.parametrize("path", FIELDS)
def test_every_value_with_a_unit_tells_the_units_a_person_may_write(path: str) -> None:
    model, name = FIELDS[path]
    reader = reader_of(full_type(model.model_fields[name]))
    if isinstance(reader, Quantity):
        kind = KINDS[reader.dimension]
        assert reader.expected().endswith((*kind.units.split(", "), "; or none", " kg"))
    if isinstance(reader, GaugeReader):
        assert "28 AWG" in reader.expected()


@pytest.mark.parametrize("path", FIELDS)
def test_a_description_is_in_words_and_not_in_units(path: str) -> None:
    model, name = FIELDS[path]
    description = model.model_fields[name].description or ""
    assert not re.search(r", (V|A|m|m2|ohm|W|ratio|h|N|kg|kg/m|m/s)(;|$)", description)


def test_models_cannot_be_changed() -> None:
    with pytest.raises(ValueError, match="frozen"):
        Project.model_fields["goals"].default.evenness = 0.1


REQUIRED = {  # DESIGN section 4, the paragraph "Required"; the rest needs a default
    "title", "place", "place.exposure", "place.mains", "strings", "strings.bulbs", "strings.spacing",
    "strings.wire", "supply", "supply.voltage", "supply.rated_current", "supply.case", "supply.insulation",
}  # fmt: skip


def test_the_required_keys_are_the_ones_of_the_contract() -> None:
    inside = (
        "bench",
        "came_with",
        "lead",
        "runs",
        "readings",
        "hanging",
        "photos",
        "steps",
    )  # parts that are optional as a whole
    required = {
        path
        for path, (model, name) in FIELDS.items()
        if model.model_fields[name].is_required() and not any(f"{part}." in path for part in inside)
    }
    assert required == REQUIRED
