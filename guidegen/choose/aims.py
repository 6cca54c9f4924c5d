"""What an arrangement should reach: the LED current aimed at, and whether the goals are met."""

from __future__ import annotations

from guidegen.circuit.arrangement import Arrangement
from guidegen.circuit.solution import Solution
from guidegen.project.schema import Goals, LightString, Project
from guidegen.safety.leds import GOAL_MET_FROM
from guidegen.tables.limits import LEAST_LED_A, TYPICAL_LED_A

#: Share of the LED's maximum that bulbs with resistors of their own are aimed at where no goal is stated:
#: they are made for the current that their maker's resistor lets through, not for that of battery strings.
OWN_RESISTOR_AIM = 0.8


def led_goal_a(project: Project, kind: LightString, limit_a: float) -> float:
    """Mean LED current that a chosen resistor aims at, ampere; the stated goal or a typical one."""
    stated = project.goals.led_current
    if stated is not None:
        return min(limit_a, stated)
    if kind.group_resistor > 0:
        return OWN_RESISTOR_AIM * limit_a
    return min(limit_a, TYPICAL_LED_A.value)


def goals_met(goals: Goals, arrangement: Arrangement, solution: Solution) -> bool:
    """Whether evenness, LED currents, resistor and supply loads meet the project's goals."""
    pairs = list(zip(arrangement.runs, solution.runs, strict=True))
    lit = all(run.mean_led_a >= LEAST_LED_A.value for _, run in pairs)
    currents = goals.led_current is None or all(
        GOAL_MET_FROM * goals.led_current <= run.mean_led_a <= goals.led_current for _, run in pairs
    )
    resistors = all(
        run.resistor_w <= goals.resistor_load * (plan.resistor.rating_w or 0.0) or run.resistor_w == 0
        for plan, run in pairs
    )
    return (
        solution.evenness >= goals.evenness
        and lit
        and currents
        and resistors
        and solution.load <= goals.supply_load
    )
