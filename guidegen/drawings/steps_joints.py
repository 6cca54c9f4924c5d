"""Step pictures of soldered places: which wires meet, staggered and sleeved."""

from __future__ import annotations

from guidegen.circuit.arrangement import RunPlan
from guidegen.drawings.picture import Picture
from guidegen.drawings.sketch import GAP, SMALL, Line, Sketch
from guidegen.guide.steps import picture_ids as ids
from guidegen.locale import _
from guidegen.parts.wires import extra_reference, feeder_reference, resistor_reference

#: Height of + in these pictures, where the joints sit, and half a sleeve's length.
_Y = 60.0
_FIRST, _SECOND = 140.0, 200.0
_HALF = 18.0
_LEFT_BULB, _RIGHT_BULB = 42.0, 298.0


def join(bulb: int) -> Picture:
    """Two pieces of string joined behind a bulb."""
    sketch = Sketch(118, top=14)
    _string_end(sketch, bulb)
    _string_begin(sketch, bulb + 1)
    _pair(sketch, _LEFT_BULB + _half(bulb), _RIGHT_BULB - _half(bulb + 1))
    alt = _(
        "Two pieces of string joined behind bulb {bulb}, in front of bulb {next}: plus to plus and minus to "
        "minus, the two joints 3 cm apart along the cable, an inner sleeve over each, one outer sleeve over "
        "both."
    ).format(bulb=bulb, next=bulb + 1)
    return sketch.picture(ids.join_picture(bulb), _("Joint behind a bulb"), alt)


def feed(run: RunPlan, index: int) -> Picture:
    """Wires that meet where the feeder ends; a run without one goes straight into the connectors."""
    if run.feeder is None:
        return _into_connectors(run, index)
    draw = {"middle": _feed_middle, "both ends": _feed_both, "opposite ends": _feed_opposite}
    sketch = draw.get(run.feed, _feed_one)(run, index)
    alt = {
        "one end": _("{feeder} at bulb 1: plus joined to plus of the wire in front of it, minus to minus."),
        "middle": _("{feeder} and the extra pair {extra} joined: plus to plus, minus to minus."),
        "both ends": _(
            "Plus of {feeder}, plus of {extra} and plus of the wire in front of bulb 1 meet in one joint; "
            "the three minus wires in another."
        ),
        "opposite ends": _(
            "Plus of {feeder} is joined to plus of the wire in front of bulb 1, minus of {feeder} to "
            "{extra}. Minus of the wire in front of bulb 1 ends and is capped."
        ),
    }[run.feed]
    alt = alt.format(feeder=feeder_reference(index), extra=extra_reference(index))
    return sketch.picture(ids.feed_picture(index), _("Which wires meet"), alt)


def _feed_one(run: RunPlan, index: int) -> Sketch:
    sketch = Sketch(118, top=14)
    _source(sketch, run, index)
    _string_begin(sketch, 1)
    _pair(sketch, 22, _RIGHT_BULB - _half(1))
    return sketch


def _feed_middle(run: RunPlan, index: int) -> Sketch:
    sketch = Sketch(118, top=14)
    _source(sketch, run, index)
    _pair(sketch, 22, 322)
    sketch.poles(332, _Y)
    _to_bulb(sketch, index, run.fed_bulb, _Y - 14)
    return sketch


def _feed_both(run: RunPlan, index: int) -> Sketch:
    sketch = Sketch(156, top=14)
    _source(sketch, run, index)
    _string_begin(sketch, 1)
    _three(sketch, 22, _RIGHT_BULB - _half(1))
    _to_bulb(sketch, index, run.bulbs, 150)
    return sketch


def _feed_opposite(run: RunPlan, index: int) -> Sketch:
    """Plus goes on into the string, minus into the extra wire; the string's own minus ends."""
    sketch = Sketch(152)
    _source(sketch, run, index)
    _string_begin(sketch, 1)
    _sleeved(sketch, _FIRST, _Y)
    sketch.line((22, _Y), (_FIRST, _Y), (_RIGHT_BULB - _half(1), _Y), kind="plus")
    low = _Y + 60
    sketch.line((22, _Y + GAP), (92, _Y + GAP), (92, low), (322, low), kind="minus")
    _sleeved(sketch, _SECOND, low)
    sketch.sign(332, low, "−")
    _to_bulb(sketch, index, run.bulbs, low + 24)
    sketch.line((232, _Y + GAP), (_RIGHT_BULB - _half(1), _Y + GAP), kind="minus")
    sketch.cap(232, _Y + GAP, to_right=False)
    sketch.box(_FIRST - 34, _Y - 14, 150, GAP + 66, "hidden", r=10)
    sketch.text(_FIRST + 41, _Y - 20, _("outer sleeve"), "middle", SMALL, 140)
    sketch.text(246, _Y + GAP + 19, _("cap"), "end", SMALL, 70)
    return sketch


def _into_connectors(run: RunPlan, index: int) -> Picture:
    """The first wires of the run in the connectors of the supply end, no joint between."""
    sketch = Sketch(118)
    resistor = resistor_reference(index) if run.resistor.fitted else ""
    plus_y, minus_y = 36.0, 92.0
    sketch.connector(30, plus_y, "" if resistor else "+")
    sketch.connector(30, minus_y, "−")
    if resistor:
        sketch.text(
            48, 22, _("at the free leg of {resistor}").format(resistor=resistor), size=SMALL, room=280
        )
    extra_plus, extra_minus = run.feed == "middle", run.feed in ("middle", "opposite ends")
    string, extra = _("string, bulb 1"), extra_reference(index)
    both = f"{string} + {extra}" if run.feed == "both ends" else string
    for y, kind, is_extra in ((plus_y, "plus", extra_plus), (minus_y, "minus", extra_minus)):
        sketch.line((40, y), (190, y), kind="plus" if kind == "plus" else "minus")
        sketch.text(198, y + 4, extra if is_extra else both, size=SMALL, room=136)
    alt = _("Plus: {plus}, straight into its connector. Minus: {minus}, straight into its connector.").format(
        plus=extra if extra_plus else both, minus=extra if extra_minus else both
    )
    return sketch.picture(ids.feed_picture(index), _("Which wires go into the connectors"), alt)


def tap(run: RunPlan, index: int) -> Picture:
    """The extra pair joined in behind a bulb within the run."""
    bulb = run.fed_bulb
    if bulb == run.bulbs:
        return _at_end(run, index, ids.tap_picture(index))
    sketch = Sketch(156, top=14)
    _string_end(sketch, bulb)
    _string_begin(sketch, bulb + 1)
    _three(sketch, _LEFT_BULB + _half(bulb), _RIGHT_BULB - _half(bulb + 1))
    extra = extra_reference(index)
    sketch.text(322, 150, extra, "end", SMALL)
    alt = _(
        "Behind bulb {bulb} both wires of the string are cut. At plus and at minus three wires meet: both "
        "ends of the string and {extra}. The two joints do not lie side by side."
    ).format(bulb=bulb, extra=extra)
    return sketch.picture(ids.tap_picture(index), _("Extra pair at a bulb within the run"), alt)


def far_end(run: RunPlan, index: int) -> Picture:
    """The extra wire at the last bulb."""
    picture_id = ids.far_end_picture(index)
    return (
        _at_end(run, index, picture_id) if run.feed == "both ends" else _minus_at_end(run, index, picture_id)
    )


def _at_end(run: RunPlan, index: int, picture_id: str) -> Picture:
    """Both wires of the extra pair at the last bulb."""
    bulb, extra = run.bulbs, extra_reference(index)
    sketch = Sketch(118, top=14)
    _string_end(sketch, bulb)
    _pair(sketch, _LEFT_BULB + _half(bulb), 322)
    sketch.poles(332, _Y)
    sketch.text(322, _Y - 18, extra, "end", SMALL)
    alt = _("{extra} at bulb {bulb}: plus joined to plus, minus joined to minus, sleeves over both.").format(
        extra=extra, bulb=bulb
    )
    return sketch.picture(picture_id, _("Extra pair at the last bulb"), alt)


def _minus_at_end(run: RunPlan, index: int, picture_id: str) -> Picture:
    """The extra wire at minus of the last bulb, whose plus feeds nothing."""
    bulb, extra = run.bulbs, extra_reference(index)
    sketch = Sketch(110, top=38)
    _string_end(sketch, bulb)
    left = _LEFT_BULB + _half(bulb)
    sketch.line((left, _Y), (104, _Y), kind="plus")
    sketch.line((104, _Y), (120, _Y), kind="accent")
    sketch.text(130, _Y + 4, _("open: capped after the readings"), size=SMALL, room=196)
    sketch.line((left, _Y + GAP), (322, _Y + GAP), kind="minus")
    _sleeved(sketch, _SECOND, _Y + GAP)
    sketch.sign(332, _Y + GAP, "−")
    sketch.text(322, _Y + GAP + 19, extra, "end", SMALL)
    alt = _(
        "{extra} joined to minus of bulb {bulb}. Plus behind bulb {bulb} feeds nothing: it stays open and "
        "bare for a reading, and is capped after that."
    ).format(extra=extra, bulb=bulb)
    return sketch.picture(picture_id, _("Extra wire at the last bulb"), alt)


def _half(bulb: int) -> float:
    """Half the width of a bulb with this number."""
    return Sketch(0).bulb(0, 0, bulb)


def _string_end(sketch: Sketch, bulb: int) -> None:
    """The string from the left up to its bulb."""
    sketch.poles(8, _Y)
    half = sketch.bulb(_LEFT_BULB, _Y, bulb)
    sketch.cable(18, _LEFT_BULB - half, _Y)


def _string_begin(sketch: Sketch, bulb: int) -> None:
    """The string from its bulb on to the right."""
    half = sketch.bulb(_RIGHT_BULB, _Y, bulb)
    sketch.cable(_RIGHT_BULB + half, 322, _Y)
    sketch.poles(332, _Y)


def _source(sketch: Sketch, run: RunPlan, index: int) -> None:
    """What brings plus and minus from the left."""
    sketch.poles(10, _Y)
    words = feeder_reference(index) if run.feeder is not None else _("supply side")
    sketch.text(22, _Y - 14, words, size=SMALL, room=90)


def _to_bulb(sketch: Sketch, index: int, bulb: int, y: float) -> None:
    words = _("{extra}, to bulb {bulb}").format(extra=extra_reference(index), bulb=bulb)
    sketch.text(322, y, words, "end", SMALL, 150)


def _sleeved(sketch: Sketch, x: float, y: float) -> None:
    """A joint under its inner sleeve."""
    sketch.joint(x, y)
    sketch.sleeve(x - _HALF, x + _HALF, y)


def _pair(sketch: Sketch, left: float, right: float) -> None:
    """Two cables joined end to end, the joints staggered, all sleeves on."""
    sketch.cable(left, right, _Y)
    _sleeved(sketch, _FIRST, _Y)
    _sleeved(sketch, _SECOND, _Y + GAP)
    sketch.box(_FIRST - 32, _Y - 12, _SECOND - _FIRST + 64, GAP + 24, "hidden", r=8)
    sketch.span(_FIRST, _SECOND, _Y - 26, "3 cm")
    sketch.text(
        (_FIRST + _SECOND) / 2, _Y + GAP + 30, _("outer sleeve over two inner ones"), "middle", SMALL, 250
    )


def _three(sketch: Sketch, left: float, right: float) -> None:
    """Two cables joined end to end with a third one at the same joints, its + crossing under -."""
    low_minus, low_plus = _Y + 50, _Y + 70
    sketch.line((left, _Y), (right, _Y), kind="plus")
    sketch.line((left, _Y + GAP), (_FIRST - 6, _Y + GAP), kind="minus")
    sketch.curve(f"M {_FIRST - 6:g} {_Y + GAP:g} a 6 6 0 0 1 12 0", "minus")
    sketch.line((_FIRST + 6, _Y + GAP), (right, _Y + GAP), kind="minus")
    _down(sketch, _FIRST, _Y, low_plus, "plus")
    _down(sketch, _SECOND, _Y + GAP, low_minus, "minus")
    _sleeved(sketch, _FIRST, _Y)
    _sleeved(sketch, _SECOND, _Y + GAP)
    sketch.sign(332, low_minus, "−")
    sketch.sign(332, low_plus, "+")
    sketch.span(_FIRST, _SECOND, _Y - 26, "3 cm")


def _down(sketch: Sketch, x: float, y: float, low: float, kind: Line) -> None:
    """One wire of the third cable, from its joint down and to the right."""
    sketch.line((x, y), (x, low), (322, low), kind=kind)
