"""Hours on cells by the solved circuit."""

from __future__ import annotations

import pytest

from guidegen.bench.fit import fit_led
from guidegen.circuit.cell_life import CellLife, cell_life
from guidegen.project.schema import CameWith, Led, LightString, StringWire
from guidegen.tables.cells import CELLS

FINE = StringWire(area=0.5e-6)


def life(bulbs: int, resistor: float, cells: int = 3, size: str = "AA") -> CellLife:
    kind = LightString(bulbs=bulbs, spacing=0.25, wire=FINE, led=Led(typical="warm white"), leds_per_bulb=1)
    return cell_life(kind, fit_led(kind), CameWith.model_construct(cells=cells, size=size, resistor=resistor))


def test_a_string_lasts_longer_than_capacity_over_fresh_current_tells() -> None:
    """Its current falls as the volts fall towards those of the LEDs."""
    found = life(12, 33.0)
    assert found.spent_h > 1.5 * found.naive_h


def test_half_the_light_is_gone_before_the_set_is_spent() -> None:
    found = life(12, 33.0)
    assert 0 < found.tired_h < found.spent_h


def test_twice_the_bulbs_at_half_the_resistor_last_half_as_long() -> None:
    """Two such strings side by side on one set; cells of next to no resistance would make it exactly half."""
    one, two = life(10, 60.0), life(20, 30.0)
    assert two.spent_h == pytest.approx(one.spent_h / 2, rel=0.05)
    assert two.fresh_a == pytest.approx(2 * one.fresh_a, rel=0.05)


def test_bigger_cells_last_as_much_longer_as_they_hold_more() -> None:
    ratio = CELLS["D"].capacity_ah / CELLS["AA"].capacity_ah
    assert life(12, 60.0, size="D").spent_h / life(12, 60.0).spent_h == pytest.approx(ratio, rel=0.05)


def test_a_string_that_draws_much_ends_when_its_cells_are_flat_or_its_light_is_gone() -> None:
    """Six cells on one white LED bulb row: the light fades long after 0.9 V a cell."""
    found = life(4, 470.0, cells=6)
    assert found.tired_h <= found.spent_h < float("inf")


def test_a_steady_drain_takes_the_data_sheets_charge() -> None:
    """Many cells in series through a large resistor are nearly a steady drain: 2.2 Ah (data sheet, R), 10 %.

    With 24 cells the volts at the resistor fall from 36 to 19 V: the mean current is about 0.78 of the first.
    """
    found = life(1, 2000.0, cells=24)
    mean_a = 2.2 / found.spent_h
    assert 0.7 < mean_a / found.fresh_a < 0.86
