"""Feeding a run as the schematic shows: which wire to which bulb."""

from __future__ import annotations

from guidegen.circuit.arrangement import RunPlan
from guidegen.guide.blocks import Check
from guidegen.guide.matter import Matter
from guidegen.guide.steps.checks import beep_check, no_short_check, ohms_check
from guidegen.guide.steps.cold_test import between_ends
from guidegen.guide.steps.draft import Draft
from guidegen.guide.steps.joint_words import joint_parts, solder_lines
from guidegen.guide.tools import Tool
from guidegen.guide.words import step_identity
from guidegen.locale import _
from guidegen.parts.wires import extra_reference, feeder_reference, resistor_reference

_TOOLS = (Tool.METER, Tool.STRIPPER, Tool.IRON, Tool.PEN, Tool.GLASSES)
_TOPICS = ("soldering", "outdoors-joints", "polarity")


def feed_steps(matter: Matter, index: int) -> list[Draft]:
    """Steps that feed one run: near its begin, in its middle, at its far end, as its feed asks."""
    run = matter.runs[index]
    steps = [_near(matter, index)]
    if run.feed == "middle":
        steps.append(_tap(matter, index))
    if run.feed in ("both ends", "opposite ends"):
        steps.append(_far(matter, index))
    return steps


def plus_source(run: RunPlan, index: int) -> str:
    """What brings plus to the run's first joint."""
    if run.feeder is not None:
        return _("plus of feeder {reference}").format(reference=feeder_reference(index))
    if run.resistor.fitted:
        return _("the free leg of {resistor}").format(resistor=resistor_reference(index))
    return _("the + common connector")


def minus_source(run: RunPlan, index: int) -> str:
    """What brings minus to the run's first joint."""
    if run.feeder is not None:
        return _("minus of feeder {reference}").format(reference=feeder_reference(index))
    return _("the − common connector")


def _near(matter: Matter, index: int) -> Draft:
    run = matter.runs[index]
    return Draft(
        identity=step_identity("feed", index),
        title=_near_title(run, index),
        why=_near_why(run),
        parts=(*_near_parts(run, index), *joint_parts(matter, 2)),
        tools=_TOOLS,
        topics=_TOPICS,
        do=(*_resistor_line(run, index), *_near_lines(run, index), *solder_lines()),
        checks=_near_checks(run, index),
    )


def _near_lines(run: RunPlan, index: int) -> tuple[str, ...]:
    """Which wires meet."""
    words = {
        "plus": plus_source(run, index),
        "minus": minus_source(run, index),
        "extra": extra_reference(index),
    }
    lines = {
        "one end": (
            _("Join: {plus} to plus of the wire in front of bulb 1."),
            _("Join: {minus} to minus of the same wire."),
        ),
        "middle": (
            _("Join: {plus} to plus of the extra pair {extra}."),
            _("Join: {minus} to minus of the extra pair {extra}."),
            _("The wire in front of bulb 1 is not used: it is capped later."),
        ),
        "both ends": (
            _(
                "Join three wires: {plus}, plus of the extra pair {extra}, plus of the wire in front of bulb "
                "1."
            ),
            _("Join three wires: {minus}, minus of {extra}, minus of the wire in front of bulb 1."),
        ),
        "opposite ends": (
            _("Join: {plus} to plus of the wire in front of bulb 1."),
            _("Join: {minus} to the extra wire {extra}, not to the string."),
            _("Minus of the wire in front of bulb 1 stays free: it is capped later."),
        ),
    }[run.feed]
    return tuple(line.format(**words) for line in lines)


def _near_title(run: RunPlan, index: int) -> str:
    """The title names the wires that meet, as the schematic does."""
    if run.feed == "middle":
        return _("Join the extra pair {extra} to the supply side").format(extra=extra_reference(index))
    if run.feeder is None:
        return _("Join the supply side at bulb 1")
    return _("Join feeder {feeder} at bulb 1").format(feeder=feeder_reference(index))


def _near_why(run: RunPlan) -> str:
    return {
        "one end": _("Plus and minus both come in at bulb 1."),
        "middle": _("Fed in its middle, the current has half as far to go, and the run shines more evenly."),
        "both ends": _("Fed at both ends, the bulbs far away get as much as the near ones."),
        "opposite ends": _(
            "Plus comes in at bulb 1 and minus leaves from the last bulb, so that every bulb has the same "
            "length of wire in all."
        ),
    }[run.feed]


def _near_parts(run: RunPlan, index: int) -> tuple[str, ...]:
    parts = []
    if run.feeder is not None:
        parts.append(_("feeder {reference}").format(reference=feeder_reference(index)))
    if run.feed != "one end":
        parts.append(_("extra wire {extra}").format(extra=extra_reference(index)))
    return tuple(parts)


def _resistor_line(run: RunPlan, index: int) -> tuple[str, ...]:
    """Where the near end of the feeder goes."""
    if run.feeder is None:
        return ()
    feeder = feeder_reference(index)
    if run.resistor.fitted:
        plus = _("Near end of {feeder}: its + core into the connector at the free leg of {resistor}.").format(
            feeder=feeder, resistor=resistor_reference(index)
        )
    else:
        plus = _("Near end of {feeder}: its + core into the + common connector.").format(feeder=feeder)
    minus = _("Near end of {feeder}: its − core into the − common connector.").format(feeder=feeder)
    return plus, minus


def _near_checks(run: RunPlan, index: int) -> tuple[Check, ...]:
    source = (
        _("the free leg of {resistor}").format(resistor=resistor_reference(index))
        if run.resistor.fitted
        else _("the + common connector")
    )
    plus_to = (
        _("plus of {extra}").format(extra=extra_reference(index))
        if run.feed == "middle"
        else _("plus of bulb 1")
    )
    minus_to = (
        _("minus of bulb 1")
        if run.feed in ("one end", "both ends")
        else _("the far end of {extra}").format(extra=extra_reference(index))
    )
    if_not = (
        _(
            "No beep: a joint or a terminal does not hold. Beep on the wrong wire: plus and minus are "
            "swapped."
        ),
    )
    return (
        beep_check(_("From {source} to {target}").format(source=source, target=plus_to), if_not),
        beep_check(_("From the − common connector to {target}").format(target=minus_to), if_not),
    )


def _tap(matter: Matter, index: int) -> Draft:
    run = matter.runs[index]
    extra, bulb = extra_reference(index), run.fed_bulb
    return Draft(
        identity=step_identity("tap", index),
        title=_("Join the extra pair {extra} at bulb {bulb}").format(extra=extra, bulb=bulb),
        why=_("This is where the run gets its current: half the bulbs on one side, half on the other."),
        parts=(_("extra wire {extra}").format(extra=extra), *joint_parts(matter, 2)),
        tools=_TOOLS,
        topics=_TOPICS,
        do=(
            _(
                "Right behind bulb {bulb}, within 2 cm, cut both wires of the string and bare 15 mm of all "
                "four ends. Push the sleeves onto the cables first."
            ).format(bulb=bulb),
            _("Three wires plus to plus: both plus ends of the string and plus of {extra}.").format(
                extra=extra
            ),
            _("Three wires minus to minus: both minus ends of the string and minus of {extra}.").format(
                extra=extra
            ),
            *solder_lines()[1:],
        ),
        checks=(
            beep_check(
                _("From plus of {extra} to plus of bulb {bulb}, then to plus of bulb {next}").format(
                    extra=extra, bulb=bulb, next=min(bulb + 1, run.bulbs)
                ),
                (_("No beep: solder the joint again. Beep to minus: swap plus and minus."),),
            ),
        ),
    )


def _far(matter: Matter, index: int) -> Draft:
    run = matter.runs[index]
    extra, bulb = extra_reference(index), run.bulbs
    both = run.feed == "both ends"
    lines = (
        (
            _("Plus of {extra} to plus of bulb {bulb}.").format(extra=extra, bulb=bulb),
            _("Minus of {extra} to minus of bulb {bulb}.").format(extra=extra, bulb=bulb),
        )
        if both
        else (
            _("{extra} to minus of bulb {bulb}.").format(extra=extra, bulb=bulb),
            _("Plus behind bulb {bulb} stays free: it is capped later.").format(bulb=bulb),
        )
    )
    return Draft(
        identity=step_identity("far-end", index),
        title=_("Join the extra wire {extra} at bulb {bulb}").format(extra=extra, bulb=bulb),
        why=_("At the far end the extra wire meets the last bulb.")
        if both
        else _("The run's minus leaves here."),
        parts=(_("extra wire {extra}").format(extra=extra), *joint_parts(matter, 2 if both else 1)),
        tools=_TOOLS,
        topics=_TOPICS,
        do=(
            _(
                "Bare 15 mm of the wires right behind bulb {bulb}. If the string ends closed there, open the "
                "bulb's cover, or tap the wire within 1 cm in front of it."
            ).format(bulb=bulb),
            *lines,
            *solder_lines(),
        ),
        checks=_loop_checks(run) if both else (_return_check(run, index),),
    )


def _return_check(run: RunPlan, index: int) -> Check:
    return beep_check(
        _("From the near end of {extra} to minus of bulb {bulb}").format(
            extra=extra_reference(index), bulb=run.bulbs
        ),
        (_("No beep: solder the joint again. Beep to plus: wrong conductor, change it."),),
    )


def _loop_checks(run: RunPlan) -> tuple[Check, ...]:
    """Between the ends the extra pair lies beside the string: the ohms tell whether it is really joined."""
    if_not = (_("Too much: the extra pair is not joined at one of its ends. Solder that joint again."),)
    reading = between_ends(run)
    bulb = run.bulbs
    return (
        no_short_check(
            _("From plus to minus at bulb {bulb}").format(bulb=bulb),
            (_("Near zero: plus and minus of the extra pair are swapped at one end. Change them there."),),
        ),
        ohms_check(_("From plus of bulb 1 to plus of bulb {bulb}").format(bulb=bulb), reading, if_not),
        ohms_check(_("From minus of bulb 1 to minus of bulb {bulb}").format(bulb=bulb), reading, if_not),
    )
