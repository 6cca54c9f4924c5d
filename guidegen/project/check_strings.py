"""Checks of one kind of light string: its LEDs, its readings."""

from __future__ import annotations

from collections.abc import Iterator

from guidegen.locale import _
from guidegen.project.complaint import Complaint
from guidegen.project.keys import Key
from guidegen.project.plain import Text, UnreadableError
from guidegen.project.schema import BenchReading, Led, LightString


def name(key: Key, _string: LightString) -> Iterator[Complaint]:
    """The kind's own name is a word or a few."""
    reader = Text(1, 60)
    try:
        reader.read(key[-1])
    except UnreadableError as error:
        came = _("the name {name}").format(name=repr(str(key[-1])[:40]))
        yield Complaint(key, reader.expected(), error.mend, came)


def groups(key: Key, string: LightString) -> Iterator[Complaint]:
    """The LEDs of a bulb form whole groups."""
    if string.leds_per_bulb % string.leds_in_series:
        expected = _("a number that divides leds_per_bulb, which is {count}").format(
            count=string.leds_per_bulb
        )
        mend = _("count the LEDs that one current passes through one after the other; often 1")
        yield Complaint((*key, "leds_in_series"), expected, mend)


def half_bulbs(key: Key, string: LightString) -> Iterator[Complaint]:
    """Half the groups of a bulb light only if their number is even."""
    if string.lit_on_dc == "half of each bulb" and string.groups % 2:
        expected = _("an even number of groups in a bulb; here it is {count}").format(count=string.groups)
        mend = _("check leds_per_bulb and leds_in_series, or write half if every other bulb stays dark")
        yield Complaint((*key, "lit_on_dc"), expected, mend)


def wires(key: Key, string: LightString) -> Iterator[Complaint]:
    """Two wires all the way are what parallel means; only a stated `between_bulbs` contradicts."""
    if (
        string.wires == 3
        and string.between_bulbs == "parallel"
        and "between_bulbs" in string.model_fields_set
    ):
        expected = _("2 beside between_bulbs: parallel, which means two wires all the way")
        mend = _("count again; with three wires write between_bulbs: chip, series or unknown")
        yield Complaint((*key, "wires"), expected, mend)


def led(key: Key, part: Led) -> Iterator[Complaint]:
    """A curve is either typical or the maker's own, and complete."""
    own = [word for word in ("voltage", "current", "slope", "resistance") if getattr(part, word) is not None]
    expected = _("either typical, or voltage and current with slope and resistance if known")
    if part.typical is not None and own:
        mend = _("delete typical, or delete {keys}").format(keys=", ".join(own))
        yield Complaint(key, expected, mend, _("typical and {keys}").format(keys=", ".join(own)))
    elif part.typical is None and (part.voltage is None or part.current is None):
        mend = _("write typical: white, or voltage and the current at which it was read")
        yield Complaint(key, expected, mend, ", ".join(own) or _("nothing"))


def reading_there(key: Key, row: BenchReading) -> Iterator[Complaint]:
    """A bench row tells volts behind the resistor or a current."""
    if row.after_resistor is None and row.current is None:
        expected = _("after_resistor or current, or both")
        yield Complaint(key, expected, _("write what the meter showed"), _("neither"))
    elif row.current is None and row.resistor == 0:
        expected = _("current, since a resistor of 0 ohm drops no volts to tell it from")
        yield Complaint(key, expected, _("put a resistor in line, or read the current"), _("no current"))


def volts_drop(key: Key, row: BenchReading) -> Iterator[Complaint]:
    """Behind a resistor there are fewer volts than before it."""
    if row.resistor > 0 and row.after_resistor is not None and row.after_resistor >= row.supply:
        expected = _("less than supply, which is {supply:g} V").format(supply=row.supply)
        mend = _("check that the two readings were not swapped")
        yield Complaint((*key, "after_resistor"), expected, mend)


def current_fits(key: Key, row: BenchReading) -> Iterator[Complaint]:
    """The resistor and the meter cannot drop more volts than there are."""
    if row.current is None:
        return
    most = row.supply / (row.resistor + (row.meter_burden or 0)) if row.resistor else None
    if most is not None and row.current >= most:
        expected = _("less than supply / resistance in line, which is {most:.3g} A").format(most=most)
        yield Complaint((*key, "current"), expected, _("check the unit (mA or A) and the resistor"))


def burden(key: Key, row: BenchReading) -> Iterator[Complaint]:
    """A meter has a burden only while it reads a current."""
    if row.meter_burden is not None and row.current is None:
        expected = _("meter_burden only beside current")
        yield Complaint((*key, "meter_burden"), expected, _("write the current, or delete meter_burden"))
