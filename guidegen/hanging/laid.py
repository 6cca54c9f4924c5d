"""How the runs of a project lie on its lines of hooks."""

from __future__ import annotations

import numpy as np

from guidegen.circuit.arrangement import Arrangement, Floats, RunPlan
from guidegen.hanging.lay import Laid, lay
from guidegen.project.hung import Hanging, Line
from guidegen.project.schema import Project
from guidegen.tables.hanging import JOINT_TAKES_M as JOINT_TAKES

#: What a soldered joint of two strings takes from the wire, metre: both cables lose as much.
JOINT_TAKES_M = 2 * JOINT_TAKES.value


def runs_on(line: Line, arrangement: Arrangement) -> tuple[int, ...]:
    """Indices of the runs on a line, in its order."""
    names = [run.name for run in arrangement.runs]
    return tuple(range(len(names))) if line.runs is None else tuple(names.index(name) for name in line.runs)


def laid_on_line(
    project: Project, hanging: Hanging, arrangement: Arrangement, runs: tuple[int, ...]
) -> tuple[Laid, ...]:
    """How these runs (indices) lie along the line they hang on, one behind the other."""
    plans = [arrangement.runs[run] for run in runs]
    stated = project.runs or ()
    turned = [bool(stated) and stated[run].first_hung == "last bulb" for run in runs]
    spacing_m = [project.strings[plan.string].spacing for plan in plans]
    return laid_runs(plans, turned, spacing_m, hanging.starts_at)


def laid_runs(
    runs: list[RunPlan], turned: list[bool], spacing_m: list[float], starts_at: str
) -> tuple[Laid, ...]:
    """How the runs of a line lie along its wire; every joint of two strings shortens it."""
    found: list[Laid] = []
    for run, turn, apart_m in zip(runs, turned, spacing_m, strict=True):
        whole_m, lead_m = float(positions_m(run)[-1]), float(run.segment_m[0])
        before = found[-1] if found else None
        found.append(lay(before, whole_m, lead_m, apart_m, turned=turn, starts_at=starts_at))
    return tuple(found)


def positions_m(run: RunPlan) -> Floats:
    """Places of a run's bulbs along it, its joints made (n,)."""
    taken = np.zeros(run.bulbs)
    taken[list(run.joins)] = JOINT_TAKES_M
    return run.position_m - np.cumsum(taken)
