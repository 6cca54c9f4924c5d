"""Every rule in the guide: its text in its box on Stay safe, and at the step where it bites."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pytest

from guidegen.circuit.spread import expected_spread
from guidegen.guide.blocks import Caution, Step
from guidegen.guide.compose import compose
from guidegen.guide.pages import BuildPage, Guide, SafetyPage
from guidegen.report.check import check_text
from guidegen.safety.findings import Finding
from guidegen.safety.judge import ALL, RULE_BY_ID, RULES
from guidegen.safety.words import describe
from guidegen.study import Study
from tests.safety import test_hazards
from tests.safety.projects import study_of
from tests.safety.test_judge import (
    ALWAYS,
    EDGES,
    MET,
    SURE,
    TWO_WAY,
    VALUE_EDGES,
    judged_anew,
    with_bulb_volts,
    with_guard,
    with_margins,
    with_section,
)

#: The step at which the whole box stands; None for what is told on Stay safe alone.
STEPS: dict[str, str | None] = {
    "new-fixed-wiring": None,  # on top of the page, and a line at each step
    "outlet-without-rcd": "supply-volts",
    "other-plugs": "labels",
    "apart-from-mains": "hang",
    "class-2-marks": "supply-marks",
    "insulation-unknown": "supply-marks",
    "approval-unknown": "supply-marks",
    "power-not-limited": "fuse-holder",
    "supply-unregulated": "supply-volts",
    "supply-load-high": "larger-resistor-run-1",
    "not-dry-over-30-volts": "close-joints",
    "supply-standing-outdoors": "supply-marks",
    "unregulated-adapter": "supply-volts",
    "fuse-not-sure": "fuse-holder",
    "smallest-fuse-not-sure": "fuse-holder",
    "far-short-not-cleared": "fuse-holder",
    "smallest-fuse-far-short": "fuse-holder",
    "fuse-too-small": "fuse-holder",
    "wire-size-inferred": "low-voltage-string",
    "extra-wire-short": "cut-wires",
    "wire-short-of-way": "cut-wires",
    "wire-beyond-way": "cut-wires",
    "wire-reading-near-leads": "measure-resistors",
    "short-not-cleared": "fuse-holder",
    "resistor-load": "measure-resistors",
    "resistor-hot": "mount-resistors",
    "resistor-hot-running": "mount-resistors",
    "test-resistor-hot": "bench-reading",
    "between-bulbs-assumed": "free-the-tail",
    "figures-for-parallel": "bench-reading",
    "two-way-dark-leds-reverse": "parallel-test",
    "string-not-for-rain": "low-voltage-string",
    "dead-ends": "close-joints",
    "cells-left-in": "low-voltage-string",
    "flashing-lights": "parallel-test",
    "two-way-half-dark": "parallel-test",
    "sleeve-outdoors": "close-joints",
    "fixings-off-services": "hang",
    "children-and-animals": "hang",
    "overhead-lines": "hang",
    "over-path": "hang",
    "drip-loop": "close-joints",
    "maker-rating-ends": "free-the-tail",
    "gutter-no-fixing": "hang",
    "hung-too-low": "hang",
    "hook-overloaded": "hang",
    "hung-wire-overpulled": "hang",
    "hung-without-wind": "hang",
    "bulbs-beyond-hooks": "hang",
    "solder-at-the-bench": "free-the-tail",
    "first-hour-watched": "first-hour",
    "meter-on-amps": "supply-volts",
    "sharp-tools": "free-the-tail",
    "polarity-by-meter": "bench-reading",
    "led-over-maximum-worst": "measure-resistors",
    "one-low-led": "larger-resistor-run-1",
    "max-led-current-assumed": "low-voltage-string",
    "led-typical": "bench-reading",
    "bench-reading-left-out": "bench-reading",
    "bench-led-volts": "bench-reading",
    "bench-burden": "bench-reading",
    "bench-currents-disagree": "bench-reading",
    "bench-unexplained": "bench-reading",
    "bench-source-not-regulated": "bench-reading",
    "led-current-goal": None,
    "evenness-goal": None,
    "lights-stay-dark": None,
    "not-stated": "supply-marks",
    "runs-proposed": None,
}
TOLD = [rule.id for rule in RULES if rule.level != "refusal"]


def met(folder: Path, rule: str) -> tuple[Study, Finding]:
    """A study that meets the rule, and what it finds."""
    by_hand = {
        "two-way-dark-leds-reverse": (TWO_WAY, lambda known: with_bulb_volts(known, 5.01)),
        "resistor-hot-running": (
            {},
            lambda known: {**with_guard(known, **SURE), **with_margins(known, resistor_w=0.86)},
        ),
        "wire-over-limit": ({}, lambda known: with_section(known, False)),
        "fuse-too-small": (
            {},
            lambda known: {"margins": replace(known.solved.margins, supply_a=0.1601)},
        ),
    }
    for name, changes in (*test_hazards.MET, *MET, *((each, {}) for each in ALWAYS)):
        if name == rule:
            study = study_of(folder, changes)
            return study, next(each for each in study.findings if each.rule == rule)
    for name, changes, make, over, _at in EDGES:
        if name == rule:
            known = study_of(folder, changes)
            return known, judged_anew(known, **make(known, *over))[rule]
    for name, changes, make, values, _at in VALUE_EDGES:
        if name == rule:
            known = study_of(folder, changes)
            return known, judged_anew(known, **make(known, **values))[rule]
    changes, parts = by_hand[rule]
    known = study_of(folder, changes)
    return known, judged_anew(known, **parts(known))[rule]


def guide_of(study: Study, *findings: Finding) -> Guide:
    """The guide to a study with these findings alone."""
    assert study.solved is not None
    readings = expected_spread(study.solved.arrangement, study.solved.solution, 20).readings
    return compose(replace(study, findings=findings), readings)


def boxes(guide: Guide) -> tuple[Caution, ...]:
    return next(page.model.cautions for page in guide.pages if isinstance(page.model, SafetyPage))


def steps(guide: Guide) -> Iterator[Step]:
    page = next(page.model for page in guide.pages if isinstance(page.model, BuildPage))
    return (step for group in page.groups for step in group.steps)


def words(text: str) -> str:
    """The text with plain spaces: a page keeps numbers beside their units."""
    return " ".join(text.split())


def test_danger_of_new_wiring_is_pointed_to_where_the_guide_stops(tmp_path: Path) -> None:
    guide = guide_of(*met(tmp_path, "new-fixed-wiring"))
    first = next(steps(guide))
    assert (first.identity, [each.full for each in first.cautions]) == ("stop-for-mains", [False])


def test_every_rule_that_is_told_in_a_guide_has_its_step_here() -> None:
    assert set(STEPS) == set(TOLD)


@pytest.mark.parametrize("rule", TOLD)
def test_text_of_the_rule_is_in_its_box_and_its_step(tmp_path: Path, rule: str) -> None:
    study, finding = met(tmp_path, rule)
    guide = guide_of(study, finding)
    (box,) = boxes(guide)
    said = describe(finding)
    assert (box.anchor, box.signal, box.title) == (rule, RULE_BY_ID[rule].level, said.title)
    assert words(box.hazard) == words(said.hazard)
    assert box.consequence == said.consequence
    assert [words(line) for line in box.avoid] == [words(line) for line in said.avoid]
    assert said.reason in box.source
    assert said.source.rstrip(".") in box.source
    whole = [(step.identity, each) for step in steps(guide) for each in step.cautions if each.full]
    assert whole == ([] if STEPS[rule] is None else [(STEPS[rule], box)])


@pytest.mark.parametrize("rule", TOLD)
def test_later_steps_of_the_rule_point_to_its_box(tmp_path: Path, rule: str) -> None:
    guide = guide_of(*met(tmp_path, rule))
    lines = [each for step in steps(guide) for each in step.cautions if not each.full]
    assert {each.anchor for each in lines} <= {rule}
    assert not lines or RULE_BY_ID[rule].level != "notice"


@pytest.mark.parametrize("rule", [rule.id for rule in ALL if rule.level == "refusal"])
def test_refusal_is_told_under_stop_with_reason_and_what_to_do_instead(tmp_path: Path, rule: str) -> None:
    study, finding = met(tmp_path, rule)
    told = words(check_text(replace(study, findings=(finding,), solved=None), "utf-8"))
    said = describe(finding)
    assert f"STOP: {said.title} [{rule}]" in told
    for sentence in (said.hazard, f"Why: {said.reason}", f"Source: {said.source}"):
        assert words(sentence) in told
    assert f"Instead: {words(' '.join(said.avoid))}" in told
