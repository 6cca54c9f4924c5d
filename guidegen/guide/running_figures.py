"""Figures of running the lights, stated or typical, and how they are written."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property

from guidegen.calc import energy
from guidegen.calc.worked import Worked, work
from guidegen.circuit.cell_life import CellLife, cell_life
from guidegen.guide.format import NO_BREAK, fixed, number, quantity
from guidegen.guide.matter import Matter
from guidegen.locale.numerals import money as money  # noqa: PLC0414 - for those that use it from here
from guidegen.tables.limits import SMALL_SUPPLY_EFFICIENCY
from guidegen.tables.supplies import EVENING_H, SEASON_DAYS, STANDBY_W

_SECONDS = 3600.0


@dataclass(frozen=True, eq=False)
class Running:
    """What running the lights takes: figures stated in the file, or typical ones."""

    matter: Matter

    @property
    def efficiency(self) -> float:
        """Watts given over watts taken."""
        stated = self.matter.project.supply.efficiency
        return SMALL_SUPPLY_EFFICIENCY.value if stated is None else stated

    @property
    def standby_w(self) -> float:
        """Watts taken while the lights are off and the supply stays plugged in."""
        stated = self.matter.project.supply.standby
        return STANDBY_W.value if stated is None else stated

    @property
    def hours(self) -> float:
        """Hours on in a day."""
        stated = self.matter.project.hours_per_day
        return EVENING_H.value if stated is None else stated / _SECONDS

    @property
    def season_days(self) -> int:
        """Days in a year on which they are on."""
        stated = self.matter.project.days_per_season
        return SEASON_DAYS if stated is None else stated

    @cached_property
    def wall(self) -> Worked:
        """Watts from the outlet."""
        solution = self.matter.solution
        return work(
            energy.wall_w,
            voltage_v=solution.terminal_v,
            current_a=solution.supply_a,
            efficiency=self.efficiency,
        )

    @cached_property
    def day(self) -> Worked:
        """Kilowatt hours of a day."""
        return work(energy.day_kwh, on_w=self.wall.value, on_h=self.hours, off_w=self.standby_w)

    @property
    def currency(self) -> str:
        """Currency of the file's tariff; empty without one."""
        tariff = self.matter.project.tariff
        return "" if tariff is None else tariff.currency

    def paid(self, used_kwh: float) -> Worked:
        """Money for energy; only with a tariff."""
        tariff = self.matter.project.tariff
        assert tariff is not None, "money only with a tariff"
        return work(energy.cost, used_kwh=used_kwh, price_per_kwh=tariff.amount)

    @cached_property
    def lives(self) -> dict[str, CellLife]:
        """Hours on the cells they came with, by kind of string."""
        exponent = self.matter.arrangement.light_exponent
        return {
            name: cell_life(kind, self.matter.study.leds[name], kind.came_with, exponent)
            for name, kind in self.matter.kinds
            if kind.came_with is not None
        }


def kwh(value: float) -> str:
    """Kilowatt hours."""
    return quantity(value, "kWh")


def hours_text(value: float) -> str:
    """Hours, minutes below one."""
    return f"{number(value)}{NO_BREAK}h" if value >= 1 else f"{fixed(60 * value, 0)}{NO_BREAK}min"
