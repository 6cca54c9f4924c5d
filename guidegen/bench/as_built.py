"""The readings of the finished build beside what was expected, and what they mean."""

from __future__ import annotations

from dataclasses import dataclass

from guidegen.bench.diagnose import Diagnosis, diagnose
from guidegen.bench.spots import Spot, Taken
from guidegen.bench.suspects import suspects
from guidegen.circuit.arrangement import Arrangement
from guidegen.circuit.expected import ExpectedReading, Verdict
from guidegen.circuit.meter import Meter
from guidegen.circuit.points import TestPoint
from guidegen.circuit.solution import Solution
from guidegen.circuit.spread import Spread
from guidegen.project.schema import Project


@dataclass(frozen=True)
class Judged:
    """A reading taken, beside what was expected there."""

    taken: Taken
    expected: ExpectedReading

    @property
    def verdict(self) -> Verdict:
        """In range, borderline or out of range."""
        return self.expected.verdict(self.taken.shown)


@dataclass(frozen=True)
class AsBuilt:
    """All readings taken, and the diagnosis if any of them is out of range."""

    readings: tuple[Judged, ...]
    diagnosis: Diagnosis | None

    def at(self, reading: ExpectedReading) -> Judged | None:
        """What was read where this was expected, if it was read."""
        spot = spot_of(reading)
        return next((each for each in self.readings if each.taken.spot == spot), None)


def more_bulbs(project: Project, points: tuple[TestPoint, ...]) -> tuple[tuple[int, int], ...]:
    """Run (from 0) and bulb of every reading at a bulb that is no test point."""
    known = {(point.run, point.bulb) for point in points}
    spots = [taken.spot for taken in taken_of(project)]
    bulbs = [(spot.run, spot.bulb) for spot in spots if spot.run is not None and spot.bulb is not None]
    return tuple(each for each in bulbs if each not in known)


def taken_of(project: Project) -> tuple[Taken, ...]:
    """The readings of the project file."""
    names = [run.name for run in project.runs or ()]
    return tuple(
        Taken(
            Spot(each.at.kind, None if each.run is None else names.index(each.run), each.at.bulb),
            each.value.amount,
        )
        for each in project.readings
    )


def as_built(
    project: Project, arrangement: Arrangement, nominal: Solution, spread: Spread, meter: Meter
) -> AsBuilt:
    """Judge the project's readings; rank causes if any is out of range.

    `spread` must hold every bulb that was read (see `more_bulbs`).
    """
    expected = {spot_of(reading): reading for reading in spread.readings}
    taken = taken_of(project)
    judged = tuple(Judged(each, expected[each.spot]) for each in taken)
    if all(each.verdict != "out of range" for each in judged):
        return AsBuilt(judged, None)
    read = {each.spot.run for each in taken if each.spot.run is not None}
    runs = tuple(sorted(read)) or tuple(range(len(arrangement.runs)))
    currents = any(each.spot.kind == "current" for each in taken)
    known = suspects(arrangement, nominal, spread.draws, runs, currents=currents, meter=meter)
    return AsBuilt(judged, diagnose(known, taken))


def spot_of(reading: ExpectedReading) -> Spot:
    """Where a reading is expected."""
    if reading.quantity == "amperes in line":
        return Spot("current", reading.run)
    kind = "bulb" if reading.point is None else reading.point.kind
    return Spot(kind, reading.run, reading.bulb)
