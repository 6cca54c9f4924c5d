"""Hours on cells, against limits done in the head and an AA cell's data sheet."""

from __future__ import annotations

import numpy as np
import pytest

from guidegen.calc.discharge import first_below, hours_reached
from guidegen.tables.cells import CELLS, discharge_of

STATES = np.linspace(0, 1.06, 400)


def aa_states() -> tuple[np.ndarray, np.ndarray, float]:
    """Charge used (Ah), volts at no load, and the resistance inside, of one AA cell."""
    curve, cell = discharge_of("AA"), CELLS["AA"]
    volts = np.interp(STATES, curve.used, curve.volts)
    return STATES * cell.capacity_ah, volts, cell.inside_ohm * curve.inside_factor


def test_a_steady_current_takes_capacity_over_current() -> None:
    """By hand: 2 Ah at 0.1 A are 20 h."""
    assert hours_reached(np.array([0.0, 1.0, 2.0]), np.full(3, 0.1))[-1] == pytest.approx(20)


def test_a_current_that_falls_makes_the_cells_last_longer_than_the_first_current_tells() -> None:
    """By hand: 1 Ah with 1 / I from 10 to 30 per ampere: 20 h, against 10 h at the first current."""
    assert hours_reached(np.array([0.0, 1.0]), np.array([0.1, 1 / 30]))[-1] == pytest.approx(20)


def test_a_current_of_nothing_never_gets_there() -> None:
    assert hours_reached(np.array([0.0, 1.0]), np.array([0.1, 0.0]))[-1] == np.inf


def test_the_place_between_two_states_is_found_on_the_straight_line() -> None:
    assert first_below(np.array([0.0, 10.0]), np.array([1.0, 0.0]), 0.25) == pytest.approx(7.5)


def test_a_value_that_never_falls_so_far() -> None:
    assert first_below(np.array([0.0, 10.0]), np.array([1.0, 0.5]), 0.25) == np.inf


def test_a_value_that_starts_below() -> None:
    assert first_below(np.array([0.0, 10.0]), np.array([0.1, 0.0]), 0.25) == 0


def test_an_aa_cell_into_43_ohm_gives_the_data_sheets_charge() -> None:
    """Data sheet of an alkaline AA (R): 2200 mAh into 43 ohm down to 0.9 V; +-10 %."""
    used, volts, inside = aa_states()
    current = volts / (43 + inside)
    hours = hours_reached(used, current)
    end = first_below(hours, current * 43, 0.9)
    assert np.interp(end, hours, used) == pytest.approx(2.2, rel=0.10)


def test_an_aa_cell_into_43_ohm_lasts_as_long_as_the_data_sheets_charge_and_mean_volts_tell() -> None:
    """2200 mAh (data sheet, R) at a mean of 1.2 V (typical, from memory) over 43 ohm: 79 h; +-10 %."""
    used, volts, inside = aa_states()
    current = volts / (43 + inside)
    assert first_below(hours_reached(used, current), current * 43, 0.9) == pytest.approx(
        2.2 * 43 / 1.2, rel=0.10
    )


@pytest.mark.parametrize("measured_ah", [2.13, 2.20])
def test_an_aa_cell_at_100_milliampere_gives_what_was_measured(measured_ah: float) -> None:
    """Measured 2.13 and 2.20 Ah at 100 mA (R); +-10 %."""
    used, volts, inside = aa_states()
    hours = hours_reached(used, np.full(len(used), 0.1))
    assert first_below(hours, volts - 0.1 * inside, 0.9) * 0.1 == pytest.approx(measured_ah, rel=0.10)


@pytest.mark.parametrize("size", CELLS)
def test_a_discharge_curve_starts_at_the_fresh_cell_and_only_falls(size: str) -> None:
    curve = discharge_of(size)
    assert curve.volts[0] == CELLS[size].open_v
    assert (np.diff(curve.volts) < 0).all()
    assert (np.diff(curve.used) > 0).all()
