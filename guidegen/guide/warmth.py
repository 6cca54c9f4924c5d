"""Cold and warm: light and currents at the coldest and the warmest air beside the nominal ones."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np

from guidegen.circuit.conditions import NOMINAL, Conditions
from guidegen.circuit.solution import Solution
from guidegen.circuit.solve import solve_each
from guidegen.guide.blocks import Column, Table
from guidegen.guide.format import number, percent, quantity
from guidegen.guide.matter import Matter
from guidegen.guide.pages import Section
from guidegen.locale import _
from guidegen.tables.conductors import COPPER_PER_K
from guidegen.tables.leds import VOLTS_PER_K, VOLTS_PER_K_SOURCE


def warmth_section(matter: Matter) -> Section:
    """The arrangement solved at three temperatures."""
    plan = matter.arrangement
    air = (plan.coldest_c, NOMINAL.air_degc, plan.warmest_c)
    solved = solve_each(plan, tuple(Conditions(air_degc=each) for each in air))
    return Section(
        anchor="warmth",
        title=_("Cold and warm"),
        text=(
            _(
                "Copper gains {copper} % of its resistance a kelvin ({copper_source}); an LED's volts fall "
                "by {led} a kelvin, {low} to {high} ({led_source}). That the chips themselves shine a little "
                "less when warm is not in these figures."
            ).format(
                copper=number(100 * COPPER_PER_K.value),
                copper_source=_(COPPER_PER_K.source),
                led=quantity(-VOLTS_PER_K.typical, "V"),
                low=quantity(-VOLTS_PER_K.high, "V"),
                high=quantity(-VOLTS_PER_K.low, "V"),
                led_source=_(VOLTS_PER_K_SOURCE),
            ),
        ),
        tables=(_table(matter, air, solved),),
    )


def _table(matter: Matter, air: tuple[float, ...], solved: tuple[Solution, ...]) -> Table:
    nominal = solved[1]
    rows: list[tuple[str, Callable[[Solution], str]]] = [
        (_("Current of all runs"), lambda each: quantity(each.supply_a, "A")),
    ]
    rows += [
        (run.name, lambda each, k=index: quantity(each.runs[k].current_a, "A"))  # type: ignore[misc]
        for index, run in enumerate(matter.runs)
    ]
    rows += [
        (_("Mean LED of the brightest bulb"), lambda each: quantity(_brightest_a(each), "A")),
        (_("Light of all bulbs, nominal being 100 %"), lambda each: percent(_light(matter, each, nominal))),
        (_("Dimmest bulb over brightest"), lambda each: percent(each.evenness)),
    ]
    return Table(
        caption=_("At the coldest, at nominal and at the warmest air"),
        columns=(
            Column(_("What")),
            *(Column(quantity(each, "°C"), numeric=True) for each in air),
        ),
        rows=tuple((name, *(text(each) for each in solved)) for name, text in rows),
        note=_("Supply at its nominal volts. The largest LED current allowed is {limits}.").format(
            limits=_limits(matter)
        ),
    )


def _limits(matter: Matter) -> str:
    limits = dict.fromkeys(quantity(run.led_limit.current_a, "A") for run in matter.runs)
    return ", ".join(limits)


def _brightest_a(solved: Solution) -> float:
    return max(float(np.max(run.led_a)) for run in solved.runs)


def _light(matter: Matter, solved: Solution, nominal: Solution) -> float:
    """Light of all bulbs over that at nominal."""
    exponent = matter.arrangement.light_exponent

    def total(solution: Solution) -> float:
        pairs = zip(matter.runs, solution.runs, strict=True)
        return sum(float((run.leds_lit * found.led_a**exponent).sum()) for run, found in pairs)

    whole = total(nominal)
    return total(solved) / whole if whole else 0.0
