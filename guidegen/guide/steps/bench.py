"""Readings of one uncut string: they show whether it is the string that was worked with."""

from __future__ import annotations

from guidegen.guide.blocks import Check
from guidegen.guide.format import quantity
from guidegen.guide.matter import Matter
from guidegen.guide.steps.checks import look_check, predicted_volts
from guidegen.guide.steps.draft import Draft, DraftGroup
from guidegen.guide.steps.identify import supply_text
from guidegen.guide.steps.joint_words import closed_end
from guidegen.guide.steps.pieces import clip_line, find_plus_line, hot_lines
from guidegen.guide.steps.strings import identity_of
from guidegen.guide.steps.two_way import bench_light_check, bench_lines, is_two_way
from guidegen.guide.tools import Tool
from guidegen.locale import _
from guidegen.project.schema import LightString


def bench(matter: Matter) -> DraftGroup:
    """Polarity and bench reading of one string of each kind, through the fuse."""
    steps = []
    for name, kind in matter.kinds:
        steps += [_free_the_tail(matter, name), _reading(matter, name, kind)]
    return DraftGroup(
        anchor="bench",
        title=_("On the bench: one whole string"),
        intro=_(
            "One string, still whole, at your supply end behind a resistor. If it reads as expected here, "
            "the rest of the guide fits your strings."
        ),
        steps=tuple(steps),
    )


def _string(matter: Matter, name: str) -> str:
    bared = matter.bared(name)
    return _("string {number} “{name}”").format(number=1 if bared is None else bared.string_number, name=name)


def _free_the_tail(matter: Matter, name: str) -> Draft:
    bared = matter.bared(name)
    title = _("Cut the box off one string “{name}”") if bared is None else _("Open one string “{name}”")
    return Draft(
        identity=identity_of(matter, "free-the-tail", name),
        title=title.format(name=name),
        why=_("Here you feed it and measure. All these places are cut, joined or capped later."),
        parts=(_string(matter, name),),
        tools=(Tool.CUTTERS, Tool.STRIPPER, Tool.KNIFE, Tool.MAGNET, Tool.IRON, Tool.GLASSES),
        topics=("sharp", "conversion", "soldering"),
        do=(
            _("No cells in it, nothing plugged in: cut both wires right at the box."),
            *_bared_lines(matter, name),
            _("Bare 10 mm of each end. Lacquered wire: scrape it bright. Tin it (cover it with solder)."),
            _("Bend the ends apart. They must not touch."),
        ),
        checks=(
            look_check(
                _("The bared wire"),
                _("bright, and a magnet does not pull it"),
                (
                    _("Dull, or solder rolls off: it is lacquered. Scrape and try again."),
                    _("A magnet pulls it: steel wire. Stop; it does not fit the figures of this guide."),
                ),
            ),
        ),
    )


def _bared_lines(matter: Matter, name: str) -> tuple[str, ...]:
    bared = matter.bared(name)
    if bared is None:
        return ()
    if bared.closed:
        return (closed_end(bared.bulb),)
    return (
        _(
            "Right behind bulb {bulb}, where it will be cut, bare 3 mm of each wire, 2 cm apart. Do "
            "not cut yet."
        ).format(bulb=bared.bulb),
    )


def _reading(matter: Matter, name: str, kind: LightString) -> Draft:
    power = matter.bench_powers[name]
    ohm = quantity(power.ohm, "Ω")
    return Draft(
        identity=identity_of(matter, "bench-reading", name),
        title=(
            _("Light it through {ohm}, choose plus, and measure")
            if kind.lit_on_dc == "half of each bulb"
            else _("Light it through {ohm}, find plus, and measure")
        ).format(ohm=ohm),
        why=_why_reading(matter, name),
        parts=(
            _string(matter, name),
            supply_text(matter),
            *(_("test resistor {ohm}").format(ohm=quantity(each, "Ω")) for each in _ohms(matter, name)),
        ),
        tools=(Tool.METER, Tool.CLIP_LEADS, Tool.TILE, Tool.PEN),
        topics=("test-resistor-hot", "bench-power", "meter", "polarity"),
        do=(
            _(
                "Lay the resistor on dry tile, stone or concrete, never on metal; legs and clips "
                "touch nothing."
            ),
            clip_line(ohm, _("the tail")),
            *(bench_lines(kind) if is_two_way(kind) else (find_plus_line(),)),
            *hot_lines(power.trial),
            _("Take the readings. Mark plus with the pen. Unplug."),
        ),
        checks=(
            *((bench_light_check(kind),) if is_two_way(kind) else ()),
            predicted_volts(
                _("Across the resistor, one lead on each leg"), power.resistor_v, _if_off(matter, name)
            ),
            predicted_volts(
                _("Behind the resistor, from plus to minus of the string"),
                power.after_resistor_v,
                (_("Near 0 V and dark: a short, or a supply that has shut down. Unplug."),),
            ),
            *_bulb_check(matter, name),
        ),
    )


def _bulb_check(matter: Matter, name: str) -> tuple[Check, ...]:
    reading, bared = matter.bench_powers[name].bulb_v, matter.bared(name)
    if reading is None or bared is None:
        return ()
    return (
        predicted_volts(
            _("At bulb {bulb}, on the bared wires").format(bulb=bared.bulb),
            reading,
            (
                _(
                    "Far less than behind the resistor: bulbs in series, even with two wires. Stop; "
                    "do not cut."
                ),
            ),
        ),
    )


def _ohms(matter: Matter, name: str) -> list[float]:
    """The step's own test resistor, and what its suggested readings ask for besides."""
    own, wanted = matter.bench_powers[name].ohm, matter.next_readings.get(name)
    asked = () if wanted is None else wanted.asked
    return list(dict.fromkeys((own, *(each.resistor_ohm for each in asked))))


def _if_off(matter: Matter, name: str) -> tuple[str, ...]:
    table = (
        (_("Without the file: “If your string differs” in “The numbers” tells what to fit."),)
        if name in matter.string_rows
        else ()
    )
    return (
        _("Measure the resistor alone with the meter on ohms: is it the right one?"),
        _(
            "Compare a second string. If both read alike, your LEDs differ: write these readings into the "
            "project file under “bench” and make the guide anew before you go on."
        ),
        *table,
    )


def _why_reading(matter: Matter, name: str) -> str:
    source, wanted = matter.study.leds[name].source, matter.next_readings.get(name)
    if wanted is not None:
        from guidegen.report.readings import next_text  # noqa: PLC0415 - loads all that judges readings

        return next_text(name, wanted, quantity)
    if source == "bench":
        return _("The guide was worked out from readings like these. Yours must agree before you cut.")
    return _(
        "The guide was worked out with {source}. This reading shows whether your LEDs are like that."
    ).format(
        source=_("a typical LED, which may be far off") if source == "typical" else _("figures from a label")
    )
