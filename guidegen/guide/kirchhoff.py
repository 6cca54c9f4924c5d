"""Solved values put back into Kirchhoff's laws: left, right, and what is left over."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from guidegen.calc.led import group_voltage_v
from guidegen.calc.wire import voltage_drop_v
from guidegen.guide.blocks import Calculation, Symbol
from guidegen.guide.format import NO_BREAK
from guidegen.guide.matter import Matter
from guidegen.guide.worked import plain
from guidegen.locale import _

#: Figures of a residual.
_FIGURES = 2


@dataclass(frozen=True)
class Balance:
    """Two sides that a law sets equal: `left`, the summands of the right side, and their difference."""

    left: float
    summands: tuple[float, ...]

    @property
    def right(self) -> float:
        """Sum of the right side."""
        return sum(self.summands)

    @property
    def residual(self) -> float:
        """Left less right."""
        return self.left - self.right


def volts_around(matter: Matter, index: int) -> Balance:
    """Supply volts against the drops round the loop through the last lit bulb of a run.

    The drops are supply's inside, lead, resistor, feeder, the run's wires
    both ways, and the bulb by its LED's curve at the solved current.
    """
    solution, supply = matter.solution, matter.arrangement.supply
    run, solved = matter.runs[index], solution.runs[index]
    bulb = int(np.flatnonzero(solved.lit)[-1])
    lead_ohm = 0.0 if supply.lead is None else supply.lead.ohm
    feeder_ohm = 0.0 if run.feeder is None else run.feeder.ohm
    curve = run.led.curve
    return Balance(
        solution.source_v,
        (
            voltage_drop_v(solution.supply_a, supply.output_ohm),
            voltage_drop_v(solution.supply_a, 2 * lead_ohm),
            voltage_drop_v(solved.current_a, run.resistor.ohm),
            voltage_drop_v(solved.current_a, 2 * feeder_ohm),
            solved.feed_v - float(solved.plus_v[bulb] - solved.minus_v[bulb]),
            group_voltage_v(
                float(solved.led_a[bulb]),
                run.leds_in_series,
                curve.slope_v,
                curve.saturation_a,
                curve.resistance_ohm,
                run.group_ohm,
            ),
        ),
    )


def currents_of_bulbs(matter: Matter, index: int) -> Balance:
    """The run's current against the sum of its bulbs' currents."""
    solved = matter.solution.runs[index]
    return Balance(solved.current_a, (float(solved.bulb_a.sum()),))


def loop_calculation(matter: Matter, index: int) -> Calculation:
    """The loop through the last lit bulb, as a block."""
    balance = volts_around(matter, index)
    bulb = int(np.flatnonzero(matter.solution.runs[index].lit)[-1]) + 1
    names = ("V_in", "V_lead", "V_res", "V_feeder", "V_wire", "V_bulb")
    meanings = (
        _("lost inside the supply"),
        _("lost in the shared lead, both ways"),
        _("across the resistor"),
        _("lost in the feeder, both ways"),
        _("lost in the run's own wires up to the bulb, both ways"),
        _("across bulb {bulb}, by the LED's curve at its solved current").format(bulb=bulb),
    )
    return Calculation(
        title=_("Volts round the loop through bulb {bulb}").format(bulb=bulb),
        formula="V = V_in + V_lead + V_res + V_feeder + V_wire + V_bulb",
        symbols=(
            Symbol("V", _("no-load voltage of the supply"), _volts(balance.left)),
            *(
                Symbol(name, meaning, _volts(value))
                for name, meaning, value in zip(names, meanings, balance.summands, strict=True)
            ),
        ),
        substituted=f"{_volts(balance.left)} = {' + '.join(_volts(each) for each in balance.summands)}",
        result=_sides(balance, "V"),
        source=_("Kirchhoff's voltage law"),
        note=_("The currents were solved all at once; this shows that they fit."),
    )


def node_calculation(matter: Matter, index: int) -> Calculation:
    """The sum of the bulbs' currents, as a block."""
    balance = currents_of_bulbs(matter, index)
    lit = matter.solution.runs[index].bulb_a[matter.solution.runs[index].lit]
    first, last = plain(float(lit[0])), plain(float(lit[-1]))
    return Calculation(
        title=_("Currents of all bulbs together"),
        formula="I = I_first + … + I_last",
        symbols=(
            Symbol("I", _("current of the run"), _amperes(balance.left)),
            Symbol("I_first", _("current of the first lit bulb"), f"{first}{NO_BREAK}A"),
            Symbol("I_last", _("current of the last lit bulb"), f"{last}{NO_BREAK}A"),
        ),
        substituted=f"{_amperes(balance.left)} = {first}{NO_BREAK}A + … + {last}{NO_BREAK}A",
        result=_sides(balance, "A"),
        source=_("Kirchhoff's current law"),
    )


def _sides(balance: Balance, unit: str) -> str:
    return _("left {left}, right {right}, left over {residual}").format(
        left=f"{plain(balance.left, 6)}{NO_BREAK}{unit}",
        right=f"{plain(balance.right, 6)}{NO_BREAK}{unit}",
        residual=f"{plain(balance.residual, _FIGURES)}{NO_BREAK}{unit}",
    )


def _volts(value: float) -> str:
    return f"{plain(value)}{NO_BREAK}V"


def _amperes(value: float) -> str:
    return f"{plain(value)}{NO_BREAK}A"
