"""What the meter will show in a state that only a step makes: solved, with its worst cases."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from itertools import product
from math import inf

from guidegen.calc.fuse import lasting_current_a, must_open_a, must_open_multiple
from guidegen.calc.preferred import between, not_below
from guidegen.calc.resistor import lower_ohm, running_w
from guidegen.circuit.arrange import string_alone
from guidegen.circuit.arrangement import Arrangement, LedEstimate
from guidegen.circuit.conditions import NOMINAL, Conditions, Side
from guidegen.circuit.meter import Meter, error_of
from guidegen.circuit.solution import Solution
from guidegen.circuit.solve import solve_each
from guidegen.circuit.variants import only_run, with_resistor
from guidegen.project.schema import LightString
from guidegen.tables.limits import MeterRange
from guidegen.tables.preferred import RESISTOR_RATINGS_W

#: The test resistor over the run's own, at least and at most; common practice, no source.
LEAST_TIMES, MOST_TIMES = 3.0, 10.0
#: How many times the run's own resistor is looked for first.
WANTED_TIMES = 5.0
#: Volts over the test resistor of a run that has no resistor, as a share of the supply's.
WANTED_SHARE = 0.25
#: Least volts over a resistor on the bench, as a share of the supply's; own assumption.
LEAST_SHARE = 0.1
#: Tolerance of a test resistor (ratio), and the largest value looked at, ohm.
TEST_TOLERANCE, MOST_OHM = 0.05, 1e6
_SIDES: tuple[Side, Side] = ("low", "high")


@dataclass(frozen=True)
class Predicted:
    """A reading and its worst cases, the meter's own accuracy included; SI."""

    expected: float
    low: float
    high: float


@dataclass(frozen=True)
class TestPower:
    """One run alone behind a larger resistor: its ohms, and the volts over it and behind it.

    `shorted_w`: the watts it takes for as long as the run is shorted.
    """

    __test__ = False

    ohm: float
    shorted_w: float
    resistor_v: Predicted
    after_resistor_v: Predicted


@dataclass(frozen=True)
class BenchPower:
    """One whole string on the supply behind a resistor: ohms and the volts over and behind it.

    `bulb_v`: at the bulb where the string is bared for the test, None where it is not.
    """

    ohm: float
    shorted_w: float
    resistor_v: Predicted
    after_resistor_v: Predicted
    bulb_v: Predicted | None


def test_ohm(arrangement: Arrangement, index: int, source_v: float, current_a: float) -> float:
    """Preferred resistor for the first power of a run: about five times its own.

    A run without a resistor gets one that a quarter of the supply's volts would
    stand over at the run's current.  Either is larger where a rating on sale
    would not bear the run shorted.
    """
    resistor = arrangement.runs[index].resistor
    if not resistor.fitted or resistor.ohm <= 0:
        return bearing_ohm(arrangement, WANTED_SHARE * source_v / current_a)
    wanted = not_below("E12", WANTED_TIMES * resistor.ohm)
    allowed = between("E12", LEAST_TIMES * resistor.ohm, MOST_TIMES * resistor.ohm)
    return bearing_ohm(arrangement, wanted if wanted in allowed else allowed[-1])


test_ohm.__test__ = False  # type: ignore[attr-defined]


def bearing_ohm(arrangement: Arrangement, wanted_ohm: float) -> float:
    """Smallest preferred value from the wanted one on with which a rating on sale bears a lasting short."""
    values = between("E12", not_below("E12", wanted_ohm), MOST_OHM)
    return next(ohm for ohm in values if lasting_w(arrangement, ohm) <= max(RESISTOR_RATINGS_W))


def lasting_w(arrangement: Arrangement, ohm: float) -> float:
    """Watts of a test resistor while everything behind it is shorted: by what fuse and supply let flow."""
    supply, fuse = arrangement.supply, arrangement.fuse
    opens_a = must_open_a(fuse.rating_a or inf, must_open_multiple(fuse.standard))
    least_ohm = lower_ohm(ohm, TEST_TOLERANCE)
    return running_w(lasting_current_a(opens_a, supply.limit_a, supply.upper_v, least_ohm), least_ohm)


def first_power(
    arrangement: Arrangement, index: int, solution: Solution, meter: Meter | None = None
) -> TestPower:
    """Run `index` alone on the supply behind its test resistor."""
    ohm = test_ohm(arrangement, index, solution.source_v, solution.runs[index].current_a)
    alone = only_run(with_resistor(arrangement, index, ohm), index)
    over, behind = _volts(_solved_cases(alone), meter or Meter())
    return TestPower(ohm, lasting_w(arrangement, ohm), over, behind)


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
    groups = float(string_alone(kind, led, 0.0).lit_groups.sum())
    supply = arrangement.supply
    spare_v = max(supply.voltage_v - after_v, LEAST_SHARE * supply.voltage_v)
    ohm = bearing_ohm(arrangement, spare_v / (led_a * groups))
    at_supply = Arrangement(
        supply=supply,
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
    return BenchPower(ohm, lasting_w(arrangement, ohm), over, behind, at_bulb)


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
