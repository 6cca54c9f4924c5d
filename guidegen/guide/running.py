"""Running it: watts and money, the cells it came with, timers and power banks, cold and warm, care."""

from __future__ import annotations

from collections.abc import Iterator

from guidegen.guide.blocks import Calculation, Column, Fact, Table
from guidegen.guide.care import care_sections
from guidegen.guide.format import NO_BREAK, number, percent, quantity
from guidegen.guide.matter import Matter
from guidegen.guide.on_cells import cells_section
from guidegen.guide.pages import RunningPage, Section
from guidegen.guide.running_figures import Running, hours_text, kwh, money
from guidegen.guide.switching import power_bank_section, timer_section
from guidegen.guide.warmth import warmth_section
from guidegen.guide.worked import calculation
from guidegen.locale import _
from guidegen.tables.limits import SMALL_SUPPLY_EFFICIENCY
from guidegen.tables.supplies import EVENING_H, MONTH_DAYS, STANDBY_W


def running_page(matter: Matter) -> RunningPage:
    """The page; money only with a tariff."""
    running = Running(matter)
    sections = [_energy(running)]
    if running.lives:
        sections.append(cells_section(running))
    sections.append(timer_section(running))
    sections += power_bank_section(running)
    return RunningPage(
        lead=tuple(_lead(running)),
        sections=(*sections, warmth_section(matter), *care_sections(matter)),
    )


def _lead(running: Running) -> Iterator[str]:
    day = running.day.value
    yield _(
        "On for {hours} a day, the lights take {watts} from the outlet and {energy} in a season of "
        "{days} days."
    ).format(
        hours=hours_text(running.hours),
        watts=quantity(running.wall.value, "W"),
        energy=kwh(day * running.season_days),
        days=running.season_days,
    )
    if running.currency:
        yield _("That costs {money} a season.").format(
            money=money(running.paid(day * running.season_days).value, running.currency)
        )
    assumed = tuple(_assumed(running))
    if assumed:
        yield _("Not in the project file, so taken as typical: {values}.").format(values="; ".join(assumed))


def _assumed(running: Running) -> Iterator[str]:
    project = running.matter.project
    if project.supply.efficiency is None:
        yield _("efficiency of the supply {share} ({source})").format(
            share=percent(running.efficiency), source=_(SMALL_SUPPLY_EFFICIENCY.source)
        )
    if project.supply.standby is None:
        yield _("{watts} with the lights off ({source})").format(
            watts=quantity(running.standby_w, "W"), source=_(STANDBY_W.source)
        )
    if project.hours_per_day is None:
        yield _("{hours} a day ({source})").format(
            hours=hours_text(running.hours), source=_(EVENING_H.source)
        )


def _energy(running: Running) -> Section:
    solution = running.matter.solution
    facts = [
        Fact(_("In the lights and their wires"), quantity(solution.terminal_v * solution.supply_a, "W")),
        Fact(_("From the outlet, on"), quantity(running.wall.value, "W")),
        Fact(_("From the outlet, off"), quantity(running.standby_w, "W"), _("none when unplugged")),
    ]
    sums = [calculation(running.wall), calculation(running.day)]
    if running.currency:
        sums.append(_cost_sum(running))
    return Section(
        anchor="energy",
        title=_("Energy") if not running.currency else _("Energy and money"),
        facts=tuple(facts),
        tables=(_periods(running),),
        sums=tuple(sums),
    )


def _cost_sum(running: Running) -> Calculation:
    season = running.day.value * running.season_days
    return calculation(
        running.paid(season),
        title=_("Cost of a season"),
        note=_("In {currency}; {days} times the energy of a day.").format(
            currency=running.currency, days=running.season_days
        ),
    )


def _periods(running: Running) -> Table:
    """Energy and money of a day, a month, a season."""
    columns = [Column(_("Time")), Column(_("Hours on"), numeric=True), Column(_("Energy"), numeric=True)]
    if running.currency:
        columns.append(Column(_("Money"), numeric=True))
    return Table(
        caption=_("A day, a month and a season"),
        columns=tuple(columns),
        rows=tuple(
            _period(running, name, days)
            for name, days in (
                (_("a day"), 1),
                (_("a month of {days} days").format(days=MONTH_DAYS), MONTH_DAYS),
                (_("a season of {days} days").format(days=running.season_days), running.season_days),
            )
        ),
    )


def _period(running: Running, name: str, days: int) -> tuple[str, ...]:
    used = running.day.value * days
    row = (name, f"{number(running.hours * days)}{NO_BREAK}h", kwh(used))
    return (*row, money(running.paid(used).value, running.currency)) if running.currency else row
