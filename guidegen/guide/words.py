"""Words about runs that pages and steps share."""

from __future__ import annotations

from guidegen.circuit.arrangement import RunPlan
from guidegen.locale import _, ngettext


def bulbs_text(count: int) -> str:
    """A number of bulbs."""
    return ngettext("{count} bulb", "{count} bulbs", count).format(count=count)


def feed_text(run: RunPlan) -> str:
    """How a run is fed, in words."""
    return {
        "one end": _("fed at one end, at bulb 1"),
        "middle": _("fed in the middle, at bulb {bulb}").format(bulb=run.fed_bulb),
        "both ends": _("fed at both ends, at bulb 1 and at bulb {bulb}").format(bulb=run.bulbs),
        "opposite ends": _("fed at opposite ends, plus at bulb 1 and minus at bulb {bulb}").format(
            bulb=run.bulbs
        ),
    }[run.feed]


def step_identity(stem: str, index: int) -> str:
    """Identity of a step of a run."""
    return f"{stem}-run-{index + 1}"
