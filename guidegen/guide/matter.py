"""What every page is written from: the study, its solved half, and the expected readings."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property
from typing import TYPE_CHECKING

from guidegen.choose.differing import StringRow, SupplyRow, string_table, supply_table, told_apart
from guidegen.circuit.arrangement import Arrangement, RunPlan
from guidegen.circuit.expected import ExpectedReading
from guidegen.circuit.points import PointKind, TestPoint
from guidegen.circuit.solution import Solution
from guidegen.guide.predicted import (
    BenchPower,
    Predicted,
    TestPower,
    bench_power,
    first_power,
    metered_volts,
)
from guidegen.parts.opened import Bared, first_bared
from guidegen.project.schema import LightString, Project
from guidegen.study import Solved, Study

if TYPE_CHECKING:
    from guidegen.bench.next import NextReadings


@dataclass(frozen=True, eq=False)
class Matter:
    """The matter of a guide; there is none without a solved study."""

    study: Study
    solved: Solved
    readings: tuple[ExpectedReading, ...]

    @property
    def project(self) -> Project:
        """The project as read."""
        return self.study.project

    @property
    def arrangement(self) -> Arrangement:
        """Every decision made."""
        return self.solved.arrangement

    @property
    def solution(self) -> Solution:
        """The solved arrangement."""
        return self.solved.solution

    @property
    def runs(self) -> tuple[RunPlan, ...]:
        """The runs in order."""
        return self.solved.arrangement.runs

    @property
    def outdoors(self) -> bool:
        """Whether the lights hang outdoors, roofed or not."""
        return self.project.place.exposure != "indoors"

    @property
    def kinds(self) -> tuple[tuple[str, LightString], ...]:
        """Kinds of string that a run uses, in order of first use."""
        used = dict.fromkeys(run.string for run in self.runs)
        return tuple((name, self.project.strings[name]) for name in used)

    @cached_property
    def first_powers(self) -> tuple[TestPower, ...]:
        """What each run shows alone behind its test resistor."""
        return tuple(
            first_power(self.arrangement, index, self.solution, self.study.meter)
            for index in range(len(self.runs))
        )

    @cached_property
    def bench_powers(self) -> Mapping[str, BenchPower]:
        """What one whole string of each kind shows on the bench, by its name."""
        return {name: self._bench_power(name, kind) for name, kind in self.kinds}

    @cached_property
    def supply_reads(self) -> Predicted:
        """What the supply shows with nothing connected."""
        supply = self.arrangement.supply
        return metered_volts(supply.voltage_v, supply.lower_v, supply.upper_v, self.study.meter)

    @cached_property
    def supply_rows(self) -> tuple[SupplyRow, ...]:
        """What to fit to supplies that read outside that range; empty where there is nothing to tell."""
        right = self.supply_reads
        load = self.project.goals.resistor_load
        rows = supply_table(self.arrangement, self.solution, load, (right.low, right.high))
        return rows if len(rows) > 1 else ()

    @cached_property
    def string_rows(self) -> Mapping[str, tuple[StringRow, ...]]:
        """The same for strings of each kind that read otherwise on the bench, by its name."""
        found = {name: self._string_rows(name, kind) for name, kind in self.kinds}
        return {name: rows for name, rows in found.items() if rows}

    def _string_rows(self, name: str, kind: LightString) -> tuple[StringRow, ...]:
        power, load = self.bench_powers[name], self.project.goals.resistor_load
        right = power.after_resistor_v
        rows = string_table(
            self.arrangement, self.solution, load, name, kind, power.ohm, (right.low, right.high)
        )
        return told_apart(rows, self.study.meter)

    @cached_property
    def next_readings(self) -> Mapping[str, NextReadings]:
        """By kind of string: what to read on the bench, with the listed test resistors alone."""
        if all(kind.bench for _name, kind in self.kinds):
            return {}
        from guidegen.bench.next import readings_to_take  # noqa: PLC0415 - most files have a bench reading

        ohms = {power.ohm for power in self.first_powers} | {each.ohm for each in self.bench_powers.values()}
        return readings_to_take(self.project, self.arrangement, self.study.meter, sorted(ohms))

    def _bench_power(self, name: str, kind: LightString) -> BenchPower:
        index = self.first_run_of(name)
        solved = self.solution.runs[index]
        led = self.runs[index].led
        bared = self.bared(name)
        bulb = None if bared is None else bared.bulb
        return bench_power(
            self.arrangement,
            kind,
            led,
            solved.mean_led_a,
            solved.after_resistor_v,
            bulb,
            self.study.meter,
        )

    def bared(self, name: str) -> Bared | None:
        """The first place where a string of a kind is cut, joined or tapped later; None if it stays whole."""
        return first_bared(self.runs, name)

    def first_run_of(self, name: str) -> int:
        """Index of the first run that uses a kind of string."""
        return next(index for index, run in enumerate(self.runs) if run.string == name)

    @staticmethod
    def diode_test_tells(kind: LightString) -> bool:
        """Whether a meter's diode test can tell which way round a piece is.

        Its few volts light no LEDs in series, and a two-way string conducts
        both ways.
        """
        return kind.leds_in_series == 1 and kind.lit_on_dc == "all"

    def kind_of(self, run: RunPlan) -> LightString:
        """The kind of string of a run."""
        return self.project.strings[run.string]

    def points_of(self, run: int | None) -> tuple[TestPoint, ...]:
        """Test points of a run, or of the supply."""
        return tuple(point for point in self.solved.points if point.run == run)

    def point(self, kind: PointKind, run: int | None = None, bulb: int | None = None) -> TestPoint:
        """The test point at a place; LookupError when there is none."""
        for point in self.solved.points:
            if (point.kind, point.run, point.bulb) == (kind, run, bulb):
                return point
        raise LookupError(f"no test point: {kind}, run {run}, bulb {bulb}")

    def reading_at(self, point: TestPoint) -> ExpectedReading:
        """The expected volts at a test point; LookupError when nothing was worked out for it."""
        for reading in self.readings:
            if reading.quantity == "volts" and reading.point == point:
                return reading
        raise LookupError(f"no expected reading at {point.label}")

    def current_of(self, run: int | None) -> ExpectedReading | None:
        """The expected current of a run (None: all runs) as a meter in line shows it, if worked out."""
        for reading in self.readings:
            if reading.quantity == "amperes in line" and reading.run == run:
                return reading
        return None
