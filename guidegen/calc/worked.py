"""Worked calculations: a formula's words stand on the function that computes it.

`@formula` puts frozen metadata on a function and changes nothing else;
`work` calls the function once and returns value and text together, so they
cannot drift apart.  Numbers stay SI floats; whoever renders them picks unit
and digits.

In formula texts an underscore begins a subscript: `R_20`, `I_open`.
"""

from __future__ import annotations

import inspect
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any, TypeVar, cast

Function = TypeVar("Function", bound=Callable[..., Any])
#: Symbol, SI unit as printed ("V", "Ω", "m2"; "" for a pure number) and meaning of one quantity.
Words = tuple[str, str, str]
_MARK = "__formula__"


@dataclass(frozen=True)
class Symbol:
    """One quantity of a formula: the function's argument, its symbol, SI unit and meaning."""

    argument: str
    symbol: str
    unit: str
    meaning: str


@dataclass(frozen=True)
class Formula:
    """What a function computes, in words: `title`, `meaning` and `source` are message ids."""

    title: str
    text: str
    symbols: tuple[Symbol, ...]
    result: Symbol
    source: str


@dataclass(frozen=True)
class Term:
    """A quantity of a formula with its value in the SI unit `unit`."""

    symbol: str
    unit: str
    meaning: str
    value: float


@dataclass(frozen=True)
class Worked:
    """A calculation done: title, formula text, its arguments in order, the result, the source."""

    title: str
    formula: str
    terms: tuple[Term, ...]
    result: Term
    source: str

    @property
    def value(self) -> float:
        """The result in SI."""
        return self.result.value


def formula(
    *, title: str, text: str, result: Words, symbols: Mapping[str, Words], source: str
) -> Callable[[Function], Function]:
    """Say on a function what it computes; `symbols` goes by argument name, in reading order."""
    said = Formula(
        title,
        text,
        tuple(Symbol(argument, *words) for argument, words in symbols.items()),
        Symbol("", *result),
        source,
    )

    def mark(function: Function) -> Function:
        setattr(function, _MARK, said)
        return function

    return mark


def formula_of(function: Callable[..., Any]) -> Formula:
    """The metadata that `@formula` put on a function; TypeError when there is none."""
    said = getattr(function, _MARK, None)
    if said is None:
        raise TypeError(f"{function!r} carries no formula")
    return cast(Formula, said)


def work(function: Callable[..., float], **arguments: float) -> Worked:
    """Call the function and return its value together with the formula and all arguments, SI.

    Defaults count as arguments; TypeError when one is missing or unknown.
    """
    said = formula_of(function)
    bound = inspect.signature(function).bind(**arguments)
    bound.apply_defaults()
    value = float(function(**bound.arguments))
    terms = tuple(
        Term(each.symbol, each.unit, each.meaning, float(bound.arguments[each.argument]))
        for each in said.symbols
    )
    result = Term(said.result.symbol, said.result.unit, said.result.meaning, value)
    return Worked(said.title, said.text, terms, result, said.source)
