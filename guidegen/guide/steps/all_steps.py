"""Every step of the build in order."""

from __future__ import annotations

from guidegen.guide.matter import Matter
from guidegen.guide.steps.bench import bench
from guidegen.guide.steps.draft import DraftGroup
from guidegen.guide.steps.finish import finish
from guidegen.guide.steps.identify import identify
from guidegen.guide.steps.pictures import with_pictures
from guidegen.guide.steps.power import power
from guidegen.guide.steps.run_steps import run_group
from guidegen.guide.steps.supply_end import supply_end


def step_groups(matter: Matter) -> tuple[DraftGroup, ...]:
    """From the shop to the hanging lights, in the order of work."""
    groups = (
        identify(matter),
        supply_end(matter),
        bench(matter),
        *(run_group(matter, index) for index in range(len(matter.runs))),
        power(matter),
        finish(matter),
    )
    return with_pictures(matter, groups)
