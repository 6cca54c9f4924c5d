"""A string's own LED curve from bench readings, through the solved string.

One reading fixes the voltage.  Slope and resistance are set free only when
the readings, with everything uncertain about them, pin them better than
what is known of them without; else they are held at that and their whole
uncertainty is carried along.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from functools import lru_cache
from math import log

import numpy as np
from numpy.typing import NDArray

from guidegen.bench import notes as look
from guidegen.bench.bench_string import bench_string
from guidegen.bench.gauss_newton import Fitted, Linear, Pull, chi_squared, least_squares, normal_matrix
from guidegen.bench.known import COVER_95, THERMAL_V, Known, known_of
from guidegen.bench.model import PARAMETERS, BenchModel
from guidegen.bench.notes import BenchNote
from guidegen.bench.readings import Reading, What, readings_of
from guidegen.calc.led import Curve, forward_voltage, warmed
from guidegen.circuit.arrangement import LedEstimate
from guidegen.circuit.meter import Meter
from guidegen.project.schema import LightString
from guidegen.tables.conductors import REFERENCE_DEGC
from guidegen.tables.leds import VOLTS_PER_K

Floats = NDArray[np.float64]
Free = NDArray[np.bool_]

#: Longest step of volts, ln(slope) and ohms in the fit.
_SCALE = np.array([0.3, 0.5, 10.0])
#: Least and most volts, ln(slope / 1 V) and ohms that the fit considers: no diode's slope is under
#: kT/q, no LED's known to be over half a volt.
_LEAST = np.array([0.05, log(THERMAL_V), 0.0])
_MOST = np.array([20.0, log(0.5), 2000.0])
#: Readings count as silent on a parameter below this share of what is known of it without.
_SILENT = 1e-9
#: The likeliest curve only serves to judge what the readings pin: it need not settle further.
ROUGHLY = 1e-3


@dataclass(frozen=True)
class ReadingFit:
    """One reading beside what the fitted curve predicts; volt or ampere, `u` standard."""

    row: int
    what: What
    measured: float
    predicted: float
    u: float


@dataclass(frozen=True)
class BenchFit:
    """What the bench tells of a string's LEDs.

    `covariance`: of the curve's volts, slope (V) and resistance (ohm), in
    that order, at the curve's own current; held parameters are in it with
    what is known of them.  `chi_squared` over `freedom` degrees.
    """

    estimate: LedEstimate
    notes: tuple[BenchNote, ...]
    readings: tuple[ReadingFit, ...]
    covariance: tuple[tuple[float, ...], ...]
    chi_squared: float = 0.0
    freedom: int = 0


def fit_led(kind: LightString) -> LedEstimate:
    """What is known of the string's LEDs: from the bench, else as given, else typical."""
    return fit_string(kind).estimate


def fit_string(
    kind: LightString, supply_label_v: float | None = None, meter: Meter | None = None
) -> BenchFit:
    """Fit the string's bench readings, and call out what cannot be true.

    `supply_label_v`: volts on the label of the project's supply, V, if a
    reading may have been taken on it; `meter`: its accuracy, else a usual one.
    """
    return _fitted(kind, frozenset(kind.model_fields_set), supply_label_v, meter or Meter())


@lru_cache(maxsize=64)
def _fitted(
    kind: LightString, _stated: frozenset[str], supply_label_v: float | None, meter: Meter
) -> BenchFit:
    """The same, remembered: rules and pages ask for it again.

    Kinds are equal if their values are, whether stated or by default, but a
    colour counts only where it is stated: hence `_stated`.
    """
    known = known_of(kind.led)
    every = readings_of(kind.bench, meter)
    early = (*look.wire(kind), *look.labels(kind, supply_label_v), *look.impossible(every))
    usable = tuple(reading for reading in every if reading.tells)
    if not usable:
        return _unread(known, early)
    try:
        with np.errstate(divide="raise", invalid="raise"):
            return _fit(kind, known, usable, early, meter)
    except (ArithmeticError, np.linalg.LinAlgError):
        return _unread(known, (*early, BenchNote("not fitted")))


def _unread(known: Known, found: tuple[BenchNote, ...]) -> BenchFit:
    return BenchFit(known.estimate, found, (), _rows(_in_volts(np.diag(_squares(known)), known.curve)))


def _fit(
    kind: LightString, known: Known, readings: tuple[Reading, ...], early: tuple[BenchNote, ...], meter: Meter
) -> BenchFit:
    string = bench_string(kind, known.estimate)
    model = BenchModel(string, readings, readings[0].rough_a / string.lit_groups, meter)
    fitted, free = _best(model, known)
    model, point = _at_first_row(model, fitted.parameters)
    around = model.around(point)
    local = Linear(model.measured - around.predicted, around.slopes, model.covariance(around))
    curve = model.curve(point)
    covariance = _in_volts(_covariance(local, free, _squares(known), model.by_gain(around)), curve)
    return BenchFit(
        estimate=_cooled(_estimate(curve, covariance, free, known), kind.bench_temperature),
        notes=(*early, *look.disagreements(kind, model, around)),
        readings=tuple(
            ReadingFit(r.row, r.what, r.measured, float(predicted), float(u))
            for r, predicted, u in zip(
                readings, around.predicted, np.sqrt(np.diag(local.covariance)), strict=True
            )
        ),
        covariance=_rows(covariance),
        chi_squared=chi_squared(local),
        freedom=_freedom(local, free),
    )


def _cooled(estimate: LedEstimate, bench_degc: float) -> LedEstimate:
    """The estimate at 20 degC, where nominal figures hold, of one made at the bench's air."""
    change_k = REFERENCE_DEGC - bench_degc
    curve = warmed(estimate.curve, change_k, VOLTS_PER_K.typical)
    change_v = curve.voltage_v - estimate.curve.voltage_v
    return replace(
        estimate,
        curve=curve,
        voltage_low_v=estimate.voltage_low_v + change_v,
        voltage_high_v=estimate.voltage_high_v + change_v,
    )


def _best(model: BenchModel, known: Known) -> tuple[Fitted, Free]:
    """The curve with as much set free as the readings pin, and what that is.

    What they pin is judged at the likeliest curve, readings and previous
    knowledge together; what is then set free follows the readings alone.
    """
    start = _start(model, known)
    squares = _squares(known)
    bounds = np.minimum(_LEAST, start), np.maximum(_MOST, start)
    pull = Pull(start, np.array([0.0, 1 / squares[1], 1 / squares[2]]))
    likeliest = least_squares(model.linear, start, np.ones(3, bool), _SCALE, bounds, pull, ROUGHLY)
    for free in _pinned(likeliest.local, squares):
        here = np.where(free, likeliest.parameters, start)
        fitted = least_squares(model.linear, here, free, _SCALE, bounds)
        if fitted.settled:
            return fitted, free
    raise ArithmeticError("no curve meets the readings")


def _start(model: BenchModel, known: Known) -> Floats:
    """Volts by Ohm's law at the first reading's string; slope and resistance as known."""
    run, curve = model.string.run, known.curve
    rough_v = model.readings[0].rough_v / run.leds_in_series
    rough_v -= model.reference_a * run.group_ohm / run.leds_in_series
    least_v = 0.5 + model.reference_a * curve.resistance_ohm
    return np.array([max(rough_v, least_v), log(curve.slope_v), curve.resistance_ohm])


def _pinned(local: Linear, squares: Floats) -> Iterator[Free]:
    """Sets of free parameters that the readings pin better than they are known without, largest first."""
    for names in (PARAMETERS, ("voltage", "slope"), ("voltage", "resistance")):
        free = np.isin(PARAMETERS, names)
        if free.sum() <= len(local.residual) and np.all(_alone(local, free, squares)[free] < squares[free]):
            yield free
    yield np.isin(PARAMETERS, ("voltage",))


def _alone(local: Linear, free: Free, squares: Floats) -> Floats:
    """Variances (3,) when the free parameters are known from the readings only; infinite for volts' own."""
    size = np.sqrt(squares)
    precision = normal_matrix(local) * np.outer(size, size) + np.diag(np.where(free, _SILENT, 1.0))
    variances: Floats = np.diag(np.linalg.inv(precision)) * squares
    return np.where(np.isin(PARAMETERS, "voltage"), 0.0, variances)


def _at_first_row(model: BenchModel, point: Floats) -> tuple[BenchModel, Floats]:
    """The same curve with its volts counted at the mean LED current of the first row."""
    reference_a = float(model.around(point).mean_led_a[0])
    voltage_v = forward_voltage(model.curve(point), reference_a)
    return replace(model, reference_a=reference_a), np.array([voltage_v, point[1], point[2]])


def _covariance(local: Linear, free: Free, squares: Floats, gain: Floats) -> Floats:
    """Covariance (3, 3) of volts, ln(slope) and resistance.

    The readings' own share grows when they disagree by more than they
    should; held parameters bring what is known of them, and the meter's
    gain, which all its volts share, comes on top.
    """
    slopes, held_slopes = local.slopes[:, free], local.slopes[:, ~free]
    weighted = np.linalg.solve(local.covariance, slopes)
    own = np.linalg.inv(slopes.T @ weighted)
    follow = own @ weighted.T
    held = np.diag(squares[~free])
    freedom = _freedom(local, free)
    disagree = max(1.0, chi_squared(local) / freedom) if freedom else 1.0
    by_held, by_gain = follow @ held_slopes, follow @ gain
    covariance = np.empty((3, 3))
    covariance[np.ix_(free, free)] = own * disagree + by_held @ held @ by_held.T + np.outer(by_gain, by_gain)
    covariance[np.ix_(free, ~free)] = -by_held @ held
    covariance[np.ix_(~free, free)] = -(by_held @ held).T
    covariance[np.ix_(~free, ~free)] = held
    return covariance


def _freedom(local: Linear, free: Free) -> int:
    return max(len(local.residual) - int(free.sum()), 0)


def _squares(known: Known) -> Floats:
    """Variances (3,) of volts, ln(slope) and resistance without readings."""
    return np.array(known.held_u) ** 2


def _in_volts(covariance: Floats, curve: Curve) -> Floats:
    """Covariance of the slope itself in place of that of its logarithm."""
    size = np.array([1.0, curve.slope_v, 1.0])
    return covariance * np.outer(size, size)


def _estimate(curve: Curve, covariance: Floats, free: Free, known: Known) -> LedEstimate:
    voltage_u_v, slope_u_v, resistance_u_ohm = (float(u) for u in np.sqrt(np.diag(covariance)))
    return LedEstimate(
        curve=curve,
        source="bench",
        voltage_low_v=curve.voltage_v - COVER_95 * voltage_u_v,
        voltage_high_v=curve.voltage_v + COVER_95 * voltage_u_v,
        fitted=tuple(name for name, fitted in zip(PARAMETERS, free, strict=True) if fitted),
        colour=known.colour,
        voltage_u_v=voltage_u_v,
        slope_u_v=slope_u_v,
        resistance_u_ohm=resistance_u_ohm,
        covariance=_rows(covariance),
    )


def _rows(covariance: Floats) -> tuple[tuple[float, ...], ...]:
    return tuple(tuple(float(value) for value in row) for row in covariance)
