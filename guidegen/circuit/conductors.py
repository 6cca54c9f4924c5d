"""From a wire as the maker knows it to resistance per metre, area, current limit and spread."""

from __future__ import annotations

from guidegen.calc import wire as physics
from guidegen.calc.wire_limit import stated_wire_spread, wire_limit
from guidegen.circuit.arrangement import Conductor
from guidegen.project.schema import LightString, StringWire, WirePiece
from guidegen.tables.conductors import MATERIALS
from guidegen.tables.limits import MEASURED_WIRE

#: Materials whose stated area is an area of copper; the limit of any other goes by its copper equivalent.
COPPERS = (None, "copper", "tinned copper")


def string_conductor(kind: LightString) -> Conductor:
    """Wire of a light string; a measured resistance is spread along tail and spacings."""
    return conductor(kind.wire, kind.tail_m + (kind.bulbs - 1) * kind.spacing)


def cable_conductor(piece: WirePiece) -> Conductor:
    """Wire of a feeder, lead or extra wire."""
    return conductor(piece.wire, piece.length)


def conductor(wire: StringWire, length_m: float) -> Conductor:
    """One conductor of a wire; `length_m` is what a measured resistance belongs to.

    A wire known by its ohms alone counts as the copper wire of that
    resistance.  ValueError when meter leads leave nothing of a reading.
    """
    material = MATERIALS[wire.material or "copper"]
    area_m2 = _stated_area_m2(wire)
    per_m = _measured_ohm_per_m(wire, length_m)
    if area_m2 is not None:
        per_m = physics.ohm_per_m(area_m2, material.resistivity_ohm_m)
    assert per_m is not None, "the reader asks for exactly one form of wire"
    copper_m2 = physics.equivalent_copper_m2(per_m)
    limiting_m2 = area_m2 if area_m2 is not None and wire.material in COPPERS else copper_m2
    spread = MEASURED_WIRE if area_m2 is None else stated_wire_spread(area_m2)
    return Conductor(
        ohm_per_m=per_m,
        area_m2=copper_m2 if area_m2 is None else area_m2,
        inferred=area_m2 is None,
        measured=wire.one_conductor is not None or wire.loop is not None,
        limit_a=wire_limit(limiting_m2).limit_a,
        low_factor=1 - spread.low,
        high_factor=1 + spread.high,
        per_k=material.per_k,
        material=wire.material or "copper",
        gauge=wire.gauge,
    )


def _stated_area_m2(wire: StringWire) -> float | None:
    if wire.gauge is not None:
        return physics.gauge_area_m2(wire.gauge)
    return wire.area


def _measured_ohm_per_m(wire: StringWire, length_m: float) -> float | None:
    leads_ohm = wire.meter_leads or 0.0
    if wire.one_conductor is not None:
        return physics.measured_ohm_per_m(wire.one_conductor, leads_ohm, length_m)
    if wire.loop is not None:
        return physics.loop_ohm_per_m(wire.loop, leads_ohm, length_m)
    return wire.per_length
