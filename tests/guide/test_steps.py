"""Steps derived from the arrangement."""

from __future__ import annotations

import re

import pytest

from guidegen.guide.blocks import Step
from guidegen.guide.steps.draft import DraftGroup
from guidegen.guide.tools import Tool, tool_name
from tests.guide.projects import FEEDS, Made, changed, fed, make


def words(made: Made, identity: str) -> str:
    """All that a step says to do."""
    return " ".join(made.step(identity).do)


def test_every_step_has_work_and_a_check_with_a_way_out(all_guides: tuple[Made, ...]) -> None:
    for made in all_guides:
        for step in made.steps:
            assert step.do, step.identity
            assert step.checks, step.identity
            assert all(check.expected and check.if_not for check in step.checks), step.identity


def test_steps_are_numbered_through(all_guides: tuple[Made, ...]) -> None:
    for made in all_guides:
        assert [step.number for step in made.steps] == list(range(1, len(made.steps) + 1))


def test_identities_are_unique_and_fit_for_an_address(all_guides: tuple[Made, ...]) -> None:
    for made in all_guides:
        assert len(set(made.identities)) == len(made.identities)
        assert all(re.fullmatch(r"[a-z0-9]+(-[a-z0-9]+)*", each) for each in made.identities)


def test_anchors_of_groups_are_unique(all_guides: tuple[Made, ...]) -> None:
    for made in all_guides:
        anchors = [group.anchor for group in made.page("build.html").groups]
        assert len(set(anchors)) == len(anchors)


def test_identities_stay_when_only_values_change(plain: Made) -> None:
    assert make(changed(runs=[{**fed("one end"), "resistor": "22 ohm"}])).identities == plain.identities


@pytest.mark.parametrize(
    ("feed", "expected"),
    [
        ("one end", ["feed-run-1"]),
        ("middle", ["feed-run-1", "tap-run-1"]),
        ("both ends", ["feed-run-1", "far-end-run-1"]),
        ("opposite ends", ["feed-run-1", "far-end-run-1"]),
    ],
)
def test_each_feed_has_its_joints(by_feed: dict[str, Made], feed: str, expected: list[str]) -> None:
    stems = ("feed-", "tap-", "far-end-")
    assert [each for each in by_feed[feed].identities if each.startswith(stems)] == expected


def test_fed_in_the_middle_the_extra_pair_goes_to_the_middle_bulb(by_feed: dict[str, Made]) -> None:
    """ceil(12 / 2) = 6: DESIGN, section 3."""
    assert "bulb 6" in by_feed["middle"].step("tap-run-1").title


def test_fed_at_opposite_ends_minus_goes_to_the_last_bulb_only(by_feed: dict[str, Made]) -> None:
    made = by_feed["opposite ends"]
    assert "X1 to minus of bulb 12." in words(made, "far-end-run-1")
    assert "Minus of W1 meets X1, not the string." in words(made, "feed-run-1")
    assert "Minus of the wire in front of bulb 1 feeds nothing" in words(made, "feed-run-1")
    assert "Ends to cap: “shelf”, plus behind bulb 12." in words(made, "close-joints")


def test_fed_at_both_ends_plus_and_minus_go_to_the_last_bulb(by_feed: dict[str, Made]) -> None:
    assert "Plus of X1 to plus of bulb 12. Minus of X1 to minus of bulb 12." in words(
        by_feed["both ends"], "far-end-run-1"
    )


def test_a_cut_names_string_and_bulb(cut_and_joined: Made) -> None:
    """18 bulbs of strings of 12: all of string 1, then bulbs 1 to 6 of string 2, cut there."""
    text = words(cut_and_joined, "take-pieces-run-1")
    assert "Cut string 2 right behind bulb 6" in text
    assert "Cut string 1" not in text


def test_a_piece_names_its_bulbs_as_bought_and_in_the_run(cut_and_joined: Made) -> None:
    assert "bulbs 1 to 6 of string 2. They are number 13 to 18 of the run" in words(
        cut_and_joined, "take-pieces-run-1"
    )
    assert "bulbs 7 to 12 of string 2. They are number 1 to 6 of the run" in words(
        cut_and_joined, "take-pieces-run-2"
    )


def test_pieces_are_joined_behind_the_bulb_where_the_first_ends(cut_and_joined: Made) -> None:
    assert [each for each in cut_and_joined.identities if each.startswith("join-")] == [
        "join-behind-bulb-12-run-1"
    ]


def test_a_whole_string_is_neither_cut_nor_joined(plain: Made) -> None:
    assert not any(each.startswith("join-") for each in plain.identities)
    assert "right behind" not in words(plain, "take-pieces-run-1")


def test_a_whole_string_keeps_the_end_its_maker_closed(plain: Made) -> None:
    assert "ends as its maker closed it" in words(plain, "close-joints")
    assert "Ends to cap" not in words(plain, "close-joints")


def test_outdoors_sleeves_are_lined_and_checked_for_glue(outdoors: Made, plain: Made) -> None:
    assert any("adhesive-lined" in part for part in outdoors.step("feed-run-1").parts)
    assert any("glue" in check.expected for check in outdoors.step("close-joints").checks)
    assert not any("adhesive-lined" in part for part in plain.step("feed-run-1").parts)


def test_outdoors_every_cable_hangs_in_a_drip_loop(outdoors: Made, plain: Made) -> None:
    assert "water drip off" in words(outdoors, "hang")
    assert "water drip off" not in words(plain, "hang")


def test_without_resistors_none_is_measured_or_mounted(without_resistor: Made) -> None:
    assert "mount-resistors" not in without_resistor.identities
    assert "measure-resistors" not in without_resistor.identities
    assert "larger-resistor-run-1" in without_resistor.identities


def test_a_two_way_string_is_not_tested_backwards(two_way: Made) -> None:
    """Half of its LEDs conduct backwards, so a reading there proves nothing."""
    checks = two_way.step("cold-test-run-1").checks
    assert not any("diode" in check.meter for check in checks)


def test_fed_at_both_ends_the_middle_gets_least_where_the_figures_say_so() -> None:
    wire = {"per_length": "0.6 ohm/m"}
    made = make(changed(strings__drop__bought=3, strings__drop__wire=wire, runs=[fed("both ends", 30)]))
    light = made.matter.solution.runs[0].light
    assert light.min() < 0.9 * light[-1]
    assert light[-1] >= 0.9 * light[0]
    assert made.step("feed-run-1").why.endswith("the middle ones get least.")


def test_fed_at_both_ends_nothing_is_said_of_the_middle_where_all_are_alike(by_feed: dict[str, Made]) -> None:
    made = by_feed["both ends"]
    assert made.matter.solution.runs[0].light.min() >= 0.9
    assert made.step("feed-run-1").why == "Fed at both ends, all bulbs get nearly as much as the first."


def test_two_kinds_of_string_are_tested_apart(two_kinds: Made) -> None:
    assert {"bench-reading-drop", "bench-reading-star"} <= set(two_kinds.identities)


def test_new_fixed_wiring_stops_before_anything_else(new_wiring: Made, plain: Made) -> None:
    assert new_wiring.identities[0] == "stop-for-mains"
    assert "stop-for-mains" not in plain.identities


@pytest.mark.parametrize("feed", FEEDS)
def test_nothing_gets_power_before_its_cold_test_and_the_fuse(by_feed: dict[str, Made], feed: str) -> None:
    order = by_feed[feed].identities
    steps = ["parallel-test", "fuse-in", "bench-reading", "test-pieces-run-1", "feed-run-1"]
    steps += ["cold-test-run-1", "larger-resistor-run-1", "all-runs", "readings-run-1", "close-joints"]
    steps += ["strain-relief", "close-box", "first-hour", "hang", "last-readings"]
    assert sorted(steps, key=order.index) == steps


def test_every_run_is_powered_alone_first(cut_and_joined: Made) -> None:
    order = cut_and_joined.identities
    assert (
        order.index("larger-resistor-run-1") < order.index("larger-resistor-run-2") < order.index("all-runs")
    )


def test_every_tool_of_a_step_is_listed_and_every_listed_tool_is_used(all_guides: tuple[Made, ...]) -> None:
    for made in all_guides:
        used = {tool for step in made.steps for tool in step.tools}
        assert {line.name for line in made.page("parts-and-tools.html").tools} == used


def test_tools_are_used_where_a_step_names_them(all_guides: tuple[Made, ...]) -> None:
    """A meter's setting in a check needs the meter among the tools."""
    for made in all_guides:
        for step in made.steps:
            if any(check.meter.startswith("Meter") for check in step.checks):
                assert tool_name(Tool.METER) in step.tools, step.identity


def test_every_run_has_its_group(cut_and_joined: Made) -> None:
    groups: tuple[DraftGroup, ...] = cut_and_joined.page("build.html").groups
    assert [group.anchor for group in groups if group.anchor.startswith("run-")] == [
        "run-1-shelf",
        "run-2-window",
    ]


@pytest.mark.parametrize("feed", FEEDS)
@pytest.mark.parametrize("bulbs", [1, 2])
def test_runs_of_one_and_two_bulbs_have_their_steps_too(feed: str, bulbs: int) -> None:
    made = make(changed(runs=[fed(feed, bulbs, resistor="330 ohm")]))
    assert "all-runs" in made.identities


def test_twelve_runs_with_long_names_have_a_group_each() -> None:
    names = [f"the {number}th rail over the long potting bench" for number in range(12)]
    runs = [{**fed("one end", 2, resistor="330 ohm"), "name": name} for name in names]
    groups = make(changed(runs=runs)).page("build.html").groups
    assert sum(group.anchor.startswith("run-") for group in groups) == 12


def test_leds_in_series_are_not_told_apart_by_diode_test(without_resistor: Made) -> None:
    """A meter's few volts light no three LEDs in series, so “OL” would prove nothing."""
    meters = [check.meter for step in without_resistor.steps for check in step.checks]
    assert not any("diode test" in meter for meter in meters)


def soldering(made: Made) -> list[Step]:
    """Steps that make a soldered place of the run."""
    return [step for step in made.steps if any("inner sleeve" in part for part in step.parts)]


def test_sleeves_go_on_before_anything_else_is_done_at_a_joint(all_guides: tuple[Made, ...]) -> None:
    for made in all_guides:
        for step in soldering(made):
            assert step.do[0].startswith("First push the sleeves onto the cables"), step.identity


def test_a_joint_of_one_conductor_speaks_of_one(by_feed: dict[str, Made]) -> None:
    text = words(by_feed["opposite ends"], "far-end-run-1")
    assert "plus into plus" not in text
    assert "1 inner sleeve, 3 cm" in by_feed["opposite ends"].step("far-end-run-1").parts


def test_nothing_of_a_joint_is_shrunk_before_its_readings(all_guides: tuple[Made, ...]) -> None:
    for made in all_guides:
        closing = made.identities.index("close-joints")
        for step in soldering(made):
            assert "Shrink nothing yet" in " ".join(step.do)
        readings = [number for number, each in enumerate(made.identities) if each.startswith("readings-")]
        assert max(readings) < closing


def test_volts_of_a_bulb_are_read_only_while_its_metal_is_bare(all_guides: tuple[Made, ...]) -> None:
    for made in all_guides:
        bulbs = {point.label for point in made.matter.solved.points if point.kind == "bulb"}
        closing = made.identities.index("close-joints")
        late = [check for step in made.steps[closing:] for check in step.checks]
        assert not any(bulbs & set(check.points) for check in late)


def test_ties_come_after_the_sleeves_and_outside_them(bench: Made) -> None:
    assert bench.identities.index("close-joints") < bench.identities.index("strain-relief")
    assert "at least 2 cm outside the sleeve" in words(bench, "strain-relief")


def test_fed_at_a_join_the_wires_meet_in_one_step(bench: Made) -> None:
    """Front rail: strings of 12 joined behind bulb 12, where the extra pair comes in."""
    assert "join-behind-bulb-12-run-2" not in bench.identities
    text = words(bench, "tap-run-2")
    assert "Three wires meet at each joint: X2, the wire from bulb 12, the wire to bulb 13." in text
    assert "cut both wires" not in text


def test_bare_legs_never_lie_on_metal(all_guides: tuple[Made, ...]) -> None:
    for made in all_guides:
        for step in made.steps:
            if step.identity.startswith(("bench-reading", "larger-resistor")):
                assert "never on metal" in " ".join(step.do)
                assert "touch nothing" in " ".join(step.do)


def test_polarity_of_every_piece_is_seen_by_its_light_before_it_is_joined(
    all_guides: tuple[Made, ...],
) -> None:
    for made in all_guides:
        for index in range(len(made.matter.runs)):
            tested = made.identities.index(f"test-pieces-run-{index + 1}")
            joints = (f"join-.*-run-{index + 1}", f"(feed|tap|far-end)-run-{index + 1}")
            later = [
                k for k, each in enumerate(made.identities) if any(re.fullmatch(j, each) for j in joints)
            ]
            assert tested < min(later)


def test_outdoors_dry_insulation_is_asked_before_power_and_after_shrinking(
    outdoors: Made, plain: Made
) -> None:
    for identity in ("cold-test-run-1", "close-joints"):
        assert any("2 MΩ range" in check.meter for check in outdoors.step(identity).checks)
        assert not any("2 MΩ range" in check.meter for check in plain.step(identity).checks)


def test_a_short_is_looked_for_on_the_lowest_range_alone(all_guides: tuple[Made, ...]) -> None:
    """A lowest range ends at some hundred ohms: more than that it shows as “OL”."""
    for made in all_guides:
        checks = [check for step in made.steps for check in step.checks if check.expected == "“OL”"]
        assert all(not check.range for check in checks if "lowest range" in check.meter)


def test_the_run_is_found_behind_its_resistor_before_power(bench: Made, without_resistor: Made) -> None:
    whats = [check.what for check in bench.step("all-runs").checks]
    assert "Unplugged, from the + common connector to W1's + core" in whats
    assert not any("Unplugged" in check.what for check in without_resistor.step("all-runs").checks)


def test_without_a_resistor_no_reading_speaks_of_one(without_resistor: Made) -> None:
    for identity in ("readings-run-1", "last-readings", "first-hour"):
        step = without_resistor.step(identity)
        told = [*step.do, *(text for check in step.checks for text in (check.what, *check.if_not))]
        assert not any("volts across the resistor" in text for text in told)


def test_without_a_feeder_nothing_speaks_of_one_and_thin_wire_is_folded() -> None:
    project = changed(runs=[{"name": "shelf", "bulbs": 8, "resistor": "33 ohm"}])
    project["strings"]["drop"]["wire"] = {"gauge": "30 AWG"}
    made = make(project)
    told = [text for step in made.steps for text in step.do]
    assert not any("feeder" in text for text in told)
    assert any("ferrule" in text for text in made.step("feed-run-1").do)
    assert not soldering(made)


def test_outdoors_the_rcd_is_tried_before_anything_is_plugged_in(outdoors: Made, plain: Made) -> None:
    lines = outdoors.step("supply-volts").do
    tried = next(number for number, line in enumerate(lines) if "test button" in line)
    plugged = next(number for number, line in enumerate(lines) if line.startswith("Plug the supply"))
    assert tried < plugged
    assert "test button" not in words(plain, "supply-volts")


def test_supply_marks_ask_for_more_than_the_square(plain: Made) -> None:
    text = words(plain, "supply-marks")
    assert all(mark in text for mark in ("SELV", "LPS", "ES1", "IEC 61558-2-6"))


def test_a_gap_from_a_joined_tail_is_told(bench: Made) -> None:
    """Tail 50 cm against a spacing of 25 cm."""
    assert "The wire to bulb 13 is 50\u00a0cm long" in words(bench, "join-behind-bulb-12-run-1")
    assert any("between bulbs 12 and 13 is 50\u00a0cm" in text for text in bench.page("index.html").what)


def test_a_run_through_a_box_is_closed_before_the_watched_hour_and_read_in_it(bench: Made) -> None:
    points = {label for check in bench.step("first-hour").checks for label in check.points}
    assert points == {
        bench.matter.point("resistor volts", index).label for index in range(len(bench.matter.runs))
    }


def test_where_nothing_was_opened_nothing_is_shrunk() -> None:
    """A whole string straight into the terminals: no soldered place, its end as its maker closed it."""
    step = make(changed(runs=[{"name": "shelf", "bulbs": 12, "resistor": "15 ohm"}])).step("close-joints")
    assert "sleeve" not in " ".join(step.do)
    assert not step.parts
    assert step.checks


def test_the_bench_string_is_bared_where_it_is_cut_later_and_read_there(cut_and_joined: Made) -> None:
    """18 of strings of 12: the first join is behind bulb 12 of string 1, as its maker closed it."""
    assert "String closed behind bulb 12?" in words(cut_and_joined, "free-the-tail")
    whats = [check.what for check in cut_and_joined.step("bench-reading").checks]
    assert "At bulb 12, on the bared wires" in whats


def test_a_string_that_stays_whole_is_opened_nowhere_but_at_its_box(plain: Made) -> None:
    assert "behind bulb" not in words(plain, "free-the-tail")
    assert len(plain.step("bench-reading").checks) == 2


def test_lights_are_never_left_alone_where_a_short_may_last(plain: Made) -> None:
    assert "Never leave the lights on unattended or overnight" in words(plain, "last-readings")


def test_lights_with_a_hanging_plan_are_hung_by_it() -> None:
    """The spans are those of the file; three hooks, and a tie at each."""
    hanging = {"sag": "5 cm", "hook_kind": "screw eye", "lines": [{"spans": ["1.1 m", "1.2 m"]}]}
    step = make(changed(hanging=hanging)).step("hang")
    said = " ".join(step.do).replace("\u00a0", " ")
    assert "“Hanging plan”: hooks H1 to H3" in said
    assert "1.1" in said
    assert "1.2" in said
    assert "at most" not in said
    assert "screw eye" in " ".join(str(part) for part in step.parts)
    assert "soft tie" in " ".join(str(part) for part in step.parts)
