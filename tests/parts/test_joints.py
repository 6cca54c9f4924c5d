"""Joints and live ends by feed; expected ones by hand from DESIGN, section 3."""

from __future__ import annotations

import pytest

from guidegen.parts.joints import dead_ends, joints
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
