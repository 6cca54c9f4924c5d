"""Values as a person writes them, a number and a unit, read into SI floats.

The annotated types at the end are what the models of the project file are
made of.  Each knows the words for what it expects and the plausible bounds,
so that an error message cannot drift from the check.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from decimal import Decimal
from functools import cache
from typing import Annotated, Any, Literal

from guidegen.locale import N_, _
from guidegen.project.money import Price, PriceReader, TariffReader
from guidegen.project.plain import LONGEST, NUMBER, GaugeReader, Reader, UnreadableError, plain_spaces
from guidegen.project.units import UnknownUnitError, known_unit, measures, spellings
from guidegen.project.writing import nearest
from guidegen.tables.hanging import GRAVITY


@dataclass(frozen=True)
class Kind:
    """A kind of value: its words, the units people write, and generous bounds."""

    noun: str
    units: str
    example: str
    low: str
    high: str


# Bounds: far outside what low-voltage decorative lighting meets, but near
# enough to catch a slipped prefix.  Mains volts stay readable, for a safety
# rule to refuse them with its reason.
KINDS = {
    "area": Kind(N_("an area"), "mm2", "0.5 mm2", "0.001 mm2", "1000 mm2"),
    "current": Kind(N_("a current"), "A, mA, uA", "20 mA", "1 uA", "100 A"),
    "force": Kind(N_("a force"), "N, kN", "60 N", "0.1 N", "100 kN"),
    "length": Kind(N_("a length"), "m, cm, mm, ft, in", "25 cm", "1 mm", "1 km"),
    "mass": Kind(N_("a weight"), "g, kg, oz, lb", "2 g", "0.01 g", "10000 kg"),
    "mass per length": Kind(N_("a weight per length"), "g/m, kg/m", "12 g/m", "0.1 g/m", "10 kg/m"),
    "power": Kind(N_("a power"), "W, mW", "0.5 W", "1 mW", "10 kW"),
    "ratio": Kind(N_("a ratio"), "%", "5 %", "0.1 %", "100 %"),
    "resistance": Kind(N_("a resistance"), "ohm, mohm, kohm", "10 ohm", "0.1 mohm", "10 Mohm"),
    "resistance per length": Kind(
        N_("a resistance per length"), "ohm/m, ohm/km, ohm/ft", "0.25 ohm/m", "0.01 ohm/km", "1000 ohm/m"
    ),
    "speed": Kind(N_("a speed"), "m/s, km/h, mi/h", "20 m/s", "0.1 m/s", "100 m/s"),
    "temperature": Kind(N_("a temperature"), "degC, degF", "-5 degC", "-60 degC", "85 degC"),
    "time": Kind(N_("a time"), "h, min", "5 h", "1 min", "24 h"),
    "voltage": Kind(N_("a voltage"), "V, mV", "5.1 V", "1 mV", "1000 V"),
}

_NUMBER_AND_UNIT = re.compile(rf"({NUMBER})\s*(.*)", re.DOTALL)
_UNIT_SIGNS = {
    "Ω": "ohm",
    "\u2126": "ohm",  # the ohm sign, a separate character
    "\u2103": "degC",
    "\u2109": "degF",
    "°": "deg",
    "º": "deg",
    "µ": "u",
    "\u03bc": "u",  # the Greek letter, a separate character
    "²": "2",
    "³": "3",
    "%": "percent",
    "\u2044": "/",
    "\u2215": "/",
}


def plain_unit(text: str) -> str:
    """The unit in plain letters: "kΩ" and "k ohm" are "kohm", "mm²" is "mm2", "°C" is "degC"."""
    for sign, plain in _UNIT_SIGNS.items():
        text = text.replace(sign, plain)
    return re.sub(r"\s+", "", text)


def parse(text: str, dimension: str) -> float:
    """The SI value (temperatures in degree Celsius) of a text such as "25 cm".

    `dimension` is a key of KINDS.  Raises UnreadableError; bounds are not
    looked at.
    """
    kind = KINDS[dimension]
    number, unit = _split(plain_spaces(text), kind)
    if dimension == "ratio" and not unit:
        return float(number)
    if not unit:
        raise UnreadableError(_("write the unit behind the number: {units}").format(units=kind.units))
    try:
        known = known_unit(plain_unit(unit))
    except UnknownUnitError:
        raise UnreadableError(_mend_unit(str(number), unit, kind)) from None
    if known.measures != dimension:
        raise UnreadableError(_mend_dimension(unit, kind))
    return known.to_si(number)


def _split(text: str, kind: Kind) -> tuple[Decimal, str]:
    """Number and unit text, by a pattern; raises UnreadableError."""
    match = _NUMBER_AND_UNIT.fullmatch(text) if len(text) <= LONGEST else None
    for trap, mend in _TRAPS if len(text) <= LONGEST else ():
        if trap.match(text):
            raise UnreadableError(_(mend).format(example=_own(text, kind), whole=text.replace(",", "")))
    if match is None:
        raise UnreadableError(
            _("write one number, a space and a unit, such as {example}").format(example=kind.example)
        )
    return Decimal(match[1]), match[2]


# What people type that is no number and unit, most particular first.
_TRAPS = [
    (re.compile(pattern, re.IGNORECASE), mend)
    for pattern, mend in (
        (
            r"[+-]?[0-9]{1,3}(?:,[0-9]{3})+(?![0-9])",
            N_("leave out the comma: {whole}; if it was meant as a decimal comma, write a point: {example}"),
        ),
        (r"[+-]?[0-9]*,[0-9]+", N_("write a decimal point, not a comma, such as {example}")),
        (
            r"[+-]?[0-9]+(?:['’_ ][0-9]+)+",
            N_("write the number without spaces or marks between its digits, such as {example}"),
        ),
        (
            r"[+-]?(?:\.?(?:nan|inf|infinity))\b",
            N_("write a real number, such as {example}"),
        ),
        (
            r"[+-]?[0-9.]+\s*(?:\.\.+|…|-|–|—|to|±|\+/?-)\s*[0-9]",
            N_("write one value, not a range, such as {example}"),
        ),
        (
            r"(?:[~≈<>≤≥]|about\b|approx|ca\b)",
            N_("write the value alone, without a word or sign before it, such as {example}"),
        ),
        (r"[+-]?[0-9]+:[0-9]", N_("write one number with a decimal point, not a time, such as {example}")),
        (r"[A-Za-zΩµμ°%]+[0-9/²]*$", N_("write a number before the unit, such as {example}")),
    )
]


def _own(text: str, kind: Kind) -> str:
    """The person's own number with a decimal point, if that is all it lacks; else an example."""
    own = text.replace(",", ".")
    match = _NUMBER_AND_UNIT.fullmatch(own)
    wanted = measures(plain_unit(kind.units.split(",")[0]))
    fits = match is not None and "," in text and (measures(plain_unit(match[2])) == wanted)
    return own if fits else kind.example


def _mend_unit(number: str, unit: str, kind: Kind) -> str:
    """What to do about a unit that is not known."""
    meant = _meant_units(unit, kind)
    if meant:
        values = _(" or ").join(f"{number} {name}" for name in meant)
        return _("did you mean {values}?").format(values=values)
    first = unit.split(maxsplit=1)[0]
    if measures(plain_unit(first)) or not plain_unit(first)[0].isalpha():
        return _("write only one number, a space and a unit, such as {example}").format(example=kind.example)
    known = measures(plain_unit(kind.units.split(",")[0]))
    near = nearest(unit, (name for name in spellings() if len(name) > 2 and measures(name) == known))
    if near:
        return _("did you mean {near}? use one of {units}").format(near=near, units=kind.units)
    return _("{unit} is no unit known here; use one of {units}").format(unit=unit, units=kind.units)


def _meant_units(unit: str, kind: Kind) -> list[str]:
    """The units of this kind that the text is but for the size of its letters or a missing degree."""
    written = plain_unit(unit).casefold()
    return [
        name
        for name in (part.strip() for part in kind.units.split(","))
        if name.casefold() in (written, f"deg{written}")
    ]


def _mend_dimension(unit: str, kind: Kind) -> str:
    measured = measures(plain_unit(unit))
    if measured is None:
        return _("{unit} measures something else; use one of {units}").format(unit=unit, units=kind.units)
    return _("{unit} measures {measured}; use one of {units}").format(
        unit=unit, measured=_(measured), units=kind.units
    )


@dataclass(frozen=True)
class Quantity(Reader):
    """A number with a unit, within bounds; SI floats pass through for programs."""

    dimension: str
    zero: bool = False
    low: str = ""
    high: str = ""

    def bounds(self) -> tuple[str, str]:
        """Smallest and largest plausible value, as text."""
        kind = KINDS[self.dimension]
        return self.low or kind.low, self.high or kind.high

    def expected(self) -> str:
        """What a person should write, in words."""
        kind, (low, high) = KINDS[self.dimension], self.bounds()
        form = N_("{noun} with its unit, {low} to {high}, such as {example}")
        if self.zero:
            form = N_("{noun} with its unit, 0 or {low} to {high}, such as {example}")
        if self.dimension == "ratio":
            form = N_("{noun} from {low} to {high}, such as 0.05 or {example}")
        return _(form).format(noun=_(kind.noun), low=low, high=high, example=kind.example)

    def read(self, value: Any) -> float:
        """The value in SI units (temperatures in degree Celsius); raises UnreadableError."""
        if isinstance(value, str):
            number = parse(value, self.dimension)
        elif isinstance(value, int | float) and not isinstance(value, bool):
            number = float(value)
        else:
            raise UnreadableError(_not_one_value(KINDS[self.dimension].example))
        low, high = (_bound(text, self.dimension) for text in self.bounds())
        if low <= number <= high or (self.zero and number == 0):
            return number
        raise UnreadableError(self._mend_bounds(number))

    def _mend_bounds(self, number: float) -> str:
        if number < 0 and self.dimension != "temperature":
            return _("write it without the minus sign")
        if number == 0:
            return _("write a value above zero")
        if self.dimension == "ratio":
            return _("check the number; a half is 0.5 or 50 %")
        if self.dimension == "temperature":
            return _("check the number and its unit")
        return _(
            "check the number and its unit; a prefix may have slipped (m is milli, k is kilo, M is mega)"
        )


@cache
def _bound(text: str, dimension: str) -> float:
    return parse(text, dimension)


def _not_one_value(example: str) -> str:
    return _("write one value on the key's own line, such as {example}").format(example=example)


@dataclass(frozen=True)
class ResistorReader(Quantity):
    """A resistance, or the word none for no resistor at all."""

    def expected(self) -> str:
        """What a person should write, in words."""
        return _("{resistance}; or none").format(resistance=super().expected())

    def read(self, value: Any) -> Any:
        """Ohms, or "none"; raises UnreadableError."""
        return value if value == "none" else super().read(value)


_FUSE_TYPES = re.compile(
    r"([0-9.]+\s*m?A)\s*,?\s*(?:slow|fast|quick|time|anti|delay|blow|surge|[TFM][LH]?\b).*", re.IGNORECASE
)
_NO_FUSE = frozenset({"none", "no", "without", "no fuse", "off"})


@dataclass(frozen=True)
class FuseReader(Quantity):
    """The rating of a fuse, without the words that stand on it beside the amperes."""

    def expected(self) -> str:
        """What a person should write, in words."""
        low, high = self.bounds()
        return _("the fuse's current with its unit, {low} to {high}, such as 1 A").format(low=low, high=high)

    def read(self, value: Any) -> float:
        """Amperes; raises UnreadableError."""
        text = plain_spaces(value) if isinstance(value, str) else ""
        if text.casefold() in _NO_FUSE:
            raise UnreadableError(_("every build needs a fuse; leave the key out to have one chosen"))
        found = _FUSE_TYPES.fullmatch(text) if len(text) <= LONGEST else None
        if found is not None:
            rest = text[len(found[1]) :].strip(" ,")
            raise UnreadableError(_("leave out {words} and write {value}").format(words=rest, value=found[1]))
        return super().read(value)


@dataclass(frozen=True)
class LoadReader(Quantity):
    """A force; a weight in kilogram counts as its force on the ground."""

    def expected(self) -> str:
        """What a person should write, in words."""
        return _("{force}; or a weight such as 6 kg").format(force=super().expected())

    def read(self, value: Any) -> float:
        """The force in newton; raises UnreadableError."""
        if isinstance(value, str) and measures(plain_unit(value.lstrip("+-.0123456789 \u00a0"))) == "mass":
            return super().read(GRAVITY * parse(value, "mass"))
        return super().read(value)


Area = Annotated[float, Quantity("area")]
Coordinate = Annotated[float, Quantity("length", low="-1 km")]
Celsius = Annotated[float, Quantity("temperature")]
Current = Annotated[float, Quantity("current")]
Fuse = Annotated[float, FuseReader("current", low="1 mA")]
Gauge = Annotated[int, GaugeReader()]
Length = Annotated[float, Quantity("length")]
Load = Annotated[float, LoadReader("force")]
Mass = Annotated[float, Quantity("mass")]
MassPerLength = Annotated[float, Quantity("mass per length")]
Money = Annotated[Price, PriceReader()]
Power = Annotated[float, Quantity("power")]
Ratio = Annotated[float, Quantity("ratio")]
Resistance = Annotated[float, Quantity("resistance")]
ResistancePerLength = Annotated[float, Quantity("resistance per length")]
ResistorOrNone = Annotated[float | Literal["none"], ResistorReader("resistance", zero=True)]
Speed = Annotated[float, Quantity("speed")]
Tariff = Annotated[Price, TariffReader()]
Time = Annotated[float, Quantity("time")]
Tolerance = Annotated[float, Quantity("ratio", low="0 %", high="49 %")]
Voltage = Annotated[float, Quantity("voltage")]
ZeroOrLength = Annotated[float, Quantity("length", zero=True)]
ZeroOrPower = Annotated[float, Quantity("power", zero=True)]
ZeroOrResistance = Annotated[float, Quantity("resistance", zero=True)]
