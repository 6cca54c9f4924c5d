"""The wire table."""

from __future__ import annotations

import numpy as np
import pytest

from guidegen.circuit.solve import solve
from guidegen.parts.wires import conductor_words, extra_a, string_a, wire_rows
from tests.drawings.builds import FEEDS, STOUT, THIN, arrangement, run


def rails_a(plan, solved):
    """Current in the + conductor towards each next bulb, from the solved volts (n - 1,), by Ohm's law."""
    return -np.diff(solved.plus_v) / (plan.segment_m[1:] * plan.conductor.ohm_per_m)


def test_references_count_with_the_runs():
    build = arrangement(run("one end"), run("middle"))
    assert [row.reference for row in wire_rows(build)] == ["L1", "W1", "S1", "W2", "X2", "S2"]


def test_without_a_solution_no_current_is_claimed():
    assert {row.running_a for row in wire_rows(arrangement(run("middle")))} == {None}


@pytest.mark.parametrize(("feed", "cores"), [("middle", 2), ("both ends", 2), ("opposite ends", 1)])
def test_the_extra_wire_of_opposite_ends_has_one_core_others_two(feed, cores):
    """DESIGN.md section 4: one core for `opposite ends`, two otherwise."""
    rows = {row.reference: row for row in wire_rows(arrangement(run(feed)))}
    assert rows["X1"].cores == cores


def test_ohms_are_those_of_one_conductor():
    rows = {row.reference: row for row in wire_rows(arrangement(run()))}
    assert rows["W1"].ohm == pytest.approx(1.5 * 0.0345)  # by hand: 1.5 m of 0.0345 ohm/m


def test_lead_carries_what_all_runs_take():
    build = arrangement(run("one end"), run("middle"))
    solution = solve(build)
    rows = {row.reference: row for row in wire_rows(build, solution)}
    assert rows["L1"].running_a == pytest.approx(sum(each.current_a for each in solution.runs))


def test_extra_pair_at_both_ends_carries_what_the_first_bulb_does_not_see():
    """Kirchhoff: what enters at the last bulb is that bulb's own current and the rail's, flowing back."""
    plan = run("both ends")
    solved = solve(arrangement(plan)).runs[0]
    into_last = solved.bulb_a[-1] - rails_a(plan, solved)[-1]
    assert extra_a(plan, solved) == pytest.approx(into_last, rel=1e-6)


@pytest.mark.parametrize("feed", FEEDS)
def test_strings_own_current_is_the_largest_along_it(feed):
    """Against the drops along the + conductor and, fed at its near end, the lead-in."""
    plan = run(feed)
    solved = solve(arrangement(plan)).runs[0]
    along = np.abs(rails_a(plan, solved))
    lead_in = 0.0 if feed == "middle" else solved.bulb_a[0] + rails_a(plan, solved)[0]
    assert string_a(plan, solved) == pytest.approx(max(along.max(), lead_in), rel=1e-6)


def test_a_measured_string_is_called_like_copper_of_a_size():
    assert conductor_words(THIN) == ("like copper of 0.13\u00a0mm²", "measured")


def test_bought_wire_is_named_by_size_and_material():
    assert conductor_words(STOUT) == ("0.5\u00a0mm²", "copper")
