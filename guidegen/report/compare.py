"""`compare`: arrangements side by side, best first, as JSON and as text."""

from __future__ import annotations

import json
import sys
from collections.abc import Iterator
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any

from guidegen.choose.apart import wire_sizes
from guidegen.choose.choice import Choice, Proposal
from guidegen.choose.choose import choose
from guidegen.choose.metres import fed_texts, places_text
from guidegen.choose.progress import Progress
from guidegen.choose.takeover import take_over
from guidegen.choose.why import assumptions, why, why_none
from guidegen.circuit.arrangement import Cable, RunPlan
from guidegen.locale import _, ngettext, speaking_language
from guidegen.locale.numerals import fixed, general, with_unit
from guidegen.project.read import ProjectFile, read_project
from guidegen.project.schema import Project
from guidegen.report.amounts import amount, money
from guidegen.report.check import check_text
from guidegen.report.figures import figures
from guidegen.report.terminal import for_terminal
from guidegen.safety.judge import hazards
from guidegen.study import Study, fit_leds, study_of


@dataclass(frozen=True, eq=False)
class Comparison:
    """A project and its arrangements, each studied; no arrangements after a hazard refusal.

    `studies` in the order of `choice.proposals`.
    """

    file: ProjectFile
    choice: Choice | None
    studies: tuple[Study, ...]
    refusal: Study | None


def compare(path: Path) -> Comparison:
    """Read the project file at `path` and look for arrangements.

    Raises ProjectError when the file has faults, GuidegenError when no
    arrangement can be made up.
    """
    file = read_project(path)
    with speaking_language(file.project.language):
        return _compared(file)


def _compared(file: ProjectFile) -> Comparison:
    dangers = hazards(file)
    if any(finding.level == "refusal" for finding in dangers):
        return Comparison(file, None, (), Study(file, file.project, {}, None, dangers))
    leds = fit_leds(file.project)
    choice = choose(file.project, leds, Progress())
    studies = tuple(
        study_of(replace(file, project=each.settled(file.project)), leds, each.runs, each.worked)
        for each in choice.proposals
    )
    return Comparison(file, choice, studies, None)


def refusal_text(found: Comparison) -> str:
    """Why nothing is compared; empty when something is."""
    return "" if found.refusal is None else check_text(found.refusal)


def compare_json(found: Comparison) -> str:
    """The arrangements as JSON text, SI units in the keys; stable order, no rounding."""
    return json.dumps(compared(found), indent=2, ensure_ascii=True, allow_nan=False)


def compared(found: Comparison) -> list[dict[str, Any]]:
    """The arrangements as plain data, each in the form of `figures`; none after a hazard refusal."""
    if found.choice is None:
        return []
    choice = found.choice
    pairs = zip(choice.proposals, found.studies, strict=True)
    with speaking_language(found.file.project.language):
        return [_arrangement(choice, proposal, study) for proposal, study in pairs]


def _arrangement(choice: Choice, proposal: Proposal, study: Study) -> dict[str, Any]:
    cost, data = proposal.cost, figures(study)
    for run, plan in zip(data["runs"], proposal.worked.arrangement.runs, strict=True):
        run["feeder"], run["extra_wire"] = _wire(plan.feeder), _wire(plan.extra)
    return {
        "given": proposal.given,
        "why": _full_why(choice, proposal),
        "cost": cost.money,
        "currency": cost.currency,
        "typical_prices": list(cost.typical),
        "extra_wire_m": cost.extra_wire_m,
        "core_m": cost.core_m,
        "joints": cost.joints,
        "cuts": cost.cuts,
        **data,
    }


def _full_why(choice: Choice, proposal: Proposal) -> str:
    """Its own sentence; with the first one, also why none meets the goals."""
    own = why(proposal, choice)
    return " ".join(filter(None, (own, why_none(choice)))) if proposal is choice.proposals[0] else own


def _wire(cable: Cable | None) -> dict[str, float] | None:
    if cable is None:
        return None
    return {"length_m": cable.length_m, "area_m2": cable.conductor.area_m2}


def compare_text(found: Comparison, encoding: str | None = None) -> str:
    """The arrangements for a person at a terminal, in characters of `encoding` (None: standard output's)."""
    stated = encoding or sys.stdout.encoding
    with speaking_language(found.file.project.language):
        return for_terminal("\n".join(_lines(found)), stated) + "\n"


def _lines(found: Comparison) -> Iterator[str]:
    if found.choice is None:
        yield refusal_text(found).rstrip("\n")
        return
    yield found.file.project.title
    none = why_none(found.choice)
    if none:
        yield none
    for number, proposal in enumerate(found.choice.proposals, 1):
        yield ""
        yield f"{number}. {_label(proposal)}{why(proposal, found.choice)}"
        yield "   " + _figures(proposal)
        yield from ("   " + line for line in _runs(proposal))
        yield from ("   " + line for line in _least_wire(proposal))
    yield ""
    yield from _to_take(found.file.project, found.choice)
    yield from assumptions(found.choice)


def _to_take(project: Project, choice: Choice) -> Iterator[str]:
    """The block of the project file that makes the first proposal the maker's own."""
    proposed = [each for each in choice.proposals if not each.given]
    if not proposed:
        return
    taken = take_over(project, proposed[0])
    yield _("Number {number}, to put into the project file in place of the runs there:").format(
        number=choice.proposals.index(proposed[0]) + 1
    )
    yield ""
    yield from taken.runs.splitlines()
    yield ""
    if taken.also:
        yield from (text + "." for text in taken.also)
        yield ""


def _least_wire(proposal: Proposal) -> Iterator[str]:
    """Which end or middle of the maker's own runs takes the least wire by the hanging plan."""
    if proposal.wires:
        runs = proposal.worked.arrangement.runs
        yield places_text(proposal.wires)
        for ways in proposal.wires[0].runs:
            yield _("{name}: {ways}").format(name=runs[ways.run].name, ways="; ".join(fed_texts(ways)))


def _label(proposal: Proposal) -> str:
    return _("[yours] ") if proposal.given else ""


def _figures(proposal: Proposal) -> str:
    cost, solution = proposal.cost, proposal.worked.solution
    text = _("cost {money}, joints {joints}, cuts {cuts}; wire {sizes}; supply {current}; goals met: {met}")
    return text.format(
        money=money(cost.money, cost.currency),
        joints=cost.joints,
        cuts=cost.cuts,
        sizes=wire_sizes(proposal) or _("none"),
        current=amount(solution.supply_a, "A"),
        met=_("yes") if proposal.meets_goals else _("no"),
    )


def _runs(proposal: Proposal) -> Iterator[str]:
    pairs = zip(proposal.worked.arrangement.runs, proposal.worked.solution.runs, strict=True)
    for plan, run in pairs:
        text = ngettext(
            "{name}: {bulbs} bulb, {feed}, {ohm}, mean LED {led}, evenness {evenness}",
            "{name}: {bulbs} bulbs, {feed}, {ohm}, mean LED {led}, evenness {evenness}",
            plan.bulbs,
        )
        yield text.format(
            name=plan.name,
            bulbs=plan.bulbs,
            feed=_(plan.feed),
            ohm=amount(plan.resistor.ohm, "ohm") if plan.resistor.fitted else _("no resistor"),
            led=amount(run.mean_led_a, "A"),
            evenness=fixed(run.evenness, 2),
        ) + "".join(_wires(plan))


def _wires(plan: RunPlan) -> Iterator[str]:
    """Feeder and extra wire of a run, each behind what stands before it."""
    if plan.feeder is not None:
        yield _(", feeder {wire}").format(wire=_cable(plan.feeder))
    if plan.extra is not None:
        yield _(", extra wire {wire}").format(wire=_cable(plan.extra))


def _cable(cable: Cable) -> str:
    size = with_unit(general(cable.conductor.area_m2 * 1e6), "mm²")
    return _("{length} of {size}").format(length=with_unit(fixed(cable.length_m, 2), "m"), size=size)
