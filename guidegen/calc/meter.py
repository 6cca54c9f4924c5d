"""What a meter shows: its accuracy, and the current it lets through."""

from __future__ import annotations

from guidegen.calc.worked import formula
from guidegen.locale import N_


@formula(
    title=N_("Accuracy of the meter"),
    text="u = p · x + n · q",
    result=("u", "", N_("how far the reading may be off, in the reading's unit")),
    symbols={
        "share": ("p", "", N_("share of the reading")),
        "reading": ("x", "", N_("reading")),
        "digits": ("n", "", N_("digits")),
        "step": ("q", "", N_("one step of the last digit, in the reading's unit")),
    },
    source=N_("Makers' accuracy statements: ±(share of reading + digits)"),
)
def accuracy(reading: float, share: float, digits: float, step: float) -> float:
    """Half-width of a reading in its own unit: share |reading| + digits x step."""
    return share * abs(reading) + digits * step


@formula(
    title=N_("Current with a meter in line"),
    text="I = V / (R + R_m)",
    result=("I", "A", N_("current the meter shows")),
    symbols={
        "voltage_v": ("V", "V", N_("volts that drive it")),
        "resistance_ohm": ("R", "Ω", N_("resistance of the circuit")),
        "burden_ohm": ("R_m", "Ω", N_("resistance of the meter and its leads")),
    },
    source=N_("Ohm's law"),
)
def burdened_current_a(voltage_v: float, resistance_ohm: float, burden_ohm: float) -> float:
    """Current of a resistance with the meter's own in series."""
    return voltage_v / (resistance_ohm + burden_ohm)
