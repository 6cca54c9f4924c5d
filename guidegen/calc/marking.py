"""How a resistor's value is marked: colour bands, and letters on larger bodies.

Source: IEC 60062.  Values in ohm, tolerances as ratios.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from decimal import Decimal

from guidegen.tables.resistors import DIGIT_COLOURS, MULTIPLIER_POWER, TOLERANCE_COLOURS, TOLERANCE_LETTERS

_DIGITS = {colour: digit for digit, colour in enumerate(DIGIT_COLOURS)}
_PREFIXES = ((Decimal(10) ** 6, "M"), (Decimal(10) ** 3, "K"), (Decimal(1), "R"))


def band_colours(value_ohm: float, tolerance: float, bands: int = 4) -> tuple[str, ...]:
    """Colours from the first digit to the tolerance, for 4 or 5 bands.

    ValueError when the value has more digits than the bands can show, lies
    outside the multipliers, or the tolerance has no colour.
    """
    if bands not in (4, 5):
        raise ValueError(f"resistors have 4 or 5 bands, not {bands}")
    digits, power = _digits(value_ohm, bands - 2)
    colours = (*(DIGIT_COLOURS[int(digit)] for digit in digits), _key(MULTIPLIER_POWER, power))
    return (*colours, _key(TOLERANCE_COLOURS, tolerance))


def value_of_bands(colours: Sequence[str]) -> tuple[float, float]:
    """Value (ohm) and tolerance (ratio) of 4 or 5 colours; ValueError when a colour has no meaning there."""
    if len(colours) not in (4, 5):
        raise ValueError(f"resistors have 4 or 5 bands, not {len(colours)}")
    *digits, multiplier, tolerance = colours
    try:
        number = "".join(str(_DIGITS[colour]) for colour in digits)
        value = float(f"{number}e{MULTIPLIER_POWER[multiplier]}")
        return value, TOLERANCE_COLOURS[tolerance]
    except KeyError as error:
        raise ValueError(f"no such colour in that band: {error.args[0]}") from None


def printed(value_ohm: float, tolerance: float, rating_w: float | None = None) -> str:
    """Marking as printed on a body: 10 ohm, 5 %, 5 W is "5W10RJ"; ValueError without a tolerance letter."""
    watts = "" if rating_w is None else f"{rating_w:g}W"
    return watts + value_code(value_ohm) + _key(TOLERANCE_LETTERS, tolerance)


def value_code(value_ohm: float) -> str:
    """The value with its letter in place of the decimal point: 4R7, 10R, 1K5, R47."""
    if not value_ohm > 0:
        raise ValueError(f"not above zero: {value_ohm}")
    value = Decimal(f"{value_ohm:.10g}")
    scale, letter = next((each for each in _PREFIXES if value >= each[0]), _PREFIXES[-1])
    whole, _, part = f"{(value / scale).normalize():f}".partition(".")
    return f"{'' if whole == '0' else whole}{letter}{part}"


def _digits(value_ohm: float, count: int) -> tuple[str, int]:
    if not (value_ohm > 0 and math.isfinite(value_ohm)):
        raise ValueError(f"not a finite number above zero: {value_ohm}")
    exact = Decimal(f"{value_ohm:.10g}").normalize()
    power = exact.adjusted() - (count - 1)
    number = exact.scaleb(-power)
    if number != number.to_integral_value():
        raise ValueError(f"{value_ohm:g} has more than {count} digits")
    return str(int(number)), power


def _key(table: Mapping[str, float], value: float) -> str:
    for key, entry in table.items():
        if math.isclose(entry, value, rel_tol=1e-9):
            return key
    raise ValueError(f"no marking for {value:g}")
