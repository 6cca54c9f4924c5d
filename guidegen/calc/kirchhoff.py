"""A solved circuit put back into Kirchhoff's law: left, right, and what is left over."""

from __future__ import annotations

from guidegen.calc.worked import formula
from guidegen.locale import N_

_LAW = N_("Kirchhoff's voltage law")


@formula(
    title=N_("Volts around the loop through one bulb"),
    text="V_sum = I_all · R_c + I · (R + R_w) + V_rails + V_bulb",
    result=("V_sum", "V", N_("volts used around the loop; must equal the supply's")),
    symbols={
        "total_a": ("I_all", "A", N_("current of all runs together")),
        "common_ohm": ("R_c", "Ω", N_("resistance inside the supply and of the shared lead")),
        "run_a": ("I", "A", N_("current of the run")),
        "resistor_ohm": ("R", "Ω", N_("series resistor of the run")),
        "feeder_ohm": ("R_w", "Ω", N_("resistance of the feeder, there and back")),
        "rails_v": ("V_rails", "V", N_("volts lost in the run's own wires up to the bulb, there and back")),
        "bulb_v": ("V_bulb", "V", N_("volts across the bulb")),
    },
    source=_LAW,
)
def loop_sum_v(
    total_a: float,
    common_ohm: float,
    run_a: float,
    resistor_ohm: float,
    feeder_ohm: float,
    rails_v: float,
    bulb_v: float,
) -> float:
    """Volts used from the supply through one bulb and back."""
    return total_a * common_ohm + run_a * (resistor_ohm + feeder_ohm) + rails_v + bulb_v


@formula(
    title=N_("What is left over"),
    text="ΔV = V_0 − V_sum",
    result=("ΔV", "V", N_("volts left over; nothing but rounding")),
    symbols={
        "source_v": ("V_0", "V", N_("no-load voltage of the supply")),
        "sum_v": ("V_sum", "V", N_("volts used around the loop")),
    },
    source=_LAW,
)
def residual_v(source_v: float, sum_v: float) -> float:
    """Volts by which a solution misses Kirchhoff's voltage law."""
    return source_v - sum_v
