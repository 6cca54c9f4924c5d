"""Words about soldering that several steps share."""

from __future__ import annotations

from guidegen.circuit.arrangement import RunPlan
from guidegen.guide.blocks import Check
from guidegen.guide.matter import Matter
from guidegen.guide.predicted import resistance
from guidegen.guide.steps.checks import ohms_check
from guidegen.guide.tools import Tool
from guidegen.locale import _, ngettext
from guidegen.parts.joints import Cover, JointPlace, run_covers

JOINT_TOOLS = (Tool.METER, Tool.CUTTERS, Tool.STRIPPER, Tool.IRON, Tool.TAPE, Tool.GLASSES)
JOINT_TOPICS = ("soldering", "outdoors-joints", "polarity")
#: A soldered joint may have this much, ohm; own assumption.
JOINT_OHM = 0.1


def cover_at(run: RunPlan, index: int, place: JointPlace, behind_bulb: int | None = None) -> Cover:
    """The outer sleeve over a joint of a run; LookupError where there is none."""
    for cover in run_covers(run, index):
        for joint in cover.joints:
            if joint.place == place and behind_bulb in (None, joint.behind_bulb):
                return cover
    raise LookupError(f"no {place} joint in run {index}")


def joint_parts(matter: Matter, cover: Cover, caps: int = 0) -> tuple[str, ...]:
    """Sleeves for one soldered place, and the caps that are shrunk in the same step."""
    inner = ngettext("{count} inner sleeve, 3 cm", "{count} inner sleeves, 3 cm", cover.soldered_poles)
    parts = (inner.format(count=cover.soldered_poles), outer_text(matter, 1))
    return (*parts, caps_text(caps)) if caps else parts


def outer_text(matter: Matter, count: int) -> str:
    """So many outer sleeves."""
    text = ngettext("{count} outer sleeve, 12 cm", "{count} outer sleeves, 12 cm", count).format(count=count)
    return _("{sleeves}, adhesive-lined").format(sleeves=text) if matter.outdoors else text


def caps_text(count: int) -> str:
    """So many cap sleeves."""
    return ngettext("{count} cap sleeve, 3 cm", "{count} cap sleeves, 3 cm", count).format(count=count)


def sleeves_first() -> str:
    """What has to be on the cable before it is joined."""
    return _("First push the sleeves onto the cables, the outer one too, well away from the heat.")


def stagger() -> str:
    """How two joints are kept from lying side by side."""
    return _("Cut plus 3 cm shorter on one cable and minus 3 cm shorter on the other. Bare 15 mm of each.")


def solder_both() -> str:
    """How both conductors are soldered."""
    return _("Hook plus into plus and minus into minus. Solder; let them cool without moving.")


def tape_apart() -> str:
    """How a joint waits for its readings."""
    return _("Shrink nothing yet. Tape the bare joints apart.")


def across_joint_check() -> Check:
    """Ohms of the solder itself."""
    return ohms_check(
        _("Across each soldered joint, bare wire to bare wire"),
        resistance(0.0, 0.0, JOINT_OHM),
        (_("Dull or loose: heat it again with fresh solder. Lacquered wire: scrape it bright and tin it."),),
    )


def closed_end(bulb: int) -> str:
    """How wires are reached where the maker closed the string."""
    return _(
        "String closed behind bulb {bulb}? Open the bulb's cover far enough to reach both wires, or bare "
        "them within 1 cm in front of it."
    ).format(bulb=bulb)
