"""Wind and ice on a hanging wire with bulbs, per metre of it.

Simple and on the safe side: the wind blows square to the wire, on all of it
at once, and on the ice if there is any.
"""

from __future__ import annotations

import math

from guidegen.tables.hanging import GRAVITY

#: Density of air at 10 degC and sea level, kg/m3 (standard air, from memory).
AIR_KG_PER_M3 = 1.25
#: Density of glaze ice, kg/m3 (common value for overhead lines, from memory).
ICE_KG_PER_M3 = 900.0
#: Drag of a thin cylinder and, on the safe side, of a bulb (textbook value for a cylinder, from memory).
DRAG = 1.2


def ice_n_per_m(diameter_m: float, thickness_m: float) -> float:
    """Weight of a coat of ice of even thickness round a wire: pi t (d + t) rho g, N/m."""
    return math.pi * thickness_m * (diameter_m + thickness_m) * ICE_KG_PER_M3 * GRAVITY


def bulb_ice_n(size_m: float, thickness_m: float) -> float:
    """Weight of the coat on a bulb taken as a ball, N."""
    outer, inner = size_m / 2 + thickness_m, size_m / 2
    return 4 / 3 * math.pi * (outer**3 - inner**3) * ICE_KG_PER_M3 * GRAVITY


def wind_pa(speed_m_s: float) -> float:
    """Pressure of the wind: rho v^2 / 2, Pa."""
    return AIR_KG_PER_M3 * speed_m_s**2 / 2


def wind_n_per_m(speed_m_s: float, width_m: float) -> float:
    """Force of the wind on something `width_m` wide, per metre of it, N/m."""
    return DRAG * wind_pa(speed_m_s) * width_m


def together_n_per_m(down_n_per_m: float, sideways_n_per_m: float) -> float:
    """Weight and wind together, N/m: the wire hangs aslant under both."""
    return math.hypot(down_n_per_m, sideways_n_per_m)
