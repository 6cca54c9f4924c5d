"""Rules about the mains beside the build: who may work on it, the outlet, and the distance to keep."""

from __future__ import annotations

from collections.abc import Iterable

from guidegen.locale import N_
from guidegen.safety.rule import Case, Hit, Rule, always, when
from guidegen.tables.limits import RCD_A, WIRE_TO_MAINS_M


def new_wiring(case: Case) -> Iterable[Hit]:
    """One hit if the mains side is still to be installed."""
    return when(case.project.place.mains == "new fixed wiring")


def existing_outlet(case: Case) -> Iterable[Hit]:
    """One hit if the supply goes into an outlet that is there already."""
    return when(case.project.place.mains == "existing outlet")


def outlet_outdoors(case: Case) -> Iterable[Hit]:
    """One hit if any part of the installation stands outdoors."""
    return when(case.outdoors, rcd_a=RCD_A.value)


def near_mains_wire(case: Case) -> Iterable[Hit]:
    """One hit: every build has its low-voltage wire somewhere beside mains."""
    return when(bool(case.arrangement.runs), least_m=WIRE_TO_MAINS_M.value)


RULES: tuple[Rule[Case], ...] = (
    Rule(
        id="new-fixed-wiring",
        level="danger",
        topics=("mains", "supply"),
        title=N_("Mains wiring is not part of this guide"),
        sentence=N_("This build needs mains wiring that is not there yet."),
        consequence=N_("Mains kills, and faulty wiring burns houses."),
        avoid=(
            N_("Stop here until a qualified person has done that work to the local code."),
            N_("Give that person the sheet “For the electrician”. Nobody else touches the mains side."),
        ),
        reason=N_(
            "Fixed wiring is licensed work in most places: that person proves it dead, and tests it after."
        ),
        source=N_("local code; common practice"),
        applies=new_wiring,
    ),
    Rule(
        id="outlet-without-rcd",
        level="warning",
        topics=("mains", "first-power"),
        title=N_("Outdoors only behind an RCD"),
        sentence=N_("Outdoors, an outlet without residual-current protection (RCD, GFCI) is not enough."),
        consequence=N_("A damp plug or damaged mains cord can kill."),
        avoid=(
            N_("Use an outlet with an RCD of {rcd_a} or a GFCI, and press its test button first."),
            N_("If there is none, ask a licensed electrician for one."),
        ),
        reason=N_("It cuts the mains off before a fault through a person becomes deadly."),
        source=RCD_A.source,
        applies=outlet_outdoors,
    ),
    Rule(
        id="other-plugs",
        level="warning",
        topics=("labels", "first-power"),
        title=N_("Plugs that fit another voltage"),
        sentence=N_("Low-voltage plugs of other supplies in the house may fit these lights."),
        consequence=N_("Too many volts, or reversed ones, overheat resistors and destroy LEDs."),
        avoid=(N_("Label each lead at both ends: volts, polarity, fuse."),),
        reason=N_("Round plugs of one size are sold for many voltages and both polarities."),
        source=N_("common practice"),
        applies=always,
    ),
    Rule(
        id="apart-from-mains",
        level="warning",
        topics=("hanging",),
        title=N_("Keep clear of mains"),
        sentence=N_("Low-voltage wire beside mains wire can become live through one damaged spot."),
        consequence=N_("Mains on wires that people touch."),
        avoid=(
            N_(
                "Keep it at least {least_m} from mains wires, out of their boxes and lamps, and never tie "
                "it to a mains cord."
            ),
        ),
        reason=N_("The thin insulation of these strings is not made for mains."),
        source=WIRE_TO_MAINS_M.source,
        applies=near_mains_wire,
    ),
    Rule(
        id="class-2-marks",
        level="notice",
        topics=("supply",),
        title=N_("Class 2 is not Class II"),
        sentence=N_(
            'US "Class 2" means limited power; IEC "Class II", the double square, means double insulation.'
        ),
        consequence="",
        avoid=(N_("Look for the double square; Class 2 as well is good to have."),),
        reason=N_("The marks look alike and say different things."),
        source="NEC article 725; IEC 61140",
        applies=existing_outlet,
    ),
)
