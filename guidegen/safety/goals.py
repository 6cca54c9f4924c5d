"""Notices about goals that are missed, and about what the project file left unsaid."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from guidegen.calc.led import forward_voltage
from guidegen.locale import N_
from guidegen.safety.rule import Case, Hit, Rule, exceeds, when
from guidegen.tables.limits import LEAST_LED_A


def evenness_missed(case: Case) -> Iterable[Hit]:
    """One hit if the installation is less even than its goal."""
    goal = case.project.goals.evenness
    missed = exceeds(goal, case.solution.evenness)
    return when(missed, evenness_ratio=case.solution.evenness, goal_ratio=goal)


def stays_dark(case: Case) -> Iterator[Hit]:
    """One hit for each run whose LEDs carry next to nothing."""
    for run in case.runs:
        if exceeds(LEAST_LED_A.value, run.solved.mean_led_a):
            plan = run.plan
            led_v = float(forward_voltage(plan.led.curve, LEAST_LED_A.value))
            needed_v = plan.leds_in_series * led_v + plan.group_ohm * LEAST_LED_A.value
            values: dict[str, object] = {
                "mean_a": run.solved.mean_led_a,
                "needed_v": needed_v,
                "supply_v": case.solution.source_v,
            }
            yield Hit(plan.name, values)


RULES: tuple[Rule[Case], ...] = (
    Rule(
        id="lights-stay-dark",
        level="warning",
        topics=("goals",),
        title=N_("Lights that stay dark"),
        sentence=N_(
            "An LED gets only {mean_a}: it needs about {needed_v} to glow, and the supply gives {supply_v} "
            "ahead of the resistor."
        ),
        consequence=N_("The lights hardly glow, and no reading of this guide can tell a fault from that."),
        avoid=(
            N_("Too few volts: take strings with fewer LEDs in series, or a supply of the strings' volts."),
            N_("Volts enough: take a smaller resistor: leave it out of the file to have it chosen."),
        ),
        reason=N_("Below this current an LED can hardly be seen by day."),
        source=LEAST_LED_A.source,
        applies=stays_dark,
    ),
    Rule(
        id="evenness-goal",
        level="notice",
        topics=("goals",),
        title=N_("Less even than the goal"),
        sentence=N_(
            "The dimmest bulb gives {evenness_ratio} of the brightest one's light; the goal is {goal_ratio}."
        ),
        consequence="",
        avoid=(N_("Feed the runs at other points, make them shorter, or change the goal."),),
        reason=N_("It tells how even the light is beside what was wanted."),
        source=N_("the project's own goal"),
        applies=evenness_missed,
    ),
)
