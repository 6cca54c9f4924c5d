"""Measurements of the trade on one kind of string; every number: common practice, no source.

White, five LEDs in parallel in each bulb.  The wire was measured over 30
equal lengths from bulb to bulb: one conductor 2.9 ohm, 0.2 ohm of it the
meter's own leads, so 0.09 ohm a length; the tail is one length.

(a) 10 bulbs, cells 4.64 V, 10 ohm: 2.91 V after the resistor; a meter in line
    shows 150 mA, although the resistor's own volts say 173 mA.
(b) 30 bulbs fed at one end, supply a little over 5 V, 6.8 ohm: 300 mA, almost 3 V.
(c) 15 bulbs fed at one end, same supply, 10 ohm: 210 mA, 2.9 V.

The currents of (b) and (c) are those without a meter in line: with the supply
at 5.06 V the resistors' own volts give (5.06 - 2.98) / 6.8 = 306 mA and
(5.06 - 2.9) / 10 = 216 mA, within 3 % of what was noted, while a burden of
1.5 ohm would have shown a sixth and an eighth less.
"""

import pytest
from scipy.optimize import brentq

from guidegen.calc.led import Curve
from guidegen.circuit.arrange import plan_run
from guidegen.circuit.arrangement import Arrangement, Fuse, LedEstimate, LedLimit, Piece, SupplyPlan
from guidegen.circuit.solution import RunSolution
from guidegen.circuit.solve import solve
from guidegen.project.schema import LightString, Run

#: One curve and one supply for all of them (found by hand, trying).
WHITE = LedEstimate(Curve(2.802, 2.8e-3, 0.1287, 0.0), "given", 2.75, 2.85)
CELLS_V, SUPPLY_V = 4.64, 5.06
STRING = LightString.model_validate(
    {
        "bulbs": 30,
        "spacing": "10 cm",
        "leds_per_bulb": 5,
        "wire": {"one_conductor": "2.9 ohm", "meter_leads": "0.2 ohm"},
    }
)
BURDEN_OHM = 1.5
#: Agreement asked for.
WITHIN = 0.03


def run_of(bulbs: int, source_v: float, series_ohm: float) -> RunSolution:
    """The first `bulbs` bulbs of the string behind `series_ohm` on a stiff source."""
    run = plan_run(
        Run.model_validate({"bulbs": bulbs, "resistor": f"{series_ohm!r} ohm"}),
        STRING,
        WHITE,
        LedLimit(1.0, "stated"),
        (Piece(1, 1, bulbs, STRING.bulbs),),
    )
    supply = SupplyPlan(source_v, 0.0, 2.0, 0.0, 2.0, None)
    return solve(Arrangement(supply, Fuse(1.0, "IEC"), (run,), 20.0, 20.0)).runs[0]


def test_the_wire_has_0_09_ohm_a_length() -> None:
    run = plan_run(Run(bulbs=30), STRING, WHITE, LedLimit(1.0, "stated"), (Piece(1, 1, 30, 30),))
    assert run.segment_m * run.conductor.ohm_per_m == pytest.approx([0.09] * 30)  # (2.9 - 0.2) / 30, by hand


@pytest.mark.parametrize(
    ("bulbs", "source_v", "resistor_ohm", "after_resistor_v"),
    [
        pytest.param(10, CELLS_V, 10.0, 2.91, id="a"),
        pytest.param(30, SUPPLY_V, 6.8, 2.98, id="b, almost 3 V"),
        pytest.param(15, SUPPLY_V, 10.0, 2.9, id="c"),
    ],
)
def test_one_curve_gives_the_volts_after_the_resistor(
    bulbs: int, source_v: float, resistor_ohm: float, after_resistor_v: float
) -> None:
    run = run_of(bulbs, source_v, resistor_ohm)
    assert run.after_resistor_v == pytest.approx(after_resistor_v, rel=WITHIN)


@pytest.mark.parametrize(
    ("bulbs", "source_v", "series_ohm", "current_a"),
    [
        pytest.param(10, CELLS_V, 10.0, 0.173, id="a, by the resistor's own volts"),
        pytest.param(10, CELLS_V, 10.0 + BURDEN_OHM, 0.150, id="a, meter in line"),
        pytest.param(30, SUPPLY_V, 6.8, 0.300, id="b, no meter in line"),
        pytest.param(15, SUPPLY_V, 10.0, 0.210, id="c, no meter in line"),
    ],
)
def test_the_same_curve_gives_the_currents(
    bulbs: int, source_v: float, series_ohm: float, current_a: float
) -> None:
    assert run_of(bulbs, source_v, series_ohm).current_a == pytest.approx(current_a, rel=WITHIN)


def test_a_burden_near_1_5_ohm_explains_what_the_meter_in_line_shows() -> None:
    burden_ohm = brentq(lambda ohm: run_of(10, CELLS_V, 10.0 + ohm).current_a - 0.150, 0.0, 10.0)
    assert 1.2 < burden_ohm < 1.8  # "near 1.5": 150 mA is written to 1 mA, which is 0.1 ohm


@pytest.mark.parametrize(("bulbs", "resistor_ohm", "noted_a"), [(30, 6.8, 0.300), (15, 10.0, 0.210)])
def test_b_and_c_were_not_read_with_that_meter_in_line(
    bulbs: int, resistor_ohm: float, noted_a: float
) -> None:
    shown_a = run_of(bulbs, SUPPLY_V, resistor_ohm + BURDEN_OHM).current_a
    assert shown_a < noted_a * (1 - 3 * WITHIN)


def test_fifteen_bulbs_are_several_times_more_even_than_thirty() -> None:
    thirty, fifteen = run_of(30, SUPPLY_V, 6.8), run_of(15, SUPPLY_V, 10.0)
    assert fifteen.evenness > 3 * thirty.evenness
