"""Parts left out are picked: resistor, rating, kind, fuse."""

from pathlib import Path

import pytest

from guidegen.calc.preferred import is_preferred, values_from
from guidegen.circuit.solve import solve
from guidegen.circuit.variants import with_resistor
from guidegen.tables.fuses import RATINGS_A
from tests.circuit.test_arrange import solved
from tests.safety.projects import GONE

OPEN: dict[str, object] = {
    "runs.0.resistor": GONE,
    "runs.0.resistor_rating": GONE,
    "runs.0.resistor_kind": GONE,
    "goals.led_current": "3 mA",
}


@pytest.mark.parametrize("series", ["E12", "E24"])
def test_the_resistor_is_the_smallest_preferred_value_within_the_goal(tmp_path: Path, series: str) -> None:
    found = solved(tmp_path, OPEN | {"goals.series": series})
    ohm = found.arrangement.runs[0].resistor.ohm
    assert is_preferred(series, ohm)
    assert found.solution.runs[0].mean_led_a <= 3e-3
    below = max(value for value in _values_up_to(series, ohm) if value < ohm)
    assert solve(with_resistor(found.arrangement, 0, below)).runs[0].mean_led_a > 3e-3


def _values_up_to(series: str, ohm: float) -> list[float]:
    values = []
    for value in values_from(series, 0.1):
        if value > ohm:
            return values
        values.append(value)
    return values


def test_e24_comes_nearer_than_e12(tmp_path: Path) -> None:
    ohms = [
        solved(tmp_path, OPEN | {"goals.series": name}).arrangement.runs[0].resistor.ohm
        for name in ("E24", "E12")
    ]
    assert ohms[0] <= ohms[1]


def test_runs_that_share_a_lead_are_picked_together(tmp_path: Path) -> None:
    changes: dict[str, object] = {
        "runs": [{"bulbs": 10}, {"bulbs": 10}],
        "goals.led_current": "3 mA",
        "supply.output_resistance": "20 ohm",
        "fuse": "1 A",
    }
    found = solved(tmp_path, changes)
    for index, run in enumerate(found.arrangement.runs):
        assert found.solution.runs[index].mean_led_a <= 3e-3
        below = max(value for value in _values_up_to("E12", run.resistor.ohm) if value < run.resistor.ohm)
        assert solve(with_resistor(found.arrangement, index, below)).runs[index].mean_led_a > 3e-3


def test_the_rating_bears_running_and_worst_watts(tmp_path: Path) -> None:
    found = solved(tmp_path, OPEN)
    resistor = found.arrangement.runs[0].resistor
    assert resistor.rating_w is not None
    assert found.solution.runs[0].resistor_w <= 0.5 * resistor.rating_w
    assert found.margins.runs[0].resistor_w <= resistor.rating_w
    assert resistor.kind in ("film", "cement")


def test_the_rating_bears_a_short_that_the_fuse_is_not_sure_to_clear(tmp_path: Path) -> None:
    found = solved(tmp_path, OPEN)
    assert found.protection.sure_after_resistor == (False,)
    assert found.margins.runs[0].shorted_w <= (found.arrangement.runs[0].resistor.rating_w or 0)


def test_the_fuse_is_the_smallest_rating_that_the_worst_current_allows(tmp_path: Path) -> None:
    # Common practice: worst running current at most 0.8 of the rating; ratings of IEC 60127-1 Table A.1.
    found = solved(tmp_path, {"fuse": GONE})
    rating_a = found.arrangement.fuse.rating_a
    assert rating_a in RATINGS_A
    assert found.margins.supply_a <= 0.8 * rating_a
    smaller = [each for each in RATINGS_A if each < rating_a]
    assert found.margins.supply_a > 0.8 * max(smaller)


def test_what_the_file_states_stays_as_it_is(tmp_path: Path) -> None:
    found = solved(tmp_path, {"fuse": "500 mA", "runs.0.resistor": "82 ohm"})
    resistor = found.arrangement.runs[0].resistor
    assert (resistor.ohm, resistor.rating_w, resistor.kind) == (82.0, 5.0, "cement")
    assert found.arrangement.fuse.rating_a == 0.5
