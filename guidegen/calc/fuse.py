"""The fuse: its rating, whether a short reaches it, and what flows for long behind it.  Amperes."""

from __future__ import annotations

import math

from guidegen.calc.preferred import smallest_not_below
from guidegen.calc.worked import formula
from guidegen.locale import N_
from guidegen.tables.fuses import FUSE_TYPES, RATINGS_A
from guidegen.tables.limits import FUSE_LOAD

#: Currents this close count as equal: 2.1 times 200 mA is 420 mA.
ROUNDING = 1e-9


@formula(
    title=N_("Fuse the current needs"),
    text="I_n = I / k",
    result=("I_n", "A", N_("smallest fuse rating")),
    symbols={
        "worst_running_a": ("I", "A", N_("worst running current")),
        "load": ("k", "", N_("largest share of the fuse's rating to run at")),
    },
    source=FUSE_LOAD.source,
)
def fuse_needed_a(worst_running_a: float, load: float = FUSE_LOAD.value) -> float:
    """Rating at which the worst running current is the share `load` of it."""
    return worst_running_a / load


def pick_fuse_a(needed_a: float) -> float | None:
    """Smallest standard rating not below the need, ampere; None when the need exceeds all."""
    return smallest_not_below(RATINGS_A, needed_a)


@formula(
    title=N_("Current at which the fuse must open"),
    text="I_open = k · I_n",
    result=("I_open", "A", N_("current at which the fuse must open")),
    symbols={
        "multiple": ("k", "", N_("multiple at which this type must open")),
        "rating_a": ("I_n", "A", N_("rating of the fuse")),
    },
    source=N_("IEC 60127-2 (2.1) and UL 248-14 (2)"),
)
def must_open_a(rating_a: float, multiple: float) -> float:
    """Current at which a fuse must open; `multiple` from `must_open_multiple`."""
    return multiple * rating_a


def must_open_multiple(fuse_type: str) -> float:
    """Multiple of the rating at which a type ("IEC", "UL") must open; KeyError for another name."""
    return FUSE_TYPES[fuse_type].must_open


@formula(
    title=N_("Current into a short"),
    text="I_f = min(V / R, I_lim)",
    result=("I_f", "A", N_("current the supply is sure to give into the short")),
    symbols={
        "voltage_v": ("V", "V", N_("supply voltage")),
        "resistance_ohm": ("R", "Ω", N_("resistance of the way to the short and back")),
        "limit_a": ("I_lim", "A", N_("current the supply is sure to give")),
    },
    source=N_("Ohm's law"),
)
def fault_current_a(voltage_v: float, resistance_ohm: float, limit_a: float) -> float:
    """min(V / R, limit); without resistance the limit alone counts."""
    return min(_through(voltage_v, resistance_ohm), limit_a)


def sure_to_open(fault_a: float, opens_a: float) -> bool:
    """Whether a fault current (`fault_current_a`) reaches the current at which the fuse must open."""
    return opens_a <= fault_a * (1 + ROUNDING)


@formula(
    title=N_("Largest current that can last in the wire"),
    text="I_last = min(I_open, I_lim, V_max / R_min)",
    result=("I_last", "A", N_("largest current that can flow for long")),
    symbols={
        "opens_a": ("I_open", "A", N_("current at which the fuse must open")),
        "limit_a": ("I_lim", "A", N_("largest current of the supply")),
        "upper_voltage_v": ("V_max", "V", N_("upper supply voltage")),
        "lower_ohm": ("R_min", "Ω", N_("lower resistance ahead of the wire")),
    },
    source=N_("Ohm's law"),
)
def lasting_current_a(opens_a: float, limit_a: float, upper_voltage_v: float, lower_ohm: float) -> float:
    """Largest lasting current in a wire section; infinite `opens_a` stands for no fuse."""
    return min(opens_a, limit_a, _through(upper_voltage_v, lower_ohm))


def _through(voltage_v: float, resistance_ohm: float) -> float:
    return voltage_v / resistance_ohm if resistance_ohm > 0 else math.inf
