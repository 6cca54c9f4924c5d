"""What to fit when a reader's supply or string differs from the maker's: rows of two tables.

The LED current of the maker's own build is what a reader's is to reach at
most, and no resistor is rated lower, or gets hotter in a short, than there.
What reads within the range of the maker's own build needs nothing else, so
that rows stand outside that range only.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from guidegen.calc.resistor import pick_rating_w, rating_at_w
from guidegen.circuit.arrange import string_alone
from guidegen.circuit.arrangement import Arrangement, Fuse, LedEstimate, RunPlan, SupplyPlan
from guidegen.circuit.margins import margins
from guidegen.circuit.meter import Meter, error_of
from guidegen.circuit.protection import protection
from guidegen.circuit.solution import Margins, Protection, RunMargins, RunSolution, Solution
from guidegen.circuit.solve import solve
from guidegen.parts.picks import pick_parts, usual_kind
from guidegen.project.schema import LightString
from guidegen.tables.preferred import RESISTOR_RATINGS_W

#: Readings that supplies sold as 5 V may show, volt.
FIVE_V_READINGS = (4.75, 4.9, 5.0, 5.1, 5.25, 5.4, 5.5)
#: Readings of other supplies, as shares of the nominal volts.
SHARES = (0.9, 0.95, 1.0, 1.05, 1.1)
#: By how much a reader's LEDs may differ from the maker's, volts of one LED.
LED_DIFFERENCES_V = (-0.3, -0.2, -0.15, -0.10, -0.05, 0.0, 0.05, 0.10, 0.15, 0.2, 0.3)
#: Share of the maker's LED current below which the volts do not do; a step of E12 costs less.
ENOUGH = 0.7
#: Relative room for rounding: the maker's own current is not above itself.
_ROUNDING = 1e-9
#: Relative room for what that rounding makes of the resistor that is known to be needed at least.
_LEEWAY = 1e-6
#: A reading and how far it may go without anything being changed, lowest and highest, volt.
Range = tuple[float, float]


@dataclass(frozen=True)
class Fit:
    """What one run gets: resistor and its rating, and what it then shows.

    `after_resistor_v` is what a meter is to read behind the resistor;
    `running_w` in the resistor.  `enough` is False when even the smallest
    resistor gives far less current than the maker's: the volts do not do;
    `led_within` tells that the largest LED current is kept in the worst case;
    `usable` is False when no resistor on sale makes the build one that the
    safety rules let pass.
    """

    run: str
    resistor_ohm: float
    rating_w: float | None
    led_a: float
    running_w: float
    after_resistor_v: float
    enough: bool
    led_within: bool
    usable: bool = True


@dataclass(frozen=True)
class SupplyRow:
    """A supply that reads `supply_v` with nothing connected, and what to fit to it; `own`: this build's."""

    supply_v: float
    fits: tuple[Fit, ...]
    own: bool = False

    @property
    def usable(self) -> bool:
        """Whether the supply may be used, with the resistors of the row."""
        return all(fit.usable and fit.enough for fit in self.fits)


@dataclass(frozen=True)
class StringRow:
    """A string that reads `reading_v` behind the test resistor, and what to fit to it.

    `difference_v`: its LEDs' volts less the maker's.
    """

    reading_v: float
    difference_v: float
    fits: tuple[Fit, ...]

    @property
    def own(self) -> bool:
        """Whether it is this build's string."""
        return self.difference_v == 0


def supply_readings_v(nominal_v: float) -> tuple[float, ...]:
    """No-load readings that a reader's supply may show: 4.75 to 5.5 V, or 10 % either way.

    The nominal volts are always among them.
    """
    if FIVE_V_READINGS[0] <= nominal_v <= FIVE_V_READINGS[-1]:
        return tuple(sorted({*FIVE_V_READINGS, nominal_v}))
    return tuple(nominal_v if share == 1 else round(nominal_v * share, 2) for share in SHARES)


def supply_table(
    arrangement: Arrangement, nominal: Solution, load: float, right_v: Range | None = None
) -> tuple[SupplyRow, ...]:
    """What to fit for supplies of other volts.

    `load`: largest share of a resistor's rating to run at; `right_v`: what
    this build's own supply may read, between which there is no other row.
    """
    own, rows = _Own.of(arrangement, nominal), []
    for volts in supply_readings_v(arrangement.supply.voltage_v):
        if volts == arrangement.supply.voltage_v:
            rows.append(SupplyRow(volts, own.fits, own=True))
        elif _outside(volts, right_v):
            supply = replace(arrangement.supply, voltage_v=volts)
            more_v = {run.name: volts - arrangement.supply.voltage_v for run in arrangement.runs}
            rows.append(SupplyRow(volts, _fits(replace(arrangement, supply=supply), own, load, more_v)))
    return tuple(rows)


def string_table(
    arrangement: Arrangement,
    nominal: Solution,
    load: float,
    string: str,
    kind: LightString,
    test_ohm: float,
    right_v: Range | None = None,
) -> tuple[StringRow, ...]:
    """What to fit for strings of one kind whose LEDs differ.

    `test_ohm`: the test resistor ahead of one whole, uncut string on the
    supply; `right_v`: what this build's own string may read there.
    """
    led = next(run.led for run in arrangement.runs if run.string == string)
    own, rows = _Own.of(arrangement, nominal), []
    for difference_v in LED_DIFFERENCES_V:
        moved = _moved(led, difference_v)
        reading_v = bench_reading_v(kind, moved, arrangement.supply, test_ohm)
        if difference_v == 0:
            rows.append(StringRow(reading_v, difference_v, own.fits))
        elif _outside(reading_v, right_v):
            runs = tuple(replace(run, led=moved) if run.string == string else run for run in arrangement.runs)
            more_v = {run.name: -run.leds_in_series * difference_v for run in runs if run.string == string}
            fits = _fits(replace(arrangement, runs=runs), own, load, more_v)
            rows.append(StringRow(reading_v, difference_v, fits))
    return tuple(rows)


def told_apart(rows: Sequence[StringRow], meter: Meter) -> tuple[StringRow, ...]:
    """The rows whose readings a meter can tell from their neighbours, outwards from this build's.

    Empty where nothing is left to tell: no other row to which another resistor
    would fit.
    """
    own = next(index for index, row in enumerate(rows) if row.own)
    lower = _apart(rows[own::-1], meter)
    kept = (*reversed(lower), *_apart(rows[own:], meter)[1:])
    return kept if any(_fits_other(row, rows[own]) for row in kept) else ()


def _apart(rows: Sequence[StringRow], meter: Meter) -> list[StringRow]:
    """The first row, and each further one that is twice the meter's error from the last one kept."""
    kept = [rows[0]]
    for row in rows[1:]:
        error_v = error_of(meter.volts, max(row.reading_v, kept[-1].reading_v))
        if abs(row.reading_v - kept[-1].reading_v) >= 2 * error_v:
            kept.append(row)
    return kept


def _fits_other(row: StringRow, own: StringRow) -> bool:
    """Whether the row helps its reader: with another resistor than this build's the string may be used."""
    if not all(fit.usable and fit.enough for fit in row.fits):
        return False
    return any(
        fit.resistor_ohm != its_own.resistor_ohm for fit, its_own in zip(row.fits, own.fits, strict=True)
    )


def _outside(reading_v: float, right_v: Range | None) -> bool:
    return right_v is None or not right_v[0] <= reading_v <= right_v[1]


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


@dataclass(frozen=True)
class _Own:
    """The maker's own build: what the others are held against.

    `lasting_w`: by run, the watts of a short that the fuse need not end.
    """

    plans: tuple[RunPlan, ...]
    solution: Solution
    lasting_w: tuple[float, ...]
    fits: tuple[Fit, ...]

    @staticmethod
    def of(arrangement: Arrangement, nominal: Solution) -> _Own:
        worst, shorts = margins(arrangement, nominal), protection(arrangement, nominal)
        runs = tuple(zip(arrangement.runs, nominal.runs, worst.runs, strict=True))
        return _Own(
            plans=arrangement.runs,
            solution=nominal,
            lasting_w=tuple(shorts.lasting_w(index, most.shorted_w) for index, most in enumerate(worst.runs)),
            fits=tuple(_fit(plan, run, most, run) for plan, run, most in runs),
        )

    def needed_w(self, index: int, lasting_w: float) -> float:
        """The rating that is neither lower than the maker's nor bears a greater share of it in a short."""
        rating_w = self.plans[index].resistor.rating_w or 0.0
        own_w = self.lasting_w[index]
        return rating_w * max(1.0, lasting_w / own_w) if own_w > 0 else rating_w


def _fits(arrangement: Arrangement, own: _Own, load: float, more_v: Mapping[str, float]) -> tuple[Fit, ...]:
    """Resistors chosen anew so that no run's mean LED current is above the maker's.

    `more_v`: volts by which supply and string of a run leave more for its
    resistor than the maker's do, at the maker's currents, by name.
    """
    runs = tuple(_left_open(run, more_v.get(run.name, 0.0)) for run in arrangement.runs)
    maker = own.solution.runs
    goal_a = {run.name: run.mean_led_a * (1 + _ROUNDING) for run in maker}
    # With no more than the maker's currents a resistor has at least these volts.
    least_ohm = {
        run.name: (run.resistor_v + more_v.get(run.name, 0.0)) / run.current_a * (1 - _LEEWAY)
        for run in maker
        if run.current_a > 0
    }
    picked, solved, worst, shorts = pick_parts(replace(arrangement, runs=runs), goal_a, load, least_ohm)
    plans = tuple(_rated(picked, own, worst, shorts))
    usable = _usable(replace(picked, runs=plans), solved, worst, shorts)
    return tuple(
        replace(_fit(plan, run, most, its_own), usable=usable)
        for plan, run, most, its_own in zip(plans, solved.runs, worst.runs, maker, strict=True)
    )


def _fit(plan: RunPlan, run: RunSolution, most: RunMargins, own: RunSolution) -> Fit:
    return Fit(
        run=plan.name,
        resistor_ohm=plan.resistor.ohm,
        rating_w=plan.resistor.rating_w,
        led_a=run.mean_led_a,
        running_w=run.resistor_w,
        after_resistor_v=run.after_resistor_v,
        enough=run.mean_led_a >= ENOUGH * own.mean_led_a,
        led_within=most.led_max_a <= plan.led_limit.current_a * (1 + _ROUNDING),
    )


def _rated(picked: Arrangement, own: _Own, worst: Margins, shorts: Protection) -> Iterator[RunPlan]:
    """The runs with the ratings picked, raised to what the maker's own build has."""
    for index, plan in enumerate(picked.runs):
        if not plan.resistor.fitted:
            yield plan
            continue
        lasting_w = shorts.lasting_w(index, worst.runs[index].shorted_w)
        needed_w = max(plan.resistor.rating_w or 0.0, own.needed_w(index, lasting_w))
        own_w = own.plans[index].resistor.rating_w or 0.0
        rating_w = needed_w if needed_w == own_w else pick_rating_w(needed_w)
        rating_w = rating_w or max(own_w, *RESISTOR_RATINGS_W)
        kind = own.plans[index].resistor.kind if rating_w == own_w else usual_kind(rating_w)
        yield replace(plan, resistor=replace(plan.resistor, rating_w=rating_w, kind=kind))


def _usable(arrangement: Arrangement, solved: Solution, worst: Margins, shorts: Protection) -> bool:
    """Whether the rules on LEDs, resistors, wires and supply refuse none of it."""
    if solved.load > 1 + _ROUNDING or not all(section.holds for section in shorts.sections):
        return False
    for index, (plan, run) in enumerate(zip(arrangement.runs, solved.runs, strict=True)):
        if run.led_a.max() > plan.led_limit.current_a * (1 + _ROUNDING):
            return False
        resistor = plan.resistor
        if resistor.fitted:
            bears_w = rating_at_w(resistor.rating_w or 0.0, arrangement.warmest_c, resistor.kind)
            lasting_w = shorts.lasting_w(index, worst.runs[index].shorted_w)
            if max(run.resistor_w, lasting_w) > bears_w * (1 + _ROUNDING):
                return False
    return True


def _left_open(run: RunPlan, more_v: float) -> RunPlan:
    """The run with its resistor to be chosen; one without a resistor stays so if it gets no more volts."""
    if not run.resistor.fitted and more_v <= 0:
        return run
    resistor = replace(
        run.resistor,
        fitted=True,
        chosen=True,
        rating_chosen=True,
        kind_chosen=True,
        rating_w=None,
        kind=None,
    )
    return replace(run, resistor=resistor)
