"""What pages are made of; every text is final, translated and formatted, no markup in it.

The maker's own words alone are Markdown, as they stand in the project file:
a template puts them through `own_words`, which renders and cleans them.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

Signal = Literal["danger", "warning", "caution", "notice"]


@dataclass(frozen=True)
class Caution:
    """A boxed caution.

    `word` is the signal word as printed; `full` tells whether the whole box
    belongs here or one line that points to `anchor` on the safety page.
    """

    anchor: str
    signal: Signal
    word: str
    title: str
    hazard: str
    consequence: str
    avoid: tuple[str, ...]
    source: str
    full: bool = True


@dataclass(frozen=True)
class Column:
    """A table column; numbers are set right."""

    title: str
    numeric: bool = False


@dataclass(frozen=True)
class Table:
    """A table; the first cell of every row names the row."""

    caption: str
    columns: tuple[Column, ...]
    rows: tuple[tuple[str, ...], ...]
    note: str = ""


@dataclass(frozen=True)
class Symbol:
    """One symbol of a calculation: "I", "current of the run", "0.205 A"."""

    symbol: str
    meaning: str
    value: str


@dataclass(frozen=True)
class Calculation:
    """A worked calculation: formula, numbers put in, result, source."""

    title: str
    formula: str
    symbols: tuple[Symbol, ...]
    substituted: str
    result: str
    source: str
    note: str = ""


@dataclass(frozen=True)
class CalculationGroup:
    """Calculations about one subject."""

    anchor: str
    title: str
    intro: str
    calculations: tuple[Calculation, ...]
    tables: tuple[Table, ...] = ()


@dataclass(frozen=True)
class Check:
    """A reading to take: where, how, what to expect, and what to do otherwise.

    `points` are test point labels ("T3"), empty where there is none.
    """

    what: str
    meter: str
    expected: str
    range: str
    if_not: tuple[str, ...]
    points: tuple[str, ...] = ()


@dataclass(frozen=True)
class Photo:
    """A photo of the maker's; `file` as in the project file, under which `photos` has what is published."""

    file: str
    alt: str
    caption: str = ""


@dataclass(frozen=True)
class OwnWords:
    """What the maker adds to a step; `text` and `note` are Markdown."""

    text: str = ""
    note: str = ""
    photo: Photo | None = None


@dataclass(frozen=True)
class Step:
    """One step of the build.

    `identity` stays the same for the same step of the same project;
    `picture` is a picture's id or empty; `own` is what the maker adds, and
    `is_own` tells a step that is the maker's altogether.
    """

    identity: str
    number: int
    title: str
    why: str
    parts: tuple[str, ...]
    tools: tuple[str, ...]
    cautions: tuple[Caution, ...]
    do: tuple[str, ...]
    checks: tuple[Check, ...]
    picture: str = ""
    own: OwnWords | None = None
    is_own: bool = False


@dataclass(frozen=True)
class StepGroup:
    """Steps that belong together, such as all of one run."""

    anchor: str
    title: str
    intro: str
    steps: tuple[Step, ...]


@dataclass(frozen=True)
class ReadingRow:
    """One line of the readings sheet.

    `low`, `high` and `expected` are plain numbers in `unit` for the page's
    script; beyond `out_low` or `out_high` a reading is out of range, between
    them and the range it is borderline.  The `_text` fields are what is
    printed; `measured_text` and `verdict` (one of in, edge-low, edge-high,
    low, high) are of a reading in the project file, empty without one.
    """

    identity: str
    point: str
    what: str
    meter: str
    unit: str
    expected: float
    low: float
    high: float
    expected_text: str
    range_text: str
    if_low: str
    if_high: str
    out_low: float | None = None
    out_high: float | None = None
    measured_text: str = ""
    verdict: str = ""


@dataclass(frozen=True)
class Meaning:
    """What readings out of range mean: a sentence, causes best first, and what to read next."""

    verdict: str
    causes: tuple[str, ...]
    next_reading: str


@dataclass(frozen=True)
class ReadingGroup:
    """Readings of one run or of the supply."""

    title: str
    rows: tuple[ReadingRow, ...]


@dataclass(frozen=True)
class Fact:
    """A label and its value, such as "Supply" and "5.1 V, 2.4 A"."""

    label: str
    value: str
    note: str = ""


@dataclass(frozen=True)
class LinePrice:
    """What a line of parts costs, `text` without its currency; `typical`: not by the file's prices."""

    amount: float
    text: str
    typical: bool


@dataclass(frozen=True)
class ResistorBody:
    """What stands on a resistor: the English names of its colour bands, first digit first, or letters."""

    bands: tuple[str, ...] = ()
    print: str = ""


@dataclass(frozen=True)
class PartLine:
    """Something to buy or to have; `why` is the reason in one sentence.

    `instead` are parts that do as well, a phrase each; `price` None where
    it is not known.  `bodies`: what a resistor may look like, `picture` the
    id of the picture of that.
    """

    quantity: str
    name: str
    rating: str
    why: str
    marking: str = ""
    instead: tuple[str, ...] = ()
    price: LinePrice | None = None
    bodies: tuple[ResistorBody, ...] = ()
    picture: str = ""


@dataclass(frozen=True)
class CutLine:
    """One piece of wire to cut."""

    label: str
    kind: str
    length: str
    ends: str
    why: str = ""


@dataclass(frozen=True)
class Verdict:
    """A judgement in words; `good` None where something is left for the reader to judge."""

    good: bool | None
    text: str
