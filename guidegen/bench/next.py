"""Which one or two bench readings would narrow the predicted LED currents most, and by how much.

Every reading that a maker could take of one whole string without overloading it is worked out with
the curve as known now; in the linear neighbourhood of that curve its use is
the uncertainty it takes away.  The best one and the best two are then put
through the fit itself, as if they had been read, so that what is promised is
what the fit will say.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import combinations

import numpy as np
from numpy.typing import NDArray

from guidegen.bench.bench_string import BenchString, bench_string
from guidegen.bench.fit import fit_string
from guidegen.bench.known import COVER_95
from guidegen.bench.model import BenchModel
from guidegen.bench.notes import CELL_LABEL_V
from guidegen.bench.predict import moved, predict, spreads
from guidegen.bench.readings import Reading, What, readings_of
from guidegen.calc.led import Curve, forward_voltage
from guidegen.calc.preferred import not_below, smallest_not_below
from guidegen.circuit.arrangement import Arrangement
from guidegen.circuit.meter import Meter
from guidegen.circuit.solve import solve
from guidegen.project.schema import BenchReading, LightString, Project
from guidegen.tables.leds import TYPICAL

Floats = NDArray[np.float64]

#: LED currents that are tried on the bench, over the typical curve's; never over the LED's limit.
_CURRENTS = (0.1, 0.2, 0.4, 0.7, 1.0, 1.5, 2.5)
_CURRENT_A = TYPICAL["white"].current_a
#: How many currents are tried in their place where the resistors are given, so that none is passed over.
_FINE = 40
#: Volts that a resistor must take for its current to be told from them.
_LEAST_DROP_V = 0.3
#: Readings are worth taking if they leave less than this share of the range; own assumption.
WORTH = 0.95


@dataclass(frozen=True)
class Suggestion:
    """One reading to take: `what` to read on a source of `supply_v` behind `resistor_ohm`.

    `expected` volt or ampere, by what is known now; a current with a usual
    meter's burden in line.
    """

    what: What
    supply_v: float
    resistor_ohm: float
    expected: float


@dataclass(frozen=True)
class NextReadings:
    """What readings would do for a string whose bench is empty (or thin).

    `now`: half-width of the 95 % range of the runs' mean LED current over
    its value, by the LED curve alone, in the worst run; `after_one` and
    `after_two` the same once `one` or both of `two` are read.
    """

    now: float
    one: Suggestion
    after_one: float
    two: tuple[Suggestion, Suggestion]
    after_two: float

    @property
    def one_gains(self) -> bool:
        """Whether one reading narrows the range by enough to be worth it."""
        return self.after_one < WORTH * self.now

    @property
    def two_gain(self) -> bool:
        """Whether both readings narrow it by enough, and by more than the best single one."""
        return self.after_two < WORTH * min(self.now, self.after_one if self.one_gains else self.now)

    @property
    def asked(self) -> tuple[Suggestion, ...]:
        """The readings that are worth it."""
        return (*((self.one,) if self.one_gains else ()), *(self.two if self.two_gain else ()))


def led_currents(arrangement: Arrangement, string: str) -> Callable[[Curve], Floats]:
    """How the mean LED current (A) of every run of that string follows from its curve."""

    def work_out(curve: Curve) -> Floats:
        runs = tuple(
            replace(run, led=replace(run.led, curve=curve)) if run.string == string else run
            for run in arrangement.runs
        )
        solved = solve(replace(arrangement, runs=runs)).runs
        mean_a = [found.mean_led_a for run, found in zip(runs, solved, strict=True) if run.string == string]
        return np.array(mean_a)

    return work_out


def next_readings(
    kind: LightString,
    sources_v: tuple[float, ...],
    most_led_a: float,
    work_out: Callable[[Curve], Floats],
    meter: Meter | None = None,
    at_hand_ohm: Sequence[float] | None = None,
) -> NextReadings | None:
    """The best one and the best two readings to take next; None when nothing can be read.

    `sources_v`: volts of the sources at hand, V; `most_led_a`: largest
    current of the mean LED of any bulb, A; `work_out`: what is to be predicted, such as
    `led_currents`, an array (K,); `at_hand_ohm`: the resistors there are, ohm, any preferred value if None.
    """
    used = meter or Meter()
    known = fit_string(kind, meter=used)
    string = bench_string(kind, known.estimate)
    rows = tuple(_rows(string, known.estimate.curve, sources_v, most_led_a, used.burden_ohm, at_hand_ohm))
    if not rows:
        return None
    model = BenchModel(string, readings_of(rows, used), known.estimate.curve.current_a, used)
    model = _as_expected(model, known.estimate.curve, most_led_a)
    if len(model.readings) < 2:
        return None
    one, two = _best(model, known.estimate.curve, np.array(known.covariance), work_out)

    def spread(readings: tuple[Reading, ...]) -> float:
        there = kind.model_copy(update={"bench": (*kind.bench, *(_as_row(each) for each in readings))})
        fit = fit_string(there, meter=used)
        found = predict(fit.estimate.curve, fit.covariance, work_out)
        return float(np.max(COVER_95 * found.u / found.value))

    after_one, after_two = spread((one,)), spread(two)
    return NextReadings(
        now=spread(()),
        one=_suggest(one),
        after_one=after_one,
        two=(_suggest(two[0]), _suggest(two[1])),
        after_two=after_two,
    )


def readings_to_take(
    project: Project,
    arrangement: Arrangement,
    meter: Meter | None = None,
    at_hand_ohm: Sequence[float] | None = None,
) -> dict[str, NextReadings]:
    """By kind of string in use without a bench reading: what to read next of one whole string.

    On the project's own supply, and on the cells the string came with; with
    the resistors `at_hand_ohm` on the supply alone.  What gains nothing is
    left out.
    """
    found = {}
    for name in dict.fromkeys(run.string for run in arrangement.runs):
        kind = project.strings[name]
        limit = next(run.led_limit for run in arrangement.runs if run.string == name)
        sources_v = [project.supply.voltage]
        if kind.came_with is not None and at_hand_ohm is None:
            sources_v.append(kind.came_with.cells * CELL_LABEL_V[kind.came_with.size])
        work_out = led_currents(arrangement, name)
        if not kind.bench:
            found[name] = next_readings(kind, tuple(sources_v), limit.current_a, work_out, meter, at_hand_ohm)
    return {
        name: each for name, each in found.items() if each is not None and (each.one_gains or each.two_gain)
    }


def _rows(
    string: BenchString,
    curve: Curve,
    sources_v: tuple[float, ...],
    most_led_a: float,
    burden_ohm: float,
    at_hand_ohm: Sequence[float] | None = None,
) -> Iterator[BenchReading]:
    """Sources and resistors that bring the LEDs near the currents to try, each once."""
    seen: set[tuple[float, float]] = set()
    currents = np.minimum(np.array(_CURRENTS) * _CURRENT_A, most_led_a)
    if at_hand_ohm is not None:
        currents = np.geomspace(currents[0], most_led_a, _FINE)
    for source_v in sources_v:
        for led_a in map(float, currents):
            string_v = (
                string.run.leds_in_series * forward_voltage(curve, led_a) + led_a * string.run.group_ohm
            )
            drop_v = source_v - string_v
            if drop_v < _LEAST_DROP_V:
                continue
            ohm = _at_least(drop_v / (led_a * string.lit_groups), at_hand_ohm)
            if ohm is not None and (source_v, ohm) not in seen:
                seen.add((source_v, ohm))
                yield BenchReading.model_construct(
                    supply=source_v,
                    resistor=ohm,
                    after_resistor=string_v,
                    current=drop_v / (ohm + burden_ohm),
                )


def _at_least(ohm: float, at_hand_ohm: Sequence[float] | None) -> float | None:
    """The smallest resistor there is that is not below these ohms."""
    return not_below("E12", ohm) if at_hand_ohm is None else smallest_not_below(sorted(at_hand_ohm), ohm)


def _as_expected(model: BenchModel, curve: Curve, most_led_a: float) -> BenchModel:
    """The readings that overload no LED, with what the curve predicts as what was measured."""
    around = model.around(_point(curve))
    readings = tuple(
        replace(reading, measured=float(value))
        for reading, value, led_a in zip(model.readings, around.predicted, around.brightest_a, strict=True)
        if led_a <= most_led_a
    )
    return replace(model, readings=readings)


def _best(
    model: BenchModel, curve: Curve, covariance: Floats, work_out: Callable[[Curve], Floats]
) -> tuple[Reading, tuple[Reading, Reading]]:
    """The reading, and the pair of readings, that leave the least of the worst relative uncertainty."""
    around = model.around(_point(curve))
    of_readings = model.covariance(around)
    moves = spreads(covariance)
    in_logs = moves / np.array([1.0, curve.slope_v, 1.0])
    told = around.slopes @ in_logs.T
    value = work_out(curve)
    wanted = np.array([(work_out(moved(curve, m)) - work_out(moved(curve, -m))) / 2 / value for m in moves])

    def left(chosen: tuple[int, ...]) -> float:
        here = np.array(chosen)
        weighted = np.linalg.solve(of_readings[np.ix_(here, here)], told[here])
        known = np.linalg.inv(np.eye(len(moves)) + told[here].T @ weighted)
        return float(np.max(np.einsum("ik,ij,jk->k", wanted, known, wanted)))

    every = range(len(model.readings))
    (one,) = min(((k,) for k in every), key=left)
    two = min(combinations(every, 2), key=left)
    return model.readings[one], (model.readings[two[0]], model.readings[two[1]])


def _point(curve: Curve) -> Floats:
    return np.array([curve.voltage_v, np.log(curve.slope_v), curve.resistance_ohm])


def _as_row(reading: Reading) -> BenchReading:
    """A bench row that holds this reading alone."""
    return BenchReading.model_construct(
        supply=reading.supply_v,
        resistor=reading.resistor_ohm,
        after_resistor=reading.measured if reading.what == "after resistor" else None,
        current=reading.measured if reading.what == "current" else None,
    )


def _suggest(reading: Reading) -> Suggestion:
    return Suggestion(reading.what, reading.supply_v, reading.resistor_ohm, reading.measured)
