"""Live ends and strain relief of a run."""

from __future__ import annotations

from guidegen.guide.matter import Matter
from guidegen.guide.steps.checks import look_check, no_short_check
from guidegen.guide.steps.draft import Draft
from guidegen.guide.tools import Tool
from guidegen.guide.words import step_identity
from guidegen.locale import _, ngettext
from guidegen.parts.joints import DeadEnd, run_dead_ends


def cap_ends(matter: Matter, index: int) -> list[Draft]:
    """One step for every live end of a run."""
    return [_cap(matter, index, end) for end in run_dead_ends(matter.runs[index], index)]


def _cap(matter: Matter, index: int, end: DeadEnd) -> Draft:
    run = matter.runs[index]
    lead_in = end.place == "lead-in"
    where = _("in front of bulb 1") if lead_in else _("behind bulb {bulb}").format(bulb=run.bulbs)
    return Draft(
        identity=step_identity("cap-tail" if lead_in else "cap-far-end", index),
        title=_("Close the live end {where}").format(where=where),
        why=_("Nothing is fed from this end, but it carries the run's volts all the same."),
        parts=() if end.made else _cap_parts(matter, len(end.poles)),
        tools=(Tool.METER,) if end.made else (Tool.CUTTERS, Tool.METER, Tool.HOT_AIR, Tool.GLASSES),
        topics=("dead-ends", "outdoors-joints"),
        do=_made_lines() if end.made else _cap_lines(end, where),
        checks=(
            no_short_check(
                _("From plus to minus at bulb {bulb}").format(bulb=1 if lead_in else run.bulbs),
                (_("The two ends touch, or a strand bridges them: cut them back and cap them again."),),
            ),
        ),
    )


def _made_lines() -> tuple[str, ...]:
    return (
        _("The string ends here as its maker closed it. Look at that end: no bare metal, no crack."),
        _("If it is not closed all round, cap each conductor apart, one 2 cm shorter than the other."),
    )


def _cap_lines(end: DeadEnd, where: str) -> tuple[str, ...]:
    if len(end.poles) == 1:
        return (
            _("Only the {pole} conductor ends free {where}. Cut it back to sound insulation.").format(
                pole="+" if end.poles[0] == "+" else "−", where=where
            ),
            _(
                "Slide a cap sleeve over it, 1 cm beyond the end. Shrink it and pinch the tip shut while it "
                "is warm."
            ),
            _("Slide an outer sleeve over cap and cable. Shrink it after the test under power."),
        )
    return (
        _("Cut one conductor 2 cm shorter than the other, so that the ends never lie side by side."),
        _(
            "Slide a cap sleeve over each conductor apart, 1 cm beyond its end. Shrink each and pinch the "
            "tip shut while it is warm."
        ),
        _("Slide an outer sleeve over both. Shrink it after the test under power."),
    )


def _cap_parts(matter: Matter, conductors: int) -> tuple[str, ...]:
    caps = ngettext("{count} cap sleeve, 3 cm", "{count} cap sleeves, 3 cm", conductors).format(
        count=conductors
    )
    outer = _("1 outer sleeve, 8 cm, adhesive-lined") if matter.outdoors else _("1 outer sleeve, 8 cm")
    return caps, outer


def strain_relief(matter: Matter, index: int) -> Draft:
    """Take every pull off the joints."""
    return Draft(
        identity=step_identity("strain-relief", index),
        title=_("Take the pull off every joint"),
        why=_("Solder breaks where a wire bends or pulls. The cable has to take the pull, not the joint."),
        parts=(_("cable ties"),),
        tools=(Tool.CUTTERS, Tool.GLASSES),
        topics=("outdoors-joints",),
        do=(
            _(
                "At each joint, lay both cables in a small loop and tie them together 3 cm before and 3 cm "
                "behind the joint."
            ),
            _("Pull at both sides: the ties take the pull and the joint stays slack."),
            _("Do the same where a cable goes into the ventilated box, a terminal or the socket."),
        ),
        checks=(
            look_check(
                _("Every joint while you pull at its cables"),
                _("slack, nothing moves"),
                (_("The joint moves: tie it again, nearer to the joint."),),
            ),
        ),
    )
