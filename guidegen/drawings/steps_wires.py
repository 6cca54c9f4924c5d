"""Step pictures of wires before they are joined: cut to length, and labelled at both ends."""

from __future__ import annotations

from guidegen.circuit.arrangement import Arrangement
from guidegen.drawings.picture import Picture
from guidegen.drawings.sketch import LETTERS, SMALL, Sketch
from guidegen.guide.format import quantity
from guidegen.guide.steps import picture_ids as ids
from guidegen.guide.steps.label_words import place_words, pole_words, supply_words, wire_label, wire_reference
from guidegen.locale import _, ngettext
from guidegen.parts.cuts import WireCut, end_allowance_m, wire_cuts

#: Wires drawn in one picture; the rest is told by number.
_ROWS = 6
_ROW, _LEFT, _SHORTEST, _LONGEST = 42.0, 56.0, 120.0, 190.0
#: From + to - of a cable that is drawn small, and what an end's allowance takes up.
_CORES, _END = 10.0, 26.0


def cut_wires(arrangement: Arrangement) -> Picture:
    """Every piece of wire with its name, its length and what is added at its ends."""
    cuts = wire_cuts(arrangement)
    shown, more = cuts[:_ROWS], len(cuts) - _ROWS
    sketch = Sketch(50 + _ROW * len(shown) + (20 if more > 0 else 0))
    sketch.text(8, 16, _("as cut; the route lies between the marks"), size=SMALL, room=324)
    longest_m = max((cut.cut_m for cut in cuts), default=1.0)
    for place, cut in enumerate(shown):
        y = 40 + _ROW * place
        _wire(sketch, cut, y, _SHORTEST + (_LONGEST - _SHORTEST) * cut.cut_m / longest_m)
    y = 34 + _ROW * len(shown)
    sketch.span(_LEFT, _LEFT + _END, y + 2, "")
    added = _("{length} added at each end").format(length=quantity(end_allowance_m(arrangement), "m"))
    sketch.text(_LEFT + _END + 8, y + 6, added, size=SMALL, room=240)
    if more > 0:
        words = ngettext("and {count} more wire", "and {count} more wires", more).format(count=more)
        sketch.text(8, sketch.height - 6, words, size=SMALL)
    return sketch.picture(ids.CUT_WIRES, _("Wires and their lengths"), _cut_alt(arrangement, cuts))


def _wire(sketch: Sketch, cut: WireCut, y: float, length: float) -> None:
    """One piece of wire: signs at both ends, its length behind it."""
    right = _LEFT + length
    middle = y if cut.cores == 1 else y + _CORES / 2
    sketch.text(8, middle + 4.3, wire_reference(cut), bold=True)
    sketch.text(332, middle + 4.3, quantity(cut.cut_m, "m"), "end", room=66, bold=True)
    if cut.cores == 1:
        sketch.line((_LEFT, y), (right, y), kind="minus")
        signs = [("−", y)]
    else:
        sketch.line((_LEFT, y), (right, y), kind="plus")
        sketch.line((_LEFT, y + _CORES), (right, y + _CORES), kind="minus")
        signs = [("+", y - 1)]
    for x in (_LEFT - 8, right + 7):
        for sign, height in signs:
            sketch.text(x, height + 4, sign, "middle", LETTERS, bold=True)
    for x in (_LEFT + _END, right - _END):
        sketch.line((x, y - 7), (x, y + (cut.cores - 1) * _CORES + 7), kind="accent")


def _cut_alt(arrangement: Arrangement, cuts: tuple[WireCut, ...]) -> str:
    said = [
        _("{label} {length}").format(label=wire_label(arrangement, cut), length=quantity(cut.cut_m, "m"))
        for cut in cuts
    ]
    return _(
        "Every wire with the length to cut: {wires}. Each holds {allowance} more at either end than its "
        "route. One core of a two-core cable is marked + at both ends."
    ).format(wires="; ".join(said), allowance=quantity(end_allowance_m(arrangement), "m"))


def labels(arrangement: Arrangement) -> Picture:
    """The labels of plug and socket and of one wire, each on both ends."""
    cuts = wire_cuts(arrangement)
    one = next((cut for cut in cuts if cut.run is not None), cuts[0] if cuts else None)
    lines = [] if one is None else _wire_lines(arrangement, one)
    sketch = Sketch(90 if one is None else 142 + 15 * len(lines) + (32 if len(cuts) > 1 else 14))
    _plugs(sketch, 24)
    _label(sketch, 58, 42, [supply_words(arrangement), _("and the name of the build")])
    if one is not None:
        _labelled_wire(sketch, one, 112)
        _label(sketch, 34, 130, lines)
        if len(cuts) > 1:
            words = _("likewise on every wire, at both ends")
            sketch.text(170, sketch.height - 10, words, "middle", SMALL, 324)
    return sketch.picture(ids.LABELS, _("Labels at both ends"), _labels_alt(arrangement, one))


def _wire_lines(arrangement: Arrangement, cut: WireCut) -> list[str]:
    """The label of a wire, line by line."""
    return [wire_label(arrangement, cut), *_broken(place_words(arrangement, cut)), pole_words(cut)]


def _broken(words: str) -> list[str]:
    """A long text in two lines, broken behind its first comma."""
    head, comma, rest = words.partition(", ")
    return [head + comma.rstrip(), rest] if comma else [words]


def _plugs(sketch: Sketch, y: float) -> None:
    """Plug and socket, each with a label."""
    sketch.line((8, y), (92, y), kind="minus")
    sketch.box(92, y - 9, 56, 18)
    sketch.text(120, y + 4, _("plug"), "middle", SMALL, 54)
    sketch.box(186, y - 13, 50, 26)
    sketch.text(211, y + 4, _("socket"), "middle", SMALL, 48)
    sketch.line((236, y), (332, y), kind="minus")
    for x in (70, 262):
        _flag(sketch, x, y)


def _flag(sketch: Sketch, x: float, y: float) -> None:
    """A label folded round a cable."""
    sketch.box(x - 8, y - 7, 16, 14, "accent", "white", 2)


def _label(sketch: Sketch, x: float, y: float, lines: list[str]) -> None:
    """A label written large."""
    sketch.box(x, y, 340 - 2 * x, 10 + 15 * len(lines), "accent", "white", 4)
    for place, words in enumerate(lines):
        sketch.text(170, y + 17 + 15 * place, words, "middle", SMALL, 324 - 2 * x, bold=place == 0)


def _labelled_wire(sketch: Sketch, cut: WireCut, y: float) -> None:
    """A wire with a label at either end."""
    for left, right in ((8, 24), (56, 284), (316, 332)):
        if cut.cores == 1:
            sketch.line((left, y), (right, y), kind="minus")
        else:
            sketch.line((left, y - 4), (right, y - 4), kind="plus")
            sketch.line((left, y + 4), (right, y + 4), kind="minus")
    for x in (40, 300):
        sketch.box(x - 16, y - 10, 32, 20, "accent", "white", 2)
        sketch.text(x, y + 4, wire_reference(cut), "middle", SMALL, bold=True)


def _labels_alt(arrangement: Arrangement, cut: WireCut | None) -> str:
    supply = _("Plug and socket of the supply each have a label: {words}, and the name of the build.").format(
        words=supply_words(arrangement)
    )
    if cut is None:
        return supply
    wire = _("{wire} has one at both ends: {place}, {pole}. So has every other wire.").format(
        wire=wire_label(arrangement, cut), place=place_words(arrangement, cut), pole=pole_words(cut)
    )
    return f"{supply} {wire}"
