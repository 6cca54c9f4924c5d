"""Joints and live ends by feed; expected ones by hand from DESIGN, section 3."""

from __future__ import annotations

import pytest

from guidegen.parts.bill import bill
from guidegen.parts.joints import covers, dead_ends, entries, joints
from tests.guide.projects import changed, fed, make


@pytest.mark.parametrize(
    ("feed", "expected"),
    [
        ("one end", [("feed", "+-", 2, 0)]),
        ("middle", [("extension", "+-", 2, None), ("tap", "+-", 3, 6)]),
        ("both ends", [("feed", "+-", 3, 0), ("far end", "+-", 2, 12)]),
        ("opposite ends", [("feed", "+", 2, 0), ("extension", "-", 2, None), ("far end", "-", 2, 12)]),
    ],
)
def test_every_feed_has_its_joints(feed: str, expected: list[tuple[str, str, int, int | None]]) -> None:
    found = joints(make(changed(runs=[fed(feed)])).matter.arrangement)
    assert [(each.place, "".join(each.poles), each.wires, each.behind_bulb) for each in found] == expected


@pytest.mark.parametrize(
    ("feed", "expected"),
    [
        ("one end", [("far end", "+-", True)]),
        ("middle", [("lead-in", "+-", False), ("far end", "+-", True)]),
        ("both ends", []),
        ("opposite ends", [("lead-in", "-", False), ("far end", "+", False)]),
    ],
)
def test_every_feed_leaves_its_live_ends(feed: str, expected: list[tuple[str, str, bool]]) -> None:
    found = dead_ends(make(changed(runs=[fed(feed)])).matter.arrangement)
    assert [(each.place, "".join(each.poles), each.made) for each in found] == expected


def test_a_cut_end_is_no_makers_end() -> None:
    found = dead_ends(make(changed(runs=[fed("one end", 8)])).matter.arrangement)
    assert [each.made for each in found] == [False]


def test_pieces_are_joined_between_the_feed_and_the_far_end() -> None:
    found = joints(make(changed(runs=[fed("one end", 18)])).matter.arrangement)
    assert [(each.place, each.behind_bulb) for each in found] == [("feed", 0), ("join", 12)]


def test_where_the_fed_bulb_ends_a_piece_all_wires_meet_in_one_joint() -> None:
    """24 bulbs of strings of 12, fed behind bulb 12, where the strings are joined too."""
    found = joints(make(changed(runs=[fed("middle", 24)])).matter.arrangement)
    assert [(each.place, each.wires, each.behind_bulb) for each in found] == [
        ("extension", 2, None),
        ("tap", 3, 12),
    ]


def test_a_single_bulb_fed_in_the_middle_has_nothing_behind_its_joint() -> None:
    arrangement = make(changed(runs=[fed("middle", 1, resistor="330 ohm")])).matter.arrangement
    assert [(each.place, each.wires) for each in joints(arrangement)] == [("extension", 2), ("tap", 2)]
    assert [each.place for each in dead_ends(arrangement)] == ["lead-in"]


@pytest.mark.parametrize(
    ("feed", "expected"),
    [
        ("one end", []),
        ("middle", ["tap"]),
        ("both ends", ["far end"]),
        ("opposite ends", ["far end"]),
    ],
)
def test_a_run_without_a_feeder_goes_straight_into_the_terminals(feed: str, expected: list[str]) -> None:
    run = fed(feed)
    del run["feeder"]
    assert [each.place for each in joints(make(changed(runs=[run])).matter.arrangement)] == expected


@pytest.mark.parametrize(
    ("feed", "expected"),
    [
        ("one end", [("feed", 0, False)]),
        ("middle", [("extension", 0, False), ("tap", 0, True), ("", 2, False)]),
        ("both ends", [("feed", 0, True), ("far end", 0, False)]),
        ("opposite ends", [("feed extension", 1, True), ("far end", 1, False)]),
    ],
)
def test_one_outer_sleeve_covers_what_lies_together(feed: str, expected: list[tuple[str, int, bool]]) -> None:
    found = covers(make(changed(runs=[fed(feed)])).matter.arrangement)
    assert [
        (" ".join(each.place for each in cover.joints), cover.capped_poles, cover.forked) for cover in found
    ] == expected


def test_ties_are_two_a_soldered_place_and_one_a_cable_into_a_box() -> None:
    """Lead into socket and box, one feeder: 3; feed and far end of both ends: 2 x 2; by hand."""
    lead = {"length": "1 m", "wire": {"area": "0.5 mm2"}}
    arrangement = make(changed(runs=[fed("both ends")], supply__lead=lead)).matter.arrangement
    assert entries(arrangement) == 3
    assert bill(arrangement).ties == 7
