"""Step pictures of a piece of string that is lit alone to find its plus."""

from __future__ import annotations

from guidegen.circuit.arrangement import RunPlan
from guidegen.drawings.picture import Picture
from guidegen.drawings.sketch import SMALL, Sketch
from guidegen.drawings.steps_circuit import BENCH_BOTTOM, BENCH_TOP, lamp, on_connectors
from guidegen.guide.lit import pieces_bulbs
from guidegen.guide.steps import picture_ids as ids
from guidegen.locale import _

#: Where the two bulbs stand.
_PLACES = (240.0, 300.0)


def one_way() -> Picture:
    """A piece that shines one way round only."""
    sketch = _lit_alone((_("dark: swap"), _("the two wires")), _("plus, once it shines"))
    for x in _PLACES:
        lamp(sketch, x, BENCH_TOP, BENCH_BOTTOM, "")
    alt = _(
        "A piece of string: one of its wires through the test resistor to the + common connector, the other "
        "to the − common connector. Dark: swap the two wires. When it shines, plus is the wire at the "
        "resistor."
    )
    return sketch.picture(ids.TEST_PIECE, _title(), alt)


def either_way() -> Picture:
    """A piece that shines both ways round."""
    sketch = _lit_alone((_("shines either"), _("way round")), _("plus, as you choose"))
    for x in _PLACES:
        lamp(sketch, x, BENCH_TOP, BENCH_BOTTOM, "")
    alt = _(
        "A piece of string: one of its wires through the test resistor to the + common connector, the other "
        "to the − common connector. It shines either way round. Choose one: plus is the wire at the resistor."
    )
    return sketch.picture(ids.EITHER_WAY_PIECE, _title(), alt)


def half(run: RunPlan, index: int) -> Picture:
    """The first piece of a run of which every other bulb lights; each way round others do."""
    lit, dark = next(pieces_bulbs(run))
    sketch = _lit_alone(_swap_words(dark), _plus_words(lit))
    for x, bulb in zip(_PLACES, sorted([*lit[:1], *dark[:1]]), strict=False):
        lamp(sketch, x, BENCH_TOP, BENCH_BOTTOM, str(bulb))
    alt = [
        _(
            "A piece of string: one of its wires through the test resistor to the + common connector, the "
            "other to the − common connector."
        )
    ]
    alt += [_("While bulb {bulb} shines, plus is the wire at the resistor.").format(bulb=n) for n in lit[:1]]
    alt += [_("If bulb {bulb} shines, swap the two wires.").format(bulb=n) for n in dark[:1]]
    return sketch.picture(ids.half_piece_picture(index), _title(), " ".join(alt))


def _plus_words(lit: tuple[int, ...]) -> str:
    return _("plus, once {bulb} shines").format(bulb=lit[0]) if lit else _("plus, once it is dark")


def _swap_words(dark: tuple[int, ...]) -> tuple[str, ...]:
    return (_("{bulb} shines: swap").format(bulb=dark[0]), _("the two wires")) if dark else ()


def _title() -> str:
    return _("A piece behind the test resistor")


def _lit_alone(left: tuple[str, ...], plus: str) -> Sketch:
    """The common connectors, the test resistor, two rails, and words between and over them."""
    sketch = Sketch(148, top=22)
    on_connectors(sketch, 300)
    sketch.text(96, 36, _("test resistor"), "middle", SMALL, 180)
    for line, words in enumerate(left):
        sketch.text(60, 97 + 14 * line, words, size=SMALL, room=160)
    sketch.text(170, 52, plus, size=SMALL, room=166)
    return sketch
