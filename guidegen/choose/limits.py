"""Whether one worked-out arrangement keeps every limit that proposals are held to, and by how much."""

from __future__ import annotations

from collections.abc import Iterator

from guidegen.calc.resistor import rating_at_w
from guidegen.calc.wire_limit import overload_limit_a
from guidegen.choose.workout import WorkedOut
from guidegen.project.schema import Project
from guidegen.safety.rule import ROUNDING
from guidegen.safety.strings import cut_or_rewired, is_parallel
from guidegen.tables.limits import SUPPLY_LOAD

#: Excess of a string that is cut or rewired although it may not be: more than any other.
FORBIDDEN = 1e6


def excesses(project: Project, worked: WorkedOut) -> dict[str, float]:
    """By how much of its limit each thing is over it (below 0: within).

    "led": worst mean LED of the brightest bulb; "resistor": running, and a
    short that the fuse is not sure to clear; "supply": worst load; "wire":
    lasting fault current; "string": cut or rewired although it may not be.
    """
    pairs = list(zip(worked.arrangement.runs, worked.margins.runs, strict=True))
    goal = min(project.goals.supply_load, SUPPLY_LOAD.value)
    sections = worked.protection.sections
    return {
        "led": max(worst.led_max_a / plan.led_limit.current_a for plan, worst in pairs) - 1,
        "resistor": max(_resistor_shares(worked), default=0.0) - 1,
        "supply": max(worked.solution.load, worked.margins.load / goal) - 1,
        "wire": max((each.lasting_a / overload_limit_a(each.limit_a) for each in sections), default=0.0) - 1,
        "string": FORBIDDEN
        if any(cut_or_rewired(plan) and not is_parallel(project.strings[plan.string]) for plan, _ in pairs)
        else -1.0,
    }


def within(over: dict[str, float]) -> bool:
    """Whether every limit is kept."""
    return max(over.values()) <= ROUNDING


def _resistor_shares(worked: WorkedOut) -> Iterator[float]:
    """Watts over what the rating bears in the warmest air, run by run."""
    solved = zip(
        worked.arrangement.runs,
        worked.solution.runs,
        worked.margins.runs,
        worked.protection.sure_after_resistor,
        strict=True,
    )
    for plan, nominal, worst, cleared in solved:
        if plan.resistor.fitted and plan.resistor.rating_w is not None:
            bears_w = rating_at_w(plan.resistor.rating_w, worked.arrangement.warmest_c, plan.resistor.kind)
            yield max(nominal.resistor_w, 0.0 if cleared else worst.shorted_w) / bears_w
