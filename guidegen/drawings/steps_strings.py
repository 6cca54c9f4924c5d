"""Step pictures about strings as bought: their wires, the box, plus, pieces and cuts."""

from __future__ import annotations

from guidegen.circuit.arrangement import Piece, RunPlan
from guidegen.drawings.bought import BoughtString
from guidegen.drawings.picture import Picture
from guidegen.drawings.sketch import GAP, SMALL, Sketch
from guidegen.guide.format import quantity
from guidegen.guide.steps import picture_ids as ids
from guidegen.locale import _, ngettext

#: Pieces drawn in one picture; the rest is told by number.
_ROWS = 5
_ROW = 54.0


def wires(kind: BoughtString, number: int) -> Picture:
    """Two wires from bulb to bulb, and the lengths to measure."""
    sketch = Sketch(158)
    spacing, tail = quantity(kind.spacing_m, "m"), quantity(kind.tail_m, "m")
    sketch.poles(10, 44)
    sketch.string(20, 330, 44, {130: 1, 220: 2, 310: 3})
    sketch.span(22, 116, 24, tail)
    sketch.span(144, 206, 24, spacing)
    sketch.text(22, 90, _("two wires: go on testing"), size=SMALL, room=300)
    for left, right in ((22, 117), (143, 207), (233, 297)):
        sketch.line((left, 118), (right, 118), kind="minus")
    for x in (130, 220, 310):
        sketch.bulb(x, 118 - GAP / 2)
    sketch.line((60, 105), (86, 131), kind="accent")
    sketch.line((86, 105), (60, 131), kind="accent")
    sketch.text(22, 152, _("one wire: stop, never cut it"), size=SMALL, room=300)
    alt = _(
        "A string with two wires from bulb to bulb: {tail} of wire in front of bulb 1, {spacing} from bulb "
        "to bulb. Below it, crossed out, a string with one wire from bulb to bulb: it may not be cut."
    ).format(tail=tail, spacing=spacing)
    return sketch.picture(ids.wires_picture(number), _("Wires from bulb to bulb"), alt)


def low_voltage() -> Picture:
    """What may feed a string, and what may not."""
    rows = (
        (_on_cells, _("a box for cells"), True),
        (_on_usb, _("a USB plug"), True),
        (_on_adapter, _("an adapter, 24 V DC or less"), True),
        (_on_outlet, _("straight into the outlet: stop"), False),
    )
    sketch = Sketch(46.0 * len(rows) + 6)
    for place, (draw, words, good) in enumerate(rows):
        y = 26 + 46.0 * place
        _verdict(sketch, 18, y, good=good)
        draw(sketch, y)
        sketch.text(158, y + 4, words, room=178)
    alt = _(
        "Fit for this build: a string on a box for cells, on a USB plug, or on an adapter of 24 V DC or "
        "less. Crossed out: a string whose cord goes straight into the outlet."
    )
    return sketch.picture(ids.LOW_VOLTAGE, _("What may feed a string"), alt)


def _verdict(sketch: Sketch, x: float, y: float, *, good: bool) -> None:
    """A tick, or a cross."""
    if good:
        sketch.line((x - 8, y), (x - 2, y + 7), (x + 9, y - 8), kind="plus")
    else:
        sketch.line((x - 8, y - 8), (x + 8, y + 8), kind="accent")
        sketch.line((x + 8, y - 8), (x - 8, y + 8), kind="accent")


def _two_wires(sketch: Sketch, left: float, y: float) -> None:
    """The begin of a string and its first bulb."""
    sketch.line((left, y - 3), (122, y - 3), kind="minus")
    sketch.line((left, y + 3), (122, y + 3), kind="minus")
    sketch.box(122, y - 10, 20, 20, r=9, fill="white")


def _on_cells(sketch: Sketch, y: float) -> None:
    sketch.box(42, y - 16, 46, 32)
    for x in (46, 60, 74):
        sketch.box(x, y - 10, 10, 22, "thin", r=1)
        sketch.line((x + 3, y - 12), (x + 7, y - 12), kind="outline")
    _two_wires(sketch, 88, y)


def _on_usb(sketch: Sketch, y: float) -> None:
    sketch.box(42, y - 7, 16, 14, r=0)
    sketch.box(46, y - 3, 4, 2, "thin", r=0)
    sketch.box(46, y + 2, 4, 2, "thin", r=0)
    sketch.box(58, y - 10, 24, 20)
    _two_wires(sketch, 82, y)


def _on_adapter(sketch: Sketch, y: float) -> None:
    _pins(sketch, y)
    sketch.box(54, y - 15, 34, 30)
    sketch.text(71, y + 4, "DC", "middle", SMALL, bold=True)
    _two_wires(sketch, 88, y)


def _on_outlet(sketch: Sketch, y: float) -> None:
    _pins(sketch, y)
    sketch.box(54, y - 10, 16, 20, r=5)
    _two_wires(sketch, 70, y)


def _pins(sketch: Sketch, y: float) -> None:
    """Two pins of a plug for the outlet."""
    for pin in (y - 6, y + 6):
        sketch.line((42, pin), (54, pin), kind="plus")


def feed_volts() -> Picture:
    """A meter on the two wires that leave the string's own box."""
    sketch = Sketch(112)
    _wide_string(sketch)
    sketch.upright_meter(112, 24, 84, "V")
    alt = _(
        "A string on its own box. The meter, on volts, sits between the two wires where they leave the box: "
        "red lead on one wire, black lead on the other."
    )
    return sketch.picture(ids.FEED_VOLTS, _("Volts at the string's own box"), alt)


def _wide_string(sketch: Sketch) -> None:
    """A string on its box, its wires drawn far apart so that a meter fits between."""
    sketch.box(8, 24, 62, 60)
    sketch.text(39, 58, _("its box"), "middle", room=56)
    for y in (24, 84):
        sketch.line((70, y), (328, y), kind="minus")
    for number, x in enumerate((190, 245, 300), start=1):
        sketch.line((x, 24), (x, 39), kind="minus")
        sketch.line((x, 69), (x, 84), kind="minus")
        sketch.box(x - 13, 39, 26, 30, r=12, fill="white")
        sketch.text(x, 58, str(number), "middle", bold=True)


def cut_box() -> Picture:
    """Where the box is cut off."""
    sketch = Sketch(118)
    sketch.box(8, 40, 54, 52)
    sketch.text(35, 70, _("box"), "middle", room=50)
    sketch.string(62, 332, 56, {250: 1, 310: 2})
    sketch.cut(70, 44, 90)
    sketch.span(72, 236, 106, _("tail: bare 10 mm of each wire"))
    alt = _("A box, two wires, bulbs 1 and 2. The cut goes through both wires right at the box.")
    return sketch.picture(ids.CUT_BOX, _("Where to cut the box off"), alt)


def pieces(run: RunPlan, index: int) -> Picture:
    """Every piece of a run as bought, where it is cut, and its numbers in the run."""
    shown = run.pieces[:_ROWS]
    more = len(run.pieces) - len(shown)
    sketch = Sketch(26 + _ROW * len(shown) + (18 if more else 0))
    sketch.text(8, 14, _("as bought"), size=SMALL, room=200)
    sketch.text(332, 14, _("in the run"), "end", SMALL, 110)
    first = 1
    for place, piece in enumerate(shown):
        _piece(sketch, piece, 34 + _ROW * place, first)
        first += piece.bulbs
    if more:
        words = ngettext("and {count} more piece", "and {count} more pieces", more).format(count=more)
        sketch.text(8, sketch.height - 6, words, size=SMALL)
    return sketch.picture(ids.pieces_picture(index), _("Pieces and cuts"), _pieces_alt(run))


def _piece(sketch: Sketch, piece: Piece, y: float, first: int) -> None:
    """One piece in its row: bulbs as bought, the cut behind it, and what it is in the run."""
    sketch.text(
        8, y + GAP / 2 + 4, _("string {number}").format(number=piece.string_number), size=SMALL, room=62
    )
    begin, end = 102.0, 166.0
    if piece.bulbs == 1:
        begin = end = 134.0
    half = sketch.bulb(begin, y, piece.first)
    sketch.cable(76, begin - half, y)
    if piece.bulbs > 1:
        sketch.bulb(end, y, piece.last)
        _between(sketch, begin + half, end - half, y, piece.bulbs)
    if piece.cut_behind:
        sketch.cable(end + half, 196, y)
        sketch.cut(end + half + 8, y - 8, y + GAP + 8)
    last = first + piece.bulbs - 1
    sketch.line((212, y + GAP / 2), (232, y + GAP / 2), kind="thin")
    sketch.line((227, y + GAP / 2 - 4), (232, y + GAP / 2), (227, y + GAP / 2 + 4), kind="thin")
    words = _("{first} to {last}").format(first=first, last=last) if last > first else str(first)
    sketch.text(240, y + GAP / 2 + 4, words, room=94, bold=True)


def _between(sketch: Sketch, left: float, right: float, y: float, bulbs: int) -> None:
    """Wires between the first and the last bulb of a piece."""
    if bulbs > 2:
        sketch.left_out(left, right, y)
    else:
        sketch.cable(left, right, y)


def _pieces_alt(run: RunPlan) -> str:
    first, said = 1, []
    for piece in run.pieces:
        sentence = (
            _(
                "String {string}: bulbs {from_bulb} to {to_bulb}, cut right behind bulb {to_bulb}; {first} "
                "to {last} in the run."
            )
            if piece.cut_behind
            else _("String {string}: bulbs {from_bulb} to {to_bulb}; {first} to {last} in the run.")
        )
        said.append(
            sentence.format(
                string=piece.string_number,
                from_bulb=piece.first,
                to_bulb=piece.last,
                first=first,
                last=first + piece.bulbs - 1,
            )
        )
        first += piece.bulbs
    return " ".join(said)
