"""Runs laid along a line one behind the other, with the bulb first that is to be first."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from guidegen.circuit.arrangement import Floats


@dataclass(frozen=True)
class Laid:
    """Wire of one run along its line, metre from the first hook.

    From `start_m` to `end_m`; `turned`: its last bulb comes first, and its
    lead-in is at the end.
    """

    start_m: float
    end_m: float
    turned: bool

    def bulbs_m(self, position_m: Floats) -> Floats:
        """Places of its bulbs, counted from the fed end, from their places along the run (n,)."""
        turned: Floats = self.end_m - position_m
        return turned if self.turned else self.start_m + position_m

    def at_m(self, position_m: float) -> float:
        """A place along the run as a place along the line."""
        return float(self.bulbs_m(np.array(position_m)))


def lay(
    before: Laid | None,
    whole_m: float,
    lead_m: float,
    spacing_m: float,
    *,
    turned: bool,
    starts_at: str = "first bulb",
) -> Laid:
    """The next run, `whole_m` from the begin of its lead-in of `lead_m` to its last bulb.

    The line's first run begins with its tail or with a bulb at the first
    hook, any other where the one before it ends; where two last bulbs meet,
    they keep one spacing apart.
    """
    if before is None:
        tail_first = not turned and starts_at == "first bulb"
        start_m = -lead_m if tail_first else 0.0
    else:
        start_m = before.end_m + (spacing_m if turned and not before.turned else 0.0)
    return Laid(start_m, start_m + whole_m, turned)
