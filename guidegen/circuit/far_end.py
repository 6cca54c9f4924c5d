"""The way to the far end of a run and back: the wire that lies before a short there."""

from __future__ import annotations

import numpy as np

from guidegen.circuit.arrangement import RunPlan
from guidegen.circuit.conditions import Conditions


def far_end_ohm(run: RunPlan, case: Conditions) -> float:
    """Largest resistance from the run's resistor through a short between the rails and back, ohm.

    Feeder, extra wire and string cable count; the LEDs beside the short
    carry next to nothing.  The short lies at the bulb for which the way is
    longest:

    | feed | way there and back |
    |---|---|
    | one end | twice the wire up to the last bulb |
    | middle | twice the extra pair and the longer half |
    | both ends | twice two ways side by side: string from bulb 1, extra pair and string from the last bulb |
    | opposite ends | the string's wire once, whichever bulb, and the extra wire |
    """
    return 2 * case.cable_ohm(run.feeder) + _string_ohm(run, case)


def _string_ohm(run: RunPlan, case: Conditions) -> float:
    per_m = run.conductor.ohm_per_m * case.wire_factor(run.conductor)
    along = np.asarray(run.position_m) * per_m  # from the feed point through the tail to each bulb
    extra = case.cable_ohm(run.extra)
    if run.feed == "middle":
        from_fed = np.abs(along - along[run.fed_bulb - 1])
        return 2 * (extra + float(from_fed.max()))
    if run.feed == "both ends":
        around = extra + along[-1] - along
        total = along + around
        side_by_side = np.divide(along * around, total, out=np.zeros_like(total), where=total > 0)
        return 2 * float(side_by_side.max())
    if run.feed == "opposite ends":
        return float(along[-1]) + extra
    return 2 * float(along[-1])
