"""Why no arrangement meets the goals, and the smallest change that would let the nearest one do so."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator

import numpy as np

from guidegen.calc.preferred import smallest_not_below
from guidegen.choose.aims import goals_met, led_goal_a
from guidegen.choose.choice import Change, Miss, Proposal
from guidegen.choose.circuits import driven
from guidegen.choose.judging import judge_trials, meets
from guidegen.choose.layouts import Layout
from guidegen.choose.limits import excesses, within
from guidegen.choose.pool import Trials, make_field
from guidegen.choose.proposing import Leds
from guidegen.choose.workout import WorkedOut, work_out
from guidegen.circuit.arrange import arrange
from guidegen.circuit.cells import led_limits
from guidegen.project.schema import LightString, Project, StringWire, Supply
from guidegen.safety.leds import GOAL_MET_FROM
from guidegen.safety.rule import ROUNDING
from guidegen.tables.limits import DRY_WITHOUT_BASIC_DC_V, SUPPLY_LOAD
from guidegen.tables.supplies import RATINGS_A

#: Steps on the way to the largest change, and halvings in which the last of them is narrowed down.
_STEPS, _HALVINGS = 8, 4
#: How far a change is looked for, as factors of what is there now.
_LEAST_WIRE, _LEAST_CURRENT, _MOST_VOLTS = 0.02, 0.1, 3.0

_WAYS = {"led": "led maximum", "resistor": "resistor", "supply": "supply rating", "wire": "wire limit"}


def miss_of(
    project: Project,
    leds: Leds,
    nearest: Proposal,
    hindered: tuple[str, ...],
    reachable: Callable[[Project], bool],
) -> Miss:
    """What stands in the way of the nearest arrangement, and what would do.

    `hindered`: limits that no arrangement keeps at the LED current aimed at;
    `reachable`: whether any arrangement of a changed project meets its goals.
    """
    over = [name for name, excess in nearest.over.items() if excess > ROUNDING]
    ways = [_WAYS[name] for name in (*over, *hindered) if name in _WAYS]
    if nearest.led_share < GOAL_MET_FROM and not ways:
        ways.append("supply volts")
    if nearest.evenness < project.goals.evenness:
        ways.append("wire resistance")
    changes = sorted(_changes(project, leds, nearest, reachable), key=lambda change: change.size)
    return Miss(tuple(dict.fromkeys(ways)), tuple(changes))


def _changes(
    project: Project, leds: Leds, nearest: Proposal, reachable: Callable[[Project], bool]
) -> Iterator[Change]:
    tries = _Tries(project, leds, nearest, reachable)
    for look in (tries.thinner_wire, tries.less_current, tries.more_volts, tries.larger_supply, tries.easier):
        change = look()
        if change is not None:
            yield change


class _Tries:
    """One arrangement with one thing changed at a time."""

    def __init__(
        self, project: Project, leds: Leds, nearest: Proposal, reachable: Callable[[Project], bool]
    ) -> None:
        runs = tuple(run.model_copy(update={"resistor": _open(run.resistor)}) for run in nearest.runs)
        self._project = project.model_copy(update={"runs": runs})
        self._leds, self._nearest, self._reachable = leds, nearest, reachable

    def thinner_wire(self) -> Change | None:
        """String wire of less resistance: the largest that does, ohm/m of the worst kind."""
        now = max(run.conductor.ohm_per_m for run in self._nearest.worked.arrangement.runs)

        def with_wire(factor: float) -> Project:
            kinds = {
                name: _rewired(kind, factor, self._ohm_per_m(name))
                for name, kind in self._project.strings.items()
            }
            return self._project.model_copy(update={"strings": kinds})

        factor = self._edge(with_wire, _LEAST_WIRE)
        return None if factor is None else Change("string wire", now, _digits(now * factor, math.floor))

    def less_current(self) -> Change | None:
        """A smaller LED current as the goal: the largest that does, ampere."""
        run = self._nearest.worked.arrangement.runs[0]
        now = led_goal_a(self._project, self._project.strings[run.string], run.led_limit.current_a)

        def with_goal(factor: float) -> Project:
            goals = self._project.goals.model_copy(update={"led_current": now * factor})
            return self._project.model_copy(update={"goals": goals})

        factor = self._edge(with_goal, _LEAST_CURRENT)
        return None if factor is None else Change("led current", now, _digits(now * factor, math.floor))

    def more_volts(self) -> Change | None:
        """A supply of more volts: the fewest that do, in whichever arrangement suits them."""
        if self._nearest.led_share >= GOAL_MET_FROM:
            return None
        now = self._project.supply.voltage
        top = min(_MOST_VOLTS, DRY_WITHOUT_BASIC_DC_V.value / (now * (1 + self._project.supply.tolerance)))
        factor = self._edge(lambda share: self._supplied({"voltage": now * share}), top, self._reachable)
        return None if factor is None else Change("supply volts", now, _digits(now * factor, math.ceil))

    def larger_supply(self) -> Change | None:
        """A supply of a larger rating: the next usual one that does, ampere."""
        now = self._project.supply.rated_current
        worked = work_out(self._project, self._leds)
        limit = min(self._project.goals.supply_load, SUPPLY_LOAD.value)
        then = smallest_not_below(RATINGS_A, worked.margins.supply_a / limit)
        if then is None or then <= now:
            return None
        kept = self._project.supply.current_limit or now
        wanted = self._supplied({"rated_current": then, "current_limit": max(kept, then)})
        return Change("supply rating", now, then) if self._does(wanted) else None

    def easier(self) -> Change | None:
        """A goal of evenness that the nearest arrangement meets."""
        now, then = self._project.goals.evenness, math.floor(self._nearest.evenness * 100) / 100
        if then >= now or then <= 0:
            return None
        goals = self._project.goals.model_copy(update={"evenness": then})
        changed = self._project.model_copy(update={"goals": goals})
        return Change("evenness", now, then) if self._does(changed) else None

    def _ohm_per_m(self, name: str) -> float:
        runs = self._nearest.worked.arrangement.runs
        return next((run.conductor.ohm_per_m for run in runs if run.string == name), 0.0)

    def _supplied(self, update: dict[str, float]) -> Project:
        supply: Supply = self._project.supply.model_copy(update=update)
        return self._project.model_copy(update={"supply": supply})

    def _does(self, project: Project) -> bool:
        """Whether the changed project meets its goals and keeps its limits."""
        if self._nearest.layout is not None:
            return _layout_does(project, self._leds, self._nearest.layout, self._nearest.sizes_mm2)
        worked: WorkedOut = work_out(project, self._leds)
        met = goals_met(project.goals, worked.arrangement, worked.solution)
        return met and _aimed(project, worked) and within(excesses(project, worked))

    def _edge(
        self,
        change: Callable[[float], Project],
        far: float,
        does_it: Callable[[Project], bool] | None = None,
    ) -> float | None:
        """The factor nearest to 1 that does, on the way to `far`; None if none of the steps there does."""
        good = does_it or self._does
        steps: list[float] = [far ** (step / _STEPS) for step in range(1, _STEPS + 1)]
        reached = next((k for k, step in enumerate(steps) if good(change(step))), None)
        if reached is None:
            return None
        fails, does = (steps[reached - 1] if reached else 1.0), steps[reached]
        for _halving in range(_HALVINGS):
            middle = (fails + does) / 2
            fails, does = (fails, middle) if good(change(middle)) else (middle, does)
        return does


def _digits(value: float, towards: Callable[[float], int]) -> float:
    """Three digits, rounded to the side on which the change still does."""
    place = 2 - math.floor(math.log10(value))
    return float(f"{towards(value * 10.0**place)}e{-place}")


def _layout_does(project: Project, leds: Leds, layout: Layout, sizes_mm2: tuple[float, float]) -> bool:
    """The same for one layout, as the search judges it: much quicker."""
    limits = led_limits(project, leds)
    supply = arrange(project.model_copy(update={"runs": None}), leds, limits)
    field = make_field(project, supply, (layout,), leds, limits, sizes_mm2)
    first = np.array([0])
    judged = judge_trials(field, Trials(first, first, first + 1), driven(field, 1.0))
    return bool(meets(field, judged)[0] and judged.excess.within[0])


def _aimed(project: Project, worked: WorkedOut) -> bool:
    """Whether every run reaches the LED current aimed at, stated as a goal or not."""
    pairs = zip(worked.arrangement.runs, worked.solution.runs, strict=True)
    return all(
        run.mean_led_a
        >= GOAL_MET_FROM * led_goal_a(project, project.strings[plan.string], plan.led_limit.current_a)
        for plan, run in pairs
    )


def _open(resistor: object) -> object:
    """The resistor left open again, unless none is fitted."""
    return resistor if resistor == "none" else None


def _rewired(kind: LightString, factor: float, ohm_per_m: float) -> LightString:
    wire = StringWire(per_length=max(ohm_per_m * factor, 1e-5))
    return kind.model_copy(update={"wire": wire}) if ohm_per_m else kind
