"""Checks of the readings of the finished build, and of the meter they were taken with."""

from __future__ import annotations

from collections.abc import Iterator

from guidegen.locale import _
from guidegen.project.check_runs import run_name
from guidegen.project.complaint import Complaint
from guidegen.project.keys import Key
from guidegen.project.metering import ReadAt
from guidegen.project.schema import AsBuiltReading, Project, Run
from guidegen.project.writing import nearest

#: A reading this many times the supply's volts is none of this build.
MOST_TIMES = 3.0


def run_of(project: Project, reading: AsBuiltReading) -> str | None:
    """Name of the run a reading was taken of; the only run where it is left out; None: the supply or all."""
    runs = project.runs or ()
    if reading.run is not None or reading.at.kind == "supply":
        return reading.run
    return run_name(0, runs[0]) if len(runs) == 1 else None


def runs_there(project: Project) -> Iterator[Complaint]:
    """Readings are of runs that were built, so the file has them."""
    if project.readings and not project.runs:
        expected = _("readings only beside the runs they were taken of")
        yield Complaint(("readings",), expected, _("write the runs as they were built"))


def leads(project: Project) -> Iterator[Complaint]:
    """The meter's leads are less than what was measured with them."""
    if project.meter.leads is None:
        return
    for name, kind in project.strings.items():
        wire = kind.wire
        reading = wire.one_conductor if wire.one_conductor is not None else wire.loop
        if reading is not None and wire.meter_leads is None and project.meter.leads >= reading:
            expected = _("less than the wire of {name} measured with them, which is {reading:g} ohm")
            mend = _("measure both again, the leads with their tips held together")
            yield Complaint(("meter", "leads"), expected.format(name=name, reading=reading), mend)


def once(project: Project) -> Iterator[Complaint]:
    """Each place is read once."""
    first: dict[tuple[str | None, ReadAt], int] = {}
    for index, reading in enumerate(project.readings):
        other = first.setdefault((run_of(project, reading), reading.at), index)
        if other != index:
            expected = _("a place that no other reading has; reading {number} has it")
            mend = _("keep the reading you are surest of")
            yield Complaint(("readings", index, "at"), expected.format(number=other + 1), mend)


def run_known(project: Project, key: Key, reading: AsBuiltReading) -> Iterator[Complaint]:
    """A reading names a run that is in the file, and names one where it must."""
    names = [run_name(index, run) for index, run in enumerate(project.runs or ())]
    expected = _("one of the runs in this file: {names}").format(names=", ".join(names))
    inner = (*key, "run")
    if reading.at.kind == "supply":
        if reading.run is not None:
            yield Complaint(inner, _("no run with at: supply; all runs share it"), _("delete run"))
    elif reading.run is not None and reading.run not in names:
        near = nearest(reading.run, names)
        mend = _("did you mean {name}?").format(name=near) if near else _("write one of these names")
        yield Complaint(inner, expected, mend)
    elif reading.run is None and len(names) > 1 and reading.at.kind != "current":
        yield Complaint(inner, expected, _("add the key run; it may be left out only with one run"))


def place_there(project: Project, key: Key, reading: AsBuiltReading) -> Iterator[Complaint]:
    """The run has that bulb, or that resistor."""
    run = _run(project, reading)
    if run is None:
        return
    if reading.at.bulb is not None and reading.at.bulb > run.bulbs:
        expected = _("bulb 1 to bulb {count}, since the run has {count} bulbs").format(count=run.bulbs)
        yield Complaint(
            (*key, "at"), expected, _("count the bulbs from the fed end, or mend the run's bulbs")
        )
    if reading.at.kind == "resistor volts" and run.resistor in {"none", 0}:
        expected = _("another place, since this run has no resistor")
        yield Complaint((*key, "at"), expected, _("delete this reading, or write the run's resistor"))


def unit(_project: Project, key: Key, reading: AsBuiltReading) -> Iterator[Complaint]:
    """A current is in ampere, everything else in volt."""
    if reading.at.kind == "current" and reading.value.unit == "V":
        yield Complaint((*key, "value"), _("a current, such as 205 mA"), _("write mA or A, or another place"))
    elif reading.at.kind != "current" and reading.value.unit == "A":
        mend = _("write V or mV, or at: current")
        yield Complaint((*key, "value"), _("volts, such as 2.93 V"), mend)


def possible(project: Project, key: Key, reading: AsBuiltReading) -> Iterator[Complaint]:
    """Nothing on the build shows many times the supply's volts, or more current than the resistor passes."""
    most_v = MOST_TIMES * project.supply.voltage
    run = _run(project, reading)
    if reading.value.unit == "V" and reading.at.kind != "current" and reading.value.amount > most_v:
        expected = _("at most {most:.3g} V, three times the supply's volts").format(most=most_v)
        yield Complaint((*key, "value"), expected, _("check the unit, the point and the meter's range"))
    if reading.value.unit == "A" and run is not None and isinstance(run.resistor, float) and run.resistor > 0:
        most_a = 10 * most_v / run.resistor
        if reading.value.amount > most_a:
            expected = _("at most {most:.3g} A through a resistor of {ohm:g} ohm")
            mend = _("check the unit (mA or A) and the resistor")
            yield Complaint((*key, "value"), expected.format(most=most_a, ohm=run.resistor), mend)


def _run(project: Project, reading: AsBuiltReading) -> Run | None:
    """The run of a reading, if it is known."""
    name = run_of(project, reading)
    for index, run in enumerate(project.runs or ()):
        if run_name(index, run) == name:
            return run
    return None
