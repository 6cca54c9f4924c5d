"""Tools: what the words of a step ask for is among its tools, and no tool is there that no word asks for."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from guidegen.guide.blocks import Step
from guidegen.guide.tools import Tool, tool_name
from guidegen.study import study
from tests.guide.projects import Made, changed, fed, make, of_study

EXAMPLES = sorted((Path(__file__).parents[1] / "examples").glob("*.yaml"))

#: What a step says when its hands hold the tool.
SAID = {
    Tool.METER: r"\b[Mm]eter\b|beeper",
    Tool.CLIP_LEADS: r"\b[Cc]lip\b",
    Tool.CUTTERS: r"\b[Cc]ut\b",
    Tool.STRIPPER: r"\b[Bb]are \d+ mm|wire of the fuse holder|bare its end",
    Tool.KNIFE: r"scrape it",
    Tool.MAGNET: r"magnet",
    Tool.IRON: r"\b[Ss]older\b|\bTin it",
    Tool.HOT_AIR: r"\bshrink (?:it|them)|: shrink",
    Tool.TILE: r"\btile\b",
    Tool.TAPE: r"\b[Tt]ape (?:joint|the bare|them)|with tape",
    Tool.CLOTH: r"Wipe",
    Tool.SCREWDRIVER: r"[Ss]crew|into the .*connector|\blid\b|own connector",
    Tool.TAPE_MEASURE: r"Measure from|: cut \d",
    Tool.PEN: r"\bMark\b|mark (?:it|\+)|[Ww]rite|Number bulbs|beside the name",
    Tool.THERMOMETER: r"Thermometer",
    Tool.GLASSES: r"\b[Cc]ut\b|\b[Ss]older\b",
    Tool.CLOCK: r"one hour",
    Tool.LADDER: r"up there",
}


@pytest.fixture(scope="module")
def many_guides(all_guides: tuple[Made, ...]) -> tuple[Made, ...]:
    """The guides of the other tests, every example file, and runs without feeders."""
    bare = [make(changed(runs=[fed(feed, feeder=None)])) for feed in ("one end", "middle", "both ends")]
    return (*all_guides, *bare, *(of_study(study(path)) for path in EXAMPLES))


def said(step: Step) -> str:
    """Everything that a step asks hands to do."""
    checks = [f"{check.what} {check.meter} {check.expected}" for check in step.checks]
    return "\n".join([*step.do, *checks])


def test_every_tool_has_its_words() -> None:
    assert set(SAID) == set(Tool)


def test_a_tool_that_the_words_of_a_step_ask_for_is_listed(many_guides: tuple[Made, ...]) -> None:
    missing = {
        (step.identity, tool.name)
        for made in many_guides
        for step in made.steps
        for tool, words in SAID.items()
        if re.search(words, said(step)) and tool_name(tool) not in step.tools
    }
    assert missing == set()


def test_no_step_lists_a_tool_that_its_words_do_not_ask_for(many_guides: tuple[Made, ...]) -> None:
    idle = {
        (step.identity, tool.name)
        for made in many_guides
        for step in made.steps
        for tool, words in SAID.items()
        if tool_name(tool) in step.tools and not re.search(words, said(step))
    }
    assert idle == set()


def test_the_list_of_tools_is_what_the_steps_use(many_guides: tuple[Made, ...]) -> None:
    for made in many_guides:
        used = {tool for step in made.steps for tool in step.tools}
        assert {line.name for line in made.page("parts-and-tools.html").tools} == used


def test_every_tool_is_named_and_has_a_reason(bench: Made) -> None:
    assert all(line.name and line.why for line in bench.page("parts-and-tools.html").tools)
