"""The same lights on the cells they came with: hours, sets, money, and the pay-back of the supply."""

from __future__ import annotations

import math
from collections.abc import Iterator

from guidegen.calc.energy import pay_back_days
from guidegen.circuit.cell_life import SPENT, CellLife
from guidegen.guide.blocks import Column, Table
from guidegen.guide.format import NO_BREAK, NOTHING, fixed, number, percent, quantity
from guidegen.guide.pages import Section
from guidegen.guide.running_figures import Running, hours_text, money
from guidegen.locale import _, ngettext
from guidegen.project.schema import CameWith
from guidegen.tables import cells as table
from guidegen.tables.supplies import SUPPLY_PRICE

_WEEK = 7


def cells_section(running: Running) -> Section:
    """Hours on a set for every kind of string, and what a season takes."""
    return Section(
        anchor="cells",
        title=_("Against the cells it came with"),
        text=tuple(_text(running)),
        points=tuple(_money_lines(running)),
        tables=(_table(running),),
    )


def _text(running: Running) -> Iterator[str]:
    yield _(
        "One uncut string on one set, solved again and again while its cells run down: as their volts fall, "
        "so do current and light. Capacity over the first current would miss that."
    )
    sizes = {_cells(running, name).size for name in running.lives}
    sources = dict.fromkeys(
        _(text)
        for size in sorted(sizes)
        for text in (table.discharge_of(size).source, table.CELLS[size].capacity_source)
    )
    yield _("Cells: {sources}. In frost alkaline cells give about half of that.").format(
        sources="; ".join(sources)
    )


def _table(running: Running) -> Table:
    return Table(
        caption=_("One string on its own cells"),
        columns=(
            Column(_("String")),
            Column(_("Cells")),
            Column(_("Current, fresh"), numeric=True),
            Column(_("Down to half the light"), numeric=True),
            Column(_("Used up"), numeric=True),
            Column(_("Sets a season, all strings"), numeric=True),
        ),
        rows=tuple(_row(running, name, life) for name, life in running.lives.items()),
        note=_(
            "Used up: {light} of the first light, or the cells are flat. A season is {days} days of {hours}."
        ).format(light=percent(SPENT), days=running.season_days, hours=hours_text(running.hours)),
    )


def _row(running: Running, name: str, life: CellLife) -> tuple[str, ...]:
    cells = _cells(running, name)
    return (
        name,
        _("{count} {size}").format(count=cells.cells, size=cells.size),
        quantity(life.fresh_a, "A"),
        _hours(life.tired_h),
        _hours(life.spent_h),
        NOTHING if math.isinf(life.spent_h) else number(_sets(running, name)),
    )


def _hours(value: float) -> str:
    return NOTHING if math.isinf(value) else f"{fixed(value, 0)}{NO_BREAK}h"


def _cells(running: Running, name: str) -> CameWith:
    cells = running.matter.project.strings[name].came_with
    assert cells is not None, "lives are worked out for strings with cells alone"
    return cells


def _strings(running: Running, name: str) -> int:
    """Strings of this kind that the runs take bulbs of."""
    runs = [run for run in running.matter.runs if run.string == name]
    return len({piece.string_number for run in runs for piece in run.pieces})


def _sets(running: Running, name: str) -> float:
    """Sets of cells a season, all strings of this kind together."""
    return _strings(running, name) * running.hours * running.season_days / running.lives[name].spent_h


def _money_lines(running: Running) -> Iterator[str]:
    """Money on both sides, where the file has a tariff."""
    if not running.currency or any(math.isinf(life.spent_h) for life in running.lives.values()):
        return
    cells_cost = sum(_season_cost(running, name) for name in running.lives)
    supply_cost = running.paid(running.day.value * running.season_days).value
    yield _("A season on cells costs about {cells}, on the supply {supply}.").format(
        cells=money(cells_cost, running.currency), supply=money(supply_cost, running.currency)
    )
    price = _supply_price(running)
    days = pay_back_days(price, (cells_cost - supply_cost) / running.season_days)
    if math.isinf(days):
        yield _("The supply does not pay for itself by the cells it saves.")
    else:
        yield _("A supply of {price} has paid for itself after {time}.").format(
            price=money(price, running.currency), time=_time(days)
        )
    yield from _typical_prices(running)


def _season_cost(running: Running, name: str) -> float:
    return _sets(running, name) * _cells(running, name).cells * _cell_price(running, name)


def _cell_price(running: Running, name: str) -> float:
    stated = running.matter.project.prices.cell
    return table.PRICES[_cells(running, name).size] if stated is None else stated.amount


def _supply_price(running: Running) -> float:
    stated = running.matter.project.prices.supply
    return SUPPLY_PRICE.value if stated is None else stated.amount


def _typical_prices(running: Running) -> Iterator[str]:
    prices = running.matter.project.prices
    missing = [
        text
        for price, text in (
            (prices.cell, _("a cell ({source})").format(source=_(table.PRICE_SOURCE))),
            (prices.supply, _("the supply ({source})").format(source=_(SUPPLY_PRICE.source))),
        )
        if price is None
    ]
    if missing:
        yield _("Price not in the project file: {parts}.").format(parts="; ".join(missing))


def _time(days: float) -> str:
    if days > 2 * _WEEK:
        weeks = math.ceil(days / _WEEK)
        return ngettext("{count} week", "{count} weeks", weeks).format(count=weeks)
    count = math.ceil(days)
    return ngettext("{count} day", "{count} days", count).format(count=count)
