"""Test of a run before it ever gets power."""

from __future__ import annotations

from collections.abc import Callable

from guidegen.circuit.arrangement import Cable, Conductor, RunPlan
from guidegen.guide.blocks import Check
from guidegen.guide.matter import Matter
from guidegen.guide.predicted import Predicted, resistance
from guidegen.guide.steps.checks import no_short_check, ohms_check, same_way_round_check
from guidegen.guide.steps.draft import Draft
from guidegen.guide.tools import Tool
from guidegen.guide.words import step_identity
from guidegen.locale import _

#: Terminals and joints may add this on top of the wires, ohm; own assumption.
CONTACTS_OHM = 0.1


def cold_test(matter: Matter, index: int) -> Draft:
    """Ohms, shorts and polarity of a whole run, everything unplugged."""
    run = matter.runs[index]
    return Draft(
        identity=step_identity("cold-test", index),
        title=_("Test the run without power"),
        why=_("A short, an open joint or a piece the wrong way round is found here without any harm."),
        tools=(Tool.METER,),
        topics=("meter",),
        do=(
            _("The supply is unplugged and the fuse is out of its holder."),
            _("Take the readings below in this order. Every one must fit before you go on."),
        ),
        checks=(_no_short(run), *_ways(run), *_polarity(matter, run)),
    )


def plus_bulb(run: RunPlan) -> int:
    """Bulb at which plus comes in."""
    return run.fed_bulb


def minus_bulb(run: RunPlan) -> int:
    """Bulb at which minus leaves."""
    return run.bulbs if run.feed == "opposite ends" else run.fed_bulb


def plus_way(run: RunPlan) -> Predicted:
    """Ohms from the + common connector to plus of the bulb where plus comes in."""
    resistor = run.resistor
    nominal, low, high = _wires_ohm(run, "+")
    return resistance(
        resistor.ohm + nominal,
        resistor.ohm * (1 - resistor.tolerance) + low,
        resistor.ohm * (1 + resistor.tolerance) + high + CONTACTS_OHM,
    )


def minus_way(run: RunPlan) -> Predicted:
    """Ohms from the - common connector to minus of the bulb where minus leaves."""
    nominal, low, high = _wires_ohm(run, "-")
    return resistance(nominal, low, high + CONTACTS_OHM)


def between_ends(run: RunPlan) -> Predicted:
    """Ohms of one pole from bulb 1 to the last bulb, string and extra pair side by side (`both ends`)."""

    def ohm(factor: Callable[[Conductor], float]) -> float:
        per_m = run.conductor.ohm_per_m * factor(run.conductor)
        along = float(run.segment_m[1:].sum()) * per_m
        around = float(run.segment_m[0]) * per_m + _cable_ohm(run.extra, factor)
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
    """Feeder, then extra wire or lead-in; at `both ends` the loop through the extra pair lies beside it."""
    per_m = run.conductor.ohm_per_m * factor(run.conductor)
    feeder, extra = _cable_ohm(run.feeder, factor), _cable_ohm(run.extra, factor)
    lead_in = float(run.segment_m[0]) * per_m
    if run.feed == "middle" or (run.feed == "opposite ends" and pole == "-"):
        return feeder + extra
    if run.feed != "both ends" or lead_in == 0:
        return feeder + lead_in
    around = extra + float(run.segment_m[1:].sum()) * per_m
    return feeder + lead_in * around / (lead_in + around)


def _cable_ohm(cable: Cable | None, factor: Callable[[Conductor], float]) -> float:
    return 0.0 if cable is None else cable.ohm * factor(cable.conductor)


def _no_short(run: RunPlan) -> Check:
    return no_short_check(
        _("From plus to minus at bulb {bulb}").format(bulb=plus_bulb(run)),
        (
            _("Near zero: a short. Open the joints one by one, from the far end, until it goes away."),
            _("A few ohms to some hundred ohms: a piece is the wrong way round, or a joint is damp."),
        ),
    )


def _ways(run: RunPlan) -> tuple[Check, ...]:
    return (
        ohms_check(
            _("From the + common connector to plus of bulb {bulb}").format(bulb=plus_bulb(run)),
            plus_way(run),
            (
                _("Too much or “OL”: a joint does not hold, or the resistor is a wrong one."),
                _("Too little: the resistor is a wrong one, or something bridges it."),
            ),
        ),
        ohms_check(
            _("From the − common connector to minus of bulb {bulb}").format(bulb=minus_bulb(run)),
            minus_way(run),
            (
                _(
                    "Too much or “OL”: a joint does not hold. Near the resistor's ohms: plus and minus are "
                    "swapped."
                ),
            ),
        ),
    )


def _polarity(matter: Matter, run: RunPlan) -> tuple[Check, ...]:
    if not matter.diode_test_tells(matter.kind_of(run)):
        return ()
    return tuple(
        same_way_round_check(
            _("From plus to minus at bulb {bulb}").format(bulb=bulb),
            (_("It glows or shows volts: plus and minus are swapped at the joint in front of this bulb."),),
        )
        for bulb in sorted({1, *(joint + 1 for joint in run.joins), run.bulbs})
    )
