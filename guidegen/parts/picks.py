"""Parts that the project leaves out: resistor values, ratings and kinds, and the fuse."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Mapping
from dataclasses import replace

from guidegen.calc.fuse import fuse_needed_a, pick_fuse_a
from guidegen.calc.preferred import between
from guidegen.calc.resistor import pick_rating_w, rating_needed_w
from guidegen.circuit.arrangement import Arrangement, Resistor, RunPlan
from guidegen.circuit.margins import margins
from guidegen.circuit.protection import protection
from guidegen.circuit.solution import Margins, Protection, Solution
from guidegen.circuit.solve import solve
from guidegen.circuit.variants import with_resistor
from guidegen.tables.fuses import RATINGS_A
from guidegen.tables.preferred import RESISTOR_RATINGS_W

#: Values looked through, ohm.
SMALLEST_OHM, LARGEST_OHM = 1.0, 1e6
#: Largest rating that is usual as a film resistor, watt; above it cement.
LARGEST_FILM_W = 2.0
#: Rounds in which runs that share a lead settle; each round can only raise a value.
MOST_ROUNDS = 40


def pick_resistors(arrangement: Arrangement, goal_a: Mapping[str, float]) -> Arrangement:
    """Fill in the resistors left out: the smallest preferred value whose run stays within its goal.

    `goal_a`: mean current of a run's lit LEDs, ampere, by name of the run.
    """
    open_runs = [index for index, run in enumerate(arrangement.runs) if run.resistor.chosen]
    for index in open_runs:
        arrangement = with_resistor(arrangement, index, SMALLEST_OHM)
    for _round in range(MOST_ROUNDS):
        before = [run.resistor.ohm for run in arrangement.runs]
        for index in open_runs:
            ohm = smallest_within(arrangement, index, goal_a[arrangement.runs[index].name])
            arrangement = with_resistor(arrangement, index, ohm)
        if before == [run.resistor.ohm for run in arrangement.runs] or len(open_runs) < 2:
            break
    return arrangement


def smallest_within(arrangement: Arrangement, index: int, goal_a: float) -> float:
    """Smallest preferred value for run `index` at which its mean LED current is not above the goal, ohm.

    Not below its present value, which is returned at once if it does.
    """
    values = between(arrangement.runs[index].series, arrangement.runs[index].resistor.ohm, LARGEST_OHM)

    def within(ohm: float) -> bool:
        return solve(with_resistor(arrangement, index, ohm)).runs[index].mean_led_a <= goal_a

    if within(values[0]):
        return values[0]
    return values[min(bisect_left(values, True, lo=1, key=within), len(values) - 1)]


def pick_fuse(arrangement: Arrangement, worst: Margins) -> Arrangement:
    """Fill in the fuse left out: the smallest standard rating that the worst running current allows."""
    if arrangement.fuse.rating_a is not None:
        return arrangement
    rating_a = pick_fuse_a(fuse_needed_a(worst.supply_a))
    return replace(
        arrangement, fuse=replace(arrangement.fuse, rating_a=max(RATINGS_A) if rating_a is None else rating_a)
    )


def pick_ratings(
    arrangement: Arrangement, nominal: Solution, worst: Margins, shorts: Protection, load: float
) -> Arrangement:
    """Fill in ratings and kinds left out.

    The running watts stay within the share `load` of the rating, the worst
    ones within all of it, and so do those of a short that the fuse is not
    sure to clear.
    """
    runs = []
    for index, run in enumerate(arrangement.runs):
        needs_w = [rating_needed_w(nominal.runs[index].resistor_w, load), worst.runs[index].resistor_w]
        needs_w.append(shorts.lasting_w(index, worst.runs[index].shorted_w))
        runs.append(_rated(run, max(needs_w)))
    return replace(arrangement, runs=tuple(runs))


def _rated(run: RunPlan, needed_w: float) -> RunPlan:
    resistor: Resistor = run.resistor
    if resistor.rating_chosen:
        rating_w = pick_rating_w(needed_w) or max(RESISTOR_RATINGS_W)
        resistor = replace(resistor, rating_w=rating_w)
    if resistor.kind_chosen and resistor.rating_w is not None:
        resistor = replace(resistor, kind="film" if resistor.rating_w <= LARGEST_FILM_W else "cement")
    return replace(run, resistor=resistor)


def pick_parts(
    arrangement: Arrangement, goal_a: Mapping[str, float], load: float
) -> tuple[Arrangement, Solution, Margins, Protection]:
    """Everything left out, filled in, together with the solution it was filled in for."""
    arrangement = pick_resistors(arrangement, goal_a)
    solution = solve(arrangement)
    worst = margins(arrangement, solution)
    arrangement = pick_fuse(arrangement, worst)
    shorts = protection(arrangement, solution)
    return pick_ratings(arrangement, solution, worst, shorts, load), solution, worst, shorts
