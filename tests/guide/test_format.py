"""Numbers as people read them; expected texts by hand."""

import pytest

from guidegen.guide.format import fixed, listed, metered, number, percent, quantity, slug, span, tolerance


@pytest.mark.parametrize(
    ("value", "unit", "text"),
    [
        (0.205, "A", "205 mA"),
        (1.0, "A", "1 A"),
        (0.9996, "A", "1 A"),
        (0.0000123, "A", "12.3 µA"),
        (2.914, "V", "2.91 V"),
        (0.035, "V", "35 mV"),
        (10.0, "Ω", "10 Ω"),
        (4700.0, "Ω", "4.7 kΩ"),
        (0.0689, "Ω", "0.0689 Ω"),
        (0.0021, "Ω", "2.1 mΩ"),
        (0.4249, "W", "0.425 W"),
        (0.25, "m", "25 cm"),
        (1.5, "m", "1.5 m"),
        (0.5e-6, "m2", "0.5 mm²"),
        (0.0, "A", "0 A"),
        (-0.0, "V", "0 V"),
        (-0.205, "A", "−205 mA"),
        (123456.0, "Ω", "123 kΩ"),
        (35.0, "°C", "35 °C"),
        (8.5, "hours", "8.5 hours"),
    ],
)
def test_a_quantity_has_three_figures_and_a_prefix_that_suits(value: float, unit: str, text: str) -> None:
    assert quantity(value, unit).replace("\u00a0", " ") == text


def test_number_and_unit_do_not_break_apart() -> None:
    assert quantity(0.205, "A") == "205\u00a0mA"


def test_a_quantity_that_is_no_number_shows_a_dash() -> None:
    assert quantity(float("nan"), "V") == "–"


@pytest.mark.parametrize(
    ("value", "text"),
    [(3.0, "3"), (3.10, "3.1"), (0.001234, "0.00123"), (-0.0, "0"), (-2.5, "−2.5"), (99.96, "100")],
)
def test_a_number_has_no_needless_zeros(value: float, text: str) -> None:
    assert number(value) == text


def test_fixed_decimals_are_never_minus_nothing() -> None:
    assert fixed(-0.001, 2) == "0.00"


@pytest.mark.parametrize(
    ("low", "high", "unit", "text"),
    [
        (2.951, 3.178, "V", "2.95 to 3.18 V"),
        (0.1611, 0.2104, "A", "161 to 211 mA"),
        (0.95, 1.2, "A", "0.95 to 1.20 A"),
        (0.0, 0.5, "V", "0.000 to 0.500 V"),
        (2.95, 3.18, "V", "2.95 to 3.18 V"),
    ],
)
def test_a_range_has_one_unit_and_is_rounded_outwards(low: float, high: float, unit: str, text: str) -> None:
    assert span(low, high, unit).replace("\u00a0", " ") == text


def test_a_reading_has_the_decimals_of_its_range() -> None:
    assert metered(2.1, 1.826, 2.351, "V") == "2.10\u00a0V"


def test_ratios_are_whole_percent() -> None:
    assert percent(0.456) == "46\u00a0%"


def test_a_tolerance_has_both_signs() -> None:
    assert tolerance(0.05) == "±5\u00a0%"


@pytest.mark.parametrize(
    ("items", "text"), [([], ""), (["a"], "a"), (["a", "b"], "a and b"), (["a", "b", "c"], "a, b and c")]
)
def test_words_in_a_row(items: list[str], text: str) -> None:
    assert listed(items) == text


@pytest.mark.parametrize(("text", "expected"), [("Back rail", "back-rail"), ("<b>&", "b"), ("!!!", "x")])
def test_identities_hold_letters_digits_and_hyphens_alone(text: str, expected: str) -> None:
    assert slug(text) == expected
