"""Resistance of wire by area, gauge, material and temperature, and from a meter.

Lengths are in metres of one conductor, areas in square metres.
Validity: direct current, one uniform conductor.
"""

from __future__ import annotations

import math

from guidegen.calc.worked import formula
from guidegen.locale import N_
from guidegen.tables import conductors as table

_LINEAR = N_("IEC 60028, linear change with temperature")


@formula(
    title=N_("Wire resistance from its area"),
    text="r = ρ_20 / A",
    result=("r", "Ω/m", N_("resistance of one conductor per metre")),
    symbols={
        "resistivity_ohm_m": ("ρ_20", "Ω m", N_("resistivity at 20 °C")),
        "area_m2": ("A", "m2", N_("area of the conductor")),
    },
    source=N_("IEC 60028"),
)
def ohm_per_m(area_m2: float, resistivity_ohm_m: float = table.COPPER_OHM_M.value) -> float:
    """Resistance per metre at 20 degC, ohm/m, of an area in m2: rho20 / A."""
    return resistivity_ohm_m / area_m2


@formula(
    title=N_("Wire diameter from its gauge"),
    text="d = d_36 · k^((36 − n) / 39)",
    result=("d", "m", N_("diameter of the bare wire")),
    symbols={
        "gauge": ("n", "", N_("American wire gauge")),
        "gauge_36_m": ("d_36", "m", N_("diameter of gauge 36")),
        "ratio": ("k", "", N_("ratio of the diameters of gauges 0000 and 36")),
    },
    source=table.GAUGE_36_M.source,
)
def gauge_diameter_m(
    gauge: float, gauge_36_m: float = table.GAUGE_36_M.value, ratio: float = table.GAUGE_RATIO.value
) -> float:
    """Diameter of an American wire gauge, metre, unrounded."""
    return gauge_36_m * math.pow(ratio, (36 - gauge) / 39)


@formula(
    title=N_("Area of a round wire"),
    text="A = π · d² / 4",
    result=("A", "m2", N_("area of the conductor")),
    symbols={"diameter_m": ("d", "m", N_("diameter of the bare wire"))},
    source=N_("Area of a circle"),
)
def circle_area_m2(diameter_m: float) -> float:
    """Area of a circle, m2."""
    return math.pi * diameter_m**2 / 4


def gauge_area_m2(gauge: float) -> float:
    """Area of an American wire gauge, m2."""
    return circle_area_m2(gauge_diameter_m(gauge))


@formula(
    title=N_("Resistance at another temperature"),
    text="R_T = R_20 · (1 + α · (T − T_20))",
    result=("R_T", "Ω", N_("resistance at that temperature")),
    symbols={
        "ohm_20": ("R_20", "Ω", N_("resistance at 20 °C")),
        "per_k": ("α", "1/K", N_("change per kelvin")),
        "temperature_degc": ("T", "°C", N_("temperature of the wire")),
        "reference_degc": ("T_20", "°C", N_("temperature the first resistance holds at")),
    },
    source=_LINEAR,
)
def at_temperature_ohm(
    ohm_20: float,
    temperature_degc: float,
    per_k: float = table.COPPER_PER_K.value,
    reference_degc: float = table.REFERENCE_DEGC,
) -> float:
    """Resistance (ohm, or ohm/m in and out) at a temperature in degC."""
    return ohm_20 * temperature_factor(temperature_degc, per_k, reference_degc)


def temperature_factor(
    temperature_degc: float,
    per_k: float = table.COPPER_PER_K.value,
    reference_degc: float = table.REFERENCE_DEGC,
) -> float:
    """1 + alpha (T - 20): resistance at a temperature in degC over that at 20 degC."""
    return 1 + per_k * (temperature_degc - reference_degc)


@formula(
    title=N_("Wire resistance from one measured conductor"),
    text="r = (R_read − R_leads) / L",
    result=("r", "Ω/m", N_("resistance of one conductor per metre")),
    symbols={
        "one_conductor_ohm": ("R_read", "Ω", N_("meter reading of one conductor")),
        "leads_ohm": ("R_leads", "Ω", N_("meter reading with its leads touched together")),
        "length_m": ("L", "m", N_("length of that conductor")),
    },
    source=N_("Ohm's law"),
)
def measured_ohm_per_m(one_conductor_ohm: float, leads_ohm: float, length_m: float) -> float:
    """Resistance per metre, ohm/m; ValueError when leads leave nothing or the length is not above zero."""
    return _positive(one_conductor_ohm - leads_ohm) / _positive(length_m)


@formula(
    title=N_("Wire resistance from a measured loop"),
    text="r = (R_loop − R_leads) / (2 · L)",
    result=("r", "Ω/m", N_("resistance of one conductor per metre")),
    symbols={
        "loop_ohm": ("R_loop", "Ω", N_("meter reading of both conductors in series")),
        "leads_ohm": ("R_leads", "Ω", N_("meter reading with its leads touched together")),
        "length_m": ("L", "m", N_("length of one conductor")),
    },
    source=N_("Ohm's law"),
)
def loop_ohm_per_m(loop_ohm: float, leads_ohm: float, length_m: float) -> float:
    """Resistance of one conductor per metre, ohm/m; ValueError as for one conductor."""
    return _positive(loop_ohm - leads_ohm) / (2 * _positive(length_m))


@formula(
    title=N_("Copper area of the same resistance"),
    text="A = ρ_20 / r",
    result=("A", "m2", N_("area of a copper wire of that resistance")),
    symbols={
        "resistivity_ohm_m": ("ρ_20", "Ω m", N_("resistivity of copper at 20 °C")),
        "per_m_ohm": ("r", "Ω/m", N_("resistance of one conductor per metre")),
    },
    source=N_("IEC 60028"),
)
def equivalent_copper_m2(per_m_ohm: float, resistivity_ohm_m: float = table.COPPER_OHM_M.value) -> float:
    """Area in m2 of the copper wire with that resistance per metre (ohm/m)."""
    return resistivity_ohm_m / per_m_ohm


@formula(
    title=N_("Resistance of a length of wire"),
    text="R = r · L · c",
    result=("R", "Ω", N_("resistance of the wire")),
    symbols={
        "per_m_ohm": ("r", "Ω/m", N_("resistance of one conductor per metre")),
        "length_m": ("L", "m", N_("length of the route")),
        "conductors": ("c", "", N_("conductors in series, there and back")),
    },
    source=N_("Ohm's law"),
)
def wire_ohm(per_m_ohm: float, length_m: float, conductors: float = 2) -> float:
    """Resistance of a route, ohm; two conductors there and back unless said otherwise."""
    return per_m_ohm * length_m * conductors


@formula(
    title=N_("Volts lost in a wire"),
    text="V = I · R",
    result=("V", "V", N_("volts lost")),
    symbols={
        "current_a": ("I", "A", N_("current in the wire")),
        "resistance_ohm": ("R", "Ω", N_("resistance there and back")),
    },
    source=N_("Ohm's law"),
)
def voltage_drop_v(current_a: float, resistance_ohm: float) -> float:
    """Volts lost in a resistance."""
    return current_a * resistance_ohm


def _positive(value: float) -> float:
    if not value > 0:
        raise ValueError(f"not above zero: {value}")
    return value
