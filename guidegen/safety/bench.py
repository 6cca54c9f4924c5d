"""Notices about bench readings that cannot be true as they stand, each with the likely reason."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from guidegen.bench.fit import fit_string
from guidegen.bench.notes import BenchNote
from guidegen.circuit.meter import meter_of
from guidegen.locale import N_
from guidegen.safety.rule import Case, Hit, Rule

#: What would explain a current that disagrees, if any burden would.
_NEEDED = "needed_burden_ohm"
#: Notes on readings that are left out of the fit.
_LEFT_OUT = ("no current", "tells nothing", "not fitted")


def noted(wanted: Callable[[BenchNote], bool]) -> Callable[[Case], Iterator[Hit]]:
    """One hit for each wanted note on the readings of a string in use."""

    def applies(case: Case) -> Iterator[Hit]:
        meter, label_v = meter_of(case.project.meter), case.project.supply.voltage
        for name, string in case.used_strings:
            for note in fit_string(string, label_v, meter).notes:
                if wanted(note):
                    yield Hit(name, {"row": "all" if note.row is None else str(note.row), **note.values})

    return applies


def _rule(
    name: str,
    wanted: Callable[[BenchNote], bool],
    title: str,
    sentence: str,
    avoid: tuple[str, ...],
    reason: str,
) -> Rule[Case]:
    return Rule(
        id=name,
        level="notice",
        topics=("bench-power",),
        title=title,
        sentence=sentence,
        consequence="",
        avoid=avoid,
        reason=reason,
        source=N_("own policy"),
        applies=noted(wanted),
    )


_AGAIN = N_("Read it again with clips that hold, and copy supply, resistor and reading with their units.")
_TRUTH = N_("Every figure of the guide follows from the bench readings.")

RULES: tuple[Rule[Case], ...] = (
    _rule(
        "bench-reading-left-out",
        lambda note: note.kind in _LEFT_OUT,
        N_("Bench reading left out"),
        N_("Bench reading {row} cannot be brought together with the LEDs; it is left out."),
        (
            N_("It takes a resistor in line, and volts behind it that are below the source's."),
            _AGAIN,
        ),
        _TRUTH,
    ),
    _rule(
        "bench-led-volts",
        lambda note: note.kind == "led volts",
        N_("LED volts that cannot be"),
        N_(
            "Bench reading {row} would leave {led_v} across one LED at {led_a}; there it takes {least_v} to "
            "{most_v}."
        ),
        (N_("Check the LEDs in a bulb and in series, and the colour, in the project file."), _AGAIN),
        _TRUTH,
    ),
    _rule(
        "bench-burden",
        lambda note: note.kind == "current disagrees" and _NEEDED in note.values,
        N_("The meter adds more ohms than stated"),
        N_(
            "Bench reading {row}: the meter in line showed {meter_a}; by the resistor's volts and a meter of "
            "{burden_ohm} it should show {expected_a}. About {needed_burden_ohm} in line would explain it."
        ),
        (
            N_("Find the meter's own ohms on that range, leads included, and write them as meter_burden."),
            N_("Else leave the current out: the resistor's volts tell it better."),
        ),
        N_("A meter in line lowers the current it shows."),
    ),
    _rule(
        "bench-currents-disagree",
        lambda note: note.kind == "current disagrees" and _NEEDED not in note.values,
        N_("Meter and resistor tell two currents"),
        N_(
            "Bench reading {row}: the meter in line showed {meter_a}; by the resistor's volts it should show "
            "{expected_a}, and no meter's ohms explain that."
        ),
        (N_("Measure the resistor alone on ohms, and its volts again."),),
        N_("Both tell one current, so one of the readings or the resistor is wrong."),
    ),
    _rule(
        "bench-unexplained",
        lambda note: note.kind == "reading unexplained",
        N_("A bench reading that fits no LED"),
        N_("No LED curve meets bench reading {row} together with the others."),
        (_AGAIN, N_("If it stays so, keep the readings taken in one go and delete the others.")),
        _TRUTH,
    ),
    _rule(
        "bench-source-not-regulated",
        lambda note: note.kind == "not regulated",
        N_("Source far above its label"),
        N_(
            "Bench reading {row} was taken at {supply_v}, far above the {label_v} of the label: that source "
            "is not regulated."
        ),
        (
            N_("Read its volts with the string connected, in the same minute."),
            N_("Do not use it as the supply: without load it gives even more."),
        ),
        N_("Old adapters without regulation give far more volts than their label while lightly loaded."),
    ),
)
