"""Seven example projects: all that applies is told, nothing else, and never how mains work is done."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from guidegen.guide.electrician import NOTE_LINES
from guidegen.guide.pages import ElectricianPage
from guidegen.safety.judge import RULE_BY_ID
from guidegen.safety.words import described
from guidegen.study import study
from tests.guide.projects import Made, of_study, texts

EXAMPLES = Path(__file__).parents[1] / "examples"

#: What every build brings: joints, tools, a meter, a supply in the house.
ALWAYS = {
    "test-resistor-hot", "other-plugs", "apart-from-mains", "fixings-off-services", "solder-at-the-bench",
    "first-hour-watched", "meter-on-amps", "sharp-tools", "maker-rating-ends", "polarity-by-meter",
}  # fmt: skip
RAIN = {"outlet-without-rcd", "sleeve-outdoors", "drip-loop", "gutter-no-fixing", "overhead-lines"}
HOT = {"short-not-cleared", "resistor-hot"}

#: What each example brings on top, by hand from its keys and its solved figures.
EXPECTED: dict[str, set[str]] = {
    "indoors-whole-string": {*HOT, "class-2-marks", "led-typical"},
    "indoors-children": {
        *HOT, "class-2-marks", "led-typical", "insulation-unknown", "approval-unknown", "dead-ends",
        "between-bulbs-assumed", "cells-left-in", "children-and-animals", "over-path", "unregulated-adapter",
        "wire-size-inferred", "max-led-current-assumed", "not-stated",
    },
    "sheltered-path": {*HOT, *RAIN, "class-2-marks", "led-typical", "over-path"},
    "open-garden": {
        *HOT, *RAIN, "class-2-marks", "led-typical", "approval-unknown", "string-not-for-rain", "dead-ends",
        "children-and-animals", "supply-standing-outdoors",
    },
    "twelve-volt-groups": {"class-2-marks", "power-not-limited", "supply-unregulated"},
    "two-way": {"short-not-cleared", "class-2-marks", "dead-ends", "two-way-half-dark"},
    "new-fixed-wiring": {
        *HOT, *RAIN, "led-typical", "new-fixed-wiring", "fuse-not-sure", "cells-left-in",
        "children-and-animals", "over-path", "supply-standing-outdoors",
    },
}  # fmt: skip

#: Words of work on the mains; the guide leaves all of it to the licensed person.
MAINS_WORDS = (
    "live conductor", "live wire", "line conductor", "phase conductor", "hot wire", "neutral", "earth wire",
    "ground wire", "earthing", "grounding", "protective conductor", "breaker", "consumer unit", "fuse box",
    "distribution board", "service panel", "junction box", "back box", "wall box", "knockout", "conduit",
    "trunking", "terminal block", "wire nut", "twist-on", "strip the mains", "mains cable", "isolate",
    "isolator", "lock off", "voltage tester", "test lamp", "two-pole tester", "fish the", "chase",
    "turn off the power", "switch off the circuit", "wire the outlet", "connect the outlet", "hard-wire",
)  # fmt: skip

EVERY = pytest.mark.parametrize("name", EXPECTED)


@pytest.fixture(scope="module")
def guides() -> dict[str, Made]:
    return {name: of_study(study(EXAMPLES / f"safety-{name}.yaml")) for name in EXPECTED}


def said(made: Made) -> str:
    """Every text of every page but the project file, which is the maker's own."""
    parts = (text for page in made.guide.pages for field, text in texts(page) if field != "project_file")
    return "\n".join(parts)


@EVERY
def test_safety_page_holds_all_that_applies_and_nothing_else(guides: dict[str, Made], name: str) -> None:
    anchors = [box.anchor for box in guides[name].page("stay-safe.html").cautions]
    assert sorted(anchors) == sorted(ALWAYS | EXPECTED[name])


@EVERY
def test_what_does_not_apply_is_on_no_page_at_all(guides: dict[str, Made], name: str) -> None:
    told = said(guides[name])
    assert ("children" in told) == ("children-and-animals" in EXPECTED[name])
    titles = {RULE_BY_ID[rule].title for rule in ALWAYS | EXPECTED[name]}
    for rule in RULE_BY_ID.values():
        if rule.title not in titles:
            assert rule.title not in told.split("\n"), rule.id
            assert rule.sentence not in told, rule.id


@EVERY
def test_every_caution_stands_whole_once_and_then_as_a_line(guides: dict[str, Made], name: str) -> None:
    stop = guides[name].page("build.html").stop
    seen = {stop.anchor} if stop else set()
    for step in guides[name].steps:
        for box in step.cautions:
            assert box.full == (box.anchor not in seen)
            seen.add(box.anchor)
    assert seen == ALWAYS | EXPECTED[name]


@EVERY
def test_no_page_tells_how_to_work_on_the_mains(guides: dict[str, Made], name: str) -> None:
    told = said(guides[name]).casefold()
    found = [word for word in MAINS_WORDS if re.search(rf"\b{re.escape(word)}\b", told)]
    assert found == []


@EVERY
def test_same_finding_is_one_box(guides: dict[str, Made], name: str) -> None:
    findings = guides[name].study.findings
    assert len(described(findings)) == len({finding.rule for finding in findings})


@EVERY
def test_sheet_for_the_electrician_is_there_only_for_new_fixed_wiring(
    guides: dict[str, Made], name: str
) -> None:
    names = [page.name for page in guides[name].guide.pages]
    assert ("electrician.html" in names) == (name == "new-fixed-wiring")
    assert len(names) == len(set(names)) == (12 if name == "new-fixed-wiring" else 11)


def test_guide_stops_at_a_danger_box_on_top_of_three_pages(guides: dict[str, Made]) -> None:
    made = guides["new-fixed-wiring"]
    boxes = [
        made.page("index.html").stop,
        made.page("build.html").stop,
        made.page("stay-safe.html").cautions[0],
        made.page("electrician.html").stop,
    ]
    assert [(box.signal, box.anchor, box.full) for box in boxes] == [("danger", "new-fixed-wiring", True)] * 4


def test_guide_to_an_existing_outlet_stops_nowhere(guides: dict[str, Made]) -> None:
    made = guides["sheltered-path"]
    assert made.page("index.html").stop is None
    assert made.page("build.html").stop is None


def test_first_step_of_new_fixed_wiring_is_to_stop(guides: dict[str, Made]) -> None:
    made = guides["new-fixed-wiring"]
    assert made.identities[0] == "stop-for-mains"
    assert "For the electrician" in " ".join(made.steps[0].do)


def facts(made: Made) -> dict[str, tuple[str, str]]:
    page: ElectricianPage = made.page("electrician.html")
    return {
        fact.label: (fact.value.replace("\u00a0", " "), fact.note.replace("\u00a0", " "))
        for fact in page.facts
    }


def test_sheet_states_load_in_watts_and_volt_amperes(guides: dict[str, Made]) -> None:
    # By hand: 5 V x 2 A = 10 W; / 0.7 = 14.3 W; / 0.5 = 28.6 VA; at 230 V 124 mA, at 120 V 238 mA.
    told = facts(guides["new-fixed-wiring"])
    assert told["Load to plan for"][0] == "14.3 W, 28.6 VA"
    assert told["Mains current"][0] == "124 mA at 230 V or 238 mA at 120 V"
    assert told["Heat of the supply"][0] == "4.29 W"


def test_sheet_states_place_class_and_protection(guides: dict[str, Made]) -> None:
    made = guides["new-fixed-wiring"]
    told = facts(made)
    assert told["The lights hang"][0] == "open outdoors"
    assert told["The supply stands"] == ("outdoors", "marked IP65")
    assert told["Air"][0] == "−15 °C to 35 °C"
    assert told["Class asked for"][0] == "II"
    assert told["Enclosure asked for"][0] == "IPX4 or better"
    asked = " ".join(made.page("electrician.html").asked).replace("\u00a0", " ")
    for words in ("switched outlet", "Class II", "SELV", "30 mA or less"):
        assert words in asked


def test_only_an_outlet_is_asked_for(guides: dict[str, Made]) -> None:
    """Every step rests on pulling the supply's plug."""
    made = guides["new-fixed-wiring"]
    asked = (*made.page("electrician.html").asked, *made.step("stop-for-mains").do)
    assert not any("connected by you" in line or "enclosed" in line for line in asked)
    assert any("No supply that is wired in" in line for line in asked)
    assert any("wired in is not for this guide" in line for line in asked)


def test_the_supply_goes_into_the_outlet_that_was_handed_over(guides: dict[str, Made]) -> None:
    step = guides["new-fixed-wiring"].step("supply-volts")
    told = " ".join((*step.do, *(line for check in step.checks for line in check.if_not)))
    assert "into the outlet that the licensed person handed over" in told
    assert "already there" not in told
    assert "another outlet" not in told
    elsewhere = guides["two-way"].step("supply-volts")
    assert "Plug the supply into an outlet that is already there." in elsewhere.do


def test_the_sheet_says_which_heat_of_the_resistors_it_states(guides: dict[str, Made]) -> None:
    assert facts(guides["new-fixed-wiring"])["Heat of the resistors"][1].startswith("in the worst case")


def test_sheet_tells_who_attends_to_what_and_leaves_room_to_sign(guides: dict[str, Made]) -> None:
    page: ElectricianPage = guides["new-fixed-wiring"].page("electrician.html")
    assert [row[0] for row in page.who.rows] == ["Licensed person", "Builder", "Whoever uses it"]
    assert "Date and signature" in page.to_fill
    assert page.note_lines == NOTE_LINES > 0
