"""Step pictures at the supply end's box: all runs connected, closing, the first hour, the last readings."""

from __future__ import annotations

from collections.abc import Sequence
from math import cos, pi, sin

from guidegen.circuit.arrangement import Arrangement, RunPlan
from guidegen.circuit.points import TestPoint
from guidegen.drawings.picture import Picture
from guidegen.drawings.sketch import SMALL, Sketch
from guidegen.guide.steps import picture_ids as ids
from guidegen.locale import _, ngettext
from guidegen.parts.wires import FUSE, feeder_reference, resistor_reference, string_reference

#: Runs drawn in one picture; the rest is told by number.
_RUNS = 3
_ROW = 44.0
_BUS, _RESISTOR, _OWN = 150.0, 186.0, 264.0


def all_runs(arrangement: Arrangement, points: Sequence[TestPoint]) -> Picture:
    """Every + wire back in its own connector: ohms before, volts at the socket after plugging in."""
    supply = next(point.label for point in points if point.kind == "supply")
    shown = min(len(arrangement.runs), _RUNS)
    top = 58.0
    bottom = top + max(_ROW * shown, 64)
    more = len(arrangement.runs) - shown
    sketch = Sketch(bottom + (70 if more else 55))
    _socket(sketch, top, bottom)
    _fused_rows(sketch, arrangement, top, bottom)
    sketch.upright_tag(74, top, bottom, supply)
    fitted = [index for index, run in enumerate(arrangement.runs[:shown]) if run.resistor.fitted]
    words = [_("{point}: plugged in, all runs lit").format(point=supply)]
    if fitted:
        _own_ohms(sketch, top, fitted[0])
        words.insert(0, _("Ω: unplugged, at every run"))
    for place, line in enumerate(words):
        sketch.text(8, bottom + 32 + 15 * place, line, size=SMALL, room=324)
    _more(sketch, more, bottom + 63)
    return sketch.picture(ids.ALL_RUNS, _("All runs connected"), _all_alt(supply, ohms=bool(fitted)))


def _own_ohms(sketch: Sketch, top: float, index: int) -> None:
    """The meter across a run's own resistor, from the + common connector to the run's + wire."""
    y = top + _ROW * index
    begin = (_BUS, y - 10) if index == 0 else (_BUS + 16, y)
    sketch.meter_over(begin, (_OWN, y - 10), "Ω", 18 if index == 0 else y - 24)


def _all_alt(supply: str, *, ohms: bool) -> str:
    first = _("Unplugged: ohms from the + common connector to each + wire. Then plugged in, all runs lit")
    return _(
        "Every run's + wire is in its own connector. {state}: volts at {point}, from + to − of the supply's "
        "socket."
    ).format(state=first if ohms else _("Plugged in, all runs lit"), point=supply)


def _socket(sketch: Sketch, top: float, bottom: float) -> None:
    sketch.box(6, top - 14, 50, bottom - top + 28)
    sketch.text(31, (top + bottom) / 2 + 4, _("socket"), "middle", SMALL, 46)
    sketch.sign(47, top, "+")
    sketch.sign(47, bottom, "−")


def _fused_rows(sketch: Sketch, arrangement: Arrangement, top: float, bottom: float) -> None:
    """From the socket through the fuse to both common connectors, and every run from there."""
    sketch.line((56, top), (92, top), kind="plus")
    sketch.box(92, top - 7, 34, 14, r=1)
    sketch.text(109, top - 13, FUSE, "middle", SMALL)
    sketch.line((92, top), (_BUS - 10, top), kind="plus")
    shown = arrangement.runs[:_RUNS]
    last = top + _ROW * (len(shown) - 1)
    if last > top:
        sketch.line((_BUS, top + 10), (_BUS, last), kind="plus")
    sketch.connector(_BUS, top, "+")
    for index in range(len(shown)):
        _row(sketch, arrangement, index, top + _ROW * index)
    sketch.line((56, bottom), (_BUS - 10, bottom), kind="minus")
    sketch.connector(_BUS, bottom, "−")
    sketch.line((_BUS + 10, bottom), (332, bottom), kind="minus")
    sketch.text(248, bottom - 6, _("minus of every run"), "middle", SMALL, 160)


def _row(sketch: Sketch, arrangement: Arrangement, index: int, y: float) -> None:
    """One run's + from the common connector through its resistor into its own connector."""
    run = arrangement.runs[index]
    begin = _BUS + (10 if index == 0 else 0)
    if run.resistor.fitted:
        sketch.line((begin, y), (_RESISTOR, y), kind="plus")
        sketch.resistor(_RESISTOR, y, 44, 16)
        sketch.text(_RESISTOR + 22, y + 4, resistor_reference(index), "middle", SMALL, bold=True)
        sketch.line((_RESISTOR + 44, y), (_OWN - 10, y), kind="plus")
        sketch.connector(_OWN, y)
        begin = _OWN + 10
    sketch.line((begin, y), (332, y), kind="plus")
    sketch.text(304, y - 7, _cable(run, index), "middle", SMALL)


def _cable(run: RunPlan, index: int) -> str:
    """The cable of a run that goes into the box."""
    return feeder_reference(index) if run.feeder is not None else string_reference(index)


def _more(sketch: Sketch, more: int, y: float) -> None:
    if more > 0:
        words = ngettext("and {count} more run", "and {count} more runs", more).format(count=more)
        sketch.text(8, y, words, size=SMALL)


def close_box(*, resistors: bool) -> Picture:
    """What is looked at before the lid is screwed on."""
    sketch = Sketch(150)
    left, right, top, floor = 76.0, 264.0, 46.0, 116.0
    sketch.line((left, top), (left, floor), (right, floor), (right, top))
    sketch.box(left - 6, top - 12, right - left + 12, 10, "accent", "white", 2)
    for x in (left + 8, right - 8):
        sketch.line((x, top - 18), (x, top + 6), kind="accent")
        sketch.line((x - 5, top - 18), (x + 5, top - 18), kind="accent")
    sketch.text(170, 22, _("lid, screwed down"), "middle", SMALL, 150)
    if resistors:
        _ventilated(sketch, left, right, floor)
    for x, way in ((left, -1), (right, 1)):
        inside = x - 30 * way
        sketch.line((x + 54 * way, 96), (inside, 96), kind="plus")
        sketch.connector(inside - 10 * way, 96)
        sketch.tie(x - 10 * way, 96, 96)
        tip = x + 60 * way
        sketch.line((tip - 8 * way, 90), (tip, 96), (tip - 8 * way, 102), kind="accent")
        sketch.text(x + 34 * way, 84, _("pull"), "middle", SMALL, 60)
    below = _("openings stay free; nothing that burns near it") if resistors else _("no strand stands out")
    sketch.text(170, 140, below, "middle", SMALL, 324)
    alt = _(
        "The box from the side: every wire holds when pulled, a tie inside takes the pull, and the lid is "
        "screwed down."
    )
    air = _("Nothing touches a resistor, and its openings for air stay free.") if resistors else ""
    return sketch.picture(ids.CLOSE_BOX, _("Closing the box"), f"{alt} {air}".strip())


def _ventilated(sketch: Sketch, left: float, right: float, floor: float) -> None:
    """A resistor in the air of the box, and the openings that let it through."""
    sketch.line((146, 70), (194, 70), kind="outline")
    sketch.resistor(152, 70, 36, 14)
    for x in (left, right):
        for y in (58, 68):
            sketch.line((x, y), (x, y + 5), kind="accent")
    for x in (140, 160, 180):
        sketch.line((x, floor), (x + 12, floor), kind="accent")


def first_hour(arrangement: Arrangement, points: Sequence[TestPoint]) -> Picture:
    """A clock to look by, then the thermometer and the meter in the open box."""
    sketch = Sketch(150)
    _clock(sketch, 56, 60)
    sketch.text(56, 118, _("stay one hour"), "middle", SMALL, 104)
    sketch.text(56, 134, _("look every 10 min"), "middle", SMALL, 108)
    sketch.line((118, 60), (140, 60), kind="thin")
    sketch.line((134, 56), (140, 60), (134, 64), kind="thin")
    point, resistor = _first_read(arrangement, points)
    sketch.box(152, 26, 180, 88, "hidden", r=6)
    if resistor:
        _hot_resistor(sketch, resistor, point)
    else:
        sketch.connector(200, 50, "+")
        sketch.connector(200, 96, "−")
        sketch.line((210, 50), (320, 50), kind="plus")
        sketch.line((210, 96), (320, 96), kind="minus")
        sketch.upright_tag(262, 50, 96, point)
    sketch.text(242, 134, _("then, lid open: touch nothing"), "middle", SMALL, 184)
    read = (
        _("the probe of a thermometer on {resistor}, and {point}").format(resistor=resistor, point=point)
        if resistor
        else _("{point}").format(point=point)
    )
    alt = _(
        "A clock: stay for one hour, look and smell every ten minutes. Then, with the lid open and hands "
        "off, read {what}."
    ).format(what=read)
    return sketch.picture(ids.FIRST_HOUR, _("The first hour"), alt)


def _first_read(arrangement: Arrangement, points: Sequence[TestPoint]) -> tuple[str, str]:
    """Label of the first point that is read in the box, and its resistor's, empty without one."""
    for index, run in enumerate(arrangement.runs):
        if run.resistor.fitted:
            return _box_point(points, index, fitted=True), resistor_reference(index)
    return _box_point(points, 0, fitted=False), ""


def _box_point(points: Sequence[TestPoint], index: int, *, fitted: bool) -> str:
    """Label of the point where a run is read once it is closed."""
    kind = "resistor volts" if fitted else "after resistor"
    return next(point.label for point in points if point.run == index and point.kind == kind)


def _clock(sketch: Sketch, x: float, y: float) -> None:
    """A clock with a mark every ten minutes."""
    sketch.circle(x, y, 34, "outline")
    for mark in range(6):
        turn = 2 * pi * mark / 6
        way = sin(turn), -cos(turn)
        sketch.line((x + 28 * way[0], y + 28 * way[1]), (x + 34 * way[0], y + 34 * way[1]), kind="accent")
    sketch.text(x, y + 5, "1 h", "middle", 14, bold=True)
    sketch.curve(f"M {x} {y - 21} a 21 21 0 1 1 -14 5.4", "outline")
    sketch.line((x - 14, y - 9), (x - 14, y - 15.6), (x - 20.6, y - 15.6), kind="outline")


def _hot_resistor(sketch: Sketch, resistor: str, point: str) -> None:
    """A resistor with the meter across it and a thermometer's probe on its body."""
    y = 72.0
    sketch.connector(176, y, "+")
    sketch.line((186, y), (222, y), kind="plus")
    sketch.resistor(222, y, 48, 18)
    sketch.text(246, y + 4, resistor, "middle", SMALL, bold=True)
    sketch.line((270, y), (298, y), kind="plus")
    sketch.connector(308, y)
    sketch.meter_over((200, y), (290, y), point, 44)
    half = sketch.meter(208, 100, "°C")
    sketch.line((208 + half, 100), (246, 100), (246, y + 9), kind="meter")


def box_points(arrangement: Arrangement, points: Sequence[TestPoint]) -> Picture:
    """Where the closed build is read: in the box, a point a run."""
    shown = arrangement.runs[:_RUNS]
    more = len(arrangement.runs) - len(shown)
    heights, y = [], 54.0
    for run in shown:
        heights.append(y)
        y += 52 if run.resistor.fitted else 86
    sketch = Sketch(y - 34 + (22 if more else 0), top=8)
    if len(shown) > 1:
        sketch.line((24, heights[0] + 10), (24, heights[-1]), kind="plus")
    sketch.connector(24, heights[0], "+")
    labels = []
    for index, run in enumerate(shown):
        label = _box_point(points, index, fitted=run.resistor.fitted)
        draw = _across if run.resistor.fitted else _behind
        draw(sketch, index, _cable(run, index), heights[index], label)
        labels.append(label)
    _more(sketch, more, sketch.height - 8)
    alt = _(
        "In the open box, the lights on: the meter on volts at {points}, a point for each run, hands off "
        "everything else."
    ).format(points=", ".join(labels))
    return sketch.picture(ids.BOX_POINTS, _("Where to read in the box"), alt)


def _across(sketch: Sketch, index: int, name: str, y: float, label: str) -> None:
    """A run that is read across its resistor."""
    sketch.line((34 if index == 0 else 24, y), (112, y), kind="plus")
    sketch.resistor(112, y, 56, 16)
    sketch.text(140, y + 4, resistor_reference(index), "middle", SMALL, bold=True)
    sketch.line((168, y), (236, y), kind="plus")
    sketch.connector(246, y)
    sketch.line((256, y), (332, y), kind="plus")
    sketch.text(298, y - 7, name, "middle", SMALL)
    sketch.meter_over((88, y), (192, y), label, y - 26)


def _behind(sketch: Sketch, index: int, name: str, y: float, label: str) -> None:
    """A run without a resistor: between its two wires."""
    sketch.line((34 if index == 0 else 24, y), (332, y), kind="plus")
    sketch.connector(60, y + 40, "−")
    sketch.line((70, y + 40), (332, y + 40), kind="minus")
    sketch.text(298, y - 7, name, "middle", SMALL)
    sketch.upright_tag(140, y, y + 40, label)
