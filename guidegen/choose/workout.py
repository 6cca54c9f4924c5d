"""A project whose runs are known, worked out: arranged, its open parts filled in, solved."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from guidegen.choose.aims import led_goal_a
from guidegen.circuit.arrange import arrange
from guidegen.circuit.arrangement import Arrangement, LedEstimate
from guidegen.circuit.cells import led_limits
from guidegen.circuit.solution import Margins, Protection, Solution
from guidegen.parts.picks import pick_parts
from guidegen.project.schema import Project


@dataclass(frozen=True, eq=False)
class WorkedOut:
    """An arrangement with everything solved about it."""

    arrangement: Arrangement
    solution: Solution
    margins: Margins
    protection: Protection


def work_out(project: Project, leds: Mapping[str, LedEstimate]) -> WorkedOut:
    """Arrange the project's runs, fill in the parts left out, solve."""
    drafted = arrange(project, leds, led_limits(project, leds))
    goal_a = {
        run.name: led_goal_a(project, project.strings[run.string], run.led_limit.current_a)
        for run in drafted.runs
    }
    return WorkedOut(*pick_parts(drafted, goal_a, project.goals.resistor_load))
