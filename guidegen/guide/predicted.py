"""What the meter will show in a state that only a step makes: solved, with its worst cases."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from itertools import product

from guidegen.calc.meter import accuracy
from guidegen.calc.preferred import between, not_below
from guidegen.circuit.arrange import string_alone
from guidegen.circuit.arrangement import Arrangement, LedEstimate
from guidegen.circuit.conditions import NOMINAL, Conditions, Side
from guidegen.circuit.solution import Solution
from guidegen.circuit.solve import solve_each
from guidegen.circuit.variants import only_run, with_resistor
from guidegen.project.schema import LightString
from guidegen.tables.limits import METER_OHMS, METER_VOLTS, MeterRange

#: The test resistor over the run's own, at least and at most; common practice, no source.
LEAST_TIMES, MOST_TIMES = 3.0, 10.0
#: How many times the run's own resistor is looked for first.
WANTED_TIMES = 5.0
#: Volts over the test resistor of a run that has no resistor, as a share of the supply's.
WANTED_SHARE = 0.25
#: Smallest resistor that a string is measured through on the bench, ohm.
LEAST_BENCH_OHM = 1.0
_SIDES: tuple[Side, Side] = ("low", "high")


@dataclass(frozen=True)
class Predicted:
    """A reading and its worst cases, the meter's own accuracy included; SI."""

    expected: float
    low: float
    high: float


@dataclass(frozen=True)
class TestPower:
    """One run alone behind a larger resistor: its ohms, and the volts over it and behind it."""

    __test__ = False

    ohm: float
    shorted_w: float
    resistor_v: Predicted
    after_resistor_v: Predicted


@dataclass(frozen=True)
class BenchPower:
    """One whole string on the supply behind a resistor: ohms and the volts over and behind it."""

    ohm: float
    shorted_w: float
    resistor_v: Predicted
    after_resistor_v: Predicted


def test_ohm(arrangement: Arrangement, index: int, source_v: float, current_a: float) -> float:
    """Preferred resistor for the first power of a run: about five times its own.

    A run without a resistor gets one that a quarter of the supply's volts would
    stand over at the run's current.
    """
    resistor = arrangement.runs[index].resistor
    if not resistor.fitted or resistor.ohm <= 0:
        return not_below("E12", WANTED_SHARE * source_v / current_a)
    wanted = not_below("E12", WANTED_TIMES * resistor.ohm)
    allowed = between("E12", LEAST_TIMES * resistor.ohm, MOST_TIMES * resistor.ohm)
    return wanted if wanted in allowed else allowed[-1]


test_ohm.__test__ = False  # type: ignore[attr-defined]


def first_power(arrangement: Arrangement, index: int, solution: Solution) -> TestPower:
    """Run `index` alone on the supply behind its test resistor."""
    ohm = test_ohm(arrangement, index, solution.source_v, solution.runs[index].current_a)
    alone = only_run(with_resistor(arrangement, index, ohm), index)
    over, behind = _volts(alone)
    return TestPower(ohm, _shorted_w(arrangement, index, ohm), over, behind)


def bench_power(
    arrangement: Arrangement, kind: LightString, led: LedEstimate, led_a: float, after_v: float
) -> BenchPower:
    """One whole string on the supply, behind a resistor that gives about `led_a` to each LED.

    `after_v`: volts behind the resistor that such a current takes.
    """
    groups = float(string_alone(kind, led, 0.0).lit_groups.sum())
    wanted = max(LEAST_BENCH_OHM, (arrangement.supply.voltage_v - after_v) / (led_a * groups))
    ohm = not_below("E12", wanted)
    on_supply = Arrangement(
        supply=arrangement.supply,
        fuse=arrangement.fuse,
        runs=(string_alone(kind, led, ohm),),
        coldest_c=arrangement.coldest_c,
        warmest_c=arrangement.warmest_c,
    )
    over, behind = _volts(on_supply)
    return BenchPower(ohm, arrangement.supply.upper_v**2 / (ohm * 0.95), over, behind)


def resistance(nominal: float, low: float, high: float) -> Predicted:
    """What an ohmmeter will show for a resistance between two limits."""
    return _metered(METER_OHMS, nominal, low, high)


def _volts(alone: Arrangement) -> tuple[Predicted, Predicted]:
    """Volts over the only run's resistor, and behind it."""
    solutions = solve_each(alone, (NOMINAL, *_worst_cases(alone)))
    return (
        _range(solutions, lambda solution: solution.runs[0].resistor_v),
        _range(solutions, lambda solution: solution.runs[0].after_resistor_v),
    )


def _worst_cases(arrangement: Arrangement) -> tuple[Conditions, ...]:
    volts = (arrangement.supply.lower_v, arrangement.supply.upper_v)
    sides = product(volts, _SIDES, _SIDES, _SIDES)
    return tuple(Conditions(source_v, resistor, wire, led) for source_v, resistor, wire, led in sides)


def _range(solutions: Sequence[Solution], quantity: Callable[[Solution], float]) -> Predicted:
    values = [quantity(solution) for solution in solutions]
    return _metered(METER_VOLTS, values[0], min(values), max(values))


def _metered(meter: MeterRange, nominal: float, low: float, high: float) -> Predicted:
    below = low - accuracy(low, meter.share, meter.digits, meter.step)
    above = high + accuracy(high, meter.share, meter.digits, meter.step)
    return Predicted(nominal, max(0.0, below), above)


def _shorted_w(arrangement: Arrangement, index: int, ohm: float) -> float:
    tolerance = arrangement.runs[index].resistor.tolerance
    return arrangement.supply.upper_v**2 / (ohm * (1 - tolerance))


def metered_volts(nominal: float, low: float, high: float) -> Predicted:
    """What a voltmeter will show for volts between two limits."""
    return _metered(METER_VOLTS, nominal, low, high)
