"""Test points in words: where each one is, and where to look when it reads too low or too high."""

from __future__ import annotations

from guidegen.circuit.arrangement import RunPlan
from guidegen.circuit.points import TestPoint, in_front
from guidegen.guide.matter import Matter
from guidegen.locale import _
from guidegen.parts.wires import resistor_reference


def place(matter: Matter, point: TestPoint) -> str:
    """Where to put both leads, red first."""
    if point.run is None:
        return _("At the supply's socket, + to −")
    run = matter.runs[point.run]
    if point.kind == "resistor volts":
        return _("Across {resistor}, one lead on each leg").format(resistor=resistor_reference(point.run))
    if point.kind == "after resistor":
        if run.resistor.fitted:
            return _("Behind {resistor}, from its free leg to the − common connector").format(
                resistor=resistor_reference(point.run)
            )
        return _("Where the run begins, + common connector to − common connector")
    bulb = point.bulb or 1
    if in_front(run, bulb):
        return _("In front of bulb 1, on the open ends, plus to minus")
    return _("Right behind bulb {bulb}, on the bare {metal}, plus to minus").format(
        bulb=bulb, metal=_metal(run, bulb)
    )


def _metal(run: RunPlan, bulb: int) -> str:
    """What is bare behind a bulb."""
    if bulb != run.bulbs or run.feed == "both ends" or (run.feed == "middle" and bulb == run.fed_bulb):
        return _("joint")
    return _("joint and the open end") if run.feed == "opposite ends" else _("ends")


def short_place(matter: Matter, point: TestPoint) -> str:
    """The place in a few words, for tables."""
    if point.run is None:
        return _("supply, + to −")
    if point.kind == "resistor volts":
        return _("across {resistor}").format(resistor=resistor_reference(point.run))
    if point.kind == "after resistor":
        return _("behind {resistor}").format(resistor=resistor_reference(point.run))
    return _("bulb {bulb}").format(bulb=point.bulb)


def if_low(point: TestPoint) -> str:
    """Where to look when the reading is too low."""
    return {
        "supply": _("the supply is overloaded or weak; measure it with nothing connected."),
        "resistor volts": _(
            "less current than planned: bulbs dark that should shine, a joint with too many ohms, or the "
            "supply low."
        ),
        "after resistor": _("more current than planned, or a short in the run."),
        "bulb": _(
            "a joint or wire between the feed and this bulb has too many ohms; compare the bulb before it."
        ),
    }[point.kind]


def if_high(point: TestPoint) -> str:
    """Where to look when the reading is too high."""
    return {
        "supply": _("runs are not connected, or the supply is not the one planned."),
        "resistor volts": _(
            "more current than planned: a wrong resistor, a short in the run, or the supply high."
        ),
        "after resistor": _("fewer bulbs draw current than planned, or the supply is high."),
        "bulb": _("bulbs that should shine are dark or missing behind this place, or the supply is high."),
    }[point.kind]
