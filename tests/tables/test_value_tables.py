"""Preferred values, fuses, limits, LEDs, cells and resistors against their sources."""

from collections.abc import Mapping
from types import FunctionType

import eseries
import pytest

from guidegen.tables import ampacity, cells, conductors, fuses, leds, limits, preferred, resistors
from guidegen.tables.sourced import Sourced

MODULES = [ampacity, cells, conductors, fuses, leds, limits, preferred, resistors]


@pytest.mark.parametrize("name", ["E6", "E12", "E24"])
def test_e_series_are_those_of_iec_60063(name):
    # IEC 60063 (R), by the independent package eseries.
    assert preferred.SERIES[name] == eseries.series(eseries.ESeries[name])


def test_r10_is_ten_to_the_decade_rounded():
    # ISO 3 (R); by hand: 10^(k/10) within 1.3 % of each.
    for step, value in enumerate(preferred.R10):
        assert value == pytest.approx(1000 * 10 ** (step / 10), rel=0.013)


def test_fuse_ratings_are_those_of_iec_60127():
    # IEC 60127-1 Table A.1 (R) from 315 mA, smaller ones M.
    milliampere = [32, 40, 50, 63, 80, 100, 125, 160, 200, 250, 315, 400, 500, 630, 800, 1000, 1250, 1600]
    milliampere += [2000, 2500, 3150, 4000, 5000, 6300, 8000, 10000]
    assert [round(rating * 1000, 9) for rating in fuses.RATINGS_A] == milliampere


def test_fuse_ratings_follow_r10():
    # Fuse ratings are R10 numbers (ISO 3); 32 mA stands for 31.5.
    for rating_a in fuses.RATINGS_A:
        mantissa = float(f"{rating_a:e}".split("e")[0]) * 1000
        assert any(mantissa == pytest.approx(step, rel=0.016) for step in preferred.R10)


def test_fuses_must_open_at_their_standards_multiples():
    # IEC 60127-2 (R): carries 1.5, first must-open point 2.1.  UL 248-14 (R): 1.35 in 1 h, 2 in 2 min.
    assert (fuses.FUSE_TYPES["IEC"].carries, fuses.FUSE_TYPES["IEC"].must_open) == (1.5, 2.1)
    assert (fuses.FUSE_TYPES["UL"].must_open, fuses.FUSE_TYPES["UL"].within_s) == (2.0, 120.0)
    assert fuses.UL_HOUR_MULTIPLE == 1.35


def test_wire_limits_are_the_quoted_rows():
    # Page headed DIN VDE 0100 (R): A at 30 degC, multicore; none found for 0.22 mm2.
    assert dict(ampacity.LIMIT_A) == {0.05: 1, 0.14: 2, 0.25: 4, 0.34: 6, 0.5: 9, 0.75: 12}


def test_overload_factor_is_that_of_clause_433_1():
    assert ampacity.OVERLOAD_FACTOR.value == 1.45  # IEC 60364-4-43 cl. 433.1 (M)


def test_cords_are_those_of_iec_60335():
    # IEC 60335-1 Table 11 (R); the first row for cords up to 2 m.
    assert dict(ampacity.CORD_MM2) == {3: 0.5, 6: 0.75, 10: 1.0, 16: 1.5}
    assert ampacity.SHORT_CORD_M.value == 2


def test_voltage_limits_are_those_of_the_standards():
    # IEC 61140 (R); IEC 60364-4-41 cl. 414.4.5 (R); IEC 62368-1 (R).
    assert (limits.ELV_AC_V.value, limits.ELV_DC_V.value) == (50, 120)
    assert (limits.DRY_WITHOUT_BASIC_AC_V.value, limits.DRY_WITHOUT_BASIC_DC_V.value) == (25, 60)
    assert (limits.WET_WITHOUT_BASIC_AC_V.value, limits.WET_WITHOUT_BASIC_DC_V.value) == (12, 30)
    assert (limits.ES1_DC_V.value, limits.PS2_W.value) == (60, 100)


def test_water_marks_are_those_of_din_vde_0100_737():
    assert (limits.EXPOSED_IPX.value, limits.ROOFED_IPX.value) == (3, 1)  # R


def test_drop_limits_are_those_of_the_installation_standards():
    assert limits.LIGHTING_DROP.value == 0.03  # IEC 60364-5-52 Table G.52.1 (R)
    assert limits.ELV_LIGHTING_DROP.value == 0.05  # DIN VDE 0100-715:2006 (R)


@pytest.mark.parametrize("colour", ["white", "warm white", "blue", "green"])
def test_white_family_is_2_80_volts_at_3_milliampere(colour):
    # Typical, from memory and one public table.
    led = leds.typical(colour)
    assert (led.voltage_v.low, led.voltage_v.typical, led.voltage_v.high) == (2.65, 2.80, 2.95)
    assert (led.slope_v.typical, led.resistance_ohm.typical, led.current_a) == (0.09, 10, 3e-3)


@pytest.mark.parametrize("colour", ["red", "orange", "yellow"])
def test_red_family_is_1_75_volts_at_3_milliampere(colour):
    # Typical, from memory and one public table.
    led = leds.typical(colour)
    assert (led.voltage_v.low, led.voltage_v.typical, led.voltage_v.high) == (1.60, 1.75, 1.90)
    assert (led.slope_v.typical, led.resistance_ohm.typical) == (0.055, 5)


def test_white_slopes_lie_between_published_idealities():
    # Zhu et al., Appl. Phys. Lett. 94, 081113 (2009) (R): ideality 2.4 to 5.5, times kT/q = 25.7 mV.
    slope = leds.typical("white").slope_v
    assert 2.4 * 0.0257 <= slope.typical <= 5.5 * 0.0257
    assert slope.high == pytest.approx(5.5 * 0.0257, abs=0.002)


def test_every_typical_value_lies_inside_its_band():
    for led in leds.TYPICAL.values():
        for band in (led.voltage_v, led.slope_v, led.resistance_ohm):
            assert band.low < band.typical < band.high


def test_an_unknown_colour_is_not_in_the_table():
    assert "ultraviolet" not in leds.COLOURS
    with pytest.raises(KeyError):
        leds.typical("ultraviolet")


def test_an_alkaline_aa_holds_what_its_data_sheet_and_two_measurements_say():
    # Data sheet 2200 mAh (R), measured 2.13 and 2.20 Ah, +-10 %.
    for measured_ah in (2.13, 2.20):
        assert cells.CELLS["AA"].capacity_ah == pytest.approx(measured_ah, rel=0.1)


def test_larger_alkaline_cells_resist_less_and_hold_more():
    sizes = [cells.CELLS[size] for size in ("AAA", "AA", "C", "D")]
    assert [cell.inside_ohm for cell in sizes] == sorted((cell.inside_ohm for cell in sizes), reverse=True)
    assert [cell.capacity_ah for cell in sizes] == sorted(cell.capacity_ah for cell in sizes)


def test_tolerance_colours_leave_out_grey_and_violet():
    # IEC 60062 (R); sources disagree on grey and violet.
    assert dict(resistors.TOLERANCE_COLOURS) == {"brown": 0.01, "red": 0.02, "gold": 0.05, "silver": 0.1}


def test_tables_cannot_be_changed():
    for module in MODULES:
        for name, value in vars(module).items():
            if name.isupper() and not name.startswith("_") and not isinstance(value, FunctionType):
                assert isinstance(value, (tuple, str, float, int, Sourced)) or _frozen(value), name


def test_every_number_says_where_it_comes_from():
    for module in MODULES:
        for name, value in vars(module).items():
            source = getattr(value, "source", None) if name.isupper() else None
            assert source is None or len(source) > 5, name


def _frozen(value):
    if isinstance(value, Mapping):
        return not hasattr(value, "__setitem__")
    return value.__dataclass_params__.frozen


@pytest.mark.parametrize(("volts", "amperes"), [(5, 5), (20, 5), (24, 100 / 24), (30, 100 / 30), (31, 0)])
def test_limited_power_sources_give_no_more_than_table_2b(volts, amperes):
    # IEC 60950-1 Table 2B (R): to 20 V 8 A and 5 x U VA; over 20 to 30 V 8 A and 100 VA.
    assert limits.limited_power_a(volts) == pytest.approx(amperes)
