"""What stands on the labels, from the arrangement alone: steps, lists and drawings say the same."""

from __future__ import annotations

from guidegen.circuit.arrangement import Arrangement
from guidegen.guide.format import quantity
from guidegen.guide.wires import wire_word
from guidegen.locale import _
from guidegen.parts.cuts import WireCut
from guidegen.parts.wires import LEAD, extra_reference, feeder_reference, resistor_reference


def wire_reference(cut: WireCut) -> str:
    """The short name of a wire: L1, W1 or X1."""
    if cut.run is None:
        return LEAD
    return feeder_reference(cut.run) if cut.key == "feeder" else extra_reference(cut.run)


def wire_label(arrangement: Arrangement, cut: WireCut) -> str:
    """What a piece of wire is called: its reference, its kind, and its run."""
    reference, word = wire_reference(cut), wire_word(cut.key)
    if cut.run is None:
        return _("{reference} {wire}").format(reference=reference, wire=word)
    return _("{reference} {wire} “{run}”").format(
        reference=reference, wire=word, run=arrangement.runs[cut.run].name
    )


def supply_words(arrangement: Arrangement) -> str:
    """The supply's volts and the fuse."""
    return _("{volts} DC only · fuse {amperes}").format(
        volts=quantity(arrangement.supply.voltage_v, "V"),
        amperes=quantity(arrangement.fuse.rating_a or 0.0, "A"),
    )


def place_words(arrangement: Arrangement, cut: WireCut) -> str:
    """Where a wire belongs: behind its resistor, or at the supply's volts."""
    if cut.run is None or not arrangement.runs[cut.run].resistor.fitted:
        return supply_words(arrangement)
    return _("only behind {resistor} {ohm}, never straight to the supply").format(
        resistor=resistor_reference(cut.run), ohm=quantity(arrangement.runs[cut.run].resistor.ohm, "Ω")
    )


def pole_words(cut: WireCut) -> str:
    """Which conductor is which."""
    return _("carries −") if cut.cores == 1 else _("marked core is +")
