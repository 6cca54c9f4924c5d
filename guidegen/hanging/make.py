"""From project and arrangement to the hanging plan."""

from __future__ import annotations

from guidegen.circuit.arrangement import Arrangement
from guidegen.hanging.bulbs import gaps_of, hung_bulbs
from guidegen.hanging.laid import JOINT_TAKES_M, laid_on_line, runs_on
from guidegen.hanging.loads import loads_of, typical_weights
from guidegen.hanging.plan import HangingPlan, HungLine, Usage
from guidegen.hanging.pulls import line_pulls
from guidegen.hanging.spans import hook_points, spans_of
from guidegen.project.hung import Hanging, Line
from guidegen.project.schema import Project
from guidegen.tables.hanging import COPPER_PULL_PA, GUIDE_LOAD, HOOK_LOAD


def hanging_plan(project: Project, arrangement: Arrangement) -> HangingPlan | None:
    """The plan of a project; None when its file has none."""
    hanging = project.hanging
    if hanging is None:
        return None
    lines = _lines(project, hanging, arrangement)
    hung = {run for line in lines for run in line.runs}
    return HangingPlan(
        lines=lines,
        pulls=tuple(line_pulls(line, loads_of(hanging, arrangement, line)) for line in lines),
        usage=_usage(project, arrangement),
        not_hung=tuple(index for index in range(len(arrangement.runs)) if index not in hung),
        guide_wire=hanging.guide_wire == "yes",
        hook_limit_n=None if hanging.hook_rating is None else HOOK_LOAD.value * hanging.hook_rating,
        wire_limit_n=_wire_limit_n(hanging, arrangement),
        typical=typical_weights(hanging),
    )


def _lines(project: Project, hanging: Hanging, arrangement: Arrangement) -> tuple[HungLine, ...]:
    lines: list[HungLine] = []
    for line in hanging.lines:
        before = sum(len(other.hooks) for other in lines)
        lines.append(_line(project, hanging, line, arrangement, before))
    return tuple(lines)


def _line(project: Project, hanging: Hanging, line: Line, arrangement: Arrangement, before: int) -> HungLine:
    runs = runs_on(line, arrangement)
    hooks = hook_points(hanging, line, before)
    spans = spans_of(hanging, line, hooks)
    laid = laid_on_line(project, hanging, arrangement, runs)
    bulbs = hung_bulbs(arrangement, runs, laid, spans)
    return HungLine(
        runs=runs,
        laid=laid,
        hooks=hooks,
        spans=spans,
        bulbs=bulbs,
        gaps=gaps_of(bulbs),
        lead_in_m=0.0 if laid[0].turned else float(arrangement.runs[runs[0]].segment_m[0]),
        lights_m=bulbs[-1].along_m - bulbs[0].along_m,
        placed=line.hooks is not None,
    )


def _usage(project: Project, arrangement: Arrangement) -> tuple[Usage, ...]:
    found = []
    for name, kind in project.strings.items():
        runs = [run for run in arrangement.runs if run.string == name]
        if runs:
            whole_m = kind.tail_m + (kind.bulbs - 1) * kind.spacing
            found.append(
                Usage(
                    string=name,
                    bought_m=kind.bought * whole_m,
                    used_m=sum(run.length_m for run in runs),
                    joints_m=JOINT_TAKES_M * sum(len(run.joins) for run in runs),
                    bulbs_left=kind.bought * kind.bulbs - sum(run.bulbs for run in runs),
                )
            )
    return tuple(found)


def _wire_limit_n(hanging: Hanging, arrangement: Arrangement) -> float | None:
    """What the guide wire, or the strings' own two conductors, may be pulled with."""
    if hanging.guide_wire == "yes":
        strength = hanging.guide_wire_strength
        return None if strength is None else GUIDE_LOAD.value * strength
    return min(COPPER_PULL_PA.value * 2 * run.conductor.area_m2 for run in arrangement.runs)
