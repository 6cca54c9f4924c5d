"""Step pictures of ends, sleeves, strain relief and hanging."""

from __future__ import annotations

from guidegen.drawings.picture import Picture
from guidegen.drawings.sketch import GAP, SMALL, WIDTH, Sketch
from guidegen.guide.steps import picture_ids as ids
from guidegen.locale import _
from guidegen.parts.joints import DeadEnd

_Y = 46.0


def cap(end: DeadEnd, bulb: int) -> Picture:
    """A live end closed, drawn beside its bulb; in front of bulb 1 all is mirrored."""
    picture_id = ids.cap_picture(end, bulb)
    if end.made:
        return _made(picture_id, bulb)
    sketch = Sketch(108, top=4 if len(end.poles) > 1 else 26)
    front = end.place == "lead-in"

    def at(x: float) -> float:
        return WIDTH - x if front else x

    half = sketch.bulb(at(60), _Y, bulb)
    sketch.cable(min(at(60 - half), at(20)), max(at(60 - half), at(20)), _Y)
    sketch.poles(at(9), _Y)
    ends = {"+": 170.0, "-": 222.0 if len(end.poles) > 1 else 170.0}
    for pole, y in (("+", _Y), ("-", _Y + GAP)):
        capped = pole in end.poles
        reach = ends[pole] if capped else 320.0
        sketch.line((at(60 + half), y), (at(reach), y), kind="plus" if pole == "+" else "minus")
        if capped:
            sketch.cap(at(reach), y, to_right=not front)
    left, right = sorted((at(128), at(252 if len(end.poles) > 1 else 200)))
    sketch.box(left, _Y - 12, right - left, GAP + 24, "hidden", r=8)
    if len(end.poles) > 1:
        sketch.span(min(at(170), at(222)), max(at(170), at(222)), _Y - 22, "2 cm")
    sketch.text(at(128), _Y + GAP + 32, _("cap sleeves; outer sleeve over them last"),
                "end" if front else "start", SMALL, 210)  # fmt: skip
    return sketch.picture(picture_id, _("How the live end is closed"), _cap_alt(end, bulb))


def _cap_alt(end: DeadEnd, bulb: int) -> str:
    front = end.place == "lead-in"
    if len(end.poles) > 1:
        text = (
            _("In front of bulb {bulb} plus and minus end, one 2 cm shorter than the other.")
            if front
            else _("Behind bulb {bulb} plus and minus end, one 2 cm shorter than the other.")
        )
    elif end.poles == ("+",):
        text = (
            _("In front of bulb {bulb} only plus ends; minus goes on.")
            if front
            else _("Behind bulb {bulb} only plus ends; minus goes on.")
        )
    else:
        text = (
            _("In front of bulb {bulb} only minus ends; plus goes on.")
            if front
            else _("Behind bulb {bulb} only minus ends; plus goes on.")
        )
    closed = _("Each end has a cap sleeve of its own; an outer sleeve goes over all.")
    return f"{text.format(bulb=bulb)} {closed}"


def _made(picture_id: str, bulb: int) -> Picture:
    """The end that the string's maker closed."""
    sketch = Sketch(92, top=18)
    sketch.poles(9, 34)
    half = sketch.bulb(190, 34, bulb)
    sketch.cable(20, 190 - half, 34)
    sketch.box(190 + half, 30, 18, GAP + 8, "accent", "white", 6)
    sketch.text(190, 86, _("closed all round: no bare metal, no crack"), "middle", SMALL, 300)
    alt = _("The string's last bulb, number {bulb}, with the end that its maker closed.").format(bulb=bulb)
    return sketch.picture(picture_id, _("The maker's closed end"), alt)


def sleeves(*, lined: bool) -> Picture:
    """In which order the sleeves are pushed over and shrunk."""
    sketch = Sketch(150)
    rows = (
        _("inner sleeves"),
        _("outer sleeve"),
        _("glue at both ends") if lined else _("tight at both ends"),
    )
    for place, words in enumerate(rows):
        y = 18 + 48.0 * place
        sketch.meter(16, y + GAP / 2, str(place + 1))
        sketch.text(34, y + GAP / 2 + 4, words, size=SMALL, room=104)
        sketch.cable(142, 332, y)
        for x, wire in ((210, y), (264, y + GAP)):
            sketch.joint(x, wire)
            sketch.sleeve(x - 17, x + 17, wire)
        if place:
            sketch.box(180, y - 11, 114, GAP + 22, "outline", r=8)
        if place == 2:
            for x in (180, 294):
                sketch.line((x, y - 10), (x, y + GAP + 10), kind="accent")
    alt = _(
        "First an inner sleeve over each joint, then the outer sleeve over both. Last look at both ends of "
        "the outer sleeve: {end}."
    ).format(end=_("a ring of molten glue") if lined else _("tight all round"))
    return sketch.picture(ids.SLEEVES, _("Order of the sleeves"), alt)


def strain_loop() -> Picture:
    """Both cables tied together, the joint in a slack loop."""
    sketch = Sketch(132)
    sketch.curve("M 8 30 H 236 C 292 30 292 92 236 92 H 204", "plus")
    sketch.curve("M 332 46 H 104 C 56 46 56 92 104 92 H 136", "plus")
    sketch.sleeve(136, 204, 92, 9)
    for x in (124, 216):
        sketch.tie(x, 30, 46)
    sketch.text(170, 96, _("joint"), "middle", SMALL, 60)
    sketch.text(170, 20, _("ties take the pull"), "middle", SMALL, 180)
    sketch.text(170, 124, _("3 cm of slack on both sides of the joint"), "middle", SMALL, 320)
    for x, way in ((8, -1), (332, 1)):
        y = 30 if way < 0 else 46
        sketch.line((x - 5 * way, y - 7), (x + 3 * way, y), (x - 5 * way, y + 7), kind="accent")
    alt = _(
        "Both cables overlap and two ties hold them together. The joint lies in the slack loop below the "
        "ties, so that a pull at either cable never reaches it."
    )
    return sketch.picture(ids.STRAIN_LOOP, _("Loop that takes the pull off a joint"), alt)


def hang(*, outdoors: bool) -> Picture:
    """Hooks that hold the cable, slack at the joint, and outdoors the drip loop in front of an entry."""
    sketch = Sketch(140)
    for x in (40, 150):
        sketch.curve(f"M {x} 8 V 22 a 6 6 0 1 0 8 6", "accent")
    sketch.curve("M 8 24 Q 24 34 42 34 Q 96 62 152 34", "outline")
    sketch.text(172, 20, _("hooks hold the cable"), size=SMALL, room=164)
    if not outdoors:
        sketch.curve("M 152 34 Q 190 40 214 66", "outline")
        sketch.box(214, 58, 44, 16, r=5)
        sketch.curve("M 258 66 Q 290 50 332 34", "outline")
        sketch.text(236, 96, _("joint hangs slack"), "middle", SMALL, 200)
        return sketch.picture(ids.HANG, _("How it hangs"), _("Hooks hold the cable. The joint hangs slack."))
    sketch.box(268, 50, 60, 46)
    sketch.text(298, 77, _("entry"), "middle", SMALL, 54)
    sketch.curve("M 152 34 C 190 40 200 118 226 118 C 250 118 244 74 268 74", "outline")
    sketch.curve("M 226 124 c -4 6 -4 9 0 9 c 4 0 4 -3 0 -9 z", "accent")
    sketch.text(8, 118, _("loop lower than the entry:"), size=SMALL, room=180)
    sketch.text(8, 133, _("water drips off here"), size=SMALL, room=200)
    alt = _(
        "Hooks hold the cable. In front of a joint or an entry the cable hangs in a loop lower than that, so "
        "that water drips off at the lowest place."
    )
    return sketch.picture(ids.HANG, _("Hooks and drip loop"), alt)
