"""Notices about goals that are missed, and about what the project file left unsaid."""

from __future__ import annotations

from collections.abc import Iterable

from guidegen.locale import N_
from guidegen.safety.rule import Case, Hit, Rule, exceeds, when


def evenness_missed(case: Case) -> Iterable[Hit]:
    """One hit if the installation is less even than its goal."""
    goal = case.project.goals.evenness
    missed = exceeds(goal, case.solution.evenness)
    return when(missed, evenness_ratio=case.solution.evenness, goal_ratio=goal)


RULES: tuple[Rule[Case], ...] = (
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
