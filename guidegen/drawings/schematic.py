"""The schematic: supply, fuse, and every run as it is really wired, one row per run."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise
from typing import Literal

from guidegen.circuit.arrangement import Arrangement, Feed, RunPlan
from guidegen.circuit.points import TestPoint
from guidegen.circuit.solution import Solution
from guidegen.drawings import layout
from guidegen.drawings.key import draw_key
from guidegen.drawings.layout import Column, Row, Sheet
from guidegen.drawings.pen import POLES, Pen, Place, Pole
from guidegen.drawings.picture import Picture, css_px, finish_svg, shortened, text_width
from guidegen.drawings.wording import feed_words, sheet_alt, sheet_caption
from guidegen.locale import _, ngettext
from guidegen.locale.numerals import fixed, general, with_unit
from guidegen.parts.wires import (
    FUSE,
    LEAD,
    extra_reference,
    feeder_reference,
    resistor_reference,
    string_reference,
)

_HOP = 4.0


@dataclass(frozen=True)
class Rail:
    """How one conductor of a run's string is fed.

    `from_joint`: its near end is joined to the feeder, else capped;
    `extra_to`: the bulb that an extra wire from the same joint runs to.
    """

    from_joint: bool
    extra_to: Literal["", "fed", "last"]


#: How the + and the - conductor of a run are fed.
RAILS: dict[Feed, tuple[Rail, Rail]] = {
    "one end": (Rail(True, ""), Rail(True, "")),
    "middle": (Rail(False, "fed"), Rail(False, "fed")),
    "both ends": (Rail(True, "last"), Rail(True, "last")),
    "opposite ends": (Rail(True, ""), Rail(False, "last")),
}


def draw_schematics(
    arrangement: Arrangement, solution: Solution, points: tuple[TestPoint, ...]
) -> tuple[Picture, ...]:
    """The schematic of an arrangement, in as many figures as its runs need.

    `points` are the test points of the same arrangement; their tags carry
    the solved volts.
    """
    volts = {point.number: point_v(point, arrangement, solution) for point in points}
    sheets = layout.lay_out(arrangement, points)
    return tuple(_picture(sheet, arrangement, points, volts) for sheet in sheets)


def point_v(point: TestPoint, arrangement: Arrangement, solution: Solution) -> float:
    """Volts a meter shows at a test point, everything running."""
    if point.run is None:
        return solution.terminal_v
    run = solution.runs[point.run]
    if point.bulb is not None:
        return float(run.bulb_v[point.bulb - 1])
    return run.resistor_v if point.kind == "resistor volts" else run.after_resistor_v


def _picture(
    sheet: Sheet, arrangement: Arrangement, points: tuple[TestPoint, ...], volts: dict[int, float]
) -> Picture:
    """One figure as a finished picture."""
    picture_id = f"schematic-{sheet.number}"
    caption = sheet_caption(sheet)
    alt = sheet_alt(sheet, arrangement, points, volts)
    box = (0.0, 0.0, layout.WIDTH, sheet.height)
    drawn = sketch(sheet, arrangement, points, volts).svg()
    svg = finish_svg(drawn, picture_id, caption, alt, box)
    return Picture(picture_id, svg, alt, caption, css_px(box[2]), css_px(box[3]))


def sketch(
    sheet: Sheet, arrangement: Arrangement, points: tuple[TestPoint, ...], volts: dict[int, float]
) -> Pen:
    """Draw one figure; `volts` by the number of the test point."""
    pen = Pen()
    _draw_supply(pen, arrangement, sheet)
    _draw_supply_point(pen, points, volts)
    dark = any(bool((row.run.lit_groups == 0).any()) for row in sheet.rows)
    draw_key(pen, sheet, dark=dark, capped=any(_capped(row.run) for row in sheet.rows))
    for row in sheet.rows:
        _draw_row(pen, row, volts)
    if sheet.continued:
        _draw_onwards(pen, sheet)
    return pen


def _capped(run: RunPlan) -> bool:
    """Whether any end of the run's string stays free."""
    return run.feed != "both ends"


def _draw_supply(pen: Pen, arrangement: Arrangement, sheet: Sheet) -> None:
    """The supply, the fuse in its +, the shared lead, and the trunks down to the last row."""
    minus, terminal = layout.MINUS_TRUNK, layout.PLUS_TERMINAL
    pen.box((1.5, layout.SUPPLY_FROM), (56.5, layout.SUPPLY_TO), width=1.3)
    pen.text((29, layout.SUPPLY_FROM + 8), _("supply"), layout.LETTERS)
    volts = with_unit(general(arrangement.supply.voltage_v, 4), "V DC")
    pen.text((29, layout.SUPPLY_FROM + 18), volts, layout.LETTERS)
    pen.text((minus, layout.SUPPLY_TO - 6), "−", 10)
    pen.text((terminal, layout.SUPPLY_TO - 6), "+", 10)
    pen.wire("+", (terminal, layout.SUPPLY_TO), (terminal, layout.FUSE_FROM))
    pen.fuse(FUSE, (terminal, layout.FUSE_FROM), (terminal, layout.FUSE_TO))
    rating = arrangement.fuse.rating_a
    fuse = FUSE if rating is None else f"{FUSE} {_amperes(rating)}"
    pen.text((terminal + 10, (layout.FUSE_FROM + layout.FUSE_TO) / 2), fuse, layout.LETTERS, "left")
    if arrangement.supply.lead is not None:
        middle = (minus + terminal) / 2
        pen.ellipse((middle, layout.LEAD_Y), terminal - minus + 12, 9)
        pen.text((terminal + 10, layout.LEAD_Y), LEAD, layout.LETTERS, "left")
    _draw_trunks(pen, sheet)


def _amperes(rating_a: float) -> str:
    """A fuse's rating as it stands on its cap."""
    return (
        with_unit(general(rating_a, 6), "A") if rating_a >= 1 else with_unit(general(1e3 * rating_a, 4), "mA")
    )


def _draw_trunks(pen: Pen, sheet: Sheet) -> None:
    """The two conductors that every run branches from, as far as the last row of the figure."""
    plus, terminal = layout.PLUS_TRUNK, layout.PLUS_TERMINAL
    last = sheet.rows[-1]
    jog = ((terminal, layout.FUSE_TO), (terminal, layout.JOG_Y), (plus, layout.JOG_Y))
    pen.wire("+", *jog, (plus, last.plus_y))
    pen.wire("-", (layout.MINUS_TRUNK, layout.SUPPLY_TO), (layout.MINUS_TRUNK, last.minus_y))


def _draw_supply_point(pen: Pen, points: tuple[TestPoint, ...], volts: dict[int, float]) -> None:
    """The test point at the supply's terminals, in front of the fuse."""
    y = layout.SUPPLY_POINT_Y
    for point in points:
        if point.kind == "supply":
            middle = (layout.MINUS_TRUNK + layout.PLUS_TERMINAL) / 2
            _draw_tag(pen, (middle, y), point, volts)
            for x, side in ((layout.MINUS_TRUNK, -1), (layout.PLUS_TERMINAL, 1)):
                pen.meter_line((x, y), (middle + side * layout.TAG_WIDTH / 2, y))
                pen.ring((x, y))


def _draw_onwards(pen: Pen, sheet: Sheet) -> None:
    """The trunks going on to the runs of the next figure."""
    last = sheet.rows[-1]
    bottom = sheet.height - 6
    trunks = ((layout.PLUS_TRUNK, last.plus_y), (layout.MINUS_TRUNK, last.minus_y))
    for pole, (x, y) in zip(POLES, trunks, strict=True):
        pen.wire(pole, (x, y), (x, bottom - 8))
        pen.line((x, bottom - 8), (x, bottom), width=1.5, style="2,2")
    words = _("to run {run} and on: next figure").format(run=last.index + 2)
    pen.text((layout.PLUS_TRUNK + 8, bottom - 4), words, layout.LETTERS, "left")


def _draw_row(pen: Pen, row: Row, volts: dict[int, float]) -> None:
    """One run."""
    pen.text((layout.RESISTOR_FROM, row.top + layout.NAME_Y), row_title(row), 8.5, "left")
    _draw_branches(pen, row)
    _draw_resistor(pen, row, volts)
    _draw_feeder(pen, row)
    for pole, rail in zip(POLES, RAILS[row.run.feed], strict=True):
        _draw_rail(pen, row, pole, rail)
    for column in row.columns:
        _draw_bulb(pen, row, column, volts)


def row_title(row: Row) -> str:
    """Number and name of a run, how many bulbs it has and how it is fed."""
    count = ngettext("{count} bulb", "{count} bulbs", row.run.bulbs).format(count=row.run.bulbs)
    rest = f": {string_reference(row.index)}, {count}, {feed_words(row.run.feed)}"
    room = layout.WIDTH - layout.RESISTOR_FROM - 4 - text_width(rest, 8.5)
    head = _("Run {number}, {name}").format(number=row.index + 1, name=row.run.name)
    return shortened(head, 8.5, room) + rest


def _draw_branches(pen: Pen, row: Row) -> None:
    """From the trunks to the run's resistor in + and to its meter tag in -."""
    plus, minus, y = layout.PLUS_TRUNK, layout.MINUS_TRUNK, row.minus_y
    pen.wire("+", (plus, row.plus_y), (layout.RESISTOR_FROM, row.plus_y))
    if row.last:
        pen.wire("-", (minus, y), (layout.AFTER_RESISTOR, y))
        return
    pen.dot((plus, row.plus_y))
    pen.dot((minus, y))
    pen.wire("-", (minus, y), (plus - _HOP, y))
    pen.hop("-", (plus, y), _HOP)
    pen.wire("-", (plus + _HOP, y), (layout.AFTER_RESISTOR, y))


def _draw_resistor(pen: Pen, row: Row, volts: dict[int, float]) -> None:
    """The run's resistor with its test points, or the plain + conductor where there is none."""
    start, end = (layout.RESISTOR_FROM, row.plus_y), (layout.RESISTOR_TO, row.plus_y)
    middle = (start[0] + end[0]) / 2
    if row.run.resistor.fitted:
        reference = resistor_reference(row.index)
        pen.resistor(reference, start, end)
        words = f"{reference} {with_unit(general(row.run.resistor.ohm, 4), 'Ω')}"
        pen.text((middle, row.plus_y + 13.5), words, layout.LETTERS)
    else:
        pen.wire("+", start, end)
    point = row.points.get("resistor volts")
    if point is not None:
        top = row.top + layout.UPPER_Y
        _draw_flat_tag(pen, (middle, top), point, volts)
        for x in (start[0], end[0]):
            pen.meter_line((x, row.plus_y), (x, top + 5.5))
            pen.ring((x, row.plus_y))
    point = row.points.get("after resistor")
    if point is not None:
        _draw_upright_tag(pen, layout.AFTER_RESISTOR, row, point, volts)


def _draw_feeder(pen: Pen, row: Row) -> None:
    """The feeder up to the joint at its far end."""
    pen.wire("+", (layout.RESISTOR_TO, row.plus_y), (layout.JOINT, row.plus_y))
    pen.wire("-", (layout.AFTER_RESISTOR, row.minus_y), (layout.JOINT, row.minus_y))
    if row.run.feeder is not None:
        middle = (row.plus_y + row.minus_y) / 2
        pen.ellipse((layout.FEEDER, middle), 8, row.minus_y - row.plus_y + 10)
        pen.text((layout.FEEDER, row.top + layout.UPPER_Y - 1), feeder_reference(row.index), layout.LETTERS)


def _draw_rail(pen: Pen, row: Row, pole: Pole, rail: Rail) -> None:
    """One conductor of the string with its ends, caps and extra wire."""
    y, inwards = (row.plus_y, 7.0) if pole == "+" else (row.minus_y, -7.0)
    sign = "+" if pole == "+" else "−"
    start = layout.JOINT if rail.from_joint else layout.DEAD_END
    end = layout.EXTRA_END if rail.extra_to == "last" else layout.RAIL_END
    _draw_conductor(pen, row, pole, y, (start, end))
    pen.dot((layout.JOINT, y))
    if not rail.from_joint:
        pen.cap((layout.DEAD_END, y))
    if rail.extra_to != "last":
        pen.cap((layout.RAIL_END + 3.5, y))
    if rail.extra_to:
        to_x = row.column(row.run.fed_bulb).x if rail.extra_to == "fed" else layout.EXTRA_END
        _draw_extra(pen, row, pole, y, to_x)
    pen.text((layout.JOINT + 7, y + inwards), sign, 10)
    pen.text((layout.EXTRA_END + 7, y), sign, 10)


def _draw_conductor(pen: Pen, row: Row, pole: Pole, y: float, span: tuple[float, float]) -> None:
    """A conductor along the bulbs, dotted where bulbs are left out."""
    x = span[0]
    for column, after in pairwise(row.columns):
        if column.gap:
            edge = column.end_x
            until = after.x - 9 - 4.6 * len(str(after.bulb))
            pen.wire(pole, (x, y), (edge, y))
            pen.left_out(pole, (edge, y), (until, y))
            x = until
    pen.wire(pole, (x, y), (span[1], y))


def _draw_extra(pen: Pen, row: Row, pole: Pole, y: float, to_x: float) -> None:
    """The extra wire of one pole, from the joint along its own channel to its bulb, named in a break."""
    channel = row.top + (layout.UPPER_Y if pole == "+" else layout.LOWER_Y)
    words = extra_reference(row.index) + (" +" if pole == "+" else " −")
    middle = ((layout.JOINT + to_x) / 2, channel)
    corners = ((layout.JOINT, y), (layout.JOINT, channel), (to_x, channel), (to_x, y))
    pen.named_wire(pole, words, middle, *corners)
    pen.dot((to_x, y))


def _draw_bulb(pen: Pen, row: Row, column: Column, volts: dict[int, float]) -> None:
    """A bulb between the rails, its number to the left, its test point where the metal is bare."""
    reference = f"bulb {row.index + 1}.{column.bulb}"
    plus, minus = (column.x, row.plus_y), (column.x, row.minus_y)
    if row.run.lit_groups[column.bulb - 1] > 0:
        pen.led(reference, plus, minus)
    else:
        pen.dark_led(reference, minus, plus)
    middle = (row.plus_y + row.minus_y) / 2
    pen.text((column.x - 8, middle), str(column.bulb), layout.LETTERS, "right")
    if column.point is not None:
        _draw_upright_tag(pen, column.tag_x, row, column.point, volts)


def _draw_upright_tag(pen: Pen, x: float, row: Row, point: TestPoint, volts: dict[int, float]) -> None:
    """A tag between + and -, with a line to each."""
    middle = (row.plus_y + row.minus_y) / 2
    _draw_tag(pen, (x, middle), point, volts)
    for y, side in ((row.plus_y, -1), (row.minus_y, 1)):
        pen.meter_line((x, y), (x, middle + side * layout.TAG_HEIGHT / 2))
        pen.ring((x, y))


def _draw_tag(pen: Pen, place: Place, point: TestPoint, volts: dict[int, float]) -> None:
    """A test point's number over its volts, in a box."""
    x, y = place
    half_w, half_h = layout.TAG_WIDTH / 2, layout.TAG_HEIGHT / 2
    pen.box((x - half_w, y - half_h), (x + half_w, y + half_h), width=0.7)
    pen.text((x, y - 4.7), point.label, layout.SMALL)
    pen.text((x, y + 4.9), with_unit(fixed(volts[point.number], 2), "V"), layout.SMALL)


def _draw_flat_tag(pen: Pen, place: Place, point: TestPoint, volts: dict[int, float]) -> None:
    """A test point's number beside its volts, in a box."""
    x, y = place
    pen.box((x - 25, y - 5.5), (x + 25, y + 5.5), width=0.7)
    pen.text((x, y), f"{point.label} {with_unit(fixed(volts[point.number], 2), 'V')}", layout.SMALL)
