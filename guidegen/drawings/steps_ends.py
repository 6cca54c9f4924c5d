"""Step pictures of caps and sleeves, strain relief and hanging."""

from __future__ import annotations

from guidegen.drawings.picture import Picture
from guidegen.drawings.sketch import GAP, SMALL, Sketch
from guidegen.guide.steps import picture_ids as ids
from guidegen.locale import _


def sleeves(*, lined: bool, caps: bool) -> Picture:
    """In which order ends are capped and sleeves shrunk."""
    rows = [(_open_ends, _("caps on ends"))] if caps else []
    end = _("glue at both ends") if lined else _("tight at both ends")
    rows += [(_inner, _("inner sleeves")), (_outer, _("outer sleeve")), (_looked_at, end)]
    sketch = Sketch(48.0 * len(rows) + 4)
    for place, (draw, words) in enumerate(rows):
        y = 18 + 48.0 * place
        sketch.meter(16, y + GAP / 2, str(place + 1))
        sketch.text(34, y + GAP / 2 + 4, words, size=SMALL, room=104)
        draw(sketch, y)
    first = _("Each open end gets a cap of its own, one end 2 cm shorter than the other.") if caps else ""
    alt = _(
        "{caps} An inner sleeve goes over each joint, then the outer sleeve over both. Last look at both "
        "ends of the outer sleeve: {end}."
    ).format(caps=first, end=_("a ring of molten glue") if lined else _("tight all round"))
    return sketch.picture(ids.SLEEVES, _("Order of caps and sleeves"), alt.strip())


def _open_ends(sketch: Sketch, y: float) -> None:
    """Two ends that feed nothing, staggered, each with its cap."""
    sketch.line((142, y), (238, y), kind="plus")
    sketch.line((142, y + GAP), (206, y + GAP), kind="minus")
    sketch.cap(238, y)
    sketch.cap(206, y + GAP)
    sketch.text(262, y + GAP + 4, "2 cm", size=SMALL)


def _inner(sketch: Sketch, y: float) -> None:
    sketch.cable(142, 332, y)
    for x, wire in ((210, y), (264, y + GAP)):
        sketch.joint(x, wire)
        sketch.sleeve(x - 17, x + 17, wire)


def _outer(sketch: Sketch, y: float) -> None:
    _inner(sketch, y)
    sketch.box(180, y - 11, 114, GAP + 22, "outline", r=8)


def _looked_at(sketch: Sketch, y: float) -> None:
    _outer(sketch, y)
    for x in (180, 294):
        sketch.line((x, y - 10), (x, y + GAP + 10), kind="accent")


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
    sketch.text(170, 124, _("ties 2 cm or more outside the sleeve"), "middle", SMALL, 320)
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
