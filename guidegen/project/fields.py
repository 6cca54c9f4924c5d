"""What a key expects, in words, from the models themselves."""

from __future__ import annotations

import types
from collections.abc import Iterator
from typing import Annotated, Any, Literal, Union, get_args, get_origin

from pydantic.fields import FieldInfo

from guidegen.locale import _
from guidegen.project.keys import Key
from guidegen.project.model import Model
from guidegen.project.plain import Reader
from guidegen.project.schema import Project


def full_type(field: FieldInfo) -> Any:
    """The field's type together with its readers."""
    return Annotated[(field.annotation, *field.metadata)] if field.metadata else field.annotation


def bare(kind: Any) -> Any:
    """The type without `| None` and without annotations."""
    if get_origin(kind) is Annotated:
        return bare(get_args(kind)[0])
    if get_origin(kind) in (Union, types.UnionType):
        others = [part for part in get_args(kind) if part is not type(None)]
        return bare(others[0]) if len(others) == 1 else kind
    return kind


def model_of(kind: Any) -> type[Model] | None:
    """The model that the type is, if it is one."""
    plain = bare(kind)
    return plain if isinstance(plain, type) and issubclass(plain, Model) else None


def inner_type(kind: Any, step: str | int) -> Any:
    """The type one step further down a key path; None where there is none."""
    model = model_of(kind)
    if model is not None:
        field = model.model_fields.get(str(step))
        return full_type(field) if field else None
    for plain in members(bare(kind)):
        if get_origin(plain) in (tuple, dict):
            return get_args(plain)[0 if get_origin(plain) is tuple else 1]
    return None


def members(kind: Any) -> tuple[Any, ...]:
    """The types that a union offers; of any other type itself."""
    return get_args(kind) if get_origin(kind) in (Union, types.UnionType) else (kind,)


def type_at(key: Key) -> Any:
    """The type that the key's value should have; None for an unknown key."""
    kind: Any = Project
    for step in key:
        kind = inner_type(kind, step)
    return kind


def description_at(key: Key) -> str:
    """The description of the key, translated; empty where there is none."""
    model = model_of(type_at(key[:-1])) if key else None
    field = model.model_fields.get(str(key[-1])) if model else None
    return _(field.description or "") if field else ""


def reader_of(kind: Any) -> Reader | None:
    """The reader among the type's annotations."""
    own = get_args(kind)[1:] if get_origin(kind) is Annotated else ()
    return next((part for part in (*own, *_parts(kind)) if isinstance(part, Reader)), None)


def choices_of(kind: Any) -> list[str]:
    """The words that the type allows; empty if it is no choice."""
    plain = bare(kind)
    return list(get_args(plain)) if get_origin(plain) is Literal else []


def expected_at(key: Key) -> str:
    """What belongs at the key, in words, with the key's description."""
    words, description = _words(type_at(key)), description_at(key)
    return f"{words} ({description})" if description else words


def _words(kind: Any) -> str:
    reader, choices, model = reader_of(kind), choices_of(kind), model_of(kind)
    if reader is not None:
        return reader.expected()
    if choices:
        return _("one of: {choices}").format(choices=", ".join(choices))
    if model is not None:
        return _keys(model)
    if get_origin(bare(kind)) is tuple:
        return _("a list, each entry behind a dash")
    return _("names of your own, each with its keys")


def _keys(model: type[Model]) -> str:
    needed = ", ".join(name for name, field in model.model_fields.items() if field.is_required())
    others = ", ".join(name for name, field in model.model_fields.items() if not field.is_required())
    if not needed:
        return _("any of the keys {others}").format(others=others)
    return _("the keys {needed}; if need be {others}").format(needed=needed, others=others or _("no other"))


def _parts(kind: Any) -> Iterator[Any]:
    yield kind
    for part in get_args(kind):
        yield from _parts(part)
