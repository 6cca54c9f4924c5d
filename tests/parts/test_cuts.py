"""Cuts of strings and lengths of wire; expected ones by hand."""

from __future__ import annotations

import pytest

from guidegen.circuit.arrangement import Arrangement
from guidegen.parts.bill import bill
from guidegen.parts.cuts import string_cuts, taken_pieces, wire_cuts
from tests.guide.projects import changed, fed, make


def arranged(*runs: dict[str, object], **more: object) -> Arrangement:
    """The arrangement of these runs."""
    return make(changed(runs=list(runs), **more)).matter.arrangement


def test_a_string_is_cut_where_a_run_ends_within_it() -> None:
    cuts = string_cuts(arranged(fed("one end", 18)))
    assert [(cut.string_number, cut.behind_bulb, cut.run_bulb) for cut in cuts] == [(2, 6, 18)]


def test_a_whole_string_is_not_cut() -> None:
    assert string_cuts(arranged(fed("one end", 12))) == ()


def test_a_run_from_a_cut_on_takes_a_whole_spacing_with_it() -> None:
    """6 spacings of 25 cm: the cut is right behind the earlier run's last bulb."""
    pieces = taken_pieces(arranged(fed("one end", 18), {**fed("one end", 6), "name": "window"}))
    assert pieces[-1].length_m == pytest.approx(6 * 0.25)


def test_wires_are_cut_ten_centimetres_longer_at_each_end() -> None:
    cuts = wire_cuts(arranged(fed("opposite ends")))
    assert [(cut.key, cut.cores, cut.cut_m) for cut in cuts] == [
        ("feeder", 2, pytest.approx(2.2)),
        ("extra", 1, pytest.approx(3.2)),
    ]


def test_the_shared_lead_comes_first() -> None:
    lead = {"length": "1 m", "wire": {"area": "0.5 mm2"}}
    cuts = wire_cuts(arranged(fed("one end"), supply__lead=lead))
    assert [(cut.key, cut.run) for cut in cuts] == [("lead", None), ("feeder", 0)]


def test_wire_is_bought_ten_percent_longer_in_half_metres() -> None:
    """Feeder 2.2 m and extra pair 3.2 m of one kind: 5.4 m x 1.1 = 5.94 m, so 6 m."""
    (wire,) = bill(arranged(fed("middle"))).wires
    assert (wire.cut_m, wire.buy_m) == (pytest.approx(5.4), 6.0)


def test_equal_resistors_share_a_line() -> None:
    lines = bill(arranged(fed("one end", 6), {**fed("one end", 6), "name": "window"})).resistors
    assert [line.runs for line in lines] == [(0, 1)]


def test_sleeves_are_counted_by_joint_and_end() -> None:
    """Opposite ends: + and - near bulb 1 and - at the far end; a cap lies under the cover of either."""
    sleeves = {line.use: line.count for line in bill(arranged(fed("opposite ends"))).sleeves}
    assert sleeves == {"inner": 3, "cap": 2, "outer": 2}
