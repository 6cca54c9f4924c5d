"""Care: the check of every season, storage, what ages, disposal, and spare parts with their exact values."""

from __future__ import annotations

from collections.abc import Iterator

from guidegen.guide.blocks import Column, Table
from guidegen.guide.format import metered, quantity, span
from guidegen.guide.matter import Matter
from guidegen.guide.pages import Section
from guidegen.guide.places import short_place
from guidegen.guide.resistors import marking, resistor_name
from guidegen.guide.steps.supply_end import fuse_text
from guidegen.guide.wires import cable_name
from guidegen.locale import _, ngettext
from guidegen.parts.bill import bill
from guidegen.parts.wires import resistor_reference


def care_sections(matter: Matter) -> tuple[Section, ...]:
    """All of care, in the order of a year."""
    return (
        Section(
            anchor="season",
            title=_("Check at the start of a season"),
            points=tuple(_season(matter)),
            tables=(_points(matter),),
        ),
        Section(anchor="storage", title=_("Store it"), points=tuple(_storage(matter))),
        Section(anchor="ages", title=_("What ages"), points=tuple(_ages(matter))),
        Section(anchor="disposal", title=_("Throw away"), points=tuple(_disposal(matter))),
        Section(anchor="spares", title=_("Spare parts"), tables=(_spares(matter),)),
    )


def _season(matter: Matter) -> Iterator[str]:
    yield _("Unplugged first: look along every wire for cracks, bare metal, green copper and loose sleeves.")
    yield _("Pull lightly at every joint and every strain relief. Nothing may move.")
    yield _("Look at the supply's case and cord from outside: cracked, bulged or hot-smelling, it goes.")
    if matter.project.hanging is not None:
        yield _("Pull at every hook by hand; a hook that turns or gives is set anew.")
    if matter.outdoors:
        yield _("Press the test button of the outlet's residual-current protection before you plug in.")
    yield _("Plug in, wait five minutes, and read the same test points as on the first day, below.")
    yield _("Outside its range, or far from what you wrote down then: unplug, and go to “Readings”.")


def _points(matter: Matter) -> Table:
    """The test points with what they should show."""
    found = [reading for reading in matter.readings if reading.quantity == "volts" and reading.point]
    return Table(
        caption=_("Test points, as on the first day"),
        columns=(
            Column(_("Point")),
            Column(_("Run")),
            Column(_("Where")),
            Column(_("Expected"), numeric=True),
            Column(_("Range"), numeric=True),
        ),
        rows=tuple(
            (
                reading.point.label,
                _("all") if reading.point.run is None else matter.runs[reading.point.run].name,
                short_place(matter, reading.point),
                metered(reading.expected, reading.low, reading.high, "V"),
                span(reading.low, reading.high, "V"),
            )
            for reading in found
            if reading.point is not None
        ),
    )


def _storage(matter: Matter) -> Iterator[str]:
    yield _(
        "Wind the lights in wide loops round a board, never tight round your hand: a kink breaks strands."
    )
    yield _("Dry, dark and free of frost; sun makes the plastic brittle.")
    yield _("Keep supply, fuse and labels with the lights, and this guide with them.")
    if any(kind.came_with for _name, kind in matter.kinds):
        yield _("Take the cells out of every box and remote control: cells that lie for months leak.")


def _ages(matter: Matter) -> Iterator[str]:
    yield _("LEDs grow dimmer over thousands of hours, the brightest bulbs first; a run fades as a whole.")
    yield _(
        "Plastic in sun and frost: two to five seasons outdoors, then it cracks (common practice, no source)."
    )
    yield _("Joints: a reading that falls from season to season at the same point is a joint that corrodes.")
    yield _("The supply: its capacitors dry out; flicker or volts that sag under load mean a new one.")
    yield _("The fuse: replace it only by the same one, {fuse}, and only after the cause is found.").format(
        fuse=fuse_text(matter)
    )


def _disposal(matter: Matter) -> Iterator[str]:
    if any(kind.came_with for _name, kind in matter.kinds):
        yield _(
            "Cells go to a collecting point for batteries, never into household waste or fire. Tape the ends "
            "of lithium cells."
        )
    yield _("Strings and supply are electrical waste: the collecting point or the shop takes them back.")
    yield _("Cut the plug off nothing: give supply and cord away whole.")


def _spares(matter: Matter) -> Table:
    """What to keep, with exact values."""
    return Table(
        caption=_("To keep in the box with the lights"),
        columns=(Column(_("Part")), Column(_("Exact value")), Column(_("For"))),
        rows=tuple(_spare_rows(matter)),
    )


def _spare_rows(matter: Matter) -> Iterator[tuple[str, ...]]:
    supply, parts = matter.project.supply, bill(matter.arrangement)
    yield _("Two fuses"), fuse_text(matter), _("the fuse holder, first in plus")
    for line in parts.resistors:
        resistor = line.resistor
        marks = marking(resistor.ohm, resistor.tolerance, resistor.rating_w)
        value = f"{resistor_name(resistor)}; {marks}" if marks else resistor_name(resistor)
        yield _("One resistor"), value, ", ".join(resistor_reference(run) for run in line.runs)
    for name, kind in matter.kinds:
        value = ngettext(
            "{count} bulb, {leds} LED each, {spacing} apart",
            "{count} bulbs, {leds} LED each, {spacing} apart",
            kind.bulbs,
        ).format(count=kind.bulbs, leds=kind.leds_per_bulb, spacing=quantity(kind.spacing, "m"))
        yield (
            _("One string “{name}” of the same lot").format(name=name),
            value,
            _("bulbs, and pieces to splice in"),
        )
    for wire in parts.wires[:1]:
        yield _("2 m of wire"), cable_name(wire.cores, wire.conductor), _("a damaged stretch")
    value = _("{volts} DC, {amperes} or more, same plug").format(
        volts=quantity(supply.voltage, "V"), amperes=quantity(supply.rated_current, "A")
    )
    yield _("Supply, when it fails"), value, _("never another voltage")
