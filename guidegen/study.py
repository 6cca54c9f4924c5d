"""One project file understood: read, fitted, arranged, solved and judged.

A `Study` is what every command and every page starts from.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import cached_property
from pathlib import Path
from typing import TYPE_CHECKING

from guidegen.bench.fit import fit_string
from guidegen.choose.aims import goals_met
from guidegen.choose.workout import WorkedOut, work_out
from guidegen.circuit.arrangement import Arrangement, LedEstimate
from guidegen.circuit.meter import Meter, meter_of
from guidegen.circuit.points import TestPoint, test_points
from guidegen.circuit.solution import Margins, Protection, Solution
from guidegen.locale import speaking_language
from guidegen.project.read import ProjectFile, read_project
from guidegen.project.schema import Project, Run
from guidegen.safety.findings import Finding
from guidegen.safety.judge import hazards, judge

if TYPE_CHECKING:
    from guidegen.bench.as_built import AsBuilt
    from guidegen.bench.next import NextReadings
    from guidegen.choose.choice import Choice
    from guidegen.choose.choose import Search
    from guidegen.circuit.spread import Spread


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
    `findings` most severe first; `search`: what the proposed runs were found
    by, None where the file states runs; `asked`: the project before they were
    proposed, with all places of the supply that it states.
    """

    file: ProjectFile
    project: Project
    leds: dict[str, LedEstimate]
    solved: Solved | None
    findings: tuple[Finding, ...]
    search: Search | None = None
    asked: Project | None = None

    @property
    def as_written(self) -> Project:
        """The project as its file has it."""
        return self.asked or self.project

    @property
    def refused(self) -> bool:
        """Whether no guide may be written."""
        return any(finding.level == "refusal" for finding in self.findings)

    @property
    def meets_goals(self) -> bool:
        """Whether evenness, LED currents, resistor and supply loads meet the project's goals."""
        return self.solved is not None and goals_met(
            self.project.goals, self.solved.arrangement, self.solved.solution
        )

    @property
    def meter(self) -> Meter:
        """The meter that all readings are taken with."""
        return meter_of(self.project.meter)

    @cached_property
    def choice(self) -> Choice:
        """This arrangement of a solved study beside others, best first; searched for when first asked for."""
        from guidegen.choose.choose import choice_of, look  # noqa: PLC0415
        from guidegen.choose.progress import Progress  # noqa: PLC0415

        assert self.solved is not None, "nothing was solved"
        if self.search is not None:
            return choice_of(self.project.model_copy(update={"runs": None}), self.leds, self.search)
        found, solved = look(self.project, self.leds, Progress()), self.solved
        own = WorkedOut(solved.arrangement, solved.solution, solved.margins, solved.protection)
        return choice_of(self.project, self.leds, found, own)

    @cached_property
    def spread(self) -> Spread:
        """What a meter will show of correct builds, of a solved study; worked out when first asked for."""
        # Loaded when asked for, as below: `check` has no need of it.
        from guidegen.circuit.spread import expected_spread  # noqa: PLC0415

        assert self.solved is not None, "nothing was solved"
        arrangement, solution = self.solved.arrangement, self.solved.solution
        return expected_spread(arrangement, solution, meter=self.meter, more_bulbs=self._other_bulbs())

    def _other_bulbs(self) -> tuple[tuple[int, int], ...]:
        """Run (from 0) and bulb of readings that the file has at bulbs which are no test points."""
        if self.solved is None or not self.project.readings:
            return ()
        from guidegen.bench.as_built import more_bulbs  # noqa: PLC0415

        return more_bulbs(self.project, self.solved.points)

    @cached_property
    def as_built(self) -> AsBuilt | None:
        """The readings of the finished build, judged; None where the file has none or nothing was solved."""
        if self.solved is None or not self.project.readings:
            return None
        from guidegen.bench.as_built import as_built  # noqa: PLC0415

        arrangement, solution = self.solved.arrangement, self.solved.solution
        return as_built(self.project, arrangement, solution, self.spread, self.meter)

    @cached_property
    def next_readings(self) -> dict[str, NextReadings]:
        """What to read next on the bench, by kind of string in use that has no bench reading yet."""
        if self.solved is None or all(kind.bench for kind in self.project.strings.values()):
            return {}
        from guidegen.bench.next import readings_to_take  # noqa: PLC0415

        return readings_to_take(self.project, self.solved.arrangement, self.meter)


def study(path: Path) -> Study:
    """Read and work out the project file at `path`; runs left out are proposed.

    Raises ProjectError when the file has faults, GuidegenError when nothing
    can be proposed.
    """
    file = read_project(path)
    with speaking_language(file.project.language):
        return _worked_out(file)


def _worked_out(file: ProjectFile) -> Study:
    dangers = hazards(file)
    if any(finding.level == "refusal" for finding in dangers):
        return Study(file, file.project, {}, None, dangers)
    leds = fit_leds(file.project)
    runs = file.project.runs
    return _proposed(file, leds) if runs is None else study_of(file, leds, runs)


def _proposed(file: ProjectFile, leds: dict[str, LedEstimate]) -> Study:
    """The best arrangement that the search finds; GuidegenError when it finds none."""
    # Loaded where it is needed: most files state their runs, and a check should stay quick.
    from guidegen.choose.choose import best_of, look  # noqa: PLC0415
    from guidegen.choose.progress import Progress  # noqa: PLC0415

    search = look(file.project, leds, Progress())
    best = best_of(file.project, search)
    settled = replace(file, project=best.settled(file.project))
    return replace(study_of(settled, leds, best.runs, best.worked), search=search, asked=file.project)


def fit_leds(project: Project) -> dict[str, LedEstimate]:
    """What is known of the LEDs of every kind of string."""
    meter, label_v = meter_of(project.meter), project.supply.voltage
    return {name: fit_string(kind, label_v, meter).estimate for name, kind in project.strings.items()}


def study_of(
    file: ProjectFile,
    leds: dict[str, LedEstimate],
    runs: tuple[Run, ...],
    worked: WorkedOut | None = None,
) -> Study:
    """A file without hazards, with these runs; `worked` if they are worked out already."""
    file = replace(file, project=file.project.model_copy(update={"runs": runs}))
    found = worked or work_out(file.project, leds)
    parts = found.arrangement, found.solution, found.margins, found.protection
    solved = Solved(*parts, test_points(found.arrangement))
    return Study(file, file.project, leds, solved, judge(file, leds, *parts))
