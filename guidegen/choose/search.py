"""Look through all candidates for those that nothing beats.

Candidates that a solved one is certain to beat are passed over: before
anything is solved, a candidate's costs are known, and its evenness and the
price of its resistors are bounded from what its runs do at known currents.
Those that nothing beats by these hopes are solved first; they pass over most
of the others.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, fields
from itertools import pairwise

import numpy as np

from guidegen.choose.bounds import most_evenness
from guidegen.choose.circuits import chains_of
from guidegen.choose.costs import Costs, costs_of, least_resistor_money, resistor_money
from guidegen.choose.curves import ROOM, Bounds
from guidegen.choose.front import Whole, beaten, objectives, unbeaten
from guidegen.choose.judging import Excess, Judged, judge_trials, least_ratings_w
from guidegen.choose.pool import Field, Ints, Trials
from guidegen.choose.progress import Progress
from guidegen.choose.reckon import Reckoned, reckon
from guidegen.circuit.arrangement import Floats

#: Bulbs solved in one go, conditions not counted: as many as the fast memory of a computer holds.
BLOCK_BULBS = 20_000
#: Candidates whose hopes are compared with one another.
_TOGETHER = 8_192


@dataclass(frozen=True)
class Figures:
    """What solving one candidate found: evenness, LED current over the one aimed at, money, resistors."""

    evenness: float
    led_share: float
    money: float
    ohms: tuple[float, ...]


@dataclass(frozen=True, eq=False)
class Found:
    """What a search found.

    `numbers`: the unbeaten candidates within every limit, `values` their
    objectives, `figures` by number, of the closest one too; `trials`: all
    candidates; `solved`: how many were solved; `closest`: number of the one
    that comes closest to the limits; `excess`: the least excess of each kind
    over all that were solved.
    """

    trials: Trials
    numbers: Whole
    values: Whole
    figures: dict[int, Figures]
    solved: int
    closest: int
    excess: dict[str, float]


class _Best:
    """What is known so far: the unbeaten candidates, and how close the others come to the limits."""

    def __init__(self, columns: int) -> None:
        self.numbers = np.empty(0, np.int64)
        self.values = np.empty((0, columns), np.int64)
        self.figures: dict[int, Figures] = {}
        self.solved = 0
        self.closest = (np.inf, -1)
        self.excess = {each.name: np.inf for each in fields(Excess)}

    def add(self, numbers: Ints, values: Whole, money: Floats, judged: Judged) -> None:
        """Take in candidates just solved, and keep the unbeaten ones."""
        excess = judged.excess
        self.solved += len(numbers)
        least = excess.worst.min()
        self.closest = min(self.closest, (float(least), int(numbers[excess.worst == least].min())))
        for name, least in self.excess.items():
            self.excess[name] = min(least, float(getattr(excess, name).min()))
        within = excess.within
        joined = np.concatenate([self.numbers, numbers[within]])
        joined_values = np.concatenate([self.values, values[within]])
        kept = unbeaten(joined_values, joined)
        self.numbers, self.values = joined[kept], joined_values[kept]
        self._keep_figures(numbers, money, judged)

    def _keep_figures(self, numbers: Ints, money: Floats, judged: Judged) -> None:
        """Note those of candidates just solved that stay."""
        stay = {*self.numbers.tolist(), self.closest[1]}
        ohms = np.split(judged.ohm, judged.chains.first[1:])
        for index in np.flatnonzero(np.isin(numbers, list(stay))):
            self.figures[int(numbers[index])] = Figures(
                float(judged.evenness[index]),
                float(judged.led_share[index]),
                float(money[index]),
                tuple(ohms[index].tolist()),
            )


def search(field: Field, bounds: Bounds, exhaustive: bool = False, progress: Progress | None = None) -> Found:
    """Every candidate within its limits that no other beats.

    `exhaustive`: solve every candidate instead of passing over those that
    are certain to be beaten; the result is the same.
    """
    trials = field.all_trials()
    costs = costs_of(field, trials)
    hopes = _hopes(field, trials, costs, bounds)
    bulbs = np.add.reduceat(field.pool.sizes[field.part_shape[0]], field.first)[trials.layout]
    best, seen = _Best(hopes.shape[1]), 0

    def in_the_race(some: Ints) -> Ints:
        """Those of them that nothing known is certain to beat."""
        return some if exhaustive else some[~beaten(hopes[some], some, best.values, best.numbers)]

    for some in _in_turn(hopes):
        racing = in_the_race(some)
        seen += len(some) - len(racing)
        for block in _blocks(racing, bulbs[racing]):
            waiting = in_the_race(block)
            if len(waiting):
                judged = judge_trials(field, trials.some(waiting), bounds.at_aim)
                money = money_of(field, costs.some(waiting), judged)
                best.add(waiting, _values(field, costs.some(waiting), money, judged), money, judged)
            seen += len(block)
            if progress is not None:
                progress.show(seen, len(trials))
    return Found(trials, best.numbers, best.values, best.figures, best.solved, best.closest[1], best.excess)


def _hopes(field: Field, trials: Trials, costs: Costs, bounds: Bounds) -> Whole:
    """The objectives of candidates, each at least as good as it will come out."""
    found = reckon(field, chains_of(field, trials), bounds)
    evenness = most_evenness(field, trials, bounds, found)
    resistors = np.where(found.sure, _reckoned_money(field, found), least_resistor_money(field, trials))
    return objectives(field.project.goals, evenness, np.ones(len(trials)), costs, costs.money + resistors)


def _reckoned_money(field: Field, found: Reckoned) -> Floats:
    """Less than the resistors of candidates can cost, by what was reckoned (n,)."""
    rating_w = least_ratings_w(field, found.chains, found.ohm, found.current_a * (1 - ROOM))
    money: Floats = np.add.reduceat(resistor_money(field, rating_w, found.ohm), found.chains.first)
    return money


def money_of(field: Field, costs: Costs, judged: Judged) -> Floats:
    """What judged candidates cost, resistors included (n,); `costs`: without them."""
    resistors = resistor_money(field, judged.rating_w, judged.ohm)
    money: Floats = costs.money + np.add.reduceat(resistors, judged.chains.first)
    return money


def _values(field: Field, costs: Costs, money: Floats, judged: Judged) -> Whole:
    return objectives(field.project.goals, judged.evenness, field.dim * judged.led_share, costs, money)


def _in_turn(hopes: Whole) -> Iterator[Ints]:
    """All candidates, in the order in which they are best looked at.

    What beats another has the smaller sum of hopes and comes first; of many
    together, those that nothing beats by their hopes.
    """
    order = np.argsort(hopes.sum(axis=1), kind="stable")
    for start in range(0, len(order), _TOGETHER):
        some = order[start : start + _TOGETHER]
        first = np.zeros(len(some), dtype=bool)
        first[unbeaten(hopes[some], some)] = True
        yield some[first]
        yield some[~first]


def _blocks(which: Ints, bulbs: Ints) -> Iterator[Ints]:
    """Candidates with so many bulbs, as many at a time as make a block."""
    place = np.cumsum(bulbs) // BLOCK_BULBS
    for start, end in pairwise(np.flatnonzero(np.diff(place, prepend=-1, append=-1))):
        yield which[start:end]
