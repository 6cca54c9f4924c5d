"""What a search ends in: arrangements side by side, the best first.  Plain figures, for others to show."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass

from guidegen.choose.costs import Cost
from guidegen.choose.layouts import Layout
from guidegen.choose.siting import Sited, settled
from guidegen.choose.workout import WorkedOut
from guidegen.circuit.arrangement import Feed
from guidegen.hanging.advice import SupplyWire
from guidegen.project.schema import Project, Run


@dataclass(frozen=True)
class Group:
    """Runs alike in an arrangement: how many, their kind of string, bulbs in each, feed."""

    runs: int
    string: str
    bulbs: int
    feed: Feed


@dataclass(frozen=True)
class Rival:
    """The same split with another feed, to compare with."""

    feed: Feed
    evenness: float


@dataclass(frozen=True, eq=False)
class Proposal:
    """One arrangement.

    `runs` as they would stand in the project file; `worked`: everything
    solved about it; `led_share`: mean LED current of the least driven run
    over the one aimed at; `over`: excess over each limit, as in `limits`;
    `rival`: what it is compared with in a sentence; `layout` and its sizes
    of feeders and of extra wires, where it was searched for; `sited`: its
    place of the supply, then; `wires`: of given runs on hooks, the wire from
    every place, the least first.
    """

    runs: tuple[Run, ...]
    worked: WorkedOut
    cost: Cost
    given: bool
    meets_goals: bool
    led_share: float
    over: dict[str, float]
    rival: Rival | None
    layout: Layout | None = None
    sizes_mm2: tuple[float, float] = (0.0, 0.0)
    sited: Sited | None = None
    wires: tuple[SupplyWire, ...] = ()

    @property
    def evenness(self) -> float:
        """Evenness of the installation."""
        return self.worked.solution.evenness

    def settled(self, project: Project) -> Project:
        """The project with this arrangement's runs, and its place of the supply."""
        return settled(project, self.runs, self.layout)

    @property
    def wire_mm2(self) -> tuple[float, ...]:
        """Sizes of its feeders and extra wires, each once, mm2."""
        cables = [cable for run in self.worked.arrangement.runs for cable in (run.feeder, run.extra)]
        sizes = (round(cable.conductor.area_m2 * 1e6, 3) for cable in cables if cable is not None)
        return tuple(dict.fromkeys(sizes))

    @property
    def groups(self) -> tuple[Group, ...]:
        """Its runs, those alike counted together."""
        counted = Counter((run.string or "", run.bulbs, run.feed) for run in self.runs)
        return tuple(Group(count, *alike) for alike, count in counted.items())


@dataclass(frozen=True)
class Change:
    """One thing that would let the nearest arrangement meet the goals: SI values, from and to.

    `what`: "string wire" (ohm/m), "led current" (A), "supply volts" (V),
    "supply rating" (A), "evenness" (the goal itself).
    """

    what: str
    now: float
    then: float

    @property
    def size(self) -> float:
        """How large the change is, as a share of what is there now."""
        return abs(self.then - self.now) / self.now


@dataclass(frozen=True)
class Miss:
    """Why no arrangement meets the goals.

    `ways`: what stands in the way, of "wire resistance", "supply volts",
    "supply rating", "led maximum", "resistor", "wire limit"; `changes` that
    would do, the smallest first.
    """

    ways: tuple[str, ...]
    changes: tuple[Change, ...]


@dataclass(frozen=True, eq=False)
class Choice:
    """Arrangements side by side, best first, at most eight.

    `looked_at` candidates, `solved` of them, the others certain to be
    beaten; `miss` is None when the first meets the goals; `hung`: the
    proposed runs hang on the hooks of the file; `unbeaten`: proposals there
    are that no other beats, shown or not; `lifted`: the most even of those
    is shown though others stand before it that are not.
    """

    proposals: tuple[Proposal, ...]
    looked_at: int
    solved: int
    miss: Miss | None
    hung: bool = False
    unbeaten: int = 0
    lifted: bool = False
