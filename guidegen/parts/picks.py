"""Parts that the project leaves out: resistor values, ratings and kinds, and the fuse."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from guidegen.calc.fuse import fuse_needed_a, pick_fuse_a
from guidegen.calc.preferred import next_above, not_below
from guidegen.calc.resistor import pick_rating_w, rating_needed_w
from guidegen.circuit.arrangement import Arrangement, Resistor, RunPlan
from guidegen.circuit.margins import margins
from guidegen.circuit.protection import protection
from guidegen.circuit.solution import Margins, Protection, RunSolution, Solution
from guidegen.circuit.solve import solve
from guidegen.circuit.variants import with_resistor
from guidegen.tables.fuses import RATINGS_A
from guidegen.tables.preferred import RESISTOR_RATINGS_W

#: Values looked through, ohm.
SMALLEST_OHM, LARGEST_OHM = 1.0, 1e6
#: Largest rating that is usual as a film resistor, watt; above it cement.
LARGEST_FILM_W = 2.0


def pick_resistors(
    arrangement: Arrangement, goal_a: Mapping[str, float], least_ohm: Mapping[str, float] | None = None
) -> tuple[Arrangement, Solution]:
    """Fill in the resistors left out: the smallest preferred values that keep every run within its goal.

    `goal_a`: mean current of a run's lit LEDs, ampere, by name of the run;
    `least_ohm`: what a run's resistor cannot be below, where something is
    known, ohm.  Returns the solution with them too.
    """
    known = least_ohm or {}
    open_runs = [index for index, run in enumerate(arrangement.runs) if run.resistor.chosen]
    for index in open_runs:
        run = arrangement.runs[index]
        least = min(max(SMALLEST_OHM, known.get(run.name, 0.0)), LARGEST_OHM)
        arrangement = with_resistor(arrangement, index, not_below(run.series, least))
    while True:
        solution = solve(arrangement)
        raised = {
            index: ohm
            for index in open_runs
            if (ohm := _raised_ohm(arrangement.runs[index], solution.runs[index], goal_a)) is not None
        }
        if not raised:
            return arrangement, solution
        for index, ohm in raised.items():
            arrangement = with_resistor(arrangement, index, ohm)


def _raised_ohm(run: RunPlan, solved: RunSolution, goal_a: Mapping[str, float]) -> float | None:
    """The next value to try, ohm; None where the run stays within its goal, or no larger value is left.

    Never beyond the one looked for: less current leaves the supply's side
    with no fewer volts and the run with no more, so the resistor has at
    least the volts that it has now, at the goal's share of the current.
    """
    goal, ohm = goal_a[run.name], run.resistor.ohm
    if solved.mean_led_a <= goal or ohm >= LARGEST_OHM:
        return None
    needed = ohm * solved.mean_led_a / goal
    return min(max(not_below(run.series, needed), next_above(run.series, ohm)), LARGEST_OHM)


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
        resistor = replace(resistor, kind=usual_kind(resistor.rating_w))
    return replace(run, resistor=resistor)


def usual_kind(rating_w: float) -> str:
    """The kind in which resistors of a rating are usual."""
    return "film" if rating_w <= LARGEST_FILM_W else "cement"


def pick_parts(
    arrangement: Arrangement,
    goal_a: Mapping[str, float],
    load: float,
    least_ohm: Mapping[str, float] | None = None,
) -> tuple[Arrangement, Solution, Margins, Protection]:
    """Everything left out, filled in, together with the solution it was filled in for.

    `goal_a` and `least_ohm` as in `pick_resistors`; `load`: largest share of
    a resistor's rating to run at.
    """
    arrangement, solution = pick_resistors(arrangement, goal_a, least_ohm)
    worst = margins(arrangement, solution)
    arrangement = pick_fuse(arrangement, worst)
    shorts = protection(arrangement, solution)
    return pick_ratings(arrangement, solution, worst, shorts, load), solution, worst, shorts
