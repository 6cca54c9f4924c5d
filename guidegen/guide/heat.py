"""How warm the resistors get."""

from __future__ import annotations

from dataclasses import dataclass

from guidegen.calc.resistor import body_degc, hottest_rise_k
from guidegen.guide.matter import Matter
from guidegen.tables.conductors import REFERENCE_DEGC


@dataclass(frozen=True)
class ResistorHeat:
    """Surface of one run's resistor in degC: running, at its worst corner, with its run shorted."""

    run: int
    running_c: float
    worst_c: float
    shorted_c: float


def resistor_heat(matter: Matter, index: int, air_degc: float = REFERENCE_DEGC) -> ResistorHeat:
    """Estimate for the resistor of run `index` in free air; an unknown kind counts as the worst."""
    resistor = matter.runs[index].resistor
    rating_w = resistor.rating_w
    assert rating_w is not None, "a solved study has its ratings picked"
    rise_k = hottest_rise_k(resistor.kind)
    worst = matter.solved.margins.runs[index]

    def surface(power_w: float) -> float:
        return body_degc(air_degc, rise_k, power_w, rating_w)

    return ResistorHeat(
        index,
        surface(matter.solution.runs[index].resistor_w),
        surface(worst.resistor_w),
        surface(worst.shorted_w),
    )
