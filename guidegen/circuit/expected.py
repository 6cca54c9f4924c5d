"""What the meter will show: expected reading and range, volt or ampere."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from guidegen.circuit.points import TestPoint


@dataclass(frozen=True)
class ExpectedReading:
    """One expected reading.

    `quantity` "volts" belongs to `point`; "amperes in line" is the current of
    run `run` (None: all runs) as an in-line meter shows it, its burden
    included.  `low` and `high` hold 95 % of correct builds, the meter's own
    accuracy included.
    """

    quantity: Literal["volts", "amperes in line"]
    expected: float
    low: float
    high: float
    point: TestPoint | None = None
    run: int | None = None
