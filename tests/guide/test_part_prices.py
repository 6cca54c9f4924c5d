"""Prices of parts, their total, and what does as well."""

from __future__ import annotations

import re
from typing import Any

import pytest

from guidegen.calc.wire import gauge_area_m2
from guidegen.guide.blocks import PartLine
from guidegen.guide.costs import Costs, costs, total_of, total_text
from guidegen.tables import prices as table
from guidegen.tables.supplies import SUPPLY_PRICE
from tests.guide.projects import Made, changed, fed, make

PRICES = {"wire": "1.40 GBP", "resistor": "0.60 GBP", "fuse": "3 GBP", "joint": "0.20 GBP", "supply": "9 GBP"}


def lines(made: Made) -> tuple[PartLine, ...]:
    found: tuple[PartLine, ...] = made.page("parts-and-tools.html").buy
    return found


def line(made: Made, name: str) -> PartLine:
    return next(each for each in lines(made) if each.name.startswith(name))


def amount(made: Made, name: str) -> float:
    price = line(made, name).price
    assert price is not None
    return price.amount


@pytest.fixture(scope="module")
def priced() -> Made:
    return make(changed(prices=PRICES))


def test_prices_of_the_file_are_taken_and_not_marked(priced: Made) -> None:
    assert amount(priced, "Plug-in supply") == 9
    assert amount(priced, "Fuse") == 3
    for name in ("Plug-in supply", "Fuse", "two-core", "Inner sleeve"):
        price = line(priced, name).price
        assert price is not None and not price.typical


def test_wire_is_paid_by_the_metre_bought(priced: Made) -> None:
    """2 m and 2 x 10 cm at the ends, and 10 %: 2.5 m of 1.40, by hand."""
    assert line(priced, "two-core").quantity == "2.5\u00a0m"
    assert amount(priced, "two-core") == pytest.approx(2.5 * 1.40)


def test_every_soldered_conductor_is_paid_once(priced: Made) -> None:
    """One run fed at one end: plus and minus of one joint."""
    assert amount(priced, "Inner sleeve") == pytest.approx(2 * 0.20)
    assert amount(priced, "Outer sleeve") == 0


def test_without_prices_all_that_has_one_is_typical(plain: Made) -> None:
    assert amount(plain, "Plug-in supply") == SUPPLY_PRICE.value
    found = [each.price for each in lines(plain) if each.price is not None and each.price.amount]
    assert found and all(price.typical for price in found)


def test_what_has_no_price_is_counted_and_not_added(plain: Made) -> None:
    """Light strings differ too much for a typical price, and hooks without a plan are not counted."""
    bought = lines(plain)
    open_ = [each.name for each in bought if each.price is None]
    assert open_ == ["Light string “drop”", "Hooks for the cable"]
    total = total_of(bought, "EUR")
    assert total.not_priced == 2
    assert total.amount == pytest.approx(sum(each.price.amount for each in bought if each.price))
    assert "2 lines have no price" in " ".join(plain.page("parts-and-tools.html").total)


def test_strings_are_paid_each_where_the_file_has_their_price() -> None:
    """24 bulbs of strings of 12 are two strings."""
    made = make(changed(runs=[fed("one end", 24)], prices={"string": "4.50 USD"}))
    assert amount(made, "Light string") == 9


def test_the_total_says_how_much_of_it_is_typical(priced: Made) -> None:
    total = total_of(lines(priced), "GBP")
    stated = sum(each.price.amount for each in lines(priced) if each.price and not each.price.typical)
    assert total.amount - total.typical == pytest.approx(stated)
    assert any("typical" in text for text in total_text(total))


def test_only_stated_prices_need_no_word_about_typical_ones() -> None:
    (text,) = total_text(total_of((), "EUR"))
    assert "typical" not in text


def test_the_first_page_tells_the_same_total(all_guides: tuple[Made, ...]) -> None:
    for made in all_guides:
        (fact,) = [each for each in made.page("index.html").facts if each.label == "Cost"]
        total = total_of(lines(made), costs(made.matter).currency)
        assert f"{total.amount:.2f}" in fact.value
        assert ("not priced" in fact.note) == bool(total.not_priced)


def test_a_tariff_tells_the_currency_where_no_price_does() -> None:
    made = make(changed(tariff="0.25 GBP/kWh"))
    assert made.page("parts-and-tools.html").currency == "GBP"


def test_a_kilometre_of_nothing_costs_nothing(plain: Made) -> None:
    cost: Costs = costs(plain.matter)
    assert cost.wire(2, 0.5e-6, 0).amount == 0
    assert cost.part("tie", 3).amount == pytest.approx(3 * table.PARTS["tie"])


def test_hooks_of_a_plan_are_counted_and_those_without_are_not(bench: Made, plain: Made) -> None:
    """Ten hooks of the sample and a tenth more: 11."""
    found = line(bench, "Hook: screw hook of 4 mm")
    assert found.quantity == "11"
    assert "6\u00a0kg" in found.rating
    assert line(plain, "Hooks").quantity == "as you need"


def test_a_guide_wire_is_bought_by_the_metre() -> None:
    """A span of 3 m with loops of 15 cm: 3.3 m and a tenth, in half metres 4 m."""
    hanging: dict[str, Any] = {"lines": [{"spans": ["3 m"]}], "sag": "5 cm", "guide_wire": "yes"}
    assert line(make(changed(hanging=hanging)), "Guide wire").quantity == "4\u00a0m"


def test_two_resistors_for_one_are_told_with_ohms_and_watts(bench: Made) -> None:
    first = line(bench, "Resistor for").instead[0].replace("\u00a0", " ")
    assert first == "5.6 Ω and 4.7 Ω one behind the other: 10.3 Ω, each 3 W or more"


def test_a_fuse_next_to_it_carries_the_lights(all_guides: tuple[Made, ...]) -> None:
    for made in all_guides:
        needed_a = made.matter.solved.margins.supply_a / 0.8
        for text in line(made, "Fuse").instead:
            found = re.match(r"([\d.]+)\u00a0(m?A)", text)
            assert found is not None
            assert float(found[1]) * (1e-3 if found[2] == "mA" else 1) >= needed_a


def test_a_fuse_that_the_supply_cannot_blow_is_not_offered(bench: Made) -> None:
    """1.25 A must open at 2.1 x 1.25 = 2.6 A, and the supply is sure of 2.4 A only."""
    assert not any(text.startswith("1.25") for text in line(bench, "Fuse").instead)


def test_wire_one_size_up_is_thicker(plain: Made) -> None:
    """0.75 mm2 follows 0.5 mm2; 20 AWG is 0.519 mm2 (ASTM B258)."""
    assert line(plain, "two-core").instead == ("0.75\u00a0mm²", "20 AWG")
    assert gauge_area_m2(20) > 0.5e-6


def test_wire_in_gauge_has_the_next_lower_gauge() -> None:
    feeder = {"length": "2 m", "wire": {"gauge": "22 AWG"}}
    made = make(changed(runs=[fed("one end", feeder=feeder)]))
    assert line(made, "two-core").instead == ("0.34\u00a0mm²", "20 AWG")
