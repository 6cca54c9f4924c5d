"""Numbers as people of a language write them: decimal sign, percent, money.

Every number that a reader sees is rounded and written here, below all that
shows numbers.  English needs nothing; for another language Babel is asked,
and loaded only then.  No language has a sign between thousands: a point
there would be read as a decimal point by those who write project files.
"""

from __future__ import annotations

import math
from decimal import Decimal
from functools import cache

from guidegen.locale import ENGLISH, language

#: Between a number and its unit, so that a line never breaks there.
NO_BREAK = "\u00a0"
#: Shown where there is no number to show.
NOTHING = "–"


def numeral(text: str) -> str:
    """A number as Python writes it ("-0.50"), in the language in force."""
    tag = language()
    return text if tag == ENGLISH else text.replace(".", _decimal_sign(tag))


def general(value: float, figures: int = 3) -> str:
    """`value` with at most so many significant figures and no needless zeros, as `g` formats it."""
    return numeral(f"{value:.{figures}g}")


def number(value: float, figures: int = 3) -> str:
    """`value` with so many significant figures, without exponent and without needless zeros.

    Whole numbers with more digits than that keep them all.
    """
    return _plain(value, decimals_of(value, figures), trim=True)


def fixed(value: float, decimals: int) -> str:
    """`value` with exactly so many decimals; never "-0.00"."""
    return _plain(value, decimals, trim=False)


def with_unit(text: str, unit: str) -> str:
    """A numeral and its unit, which stay on one line."""
    return f"{text}{NO_BREAK}{unit}" if unit else text


def percent(ratio: float) -> str:
    """A ratio as whole percent: 0.456 is 46 %."""
    return with_unit(fixed(100 * ratio, 0), "%")


def money(amount: float, currency: str) -> str:
    """An amount of money: "12.30 EUR", in German "12,30 €".

    To the hundredth; to two figures below a tenth.
    """
    tag = language()
    exact = amount >= 0.1 or amount == 0
    if tag == ENGLISH:
        return with_unit(fixed(amount, 2) if exact else number(amount, 2), currency)
    from babel.numbers import format_currency  # noqa: PLC0415 - see above

    value = Decimal(f"{amount:.{2 if exact else decimals_of(amount, 2)}f}")
    return format_currency(value, currency, locale=tag, decimal_quantization=False, group_separator=False)


def decimals_of(value: float, figures: int) -> int:
    """The decimals that give `value` so many significant figures."""
    if value == 0 or not math.isfinite(value):
        return 0
    size = float(f"{abs(value):.{figures - 1}e}")
    return max(0, figures - 1 - math.floor(math.log10(size)))


def _plain(value: float, decimals: int, *, trim: bool) -> str:
    if not math.isfinite(value):
        return NOTHING
    text = f"{value:.{decimals}f}"
    if trim and "." in text:
        text = text.rstrip("0").rstrip(".")
    if not text.strip("-0."):
        text = text.lstrip("-")
    return numeral(text.replace("-", "−"))


@cache
def _decimal_sign(tag: str) -> str:
    from babel.numbers import get_decimal_symbol  # noqa: PLC0415 - see above

    return get_decimal_symbol(tag)
