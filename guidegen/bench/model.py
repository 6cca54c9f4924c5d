"""What a curve makes the meter show on the bench, and how that moves with everything uncertain.

The curve's parameters are its volts at a reference current, the logarithm
of its slope, and its resistance.  Around a point, every reading is solved
again with each parameter and each other uncertain thing moved a little,
all in one go.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import exp, sqrt

import numpy as np
from numpy.typing import NDArray

from guidegen.bench.bench_string import BenchString, States, solve_states
from guidegen.bench.gauss_newton import Linear
from guidegen.bench.readings import Reading
from guidegen.calc.led import Curve
from guidegen.calc.network import Network
from guidegen.circuit.meter import Meter

Floats = NDArray[np.float64]

#: Parameters of a curve in the order of every array over them.
PARAMETERS = ("voltage", "slope", "resistance")
#: How far each is moved to find slopes: V, ln V, ohm; then supply V, resistor, burden ohm, wire share.
_NUDGE = np.array([1e-5, 1e-5, 1e-3, 1e-5, 1e-3, 1e-3, 1e-5])


@dataclass(frozen=True, eq=False)
class Around:
    """Predicted readings (M,) at a point, and how they move.

    `mean_led_a` of the lit LEDs and `brightest_a` of the brightest in each
    reading's state; `wire_v`: volts
    that the string's wire takes on the way to the mean lit bulb;
    `slopes` (M, 3) by parameter; `by_supply`, `by_resistor`, `by_burden`,
    `by_wire` (M,), the last per share of the wires' resistance.
    """

    predicted: Floats
    mean_led_a: Floats
    brightest_a: Floats
    wire_v: Floats
    slopes: Floats
    by_supply: Floats
    by_resistor: Floats
    by_burden: Floats
    by_wire: Floats


@dataclass(frozen=True, eq=False)
class BenchModel:
    """The string and its readings; `reference_a` is where the curve's volts are counted."""

    string: BenchString
    readings: tuple[Reading, ...]
    reference_a: float
    meter: Meter

    @property
    def measured(self) -> Floats:
        """What the meter showed (M,)."""
        return np.array([reading.measured for reading in self.readings])

    @property
    def _volts(self) -> NDArray[np.bool_]:
        return np.array([reading.what == "after resistor" for reading in self.readings])

    def curve(self, point: Floats) -> Curve:
        """The curve with these parameters; ArithmeticError when there is none."""
        voltage_v, log_slope, resistance_ohm = (float(value) for value in point)
        try:
            return Curve(voltage_v, self.reference_a, exp(log_slope), resistance_ohm)
        except ValueError as error:
            raise ArithmeticError(str(error)) from error

    def linear(self, point: Floats) -> Linear:
        """The model near a point, as the fit wants it."""
        around = self.around(point)
        return Linear(self.measured - around.predicted, around.slopes, self.covariance(around))

    def around(self, point: Floats) -> Around:
        """Readings at a point, and how they move."""
        moved = np.vstack((np.zeros(len(_NUDGE)), np.diag(_NUDGE)))
        network = solve_states(self.string, self._states(point, moved), self._start_a(len(moved)))
        count = len(self.readings)
        predicted = self._shown(network)
        slopes = ((predicted[1:] - predicted[0]) / _NUDGE[:, np.newaxis]).T
        return Around(
            predicted[0],
            network.chain_a[:count] / self.string.lit_groups,
            network.group_a.reshape(-1, self.string.run.bulbs)[:count].max(axis=1),
            network.feed_v[:count] - self._mean_bulb_v(network)[:count],
            slopes[:, :3],
            *slopes[:, 3:].T,
        )

    def covariance(self, around: Around) -> Floats:
        """Covariance (M, M) of measured less predicted.

        Each meter value errs on its own; the source's volts err alike in a
        row, resistors and burdens of the same ohms alike everywhere, the
        wires' resistance alike in all.
        """
        rows = self.readings
        parts = [
            _alike(around.by_supply, [r.supply_u_v for r in rows], [r.row for r in rows]),
            _alike(around.by_resistor, [r.resistor_u_ohm for r in rows], [r.resistor_ohm for r in rows]),
            _alike(around.by_burden, [r.burden_u_ohm for r in rows], [r.burden_ohm for r in rows]),
            _alike(around.by_wire, [self.string.wire_u] * len(rows), [0] * len(rows)),
        ]
        own = np.diag([reading.u**2 for reading in rows])
        total: Floats = own + np.sum(parts, axis=0)
        return total

    def by_gain(self, around: Around) -> Floats:
        """How measured less predicted (M,) moves when all the meter's volts are off by one standard gain."""
        supply_v = np.array([r.supply_v for r in self.readings])
        moved: Floats = np.where(self._volts, self.measured, 0.0) - around.by_supply * supply_v
        return moved * self.meter.volts.share / sqrt(3)

    def _start_a(self, copies: int) -> Floats:
        """Group currents to start solving from: as Ohm's law shares them evenly."""
        rough_a = np.array([reading.rough_a for reading in self.readings]) / self.string.lit_groups
        return np.tile(np.repeat(rough_a, self.string.run.bulbs), copies)

    def _shown(self, network: Network) -> Floats:
        """Readings (K, M) of the solved states."""
        count = len(self.readings)
        return np.where(self._volts, network.feed_v.reshape(-1, count), network.chain_a.reshape(-1, count))

    def _mean_bulb_v(self, network: Network) -> Floats:
        """Volts of the mean lit bulb in every state."""
        bulbs_v = network.bulb_v.reshape(-1, self.string.run.bulbs)
        mean_v: Floats = np.average(bulbs_v, axis=1, weights=self.string.run.lit_groups)
        return mean_v

    def _states(self, point: Floats, moved: Floats) -> States:
        curves = [self.curve(point + move[:3]) for move in moved]
        count, rows = len(self.readings), self.readings
        in_line = np.array([r.burden_ohm > 0 for r in rows])
        supply_v, series_ohm = np.array([(r.supply_v, r.series_ohm) for r in rows]).T

        def each(values: list[float]) -> Floats:
            return np.repeat(np.array(values), count)

        return States(
            slope_v=each([curve.slope_v for curve in curves]),
            saturation_a=each([curve.saturation_a for curve in curves]),
            resistance_ohm=each([curve.resistance_ohm for curve in curves]),
            source_v=(supply_v + moved[:, 3:4]).ravel(),
            series_ohm=(series_ohm + moved[:, 4:5] + np.where(in_line, moved[:, 5:6], 0.0)).ravel(),
            wire_factor=each([1 + move[6] for move in moved]),
        )


def _alike(slopes: Floats, uncertainties: list[float], sources: list[float] | list[int]) -> Floats:
    """Covariance (M, M) from things that err alike wherever `sources` are the same."""
    spread = slopes * np.array(uncertainties)
    same = np.equal.outer(np.array(sources), np.array(sources))
    covariance: Floats = np.outer(spread, spread) * same
    return covariance
