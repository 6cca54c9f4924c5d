"""A short at the far end of a run: how much wire lies before it, and what that makes of fuse and resistor."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest
from numpy.testing import assert_allclose

from guidegen.circuit.conditions import NOMINAL
from guidegen.circuit.far_end import far_end_ohm
from tests.circuit.test_arrange import solved
from tests.safety.projects import GONE

ONE_OHM = {"per_length": "1 ohm/m"}
#: Ten bulbs, tail 30 cm, spacing 10 cm, all wire 1 ohm/m: bulb 10 at 1.2 ohm, bulb 5 at 0.7 ohm a conductor.
WIRE: dict[str, object] = {"strings.drop.wire": ONE_OHM}


def extra(feed: str, length: str) -> dict[str, object]:
    return {"runs.0.feed": feed, "runs.0.extra_wire": {"length": length, "wire": ONE_OHM}}


@pytest.mark.parametrize(
    # All by hand, ohm there and back.
    ("changes", "ohm"),
    [
        ({}, 2.4),  # 2 x 1.2
        ({"runs.0.feeder": {"length": "2 m", "wire": ONE_OHM}}, 6.4),  # 2 x (2 + 1.2)
        (extra("middle", "2 m"), 5.0),  # 2 x (2 + 1.2 - 0.7)
        (extra("opposite ends", "2 m"), 3.2),  # 1.2 + 2
        (extra("both ends", "2 m"), 1.5),  # 2 x 1.2 x 2 / 3.2, at the last bulb
        (extra("both ends", "0.2 m"), 0.7),  # 2 x 0.7 x 0.7 / 1.4, in the middle of the ring
    ],
)
def test_wire_before_a_short_where_there_is_most_of_it(
    tmp_path: Path, changes: dict[str, object], ohm: float
) -> None:
    (run,) = solved(tmp_path, WIRE | changes).arrangement.runs
    assert_allclose(far_end_ohm(run, NOMINAL), ohm, rtol=1e-12)


def test_far_short_drives_what_lower_volts_and_upper_ohms_allow(tmp_path: Path) -> None:
    found = solved(tmp_path, WIRE).protection
    # By hand: 5 V - 5 %; 68 ohm + 5 % and 2.4 ohm + 2 % (own assumption) at 25 degC.
    ohm = 71.4 + 2.4 * 1.02 * (1 + 0.00393 * 5)
    assert_allclose(found.fault_far_end_a, [4.75 / ohm], rtol=1e-12)


def test_far_short_heats_the_resistor_with_upper_volts_and_lower_ohms(tmp_path: Path) -> None:
    found = solved(tmp_path, WIRE).protection
    # By hand: 5 V + 5 %; 68 ohm - 5 % and 2.4 ohm - 2 % at 15 degC.
    ohm = 64.6 + 2.4 * 0.98 * (1 - 0.00393 * 5)
    assert_allclose(found.far_end_w, [(5.25 / ohm) ** 2 * 64.6], rtol=1e-12)


def test_far_short_gives_no_more_than_the_supply(tmp_path: Path) -> None:
    found = solved(tmp_path, WIRE | {"runs.0.resistor": "1 ohm", "supply.current_limit": "0.1 A"}).protection
    assert found.fault_far_end_a == (0.1,)


def test_fuse_may_be_sure_behind_the_resistor_and_not_at_the_far_end(tmp_path: Path) -> None:
    # By hand: 4.75 V / 10.5 ohm = 452 mA behind the resistor, 365 mA with 2.5 ohm of wire;
    # the fuse opens at 2.1 x 0.2 A = 420 mA.
    changes = WIRE | {"runs.0.resistor": "10 ohm", "strings.drop.leds_per_bulb": 3}
    found = solved(tmp_path, changes).protection
    assert (found.sure_after_resistor, found.sure_far_end) == ((True,), (False,))
    assert not found.sure_everywhere(0)


def test_watts_that_last_are_those_of_the_shorts_that_the_fuse_leaves(tmp_path: Path) -> None:
    known = solved(tmp_path, WIRE).protection
    for behind, far, lasting in (
        (True, True, 0.0),
        (True, False, known.far_end_w[0]),
        (False, False, 9.0),
    ):
        guard = replace(known, sure_after_resistor=(behind,), sure_far_end=(far,))
        assert guard.lasting_w(0, 9.0) == lasting


def test_run_without_a_resistor_has_no_watts_in_one(tmp_path: Path) -> None:
    changes = {
        "runs.0.resistor": "none",
        "runs.0.resistor_rating": GONE,
        "runs.0.resistor_kind": GONE,
        "supply.voltage": "2.8 V",
    }
    assert solved(tmp_path, WIRE | changes).protection.far_end_w == (0.0,)
