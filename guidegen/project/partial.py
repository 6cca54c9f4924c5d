"""As much of a faulty project as is sound, so that all faults can be told at once.

A partial model lacks the attributes whose values are wrong.  A check that
asks for one of them cannot be made, and `attempt` passes over it.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterator
from dataclasses import dataclass
from functools import cache
from typing import Any, TypeVar, cast, get_origin

from pydantic import TypeAdapter

from guidegen.project.fields import bare, full_type, inner_type, members, model_of
from guidegen.project.keys import Key
from guidegen.project.model import Model

M = TypeVar("M", bound=Model)
T = TypeVar("T")


def partial(model: type[M], data: Any, bad: Collection[Key]) -> M:
    """The model made of `data`, without the attributes whose keys are in `bad`."""
    around = {key[:length] for key in bad for length in range(len(key) + 1)}
    return _model(model, data, _Wrong(frozenset(bad), frozenset(around)), ())


@dataclass(frozen=True)
class _Wrong:
    keys: frozenset[Key]
    around: frozenset[Key]  # these keys and all that hold them


def _model(model: type[M], data: Any, wrong: _Wrong, key: Key) -> M:
    good, lacking = {}, set()
    for name, field in model.model_fields.items():
        inner = (*key, name)
        if inner in wrong.keys or not isinstance(data, dict) or _spoiled_list(full_type(field), inner, wrong):
            lacking.add(name)
        elif data.get(name) is not None:
            good[name] = _value(full_type(field), data[name], wrong, inner)
    part = cast("M", model.model_construct(**good))
    for name in lacking:
        part.__dict__.pop(name, None)
    return part


def _spoiled_list(kind: Any, key: Key, wrong: _Wrong) -> bool:
    """Whether the key holds a list of plain values and one of them is wrong."""
    may_be_list = any(get_origin(each) is tuple for each in members(bare(kind)))
    plain_list = may_be_list and model_of(inner_type(kind, 0)) is None
    return plain_list and key in wrong.around


def _value(kind: Any, data: Any, wrong: _Wrong, key: Key) -> Any:
    if key not in wrong.around:
        return adapter(kind).validate_python(data)
    model = model_of(kind)
    if model is not None:
        return _model(model, None if key in wrong.keys else data, wrong, key)
    inner = inner_type(kind, 0)
    if get_origin(bare(kind)) is dict:
        return {name: _value(inner, value, wrong, (*key, name)) for name, value in data.items()}
    return tuple(_value(inner, value, wrong, (*key, index)) for index, value in enumerate(data))


@cache
def adapter(kind: Any) -> TypeAdapter[Any]:
    """The validator of one type, made once."""
    return TypeAdapter(kind)


def attempt(check: Callable[..., Iterator[T]], *parts: Any) -> Iterator[T]:
    """What the check yields, up to the point where it asks for a value that is wrong."""
    try:
        yield from check(*parts)
    except AttributeError as error:
        lacking = isinstance(error.obj, Model) and error.name in type(error.obj).model_fields
        if not lacking:
            raise
