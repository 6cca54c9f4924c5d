"""Units, by pint with this project's own small unit file.

pint never sees the text a person typed, only one unit at a time that a
pattern has let through: its own parser takes `3,5 V` for 35 V and
`800 mcd` for microdays.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from decimal import Decimal
from functools import cache
from pathlib import Path
from typing import TYPE_CHECKING

from guidegen.locale import N_

if TYPE_CHECKING:
    import pint

# What the unit of each kind of value is once read, and the kind's name in a sentence.
SI_UNIT = {
    "area": "metre ** 2",
    "current": "ampere",
    "energy": "watthour",
    "charge": "ampere_hour",
    "force": "newton",
    "frequency": "hertz",
    "length": "metre",
    "mass": "kilogram",
    "mass per length": "kilogram / metre",
    "power": "watt",
    "ratio": "percent",
    "resistance": "ohm",
    "resistance per length": "ohm / metre",
    "speed": "metre / second",
    "temperature": "degree_Celsius",
    "time": "second",
    "voltage": "volt",
}
_KIND_NAMES = (
    N_("area"),
    N_("current"),
    N_("energy"),
    N_("charge"),
    N_("force"),
    N_("frequency"),
    N_("length"),
    N_("mass"),
    N_("mass per length"),
    N_("power"),
    N_("ratio"),
    N_("resistance"),
    N_("resistance per length"),
    N_("speed"),
    N_("temperature"),
    N_("time"),
    N_("voltage"),
)

_UNIT_FILE = Path(__file__).with_name("units.txt")
# One unit name with an optional square or cube, or two of them with a slash between.
_NAME = r"[A-Za-z]+(?:_[A-Za-z]+)?"
_UNIT = re.compile(rf"({_NAME})(?:\^|\*\*)?([23])?(?:/({_NAME}))?")
_PLURAL_FROM = 3  # "ohms" is a plural; "As" and "mAs" are not


class UnknownUnitError(ValueError):
    """The text is no unit that a project file may use."""


@dataclass(frozen=True)
class Unit:
    """A known unit: what it measures (None for a mixture without a name), and how to turn it into SI."""

    measures: str | None
    factor: float
    offset: float

    def to_si(self, number: Decimal) -> float:
        """`number` of this unit in SI units (temperatures in degree Celsius).

        In decimals, so that "1.1 mA" is the same float as 0.0011.
        """
        return float(number * Decimal(repr(self.factor)) + Decimal(repr(self.offset)))


@cache
def _registry() -> pint.UnitRegistry[float]:
    # pint takes a fifth of a second to import: only when the first unit is met.
    import pint  # noqa: PLC0415

    return pint.UnitRegistry(str(_UNIT_FILE), cache_folder=None, on_redefinition="raise")


@cache
def spellings() -> frozenset[str]:
    """Every name of a unit in the unit file, without plurals."""
    lines = (line for line in _UNIT_FILE.read_text("utf-8").splitlines() if "=" in line and line[0] != "#")
    parts = ([part.split(";")[0].strip() for part in line.split("=")] for line in lines)
    return frozenset(name for first, _definition, *others in parts for name in (first, *others))


def _is_name(name: str) -> bool:
    """Whether this one word is in the unit file, as written or as a plural."""
    single = name.removesuffix("s")
    return name in spellings() or (single in spellings() and len(single) >= _PLURAL_FROM)


@cache
def _kinds() -> dict[object, str]:
    """Kind of value by pint's dimensionality."""
    registry = _registry()
    return {registry.parse_units(unit).dimensionality: kind for kind, unit in SI_UNIT.items()}


@cache
def known_unit(text: str) -> Unit:
    """The unit written as `text`, such as "mA", "mm2" or "ohm/ft".

    Raises UnknownUnitError for anything else.
    """
    match = _UNIT.fullmatch(text)
    if match is None or not all(_is_name(name) for name in match.group(1, 3) if name):
        raise UnknownUnitError(text)
    top, power, bottom = match.groups()
    registry = _registry()
    unit = registry.parse_units(f"{top} ** {power or 1} / {bottom}" if bottom else f"{top} ** {power or 1}")
    kind = _kinds().get(unit.dimensionality)
    si = registry.parse_units(SI_UNIT[kind]) if kind and kind != "ratio" else None
    return _line_through(unit, si, kind)


def _line_through(unit: pint.Unit, si: pint.Unit | None, kind: str | None) -> Unit:
    """The straight line from a unit's numbers to SI numbers, from two of its points.

    Two points, since degree Celsius and Fahrenheit have different zeros.
    """
    at_0, at_1 = (_convert(number, unit, si) for number in (0.0, 1.0))
    return Unit(kind, at_1 - at_0, at_0)


def _convert(number: float, unit: pint.Unit, si: pint.Unit | None) -> float:
    quantity = _registry().Quantity(number, unit)
    return float((quantity.to(si) if si else quantity.to_base_units()).magnitude)


def measures(text: str) -> str | None:
    """What the unit `text` measures, such as "current"; None if it is no unit known here."""
    try:
        return known_unit(text).measures
    except UnknownUnitError:
        return None
