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
