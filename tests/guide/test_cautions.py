"""Cautions: all on the safety page, and each at the step where it bites."""

from __future__ import annotations

from guidegen.guide.blocks import Caution
from guidegen.guide.cautions import Placed, cautions_of_steps
from guidegen.safety.findings import LEVELS
from guidegen.safety.judge import RULE_BY_ID
from tests.guide.projects import Made


def box(anchor: str, signal: str = "warning") -> Caution:
    """A caution with nothing in it but its name."""
    return Caution(anchor, signal, "", "", "", "", (), "")  # type: ignore[arg-type]


def test_every_finding_has_its_box_on_the_safety_page_most_severe_first(all_guides: tuple[Made, ...]) -> None:
    for made in all_guides:
        page = made.page("stay-safe.html")
        assert {each.anchor for each in page.cautions} == {finding.rule for finding in made.study.findings}
        order = [LEVELS.index(each.signal) for each in page.cautions]
        assert order == sorted(order)
        assert all(each.full for each in page.cautions)


def test_local_codes_come_first(plain: Made) -> None:
    assert plain.page("stay-safe.html").first_line.startswith(
        "Local codes and licensed practice come before this guide"
    )


def test_every_box_says_what_can_happen_and_where_it_comes_from(all_guides: tuple[Made, ...]) -> None:
    for made in all_guides:
        for each in made.page("stay-safe.html").cautions:
            assert each.title and each.hazard and each.avoid and each.source
            assert each.consequence or each.signal == "notice"


def test_every_caution_but_those_on_goals_stands_at_a_step(all_guides: tuple[Made, ...]) -> None:
    for made in all_guides:
        told = {each.anchor for step in made.steps for each in step.cautions}
        due = {each.rule for each in made.study.findings if RULE_BY_ID[each.rule].topics != ("goals",)}
        assert due - told == set()


def test_the_whole_box_stands_at_the_first_step_of_the_page_only(all_guides: tuple[Made, ...]) -> None:
    for made in all_guides:
        stop = made.page("build.html").stop
        seen = {stop.anchor} if stop else set()
        for step in made.steps:
            for each in step.cautions:
                assert each.full == (each.anchor not in seen), (step.identity, each.anchor)
                seen.add(each.anchor)


def test_the_hot_resistor_is_told_where_it_is_mounted(bench: Made) -> None:
    assert "resistor-hot" in {each.anchor for each in bench.step("mount-resistors").cautions}


def test_live_ends_are_told_where_they_are_capped(bench: Made) -> None:
    assert "dead-ends" in {each.anchor for each in bench.step("close-joints").cautions}


def test_what_does_not_apply_is_not_told(plain: Made) -> None:
    """Indoors there is no rain, and a whole string fed at one end leaves no cut end."""
    anchors = {each.anchor for each in plain.page("stay-safe.html").cautions}
    assert not anchors & {
        "sleeve-outdoors",
        "drip-loop",
        "gutter-no-fixing",
        "dead-ends",
        "outlet-without-rcd",
    }


def test_a_rule_named_by_a_step_stands_only_there() -> None:
    placed = [Placed(box("one"), ("one", "meter"))]
    found = cautions_of_steps(placed, [("meter",), ("one",)])
    assert [len(each) for each in found] == [0, 1]


def test_a_broad_topic_places_only_what_nothing_else_places() -> None:
    placed = [Placed(box("one"), ("one", "supply", "labels")), Placed(box("two"), ("two", "supply"))]
    found = cautions_of_steps(placed, [("supply",), ("labels",)])
    assert [[each.anchor for each in step] for step in found] == [["two"], ["one"]]


def test_a_notice_is_told_once() -> None:
    placed = [Placed(box("one", "notice"), ("one", "meter")), Placed(box("two"), ("two", "meter"))]
    found = cautions_of_steps(placed, [("meter",), ("meter",)])
    assert [[each.anchor for each in step] for step in found] == [["one", "two"], ["two"]]
