"""What arrangements cost; all sums by hand."""

from __future__ import annotations

import pytest

from guidegen.choose.costs import cost_of
from guidegen.choose.workout import work_out
from guidegen.parts.price_list import price_list
from guidegen.project.money import Price
from guidegen.project.schema import Prices
from guidegen.study import fit_leds
from guidegen.tables import prices as table
from tests.choose.making import project_with


def test_without_prices_all_are_typical_and_in_euro() -> None:
    prices = price_list(Prices())
    assert prices.typical == ("wire", "resistor", "fuse", "joint")
    assert prices.currency == "EUR"
    assert prices.core_per_m == table.CORE_PER_M


def test_a_stated_price_scales_the_other_sizes() -> None:
    prices = price_list(Prices(wire=Price(1.4, "GBP")))
    # A metre of two cores of 0.5 mm2 is 0.70 in the table, so all double.
    assert prices.core_per_m[1.5] == pytest.approx(2 * table.CORE_PER_M[1.5])
    assert prices.core_per_m[0.5] == pytest.approx(0.7)
    assert (prices.currency, prices.typical) == ("GBP", ("resistor", "fuse", "joint"))


def test_an_arrangement_costs_its_wire_resistors_fuse_and_joints() -> None:
    priced = {"wire": "1 EUR", "resistor": "0.50 EUR", "fuse": "3 EUR", "joint": "0.20 EUR"}
    run = {
        "bulbs": 12,
        "name": "all",
        "string": "drop",
        "feed": "opposite ends",
        "resistor": "10 ohm",
        "resistor_rating": "5 W",
        "feeder": {"length": "2 m", "wire": {"area": "0.5 mm2"}},
        "extra_wire": {"length": "3.5 m", "wire": {"area": "0.5 mm2"}},
    }
    project = project_with({"prices": priced, "runs": [run]})
    cost = cost_of(project, work_out(project, fit_leds(project)).arrangement)
    # Joints: + at bulb 1, - onto the extra wire, 2 between the strings, - at the last bulb: 5.
    # 2 m of pair 2.00, 3.5 m of one core 1.75, resistor 0.50, fuse 3.00, joints 1.00.
    assert cost.joints == 5
    assert cost.money == pytest.approx(2.00 + 1.75 + 0.50 + 3.00 + 1.00)
    assert (cost.extra_wire_m, cost.core_m, cost.feeder_m, cost.cuts) == (3.5, 3.5, 2.0, 0)
    assert cost.typical == ()
