"""Quantities: against pint's own full unit file as an independent check, and the traps."""

from __future__ import annotations

from typing import Any

import pint
import pytest
from hypothesis import given
from hypothesis import strategies as st

from guidegen.project.money import Price, TariffReader
from guidegen.project.plain import GaugeReader, IpCode, Number, Text, UnreadableError
from guidegen.project.quantities import KINDS, LoadReader, Quantity, ResistorReader, parse
from guidegen.project.units import SI_UNIT, UnknownUnitError, known_unit, spellings

FULL = pint.UnitRegistry(cache_folder=None)
# Spellings of ours that pint's file writes otherwise.
OTHERWISE = {"a": "A", "v": "V", "w": "W", "ma": "mA", "mv": "mV", "mw": "mW", "kv": "kV", "kw": "kW",
             "Ohm": "ohm", "OHM": "ohm", "mOhm": "mohm", "kOhm": "kohm", "MOhm": "Mohm", "kilohm": "kohm",
             "megohm": "Mohm",
             "pct": "percent", "volt_ampere": "volt * ampere", "VA": "V * A", "ampere_hour": "ampere * hour",
             "Ah": "A * h", "milliampere_hour": "mA * h", "mAh": "mA * h"}  # fmt: skip


@pytest.mark.parametrize("name", sorted(spellings()))
def test_every_unit_is_as_large_as_in_pints_own_file(name: str) -> None:
    ours = known_unit(name)
    theirs = FULL.Quantity(7.25, FULL.parse_units(OTHERWISE.get(name, name)))
    assert ours.measures is not None
    si = FULL.parse_units({"ratio": "dimensionless"}.get(ours.measures, SI_UNIT[ours.measures]))
    # 1e-12: a few roundings of double precision
    assert 7.25 * ours.factor + ours.offset == pytest.approx(theirs.to(si).magnitude, rel=1e-12)


@pytest.mark.parametrize(
    ("unit", "dimension"),
    [("mm2", "area"), ("mm**2", "area"), ("in^2", "area"), ("ohm/km", "resistance per length"),
     ("ohm/ft", "resistance per length"), ("mohm/m", "resistance per length"),
     ("ohms/yard", "resistance per length"),
     ("volts", "voltage"), ("metres", "length"), ("inches", "length"), ("feet", "length")],
)  # fmt: skip
@given(number=st.floats(1e-6, 1e6))
def test_compound_units_agree_with_pints_own_file(unit: str, dimension: str, number: float) -> None:
    si = FULL.parse_units(SI_UNIT[dimension])
    theirs = FULL.Quantity(number, FULL.parse_units(unit.replace("^", "**").replace("mm2", "mm**2"))).to(si)
    assert parse(f"{number!r} {unit}", dimension) == pytest.approx(theirs.magnitude, rel=1e-12)


@pytest.mark.parametrize(
    ("text", "dimension", "value"),
    [
        ("1.1 mA", "current", 0.0011),  # the very float, by decimal arithmetic
        ("25 cm", "length", 0.25),
        ("0.5 mm2", "area", 5e-7),
        ("5.1V", "voltage", 5.1),
        ("1.5e-3 V", "voltage", 0.0015),
        ("1k ohm", "resistance", 1000.0),
        ("4.7 kΩ", "resistance", 4700.0),
        ("200 mΩ", "resistance", 0.2),
        ("350 µA", "current", 350e-6),
        ("350 \u03bcA", "current", 350e-6),
        ("0.25 Ω / m", "resistance per length", 0.25),
        ("80 %", "ratio", 0.8),
        ("32 °F", "temperature", 0.0),
        ("+5 V", "voltage", 5.0),
    ],
)
def test_values_by_hand(text: str, dimension: str, value: float) -> None:
    assert parse(text, dimension) == pytest.approx(value, abs=0 if dimension != "temperature" else 1e-9)


@pytest.mark.parametrize(
    "unit", ["As", "mAs", "ins", "mcd", "lm", "cV", "pF", "mmm", "kcm", "mm22", "m/s/s", "__class__"]
)
def test_no_unit_comes_from_combining_letters(unit: str) -> None:
    with pytest.raises(UnknownUnitError):
        known_unit(unit)


@pytest.mark.parametrize("text", ["5 min", "5 ms"])
def test_times_are_not_taken_for_lengths(text: str) -> None:
    with pytest.raises(UnreadableError, match="measures time"):
        parse(text, "length")


@given(st.text(max_size=80), st.sampled_from(sorted(KINDS)))
def test_any_text_is_a_number_or_unreadable(text: str, dimension: str) -> None:
    try:
        assert isinstance(Quantity(dimension).read(text), float)
    except UnreadableError as error:
        assert error.mend


@pytest.mark.parametrize("dimension", sorted(KINDS))
def test_the_example_in_every_message_can_be_read_back(dimension: str) -> None:
    assert Quantity(dimension).read(KINDS[dimension].example) is not None


@pytest.mark.parametrize("dimension", sorted(KINDS))
def test_every_unit_named_in_a_message_measures_the_right_thing(dimension: str) -> None:
    for unit in KINDS[dimension].units.split(", "):
        assert known_unit("percent" if unit == "%" else unit).measures == dimension


@pytest.mark.parametrize("dimension", sorted(KINDS))
def test_both_bounds_belong_to_the_range_and_beyond_does_not(dimension: str) -> None:
    reader = Quantity(dimension)
    low, high = (parse(bound, dimension) for bound in reader.bounds())
    assert reader.read(low) == low
    assert reader.read(high) == high
    for beyond in (low - abs(low) / 1000, high * 1.001):
        with pytest.raises(UnreadableError):
            reader.read(beyond)


@pytest.mark.parametrize("value", [True, None, [], {}, float("nan"), float("inf")])
def test_what_is_no_number_is_unreadable(value: Any) -> None:
    with pytest.raises(UnreadableError):
        Quantity("voltage", zero=True).read(value)


@pytest.mark.parametrize("text", ["0 m", "0 cm", "0.0 ft"])
def test_zero_where_it_makes_sense(text: str) -> None:
    assert Quantity("length", zero=True).read(text) == 0


@pytest.mark.parametrize(
    ("text", "gauge"), [("28 AWG", 28), ("28AWG", 28), ("awg 28", 28), ("0 AWG", 0), ("40 awg", 40)]
)
def test_gauges(text: str, gauge: int) -> None:
    assert GaugeReader().read(text) == gauge


@pytest.mark.parametrize(
    ("text", "code"), [("IP44", "IP44"), ("ip 44", "IP44"), ("IPX4", "IPX4"), ("IP69K", "IP69K")]
)
def test_ip_codes(text: str, code: str) -> None:
    assert IpCode().read(text) == code  # forms of IEC 60529


@pytest.mark.parametrize("text", ["IP", "IP4", "IP70", "44", "IP444", "waterproof", ""])
def test_what_is_no_ip_code(text: str) -> None:
    with pytest.raises(UnreadableError):
        IpCode().read(text)


@pytest.mark.parametrize("text", ["٣", "1.0", "1e3", "0x10", "", " ", "1_0", "²"])
def test_what_is_no_whole_number(text: str) -> None:
    with pytest.raises(UnreadableError):
        Number(0, 100).read(text)


def test_a_resistor_may_be_none_but_no_other_word() -> None:
    reader = ResistorReader("resistance", zero=True)
    assert (reader.read("none"), reader.read("10 ohm"), reader.read("0 ohm")) == ("none", 10.0, 0.0)
    with pytest.raises(UnreadableError):
        reader.read("nil")


def test_text_goes_onto_one_line() -> None:
    assert Text(1, 20).read("  two\n words\u00a0here ") == "two words here"


@pytest.mark.parametrize(
    ("text", "newton"),
    [("60 N", 60.0), ("6 kg", 6 * 9.80665), ("500 g", 0.5 * 9.80665), ("10 lb", 44.4822), ("1.5 kN", 1500.0)],
)
def test_what_a_hook_bears_is_a_force_or_a_weight(text: str, newton: float) -> None:
    """A pound-force is 4.44822 N (from memory)."""
    assert LoadReader("force").read(text) == pytest.approx(newton, rel=1e-6)


@pytest.mark.parametrize(
    ("text", "price"),
    [
        ("0.30 EUR/kWh", Price(0.30, "EUR")),
        ("$", None),
        ("€ 1/kWh", None),
        ("0.12 USD / kwh", Price(0.12, "USD")),
    ],
)
def test_a_tariff_is_the_price_of_a_kilowatt_hour(text: str, price: Price | None) -> None:
    if price is None:
        with pytest.raises(UnreadableError):
            TariffReader().read(text)
    else:
        assert TariffReader().read(text) == price
