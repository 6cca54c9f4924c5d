"""First power: run by run through a larger resistor, then each with its own, then all together."""

from __future__ import annotations

from guidegen.circuit.points import TestPoint
from guidegen.guide.blocks import Check
from guidegen.guide.format import metered, quantity, span
from guidegen.guide.matter import Matter
from guidegen.guide.meters import in_line_for
from guidegen.guide.places import if_high, if_low, place
from guidegen.guide.predicted import TestPower, resistance
from guidegen.guide.steps.checks import ohms_check, predicted_volts, volts_check
from guidegen.guide.steps.draft import Draft, DraftGroup
from guidegen.guide.steps.identify import supply_text
from guidegen.guide.steps.pieces import heat_text
from guidegen.guide.steps.two_way import dim_line, is_two_way, lit_line, wrong_bulbs
from guidegen.guide.tools import Tool
from guidegen.guide.words import step_identity
from guidegen.locale import _
from guidegen.parts.wires import feeder_reference, resistor_reference
from guidegen.tables.limits import HOT_SURFACE_DEGC

#: Terminals may add this to a resistor's reading, ohm; own assumption.
_TERMINALS_OHM = 0.1


def power(matter: Matter) -> DraftGroup:
    """All steps from the first light of a run to the readings of every run."""
    steps = [_larger_resistor(matter, index) for index in range(len(matter.runs))]
    steps += [_all_runs(matter), *(_run_readings(matter, index) for index in range(len(matter.runs)))]
    return DraftGroup(
        anchor="first-power",
        title=_("First power"),
        intro=_(
            "Each run first gets little current through a larger resistor: a mistake shows in dim light and "
            "a wrong reading. Only a short makes that resistor hot. Joints and ends are still bare: keep "
            "them apart on a dry floor that does not burn, and unplug before you touch or change anything, "
            "or leave."
        ),
        steps=tuple(steps),
    )


def _larger_resistor(matter: Matter, index: int) -> Draft:
    run, test = matter.runs[index], matter.first_powers[index]
    kind = matter.kind_of(run)
    ohm = quantity(test.ohm, "Ω")
    return Draft(
        identity=step_identity("larger-resistor", index),
        title=_("Run “{run}” through {ohm}").format(run=run.name, ohm=ohm),
        why=_why_larger(matter, index, test),
        parts=(_("test resistor {ohm}").format(ohm=ohm), supply_text(matter)),
        tools=(Tool.METER, Tool.CLIP_LEADS, Tool.TILE),
        topics=("test-resistor-hot", "first-power"),
        do=(
            *_alone(matter),
            _(
                "Take {wire} out of {connector}. Clip the {ohm} resistor between the + common connector and "
                "that wire."
            ).format(wire=plus_wire(matter, index), connector=_from(matter, index), ohm=ohm),
            _("Lay it on dry tile, stone or concrete, never on metal; legs and clips touch nothing."),
            dim_line(kind, run),
        ),
        checks=(
            predicted_volts(
                _("Across the {ohm} resistor").format(ohm=ohm),
                test.resistor_v,
                (*_if_wrong(), *wrong_bulbs(kind)),
            ),
            predicted_volts(
                _("Behind the {ohm} resistor, from plus to minus of the run").format(ohm=ohm),
                test.after_resistor_v,
                (_("Near 0 V: a short. Near the supply's volts: an open joint."),),
            ),
        ),
    )


def plus_wire(matter: Matter, index: int) -> str:
    """What brings plus to a run behind its resistor."""
    if matter.runs[index].feeder is None:
        return _("the run's + wire")
    return _("{feeder}'s + core").format(feeder=feeder_reference(index))


def _from(matter: Matter, index: int) -> str:
    if matter.runs[index].resistor.fitted:
        return _("the connector of {resistor}").format(resistor=resistor_reference(index))
    return _("the + common connector")


def _alone(matter: Matter) -> tuple[str, ...]:
    if len(matter.runs) == 1:
        return (_("The supply is unplugged."),)
    return (_("Unplugged: take the + wires of all other runs out of their connectors."),)


def _why_larger(matter: Matter, index: int, test: TestPower) -> str:
    solved = matter.solution.runs[index]
    through = test.resistor_v.expected / test.ohm
    little, running = quantity(through, "A"), quantity(solved.current_a, "A")
    if test.trial.shorted_c <= HOT_SURFACE_DEGC.value:
        return _("Only {little} flows instead of {running}, so that nothing gets hot while you look.").format(
            little=little, running=running
        )
    return _(
        "Only {little} flows instead of {running}: little heat unless there is a short. Then the {ohm} "
        "resistor gets to about {hot}: unplug at once, do not touch it."
    ).format(little=little, running=running, ohm=quantity(test.ohm, "Ω"), hot=heat_text(test.trial))


def _if_wrong() -> tuple[str, ...]:
    return (
        _("All the supply's volts and no light: a short. Unplug; go back to the test without power."),
        _("No volts and no light: an open joint, or the supply has shut down."),
        _("Light only up to some bulb: the joint behind that bulb does not hold."),
    )


def _all_runs(matter: Matter) -> Draft:
    point = matter.point("supply")
    return Draft(
        identity="all-runs",
        title=_("All runs as they will stay"),
        why=_("Only together do the runs load the supply as they will every evening."),
        parts=(supply_text(matter),),
        tools=(Tool.METER, Tool.SCREWDRIVER),
        topics=("first-power", "meter"),
        do=(
            _("Unplugged: take the test resistor off and put every + wire back into its own connector."),
            *_look_lines(matter),
            _("Hands off the resistors. Take the volts here and in the next steps within five minutes."),
        ),
        checks=(
            *(_own_resistor(matter, index) for index, run in enumerate(matter.runs) if run.resistor.fitted),
            volts_check(
                matter,
                matter.reading_at(point),
                _("At the supply's socket, all runs lit"),
                (
                    _("Too low: supply weak or overloaded. Unplug; measure it with nothing connected."),
                    _("Too high: a run is not connected."),
                ),
            ),
        ),
    )


def _look_lines(matter: Matter) -> tuple[str, ...]:
    """What to see along every run."""
    if not any(is_two_way(kind) for _name, kind in matter.kinds):
        return (
            _("Take the ohms below. Only then plug in. Look along every run: no bulb dark, none flickering."),
        )
    return (
        _("Take the ohms below. Only then plug in. Look along every run: no bulb flickers, and these shine."),
        *(lit_line(matter.kind_of(run), run) for run in matter.runs),
    )


def _own_resistor(matter: Matter, index: int) -> Check:
    """Before power: the run hangs behind its resistor and not straight on the supply."""
    resistor = matter.runs[index].resistor
    low, high = resistor.ohm * (1 - resistor.tolerance), resistor.ohm * (1 + resistor.tolerance)
    return ohms_check(
        _("Unplugged, from the + common connector to {wire}").format(wire=plus_wire(matter, index)),
        resistance(resistor.ohm, low, high + _TERMINALS_OHM),
        (
            _("Near zero: it is in the wrong connector. Do not plug in."),
            _(
                "Too much or “OL”: a wrong resistor, the test resistor left in, or a loose terminal. Do not "
                "plug in."
            ),
        ),
    )


def _run_readings(matter: Matter, index: int) -> Draft:
    run = matter.runs[index]
    checks = [
        volts_check(matter, matter.reading_at(point), place(matter, point), _at(point))
        for point in matter.points_of(index)
    ]
    why = (
        _("The volts across the resistor, divided by its ohms, are the run's current.")
        if run.resistor.fitted
        else _("Without a resistor only a meter in line tells the run's current.")
    )
    return Draft(
        identity=step_identity("readings", index),
        title=_("Read run “{run}” with everything on").format(run=run.name),
        why=why,
        tools=(Tool.METER, *(() if run.resistor.fitted else (Tool.CLIP_LEADS,)), Tool.PEN),
        topics=("meter", "resistor-mounting"),
        do=(
            _("Touch bare metal only; never pierce insulation. Hold the tips steady."),
            _(
                "Write every reading on the sheet “Readings”. Just outside its range is a reason to "
                "look; stop "
                "where it says stop."
            ),
        ),
        checks=(*checks, *(() if run.resistor.fitted else _current_check(matter, index))),
    )


def _at(point: TestPoint) -> tuple[str, ...]:
    return (
        _("Too low: {look}").format(look=if_low(point)),
        _("Too high: {look}").format(look=if_high(point)),
    )


def _current_check(matter: Matter, index: int) -> tuple[Check, ...]:
    """Where no resistor tells the current: every move of reading it in line."""
    reading = matter.current_of(index)
    if reading is None:
        return ()
    _scale, burden_ohm = matter.study.meter.ammeter(matter.solution.runs[index].current_a)
    return (
        Check(
            what=_(
                "Unplug; take {wire} out of the + common connector; clip the meter between the two; plug in, "
                "read, unplug, put the wire and the meter's lead back"
            ).format(wire=plus_wire(matter, index)),
            meter=in_line_for(reading.expected, burden_ohm),
            expected=metered(reading.expected, reading.low, reading.high, "A"),
            range=span(reading.low, reading.high, "A"),
            if_not=(_("Nothing: the meter's own fuse is blown. Too much: unplug; look for a short."),),
        ),
    )
