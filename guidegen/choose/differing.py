"""What to fit when a reader's supply or string differs from the maker's: rows of two tables.

The LED current of the maker's own build is what a reader's is to reach at
most, so that at the maker's own values the maker's resistor, or the next
preferred one, comes out again.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace

from guidegen.circuit.arrange import string_alone
from guidegen.circuit.arrangement import Arrangement, Fuse, LedEstimate, RunPlan, SupplyPlan
from guidegen.circuit.solution import Solution
from guidegen.circuit.solve import solve
from guidegen.parts.picks import pick_parts
from guidegen.project.schema import LightString

#: Readings that supplies sold as 5 V may show, volt.
FIVE_V_READINGS = (4.75, 4.9, 5.0, 5.1, 5.25, 5.4, 5.5)
#: Readings of other supplies, as shares of the nominal volts.
SHARES = (0.9, 0.95, 1.0, 1.05, 1.1)
#: By how much a reader's LEDs may differ from the maker's, volts of one LED.
LED_DIFFERENCES_V = (-0.15, -0.10, -0.05, 0.0, 0.05, 0.10, 0.15)
#: Share of the maker's LED current below which the volts do not do; a step of E12 costs less.
ENOUGH = 0.7
#: Relative room for rounding: the maker's own current is not above itself.
_ROUNDING = 1e-9
#: Relative room for what that rounding makes of the resistor that is known to be needed at least.
_LEEWAY = 1e-6


@dataclass(frozen=True)
class Fit:
    """What one run gets: resistor and its rating, and what it then shows.

    `after_resistor_v` is what a meter is to read behind the resistor;
    `running_w` in the resistor.  `enough` is False when even the smallest
    resistor gives far less current than the maker's: the volts do not do;
    `led_within` tells that the largest LED current is kept in the worst case.
    """

    run: str
    resistor_ohm: float
    rating_w: float | None
    led_a: float
    running_w: float
    after_resistor_v: float
    enough: bool
    led_within: bool


@dataclass(frozen=True)
class SupplyRow:
    """A supply that reads `supply_v` with nothing connected, and what to fit to it."""

    supply_v: float
    fits: tuple[Fit, ...]


@dataclass(frozen=True)
class StringRow:
    """A string that reads `reading_v` behind the test resistor, and what to fit to it.

    `difference_v`: its LEDs' volts less the maker's.
    """

    reading_v: float
    difference_v: float
    fits: tuple[Fit, ...]


def supply_readings_v(nominal_v: float) -> tuple[float, ...]:
    """No-load readings that a reader's supply may show: 4.75 to 5.5 V, or 10 % either way.

    The nominal volts are always among them.
    """
    if FIVE_V_READINGS[0] <= nominal_v <= FIVE_V_READINGS[-1]:
        return tuple(sorted({*FIVE_V_READINGS, nominal_v}))
    return tuple(nominal_v if share == 1 else round(nominal_v * share, 2) for share in SHARES)


def supply_table(arrangement: Arrangement, nominal: Solution, load: float) -> tuple[SupplyRow, ...]:
    """What to fit for supplies of other volts; `load`: largest share of a resistor's rating to run at."""
    rows = []
    for volts in supply_readings_v(arrangement.supply.voltage_v):
        supply = replace(arrangement.supply, voltage_v=volts)
        more_v = {run.name: volts - arrangement.supply.voltage_v for run in arrangement.runs}
        rows.append(SupplyRow(volts, _fits(replace(arrangement, supply=supply), nominal, load, more_v)))
    return tuple(rows)


def string_table(
    arrangement: Arrangement, nominal: Solution, load: float, string: str, kind: LightString, test_ohm: float
) -> tuple[StringRow, ...]:
    """What to fit for strings of one kind whose LEDs differ.

    `test_ohm`: the test resistor ahead of one whole, uncut string on the
    supply.
    """
    led = next(run.led for run in arrangement.runs if run.string == string)
    rows = []
    for difference_v in LED_DIFFERENCES_V:
        moved = _moved(led, difference_v)
        runs = tuple(replace(run, led=moved) if run.string == string else run for run in arrangement.runs)
        reading_v = bench_reading_v(kind, moved, arrangement.supply, test_ohm)
        more_v = {run.name: -run.leds_in_series * difference_v for run in runs if run.string == string}
        fits = _fits(replace(arrangement, runs=runs), nominal, load, more_v)
        rows.append(StringRow(reading_v, difference_v, fits))
    return tuple(rows)


def bench_reading_v(kind: LightString, led: LedEstimate, supply: SupplyPlan, test_ohm: float) -> float:
    """Volts behind a test resistor ahead of one whole string on the supply, its lead included."""
    alone = string_alone(kind, led, test_ohm)
    bench = Arrangement(supply, Fuse(None, "IEC"), (alone,), coldest_c=20.0, warmest_c=20.0)
    return solve(bench).runs[0].after_resistor_v


def _moved(led: LedEstimate, difference_v: float) -> LedEstimate:
    """LEDs of other volts at the same current."""
    curve = replace(led.curve, voltage_v=led.curve.voltage_v + difference_v)
    low_v, high_v = led.voltage_low_v + difference_v, led.voltage_high_v + difference_v
    return replace(led, curve=curve, voltage_low_v=low_v, voltage_high_v=high_v)


def _fits(
    arrangement: Arrangement, maker: Solution, load: float, more_v: Mapping[str, float]
) -> tuple[Fit, ...]:
    """Resistors chosen anew so that no run's mean LED current is above the maker's.

    `more_v`: volts by which supply and string of a run leave more for its
    resistor than the maker's do, at the maker's currents, by name.
    """
    open_again = replace(arrangement, runs=tuple(map(_left_open, arrangement.runs)))
    goal_a = {run.name: run.mean_led_a * (1 + _ROUNDING) for run in maker.runs}
    # With no more than the maker's currents a resistor has at least these volts.
    least_ohm = {
        run.name: (run.resistor_v + more_v.get(run.name, 0.0)) / run.current_a * (1 - _LEEWAY)
        for run in maker.runs
        if run.current_a > 0
    }
    picked, solved, worst, _shorts = pick_parts(open_again, goal_a, load, least_ohm)
    return tuple(
        Fit(
            run=plan.name,
            resistor_ohm=plan.resistor.ohm,
            rating_w=plan.resistor.rating_w,
            led_a=run.mean_led_a,
            running_w=run.resistor_w,
            after_resistor_v=run.after_resistor_v,
            enough=run.mean_led_a >= ENOUGH * own.mean_led_a,
            led_within=most.led_max_a <= plan.led_limit.current_a * (1 + _ROUNDING),
        )
        for plan, run, most, own in zip(picked.runs, solved.runs, worst.runs, maker.runs, strict=True)
    )


def _left_open(run: RunPlan) -> RunPlan:
    """The run with its resistor to be chosen; one without a resistor stays so."""
    if not run.resistor.fitted:
        return run
    resistor = replace(
        run.resistor, chosen=True, rating_chosen=True, kind_chosen=True, rating_w=None, kind=None
    )
    return replace(run, resistor=resistor)
