"""Build it: the steps, numbered, each with the cautions that bite there."""

from __future__ import annotations

from collections.abc import Sequence

from guidegen.guide.blocks import Caution, Step, StepGroup
from guidegen.guide.cautions import Placed, cautions_of_steps
from guidegen.guide.pages import BuildPage
from guidegen.guide.steps.draft import Draft, DraftGroup
from guidegen.guide.tools import tool_name
from guidegen.locale import _


def build_page(
    groups: Sequence[DraftGroup], cautions: Sequence[Placed], stop: Caution | None = None
) -> BuildPage:
    """The page of steps, behind the box at which the guide stops if there is one."""
    drafts = [draft for group in groups for draft in group.steps]
    boxes = cautions_of_steps(cautions, [draft.topics for draft in drafts], [stop.anchor] if stop else [])
    steps = iter(
        [_step(draft, number, box) for number, (draft, box) in enumerate(zip(drafts, boxes, strict=True), 1)]
    )
    return BuildPage(
        stop=stop,
        before=(
            _("Read all of “Stay safe” first."),
            _("Have everything of “Parts and tools” on the table."),
            _("Do the steps in their order. Each ends with a check; go on only when it fits."),
            _("T1, T2, … are the test points of “Wiring”. Red meter lead first, black lead second."),
            _("“OL” (or a lone “1”) on the meter means that nothing connects the two leads."),
            _(
                "Volts and ohms: black lead in COM, red one in VΩ. From few ohms take off what the "
                "leads alone show."
            ),
            _("Work with the supply unplugged, unless a step says “plug in”."),
            _("Iron, fresh solder and hot air burn skin at a touch."),
        ),
        groups=tuple(
            StepGroup(group.anchor, group.title, group.intro, tuple(next(steps) for _draft in group.steps))
            for group in groups
        ),
    )


def _step(draft: Draft, number: int, cautions: tuple[Caution, ...]) -> Step:
    return Step(
        identity=draft.identity,
        number=number,
        title=draft.title,
        why=draft.why,
        parts=draft.parts,
        tools=tuple(tool_name(tool) for tool in draft.tools),
        cautions=cautions,
        do=draft.do,
        checks=draft.checks,
        picture=draft.picture,
        own=draft.own,
        is_own=draft.is_own,
    )
