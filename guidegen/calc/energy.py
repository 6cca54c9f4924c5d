"""Energy, its cost, and hours on cells."""

from __future__ import annotations

from guidegen.calc.worked import formula
from guidegen.locale import N_


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
