"""Step pictures of the supply end: marks, volts, fuse holder, resistors."""

from __future__ import annotations

from guidegen.circuit.arrangement import Arrangement
from guidegen.drawings.bought import BoughtSupply
from guidegen.drawings.picture import Picture
from guidegen.drawings.resistors import draw_body
from guidegen.drawings.sketch import SMALL, Sketch
from guidegen.guide.format import quantity
from guidegen.guide.resistors import bodies, body_words
from guidegen.guide.steps import picture_ids as ids
from guidegen.locale import _, ngettext
from guidegen.parts.wires import FUSE, LEAD, resistor_reference

#: Resistors drawn in one picture; the rest is told by number.
_RESISTORS = 3


def supply_marks(supply: BoughtSupply) -> Picture:
    """The marks to look for on the supply's label."""
    sketch = Sketch(134 + (36 if supply.outdoors else 0))
    _row(sketch, 26, _("direct current, about {volts}").format(volts=quantity(supply.voltage_v, "V")))
    sketch.line((20, 20), (60, 20), kind="plus")
    for x in (20, 35, 50):
        sketch.line((x, 30), (x + 10, 30), kind="plus")
    _row(sketch, 67, _("double insulation, and SELV, LPS or ES1"))
    sketch.box(24, 51, 32, 32, r=0)
    sketch.box(32, 59, 16, 16, r=0)
    _row(sketch, 110, _("approval mark of your country"))
    sketch.box(20, 96, 40, 28, "hidden", r=12)
    sketch.text(40, 115, "?", "middle", 14, bold=True)
    if supply.outdoors:
        _row(sketch, 150, _("made for outdoors: {ip} or better").format(ip=supply.ip or "IPX4"))
        sketch.text(40, 155, "IP", "middle", 14, bold=True)
    alt = _(
        "Marks to find on the supply: a straight line over a dashed one for direct current, one square "
        "inside another for double insulation with SELV, LPS or ES1 beside it, and an approval mark."
    )
    return sketch.picture(ids.SUPPLY_MARKS, _("Marks on the supply"), alt)


def _row(sketch: Sketch, y: float, words: str) -> None:
    sketch.text(84, y + 4, words, room=250)


def supply_volts() -> Picture:
    """The meter on the socket's two terminals."""
    sketch = Sketch(100, top=4)
    sketch.box(8, 30, 70, 48)
    sketch.text(43, 58, _("supply"), "middle", room=64)
    sketch.line((78, 54), (122, 54))
    sketch.box(122, 20, 62, 68)
    sketch.text(153, 58, _("socket"), "middle", room=56)
    for y, sign in ((30, "+"), (78, "−")):
        sketch.line((184, y), (236, y), kind="outline")
        sketch.sign(206, y - 12 if sign == "+" else y + 13, sign)
    sketch.upright_meter(240, 30, 78, "V")
    alt = _(
        "The supply's plug in the socket, nothing else connected. The meter, on volts: red lead on terminal "
        "+, black lead on terminal −."
    )
    return sketch.picture(ids.SUPPLY_VOLTS, _("Volts of the supply alone"), alt)


def fuse_holder(arrangement: Arrangement, *, meter: bool = False) -> Picture:
    """From the socket through fuse holder and lead to the common connectors; with the fuse in and a meter."""
    lead = arrangement.supply.lead is not None
    top, bottom = 62.0, 124.0
    sketch = Sketch(146, top=36 if meter else 16)
    sketch.box(8, top - 16, 58, bottom - top + 32)
    sketch.text(37, (top + bottom) / 2 + 4, _("socket"), "middle", room=54)
    sketch.sign(56, top, "+")
    sketch.sign(56, bottom, "−")
    sketch.line((66, top), (104, top), kind="plus")
    sketch.box(104, top - 9, 52, 18, "accent", r=1)
    sketch.line((104, top), (156, top), kind="outline" if meter else "unseen")
    sketch.text(130, top + 26, _("{fuse}, in its holder").format(fuse=FUSE) if meter else _("empty holder"),
                "middle", SMALL, 110)  # fmt: skip
    sketch.line((156, top), (290, top), kind="plus")
    sketch.line((66, bottom), (290, bottom), kind="minus")
    if lead and not meter:
        sketch.curve(f"M 224 {top - 8} a 7 39 0 1 0 0.1 0 z", "thin")
        sketch.text(238, (top + bottom) / 2 + 4, LEAD, size=SMALL, room=40)
    sketch.connector(300, top, "+")
    sketch.connector(300, bottom, "−")
    if meter:
        sketch.upright_meter(232, top, bottom, "V")
    else:
        sketch.text(332, 30, _("common connectors"), "end", SMALL, 180)
    return sketch.picture(
        ids.FUSE_IN if meter else ids.FUSE_HOLDER,
        _("Fuse in its holder") if meter else _("Fuse holder, first thing in plus"),
        _fuse_alt(lead, meter),
    )


def _fuse_alt(lead: bool, meter: bool) -> str:
    onward = _("through lead {lead} ").format(lead=LEAD) if lead else ""
    way = _(
        "Socket + goes through the fuse holder alone, then {onward}to the + common connector; socket − goes "
        "{onward}to the − common connector."
    ).format(onward=onward)
    tested = _(
        "With the fuse in, the meter is on volts, red lead on the + common connector, black on the − one."
    )
    return f"{way} {tested}" if meter else way


def measure_resistor(arrangement: Arrangement) -> Picture:
    """A resistor alone with the meter across it; with its marks, if all are marked alike."""
    fitted = [run.resistor for run in arrangement.runs if run.resistor.fitted]
    looks = {bodies(each.ohm, each.tolerance, each.rating_w) for each in fitted}
    marked = next(iter(looks)) if len(looks) == 1 else ()
    sketch = Sketch(112 if marked else 96)
    half = 22.0
    if marked:
        half = draw_body(sketch, 170, 74, marked[0])
    else:
        sketch.resistor(148, 74)
    for side in (-1, 1):
        sketch.line((170 + side * half, 74), (170 + side * 100, 74))
    sketch.meter_over((170 - half - 24, 74), (170 + half + 24, 74), "Ω", 26)
    alt = _("A resistor that is joined to nothing. The meter, on ohms, has one lead on each of its legs.")
    if marked:
        marks = _("Its marks: {marks}.").format(marks=body_words(marked[0]))
        alt = f"{alt} {marks}"
    return sketch.picture(ids.MEASURE_RESISTOR, _("Ohms of a resistor alone"), alt)


def mount_resistors(arrangement: Arrangement) -> Picture:
    """Every resistor in free air between the + common connector and a connector of its own."""
    fitted = [index for index, run in enumerate(arrangement.runs) if run.resistor.fitted]
    shown = fitted[:_RESISTORS]
    more = len(fitted) - len(shown)
    pitch, top = 48.0, 50.0
    height = top + pitch * (len(shown) - 1) + 32
    sketch = Sketch(height + (44 if more else 28))
    sketch.box(6, 6, 328, height, "hidden", r=8)
    for x in (120, 150, 180, 210):
        sketch.line((x, 6), (x + 16, 6), kind="accent")
        sketch.line((x, height + 6), (x + 16, height + 6), kind="accent")
    sketch.text(240, 22, _("air in and out"), size=SMALL, room=90)
    bottom = top + pitch * (len(shown) - 1)
    if bottom > top:
        sketch.line((36, top + 10), (36, bottom), kind="plus")
    sketch.connector(36, top, "+")
    for place, index in enumerate(shown):
        _mounted(sketch, index, top + pitch * place, first=place == 0)
    if len(shown) > 1:
        sketch.line((170, top + 9), (170, top + pitch - 9), kind="accent")
        sketch.text(177, top + pitch / 2 + 4, "20 mm", size=SMALL)
    words = _("legs 30 mm, 20 mm of air round every body")
    sketch.text(6, height + 22, words, size=SMALL, room=328)
    if more:
        rest = ngettext("and {count} more resistor", "and {count} more resistors", more).format(count=more)
        sketch.text(6, height + 38, rest, size=SMALL, room=328)
    names = ", ".join(resistor_reference(index) for index in fitted)
    alt = _(
        "A box with openings for air. {names}: one leg in the + common connector, the other in a connector "
        "of its own; 30 mm of leg on each side, 20 mm of air round every body."
    ).format(names=names)
    return sketch.picture(ids.MOUNT_RESISTORS, _("Resistors in free air"), alt)


def _mounted(sketch: Sketch, index: int, y: float, *, first: bool) -> None:
    """One resistor with its legs and its own connector."""
    sketch.line((46 if first else 36, y), (136, y), kind="plus")
    sketch.resistor(136, y, 68, 16)
    sketch.text(170, y + 4, resistor_reference(index), "middle", SMALL, bold=True)
    sketch.line((204, y), (280, y), kind="plus")
    sketch.connector(290, y)
    if first:
        sketch.span(50, 134, y + 20, "30 mm")
