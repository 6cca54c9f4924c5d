"""Choosing: `python -m tests.benchmarks.choose`."""

from __future__ import annotations

import time
from collections.abc import Callable

import numpy as np
from scipy.linalg import solve_banded

from guidegen.choose.choose import best_runs
from guidegen.choose.curves import make_bounds
from guidegen.choose.judging import judge_trials
from guidegen.choose.pool import Field, Trials
from guidegen.choose.search import BLOCK_BULBS, search
from guidegen.project.schema import Project
from guidegen.study import fit_leds
from tests.benchmarks.solve import same_band
from tests.benchmarks.timing import show
from tests.choose.making import field_of, project_with

#: Bulbs of the case that the rate is told for, and of the case that a proposal is timed for.
FEW, MANY = (
    {"strings.drop.bought": 4, "strings.drop.bulbs": 12},
    {
        "strings.drop.bought": 10,
        "strings.drop.bulbs": 10,
    },
)


def blocks(field: Field) -> list[Trials]:
    """Every candidate once, as many at a time as the search takes."""
    trials = field.all_trials()
    count = max(1, BLOCK_BULBS // int(field.pool.sizes[field.part_shape[0][: field.counts[0]]].sum()))
    return [
        trials.some(np.arange(start, min(start + count, len(trials))))
        for start in range(0, len(trials), count)
    ]


def judge_all(field: Field, parts: list[Trials]) -> int:
    """Solve and judge every candidate at nominal and at all four worst-case corners; how many there are.

    What is worked out of single runs at known currents is made anew and
    counts into the time; no run's solution is used again.
    """
    at_aim = make_bounds(field).at_aim
    for part in parts:
        judge_trials(field, part, at_aim, every_corner=True)
    return sum(map(len, parts))


def propose(project: Project) -> None:
    """The proposal, from a project that is read."""
    best_runs(project, fit_leds(project))


def processor_s(tasks: list[Callable[[], object]], rounds: int = 3) -> list[float]:
    """Shortest processor seconds of every task: a rate on one core, whatever else the machine does."""
    best = [float("inf")] * len(tasks)
    for _round in range(rounds):
        for index, task in enumerate(tasks):
            start = time.process_time()
            task()
            best[index] = min(best[index], time.process_time() - start)
    return best


def main() -> None:
    """Print the rates and ratios."""
    field, _leds = field_of(project_with(FEW))
    parts, many = blocks(field), project_with(MANY)
    band, right = same_band(48)
    count = sum(map(len, parts))
    all_s, banded_s, proposal_s, search_s = processor_s(
        [
            lambda: judge_all(field, parts),
            lambda: [solve_banded((2, 2), band, right) for _each in range(100)],
            lambda: propose(many),
            lambda: search(field, make_bounds(field)),
        ]
    )
    rate, each_s = count / all_s, all_s / count
    note = f"{rate:.0f} a second on one core; {count} of them"
    show("1,000 a second / arrangements of 48 bulbs solved and judged", 1000 / rate, 1, note)
    print(f"one of them, five conditions / one banded solve of 48 bulbs: {each_s / (banded_s / 100):.1f} x")
    show("proposal for 100 bulbs / 3 s", proposal_s / 3, 1, f"{proposal_s:.2f} s")
    show("search for 48 bulbs / solving every candidate", search_s / all_s, 1, f"{search_s:.2f} s")


if __name__ == "__main__":
    main()
