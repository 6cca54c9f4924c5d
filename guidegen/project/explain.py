"""What pydantic found wrong with the values, as faults that a person can mend."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from pydantic import ValidationError

from guidegen.errors import MOST_SHOWN
from guidegen.locale import _
from guidegen.project.fields import choices_of, expected_at, inner_type, model_of, type_at
from guidegen.project.hints import hinted
from guidegen.project.keys import Key, key_text
from guidegen.project.plain import UnreadableError
from guidegen.project.schema import Project
from guidegen.project.tree import Tree
from guidegen.project.writing import nearest


@dataclass(frozen=True)
class Wrong:
    """One value that the models refuse."""

    key: Key
    type: str
    mend: str  # of an unreadable value; else empty


def wrongs(error: ValidationError) -> tuple[Wrong, ...]:
    """The refusals in a validation error."""
    details = error.errors(include_url=False, include_input=False)
    return tuple(
        Wrong(tuple(detail["loc"]), detail["type"], _reason(detail.get("ctx", {}))) for detail in details
    )


def _reason(context: dict[str, Any]) -> str:
    error = context.get("error")
    return error.mend if isinstance(error, UnreadableError) else ""


def meant(found: tuple[Wrong, ...]) -> dict[Key, Key]:
    """Of every misspelt key, the key that was probably meant."""
    unknown = [wrong.key for wrong in found if wrong.type == "extra_forbidden"][: MOST_SHOWN + 1]
    pairs = {key: _meant(key) for key in unknown}
    return {key: other for key, other in pairs.items() if other}


def _meant(key: Key) -> Key | None:
    model = model_of(type_at(key[:-1]))
    word = str(key[-1]).split(":")[0]  # `area:0.5 mm2`, without a space, is a key in braces
    near = nearest(word, model.model_fields) if model else None
    return (*key[:-1], near) if near else None


def explain(tree: Tree, found: tuple[Wrong, ...]) -> None:
    """Add a fault to the tree for every refusal that is not told already."""
    misspelt = meant(found)
    told = sorted(found, key=lambda wrong: tree.place(wrong.key))[: MOST_SHOWN + 1]
    for wrong in told:
        if wrong.type == "missing" and wrong.key in misspelt.values():
            continue  # told once, at the misspelt key
        if not any(wrong.key[: len(key)] == key for key in tree.spoiled):
            _TELL.get(wrong.type, _tell_form)(tree, wrong)


def _tell_value(tree: Tree, wrong: Wrong) -> None:
    came, expected = tree.written(wrong.key), expected_at(wrong.key)
    tree.complain(tree.place(wrong.key), wrong.key, came, expected, wrong.mend)


def _tell_missing(tree: Tree, wrong: Wrong) -> None:
    place = tree.place(wrong.key) if wrong.key in tree.values else tree.key_place(wrong.key[:-1])
    mend = _("add the key {key}").format(key=wrong.key[-1])
    if wrong.key in tree.values:
        mend = _("write the value behind {key}:").format(key=wrong.key[-1])
    tree.complain(place, wrong.key, _("nothing"), expected_at(wrong.key), mend)


def _tell_choice(tree: Tree, wrong: Wrong) -> None:
    came = tree.written(wrong.key)
    hint = hinted(str(wrong.key[-1]), came)
    near = hint or nearest(came, choices_of(type_at(wrong.key)))
    mend = _("did you mean {name}?").format(name=near) if near else _("write one of these, in these letters")
    tree.complain(tree.place(wrong.key), wrong.key, came, expected_at(wrong.key), mend)


def _tell_form(tree: Tree, wrong: Wrong) -> None:
    name = wrong.key[-1] if wrong.key else ""
    kind = type_at(wrong.key)
    mend = _("write keys and values, each key at the start of a line")
    if wrong.key and model_of(kind):
        mend = _("put the keys in braces, or indented on the lines below, such as {example}").format(
            example=_example(kind, name)
        )
    elif wrong.type == "tuple_type":
        mend = _("write each entry on its own line behind a dash, or put the entries in square brackets")
    elif wrong.key:
        mend = _("write a name of your own below {key}, and its keys below that name").format(key=name)
    tree.complain(tree.place(wrong.key), wrong.key, tree.written(wrong.key), expected_at(wrong.key), mend)


_EXAMPLES = {
    "wire": "{area: 0.5 mm2}",
    "feeder": "{length: 2 m, wire: {area: 0.5 mm2}}",
    "extra_wire": "{length: 2 m, wire: {area: 0.5 mm2}}",
    "lead": "{length: 1 m, wire: {area: 0.5 mm2}}",
    "led": "{typical: white}",
    "came_with": "{cells: 3, size: AA}",
    **dict.fromkeys(("cover", "lit", "unlit", "photo"), "{file: lit.jpg, alt: What it shows}"),
}


def _example(kind: Any, name: str | int) -> str:
    model = model_of(kind)
    first = next(iter(model.model_fields)) if model else ""
    example = _EXAMPLES.get(str(name), f"{{{first}: ...}}")
    return f"{name}: {example}" if isinstance(name, str) else example


def _tell_unknown(tree: Tree, wrong: Wrong) -> None:
    *parents, name = wrong.key
    came = _("the key {key}").format(key=key_text((name,)))
    mend = _mend_unknown(tuple(parents), str(name))
    expected = expected_at(tuple(parents))
    tree.complain(tree.key_place(wrong.key), wrong.key, came, expected, mend)


def _mend_unknown(parents: Key, name: str) -> str:
    near = _meant((*parents, name))
    if ":" in name:
        return _("write a space behind the colon")
    if near:
        return _("did you mean {name}?").format(name=near[-1])
    if name == "<<":
        return _("write the keys themselves here; << takes over nothing")
    homes = list(_homes(Project, "", name))
    if homes:
        return _("move it; it belongs in {place}").format(place=_(" or ").join(homes))
    return _("delete it")


def _homes(kind: Any, path: str, name: str) -> Iterator[str]:
    """Where a key of this name belongs, as paths."""
    model = model_of(kind)
    for field in model.model_fields if model else ():
        inner = f"{path}.{field}" if path else field
        if field == name:
            yield path or _("the first column")
        child = inner_type(kind, field)
        if not model_of(child):
            entry = inner_type(child, 0)
            child, inner = entry, f"{inner}.{_('NAME')}" if field == "strings" else f"{inner}[]"
        yield from _homes(child, inner, name)


_TELL = {
    "value_error": _tell_value,
    "missing": _tell_missing,
    "literal_error": _tell_choice,
    "extra_forbidden": _tell_unknown,
}
