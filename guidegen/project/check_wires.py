"""Checks of wires: one form each, and only what goes with that form."""

from __future__ import annotations

from collections.abc import Iterator

from guidegen.locale import _
from guidegen.project.complaint import Complaint
from guidegen.project.keys import Key
from guidegen.project.schema import StringWire, WirePiece

FORMS = ("one_conductor", "loop", "area", "gauge", "per_length")
PIECE_FORMS = ("area", "gauge", "per_length", "one_conductor")


def string_wire(key: Key, wire: StringWire) -> Iterator[Complaint]:
    """A string's wire is known in exactly one form."""
    yield from _one_form(key, wire, FORMS)


def piece_wire(key: Key, piece: WirePiece) -> Iterator[Complaint]:
    """A piece of wire is known by its size, or by the resistance of one conductor of the piece."""
    inner = (*key, "wire")
    if piece.wire.loop is not None:
        mend = _("halve it and write one_conductor, or give area, gauge or per_length")
        yield Complaint((*inner, "loop"), _("one of {forms}").format(forms=", ".join(PIECE_FORMS)), mend)
    else:
        yield from _one_form(inner, piece.wire, PIECE_FORMS)


def meter_leads(key: Key, wire: StringWire) -> Iterator[Complaint]:
    """Meter leads are part of a measured reading, and smaller than it."""
    if wire.meter_leads is None:
        return
    reading = wire.one_conductor if wire.one_conductor is not None else wire.loop
    inner = (*key, "meter_leads")
    if reading is None:
        expected = _("meter_leads only beside a measured one_conductor or loop")
        yield Complaint(inner, expected, _("delete meter_leads"))
    elif wire.meter_leads >= reading:
        expected = _("less than the reading it is part of, which is {reading:g} ohm").format(reading=reading)
        yield Complaint(inner, expected, _("measure both again, the leads with their tips held together"))


def material(key: Key, wire: StringWire) -> Iterator[Complaint]:
    """A material matters only where the resistance is worked out from the size."""
    if wire.material is not None and wire.area is None and wire.gauge is None:
        expected = _("material only beside area or gauge; a resistance holds for any material")
        yield Complaint((*key, "material"), expected, _("delete material"))


def _one_form(key: Key, wire: StringWire, forms: tuple[str, ...]) -> Iterator[Complaint]:
    given = [form for form in FORMS if getattr(wire, form) is not None]
    if len(given) == 1:
        return
    came = _("{forms} at once").format(forms=", ".join(given)) if given else _("none of them")
    mend = _("keep the one you are surest of") if given else _("write one of them, such as area: 0.5 mm2")
    yield Complaint(key, _("exactly one of {forms}").format(forms=", ".join(forms)), mend, came)
