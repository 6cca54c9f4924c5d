"""Readings of one uncut string: they show whether it is the string that was worked with."""

from __future__ import annotations

from guidegen.guide.blocks import Check
from guidegen.guide.format import quantity
from guidegen.guide.matter import Matter
from guidegen.guide.meters import diode
from guidegen.guide.steps.checks import look_check, predicted_volts, same_way_round_check
from guidegen.guide.steps.draft import Draft, DraftGroup
from guidegen.guide.steps.identify import supply_text
from guidegen.guide.steps.strings import identity_of
from guidegen.guide.tools import Tool
from guidegen.locale import _
from guidegen.project.schema import LightString


def bench(matter: Matter) -> DraftGroup:
    """Polarity and bench reading of one string of each kind."""
    steps = []
    for name, kind in matter.kinds:
        steps += [_free_the_tail(matter, name), _polarity(matter, name, kind), _reading(matter, name, kind)]
    return DraftGroup(
        anchor="bench",
        title=_("On the bench: one whole string"),
        intro=_(
            "One string, still whole, on the real supply behind a resistor. If it reads as expected here, "
            "the rest of the guide fits your strings."
        ),
        steps=tuple(steps),
    )


def _free_the_tail(matter: Matter, name: str) -> Draft:
    return Draft(
        identity=identity_of(matter, "free-the-tail", name),
        title=_("Cut the box off one string “{name}”").format(name=name),
        why=_("The two wires of the tail are where you measure and feed."),
        parts=(_("one string “{name}”").format(name=name),),
        tools=(Tool.CUTTERS, Tool.STRIPPER, Tool.GLASSES),
        topics=("sharp", "cells", "conversion"),
        do=(
            _("Make sure that the cells are out and nothing is plugged in."),
            _("Cut both wires 5 cm from the box. The box keeps two short wires for the next step."),
            _(
                "Bare 10 mm of all four ends. Thin wire may be lacquered: scrape it bright, then tin it "
                "(cover it with solder)."
            ),
            _("Bend the ends apart. They must not touch."),
        ),
        checks=(
            look_check(
                _("The bared wire"),
                _("copper-coloured or tinned, bright"),
                (
                    _("Dull, or solder rolls off: it is lacquered. Scrape and try again."),
                    _(
                        "A magnet pulls it: the wire is steel. Stop; it does not fit the figures of this "
                        "guide."
                    ),
                ),
            ),
        ),
    )


def _polarity(matter: Matter, name: str, kind: LightString) -> Draft:
    return Draft(
        identity=identity_of(matter, "polarity", name),
        title=_("Find plus with the meter"),
        why=_(
            "A rib, a stripe or a colour does not tell which wire is plus. The LEDs do: they let current "
            "through one way only."
        ),
        parts=(_("one string “{name}”").format(name=name), _("its own box, with its cells or adapter")),
        tools=(Tool.METER, Tool.CLIP_LEADS, Tool.PEN),
        topics=("polarity", "cells"),
        do=(
            _(
                "Clip the string's two wires to the two wires of its own box, and put the cells in or plug "
                "it in. Dark: swap the clips."
            ),
            _(
                "While it shines, meter on DC volts, leads on the two wires. No minus sign: the red lead is "
                "on plus. A minus sign: the black lead is on plus."
            ),
            _("Mark plus with the pen at both ends of the string, following the wire with the beeper."),
            _("Take the cells out for good, or unplug the adapter. Take the clips off."),
        ),
        checks=_plus_checks(matter, kind),
    )


def _plus_checks(matter: Matter, kind: LightString) -> tuple[Check, ...]:
    if kind.lit_on_dc != "all":
        return (
            look_check(
                _("Clips swapped"),
                _("the other half shines"),
                (_("Nothing shines: it is a one-way string. Write “lit_on_dc: all” into the project file."),),
            ),
        )
    if not matter.diode_test_tells(kind):
        return (
            look_check(
                _("Clips swapped"),
                _("dark"),
                (_("It shines both ways: a two-way string. Stop and go back to the test for that."),),
            ),
        )
    return (
        Check(
            what=_("From plus to minus of the string"),
            meter=_("{diode}; red lead on plus, black lead on minus").format(diode=diode()),
            expected=_("some volts"),
            range="",
            if_not=(
                _(
                    "“OL”: your meter cannot light these LEDs. Its diode test proves nothing later either: "
                    "find plus by light, and trust the marks and the ohms."
                ),
            ),
        ),
        same_way_round_check(
            _("From minus to plus of the string"),
            (_("It shows volts or glows: the mark is on the wrong wire, or this is a two-way string."),),
        ),
    )


def _reading(matter: Matter, name: str, kind: LightString) -> Draft:
    power = matter.bench_powers[name]
    return Draft(
        identity=identity_of(matter, "bench-reading", name),
        title=_("Measure the whole string behind {ohm}").format(ohm=quantity(power.ohm, "Ω")),
        why=_why_reading(matter, name),
        parts=(_("one string “{name}”").format(name=name), supply_text(matter), _test_resistor(matter, name)),
        tools=(Tool.METER, Tool.CLIP_LEADS),
        topics=("bench-power", "meter"),
        do=(
            _("Clip: supply + to the resistor, resistor to the string's plus, string's minus to supply −."),
            _("Let no clip touch another. Plug in. All bulbs shine."),
            _("Measure volts across the resistor: one lead on each of its legs."),
            _("Measure volts behind the resistor: red on the string's plus, black on its minus."),
            _("Write both down. Unplug."),
        ),
        checks=(
            predicted_volts(_("Across the resistor"), power.resistor_v, _if_off()),
            predicted_volts(
                _("Behind the resistor, from the string's plus to its minus"),
                power.after_resistor_v,
                _if_off(),
            ),
        ),
    )


def _if_off() -> tuple[str, ...]:
    return (
        _("Measure the resistor alone with the meter on ohms: is it the right one?"),
        _(
            "Compare a second string. If both read alike, your LEDs differ: write these readings into the "
            "project file under “bench” and make the guide anew before you go on."
        ),
    )


def _why_reading(matter: Matter, name: str) -> str:
    source = matter.study.leds[name].source
    if source == "bench":
        return _("The guide was worked out from readings like these. Yours must agree before you cut.")
    return _(
        "The guide was worked out with {source}. This reading shows whether your LEDs are like that."
    ).format(
        source=_("a typical LED, which may be far off") if source == "typical" else _("figures from a label")
    )


def _test_resistor(matter: Matter, name: str) -> str:
    power = matter.bench_powers[name]
    return _("test resistor {ohm}").format(ohm=quantity(power.ohm, "Ω"))
