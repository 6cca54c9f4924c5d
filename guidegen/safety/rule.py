"""What a rule is: its words as data, and one small function that tells where it applies."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from functools import cached_property
from typing import TYPE_CHECKING, Generic, TypeVar

from guidegen.circuit.arrangement import Arrangement, LedEstimate, RunPlan
from guidegen.circuit.solution import Margins, Protection, RunMargins, RunSolution, Solution
from guidegen.project.keys import key_text
from guidegen.project.read import ProjectFile
from guidegen.project.schema import LightString, Project
from guidegen.safety.findings import Finding, Level

if TYPE_CHECKING:
    from guidegen.hanging.lengths import StatedLengths
    from guidegen.hanging.plan import HangingPlan


@dataclass(frozen=True)
class RunCase:
    """One run as the rules see it; `index` counts from 0."""

    index: int
    plan: RunPlan
    kind: LightString
    solved: RunSolution
    margins: RunMargins


@dataclass(frozen=True, eq=False)
class Case:
    """A solved project as the rules see it."""

    file: ProjectFile
    leds: Mapping[str, LedEstimate]
    arrangement: Arrangement
    solution: Solution
    margins: Margins
    protection: Protection

    @property
    def project(self) -> Project:
        """The project as it was read."""
        return self.file.project

    @property
    def outdoors(self) -> bool:
        """Whether any part of the installation stands outdoors."""
        return is_outdoors(self.project)

    @property
    def runs(self) -> Iterator[RunCase]:
        """Every run with its plan, its kind of string, solution and margins."""
        for index, plan in enumerate(self.arrangement.runs):
            kind = self.project.strings[plan.string]
            yield RunCase(index, plan, kind, self.solution.runs[index], self.margins.runs[index])

    def states(self, *key: str | int) -> bool:
        """Whether the project file itself says something under this path of keys."""
        return key_text(key) in self.file.given

    @cached_property
    def over_hooks(self) -> StatedLengths | None:
        """Stated wires beside their ways over the hooks; None where the file tells no runs or distances."""
        if self.project.hanging is None or not self.states("runs"):
            return None
        # Loaded for files with a hanging plan alone: a check should stay quick.
        from guidegen.hanging.lengths import stated_lengths  # noqa: PLC0415

        return stated_lengths(self.project, self.arrangement)

    @cached_property
    def hooks_tell_ways(self) -> bool:
        """Whether the hanging plan tells how far wire has to go, also for runs that are proposed."""
        if self.project.hanging is None:
            return False
        from guidegen.hanging.supply import ways_of  # noqa: PLC0415

        return ways_of(self.project) is not None

    @cached_property
    def hung(self) -> HangingPlan | None:
        """The hanging plan; None where the file has none."""
        if self.project.hanging is None:
            return None
        from guidegen.hanging.make import hanging_plan  # noqa: PLC0415

        return hanging_plan(self.project, self.arrangement)

    @property
    def used_strings(self) -> Iterator[tuple[str, LightString]]:
        """Kinds of string that hang in a run, in the order of the file."""
        used = {plan.string for plan in self.arrangement.runs}
        return ((name, kind) for name, kind in self.project.strings.items() if name in used)


def is_outdoors(project: Project) -> bool:
    """Whether the lights or the supply stand outdoors."""
    return project.place.exposure != "indoors" or project.supply.stands == "outdoors"


@dataclass(frozen=True)
class Hit:
    """A place where a rule applies: what it is about, and the values of its sentence."""

    subject: str = ""
    values: dict[str, object] = field(default_factory=dict)


CaseT = TypeVar("CaseT")


@dataclass(frozen=True)
class Rule(Generic[CaseT]):
    """One rule.

    `sentence` says what is found, with "{name}" places for the values of a
    hit; `consequence` what can happen (empty for a notice about no injury);
    `avoid` what to do, or what to do instead; `reason` why the rule is there;
    `source` the standard and clause, or "common practice" or "own policy".
    `topics` tell the guide which steps it belongs to.  `applies` gives one
    hit for each thing the rule applies to, and none when it does not.
    All words are message ids; they are translated when they are shown.
    """

    id: str
    level: Level
    topics: tuple[str, ...]
    title: str
    sentence: str
    consequence: str
    avoid: tuple[str, ...]
    reason: str
    source: str
    applies: Callable[[CaseT], Iterable[Hit]]

    def findings(self, case: CaseT) -> tuple[Finding, ...]:
        """What the rule finds in `case`."""
        return tuple(Finding(self.id, self.level, hit.subject, hit.values) for hit in self.applies(case))


def when(condition: bool, **values: object) -> tuple[Hit, ...]:
    """One hit about the whole project if `condition` holds."""
    return (Hit("", values),) if condition else ()


def always(_case: object) -> tuple[Hit, ...]:
    """One hit: the rule belongs to every build."""
    return (Hit(),)


def outdoors(case: Case) -> tuple[Hit, ...]:
    """One hit if any part of the installation stands outdoors."""
    return when(case.outdoors)


#: Relative room for rounding when a value is held against its limit.
ROUNDING = 1e-9


def exceeds(value: float, limit: float) -> bool:
    """Whether `value` is over `limit` by more than rounding."""
    return value > limit * (1 + ROUNDING)
