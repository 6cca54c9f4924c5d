"""The page Running it."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from guidegen.circuit.conditions import Conditions
from guidegen.circuit.solve import solve
from guidegen.guide.pages import RunningPage, Section
from guidegen.guide.running_figures import Running
from guidegen.study import study
from tests.guide.projects import Made, changed, make, of_study, texts

EXAMPLE = Path(__file__).parents[1] / "examples" / "l-shape.yaml"
CELLS = {"cells": 3, "size": "AA", "resistor": "15 ohm"}


@pytest.fixture(scope="module")
def corner() -> Made:
    return of_study(study(EXAMPLE))


def section(made: Made, anchor: str) -> Section:
    page: RunningPage = made.page("running.html")
    return next(each for each in page.sections if each.anchor == anchor)


def anchors(made: Made) -> list[str]:
    return [each.anchor for each in made.page("running.html").sections]


def with_cells(**changes: Any) -> Made:
    return make(changed(strings__drop__came_with=CELLS, **changes))


def said(made: Made) -> str:
    return " ".join(text for _field, text in texts(made.page("running.html"))).replace("\u00a0", " ")


def test_watts_from_the_wall_are_those_of_the_lights_over_the_efficiency(corner: Made) -> None:
    solution = corner.matter.solution
    expected = solution.terminal_v * solution.supply_a / 0.75  # stated in the example
    assert Running(corner.matter).wall.value == pytest.approx(expected)


def test_energy_of_a_season(corner: Made) -> None:
    """By hand: 90 days of 5 h at the wall's watts and 19 h at the stated 0.1 W."""
    running = Running(corner.matter)
    expected = 90 * (running.wall.value * 5 + 0.1 * 19) / 1000
    assert running.day.value * 90 == pytest.approx(expected)


def test_money_is_told_only_with_a_tariff(corner: Made, plain: Made) -> None:
    assert "EUR" in said(corner)
    assert "EUR" not in said(plain)
    assert section(plain, "energy").title == "Energy"


def test_what_is_not_stated_is_marked_as_typical(plain: Made, corner: Made) -> None:
    assert any("taken as typical" in line for line in plain.page("running.html").lead)
    assert not any("taken as typical" in line for line in corner.page("running.html").lead)


def test_cells_are_told_only_where_strings_came_with_them(plain: Made) -> None:
    assert "cells" not in anchors(plain)
    assert "cells" in anchors(with_cells())


def test_hours_on_a_set_are_more_than_capacity_over_the_first_current() -> None:
    made = with_cells()
    life = Running(made.matter).lives["drop"]
    assert f"{life.spent_h:.0f}\u00a0h" in section(made, "cells").tables[0].rows[0]
    assert life.spent_h > life.naive_h


def test_sets_of_a_season_count_every_string_in_use() -> None:
    """By hand: one string of 12 bulbs is used, 90 days of 5 h."""
    made = with_cells(hours_per_day="5 h")
    life = Running(made.matter).lives["drop"]
    assert float(section(made, "cells").tables[0].rows[0][5]) == pytest.approx(450 / life.spent_h, rel=1e-2)


def test_the_supply_pays_for_itself(corner: Made) -> None:
    assert any("has paid for itself after" in line for line in section(corner, "cells").points)


def test_prices_left_out_are_named() -> None:
    made = with_cells(tariff="0.30 EUR/kWh")
    assert any("Price not in the project file: a cell" in line for line in section(made, "cells").points)


@pytest.mark.parametrize(("volts", "there"), [("5 V", True), ("12 V", False)])
def test_a_power_bank_is_told_of_only_where_its_volts_fit(volts: str, there: bool) -> None:
    """USB 2.0: 4.75 to 5.25 V."""
    run = {"name": "shelf", "bulbs": 12, "resistor": "470 ohm" if volts == "12 V" else "15 ohm"}
    made = make(changed(supply__voltage=volts, runs=[run]))
    assert ("power-bank" in anchors(made)) is there


def test_little_current_may_let_a_power_bank_switch_off() -> None:
    made = make(changed(runs=[{"name": "shelf", "bulbs": 4, "resistor": "150 ohm"}]))
    assert any("may not keep it on" in line for line in section(made, "power-bank").points)


def test_the_box_that_is_cut_off_takes_its_timer_with_it(plain: Made) -> None:
    assert any("goes with the box" in line for line in section(with_cells(), "timers").points)
    assert not any("goes with the box" in line for line in section(plain, "timers").points)


def test_a_built_in_timer_is_told_apart_from_a_plug_timer(plain: Made) -> None:
    words = " ".join(section(plain, "timers").points)
    assert "between outlet and supply" in words
    assert "built into a supply" in words


def test_cold_and_warm_stand_beside_nominal(corner: Made) -> None:
    """The same arrangement solved at the coldest and the warmest air of the file."""
    (table,) = section(corner, "warmth").tables
    assert [column.title.replace("\u00a0", " ") for column in table.columns[1:]] == [
        "−5 °C",
        "20 °C",
        "35 °C",
    ]
    for cell, air in zip(table.rows[0][1:], (-5, 20, 35), strict=True):
        found = solve(corner.matter.arrangement, Conditions(air_degc=air))
        assert float(cell.split("\u00a0")[0]) == pytest.approx(1e3 * found.supply_a, rel=2e-3)


def test_the_check_of_a_season_reads_the_same_test_points(corner: Made) -> None:
    (table,) = section(corner, "season").tables
    points = {point.label for point in corner.matter.solved.points}
    assert {cells[0] for cells in table.rows} == points


def test_spare_parts_have_exact_values(corner: Made) -> None:
    (table,) = section(corner, "spares").tables
    values = " ".join(" ".join(cells) for cells in table.rows).replace("\u00a0", " ")
    assert "12 Ω ±5 %" in values
    assert "15 Ω ±5 %" in values
    assert "5.1 V DC, 2.4 A or more" in values


def test_care_is_there_for_every_project(plain: Made) -> None:
    assert anchors(plain)[-5:] == ["season", "storage", "ages", "disposal", "spares"]


def test_the_file_may_state_the_days_of_a_season() -> None:
    assert "in a season of 30 days" in said(make(changed(days_per_season=30)))
