"""How often the diagnosis finds what was put into a build: `python -m tests.bench.test_diagnose_rates`."""

from __future__ import annotations

from collections import defaultdict
from functools import cache
from pathlib import Path

import numpy as np
import pytest

from guidegen.bench.diagnose import Cause, Diagnosis, diagnose
from guidegen.bench.faults import Fault
from guidegen.bench.spots import Spot, Taken
from guidegen.bench.suspects import Suspects, suspects
from guidegen.circuit.expected import ExpectedReading
from guidegen.circuit.meter import Meter
from guidegen.circuit.spread import Spread, expected_spread
from guidegen.study import study
from tests.bench.faulty_builds import FAULTS, VOLTS, Truth, readings, sound_house, usual_spots

HERE = Path(__file__).parent
PROJECTS = (HERE.parents[1] / "sample_project" / "potting-bench.yaml", *sorted(HERE.glob("built/*.yaml")))
CASES = 48  # of each form, over all projects
METER = Meter(volts=VOLTS)
#: The eight classes of the table; two of them have two forms.
CLASS = {
    "resistor, next value": "resistor",
    "resistor, band x10": "resistor",
    "supply off": "supply",
    "string reversed": "reversed",
    "open from bulb n on": "open",
    "joint of extra ohms": "joint",
    "part of the LEDs dead": "dead LEDs",
    "meter burden": "burden",
    "meter left in line": "burden",
    "more bulbs than stated": "more bulbs",
}


@cache
def prepared(path: Path) -> tuple[Suspects, Suspects, Spread]:
    """Suspects of a project, without and with currents read, and what is expected of it."""
    solved = study(path).solved
    assert solved is not None
    points = {(point.run, point.bulb) for point in solved.points}
    bulbs = [(spot.run or 0, spot.bulb) for spot in usual_spots(solved.arrangement) if spot.bulb]
    more = tuple(each for each in bulbs if each not in points)
    spread = expected_spread(solved.arrangement, solved.solution, meter=METER, more_bulbs=more)
    runs = tuple(range(len(solved.arrangement.runs)))
    volts, amperes = (
        suspects(solved.arrangement, solved.solution, spread.draws, runs, currents=currents, meter=METER)
        for currents in (False, True)
    )
    return volts, amperes, spread


def out(spread: Spread, taken: tuple[Taken, ...]) -> bool:
    """Whether any of the readings is out of its range."""
    ranges = {_spot(reading): reading for reading in spread.readings}
    return any(ranges[each.spot].verdict(each.shown) == "out of range" for each in taken)


def _spot(reading: ExpectedReading) -> Spot:
    if reading.quantity == "amperes in line":
        return Spot("current", reading.run)
    kind = "bulb" if reading.point is None else reading.point.kind
    return Spot(kind, reading.run, reading.bulb)


def found_at(truth: Truth, diagnosis: Diagnosis) -> int:
    """The rank of the truth, from 1; 0 if it is not among the causes."""
    ranks = [k for k, cause in enumerate(diagnosis.causes, 1) if names(cause, truth)]
    return ranks[0] if ranks else 0


def names(cause: Cause, truth: Truth) -> bool:
    return any(_is(fault, truth) for fault in (cause.fault, *cause.twins))


def _is(fault: Fault, truth: Truth) -> bool:
    """The same kind in the same run, and the same resistor, piece or joint."""
    if (fault.kind, fault.run) != (truth.kind, truth.run):
        return False
    if truth.ohm:
        return fault.amount == pytest.approx(truth.ohm)
    if truth.kind == "joint":
        return (fault.place, fault.bulb) == (truth.place, truth.bulb)
    return fault.kind != "reversed" or fault.piece == truth.piece


@cache
def table() -> dict[str, tuple[int, int, int, int]]:
    """Of every class: builds, detected, truth first, truth among the first two."""
    random = np.random.default_rng(2024)
    counts: dict[str, list[int]] = defaultdict(lambda: [0, 0, 0, 0])
    for number in range(CASES):
        path = PROJECTS[number % len(PROJECTS)]
        for name, change in FAULTS.items():
            volts, amperes, spread = prepared(path)
            known = amperes if name == "meter burden" else volts
            house = sound_house(known.arrangement, random)
            truth = change(house, random)
            spots = usual_spots(known.arrangement)
            if name == "meter burden":
                spots += tuple(Spot("current", run) for run in range(len(known.arrangement.runs)))
            taken = readings(house, spots, random, METER.amperes)
            counts[name][0] += 1
            if not out(spread, taken):
                continue
            rank = found_at(truth, diagnose(known, taken))
            counts[name][1] += 1
            counts[name][2] += rank == 1
            counts[name][3] += rank in (1, 2)
    return {name: (c[0], c[1], c[2], c[3]) for name, c in counts.items()}


def by_class() -> dict[str, np.ndarray]:
    """The same by the eight classes, and in all."""
    found = {name: np.zeros(4, dtype=int) for name in (*dict.fromkeys(CLASS.values()), "all")}
    for name, row in table().items():
        found[CLASS[name]] += row
        found["all"] += row
    return found


def as_text() -> str:
    """The table, for a person."""
    rows = [f"{'fault':<26}{'builds':>8}{'detected':>10}{'first':>8}{'first two':>11}"]
    for name, counts in (*table().items(), *by_class().items()):
        builds, detected, first, two = counts
        rows.append(f"{name:<26}{builds:>8}{detected:>10}{first / detected:>8.0%}{two / detected:>11.0%}")
    return "\n".join(rows)


def test_the_set_is_as_large_as_asked_for() -> None:
    counts = by_class()
    print(as_text())
    assert len(counts) == 8 + 1
    assert counts["all"][0] >= 320
    assert all(builds >= 40 and detected >= 10 for builds, detected, _, _ in counts.values())


@pytest.mark.parametrize("name", [*dict.fromkeys(CLASS.values()), "all"])
def test_the_true_cause_is_first_in_85_and_among_the_first_two_in_95_of_100(name: str) -> None:
    _, detected, first, two = by_class()[name]
    assert first / detected >= 0.85
    assert two / detected >= 0.95


if __name__ == "__main__":
    print(as_text())
