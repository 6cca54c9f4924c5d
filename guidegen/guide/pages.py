"""The pages of the guide as frozen models; a theme is templates over these."""

from __future__ import annotations

from dataclasses import dataclass

from guidegen.guide.blocks import (
    Calculation,
    CalculationGroup,
    Caution,
    CutLine,
    Fact,
    Meaning,
    PartLine,
    Photo,
    ReadingGroup,
    ResistorBody,
    StepGroup,
    Table,
    Verdict,
)


@dataclass(frozen=True)
class StartPage:
    """Start here: what it will be, what it takes, and the verdict.

    `verdict` is one sentence; `verdict_good` tells which way it goes;
    `picture` the id of the picture shown; `stop` the box before everything
    else where the guide has to stop for licensed work. `cover` and `views`
    are photos of the maker's, `story` words of the maker's in Markdown.
    """

    what: tuple[str, ...]
    facts: tuple[Fact, ...]
    verdict: str
    verdict_good: bool
    findings: tuple[str, ...]
    picture: str
    stop: Caution | None = None
    cover: Photo | None = None
    views: tuple[Photo, ...] = ()
    story: str = ""


@dataclass(frozen=True)
class SafetyPage:
    """Stay safe: boxed cautions, most severe first; prints alone."""

    first_line: str
    cautions: tuple[Caution, ...]


@dataclass(frozen=True)
class ElectricianPage:
    """For the electrician: facts for the licensed person who does the mains side; prints alone.

    `asked` says what is wanted, never how; `to_fill` are the labels of empty
    lines, `note_lines` the number of lines without one.
    """

    stop: Caution
    first_line: str
    asked: tuple[str, ...]
    facts: tuple[Fact, ...]
    who: Table
    to_fill: tuple[str, ...]
    note_lines: int


@dataclass(frozen=True)
class PartsPage:
    """Parts and tools: all to buy and to own before step 1; prints alone.

    `currency` is that of the prices; `total` says what is bought altogether,
    and what has no price.
    """

    buy: tuple[PartLine, ...]
    tools: tuple[PartLine, ...]
    cuts: tuple[CutLine, ...]
    labels: tuple[str, ...]
    currency: str = ""
    total: tuple[str, ...] = ()


@dataclass(frozen=True)
class WiringPage:
    """Wiring: schematic, test points, wire table; `pictures` are ids."""

    pictures: tuple[str, ...]
    how_to_read: tuple[str, ...]
    points: Table
    wires: Table
    runs: Table


@dataclass(frozen=True)
class NumbersPage:
    """The numbers: every calculation worked; what the model leaves out; the project file."""

    groups: tuple[CalculationGroup, ...]
    corners: Table
    left_out: tuple[str, ...]
    project_file_name: str
    project_file: str


@dataclass(frozen=True)
class LightPage:
    """Light along the run: charts and the same as tables."""

    message: tuple[str, ...]
    pictures: tuple[str, ...]
    tables: tuple[Table, ...]


@dataclass(frozen=True)
class Compared:
    """One arrangement among others: `mark` says in words that the guide builds it, empty if it does not.

    `picture` is the id of its chart; `why` tells what it gains and costs;
    `runs` is its block of the project file, empty of the maker's own, and
    `also` tells what else to write there.
    """

    anchor: str
    number: int
    title: str
    mark: str
    picture: str
    why: str
    runs: str = ""
    also: tuple[str, ...] = ()


@dataclass(frozen=True)
class ArrangementsPage:
    """Arrangements compared: the choice explained, a chart of each, all figures in a table.

    `wires` is the table of what each is built of; `to_take` tells how a
    block of the project file is taken over.
    """

    message: tuple[str, ...]
    how_to_read: str
    arrangements: tuple[Compared, ...]
    table: Table
    wires: Table
    to_take: str
    rests_on: tuple[str, ...]


@dataclass(frozen=True)
class BuildPage:
    """Build it: steps in groups; `stop` as on the first page."""

    before: tuple[str, ...]
    groups: tuple[StepGroup, ...]
    stop: Caution | None = None


@dataclass(frozen=True)
class ReadingsPage:
    """Readings: expected range at each test point and a blank to fill in."""

    how: tuple[str, ...]
    cautions: tuple[Caution, ...]
    groups: tuple[ReadingGroup, ...]
    meaning: Meaning | None = None


@dataclass(frozen=True)
class HangingPage:
    """Hanging plan: what hangs where, whether it holds, how to hang it, and the whole cut list."""

    lead: tuple[str, ...]
    verdicts: tuple[Verdict, ...]
    pictures: tuple[str, ...]
    feeding: tuple[str, ...]
    feeds: tuple[Table, ...]
    cautions: tuple[Caution, ...]
    how: tuple[str, ...]
    hooks: Table
    spans: Table
    gaps: tuple[str, ...]
    bulbs: tuple[Table, ...]
    usage: Table
    sums: tuple[Calculation, ...]
    cuts: Table
    totals: Table


@dataclass(frozen=True)
class Section:
    """A section of a page: text, lists, a plate of facts, calculations and tables, those that there are."""

    anchor: str
    title: str
    text: tuple[str, ...] = ()
    facts: tuple[Fact, ...] = ()
    points: tuple[str, ...] = ()
    tables: tuple[Table, ...] = ()
    sums: tuple[Calculation, ...] = ()


@dataclass(frozen=True)
class RunningPage:
    """Running it: energy, cells, timers, cold and warm, and care, section by section."""

    lead: tuple[str, ...]
    sections: tuple[Section, ...]


@dataclass(frozen=True)
class PrintSetPage:
    """Print set: pages that print as one stack; `sheets` are names of pages of the same guide."""

    lead: tuple[str, ...]
    sheets: tuple[str, ...]


PageModel = (
    StartPage
    | SafetyPage
    | ElectricianPage
    | PartsPage
    | WiringPage
    | NumbersPage
    | LightPage
    | ArrangementsPage
    | BuildPage
    | ReadingsPage
    | HangingPage
    | RunningPage
    | PrintSetPage
)


@dataclass(frozen=True)
class Page:
    """One page: file name without folder, title, purpose in a few words, template and model."""

    name: str
    title: str
    purpose: str
    template: str
    model: PageModel


@dataclass(frozen=True)
class Guide:
    """The whole guide, before it is rendered.

    `key` is a hash of the project, for the browser's storage; `language` a
    language tag; `pages` in reading order, the first is index.html.
    """

    title: str
    summary: str
    author: str
    language: str
    key: str
    version: str
    pages: tuple[Page, ...]
    licence: str = ""

    @property
    def step_pictures(self) -> frozenset[str]:
        """Ids of the pictures that steps name."""
        models = [page.model for page in self.pages if isinstance(page.model, BuildPage)]
        steps = [step for model in models for group in model.groups for step in group.steps]
        return frozenset(step.picture for step in steps if step.picture)

    @property
    def resistor_bodies(self) -> tuple[tuple[ResistorBody, ...], ...]:
        """What the resistors to buy look like, each look once, in the order of the list."""
        models = [page.model for page in self.pages if isinstance(page.model, PartsPage)]
        return tuple(dict.fromkeys(line.bodies for model in models for line in model.buy if line.bodies))
