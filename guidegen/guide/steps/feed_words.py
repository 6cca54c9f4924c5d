"""Which wires meet where a run is fed, in words."""

from __future__ import annotations

from guidegen.circuit.arrangement import RunPlan
from guidegen.circuit.solution import RunSolution
from guidegen.locale import _
from guidegen.parts.wires import extra_reference, feeder_reference, resistor_reference

#: Below this a wire slips out of a terminal, square metre; own assumption.
THIN_M2 = 0.2e-6
#: Light over light from which "nearly as much" is true: no eye tells one tenth apart; own assumption.
ALIKE = 0.9


def free_leg(run: RunPlan, index: int) -> str:
    """Where the run's plus begins."""
    if run.resistor.fitted:
        return _("the free leg of {resistor}").format(resistor=resistor_reference(index))
    return _("the + common connector")


def plus_terminal(run: RunPlan, index: int) -> str:
    """The connector that takes the run's plus."""
    if run.resistor.fitted:
        return _("the connector at the free leg of {resistor}").format(resistor=resistor_reference(index))
    return _("the + common connector")


def near_title(run: RunPlan, index: int) -> str:
    """The title names the wires that meet, as the schematic does."""
    if run.feeder is None:
        return _("Connect the run to the supply end")
    feeder = feeder_reference(index)
    if run.feed == "middle":
        return _("Join feeder {feeder} to the extra pair {extra}").format(
            feeder=feeder, extra=extra_reference(index)
        )
    return _("Join feeder {feeder} at bulb 1").format(feeder=feeder)


def near_why(run: RunPlan, solved: RunSolution) -> str:
    """Why a run is fed as it is, as its solved light bears out."""
    return {
        "one end": _("Plus and minus both come in at bulb 1."),
        "middle": _("Fed in its middle, the current has half as far to go, and the run shines more evenly."),
        "both ends": _both_ends_why(solved),
        "opposite ends": _(
            "Plus comes in at bulb 1 and minus leaves from the last bulb, so that every bulb has the same "
            "length of wire in all."
        ),
    }[run.feed]


def _both_ends_why(solved: RunSolution) -> str:
    light = solved.light[solved.lit]
    if light.min() >= ALIKE * light.max():
        return _("Fed at both ends, all bulbs get nearly as much as the first.")
    if light[-1] >= ALIKE * light[0] and light.min() < ALIKE * light[-1]:
        return _(
            "Fed at both ends, the last bulbs get nearly as much as the first; the middle ones get least."
        )
    return _("Fed at both ends, the current comes from two sides, and the run shines more evenly.")


def near_lines(run: RunPlan, index: int) -> tuple[str, ...]:
    """Which wires meet near the run's begin."""
    lines = _soldered(run) if run.feeder is not None else _clamped(run)
    words = {
        "feeder": feeder_reference(index),
        "extra": extra_reference(index),
        "terminal": plus_terminal(run, index),
    }
    return tuple(line.format(**words) for line in lines)


def _soldered(run: RunPlan) -> tuple[str, ...]:
    return {
        "one end": (_("{feeder} meets the wire in front of bulb 1."),),
        "middle": (_("{feeder} meets the extra pair {extra}."),),
        "both ends": (
            _(
                "Three wires meet at each joint: {feeder}, the extra pair {extra}, the wire in front "
                "of bulb 1."
            ),
        ),
        "opposite ends": (
            _("Plus of {feeder} meets plus of the wire in front of bulb 1."),
            _("Minus of {feeder} meets {extra}, not the string."),
        ),
    }[run.feed]


def _clamped(run: RunPlan) -> tuple[str, ...]:
    return {
        "one end": (
            _("Plus of the wire in front of bulb 1 into {terminal}, its minus into the − common connector."),
        ),
        "middle": (
            _("Plus of the extra pair {extra} into {terminal}, its minus into the − common connector."),
        ),
        "both ends": (
            _("Plus of the wire in front of bulb 1 and plus of {extra} into {terminal}."),
            _("Both minus wires into the − common connector."),
        ),
        "opposite ends": (
            _("Plus of the wire in front of bulb 1 into {terminal}, {extra} into the − common connector."),
            _("Minus of the wire in front of bulb 1 feeds nothing: cut it short; it is capped later."),
        ),
    }[run.feed]


def supply_side_lines(run: RunPlan, index: int) -> tuple[str, ...]:
    """Ends that stay open, where the near end of the feeder goes, what thin wire needs in a terminal."""
    lines = []
    if run.feed == "middle":
        lines.append(_("Bare both ends in front of bulb 1, a test point, and tape them apart."))
    if run.feeder is not None:
        lines.append(
            _("Near end of {feeder}: + core into {terminal}, − core into the − common connector.").format(
                feeder=feeder_reference(index), terminal=plus_terminal(run, index)
            )
        )
    if thinnest_m2(run) < THIN_M2:
        lines.append(_("Thin wire slips out of terminals: fold the bared end twice, or crimp a ferrule on."))
    return tuple(lines)


def thinnest_m2(run: RunPlan) -> float:
    """Area of the thinnest wire that goes into a terminal, square metre."""
    if run.feeder is not None:
        return run.feeder.conductor.area_m2
    extra = () if run.extra is None or run.feed == "one end" else (run.extra.conductor.area_m2,)
    own = () if run.feed == "middle" else (run.conductor.area_m2,)
    return min((*extra, *own), default=THIN_M2)
