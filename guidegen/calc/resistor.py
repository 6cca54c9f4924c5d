"""Watts, rating and temperature of a series resistor.  Watts, ohms, volts, degC."""

from __future__ import annotations

from guidegen.calc.preferred import smallest_not_below
from guidegen.calc.worked import formula
from guidegen.locale import N_
from guidegen.tables.preferred import RESISTOR_RATINGS_W
from guidegen.tables.resistors import KINDS, RISE_SOURCE, ResistorKind


@formula(
    title=N_("Watts in the resistor"),
    text="P = I² · R",
    result=("P", "W", N_("watts turned to heat")),
    symbols={
        "current_a": ("I", "A", N_("current through the resistor")),
        "resistance_ohm": ("R", "Ω", N_("resistance")),
    },
    source=N_("Joule's law"),
)
def running_w(current_a: float, resistance_ohm: float) -> float:
    """Watts of a resistor at a current."""
    return current_a**2 * resistance_ohm


@formula(
    title=N_("Watts with the run shorted"),
    text="P = V_max² / R_min",
    result=("P", "W", N_("watts turned to heat while the short lasts")),
    symbols={
        "upper_voltage_v": ("V_max", "V", N_("upper supply voltage")),
        "lower_ohm": ("R_min", "Ω", N_("lower resistance of the resistor")),
    },
    source=N_("Joule's law"),
)
def shorted_w(upper_voltage_v: float, lower_ohm: float) -> float:
    """Watts when the whole supply stands across the resistor (ohm above zero)."""
    return upper_voltage_v**2 / lower_ohm


@formula(
    title=N_("Lower limit of the resistor"),
    text="R_min = R · (1 − t)",
    result=("R_min", "Ω", N_("lower resistance of the resistor")),
    symbols={
        "resistance_ohm": ("R", "Ω", N_("resistance")),
        "tolerance": ("t", "", N_("tolerance")),
    },
    source=N_("IEC 60062, meaning of tolerance"),
)
def lower_ohm(resistance_ohm: float, tolerance: float) -> float:
    """Smallest resistance within a tolerance (ratio)."""
    return resistance_ohm * (1 - tolerance)


@formula(
    title=N_("Upper limit of the resistor"),
    text="R_max = R · (1 + t)",
    result=("R_max", "Ω", N_("upper resistance of the resistor")),
    symbols={
        "resistance_ohm": ("R", "Ω", N_("resistance")),
        "tolerance": ("t", "", N_("tolerance")),
    },
    source=N_("IEC 60062, meaning of tolerance"),
)
def upper_ohm(resistance_ohm: float, tolerance: float) -> float:
    """Largest resistance within a tolerance (ratio)."""
    return resistance_ohm * (1 + tolerance)


@formula(
    title=N_("Rating the resistor needs"),
    text="P_r = P / k",
    result=("P_r", "W", N_("smallest rating")),
    symbols={
        "power_w": ("P", "W", N_("watts turned to heat")),
        "load": ("k", "", N_("largest share of the rating to run at")),
    },
    source=N_("common practice, no source"),
)
def rating_needed_w(power_w: float, load: float) -> float:
    """Rating at which the watts are the share `load` of it."""
    return power_w / load


def pick_rating_w(needed_w: float) -> float | None:
    """Smallest rating on sale that is not below the need, watt; None when the need exceeds all."""
    return smallest_not_below(RESISTOR_RATINGS_W, needed_w)


@formula(
    title=N_("What the rating is worth in warm air"),
    text="P_d = P_r · min(1, max(0, (T_0 − T_a) / (T_0 − T_f)))",
    result=("P_d", "W", N_("derated rating")),
    symbols={
        "rating_w": ("P_r", "W", N_("rating of the resistor")),
        "zero_degc": ("T_0", "°C", N_("temperature at which nothing of the rating is left")),
        "ambient_degc": ("T_a", "°C", N_("temperature of the air")),
        "full_degc": ("T_f", "°C", N_("temperature up to which the full rating holds")),
    },
    source=N_("IEC 60115-1 and data sheets, straight derating line"),
)
def derated_w(rating_w: float, ambient_degc: float, full_degc: float, zero_degc: float) -> float:
    """Rating left at an air temperature: full to `full_degc`, then straight to zero at `zero_degc`."""
    share = (zero_degc - ambient_degc) / (zero_degc - full_degc)
    return rating_w * min(1.0, max(0.0, share))


def rating_at_w(rating_w: float, ambient_degc: float, kind: str | None) -> float:
    """Derated rating of a kind ("film", "cement", "wirewound"); None counts as the worst of all."""
    return min(derated_w(rating_w, ambient_degc, each.full_degc, each.zero_degc) for each in kinds(kind))


@formula(
    title=N_("Temperature of the resistor"),
    text="T = T_a + ΔT · P / P_r",
    result=("T", "°C", N_("temperature of its body, in free air")),
    symbols={
        "ambient_degc": ("T_a", "°C", N_("temperature of the air")),
        "rise_at_rating_k": ("ΔT", "K", N_("rise at the full rating")),
        "power_w": ("P", "W", N_("watts turned to heat")),
        "rating_w": ("P_r", "W", N_("rating of the resistor")),
    },
    source=RISE_SOURCE,
)
def body_degc(ambient_degc: float, rise_at_rating_k: float, power_w: float, rating_w: float) -> float:
    """Estimated body temperature, degC, the rise in proportion to the load."""
    return ambient_degc + rise_at_rating_k * power_w / rating_w


def hottest_rise_k(kind: str | None) -> float:
    """Rise at full rating of a kind, kelvin; None counts as the worst of all."""
    return max(each.rise_at_rating_k for each in kinds(kind))


def kinds(kind: str | None) -> tuple[ResistorKind, ...]:
    """The kind named, or all when it is unknown; KeyError for a name the table lacks."""
    return tuple(KINDS.values()) if kind is None else (KINDS[kind],)
