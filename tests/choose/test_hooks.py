"""The search on hooks: metres by hand, the better place, and the same result without passing over any."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from guidegen.choose.choose import choose
from guidegen.choose.curves import make_bounds
from guidegen.choose.layouts import layouts, wire_m
from guidegen.choose.metres import places_text, sited_text
from guidegen.choose.search import search
from guidegen.choose.siting import Sited
from guidegen.choose.why import assumptions, why
from guidegen.project.schema import Project
from guidegen.project.supply_at import AtHook
from guidegen.study import fit_leds
from tests.choose.making import field_of, project_with

#: Two strings of 6 bulbs, tail 50 cm, spacing 25 cm, over seven hooks 50 cm apart, all but straight.
ROW = {"sag": "1 mm", "lines": [{"spans": ["0.5 m"] * 6}]}


def hung(places: Any = "start", **changes: Any) -> Project:
    return project_with({"hanging": ROW, "place.supply_at": places, **changes})


def split_of(project: Project, feed: str, place: int) -> list[tuple[float, float, bool]]:
    """Routes of the two strings as two runs, both fed so."""
    layout = next(
        each
        for each in layouts(project)
        if [part.bulbs for part in each] == [6, 6]
        and {part.feed for part in each} == {feed}
        and each[0].place == place
    )
    return [(part.route.feeder_m, part.route.extra_m, part.route.turned) for part in layout]


def test_runs_on_the_hooks_are_fed_at_the_end_nearer_to_the_supply() -> None:
    # Run 1 from bulb 1 at H1 to its last bulb at 1.25 m; its 50 cm of tail hang before H1.
    assert split_of(hung(), "one end", 0) == [(0.0, 0.0, False), (pytest.approx(1.25, abs=0.011), 0.0, False)]


def test_a_supply_at_the_far_hook_turns_the_runs() -> None:
    # Turned, run 1 fills 0 to 1.75 m and run 2 1.75 to 3.5 m; the row ends at 3 m, and half a metre hangs on.
    found = split_of(hung(["start", "H7"]), "one end", 1)
    assert [turned for _feeder, _extra, turned in found] == [True, True]
    assert [feeder for feeder, _extra, _turned in found] == pytest.approx([1.25, 0.5], abs=0.011)


def test_of_places_that_differ_by_wire_alone_the_least_comes_first() -> None:
    found = layouts(hung(["H7", "middle", "start"]))
    trios = [found[place : place + 3] for place in range(0, len(found), 3)]
    assert all([wire_m(a), wire_m(b), wire_m(c)] == sorted(map(wire_m, (a, b, c))) for a, b, c in trios)


def test_the_better_of_two_places_is_proposed_with_the_metres_it_saves() -> None:
    # Far to the left both runs need long feeders; in the middle, none: run 1 turned, run 2 not.
    hooks = [{"x": f"{x} m", "y": "0 m"} for x in (0, 0.5, 1, 1.5, 2, 2.5, 3)]
    lines = {"sag": "1 mm", "lines": [{"hooks": hooks}]}
    places = ["-4 m, 0 m", "H4"]
    project = project_with({"hanging": lines, "place.supply_at": places})
    choice = choose(project, fit_leds(project))
    first = choice.proposals[0]
    assert first.sited is not None
    assert first.sited.place == AtHook(4)
    other_m = first.sited.others[0][1]
    assert other_m - first.sited.wire_m > 4.0
    saved = f"{other_m - first.sited.wire_m:.2f}\u00a0m less than at the point -4 m, 0 m"
    assert saved in why(first, choice)
    assert first.settled(project).place.supply_at == AtHook(4)


def test_without_hooks_each_stated_place_is_tried_along_the_line() -> None:
    project = project_with({"place.supply_at": ["start", "middle"]})
    # Two runs of 1.75 m, fed at one end: 0 and 1.75 m from the start, nothing from the middle.
    assert [wire[0] for wire in split_of(project, "one end", 0)] == [0.0, 1.75]
    assert [wire[0] for wire in split_of(project, "one end", 1)] == [0.0, 0.0]


def test_what_a_place_saves_is_said_in_metres() -> None:
    assert sited_text(Sited(AtHook(6), 5.28, (("start", 9.85),))) == (
        "supply at H6 with 5.28\u00a0m of feeder and extra wire, 4.57\u00a0m less than at the start of "
        "the line"
    )


def test_the_makers_own_runs_are_told_the_place_of_the_least_wire() -> None:
    runs = [{"bulbs": 6, "string": "drop", "name": "a"}, {"bulbs": 6, "string": "drop", "name": "b"}]
    project = hung(["start", "H4"], runs=runs)
    mine = next(each for each in choose(project, fit_leds(project)).proposals if each.given)
    assert places_text(mine.wires).startswith("The supply at H4 takes the least feeder and extra wire")


def test_the_comparison_says_that_it_rests_on_the_hooks() -> None:
    project = hung()
    assert "from the hooks of the hanging plan" in assumptions(choose(project, fit_leds(project)))[0]


@settings(max_examples=30)
@given(
    st.sampled_from(["start", ["start", "H7"], ["middle", "H2", "0.7 m"]]),
    st.sampled_from(["0.05 ohm/m", "2 ohm/m"]),
    st.sampled_from([0.3, 0.6, 0.9]),
)
def test_passing_over_candidates_loses_nothing_on_hooks(places: Any, wire: str, evenness: float) -> None:
    project = hung(places, **{"strings.drop.wire": {"per_length": wire}, "goals.evenness": evenness})
    assert_nothing_lost(project)


@settings(max_examples=20)
@given(st.sampled_from(["H1", ["H4", "1 m, 2 m"]]), st.sampled_from([0.3, 0.6, 0.9]))
def test_passing_over_candidates_loses_nothing_on_two_lines_of_hooks(places: Any, evenness: float) -> None:
    runs = [{"bulbs": 6, "string": "drop", "name": name} for name in ("back", "front")]
    lines = [
        {"runs": [name], "hooks": [{"x": f"{x} m", "y": f"{y} m"} for x in (0, 0.5, 1, 1.5)]}
        for name, y in (("back", 1), ("front", 0))
    ]
    hanging = {"sag": "1 mm", "lines": lines}
    project = hung(places, hanging=hanging, runs=runs, **{"goals.evenness": evenness})
    assert {part.line for layout in layouts(project) for part in layout} == {0, 1}
    assert_nothing_lost(project)


def assert_nothing_lost(project: Project) -> None:
    """Solving every candidate finds the same as the search that passes over some."""
    field, _leds = field_of(project, (0.25, 0.75))
    bounds = make_bounds(field)
    quick, slow = search(field, bounds), search(field, bounds, exhaustive=True)
    assert quick.numbers.tolist() == slow.numbers.tolist()
    assert quick.values.tolist() == slow.values.tolist()
