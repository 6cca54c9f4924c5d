"""Test resistors: larger ones ahead of what is lit for the first time, and how hot a short makes them."""

from __future__ import annotations

from dataclasses import dataclass
from math import inf

from guidegen.calc.fuse import lasting_current_a, must_open_a, must_open_multiple
from guidegen.calc.preferred import between, not_below
from guidegen.calc.resistor import body_degc, hottest_rise_k, lower_ohm, pick_rating_w, running_w
from guidegen.circuit.arrange import string_alone
from guidegen.circuit.arrangement import Arrangement, LedEstimate
from guidegen.circuit.solution import Solution
from guidegen.parts.picks import usual_kind
from guidegen.project.schema import LightString
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
#: Rating looked for, over the watts with a short; common practice, no source.
WANTED_RATING = 2.0


@dataclass(frozen=True)
class Trial:
    """A test resistor by its ohms: what it takes while all behind it is shorted, and is then.

    `shorted_w` lasts; `rating_w` is the least to buy, `shorted_c` the
    temperature of its body in the warmest air of the place, degC, for the
    kind that is usual at that rating.
    """

    ohm: float
    shorted_w: float
    rating_w: float
    shorted_c: float


def trial(arrangement: Arrangement, ohm: float) -> Trial:
    """The test resistor of these ohms in an arrangement.

    Rated for twice the watts of a short where such a rating is on sale, else
    for those watts.
    """
    shorted_w = lasting_w(arrangement, ohm)
    rating_w = pick_rating_w(WANTED_RATING * shorted_w) or max(RESISTOR_RATINGS_W)
    return Trial(
        ohm=ohm,
        shorted_w=shorted_w,
        rating_w=rating_w,
        shorted_c=body_degc(arrangement.warmest_c, hottest_rise_k(usual_kind(rating_w)), shorted_w, rating_w),
    )


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


def bench_ohm(
    arrangement: Arrangement, kind: LightString, led: LedEstimate, led_a: float, after_v: float
) -> float:
    """Preferred resistor that gives each LED of one whole string at most about `led_a` on the bench.

    `after_v`: volts behind the resistor that such a current takes.
    """
    groups = float(string_alone(kind, led, 0.0).lit_groups.sum())
    volts = arrangement.supply.voltage_v
    return bearing_ohm(arrangement, max(volts - after_v, LEAST_SHARE * volts) / (led_a * groups))


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


def trials(
    arrangement: Arrangement, solution: Solution, strings: dict[str, LightString]
) -> tuple[Trial, ...]:
    """Every test resistor that the steps ask for, once each, by rising ohms.

    `strings`: the kinds that hang in a run, by name.
    """
    runs = tuple(zip(arrangement.runs, solution.runs, strict=True))
    ohms = {
        test_ohm(arrangement, index, solution.source_v, solved.current_a)
        for index, (_plan, solved) in enumerate(runs)
    }
    for name, kind in strings.items():
        plan, solved = next((plan, solved) for plan, solved in runs if plan.string == name)
        ohms.add(bench_ohm(arrangement, kind, plan.led, solved.mean_led_a, solved.after_resistor_v))
    return tuple(trial(arrangement, ohm) for ohm in sorted(ohms))
