"""A proposal as a maker takes it over into the project file."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from guidegen.choose.choice import Proposal
from guidegen.locale import _
from guidegen.project.runs_text import name_text, place_text, runs_text
from guidegen.project.schema import Project


@dataclass(frozen=True)
class TakeOver:
    """What to write: the block `runs:`, and in sentences what else changes."""

    runs: str
    also: tuple[str, ...]


def take_over(project: Project, proposal: Proposal) -> TakeOver:
    """What to write into the project file so that it is this proposal; not of the maker's own.

    The file then gives the proposal's figures: its fuse, if it states one,
    stays as it does in the comparison.
    """
    return TakeOver(runs_text(proposal.runs), tuple(_also(project, proposal)))


def _also(project: Project, proposal: Proposal) -> Iterator[str]:
    place = proposal.settled(project).place.supply_at
    if place != project.place.supply_at and not isinstance(place, tuple):
        yield _("Under place write supply_at: {place}").format(place=place_text(place))
    hanging = proposal.settled(project).hanging
    if hanging is None:
        return
    for number, line in enumerate(hanging.lines, 1):
        if line.runs is not None:
            # On a single line hang all runs; on several, those that the proposal hangs on each.
            alone = len(hanging.lines) == 1
            names = [run.name or "" for run in proposal.runs] if alone else line.runs
            yield _("In line {number} of hanging write runs: [{names}]").format(
                number=number, names=", ".join(map(name_text, names))
            )
