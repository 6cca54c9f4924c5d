"""Step pictures say what the arrangement is, and there is one for every id that steps name."""

from __future__ import annotations

import xml.etree.ElementTree as ET

import pytest

from guidegen.drawings.bought import bought_for
from guidegen.drawings.picture import plain_line
from guidegen.drawings.steps import draw_steps
from tests.drawings.step_builds import every_feed, project, step_pictures, studied
from tests.guide.projects import FEEDS, fed

SVG = "{http://www.w3.org/2000/svg}"


def words(svg: str) -> list[str]:
    """Every line of text of a drawing."""
    return ["".join(element.itertext()) for element in ET.fromstring(svg).iter(f"{SVG}text")]


@pytest.fixture(scope="module")
def pictures():
    return step_pictures(studied(every_feed(31)))


def test_every_picture_is_known_by_its_own_id(pictures):
    assert all(picture.id == picture_id for picture_id, picture in pictures.items())


def test_every_picture_has_title_description_and_words_for_it(pictures):
    for picture in pictures.values():
        title, description = list(ET.fromstring(picture.svg))[:2]
        assert (title.tag, description.tag) == (f"{SVG}title", f"{SVG}desc")
        assert title.text
        assert description.text == plain_line(picture.alt)
        assert picture.alt.endswith(".")


def test_no_sentence_keeps_a_placeholder(pictures):
    assert not [picture.id for picture in pictures.values() if "{" in picture.svg or "{" in picture.alt]


def test_pieces_name_the_bulbs_as_bought_and_in_the_run(pictures):
    """31 bulbs of strings of 12: two whole strings, then 7 of the third, cut behind bulb 7."""
    shown = words(pictures["step-pieces-1"].svg)
    assert [line for line in shown if line.startswith("string ")] == ["string 1", "string 2", "string 3"]
    assert {"1 to 12", "13 to 24", "25 to 31"} <= set(shown)
    assert (
        "String 3: bulbs 1 to 7, cut right behind bulb 7; 25 to 31 in the run."
        in pictures["step-pieces-1"].alt
    )


def test_a_second_run_goes_on_where_the_first_was_cut(pictures):
    """It begins with bulb 8 of string 3."""
    assert pictures["step-pieces-2"].alt.startswith("String 3: bulbs 8 to 12; 1 to 5 in the run.")


def test_joints_behind_the_same_bulb_are_drawn_once():
    found = studied(project(*[fed("one end", 24, name=f"rail {number}") for number in range(3)]))
    assert [picture_id for picture_id in step_pictures(found) if "join" in picture_id] == ["step-join-12"]


def test_the_extra_pair_goes_to_the_middle_bulb(pictures):
    """ceil(31 / 2) = 16: DESIGN, section 3."""
    run = FEEDS.index("middle") + 1
    assert {"16", "17", f"X{run}"} <= set(words(pictures[f"step-tap-{run}"].svg))


def test_at_opposite_ends_plus_is_left_open_behind_the_last_bulb(pictures):
    run = FEEDS.index("opposite ends") + 1
    assert f"X{run} joined to minus of bulb 31" in pictures[f"step-far-end-{run}"].alt
    assert any("open" in line for line in words(pictures[f"step-far-end-{run}"].svg))


def test_test_points_have_the_numbers_of_the_schematic():
    found = studied(every_feed(31))
    assert found.solved is not None
    drawn = step_pictures(found)
    for index in range(len(FEEDS)):
        labels = {point.label for point in found.solved.points if point.run == index}
        shown = {line for line in words(drawn[f"step-points-{index + 1}"].svg) if line.startswith("T")}
        assert shown == labels


def test_wires_are_drawn_with_the_lengths_of_the_cut_list():
    """Indoors 10 cm at each end: a feeder of 2 m is cut at 2.2 m, an extra wire of 3 m at 3.2 m."""
    found = studied(project(fed("middle", 12)))
    shown = [line.replace("\u00a0", " ") for line in words(step_pictures(found)["step-cut-wires"].svg)]
    assert [line for line in shown if line.startswith(("W", "X"))] == ["W1", "X1"]
    assert {"2.2 m", "3.2 m", "10 cm added at each end"} <= set(shown)


def test_more_wires_than_fit_are_told():
    """Eight feeders and eight extra pairs; six are drawn."""
    found = studied(project(*[fed("middle", 12, name=f"rail {number}") for number in range(8)]))
    assert "and 10 more wires" in words(step_pictures(found)["step-cut-wires"].svg)


def test_a_label_says_what_the_step_says():
    found = studied(project(fed("one end", 12)))
    shown = words(step_pictures(found)["step-labels"].svg)
    for line in ("5\u00a0V DC only · fuse 630\u00a0mA", "W1 feeder “shelf”", "only behind R1 15\u00a0Ω,"):
        assert plain_line(line) in shown


def test_the_box_is_read_at_the_test_points_of_its_resistors():
    found = studied(project(*[fed("one end", 12, name=f"rail {number}") for number in range(2)]))
    assert found.solved is not None
    labels = [point.label for point in found.solved.points if point.kind == "resistor volts"]
    drawn = step_pictures(found)
    assert [line for line in words(drawn["step-box-points"].svg) if line.startswith("T")] == labels
    assert labels[0] in words(drawn["step-first-hour"].svg)


def test_all_runs_are_read_at_the_supplys_test_point(pictures):
    assert "T1" in words(pictures["step-all-runs"].svg)
    assert "ohms from the + common connector" in pictures["step-all-runs"].alt


def test_without_a_resistor_the_box_is_read_from_plus_to_minus():
    strings = {"strings__drop__leds_in_series": 3, "strings__drop__group_resistor": "560 ohm"}
    found = studied(project(fed("one end", 12, resistor="none"), supply__voltage="12 V", **strings))
    assert found.solved is not None
    drawn = step_pictures(found)
    (label,) = [point.label for point in found.solved.points if point.kind == "after resistor"]
    for picture_id in ("step-box-points", "step-first-hour"):
        shown = words(drawn[picture_id].svg)
        assert label in shown and not [line for line in shown if line.startswith("R")]
    assert "resistor" not in drawn["step-close-box"].alt


def test_more_resistors_than_fit_are_told():
    found = studied(project(*[fed("one end", 12, name=f"rail {number}") for number in range(5)]))
    shown = words(step_pictures(found)["step-mount-resistors"].svg)
    assert [line for line in shown if line.startswith("R")] == ["R1", "R2", "R3"]
    assert any("2 more resistors" in line for line in shown)


def test_the_bench_is_drawn_with_the_reading_of_its_step():
    """8 of 12 bulbs: the string is bared behind bulb 8, and read there."""
    bench = step_pictures(studied(project(fed("one end", 8))))["step-bench-1"]
    assert "3: at bulb 8" in words(bench.svg)
    assert "12" not in words(bench.svg)
    assert "Reading 3: volts at bulb 8." in bench.alt


def test_a_string_that_stays_whole_is_drawn_with_two_readings():
    bench = step_pictures(studied(project(fed("one end", 12))))["step-bench-1"]
    assert not [line for line in words(bench.svg) if line.startswith("3")]
    assert "Reading 3" not in bench.alt


def test_two_wires_are_no_leave_to_cut(pictures):
    """Some strings with two wires are in series: the step says so, and later readings tell."""
    assert "two wires: go on testing" in words(pictures["step-wires-1"].svg)


def test_a_two_way_string_is_drawn_with_the_bulbs_that_tell_plus():
    drawn = step_pictures(studied(project(fed("one end", 12), strings__drop__lit_on_dc="half")))
    assert {"1", "2", "2 shines: swap", "plus, once 1 shines"} <= set(words(drawn["step-half-piece-1"].svg))


def test_ohms_of_a_two_way_run_are_drawn_both_ways():
    drawn = step_pictures(studied(project(fed("one end", 12), strings__drop__lit_on_dc="half")))
    shown = words(drawn["step-cold-1"].svg)
    assert "where the run begins: both ways round" in shown
    assert not {"red", "black"} & set(shown)
    assert "block" not in drawn["step-cold-1"].alt


def test_only_what_steps_name_is_drawn():
    found = studied(every_feed(12))
    assert found.solved is not None
    named = {"step-hang", "schematic-1"}
    drawn = draw_steps(named, bought_for(found.project), found.solved.arrangement, found.solved.points)
    assert [picture.id for picture in drawn] == ["step-hang"]


def test_same_bytes_each_time():
    drawn = [step_pictures(studied(every_feed(31))) for _time in range(2)]
    assert drawn[0] == drawn[1]
