"""Step pictures of a run in circuit: where to hold the meter, and what is clipped in."""

from __future__ import annotations

from collections.abc import Sequence

from guidegen.circuit.arrangement import RunPlan
from guidegen.circuit.points import TestPoint, telling_bulbs
from guidegen.drawings.picture import Picture, text_width
from guidegen.drawings.sketch import LETTERS, SMALL, WIDTH, Line, Sketch
from guidegen.guide.steps import picture_ids as ids
from guidegen.locale import _
from guidegen.parts.wires import extra_reference, feeder_reference, resistor_reference

# Heights of the supply side's + and -, and of the run's own + and -.
_TOP, _PLUS, _MINUS, _BOTTOM = 46.0, 80.0, 134.0, 168.0
BENCH_TOP, BENCH_BOTTOM = 66.0, 132.0
_CONNECTOR, _RESISTOR, _WIRE, _JOINT = 20.0, 44.0, 94.0, 124.0


def bench(number: int, last: int, *, read: bool) -> Picture:
    """One whole string behind the test resistor, and its readings.

    `last`: the second bulb that is drawn, as bought; `read`: the string is bared there, and read.
    """
    sketch = Sketch(170)
    on_connectors(sketch, 314 if read else 262)
    sketch.meter_over((52, BENCH_TOP), (118, BENCH_TOP), "V", 20)
    sketch.text(128, 20, _("1: across the resistor"), size=SMALL, room=200)
    sketch.upright_meter(142, BENCH_TOP, BENCH_BOTTOM, "V", named_left=True)
    sketch.text(142, 156, _("2: behind it"), "middle", SMALL, 150)
    for x, bulb in {202: 1, 262: last}.items():
        if bulb > 1 or x == 202:
            lamp(sketch, x, BENCH_TOP, BENCH_BOTTOM, str(bulb))
    alt = _(
        "+ common connector through the test resistor to the string's plus, the string's minus to the − "
        "common connector. Reading 1: volts across the resistor. Reading 2: volts behind it, from plus to "
        "minus."
    )
    if read:
        sketch.upright_tag(314, BENCH_TOP, BENCH_BOTTOM, "V")
        sketch.text(330, 156, _("3: at bulb {bulb}").format(bulb=last), "end", SMALL, 100)
        alt = _("{two_readings} Reading 3: volts at bulb {bulb}.").format(two_readings=alt, bulb=last)
    return sketch.picture(ids.bench_picture(number), _("One string on the bench"), alt)


def on_connectors(sketch: Sketch, right: float) -> None:
    """The common connectors, the test resistor, and two rails as far as `right`."""
    sketch.connector(_CONNECTOR, BENCH_TOP, "+")
    sketch.connector(_CONNECTOR, BENCH_BOTTOM, "−")
    sketch.line((30, BENCH_TOP), (64, BENCH_TOP), kind="plus")
    sketch.resistor(64, BENCH_TOP, 44)
    sketch.line((108, BENCH_TOP), (right, BENCH_TOP), kind="plus")
    sketch.line((30, BENCH_BOTTOM), (right, BENCH_BOTTOM), kind="minus")


def cold(run: RunPlan, index: int, *, two_way: bool) -> Picture:
    """The test without power: no short, and the ohms of the two ways; `two_way`: LEDs face both ways."""
    sketch = Sketch(246 if two_way else 224)
    places = _places(run, 150, 296)
    _circuit(sketch, run, index, places, _own_resistor(run, index))
    plus_x, minus_x = places[run.fed_bulb], places[_minus_bulb(run)]
    for end_x, connector_y, rail_y, y in (
        (plus_x, _TOP - 10, (_TOP + _PLUS) / 2, 16.0),
        (minus_x, _BOTTOM + 10, (_BOTTOM + _MINUS) / 2, 207.0),
    ):
        sketch.meter_round((_CONNECTOR, connector_y), (end_x, rail_y), "Ω", y, end_x + 14)
    if two_way:
        sketch.upright_tag(104, _TOP, _BOTTOM, "Ω")
        sketch.text(20, 240, _("where the run begins: both ways round"), size=SMALL, room=316)
    else:
        sketch.upright_meter(104, _TOP, _BOTTOM, "Ω", red_below=True, named_left=True)
    alt = _cold_words(two_way=two_way).format(plus=run.fed_bulb, minus=_minus_bulb(run))
    return sketch.picture(ids.cold_picture(index), _("Where to hold the meter, without power"), alt)


def _cold_words(*, two_way: bool) -> str:
    if two_way:
        return _(
            "Everything unplugged. Ohms from where the run's + begins to the − common connector, both ways "
            "round. Ohms from the + common connector to where plus meets the string at bulb {plus}, and from "
            "the − common connector to where minus meets it at bulb {minus}."
        )
    return _(
        "Everything unplugged. Ohms from where the run's + begins to the − common connector, the red lead on "
        "−, so that the LEDs block. Ohms from the + common connector to where plus meets the string at bulb "
        "{plus}, and from the − common connector to where minus meets it at bulb {minus}."
    )


def first_power(run: RunPlan, index: int) -> Picture:
    """The run behind the test resistor, its own resistor out of circuit."""
    sketch = Sketch(192)
    _circuit(sketch, run, index, _places(run, 150, 290), "")
    sketch.meter_over((38, _TOP), (90, _TOP), "V", 16)
    sketch.text(98, 20, _("across the test resistor"), size=SMALL, room=236)
    sketch.upright_meter(104, _TOP, _BOTTOM, "V", named_left=True)
    alt = _(
        "The test resistor sits between the + common connector and the run, the run's minus in the − common "
        "connector. One reading across the test resistor, one behind it from plus to minus."
    )
    return sketch.picture(ids.first_power_picture(index), _("First power through a larger resistor"), alt)


def test_points(run: RunPlan, index: int, points: Sequence[TestPoint]) -> Picture:
    """Every test point of the run, red lead on its upper end."""
    pointed = {point.bulb for point in points if point.bulb is not None}
    bulbs = sorted(pointed | {run.fed_bulb, _minus_bulb(run)})
    open_begin = run.feed == "middle" and 1 in pointed and run.fed_bulb > 1
    half = _lamp_half(str(bulbs[-1]))
    left = (178.0 if open_begin else 138.0) + half
    aside = half + 24
    places = {bulb: left + (2 * aside + 2) * place for place, bulb in enumerate(bulbs)}
    sketch = Sketch(192, max(WIDTH, places[bulbs[-1]] + aside + 26))
    rails = (left - (aside if open_begin else 0), places[bulbs[-1]] + (aside if bulbs[-1] in pointed else 0))
    _circuit(sketch, run, index, places, _own_resistor(run, index), rails)
    for point in points:
        if point.kind == "resistor volts":
            sketch.meter_over((38, _TOP), (90, _TOP), point.label, 16)
        elif point.bulb is None:
            sketch.upright_tag(108, _TOP, _BOTTOM, point.label)
        else:
            ahead = open_begin and point.bulb == 1
            sketch.upright_tag(places[point.bulb] + (-aside if ahead else aside), _PLUS, _MINUS, point.label)
    alt = _("Test points of this run: {points}. Red lead on plus, black lead on minus.").format(
        points="; ".join(_point_words(point) for point in points)
    )
    return sketch.picture(ids.points_picture(index), _("Test points of the run"), alt)


test_points.__test__ = False  # type: ignore[attr-defined]


def _point_words(point: TestPoint) -> str:
    words = {
        "resistor volts": _("{point} across the resistor"),
        "after resistor": _("{point} where the run begins, + to −"),
    }.get(point.kind, _("{point} at bulb {bulb}"))
    return words.format(point=point.label, bulb=point.bulb)


def _minus_bulb(run: RunPlan) -> int:
    """Bulb at which minus leaves."""
    return run.bulbs if run.feed == "opposite ends" else run.fed_bulb


def _own_resistor(run: RunPlan, index: int) -> str | None:
    return resistor_reference(index) if run.resistor.fitted else None


def _places(run: RunPlan, left: float, right: float) -> dict[int, float]:
    """Where the drawn bulbs stand: the first, the middle one and the last."""
    bulbs = telling_bulbs(run)
    if len(bulbs) == 1:
        return {bulbs[0]: (left + right) / 2}
    step = (right - left) / (len(bulbs) - 1)
    return {bulb: left + step * place for place, bulb in enumerate(bulbs)}


def _circuit(
    sketch: Sketch,
    run: RunPlan,
    index: int,
    places: dict[int, float],
    resistor: str | None,
    rails: tuple[float, float] | None = None,
) -> None:
    """Connectors, feed and bulbs; `resistor` is what stands in it, None for none.

    The rails go from the first drawn bulb to the last, or as far as `rails` says.
    """
    sketch.connector(_CONNECTOR, _TOP, "+")
    sketch.connector(_CONNECTOR, _BOTTOM, "−")
    if resistor is not None:
        sketch.line((_CONNECTOR + 10, _TOP), (_RESISTOR, _TOP), kind="plus")
        _resistor(sketch, resistor)
    _feed(sketch, run, index, "plus", places, resistor=resistor is not None)
    _feed(sketch, run, index, "minus", places)
    if run.feeder is not None:
        _name(sketch, _WIRE, feeder_reference(index))
    left, right = rails or (min(places.values()), max(places.values()))
    if right > left:
        sketch.line((left, _PLUS), (right, _PLUS), kind="plus")
        sketch.line((left, _MINUS), (right, _MINUS), kind="minus")
    for bulb, x in places.items():
        lamp(sketch, x, _PLUS, _MINUS, str(bulb))


def _feed(
    sketch: Sketch, run: RunPlan, index: int, kind: Line, places: dict[int, float], *, resistor: bool = True
) -> None:
    """One pole from its common connector to where it enters the run."""
    side, rail = (_TOP, _PLUS) if kind == "plus" else (_BOTTOM, _MINUS)
    bulb = run.fed_bulb if kind == "plus" else _minus_bulb(run)
    begins = _RESISTOR + 40 if kind == "plus" and resistor else _CONNECTOR + 10
    sketch.line((begins, side), (places[bulb], side), (places[bulb], rail), kind=kind)
    if run.feed == "middle" or (run.feed == "opposite ends" and kind == "minus"):
        sketch.joint(_JOINT, side)
        _extra(sketch, _JOINT + 8, index, side)
    if run.feed == "both ends" and run.bulbs > 1:
        last = places.get(run.bulbs, max(places.values()))
        sketch.line((places[bulb], side), (last, side), (last, rail), kind=kind)
        sketch.joint(places[bulb], side)
        _extra(sketch, places[bulb] + 26, index, side)


def _extra(sketch: Sketch, x: float, index: int, side: float) -> None:
    sketch.text(x, side - 7 if side == _TOP else side + 16, extra_reference(index), size=SMALL)


def _name(sketch: Sketch, x: float, words: str) -> None:
    """A name on both wires of the supply side."""
    sketch.text(x, _TOP - 7, words, size=SMALL)
    sketch.text(x, _BOTTOM + 16, words, size=SMALL)


def _resistor(sketch: Sketch, words: str) -> None:
    """The resistor in plus."""
    sketch.resistor(_RESISTOR, _TOP, 40, 16)
    if words:
        sketch.text(_RESISTOR + 20, _TOP + 4, words, "middle", SMALL, bold=True)


def lamp(sketch: Sketch, x: float, top: float, bottom: float, words: str) -> None:
    """A bulb between two rails."""
    middle = (top + bottom) / 2
    half = _lamp_half(words)
    sketch.line((x, top), (x, middle - 13), kind="minus")
    sketch.line((x, middle + 13), (x, bottom), kind="minus")
    sketch.box(x - half, middle - 13, 2 * half, 26, r=12, fill="white")
    if words:
        sketch.text(x, middle + 4.3, words, "middle", bold=True)


def _lamp_half(words: str) -> float:
    """Half the width of a bulb."""
    return max(13.0, text_width(words, LETTERS) / 2 + 6)
