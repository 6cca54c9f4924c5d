"""Dead LEDs: what the rest carries when some of them no longer light."""

from __future__ import annotations

from guidegen.circuit.solve import solve
from guidegen.circuit.variants import with_dead
from guidegen.guide.blocks import CalculationGroup, Column, Table
from guidegen.guide.format import percent, quantity
from guidegen.guide.matter import Matter
from guidegen.locale import _

#: Shares of the LEDs that are dead.
SHARES = (0.0, 0.10, 0.25)


def dead_sums(matter: Matter) -> CalculationGroup:
    """Current of the rest with some LEDs dead, run by run."""
    return CalculationGroup(
        anchor="dead-leds",
        title=_("When LEDs die"),
        intro=_(
            "An LED that dies open leaves its share of the current to the others. The resistor holds that "
            "within bounds: the whole circuit solved again, the dead ones spread evenly over the bulbs."
        ),
        calculations=(),
        tables=(_table(matter),),
    )


def _table(matter: Matter) -> Table:
    solved = [solve(with_dead(matter.arrangement, share)) for share in SHARES]
    rows = []
    for index, run in enumerate(matter.runs):
        for share, solution in zip(SHARES, solved, strict=True):
            found = solution.runs[index]
            rows.append(
                (
                    _("{run}, {share} dead").format(
                        run=run.name, share=percent(share) if share else _("none")
                    ),
                    quantity(found.current_a, "A"),
                    quantity(found.mean_led_a, "A"),
                    quantity(float(found.led_a.max()), "A"),
                    quantity(run.led_limit.current_a, "A"),
                )
            )
    return Table(
        caption=_("Current of the rest with LEDs dead"),
        columns=(
            Column(_("Run, and how many of its LEDs")),
            Column(_("Current of the run"), numeric=True),
            Column(_("Mean LED left"), numeric=True),
            Column(_("LED of the brightest bulb"), numeric=True),
            Column(_("Limit of one LED"), numeric=True),
        ),
        rows=tuple(rows),
        note=_("All else as planned. In a group of LEDs in series, one that dies takes the others with it."),
    )
