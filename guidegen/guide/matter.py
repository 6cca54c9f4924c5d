"""What every page is written from: the study, its solved half, and the expected readings."""

from __future__ import annotations

from dataclasses import dataclass

from guidegen.circuit.arrangement import Arrangement, RunPlan
from guidegen.circuit.expected import ExpectedReading
from guidegen.circuit.points import PointKind, TestPoint
from guidegen.circuit.solution import Solution
from guidegen.project.schema import LightString, Project
from guidegen.study import Solved, Study


@dataclass(frozen=True, eq=False)
class Matter:
    """The matter of a guide; there is none without a solved study."""

    study: Study
    solved: Solved
    readings: tuple[ExpectedReading, ...]

    @property
    def project(self) -> Project:
        """The project as read."""
        return self.study.project

    @property
    def arrangement(self) -> Arrangement:
        """Every decision made."""
        return self.solved.arrangement

    @property
    def solution(self) -> Solution:
        """The solved arrangement."""
        return self.solved.solution

    @property
    def runs(self) -> tuple[RunPlan, ...]:
        """The runs in order."""
        return self.solved.arrangement.runs

    @property
    def outdoors(self) -> bool:
        """Whether the lights hang outdoors, roofed or not."""
        return self.project.place.exposure != "indoors"

    @property
    def kinds(self) -> tuple[tuple[str, LightString], ...]:
        """Kinds of string that a run uses, in order of first use."""
        used = dict.fromkeys(run.string for run in self.runs)
        return tuple((name, self.project.strings[name]) for name in used)

    def kind_of(self, run: RunPlan) -> LightString:
        """The kind of string of a run."""
        return self.project.strings[run.string]

    @property
    def changes_strings(self) -> bool:
        """Whether any string is cut behind a bulb, joined, or tapped: anything but whole strings as sold."""
        return any(run.joins or run.feed != "one end" or run.pieces[-1].cut_behind for run in self.runs)

    def points_of(self, run: int | None) -> tuple[TestPoint, ...]:
        """Test points of a run, or of the supply."""
        return tuple(point for point in self.solved.points if point.run == run)

    def point(self, kind: PointKind, run: int | None = None, bulb: int | None = None) -> TestPoint:
        """The test point at a place; LookupError when there is none."""
        for point in self.solved.points:
            if (point.kind, point.run, point.bulb) == (kind, run, bulb):
                return point
        raise LookupError(f"no test point: {kind}, run {run}, bulb {bulb}")

    def reading_at(self, point: TestPoint) -> ExpectedReading:
        """The expected volts at a test point; LookupError when nothing was worked out for it."""
        for reading in self.readings:
            if reading.quantity == "volts" and reading.point == point:
                return reading
        raise LookupError(f"no expected reading at {point.label}")

    def current_of(self, run: int | None) -> ExpectedReading | None:
        """The expected current of a run (None: all runs) as a meter in line shows it, if worked out."""
        for reading in self.readings:
            if reading.quantity == "amperes in line" and reading.run == run:
                return reading
        return None
