"""The numbers: every calculation worked, the worst cases, what is left out, and the project file."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import PurePath

from guidegen.calc.light import evenness_of
from guidegen.calc.worked import work
from guidegen.guide.blocks import CalculationGroup
from guidegen.guide.corners import corners_table
from guidegen.guide.format import percent
from guidegen.guide.matter import Matter
from guidegen.guide.pages import NumbersPage
from guidegen.guide.sums.dead import dead_sums
from guidegen.guide.sums.differing import differing_tables
from guidegen.guide.sums.fuse import fuse_sums
from guidegen.guide.sums.leds import led_sums
from guidegen.guide.sums.run import run_sums
from guidegen.guide.sums.supply import supply_sums
from guidegen.guide.sums.wires import wire_sums
from guidegen.guide.worked import calculation
from guidegen.locale import _


def numbers_page(matter: Matter, steps: Mapping[str, int]) -> NumbersPage:
    """The page of sums; `steps`: the numbers of the steps of “Build it”, by their identities."""
    return NumbersPage(
        groups=(
            supply_sums(matter),
            wire_sums(matter),
            led_sums(matter),
            *(run_sums(matter, index) for index in range(len(matter.runs))),
            _evenness(matter),
            fuse_sums(matter),
            dead_sums(matter),
            *differing_tables(matter, steps),
        ),
        corners=corners_table(matter),
        left_out=left_out(),
        project_file_name=PurePath(matter.study.file.name).name,
        project_file=matter.study.file.source_text,
    )


def _evenness(matter: Matter) -> CalculationGroup:
    light = [solved.light[solved.lit] for solved in matter.solution.runs if solved.lit.any()]
    dimmest = min((float(each.min()) for each in light), default=0.0)
    brightest = max((float(each.max()) for each in light), default=1.0)
    return CalculationGroup(
        anchor="evenness",
        title=_("Evenness of the whole installation"),
        intro=_("Light counts in shares of the brightest of all bulbs."),
        calculations=(
            calculation(
                work(evenness_of, dimmest=dimmest, brightest=brightest),
                note=_("The goal is {goal}.").format(goal=percent(matter.project.goals.evenness)),
            ),
        ),
    )


def left_out() -> tuple[str, ...]:
    """What the model does not know."""
    return (
        _("LEDs grow dimmer and their volts drift over the years."),
        _(
            "LEDs within one bulb differ; beyond the stated spread one of them may take far more than its "
            "share."
        ),
        _("Joints, terminals and plugs count as perfect. A poor one adds ohms that only a meter finds."),
        _(
            "The fuse counts as having no resistance. Below about 250 mA fuses have ohms of their own, "
            "which take volts from the lights and make a short's current smaller."
        ),
        _("LEDs and wires are as warm as the air; their own warmth is left out."),
        _("Light goes with current. Real LEDs give a little less than that at high current."),
        _("The supply holds its volts up to its rated current; ripple is left out."),
        _("Resistor temperatures are estimates in free air; a closed box makes them higher."),
        _("Meters are taken to be as good as a usual hand-held one."),
    )
