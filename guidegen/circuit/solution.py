"""What a solved arrangement is, and the worst cases beside it."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]


@dataclass(frozen=True, eq=False)
class RunSolution:
    """Volts and currents of one run.

    `after_resistor_v`: between the two feed conductors right behind the
    resistor, at the supply end of the feeder; `feed_v`: at the feeder's far
    end.  Arrays (n,) over the bulbs: `bulb_v` between a bulb's terminals,
    `plus_v` and `minus_v` of its terminals above the supply's -; `bulb_a`;
    `led_a` of one lit LED (0 in a dark bulb); `light` over the brightest
    bulb of the installation.  `evenness` is that of the run itself.
    """

    name: str
    current_a: float
    resistor_v: float
    resistor_w: float
    after_resistor_v: float
    feed_v: float
    plus_v: Floats
    minus_v: Floats
    bulb_v: Floats
    bulb_a: Floats
    led_a: Floats
    lit: NDArray[np.bool_]
    light: Floats
    evenness: float
    seen_evenness: float
    mean_led_a: float


@dataclass(frozen=True, eq=False)
class Solution:
    """A solved installation.

    `terminal_v`: at the supply's own terminals, loaded; `bus_v`: where the
    shared lead ends and the runs branch; `power_w`: no-load volts x current;
    `load`: current over the rating; `residual`: largest breach of
    Kirchhoff's current law over the total current; `imbalance`: watts
    delivered less watts used, over watts delivered.
    """

    source_v: float
    terminal_v: float
    bus_v: float
    supply_a: float
    power_w: float
    load: float
    evenness: float
    runs: tuple[RunSolution, ...]
    residual: float
    imbalance: float
    steps: int


@dataclass(frozen=True)
class RunMargins:
    """Worst cases of one run, each at its own corner.

    `led_max_a`: mean LED of the brightest bulb; `low_led_a`: one LED that
    takes the low end of the spread among nominal ones in that bulb;
    `current_max_a`; `resistor_w`: watts at that corner; `shorted_w`: upper
    supply squared over lower resistor; `last_light_low`: light of the
    dimmest bulb at its own corner, over the nominal brightest bulb;
    `led_min_a`: its LED current there.
    """

    led_max_a: float
    low_led_a: float
    current_max_a: float
    resistor_w: float
    shorted_w: float
    led_min_a: float
    last_light_low: float


@dataclass(frozen=True)
class Margins:
    """Worst cases of the installation; `load` is supply current over its rating."""

    supply_a: float
    load: float
    runs: tuple[RunMargins, ...]


@dataclass(frozen=True)
class Section:
    """One wire section judged on the largest current that can flow in it for long.

    `key` is lead, feeder, extra or string; `run` the run's name (empty for the
    shared lead); `ahead_ohm` the lower resistance ahead of it; `lasting_a` the
    current; `limit_a` the table limit of one conductor; `holds` whether
    lasting_a <= 1.45 limit_a.
    """

    key: str
    run: str
    lasting_a: float
    limit_a: float
    ahead_ohm: float
    running_a: float
    holds: bool
    inferred: bool
    area_m2: float


@dataclass(frozen=True)
class Protection:
    """What the fuse does to a short.

    `must_open_a`: current at which it is sure to open; `fault_a`: what the
    supply is sure to give into a short right behind the fuse;
    `fault_after_resistor_a` (one a run): into a short behind the run's
    resistor; `fault_far_end_a` (one a run): into a short at the place of the
    run with the most wire before it; `sure`, `sure_after_resistor` and
    `sure_far_end` likewise.  `far_end_w` (one a run): the most watts that the
    run's resistor takes while the far short lasts.
    """

    must_open_a: float
    fault_a: float
    sure: bool
    fault_after_resistor_a: tuple[float, ...]
    sure_after_resistor: tuple[bool, ...]
    fault_far_end_a: tuple[float, ...]
    sure_far_end: tuple[bool, ...]
    far_end_w: tuple[float, ...]
    sections: tuple[Section, ...]

    def lasting_w(self, run: int, shorted_w: float) -> float:
        """Most watts of a run's resistor in a short that the fuse is not sure to end; 0 if it ends all.

        `shorted_w`: its watts in a short right behind it (`RunMargins`).
        """
        behind = 0.0 if self.sure_after_resistor[run] else shorted_w
        far = 0.0 if self.sure_far_end[run] else self.far_end_w[run]
        return max(behind, far)

    def sure_everywhere(self, run: int) -> bool:
        """Whether the fuse is sure to end a short anywhere behind a run's resistor."""
        return self.sure_after_resistor[run] and self.sure_far_end[run]
