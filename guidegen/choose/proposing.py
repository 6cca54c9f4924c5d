"""From a candidate's numbers to runs as they would stand in the project file, all worked out."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace

from guidegen.choose.aims import goals_met, led_goal_a
from guidegen.choose.choice import Proposal, Rival
from guidegen.choose.costs import cost_of
from guidegen.choose.front import Standing, standing
from guidegen.choose.layouts import Part
from guidegen.choose.limits import excesses, within
from guidegen.choose.pool import Field, wire_piece
from guidegen.choose.workout import WorkedOut, work_out
from guidegen.circuit.arrangement import Feed, LedEstimate
from guidegen.locale import _
from guidegen.project.schema import Project, Run, WirePiece
from guidegen.safety.strings import is_parallel

Leds = Mapping[str, LedEstimate]


@dataclass(frozen=True)
class Candidate:
    """A candidate by the indexes of its layout and of its sizes of wire, and its resistors in ohm."""

    layout: int
    feeder: int
    extra: int
    ohms: tuple[float, ...]


def runs_of(field: Field, candidate: Candidate) -> tuple[Run, ...]:
    """The runs of a candidate.

    Their resistors are left open where the rule for those finds the
    candidate's own again: at the usual LED current, unless none is needed.
    """
    sizes, runs = field.sizes_mm2, []
    parts = zip(field.layouts[candidate.layout], candidate.ohms, strict=True)
    for index, (part, ohm) in enumerate(parts):
        stated = ohm if field.dim < 1 else None
        runs.append(
            Run(
                bulbs=part.bulbs,
                name=_("run {number}").format(number=index + 1),
                string=part.string,
                feed=part.feed,
                resistor="none" if ohm == 0 else stated,
                feeder=wire_piece(part.route.feeder_m, sizes[candidate.feeder]),
                extra_wire=_extra(part, sizes[candidate.extra]),
                first_hung="last bulb" if part.route.turned else "first bulb",
            )
        )
    return tuple(runs)


def _extra(part: Part, area_mm2: float) -> WirePiece | None:
    return None if part.feed == "one end" else wire_piece(part.route.extra_m, area_mm2)


def propose(
    project: Project,
    leds: Leds,
    runs: tuple[Run, ...],
    ohms: tuple[float, ...] = (),
    given: bool = False,
    worked: WorkedOut | None = None,
) -> Proposal:
    """The arrangement of these runs, worked out and weighed.

    `ohms`: what the rule for a resistor left out gives in every run, if it
    is known already; `worked`: these runs, if they are worked out already.
    """
    if worked is None:
        wired = project.model_copy(update={"runs": _filled(runs, ohms)})
        worked = _left_open(work_out(wired, leds), runs)
    return Proposal(
        runs=runs,
        worked=worked,
        cost=cost_of(project, worked.arrangement),
        given=given,
        meets_goals=goals_met(project.goals, worked.arrangement, worked.solution),
        led_share=_led_share(project, worked),
        over=excesses(project, worked),
        rival=None,
    )


def _filled(runs: tuple[Run, ...], ohms: tuple[float, ...]) -> tuple[Run, ...]:
    """The runs with the resistors that are left open put in."""
    if not ohms:
        return runs
    pairs = zip(runs, ohms, strict=True)
    return tuple(
        run if run.resistor is not None else run.model_copy(update={"resistor": ohm}) for run, ohm in pairs
    )


def _left_open(worked: WorkedOut, runs: tuple[Run, ...]) -> WorkedOut:
    """The arrangement saying of its resistors that they were chosen, where the runs leave them open."""
    plans = tuple(
        replace(plan, resistor=replace(plan.resistor, chosen=run.resistor is None))
        for plan, run in zip(worked.arrangement.runs, runs, strict=True)
    )
    return replace(worked, arrangement=replace(worked.arrangement, runs=plans))


def _led_share(project: Project, worked: WorkedOut) -> float:
    shares = []
    for plan, run in zip(worked.arrangement.runs, worked.solution.runs, strict=True):
        aim_a = led_goal_a(project, project.strings[plan.string], plan.led_limit.current_a)
        shares.append(run.mean_led_a / aim_a)
    return min(shares)


def stands(project: Project, proposal: Proposal) -> tuple[float, ...]:
    """Sort key among proposals: within the limits, meeting the goals, then the weighed cost."""
    found: Standing = standing(
        project.goals,
        proposal.evenness,
        proposal.led_share,
        proposal.cost.money,
        proposal.cost.joints,
        proposal.cost.cuts,
        proposal.cost.extra_wire_m,
    )
    over = 0.0 if within(proposal.over) else max(proposal.over.values())
    return (over, float(not proposal.meets_goals), *found.key(), float(not proposal.given))


def rival_feed(runs: tuple[Run, ...]) -> Feed:
    """The feed that an arrangement is compared with: one end, or the middle where all is fed so already."""
    return "middle" if {run.feed for run in runs} == {"one end"} else "one end"


def with_rival(project: Project, leds: Leds, proposal: Proposal) -> Proposal:
    """The maker's own arrangement together with what it is compared with: the same split fed otherwise.

    Nothing for strings that may not be rewired.
    """
    kinds = {run.string for run in proposal.runs}
    if not all(is_parallel(project.strings[name or ""]) for name in kinds):
        return proposal
    feed = rival_feed(proposal.runs)
    runs = tuple(_fed(project, run, feed) for run in proposal.runs)
    worked = work_out(project.model_copy(update={"runs": runs}), leds)
    return replace(proposal, rival=Rival(feed, worked.solution.evenness))


def _fed(project: Project, run: Run, feed: Feed) -> Run:
    """The run fed in another way, its resistor chosen anew; in the middle through wire of half its length."""
    if feed == "one end":
        extra = None
    else:
        kind = project.strings[run.string or ""]
        length_m = kind.tail_m + kind.spacing * (-(-run.bulbs // 2) - 1)
        extra = wire_piece(max(0.1, round(length_m, 2)), 0.5)
    resistor = run.resistor if run.resistor == "none" else None
    changes = {"feed": feed, "extra_wire": extra, "resistor": resistor, "resistor_rating": None}
    return run.model_copy(update=changes | {"resistor_kind": None})
