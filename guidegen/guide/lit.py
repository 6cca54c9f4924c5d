"""Which bulbs light on direct current, by number: a two-way string lights half of itself."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import numpy as np

from guidegen.circuit.arrangement import RunPlan, half_lit
from guidegen.locale import _

#: An even row of more numbers than this is told by its first three and its last.
_TOLD = 4


def lit_bulbs(run: RunPlan) -> tuple[int, ...]:
    """Numbers in the run of the bulbs that light."""
    return tuple(int(index) + 1 for index in np.flatnonzero(run.lit_groups > 0))


def pieces_bulbs(run: RunPlan) -> Iterator[tuple[tuple[int, ...], tuple[int, ...]]]:
    """Of every piece the numbers in the run of the bulbs that light, and of those that stay dark."""
    lit, first = set(lit_bulbs(run)), 1
    for piece in run.pieces:
        numbers = range(first, first + piece.bulbs)
        yield tuple(n for n in numbers if n in lit), tuple(n for n in numbers if n not in lit)
        first += piece.bulbs


def halves(bulbs: int) -> tuple[tuple[int, ...], tuple[int, ...]]:
    """Numbers as bought of the bulbs of a whole two-way string that light, and of those that stay dark."""
    numbers = np.arange(1, bulbs + 1)
    lit = half_lit(numbers)
    return tuple(int(n) for n in numbers[lit]), tuple(int(n) for n in numbers[~lit])


def numbers_text(numbers: Sequence[int]) -> str:
    """Numbers of bulbs, long even rows of them cut short: "1, 3, 5, … 19"; "none" where there are none."""
    return ", ".join(_row_text(row) for row in _rows(numbers)) if numbers else _("none")


def _rows(numbers: Sequence[int]) -> Iterator[Sequence[int]]:
    """The numbers in stretches of even steps of two."""
    begin = 0
    for place in range(1, len(numbers) + 1):
        if place == len(numbers) or numbers[place] - numbers[place - 1] != 2:
            yield numbers[begin:place]
            begin = place


def _row_text(row: Sequence[int]) -> str:
    if len(row) <= _TOLD:
        return ", ".join(str(number) for number in row)
    return f"{row[0]}, {row[1]}, {row[2]}, … {row[-1]}"
