"""Rules about the supply, its load, and the mains it stands beside."""

from __future__ import annotations

from collections.abc import Iterable

from guidegen.locale import N_
from guidegen.safety.rule import Case, Hit, Rule, always, exceeds, is_outdoors, outdoors, when
from guidegen.tables.limits import SUPPLY_LOAD, WET_WITHOUT_BASIC_DC_V


def overloaded(case: Case) -> Iterable[Hit]:
    """One hit if the nominal current is over the supply's rating."""
    return when(exceeds(case.solution.load, 1.0), load_percent=case.solution.load)


def load_limit(case: Case) -> float:
    """Largest share of the supply's rating: the goal where it is tighter, never looser."""
    return min(case.project.goals.supply_load, SUPPLY_LOAD.value)


def load_high(case: Case) -> Iterable[Hit]:
    """One hit if the worst current is over the share of the rating that is kept to."""
    high = exceeds(case.margins.load, load_limit(case)) and not exceeds(case.solution.load, 1.0)
    return when(high, load_percent=case.margins.load, limit_percent=load_limit(case))


def insulation_unknown(case: Case) -> Iterable[Hit]:
    """One hit if the supply's insulation is unknown and all is indoors (outdoors it is refused)."""
    return when(case.project.supply.insulation == "unknown" and not is_outdoors(case.project))


def new_wiring(case: Case) -> Iterable[Hit]:
    """One hit if the mains side is still to be installed."""
    return when(case.project.place.mains == "new fixed wiring")


def existing_outlet(case: Case) -> Iterable[Hit]:
    """One hit if the supply goes into an outlet that is there already."""
    return when(case.project.place.mains == "existing outlet")


def wet_and_over_limit(case: Case) -> Iterable[Hit]:
    """One hit outdoors if the supply can pass the volts allowed bare in wet places."""
    volts = case.arrangement.supply.upper_v
    over = exceeds(volts, WET_WITHOUT_BASIC_DC_V.value)
    return when(case.outdoors and over, upper_v=volts, limit_v=WET_WITHOUT_BASIC_DC_V.value)


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
            N_("That person alone, nobody else, proves it dead before work and tests it after."),
        ),
        reason=N_("Fixed wiring is licensed work in most places, and no text can check it for you."),
        source=N_("local code; common practice"),
        applies=new_wiring,
    ),
    Rule(
        id="supply-overloaded",
        level="refusal",
        topics=("supply",),
        title=N_("Supply overloaded"),
        sentence=N_("The runs together draw {load_percent} of the current the supply is rated for."),
        consequence=N_("It overheats, shuts off, or lets its volts fall."),
        avoid=(
            N_(
                "Use an approved supply of the same volts with a larger rated current, or fewer bulbs,"
                " or larger resistors."
            ),
        ),
        reason=N_("A supply is tested for its rated current and for no more."),
        source=N_("the supply's own label"),
        applies=overloaded,
    ),
    Rule(
        id="insulation-unknown",
        level="warning",
        topics=("supply",),
        title=N_("Is the supply safely separated from the mains?"),
        sentence=N_("How the supply is insulated from the mains is not known."),
        consequence=N_("With poor insulation one fault puts mains on the low-voltage wires."),
        avoid=(
            N_("Look for the double square and an approval mark on its label."),
            N_("If either is missing, use another supply."),
        ),
        reason=N_("Only double or reinforced insulation lets low-voltage wires be touched."),
        source="IEC 60364-4-41 cl. 414.3",
        applies=insulation_unknown,
    ),
    Rule(
        id="supply-load-high",
        level="warning",
        topics=("supply", "first-power"),
        title=N_("Supply close to its limit"),
        sentence=N_(
            "In the worst case the supply carries {load_percent} of its rated current; "
            "{limit_percent} is the most to plan for."
        ),
        consequence=N_("It runs hot and ages fast."),
        avoid=(N_("Take a supply with a larger rated current, or fewer bulbs, or larger resistors."),),
        reason=N_("Supplies that run near their limit in a closed or warm place overheat."),
        source=SUPPLY_LOAD.source,
        applies=load_high,
    ),
    Rule(
        id="not-dry-over-30-volts",
        level="warning",
        topics=("supply", "outdoors-joints"),
        title=N_("Over 30 V where it can be wet"),
        sentence=N_(
            "The supply can give {upper_v}; in wet places bare metal may be touched only up to {limit_v} DC."
        ),
        consequence=N_("A wet hand on bare metal can get a shock."),
        avoid=(
            N_("Leave no bare metal: sleeve every joint, cap every end, enclose every terminal."),
            N_("Better: strings and a supply for 24 V or less."),
        ),
        reason=N_("Above this limit low voltage needs insulation or a cover wherever it is not dry."),
        source=WET_WITHOUT_BASIC_DC_V.source,
        applies=wet_and_over_limit,
    ),
    Rule(
        id="outlet-without-rcd",
        level="warning",
        topics=("mains", "first-power"),
        title=N_("Outdoors only behind an RCD"),
        sentence=N_("Outdoors, an outlet without residual-current protection (RCD, GFCI) is not enough."),
        consequence=N_("A damp plug or damaged mains cord can kill."),
        avoid=(
            N_("Use an outlet with an RCD of 30 mA or a GFCI, and press its test button first."),
            N_("If there is none, ask a licensed electrician for one."),
        ),
        reason=N_("It cuts the mains off before a fault through a person becomes deadly."),
        source=N_("IEC 60364-4-41 cl. 411.3.3 (from memory)"),
        applies=outdoors,
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
        topics=("mains", "hanging"),
        title=N_("Keep clear of mains"),
        sentence=N_("Low-voltage wire beside mains wire can become live through one damaged spot."),
        consequence=N_("Mains on wires that people touch."),
        avoid=(N_("Keep it out of mains boxes, trunking and lamps, and never tie it to a mains cord."),),
        reason=N_("The thin insulation of these strings is not made for mains."),
        source=N_("common practice, after IEC 60364-4-41 cl. 414.4"),
        applies=always,
    ),
    Rule(
        id="unregulated-adapter",
        level="notice",
        topics=("supply-volts",),
        title=N_("Adapters without regulation"),
        sentence=N_("An adapter without regulation reads far above its label until it is loaded."),
        consequence="",
        avoid=(N_("Measure the supply before anything is connected; over the stated range, do not use it."),),
        reason=N_("Every figure here rests on the supply's stated volts and tolerance."),
        source=N_("common practice"),
        applies=always,
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
