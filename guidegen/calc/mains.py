"""What a small supply takes from the mains, estimated from what it gives.  Watts, volt-amperes, amperes."""

from __future__ import annotations


def input_w(output_w: float, efficiency: float) -> float:
    """Watts taken in, P_in = P_out / e; `efficiency` is a ratio above 0."""
    return output_w / efficiency


def apparent_va(power_w: float, power_factor: float) -> float:
    """Apparent power, S = P / pf in volt-amperes; `power_factor` is a ratio above 0."""
    return power_w / power_factor


def mains_a(apparent: float, mains_v: float) -> float:
    """Current on the mains side, I = S / V: volt-amperes over volts."""
    return apparent / mains_v
