"""Where everything of a schematic goes, in points of print (1/72 inch), y downwards.

Pure geometry: nothing is drawn here.  A figure is as wide as the text of an
A4 page; each run is one row, eight rows to a figure at most.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise

from guidegen.circuit.arrangement import Arrangement, RunPlan
from guidegen.circuit.points import PointKind, TestPoint, in_front, telling_bulbs

WIDTH = 510.0
ROWS_PER_FIGURE = 8

# From left to right: the two trunks, the resistor, the meter tag behind it,
# the feeder, the joint at its far end, the string.
MINUS_TRUNK = 10.0
PLUS_TRUNK = 30.0
PLUS_TERMINAL = 48.0
RESISTOR_FROM = 38.0
RESISTOR_TO = 79.0
AFTER_RESISTOR = 100.0
FEEDER = 131.0
JOINT = 146.0
DEAD_END = 158.0
BULBS_FROM = 168.0
BULBS_TO = 484.0
RAIL_END = 486.0
EXTRA_END = 498.0

# From the top of a row downwards.
NAME_Y = 6.0
UPPER_Y = 19.0
PLUS_Y = 31.0
MINUS_Y = 64.0
LOWER_Y = 73.0
ROW = 80.0

# The supply's head above the rows.
SUPPLY_FROM = 4.0
SUPPLY_TO = 38.0
SUPPLY_POINT_Y = 52.0
FUSE_FROM = 64.0
FUSE_TO = 94.0
LEAD_Y = 101.0
JOG_Y = 109.0
HEAD = 118.0
ONWARDS = 20.0

TAG_WIDTH = 32.0
TAG_HEIGHT = 20.0
LETTERS = 8.0
SMALL = 7.5
_DIGIT = 4.6
_HALF_BULB = 8.0
_RAYS = 20.0
_TAG_SPACE = TAG_WIDTH + 3.0
_GAP = 18.0


@dataclass(frozen=True)
class Column:
    """A drawn bulb: its number, where it stands, its test point, and whether bulbs are left out behind it.

    `before`: its test point lies in front of it, on the lead-in's open ends.
    """

    bulb: int
    x: float
    point: TestPoint | None
    gap: bool
    before: bool = False

    @property
    def tag_x(self) -> float:
        """Middle of the test point's tag: to the right of the bulb, or to the left of its number."""
        if self.before:
            return self.x - _left(self.bulb) - _TAG_SPACE + TAG_WIDTH / 2
        return self.x + _RAYS + 1 + TAG_WIDTH / 2

    @property
    def end_x(self) -> float:
        """Where the room of the bulb and of a tag behind it ends."""
        tagged = self.point is not None and not self.before
        return self.tag_x + TAG_WIDTH / 2 if tagged else self.x + _RAYS + 2


@dataclass(frozen=True, eq=False)
class Row:
    """One run in its row; `top` is where the row begins, `last` whether no row follows."""

    index: int
    run: RunPlan
    top: float
    last: bool
    columns: tuple[Column, ...]
    points: dict[PointKind, TestPoint]

    @property
    def plus_y(self) -> float:
        """Height of the + conductor."""
        return self.top + PLUS_Y

    @property
    def minus_y(self) -> float:
        """Height of the - conductor."""
        return self.top + MINUS_Y

    def column(self, bulb: int) -> Column:
        """The column of a bulb that is drawn."""
        return next(column for column in self.columns if column.bulb == bulb)


@dataclass(frozen=True, eq=False)
class Sheet:
    """One figure: some of the runs, the `number`-th of `of` figures."""

    number: int
    of: int
    rows: tuple[Row, ...]

    @property
    def continued(self) -> bool:
        """Whether runs follow on a later figure."""
        return self.number < self.of

    @property
    def height(self) -> float:
        """Height of the figure in points."""
        return HEAD + ROW * len(self.rows) + (ONWARDS if self.continued else 0.0)


def lay_out(arrangement: Arrangement, points: tuple[TestPoint, ...]) -> tuple[Sheet, ...]:
    """The figures, with the runs spread evenly over as few as will do."""
    runs = len(arrangement.runs)
    sheets = -(-runs // ROWS_PER_FIGURE)
    bounds = [runs * number // sheets for number in range(sheets + 1)]
    return tuple(
        Sheet(
            number,
            sheets,
            _rows(arrangement, points, range(*bounds[number - 1 : number + 1]), number == sheets),
        )
        for number in range(1, sheets + 1)
    )


def _rows(
    arrangement: Arrangement, points: tuple[TestPoint, ...], indices: range, final: bool
) -> tuple[Row, ...]:
    """The rows of the runs with these indices; `final` when no figure follows."""
    return tuple(
        _row(index, arrangement.runs[index], points, HEAD + ROW * place, final and index == indices[-1])
        for place, index in enumerate(indices)
    )


def _row(index: int, run: RunPlan, points: tuple[TestPoint, ...], top: float, last: bool) -> Row:
    """The row of one run."""
    own = [point for point in points if point.run == index]
    kinds = {point.kind: point for point in own if point.bulb is None}
    bulbs = {point.bulb: point for point in own if point.bulb is not None}
    return Row(index, run, top, last, _columns(run, bulbs), kinds)


def _columns(run: RunPlan, points: dict[int, TestPoint]) -> tuple[Column, ...]:
    """The drawn bulbs, spread over the width there is."""
    chosen = drawn_bulbs(run, set(points))
    spare = (BULBS_TO - BULBS_FROM - _needed(chosen, set(points))) / len(chosen)
    columns = []
    x = BULBS_FROM
    for bulb, after in zip(chosen, [*chosen[1:], chosen[-1] + 1], strict=True):
        gap = after > bulb + 1
        before = bulb in points and in_front(run, bulb)
        place = x + _left(bulb) + (_TAG_SPACE if before else 0.0)
        columns.append(Column(bulb, place, points.get(bulb), gap, before))
        x += _bulb_width(bulb, bulb in points) + (_GAP if gap else 0.0) + spare
    return tuple(columns)


def drawn_bulbs(run: RunPlan, pointed: set[int]) -> list[int]:
    """At most five bulbs: the first two, the fed or middle one, the last two; fewer if too wide."""
    last = run.bulbs
    wanted = sorted(pointed | set(telling_bulbs(run)) | {run.fed_bulb})
    for more in ({2, last - 1}, {2}, set()):
        bulbs = sorted({*wanted, *(bulb for bulb in more if 1 <= bulb <= last)})
        if last <= 5:
            bulbs = list(range(1, last + 1))
        if _needed(bulbs, pointed) <= BULBS_TO - BULBS_FROM:
            break
    return bulbs


def _needed(bulbs: list[int], pointed: set[int]) -> float:
    """Width that these bulbs take, gaps included."""
    gaps = sum(after > bulb + 1 for bulb, after in pairwise(bulbs))
    return sum(_bulb_width(bulb, bulb in pointed) for bulb in bulbs) + gaps * _GAP


def _bulb_width(bulb: int, pointed: bool) -> float:
    """Width of one drawn bulb with its number, rays and tag."""
    return _left(bulb) + _RAYS + (_TAG_SPACE if pointed else 0.0)


def _left(bulb: int) -> float:
    """Room for the bulb's number, to the left of its symbol."""
    return _HALF_BULB + _DIGIT * len(str(bulb))
