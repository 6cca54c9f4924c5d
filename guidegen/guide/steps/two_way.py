"""Two-way strings, step by step: what lights, how plus is found, and how a short shows.

Half of their LEDs face the other way. Such a string shines whichever way
round it is clipped, so that light alone does not tell plus; and no way round
do its LEDs block a meter.
"""

from __future__ import annotations

from guidegen.circuit.arrangement import RunPlan
from guidegen.guide.blocks import Check
from guidegen.guide.format import quantity
from guidegen.guide.lit import halves, lit_bulbs, numbers_text, pieces_bulbs
from guidegen.guide.meters import ohms
from guidegen.guide.steps.checks import look_check
from guidegen.locale import _
from guidegen.project.schema import LightString

#: More ohms than this between plus and minus are LEDs, not a short; own assumption: a meter's milliampere
#: or less through LEDs of 1.7 V and more shows over 1 kohm, the wires of a run are a few ohms.
LEDS_OHM = 100.0


def is_two_way(kind: LightString) -> bool:
    """Whether half of its LEDs face the other way."""
    return kind.lit_on_dc != "all"


def flashing_line(kind: LightString) -> str:
    """What tells a two-way string in its flashing modes."""
    if kind.lit_on_dc == "half of each bulb":
        return _("Try the flashing modes, if any: does half of every bulb go its own way?")
    return _("Try the flashing modes, if any: does every second bulb go its own way?")


def bench_lines(kind: LightString) -> tuple[str, ...]:
    """How plus of a whole string is found."""
    if kind.lit_on_dc == "half of each bulb":
        return (_either_way_line(),)
    lit, dark = (numbers_text(numbers) for numbers in halves(kind.bulbs))
    return (
        _(
            "While these bulbs shine and the others stay dark, plus is the wire at the resistor: {lit}."
        ).format(lit=lit),
        _("If these shine instead, unplug at once and swap the two wires: {dark}.").format(dark=dark),
    )


def bench_light_check(kind: LightString) -> Check:
    """Whether a whole string lights as it was worked with."""
    if kind.lit_on_dc == "half of each bulb":
        return look_check(
            _("Which bulbs shine"),
            _("all, each with half of its LEDs"),
            (
                _(
                    "Only every second one: write “lit_on_dc: half” into the project file and make the guide "
                    "anew before you go on."
                ),
                _(
                    "Dark one way round: write “lit_on_dc: all” into the project file and make the guide "
                    "anew before you go on."
                ),
            ),
        )
    lit, dark = (numbers_text(numbers) for numbers in halves(kind.bulbs))
    return look_check(
        _("Which bulbs shine"),
        _("lit: {lit}; dark: {dark}").format(lit=lit, dark=dark),
        (
            _("Others, either way round: the string is not as the guide was worked out. Stop; do not cut."),
            _(
                "All, either way round: write “lit_on_dc: half of each bulb” into the project file and make "
                "the guide anew before you go on."
            ),
        ),
    )


def piece_lines(kind: LightString, run: RunPlan) -> tuple[str, ...]:
    """How plus of every piece of a run is found."""
    if kind.lit_on_dc == "half of each bulb":
        return (_either_way_line(),)
    pieces = enumerate(pieces_bulbs(run), 1)
    return (
        _("Plus is the wire at the resistor while these bulbs of the run shine and no others:"),
        *(_piece_line(place, lit, dark) for place, (lit, dark) in pieces),
        _("Others shine: unplug at once and swap the two wires."),
    )


def _piece_line(place: int, lit: tuple[int, ...], dark: tuple[int, ...]) -> str:
    if lit:
        return _("Piece {place}: {lit}.").format(place=place, lit=numbers_text(lit))
    return _("Piece {place}: none; the other way round {dark} shines.").format(
        place=place, dark=numbers_text(dark)
    )


def _either_way_line() -> str:
    return _(
        "Every bulb shines, whichever way the two wires are clipped: either way works. Choose one: plus is "
        "the wire at the resistor."
    )


def piece_why(kind: LightString) -> str:
    """Why every piece is lit before it is joined."""
    if kind.lit_on_dc == "half of each bulb":
        return _("Light does not tell its wires apart later: only your mark keeps plus on plus.")
    return _(
        "A piece the wrong way round lights its other bulbs, and the row and the figures are no longer those "
        "of this guide."
    )


def piece_check(kind: LightString, run: RunPlan) -> Check:
    """What every piece of a run shows."""
    what = _("Each piece of “{run}”").format(run=run.name)
    dark = _("All dark both ways: a broken wire, or a string that may not be cut. Stop.")
    some_dark = _("Some dark: the wire is broken, or the string was in series. Use another string.")
    if kind.lit_on_dc != "half":
        return look_check(what, _("all its bulbs shine"), (dark, some_dark))
    return look_check(
        what,
        _("lit: {lit}; the others dark").format(lit=numbers_text(lit_bulbs(run))),
        (
            dark,
            _("One of these dark: the wire is broken, or the string was in series. Use another string."),
            _("Others, either way round: the string is not as the guide was worked out. Stop."),
        ),
    )


def dim_line(kind: LightString, run: RunPlan) -> str:
    """What glows behind the test resistor of the first power."""
    if kind.lit_on_dc == "half":
        return _(
            "Plug in. These bulbs glow dimly, the others stay dark: {lit}. Take both readings. Unplug."
        ).format(lit=numbers_text(lit_bulbs(run)))
    if kind.lit_on_dc == "half of each bulb":
        return _("Plug in. Every bulb glows dimly, with half of its LEDs. Take both readings. Unplug.")
    return _("Plug in. Every bulb glows dimly. Take both readings. Unplug.")


def wrong_bulbs(kind: LightString) -> tuple[str, ...]:
    """Where to look when the bulbs that should stay dark glow."""
    if kind.lit_on_dc != "half":
        return ()
    return (
        _("Other bulbs glow: a piece or the feed is joined the wrong way round. Unplug; follow the marks."),
    )


def lit_line(kind: LightString, run: RunPlan) -> str:
    """What of a run shines for good."""
    if kind.lit_on_dc == "half":
        return _("“{run}”: these bulbs shine, the others stay dark: {lit}.").format(
            run=run.name, lit=numbers_text(lit_bulbs(run))
        )
    if kind.lit_on_dc == "half of each bulb":
        return _("“{run}”: every bulb shines, with half of its LEDs.").format(run=run.name)
    return _("“{run}”: every bulb shines.").format(run=run.name)


def blocking_line() -> str:
    """Why the ohms of a two-way string are read both ways."""
    return _(
        "A two-way string has LEDs both ways round: a meter may show hundreds of ohms or more through them. "
        "A short shows the same few ohms both ways."
    )


def no_short_both_ways(what: str, if_not: tuple[str, ...]) -> Check:
    """No short between + and - of a two-way string."""
    return Check(
        what=what,
        meter=_("{ohms}; once red lead on −, black lead on +, then the other way round").format(ohms=ohms()),
        expected=_("“OL”, or many ohms"),
        range=_("it shows “OL” or more than {least}, both ways").format(least=quantity(LEDS_OHM, "Ω")),
        if_not=if_not,
    )
