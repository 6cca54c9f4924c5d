"""How bulbs may be split into runs."""

from __future__ import annotations

from collections.abc import Iterator

from guidegen.project.schema import LightString
from guidegen.safety.strings import is_parallel

#: Runs in an arrangement that is looked for.
MOST_RUNS = 8
#: Strings up to which every split at string ends is looked at; above it the runs differ by one string.
FEW_STRINGS = 24

Sizes = tuple[int, ...]


def splits(kind: LightString, bulbs: int, most_runs: int = MOST_RUNS) -> tuple[Sizes, ...]:
    """Sizes of the runs that `bulbs` bulbs of one kind of string may be split into, each split once.

    As even as can be, cut inside a string or not; and at string ends.  At
    most two sizes, the larger runs first.  A string that may not be cut or
    joined gives one run a string, however many there are.
    """
    strings, rest = divmod(bulbs, kind.bulbs)
    if not is_parallel(kind):
        return ((kind.bulbs,) * strings,) if rest == 0 else ()
    found = dict.fromkeys(_even(bulbs, most_runs))
    if rest == 0:
        at_ends = _two_sizes(strings, most_runs) if strings <= FEW_STRINGS else _even(strings, most_runs)
        found |= dict.fromkeys(tuple(size * kind.bulbs for size in sizes) for sizes in at_ends)
    return tuple(found)


def _even(count: int, most_runs: int) -> Iterator[Sizes]:
    """`count` things in 1, 2, ... runs whose sizes differ by one at most."""
    for runs in range(1, min(most_runs, count) + 1):
        size, larger = divmod(count, runs)
        yield (size + 1,) * larger + (size,) * (runs - larger)


def _two_sizes(count: int, most_runs: int) -> Iterator[Sizes]:
    """`count` things in runs of at most two sizes."""
    yield from _even(count, most_runs)
    for runs in range(2, most_runs + 1):
        for large in range(1, runs):
            small = runs - large
            for size in range(1, count // small + 1):
                larger, rest = divmod(count - small * size, large)
                if rest == 0 and larger > size:
                    yield (larger,) * large + (size,) * small
