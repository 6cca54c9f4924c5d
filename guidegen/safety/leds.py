"""Rules about the current of the LEDs and what is known of them."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from guidegen.locale import N_
from guidegen.safety.rule import Case, Hit, Rule, exceeds

#: A goal of LED current counts as met from this share of it on.
GOAL_MET_FROM = 0.8

_TAKEN_FROM = {
    "cells": N_("the current on the fresh cells it came with"),
    "assumed": N_("a usual value for battery strings"),
}


def over_maximum(case: Case) -> Iterator[Hit]:
    """One hit for each run whose brightest bulb is over the LED's maximum at nominal values."""
    for run in case.runs:
        brightest_a = float(run.solved.led_a.max())
        if exceeds(brightest_a, run.plan.led_limit.current_a):
            yield Hit(run.plan.name, {"led_a": brightest_a, "maximum_a": run.plan.led_limit.current_a})


def over_maximum_at_worst(case: Case) -> Iterator[Hit]:
    """One hit for each run that is within the maximum at nominal values but not in the worst case."""
    for run in case.runs:
        nominal = exceeds(float(run.solved.led_a.max()), run.plan.led_limit.current_a)
        if not nominal and exceeds(run.margins.led_max_a, run.plan.led_limit.current_a):
            yield Hit(
                run.plan.name, {"led_a": run.margins.led_max_a, "maximum_a": run.plan.led_limit.current_a}
            )


def one_low_led(case: Case) -> Iterator[Hit]:
    """One hit for each run where only a single LED of low volts would be over the maximum."""
    for run in case.runs:
        mean_over = exceeds(run.margins.led_max_a, run.plan.led_limit.current_a)
        if not mean_over and exceeds(run.margins.low_led_a, run.plan.led_limit.current_a):
            yield Hit(
                run.plan.name, {"led_a": run.margins.low_led_a, "maximum_a": run.plan.led_limit.current_a}
            )


def maximum_assumed(case: Case) -> Iterator[Hit]:
    """One hit for each kind of string whose largest LED current was left out."""
    limits = {run.string: run.led_limit for run in case.arrangement.runs}
    for name, _kind in case.used_strings:
        if limits[name].source != "stated":
            taken_from = _TAKEN_FROM[limits[name].source]
            yield Hit(name, {"maximum_a": limits[name].current_a, "taken_from": taken_from})


def typical_curve(case: Case) -> Iterable[Hit]:
    """One hit for each kind of string whose LEDs were neither measured nor given."""
    return (
        Hit(
            name,
            {"low_v": case.leds[name].voltage_low_v, "high_v": case.leds[name].voltage_high_v},
        )
        for name, _kind in case.used_strings
        if case.leds[name].source == "typical"
    )


def current_goal_missed(case: Case) -> Iterator[Hit]:
    """One hit for each run whose mean LED current is not from 0.8 to 1.0 of the goal."""
    goal_a = case.project.goals.led_current
    for run in case.runs if goal_a else ():
        mean_a = run.solved.mean_led_a
        if goal_a and (exceeds(mean_a, goal_a) or exceeds(GOAL_MET_FROM * goal_a, mean_a)):
            yield Hit(run.plan.name, {"mean_a": mean_a, "low_a": GOAL_MET_FROM * goal_a, "goal_a": goal_a})


RULES: tuple[Rule[Case], ...] = (
    Rule(
        id="led-over-maximum",
        level="refusal",
        topics=("resistor",),
        title=N_("Too much current in the LEDs"),
        sentence=N_("An LED of the brightest bulb would carry {led_a}; its maximum is {maximum_a}."),
        consequence=N_("LEDs overheat and die one after another, each leaving more current to the rest."),
        avoid=(N_("Use a larger resistor in this run, more bulbs on it, or a supply of fewer volts."),),
        reason=N_("Over its maximum an LED fails early, and in a sealed bulb its heat has no way out."),
        source=N_("the LED's maximum as stated or assumed"),
        applies=over_maximum,
    ),
    Rule(
        id="led-over-maximum-worst",
        level="warning",
        topics=("resistor", "first-power"),
        title=N_("LED current in the worst case"),
        sentence=N_("In the worst case an LED can carry {led_a}; its maximum is {maximum_a}."),
        consequence=N_("LEDs age fast or fail."),
        avoid=(
            N_("Take the next larger resistor, or a supply with a closer tolerance."),
            N_("Or measure supply and string first, and enter the readings."),
        ),
        reason=N_("Supply, resistor, wire and LEDs may all be off in the unlucky direction at once."),
        source=N_("the LED's maximum as stated or assumed"),
        applies=over_maximum_at_worst,
    ),
    Rule(
        id="one-low-led",
        level="notice",
        topics=("first-power",),
        title=N_("One LED of low volts"),
        sentence=N_(
            "A single LED of low volts among usual ones can carry {led_a}, over the maximum of {maximum_a}."
        ),
        consequence="",
        avoid=(N_("Expect one or the other LED to age sooner; a larger resistor makes it last."),),
        reason=N_("LEDs in parallel share current unevenly; the one of lowest volts takes most."),
        source=N_("common practice"),
        applies=one_low_led,
    ),
    Rule(
        id="max-led-current-assumed",
        level="notice",
        topics=("strings-identify",),
        title=N_("Largest LED current assumed"),
        sentence=N_("The largest LED current is not stated; {maximum_a} is taken, from {taken_from}."),
        consequence="",
        avoid=(N_("State max_led_current if a data sheet or the maker gives one."),),
        reason=N_("A string is made to bear the cells it was sold with, but nobody has promised more."),
        source=N_("own assumption"),
        applies=maximum_assumed,
    ),
    Rule(
        id="led-typical",
        level="notice",
        topics=("bench-power",),
        title=N_("LEDs not measured"),
        sentence=N_(
            "The LEDs were not measured: a typical curve stands in, {low_v} to {high_v} at its current."
        ),
        consequence="",
        avoid=(N_("Take one bench reading of an uncut string and enter it; it narrows every figure."),),
        reason=N_("Colour does not tell the volts of an LED."),
        source=N_("typical, no single source"),
        applies=typical_curve,
    ),
    Rule(
        id="led-current-goal",
        level="notice",
        topics=("goals",),
        title=N_("LED current off the goal"),
        sentence=N_("The mean LED current is {mean_a}; the goal is met from {low_a} to {goal_a}."),
        consequence="",
        avoid=(N_("Choose another resistor, or change the goal."),),
        reason=N_("It tells how bright the run is beside what was wanted."),
        source=N_("the project's own goal"),
        applies=current_goal_missed,
    ),
)
