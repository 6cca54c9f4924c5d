"""One project file understood: read, fitted, arranged, solved and judged.

A `Study` is what every command and every page starts from.
"""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from guidegen.circuit.arrangement import Arrangement, LedEstimate
from guidegen.circuit.points import TestPoint
from guidegen.circuit.solution import Margins, Protection, Solution
from guidegen.project.read import ProjectFile
from guidegen.project.schema import Project
from guidegen.safety.findings import Finding


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


def study(path: Path) -> Study:
    """Read and work out the project file at `path`.

    Raises ProjectError when the file has faults.
    """
    raise NotImplementedError
