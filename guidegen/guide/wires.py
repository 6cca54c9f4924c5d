"""How a kind of wire is named."""

from __future__ import annotations

from guidegen.circuit.arrangement import Conductor
from guidegen.guide.format import number, quantity
from guidegen.locale import _
from guidegen.parts.cuts import WireKey


def conductor_name(conductor: Conductor) -> str:
    """A conductor as a seller names it: its gauge or its area, and the material if it is not copper."""
    if conductor.gauge is not None:
        size = _("{gauge} AWG").format(gauge=number(conductor.gauge))
    elif conductor.inferred:
        size = _("{ohm} a conductor").format(ohm=quantity(conductor.ohm_per_m, "Ω/m"))
    else:
        size = quantity(conductor.area_m2, "m2")
    return size if conductor.material == "copper" else f"{size} {_(conductor.material)}"


def cable_name(cores: int, conductor: Conductor) -> str:
    """A cable as a seller names it."""
    if cores == 1:
        return _("single-core stranded wire, {size}").format(size=conductor_name(conductor))
    return _("two-core stranded cable, {size}").format(size=conductor_name(conductor))


def wire_word(key: WireKey) -> str:
    """What a piece of wire is called on every page."""
    return {"lead": _("shared lead"), "feeder": _("feeder"), "extra": _("extra wire")}[key]
