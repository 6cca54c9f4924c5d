"""The same arrangement with one thing changed."""

from __future__ import annotations

from dataclasses import replace

from guidegen.circuit.arrangement import Arrangement


def only_run(arrangement: Arrangement, index: int) -> Arrangement:
    """The arrangement with run `index` alone connected."""
    return replace(arrangement, runs=(arrangement.runs[index],))


def with_resistor(arrangement: Arrangement, index: int, ohm: float) -> Arrangement:
    """The arrangement with another resistor in run `index`, ohm."""
    runs = list(arrangement.runs)
    runs[index] = replace(runs[index], resistor=replace(runs[index].resistor, ohm=ohm))
    return replace(arrangement, runs=tuple(runs))


def with_resistors(arrangement: Arrangement, ohms: tuple[float, ...]) -> Arrangement:
    """The arrangement with these resistors, ohm, one a run."""
    for index, ohm in enumerate(ohms):
        arrangement = with_resistor(arrangement, index, ohm)
    return arrangement


def with_dead(arrangement: Arrangement, share: float) -> Arrangement:
    """The arrangement with a share (0 to 1) of all LED groups dead, evenly over the bulbs."""
    runs = [replace(run, lit_groups=run.lit_groups * (1 - share)) for run in arrangement.runs]
    return replace(arrangement, runs=tuple(runs))
