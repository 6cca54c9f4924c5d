"""Worst cases, each quantity at its own corner.

| quantity | corner |
|---|---|
| LED current, resistor watts, supply load | upper supply; lower resistor, wire and LED volts |
| light of the dimmest bulb | lower supply; upper resistor and wire |

Both corners are solved in the coldest and in the warmest air, copper and
LEDs alike, and the worse one counts.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass

import numpy as np

from guidegen.calc.led import diode_current_a
from guidegen.calc.light import raw_light
from guidegen.calc.resistor import lower_ohm, running_w, shorted_w
from guidegen.circuit.arrangement import Arrangement, RunPlan
from guidegen.circuit.conditions import Conditions
from guidegen.circuit.solution import Margins, RunMargins, RunSolution, Solution
from guidegen.circuit.solve import solve_each
from guidegen.tables.leds import LED_SPREAD_V


@dataclass(frozen=True)
class Corners:
    """The conditions of both corners, in the coldest and in the warmest air."""

    most: tuple[Conditions, Conditions]
    least: tuple[Conditions, Conditions]


def corners(arrangement: Arrangement) -> Corners:
    """The conditions under which the worst cases of an arrangement are solved."""
    supply, airs = arrangement.supply, (arrangement.coldest_c, arrangement.warmest_c)
    most = [Conditions(supply.upper_v, "low", "low", "low", air) for air in airs]
    least = [Conditions(supply.lower_v, "high", "high", "nominal", air) for air in airs]
    return Corners((most[0], most[1]), (least[0], least[1]))


def margins(arrangement: Arrangement, nominal: Solution) -> Margins:
    """Worst cases of an arrangement whose nominal solution is known."""
    at = corners(arrangement)
    solved = solve_each(arrangement, (*at.most, *at.least), near=nominal)
    most, least = solved[:2], solved[2:]
    supply_a = max(solution.supply_a for solution in most)
    brightest = _brightest_raw(arrangement, nominal)
    runs = tuple(
        _run_margins(arrangement, index, nominal, most, least, brightest)
        for index in range(len(arrangement.runs))
    )
    return Margins(supply_a=supply_a, load=supply_a / arrangement.supply.rated_a, runs=runs)


def _run_margins(
    arrangement: Arrangement,
    index: int,
    nominal: Solution,
    most: tuple[Solution, ...],
    least: tuple[Solution, ...],
    brightest: float,
) -> RunMargins:
    run = arrangement.runs[index]
    low_ohm = lower_ohm(run.resistor.ohm, run.resistor.tolerance)
    current_a = _worst(max, most, index, lambda solved: solved.current_a)

    def dimmest(solved: RunSolution) -> float:
        return float(raw_light(run.leds_lit, solved.led_a, arrangement.light_exponent)[solved.lit].min())

    return RunMargins(
        led_max_a=_worst(max, most, index, lambda solved: float(solved.led_a.max())),
        low_led_a=low_led_a(run, nominal.runs[index]),
        current_max_a=current_a,
        resistor_w=running_w(current_a, low_ohm),
        shorted_w=shorted_w(arrangement.supply.upper_v, low_ohm) if low_ohm > 0 else 0.0,
        led_min_a=_worst(min, least, index, lambda solved: float(solved.led_a[solved.lit].min(initial=0.0))),
        last_light_low=_worst(min, least, index, dimmest) / brightest
        if nominal.runs[index].lit.any()
        else 0.0,
    )


def low_led_a(run: RunPlan, solved: RunSolution) -> float:
    """Current of one LED whose volts lie low among nominal ones, in the brightest bulb, ampere.

    The bulb keeps its nominal volts; the low LED's group has that much more
    for its resistances.
    """
    curve, series = run.led.curve, run.leds_in_series
    bulb_v = float(solved.bulb_v[int(np.argmax(solved.led_a))])
    return float(
        diode_current_a(
            bulb_v + LED_SPREAD_V.value,
            series * curve.slope_v,
            curve.log_saturation,
            series * curve.resistance_ohm + run.group_ohm,
        )
    )


def _brightest_raw(arrangement: Arrangement, nominal: Solution) -> float:
    pairs = zip(arrangement.runs, nominal.runs, strict=True)
    exponent = arrangement.light_exponent
    top = max(float(raw_light(run.leds_lit, solved.led_a, exponent).max()) for run, solved in pairs)
    return top if top > 0 else 1.0


def _worst(
    pick: Callable[[Iterable[float]], float],
    solutions: tuple[Solution, ...],
    index: int,
    quantity: Callable[[RunSolution], float],
) -> float:
    return pick(quantity(solution.runs[index]) for solution in solutions)
