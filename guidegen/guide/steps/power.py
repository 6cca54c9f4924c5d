"""First power: run by run through a larger resistor, then each with its own, then all together."""

from __future__ import annotations

from guidegen.circuit.expected import ExpectedReading
from guidegen.circuit.points import TestPoint
from guidegen.guide.blocks import Check
from guidegen.guide.format import metered, quantity, span
from guidegen.guide.matter import Matter
from guidegen.guide.meters import amperes_in_line
from guidegen.guide.places import if_high, if_low, place
from guidegen.guide.predicted import TestPower
from guidegen.guide.steps.checks import beep_check, predicted_volts, volts_check
from guidegen.guide.steps.draft import Draft, DraftGroup
from guidegen.guide.steps.identify import supply_text
from guidegen.guide.steps.supply_end import fuse_text
from guidegen.guide.tools import Tool
from guidegen.guide.words import step_identity
from guidegen.locale import _
from guidegen.parts.wires import FUSE, resistor_reference


def power(matter: Matter) -> DraftGroup:
    """All steps from the fuse to the readings of every run."""
    steps = [_fuse_in(matter)]
    steps += [_larger_resistor(matter, index) for index in range(len(matter.runs))]
    steps += [_all_runs(matter), *(_run_readings(matter, index) for index in range(len(matter.runs)))]
    return DraftGroup(
        anchor="first-power",
        title=_("First power"),
        intro=_(
            "Each run first gets little current through a larger resistor. A mistake then shows itself in "
            "dim light and a wrong reading, not in heat. Unplug before you change anything."
        ),
        steps=tuple(steps),
    )


def _fuse_in(matter: Matter) -> Draft:
    return Draft(
        identity="fuse-in",
        title=_("Put the fuse into its holder"),
        why=_("From now on a mistake at the supply end ends at the fuse."),
        parts=(fuse_text(matter),),
        tools=(Tool.METER,),
        topics=("fuse",),
        do=(
            _("The supply is unplugged."),
            _("Read the fuse's cap: {fuse}. Put it in and close the holder.").format(fuse=fuse_text(matter)),
            _("Never bridge a fuse, and never fit a larger one."),
        ),
        checks=(
            beep_check(
                _("From socket + through {fuse} to the + common connector").format(fuse=FUSE),
                (_("No beep: the fuse is blown or does not touch. Try another of the same rating."),),
            ),
        ),
    )


def _larger_resistor(matter: Matter, index: int) -> Draft:
    run, test = matter.runs[index], matter.first_powers[index]
    ohm = quantity(test.ohm, "Ω")
    place = (
        _(
            "Unclamp {resistor} from the feeder's + core. Clip the {ohm} resistor between the + common "
            "connector and that core."
        ).format(resistor=resistor_reference(index), ohm=ohm)
        if run.resistor.fitted
        else _(
            "Take the run's + core out of the + common connector. Clip the {ohm} resistor between the two."
        ).format(ohm=ohm)
    )
    return Draft(
        identity=step_identity("larger-resistor", index),
        title=_("Run “{run}” through {ohm}").format(run=run.name, ohm=ohm),
        why=_why_larger(matter, index, test),
        parts=(_("test resistor {ohm}").format(ohm=ohm), supply_text(matter)),
        tools=(Tool.METER, Tool.CLIP_LEADS),
        topics=("first-power",),
        do=(
            *_alone(matter),
            place,
            _("Lay the test resistor on bare tile or metal, with nothing else near it."),
            _("Plug in. Every bulb that is meant to light glows dimly."),
            _("Take both readings. Unplug."),
        ),
        checks=(
            predicted_volts(_("Across the {ohm} resistor").format(ohm=ohm), test.resistor_v, _if_wrong()),
            predicted_volts(
                _("Behind the {ohm} resistor, from plus to minus of the run").format(ohm=ohm),
                test.after_resistor_v,
                (
                    _(
                        "Near 0 V: a short in the run. Near the supply's volts: the run is open or the wrong "
                        "way round."
                    ),
                    _("A little off: compare the volts across the resistor; the two add up to the supply's."),
                ),
            ),
        ),
    )


def _alone(matter: Matter) -> tuple[str, ...]:
    if len(matter.runs) == 1:
        return (_("The supply is unplugged."),)
    return (_("Unplugged: take the + cores of all other runs out, so that this run alone is connected."),)


def _why_larger(matter: Matter, index: int, test: TestPower) -> str:
    solved = matter.solution.runs[index]
    through = test.resistor_v.expected / test.ohm
    return _("Only {little} flows instead of {running}, so that nothing gets hot while you look.").format(
        little=quantity(through, "A"), running=quantity(solved.current_a, "A")
    )


def _if_wrong() -> tuple[str, ...]:
    return (
        _(
            "All the supply's volts across the resistor and no light: a short in the run. Unplug; go back to "
            "the test without power."
        ),
        _("No volts across the resistor and no light: the run is open or the wrong way round."),
        _("Light only up to some bulb: the joint behind that bulb does not hold."),
    )


def _all_runs(matter: Matter) -> Draft:
    point = matter.point("supply")
    return Draft(
        identity="all-runs",
        title=_("All runs with their own resistors"),
        why=_("Only together do the runs load the supply as they will every evening."),
        parts=(supply_text(matter),),
        tools=(Tool.METER, Tool.SCREWDRIVER),
        topics=("first-power", "meter"),
        do=(
            _(
                "Unplugged: take the test resistor off. Every run back on its own resistor, every + core in "
                "its place."
            ),
            _("Plug in. Look along every run: no bulb dark that is meant to light, none flickering."),
            _("Keep your hands off the resistors. Take the readings here and in the next steps."),
        ),
        checks=(
            volts_check(
                matter,
                matter.reading_at(point),
                _("At the supply, all runs lit"),
                (
                    _(
                        "Too low: the supply is weak or overloaded. Unplug, and measure it with nothing "
                        "connected."
                    ),
                    _("Too high: a run is not connected."),
                ),
            ),
            *_current_check(
                matter.current_of(None), _("All runs together, in line with plus behind the fuse")
            ),
        ),
    )


def _run_readings(matter: Matter, index: int) -> Draft:
    run = matter.runs[index]
    checks = [
        volts_check(matter, matter.reading_at(point), place(matter, point), _at(point))
        for point in matter.points_of(index)
    ]
    return Draft(
        identity=step_identity("readings", index),
        title=_("Read run “{run}” with everything on").format(run=run.name),
        why=_(
            "The volts across the resistor tell the run's current better than a meter in line, which lowers "
            "what it measures."
        ),
        tools=(Tool.METER,),
        topics=("meter", "resistor-mounting"),
        do=(
            _("Hold the tips steady and let them touch nothing else."),
            _("Write every reading down on the readings sheet, within range or not."),
        ),
        checks=(
            *checks,
            *_current_check(matter.current_of(index), _("Current of the run in line, if you want it too")),
        ),
    )


def _at(point: TestPoint) -> tuple[str, ...]:
    return (
        _("Too low: {look}").format(look=if_low(point)),
        _("Too high: {look}").format(look=if_high(point)),
    )


def _current_check(reading: ExpectedReading | None, what: str) -> tuple[Check, ...]:
    if reading is None:
        return ()
    return (
        Check(
            what=what,
            meter=amperes_in_line(),
            expected=metered(reading.expected, reading.low, reading.high, "A"),
            range=span(reading.low, reading.high, "A"),
            if_not=(_("Compare with the volts across the resistor divided by its ohms: trust that more."),),
        ),
    )
