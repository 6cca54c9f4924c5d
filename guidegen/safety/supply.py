"""Rules about the supply: its marks, its volts, its load."""

from __future__ import annotations

from collections.abc import Iterable

from guidegen.locale import N_
from guidegen.safety.rule import Case, Hit, Rule, exceeds, is_outdoors, when
from guidegen.tables.limits import (
    LIMITED_POWER_SOURCE,
    SUPPLY_LOAD,
    WET_WITHOUT_BASIC_DC_V,
    limited_power_a,
)


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


def approval_unknown(case: Case) -> Iterable[Hit]:
    """One hit if nobody has said that the supply is approved (without approval it is refused)."""
    return when(case.project.supply.approved == "unknown")


def power_not_limited(case: Case) -> Iterable[Hit]:
    """One hit if the supply can give more than a limited power source may, and is not marked as one."""
    supply = case.arrangement.supply
    most_a = limited_power_a(supply.upper_v)
    over = case.project.supply.limited_power != "yes" and exceeds(supply.limit_a, most_a)
    return when(over, limit_a=supply.limit_a, upper_v=supply.upper_v)


def unregulated(case: Case) -> Iterable[Hit]:
    """One hit if the supply is known to be without regulation."""
    return when(case.project.supply.unregulated == "yes")


def regulation_unknown(case: Case) -> Iterable[Hit]:
    """One hit if nobody has said whether the supply is regulated."""
    return when(case.project.supply.unregulated is None)


def stands_outdoors(case: Case) -> Iterable[Hit]:
    """One hit if the supply stands outdoors (without a mark for it, that is refused)."""
    return when(case.project.supply.stands == "outdoors")


def wet_and_over_limit(case: Case) -> Iterable[Hit]:
    """One hit outdoors if the supply can pass the volts allowed bare in wet places."""
    volts = case.arrangement.supply.upper_v
    over = exceeds(volts, WET_WITHOUT_BASIC_DC_V.value)
    return when(case.outdoors and over, upper_v=volts, limit_v=WET_WITHOUT_BASIC_DC_V.value)


RULES: tuple[Rule[Case], ...] = (
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
        id="approval-unknown",
        level="warning",
        topics=("supply",),
        title=N_("Is the supply approved?"),
        sentence=N_("Nobody has stated that this supply carries a mark of approval."),
        consequence=N_("A supply that nobody tested can put mains on the low-voltage wires."),
        avoid=(
            N_("Find the approval mark of your country on its case. If it is missing, take another supply."),
        ),
        reason=N_("It is all that stands between the mains and what you touch."),
        source="IEC 60364-4-41 cl. 414.3",
        applies=approval_unknown,
    ),
    Rule(
        id="power-not-limited",
        level="warning",
        topics=("supply", "fuse"),
        title=N_("More power than a limited source gives"),
        sentence=N_(
            "The supply can give {limit_a} at {upper_v}, and is not marked as a limited power source."
        ),
        consequence=N_("A short between supply and fuse can heat a wire red-hot."),
        avoid=(
            N_("Put the fuse right at the supply, and guard the wire before it from every rub and pinch."),
            N_("Better: a supply marked LPS or Class 2."),
        ),
        reason=N_("Beyond this limit a fault can set fire to what touches the wire."),
        source=LIMITED_POWER_SOURCE,
        applies=power_not_limited,
    ),
    Rule(
        id="supply-unregulated",
        level="warning",
        topics=("supply-volts", "first-power"),
        title=N_("Supply without regulation"),
        sentence=N_("Its volts rise when less is drawn and when the mains is high."),
        consequence=N_("With one run off, the others get more volts, and LEDs and resistors overheat."),
        avoid=(
            N_("Take a regulated supply of the same volts."),
            N_("Else measure it with nothing connected, and state those volts and its output resistance."),
        ),
        reason=N_("Only a regulated supply holds its volts whatever is connected."),
        source=N_("common practice"),
        applies=unregulated,
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
        id="supply-standing-outdoors",
        level="caution",
        topics=("outdoors",),
        title=N_("Supply in the open"),
        sentence=N_("An IP mark holds only while the case hangs the way its maker shows."),
        consequence=N_("Standing water or snow gets in, and so does rain at an open plug."),
        avoid=(
            N_("Fix it off the ground, cable entries down, with air around it, and the plug under a cover."),
        ),
        reason=N_("Cases are tested in one position, with every entry closed."),
        source="IEC 60529",
        applies=stands_outdoors,
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
        applies=regulation_unknown,
    ),
)
