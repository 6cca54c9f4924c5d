"""Wire from area, meter and temperature, and what it may carry."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from guidegen.calc import wire, wire_limit
from guidegen.tables import ampacity, conductors

areas_m2 = st.floats(0.001e-6, 10e-6)


def test_half_a_square_millimetre_is_one_over_29_ohm_a_metre():
    assert wire.ohm_per_m(0.5e-6) == pytest.approx(1 / 29)  # by hand, IEC 60028


def test_half_the_area_doubles_the_resistance():
    assert wire.ohm_per_m(0.25e-6) == pytest.approx(2 * wire.ohm_per_m(0.5e-6))


@given(areas_m2)
def test_the_equivalent_copper_area_of_copper_is_its_own(area_m2):
    assert wire.equivalent_copper_m2(wire.ohm_per_m(area_m2)) == pytest.approx(area_m2)


def test_copper_clad_wire_counts_as_its_share_of_copper():
    # ASTM B566 (R): 62.9 % of copper's conductivity.
    clad = conductors.MATERIALS["copper-clad aluminium"].resistivity_ohm_m
    assert wire.equivalent_copper_m2(wire.ohm_per_m(1e-6, clad)) == pytest.approx(0.629e-6)


def test_meter_leads_are_subtracted():
    # Common practice, no source: 2.9 ohm with 0.2 ohm leads over 30 lengths; by hand 0.09 ohm a length.
    assert wire.measured_ohm_per_m(2.9, 0.2, 30) == pytest.approx(0.09)


def test_a_loop_is_both_conductors():
    # By hand: (5.6 - 0.2) / 2 / 30.
    assert wire.loop_ohm_per_m(5.6, 0.2, 30) == pytest.approx(0.09)


@given(st.floats(0.01, 100), st.floats(0, 2), st.floats(0.1, 100))
def test_one_conductor_and_loop_agree(one_ohm, leads_ohm, length_m):
    one = wire.measured_ohm_per_m(one_ohm + leads_ohm, leads_ohm, length_m)
    assert wire.loop_ohm_per_m(2 * one_ohm + leads_ohm, leads_ohm, length_m) == pytest.approx(one)


@pytest.mark.parametrize("function", [wire.measured_ohm_per_m, wire.loop_ohm_per_m])
@pytest.mark.parametrize(("reading", "leads", "length"), [(0.2, 0.2, 5.0), (0.1, 0.2, 5.0), (1.0, 0.2, 0.0)])
def test_a_reading_of_nothing_but_leads_is_refused(function, reading, leads, length):
    with pytest.raises(ValueError, match="not above zero"):
        function(reading, leads, length)


def test_at_20_degrees_nothing_changes():
    assert wire.at_temperature_ohm(1.5, 20.0) == 1.5


def test_fifteen_degrees_warmer_copper_as_in_lessons_in_electric_circuits():
    # Lessons in Electric Circuits I ch. 12 (R): 15 ohm at 35 C, alpha 0.004041 -> 15.909 ohm.
    assert wire.at_temperature_ohm(15, 35, 0.004041) == pytest.approx(15.909, abs=5e-4)


def test_a_route_is_there_and_back():
    assert wire.wire_ohm(0.05, 2.0) == pytest.approx(0.2)  # by hand
    assert wire.wire_ohm(0.05, 2.0, conductors=1) == pytest.approx(0.1)


def test_no_current_no_drop():
    assert wire.voltage_drop_v(0, 3.0) == 0


@pytest.mark.parametrize(
    ("area_mm2", "limit_a", "row_mm2"),
    # DIN VDE 0100 rows as quoted (R): the row at or below the area.
    [(0.05, 1, 0.05), (0.08, 1, 0.05), (0.139, 1, 0.05), (0.14, 2, 0.14), (0.22, 2, 0.14), (0.25, 4, 0.25),
     (0.34, 6, 0.34), (0.5, 9, 0.5), (0.749, 9, 0.5), (0.75, 12, 0.75), (6.0, 12, 0.75)],
)  # fmt: skip
def test_the_limit_is_that_of_the_row_at_or_below(area_mm2, limit_a, row_mm2):
    limit = wire_limit.wire_limit(area_mm2 * 1e-6)
    assert (limit.limit_a, limit.row_mm2, limit.scaled) == (limit_a, row_mm2, False)


def test_below_the_smallest_row_the_limit_is_in_proportion_to_the_area():
    limit = wire_limit.wire_limit(0.02e-6)
    assert (limit.limit_a, limit.scaled) == (pytest.approx(0.4), True)  # by hand: 1 A x 0.02/0.05


@given(areas_m2)
def test_an_equivalent_area_never_carries_more_than_its_row(area_m2):
    limit = wire_limit.wire_limit(area_m2)
    rows = [amp for row, amp in ampacity.LIMIT_A.items() if row * 1e-6 <= area_m2 * (1 + 1e-9)]
    assert limit.limit_a <= max(rows, default=1.0)


@given(areas_m2, areas_m2)
def test_thicker_wire_never_carries_less(one_m2, other_m2):
    thin, thick = sorted((one_m2, other_m2))
    assert wire_limit.wire_limit(thin).limit_a <= wire_limit.wire_limit(thick).limit_a


def test_a_size_worked_back_from_ohms_still_meets_its_row():
    area_m2 = wire.equivalent_copper_m2(wire.ohm_per_m(0.34e-6))
    assert wire_limit.wire_limit(area_m2).row_mm2 == 0.34


def test_an_overload_is_1_45_times_the_limit():
    assert wire_limit.overload_limit_a(2.0) == pytest.approx(2.9)  # IEC 60364-4-43 cl. 433.1 (M)


@pytest.mark.parametrize(
    ("current_a", "area_mm2"),
    # IEC 60335-1 Table 11 (R).
    [(0.2, 0.5), (3, 0.5), (3.01, 0.75), (6, 0.75), (10, 1.0), (16, 1.5), (16.1, None)],
)
def test_cords_by_rated_current(current_a, area_mm2):
    assert wire_limit.cord_mm2(current_a) == area_mm2
