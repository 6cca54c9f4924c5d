"""One project file understood: read, fitted, arranged, solved and judged.

A `Study` is what every command and every page starts from.
"""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from guidegen.bench.fit import fit_led
from guidegen.circuit.arrange import arrange
from guidegen.circuit.arrangement import Arrangement, LedEstimate
from guidegen.circuit.cells import led_limits
from guidegen.circuit.points import TestPoint, test_points
from guidegen.circuit.solution import Margins, Protection, Solution
from guidegen.parts.picks import pick_parts
from guidegen.project.read import ProjectFile, read_project
from guidegen.project.schema import Project
from guidegen.safety.findings import Finding
from guidegen.safety.judge import hazards, judge
from guidegen.safety.leds import GOAL_MET_FROM
from guidegen.tables.limits import TYPICAL_LED_A


@dataclass(frozen=True, eq=False)
class Solved:
    """The electrical half of a study; absent after a hazard refusal."""

    arrangement: Arrangement
    solution: Solution
    margins: Margins
    protection: Protection
    points: tuple[TestPoint, ...]


@dataclass(frozen=True, eq=False)
class Study:
    """Everything known about a project.

    `solved` is None after a hazard refusal; `leds` by kind of string;
    `findings` most severe first.
    """

    file: ProjectFile
    project: Project
    leds: dict[str, LedEstimate]
    solved: Solved | None
    findings: tuple[Finding, ...]

    @property
    def refused(self) -> bool:
        """Whether no guide may be written."""
        return any(finding.level == "refusal" for finding in self.findings)

    @property
    def meets_goals(self) -> bool:
        """Whether evenness, LED currents, resistor and supply loads meet the project's goals."""
        return self.solved is not None and goals_met(self.project, self.solved)


def study(path: Path) -> Study:
    """Read and work out the project file at `path`.

    Raises ProjectError when the file has faults.
    """
    file = read_project(path)
    dangers = hazards(file)
    if any(finding.level == "refusal" for finding in dangers):
        return Study(file, file.project, {}, None, dangers)
    leds = {name: fit_led(kind) for name, kind in file.project.strings.items()}
    solved = solve_project(file.project, leds)
    findings = judge(
        file, leds, solved.arrangement, solved.solution, solved.margins, solved.protection
    )
    return Study(file, file.project, leds, solved, findings)


def solve_project(project: Project, leds: dict[str, LedEstimate]) -> Solved:
    """Arrange, fill in the parts left out, solve."""
    drafted = arrange(project, leds, led_limits(project, leds))
    goal_a = {run.name: led_goal_a(project, run.led_limit.current_a) for run in drafted.runs}
    arrangement, solution, worst, shorts = pick_parts(drafted, goal_a, project.goals.resistor_load)
    return Solved(arrangement, solution, worst, shorts, test_points(arrangement))


def led_goal_a(project: Project, limit_a: float) -> float:
    """Mean LED current that a chosen resistor aims at, ampere; the stated goal or a typical one."""
    stated = project.goals.led_current
    return min(limit_a, TYPICAL_LED_A.value if stated is None else stated)


def goals_met(project: Project, solved: Solved) -> bool:
    """Whether evenness, LED currents, resistor and supply loads meet the project's goals."""
    goals, solution = project.goals, solved.solution
    pairs = list(zip(solved.arrangement.runs, solution.runs, strict=True))
    currents = goals.led_current is None or all(
        GOAL_MET_FROM * goals.led_current <= run.mean_led_a <= goals.led_current for _, run in pairs
    )
    resistors = all(
        run.resistor_w <= goals.resistor_load * (plan.resistor.rating_w or 0.0) or run.resistor_w == 0
        for plan, run in pairs
    )
    return (
        solution.evenness >= goals.evenness
        and currents
        and resistors
        and solution.load <= goals.supply_load
    )
