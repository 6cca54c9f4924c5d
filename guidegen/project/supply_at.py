"""The key `place.supply_at`: where the supply may stand, one place or several to try."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass
from typing import Annotated, Any, Literal

from pydantic_core import core_schema

from guidegen.locale import _
from guidegen.project.plain import LONGEST, Reader, UnreadableError, plain_spaces
from guidegen.project.quantities import Quantity
from guidegen.project.writing import nearest


@dataclass(frozen=True)
class AtHook:
    """Beside a hook of the hanging plan, by its number over all lines from 1."""

    number: int


@dataclass(frozen=True)
class AtPoint:
    """A point of the hanging plan, metre to the right and upwards."""

    x_m: float
    y_m: float


#: Where the supply's wire may begin: on the (first) line of lights, at a hook, or at a point of the plan.
SupplyPlace = float | Literal["start", "middle"] | AtHook | AtPoint

_HOOK = re.compile(r"(?:H|hook\s+H?)\s*([0-9]{1,5})", re.IGNORECASE)
_ALONG = Quantity("length", zero=True)
_COORDINATE = Quantity("length", low="-1 km", zero=True)


@dataclass(frozen=True)
class PlaceReader(Reader):
    """One place of the supply."""

    def expected(self) -> str:
        """What a person should write, in words."""
        return _(
            "start, middle, or counted from the start {length}; with a hanging plan also a hook such as H3, "
            'or a point such as "2 m, 0.5 m"'
        ).format(length=_ALONG.expected())

    def read(self, value: Any) -> Any:
        """The place; raises UnreadableError."""
        if not isinstance(value, str):
            return value if isinstance(value, AtHook | AtPoint) else _ALONG.read(value)
        text = plain_spaces(value)
        if text in ("start", "middle"):
            return text
        hook = _HOOK.fullmatch(text)
        if hook is not None:
            return AtHook(int(hook[1]))
        if text[:1].isalpha():
            raise UnreadableError(_mend_word(text))
        return _point(text) if "," in text and len(text) <= LONGEST else _ALONG.read(value)


def _mend_word(word: str) -> str:
    near = nearest(word, ("start", "middle"))
    if near:
        return _("did you mean {name}?").format(name=near)
    return _("write start, middle, a distance such as 2.5 m, or a hook of the hanging plan such as H3")


def _point(text: str) -> AtPoint:
    """A point "x, y"; raises UnreadableError, also for a decimal comma."""
    parts = [part.strip() for part in text.split(",")]
    if len(parts) != 2 or not all(any(sign.isalpha() for sign in part) for part in parts):
        raise UnreadableError(
            _("write a point as two lengths with a comma between, each with a decimal point: 2.5 m, 0.5 m")
        )
    return AtPoint(*(_COORDINATE.read(part) for part in parts))


@dataclass(frozen=True)
class PlacesReader(PlaceReader):
    """One place, or a list of places to try."""

    def expected(self) -> str:
        """What a person should write, in words."""
        return _("{place}; or a list of such places").format(place=super().expected())

    def read_each(self, value: Any, handler: Callable[[Any], Any]) -> Any:
        """Every entry of a list by `handler`, or the one place; raises UnreadableError."""
        if not isinstance(value, list | tuple):
            return self.read(value)
        if not value:
            raise UnreadableError(_("write at least one place, or leave the key out"))
        return handler(value)

    def __get_pydantic_core_schema__(self, _source: Any, _handler: Any) -> core_schema.CoreSchema:
        entries = core_schema.tuple_schema(
            [core_schema.no_info_plain_validator_function(self.read)], variadic_item_index=0
        )
        return core_schema.no_info_wrap_validator_function(self.read_each, entries)


SupplyAt = Annotated[
    SupplyPlace | tuple[Annotated[SupplyPlace, PlaceReader()], ...],
    PlacesReader(),
]
