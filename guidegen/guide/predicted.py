"""What the meter will show in a state that only a step makes: solved, with its worst cases."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from itertools import product

from guidegen.circuit.arrange import string_alone
from guidegen.circuit.arrangement import Arrangement, LedEstimate
from guidegen.circuit.conditions import NOMINAL, Conditions, Side
from guidegen.circuit.meter import Meter, error_of
from guidegen.circuit.solution import Solution
from guidegen.circuit.solve import solve_each
from guidegen.circuit.variants import only_run, with_resistor
from guidegen.parts.trial_resistors import Trial, bench_ohm, test_ohm, trial
from guidegen.project.schema import LightString
from guidegen.tables.limits import MeterRange

_SIDES: tuple[Side, Side] = ("low", "high")


@dataclass(frozen=True)
class Predicted:
    """A reading and its worst cases, the meter's own accuracy included; SI."""

    expected: float
    low: float
    high: float


@dataclass(frozen=True)
class TestPower:
    """One run alone behind a larger resistor, and the volts over it and behind it."""

    __test__ = False

    trial: Trial
    resistor_v: Predicted
    after_resistor_v: Predicted

    @property
    def ohm(self) -> float:
        """Of its test resistor."""
        return self.trial.ohm


@dataclass(frozen=True)
class BenchPower:
    """One whole string on the supply behind a resistor, and the volts over and behind it.

    `bulb_v`: at the bulb where the string is bared for the test, None where it is not.
    """

    trial: Trial
    resistor_v: Predicted
    after_resistor_v: Predicted
    bulb_v: Predicted | None

    @property
    def ohm(self) -> float:
        """Of its test resistor."""
        return self.trial.ohm


def first_power(
    arrangement: Arrangement, index: int, solution: Solution, meter: Meter | None = None
) -> TestPower:
    """Run `index` alone on the supply behind its test resistor."""
    ohm = test_ohm(arrangement, index, solution.source_v, solution.runs[index].current_a)
    alone = only_run(with_resistor(arrangement, index, ohm), index)
    over, behind = _volts(_solved_cases(alone), meter or Meter())
    return TestPower(trial(arrangement, ohm), over, behind)


def bench_power(
    arrangement: Arrangement,
    kind: LightString,
    led: LedEstimate,
    led_a: float,
    after_v: float,
    bulb: int | None = None,
    meter: Meter | None = None,
) -> BenchPower:
    """One whole string at the supply end, behind a resistor that gives about `led_a` to each LED.

    `after_v`: volts behind the resistor that such a current takes; `bulb`:
    where the volts are read too.
    """
    ohm = bench_ohm(arrangement, kind, led, led_a, after_v)
    at_supply = Arrangement(
        supply=arrangement.supply,
        fuse=arrangement.fuse,
        runs=(string_alone(kind, led, ohm),),
        coldest_c=arrangement.coldest_c,
        warmest_c=arrangement.warmest_c,
    )
    cases = _solved_cases(at_supply)
    scale = (meter or Meter()).volts
    over, behind = _volts(cases, meter or Meter())
    at_bulb = (
        None if bulb is None else _range(cases, lambda each: float(each.runs[0].bulb_v[bulb - 1]), scale)
    )
    return BenchPower(trial(arrangement, ohm), over, behind, at_bulb)


def resistance(nominal: float, low: float, high: float) -> Predicted:
    """What an ohmmeter will show for a resistance between two limits."""
    return _metered(Meter().ohms, nominal, low, high)


def _solved_cases(alone: Arrangement) -> Sequence[Solution]:
    """The nominal case first, then the worst ones."""
    return solve_each(alone, (NOMINAL, *_worst_cases(alone)))


def _volts(cases: Sequence[Solution], meter: Meter) -> tuple[Predicted, Predicted]:
    """Volts over the only run's resistor, and behind it."""
    return (
        _range(cases, lambda solution: solution.runs[0].resistor_v, meter.volts),
        _range(cases, lambda solution: solution.runs[0].after_resistor_v, meter.volts),
    )


def _worst_cases(arrangement: Arrangement) -> tuple[Conditions, ...]:
    volts = (arrangement.supply.lower_v, arrangement.supply.upper_v)
    sides = product(volts, _SIDES, _SIDES, _SIDES)
    return tuple(Conditions(source_v, resistor, wire, led) for source_v, resistor, wire, led in sides)


def _range(
    solutions: Sequence[Solution], quantity: Callable[[Solution], float], scale: MeterRange
) -> Predicted:
    values = [quantity(solution) for solution in solutions]
    return _metered(scale, values[0], min(values), max(values))


def _metered(meter: MeterRange, nominal: float, low: float, high: float) -> Predicted:
    return Predicted(nominal, max(0.0, low - error_of(meter, low)), high + error_of(meter, high))


def metered_volts(nominal: float, low: float, high: float, meter: Meter) -> Predicted:
    """What the meter will show for volts between two limits."""
    return _metered(meter.volts, nominal, low, high)
