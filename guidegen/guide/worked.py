"""Worked calculations as a page shows them: the numbers put into the formula by the call that computed it.

Numbers that are put in stay in plain volts, amperes, ohms and metres, so
that a pocket calculator gives the result.
"""

from __future__ import annotations

import math
import re

from guidegen.calc.worked import Term, Worked
from guidegen.guide.blocks import Calculation, Symbol
from guidegen.guide.format import NO_BREAK, number
from guidegen.locale import _
from guidegen.locale.numerals import numeral

#: Figures of the numbers put in and of the result.
FIGURES = 4
#: Units as shown, and how many of them make one SI unit.
_SHOWN = {
    "1": ("", 1.0),
    "Ω m": ("Ω·mm²/m", 1e6),
    "m2": ("mm²", 1e6),
}
#: A symbol of a formula: letters, Latin or Greek, and perhaps a subscript.
_SYMBOL = re.compile(r"[A-Za-z\u0370-\u03ff]+(?:_[A-Za-z0-9]+)?")
_SUPERSCRIPTS = str.maketrans("-0123456789", "⁻⁰¹²³⁴⁵⁶⁷⁸⁹")
#: Outside these powers of ten a number is written with one.
_SMALLEST, _LARGEST = 1e-4, 1e6


def calculation(worked: Worked, title: str = "", note: str = "") -> Calculation:
    """A calculation as a block; `title` stands in for the formula's own."""
    return Calculation(
        title=title or _(worked.title),
        formula=worked.formula,
        symbols=tuple(_symbol(term) for term in (*worked.terms, worked.result)),
        substituted=f"{worked.result.symbol} = {put_in(worked)}",
        result=f"{worked.result.symbol} = {shown(worked.result)}",
        source=_(worked.source),
        note=note,
    )


def put_in(worked: Worked) -> str:
    """The right side of the formula with numbers in the place of symbols."""
    right = worked.formula.partition("=")[2].strip()
    values = {term.symbol: term for term in worked.terms}

    def value(match: re.Match[str]) -> str:
        term = values.get(match[0])
        return match[0] if term is None else _put(term, right[match.end() :])

    return _SYMBOL.sub(value, right)


def shown(term: Term) -> str:
    """A quantity with its unit, in units without a prefix."""
    unit, factor = _SHOWN.get(term.unit, (term.unit, 1.0))
    text = plain(term.value * factor)
    return f"{text}{NO_BREAK}{unit}" if unit else text


def plain(value: float, figures: int = FIGURES) -> str:
    """A number with so many figures; with a power of ten where it is very small or very large."""
    size = abs(value)
    if not math.isfinite(value):
        return "∞" if value > 0 else "−∞"
    if size == 0 or _SMALLEST <= size < _LARGEST:
        return number(value, figures)
    mantissa, _e, power = f"{value:.{figures - 1}e}".partition("e")
    mantissa = numeral(mantissa.replace("-", "−"))
    return f"{mantissa}{NO_BREAK}×{NO_BREAK}10{str(int(power)).translate(_SUPERSCRIPTS)}"


def _symbol(term: Term) -> Symbol:
    return Symbol(term.symbol, _(term.meaning), shown(term))


def _put(term: Term, after: str) -> str:
    text = shown(term)
    raised = after.startswith(("²", "^"))
    return f"({text})" if raised or term.value < 0 else text
