"""What the meter will show: expected reading and range, volt or ampere."""

from __future__ import annotations

from dataclasses import dataclass
from math import inf
from typing import Literal

from guidegen.circuit.points import TestPoint

Verdict = Literal["in range", "borderline", "out of range"]


@dataclass(frozen=True)
class ExpectedReading:
    """One expected reading.

    `quantity` "volts" belongs to `point`, or to bulb `bulb` of run `run`
    where that is no test point; "amperes in line" is the current of run
    `run` (None: all runs) as an in-line meter shows it, its burden included.
    `low` and `high` hold 95 % of correct builds, the meter's own accuracy
    included; in 95 % of correct builds all readings of the sheet at once lie
    between their `out_low` and `out_high`.
    """

    quantity: Literal["volts", "amperes in line"]
    expected: float
    low: float
    high: float
    point: TestPoint | None = None
    run: int | None = None
    bulb: int | None = None
    out_low: float = 0.0
    out_high: float = inf

    def verdict(self, shown: float) -> Verdict:
        """What a reading tells: out only if so far off that hardly any correct build has such a reading."""
        if not self.out_low <= shown <= self.out_high:
            return "out of range"
        return "in range" if self.low <= shown <= self.high else "borderline"
