"""The supply: its volts at the ends of its tolerance, watts and load."""

from __future__ import annotations

from guidegen.calc.supply import load_share, lower_voltage_v, power_w, upper_voltage_v
from guidegen.calc.worked import work
from guidegen.guide.blocks import CalculationGroup
from guidegen.guide.format import percent
from guidegen.guide.matter import Matter
from guidegen.guide.worked import calculation
from guidegen.locale import _


def supply_sums(matter: Matter) -> CalculationGroup:
    """Volts, watts and load of the supply."""
    supply, solution = matter.arrangement.supply, matter.solution
    volts = {"voltage_v": supply.voltage_v, "tolerance": supply.tolerance}
    worst_a = matter.solved.margins.supply_a
    load = work(load_share, current_a=solution.supply_a, rated_a=supply.rated_a)
    return CalculationGroup(
        anchor="supply",
        title=_("Supply"),
        intro=_(
            "A supply rated for more current does not push more: the lights take what their resistors let "
            "through."
        ),
        calculations=(
            calculation(work(upper_voltage_v, **volts)),
            calculation(work(lower_voltage_v, **volts)),
            calculation(work(power_w, voltage_v=solution.source_v, current_a=solution.supply_a)),
            calculation(
                load,
                note=_("That is {load}; the goal is {goal} at most.").format(
                    load=percent(load.value), goal=percent(matter.project.goals.supply_load)
                ),
            ),
            calculation(
                work(load_share, current_a=worst_a, rated_a=supply.rated_a),
                _("Load of the supply, worst case"),
            ),
        ),
    )
