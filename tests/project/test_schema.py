"""The models explain themselves: they are what messages and the list of keys show."""

from __future__ import annotations

from collections.abc import Iterator

import pytest

from guidegen.project.fields import full_type, inner_type, model_of, reader_of
from guidegen.project.model import Model
from guidegen.project.quantities import GaugeReader, Quantity
from guidegen.project.schema import Project

# How a description names the unit of each kind of value.
UNIT_WORDS = {
    "area": "m2",
    "current": "A",
    "force": "N",
    "length": "m",
    "mass": "kg",
    "mass per length": "kg/m",
    "power": "W",
    "ratio": "",  # has none
    "resistance": "ohm",
    "resistance per length": "ohm/m",
    "speed": "m/s",
    "temperature": "degC",
    "time": "h",
    "voltage": "V",
}


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
def test_every_value_with_a_unit_tells_it(path: str) -> None:
    model, name = FIELDS[path]
    field = model.model_fields[name]
    reader = reader_of(full_type(field))
    words = (field.description or "").replace(",", " ").replace(";", " ").split()
    if isinstance(reader, Quantity) and UNIT_WORDS[reader.dimension]:
        assert UNIT_WORDS[reader.dimension] in words
    if isinstance(reader, GaugeReader):
        assert "AWG" in words


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
    )  # parts that are optional as a whole
    required = {
        path
        for path, (model, name) in FIELDS.items()
        if model.model_fields[name].is_required() and not any(f"{part}." in path for part in inside)
    }
    assert required == REQUIRED
