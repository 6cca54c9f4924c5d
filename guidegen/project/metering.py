"""Readers of what belongs to a meter: its accuracy, where it is put, what it shows."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Any, Literal

from guidegen.locale import _
from guidegen.project.plain import NUMBER, Reader, UnreadableError, plain_spaces
from guidegen.project.quantities import Quantity, plain_unit
from guidegen.project.units import known_unit
from guidegen.project.writing import nearest

SpotKind = Literal["supply", "resistor volts", "after resistor", "bulb", "current"]
_SPOTS: tuple[SpotKind, ...] = ("supply", "resistor volts", "after resistor", "current")


@dataclass(frozen=True)
class Accuracy:
    """How far a meter may be off: `share` of the reading and `digits` of its last place."""

    share: float
    digits: int


@dataclass(frozen=True)
class ReadAt:
    """Where a reading of the finished build was taken; `bulb` from 1."""

    kind: SpotKind
    bulb: int | None = None


@dataclass(frozen=True)
class Shown:
    """What a meter showed, in volt or ampere."""

    amount: float
    unit: Literal["V", "A"]


_ACCURACY = re.compile(
    rf"(?:±|\+/?-)?\s*\(?\s*({NUMBER})\s*%\s*\+\s*([0-9]{{1,3}})\s*(?:d|dgt|digits?|counts?)?\s*\)?",
    re.IGNORECASE,
)


@dataclass(frozen=True)
class AccuracyReader(Reader):
    """A meter's accuracy as its maker states it."""

    most_share: float = 0.2
    most_digits: int = 100

    def expected(self) -> str:
        """What a person should write, in words."""
        return _("an accuracy as the meter's booklet states it, such as 0.5 % + 3 digits")

    def read(self, value: Any) -> Accuracy:
        """The accuracy; raises UnreadableError."""
        match = _ACCURACY.fullmatch(plain_spaces(value)) if isinstance(value, str) else None
        if match is None:
            raise UnreadableError(_("write percent of the reading, +, and digits: 0.5 % + 3 digits"))
        found = Accuracy(float(match[1]) / 100, int(match[2]))
        if not 0 <= found.share <= self.most_share or found.digits > self.most_digits:
            raise UnreadableError(_("check the numbers; no meter is that far off"))
        if found.share == 0 and found.digits == 0:
            raise UnreadableError(_("check the numbers; no meter is free of error"))
        return found


@dataclass(frozen=True)
class ReadAtReader(Reader):
    """A place on the finished build."""

    def expected(self) -> str:
        """What a person should write, in words."""
        return _("one of: {places}, bulb and its number, such as bulb 12").format(places=", ".join(_SPOTS))

    def read(self, value: Any) -> ReadAt:
        """The place; raises UnreadableError."""
        words = " ".join(plain_spaces(value).casefold().split()) if isinstance(value, str) else ""
        for kind in _SPOTS:
            if words == kind:
                return ReadAt(kind)
        match = re.fullmatch(r"bulb ([0-9]{1,6})", words)
        if match and int(match[1]) > 0:
            return ReadAt("bulb", int(match[1]))
        if words.startswith("bulb"):
            raise UnreadableError(_("write the bulb's number, counted from the fed end: bulb 1, bulb 2, ..."))
        near = nearest(words, _SPOTS)
        mend = _("did you mean {name}?").format(name=near) if near else _("write one of these places")
        raise UnreadableError(mend)


@dataclass(frozen=True)
class ShownReader(Reader):
    """What a meter showed: volts, or a current."""

    def expected(self) -> str:
        """What a person should write, in words."""
        return _("what the meter showed, with its unit, such as 2.93 V or 205 mA; 0 V if it showed nothing")

    def read(self, value: Any) -> Shown:
        """The value; raises UnreadableError."""
        if not isinstance(value, str):
            raise UnreadableError(_("write the unit behind the number: V, mV, A or mA"))
        if _is_current(value):
            return Shown(Quantity("current", zero=True).read(value), "A")
        return Shown(Quantity("voltage", zero=True).read(value), "V")


def _is_current(text: str) -> bool:
    match = re.fullmatch(rf"{NUMBER}\s*(.*)", plain_spaces(text), re.DOTALL)
    if match is None or len(text) > 60:
        return False
    try:
        return known_unit(plain_unit(match[1])).measures == "current"
    except ValueError:
        return False
