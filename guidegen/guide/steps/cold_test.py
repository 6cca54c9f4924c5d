"""Test of a run before it ever gets power, and again after its sleeves are shrunk."""

from __future__ import annotations

from collections.abc import Callable

from guidegen.circuit.arrangement import Cable, Conductor, RunPlan
from guidegen.guide.blocks import Check
from guidegen.guide.format import listed
from guidegen.guide.matter import Matter
from guidegen.guide.predicted import Predicted, resistance
from guidegen.guide.steps.checks import insulation_check, no_short_check, ohms_check
from guidegen.guide.steps.draft import Draft
from guidegen.guide.steps.feed_words import free_leg
from guidegen.guide.steps.two_way import blocking_line, is_two_way, no_short_both_ways
from guidegen.guide.tools import Tool
from guidegen.guide.words import step_identity
from guidegen.locale import _

#: Terminals and joints may add this on top of the wires, ohm; own assumption.
CONTACTS_OHM = 0.1


def cold_test(matter: Matter, index: int) -> Draft:
    """Ohms and shorts of a whole run, everything unplugged."""
    run = matter.runs[index]
    return Draft(
        identity=step_identity("cold-test", index),
        title=_("Test the run without power"),
        why=_("A short or an open joint is found here without any harm."),
        tools=(Tool.METER,),
        topics=("meter",),
        do=(
            _("Pull the supply's plug out of its socket."),
            _("Take the readings in this order. Ohms do not tell which way round LEDs are; light did."),
            *((blocking_line(),) if is_two_way(matter.kind_of(run)) else ()),
        ),
        checks=(*blocking_checks(matter, index), *_ways(run)),
    )


def blocking_checks(matter: Matter, index: int) -> tuple[Check, ...]:
    """No short, and outdoors no damp, in a whole run, read at its connectors."""
    return insulation_checks(matter, (index,))


def insulation_checks(matter: Matter, indices: tuple[int, ...]) -> tuple[Check, ...]:
    """The same for several runs, one after the other; two-way strings apart from the others."""
    two_way = tuple(index for index in indices if is_two_way(matter.kind_of(matter.runs[index])))
    one_way = tuple(index for index in indices if index not in two_way)
    return (
        *(_one_way_checks(matter, _from_plus(matter, one_way)) if one_way else ()),
        *((_two_way_check(_from_plus(matter, two_way)),) if two_way else ()),
    )


def _from_plus(matter: Matter, indices: tuple[int, ...]) -> str:
    """Where both leads go, run by run."""
    places = [
        _("“{run}” from {source}").format(
            run=matter.runs[index].name, source=_run_plus(matter.runs[index], index)
        )
        for index in indices
    ]
    return _("{places}, to the − common connector").format(places=listed(places))


def _one_way_checks(matter: Matter, where: str) -> tuple[Check, ...]:
    short = no_short_check(
        where, (_("Ohms: a short. Take joints apart one by one, from the far end, until it goes away."),)
    )
    return (short, insulation_check(where)) if matter.outdoors else (short,)


def _two_way_check(where: str) -> Check:
    """A two-way string conducts both ways, so that high ohms prove nothing about damp there."""
    return no_short_both_ways(
        where,
        (
            _(
                "The same few ohms both ways: a short. Take joints apart one by one, from the far end, until "
                "it goes away."
            ),
        ),
    )


def _run_plus(run: RunPlan, index: int) -> str:
    """Where the run's plus is touched; without a resistor its wire is out of the shared connector."""
    if run.resistor.fitted:
        return free_leg(run, index)
    return _("its + wire, out of the connector for this")


def minus_bulb(run: RunPlan) -> int:
    """Bulb at which minus leaves."""
    return run.bulbs if run.feed == "opposite ends" else run.fed_bulb


def plus_way(run: RunPlan) -> Predicted:
    """Ohms from the + common connector to the joint, or the wire, where plus meets the string."""
    resistor = run.resistor
    nominal, low, high = _wires_ohm(run, "+")
    return resistance(
        resistor.ohm + nominal,
        resistor.ohm * (1 - resistor.tolerance) + low,
        resistor.ohm * (1 + resistor.tolerance) + high + CONTACTS_OHM,
    )


def minus_way(run: RunPlan) -> Predicted:
    """Ohms from the - common connector to the joint, or the wire, where minus meets the string."""
    nominal, low, high = _wires_ohm(run, "-")
    return resistance(nominal, low, high + CONTACTS_OHM)


def between_ends(run: RunPlan) -> Predicted:
    """Ohms of one pole between its joints at `both ends`, string and extra pair side by side."""

    def ohm(factor: Callable[[Conductor], float]) -> float:
        along = float(run.segment_m.sum()) * run.conductor.ohm_per_m * factor(run.conductor)
        around = _cable_ohm(run.extra, factor)
        return along * around / (along + around) if along + around > 0 else 0.0

    low, high = ohm(lambda wire: wire.low_factor), ohm(lambda wire: wire.high_factor)
    return resistance(ohm(lambda _wire: 1.0), low, high + CONTACTS_OHM)


def _wires_ohm(run: RunPlan, pole: str) -> tuple[float, float, float]:
    """Nominal, least and most ohms of the wires in one pole's way."""
    return (
        _way_ohm(run, pole, lambda wire: 1.0),
        _way_ohm(run, pole, lambda wire: wire.low_factor),
        _way_ohm(run, pole, lambda wire: wire.high_factor),
    )


def _way_ohm(run: RunPlan, pole: str, factor: Callable[[Conductor], float]) -> float:
    """The feeder, and the extra wire where the string is met at its far side."""
    by_extra = run.feed == "middle" or (run.feed == "opposite ends" and pole == "-")
    return _cable_ohm(run.feeder, factor) + (_cable_ohm(run.extra, factor) if by_extra else 0.0)


def _cable_ohm(cable: Cable | None, factor: Callable[[Conductor], float]) -> float:
    return 0.0 if cable is None else cable.ohm * factor(cable.conductor)


def met_place(run: RunPlan, pole: str) -> str:
    """Where one pole meets the string."""
    bulb = run.fed_bulb if pole == "+" else minus_bulb(run)
    if run.feed == "middle" or (run.feed == "opposite ends" and pole == "-"):
        return _("the joint behind bulb {bulb}").format(bulb=bulb)
    if run.feeder is not None:
        return _("the joint in front of bulb 1")
    return _("the wire in front of bulb 1, at its terminal")


def _ways(run: RunPlan) -> tuple[Check, ...]:
    fitted = run.resistor.fitted
    plus = ohms_check(
        _("From the + common connector to plus of {place}").format(place=met_place(run, "+")),
        plus_way(run),
        (
            _("Too much or “OL”: a joint does not hold, or a wrong resistor."),
            _("Too little: a wrong resistor, or something bridges it."),
        )
        if fitted
        else (_("Too much or “OL”: a joint does not hold."),),
    )
    minus = ohms_check(
        _("From the − common connector to minus of {place}").format(place=met_place(run, "-")),
        minus_way(run),
        (
            _(
                "Too much or “OL”: a joint does not hold. Near the resistor's ohms: plus and minus "
                "are swapped."
            ),
        ),
    )
    if run.feeder is None and run.feed in ("one end", "both ends"):
        return (plus,)
    return plus, minus
