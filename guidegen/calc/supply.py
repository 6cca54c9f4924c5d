"""The supply and simple circuits on it: volts, amperes, ohms, watts."""

from __future__ import annotations

from guidegen.calc.worked import formula
from guidegen.locale import N_
from guidegen.tables.limits import LIMITED_POWER

_OHM = N_("Ohm's law")
_TOLERANCE = N_("Meaning of tolerance")


@formula(
    title=N_("Watts from the supply"),
    text="P = V · I",
    result=("P", "W", N_("watts")),
    symbols={
        "voltage_v": ("V", "V", N_("no-load voltage of the supply")),
        "current_a": ("I", "A", N_("current of all runs together")),
    },
    source=N_("Joule's law"),
)
def power_w(voltage_v: float, current_a: float) -> float:
    """Watts at volts and amperes."""
    return voltage_v * current_a


@formula(
    title=N_("Load of the supply"),
    text="k = I / I_r",
    result=("k", "", N_("share of its rated current")),
    symbols={
        "current_a": ("I", "A", N_("current of all runs together")),
        "rated_a": ("I_r", "A", N_("rated current of the supply")),
    },
    source=N_("Definition"),
)
def load_share(current_a: float, rated_a: float) -> float:
    """Current over the rated current."""
    return current_a / rated_a


@formula(
    title=N_("Upper supply voltage"),
    text="V_max = V · (1 + t)",
    result=("V_max", "V", N_("upper supply voltage")),
    symbols={
        "voltage_v": ("V", "V", N_("no-load voltage of the supply")),
        "tolerance": ("t", "", N_("tolerance")),
    },
    source=_TOLERANCE,
)
def upper_voltage_v(voltage_v: float, tolerance: float) -> float:
    """Highest volts within a tolerance (ratio)."""
    return voltage_v * (1 + tolerance)


@formula(
    title=N_("Lower supply voltage"),
    text="V_min = V · (1 − t)",
    result=("V_min", "V", N_("lower supply voltage")),
    symbols={
        "voltage_v": ("V", "V", N_("no-load voltage of the supply")),
        "tolerance": ("t", "", N_("tolerance")),
    },
    source=_TOLERANCE,
)
def lower_voltage_v(voltage_v: float, tolerance: float) -> float:
    """Lowest volts within a tolerance (ratio)."""
    return voltage_v * (1 - tolerance)


@formula(
    title=N_("Volts left after a resistance"),
    text="V_2 = V_1 − I · R",
    result=("V_2", "V", N_("volts behind it")),
    symbols={
        "voltage_v": ("V_1", "V", N_("volts ahead of it")),
        "current_a": ("I", "A", N_("current through it")),
        "resistance_ohm": ("R", "Ω", N_("resistance")),
    },
    source=_OHM,
)
def voltage_after_v(voltage_v: float, current_a: float, resistance_ohm: float) -> float:
    """Volts behind a resistance that carries a current."""
    return voltage_v - current_a * resistance_ohm


@formula(
    title=N_("Current through a resistance"),
    text="I = (V_1 − V_2) / R",
    result=("I", "A", N_("current through it")),
    symbols={
        "voltage_v": ("V_1", "V", N_("volts ahead of it")),
        "after_v": ("V_2", "V", N_("volts behind it")),
        "resistance_ohm": ("R", "Ω", N_("resistance")),
    },
    source=_OHM,
)
def current_through_a(voltage_v: float, resistance_ohm: float, after_v: float = 0.0) -> float:
    """Current that the volts across a resistance (above zero) drive; nothing behind it unless given."""
    return (voltage_v - after_v) / resistance_ohm


@formula(
    title=N_("Series resistor for a wished current"),
    text="R = (V − s · V_led) / I",
    result=("R", "Ω", N_("series resistor")),
    symbols={
        "voltage_v": ("V", "V", N_("supply voltage")),
        "series": ("s", "", N_("LEDs in series")),
        "led_v": ("V_led", "V", N_("volts across one LED at that current")),
        "current_a": ("I", "A", N_("wished current")),
    },
    source=_OHM,
)
def series_resistor_ohm(voltage_v: float, led_v: float, current_a: float, series: float = 1) -> float:
    """Resistor for one chain of LEDs; not above zero when the supply is too low."""
    return (voltage_v - series * led_v) / current_a


def limited_power_va(open_circuit_v: float) -> float | None:
    """Most volt-amperes of a limited power source at its open-circuit volts; None above the table's 30 V."""
    for row in LIMITED_POWER:
        if open_circuit_v <= row.to_v:
            return row.va if row.va_per_v is None else row.va_per_v * open_circuit_v
    return None


def within_limited_power(open_circuit_v: float, current_a: float, power_va: float) -> bool:
    """Whether largest current and volt-amperes stay within a limited power source's."""
    most_va = limited_power_va(open_circuit_v)
    most_a = max(row.current_a for row in LIMITED_POWER)
    return most_va is not None and current_a <= most_a and power_va <= most_va
