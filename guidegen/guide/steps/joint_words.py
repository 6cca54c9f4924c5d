"""Words about soldering that several steps share."""

from __future__ import annotations

from guidegen.guide.matter import Matter
from guidegen.locale import _, ngettext


def joint_parts(matter: Matter, conductors: int) -> tuple[str, ...]:
    """Sleeves for one joint of a cable."""
    inner = ngettext("{count} inner sleeve, 3 cm", "{count} inner sleeves, 3 cm", conductors).format(
        count=conductors
    )
    outer = _("1 outer sleeve, 8 cm, adhesive-lined") if matter.outdoors else _("1 outer sleeve, 8 cm")
    return inner, outer


def solder_lines() -> tuple[str, ...]:
    """How a joint is soldered, its sleeves left open for the tests."""
    return (
        _("Push the outer sleeve and the inner sleeves onto the cable now, well away from the heat."),
        _(
            "Hook the wires into each other, solder plus to plus and minus to minus, let them cool without "
            "moving."
        ),
        _("Do not shrink anything yet. Hold the two joints apart with a strip of paper."),
    )


def cold_joint() -> tuple[str, ...]:
    """What to do when a joint reads too many ohms."""
    return (
        _("Nothing or far too much: the joint is dull or loose. Heat it again with fresh solder."),
        _("Still too much: the wire may be lacquered. Scrape it bright, tin it, solder again."),
    )
