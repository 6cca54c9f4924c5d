"""Energy, its cost, and hours on cells."""

from __future__ import annotations

from guidegen.calc.worked import formula
from guidegen.locale import N_


@formula(
    title=N_("Watts from the wall"),
    text="P = U · I / η",
    result=("P", "W", N_("watts from the wall")),
    symbols={
        "voltage_v": ("U", "V", N_("volts at the supply's output, loaded")),
        "current_a": ("I", "A", N_("current of all runs")),
        "efficiency": ("η", "", N_("watts it gives over watts it takes")),
    },
    source=N_("Definition of efficiency"),
)
def wall_w(voltage_v: float, current_a: float, efficiency: float) -> float:
    """Watts that a supply takes from the outlet while it gives `current_a` at `voltage_v`."""
    return voltage_v * current_a / efficiency


@formula(
    title=N_("Energy of a day"),
    text="E = (P · t + P_0 · (24 − t)) / 1000",
    result=("E", "kWh", N_("energy of a day")),
    symbols={
        "on_w": ("P", "W", N_("watts while the lights are on")),
        "on_h": ("t", "h", N_("hours on in a day")),
        "off_w": ("P_0", "W", N_("watts while they are off")),
    },
    source=N_("Definition of the kilowatt hour"),
)
def day_kwh(on_w: float, on_h: float, off_w: float) -> float:
    """Kilowatt hours of a day with the lights on for `on_h` hours and `off_w` drawn for the rest of it."""
    return (on_w * on_h + off_w * (24 - on_h)) / 1000


@formula(
    title=N_("Energy used"),
    text="E = P · t / 1000",
    result=("E", "kWh", N_("energy")),
    symbols={
        "power_w": ("P", "W", N_("watts")),
        "time_h": ("t", "h", N_("hours")),
    },
    source=N_("Definition of the kilowatt hour"),
)
def energy_kwh(power_w: float, time_h: float) -> float:
    """Kilowatt hours of watts over hours."""
    return power_w * time_h / 1000


@formula(
    title=N_("Cost of the energy"),
    text="C = E · c",
    result=("C", "", N_("cost")),
    symbols={
        "used_kwh": ("E", "kWh", N_("energy")),
        "price_per_kwh": ("c", "1/kWh", N_("price of a kilowatt hour")),
    },
    source=N_("Definition"),
)
def cost(used_kwh: float, price_per_kwh: float) -> float:
    """Money for kilowatt hours."""
    return used_kwh * price_per_kwh


@formula(
    title=N_("Hours on cells"),
    text="t = Q / I",
    result=("t", "h", N_("hours until the cells are flat, about")),
    symbols={
        "capacity_ah": ("Q", "A h", N_("capacity of one cell")),
        "current_a": ("I", "A", N_("current")),
    },
    source=N_("Definition of the ampere hour"),
)
def cell_hours(capacity_ah: float, current_a: float) -> float:
    """Hours a capacity (ampere hours) lasts at a current (ampere)."""
    return capacity_ah / current_a


def pay_back_days(price: float, saved_per_day: float) -> float:
    """Days after which something has saved its price; infinity when it saves nothing."""
    return price / saved_per_day if saved_per_day > 0 else float("inf")
