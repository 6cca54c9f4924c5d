"""Refusals from the project file alone: nothing is solved for a project that meets one of them.

Their words give the reason and what to do instead, and nothing that would
help to do it anyway.
"""

from __future__ import annotations

import re
from collections.abc import Iterable

from guidegen.locale import N_
from guidegen.project.read import ProjectFile
from guidegen.project.schema import Project
from guidegen.safety.rule import Hit, Rule, exceeds, is_outdoors, when
from guidegen.tables.limits import (
    DRY_WITHOUT_BASIC_AC_V,
    DRY_WITHOUT_BASIC_DC_V,
    NEAR_WATER_M,
    SUPPLY_OUTDOORS_IPX,
)

# The file's own words that a sentence shows.
WORDS = (
    *(N_("basic"), N_("unknown")),
    *(N_("pool"), N_("pond"), N_("fountain"), N_("bath or shower"), N_("sauna")),
)
_VOLTS = re.compile(r"(\d+(?:[.,]\d+)?)\s*v(?:olts?|ac|dc)?(?![a-z])", re.IGNORECASE)
_IP_CODE = re.compile(r"IP\s*[0-6X]\s*([0-9X])", re.IGNORECASE)


def mains_strings(file: ProjectFile) -> Iterable[Hit]:
    """One hit for each kind of string made for mains voltage, by its key or by its label."""
    return (
        Hit(name)
        for name, kind in file.project.strings.items()
        if kind.runs_on == "mains" or exceeds(label_volts(kind.label), DRY_WITHOUT_BASIC_DC_V.value)
    )


def label_volts(label: str | None) -> float:
    """Largest volts that a label tells for the string itself, V; 0 where it tells none.

    What an adapter takes in is not what the string gets: behind the word
    "output" only what follows it counts.
    """
    text = (label or "").casefold()
    text = text[text.rfind("output") :] if "output" in text else text
    return max((float(volts.replace(",", ".")) for volts in _VOLTS.findall(text)), default=0.0)


def not_approved(file: ProjectFile) -> Iterable[Hit]:
    """One hit if the supply is known to carry no mark of approval."""
    return when(file.project.supply.approved == "no")


def opened_case(file: ProjectFile) -> Iterable[Hit]:
    """One hit if the supply's case was opened."""
    return when(file.project.supply.case == "opened")


def too_little_insulation(file: ProjectFile) -> Iterable[Hit]:
    """One hit for basic insulation anywhere, or unknown insulation outdoors."""
    insulation = file.project.supply.insulation
    unknown_outdoors = insulation == "unknown" and is_outdoors(file.project)
    return when(insulation == "basic" or unknown_outdoors, insulation=insulation)


def too_many_volts(file: ProjectFile) -> Iterable[Hit]:
    """One hit if any voltage can pass the limit of extra-low voltage that may be touched dry."""
    limit = DRY_WITHOUT_BASIC_DC_V if file.project.supply.output == "dc" else DRY_WITHOUT_BASIC_AC_V
    on_the_bench = max(bench_volts(file.project), default=0.0)
    volts = max(upper_volts(file.project), on_the_bench)
    return when(
        exceeds(volts, limit.value), dc_v=DRY_WITHOUT_BASIC_DC_V.value, ac_v=DRY_WITHOUT_BASIC_AC_V.value
    )


def upper_volts(project: Project) -> float:
    """Highest no-load volts of the supply, V."""
    return project.supply.voltage * (1 + project.supply.tolerance)


def bench_volts(project: Project) -> list[float]:
    """Source volts of every bench reading, V."""
    return [reading.supply for kind in project.strings.values() for reading in kind.bench]


def not_direct_current(file: ProjectFile) -> Iterable[Hit]:
    """One hit if the output is AC or pulsed."""
    return when(file.project.supply.output != "dc")


def constant_current(file: ProjectFile) -> Iterable[Hit]:
    """One hit if the supply holds its current instead of its volts."""
    return when(file.project.supply.type == "constant current")


def unprotected_outdoors(file: ProjectFile) -> Iterable[Hit]:
    """One hit if the supply stands outdoors without a mark of at least IPX4."""
    supply = file.project.supply
    return when(supply.stands == "outdoors" and water_digit(supply.ip) < SUPPLY_OUTDOORS_IPX.value)


def water_digit(ip: str | None) -> int:
    """Second digit of an IP code such as IP44, IPX4 or IP65/IP67; 0 when there is none.

    7, 8 (immersion) and 9 (jets from close by) include splashing: IEC 60529 cl. 6.
    """
    digits = [digit for digit in _IP_CODE.findall(ip or "") if digit not in "xX"]
    return max(map(int, digits), default=0)


def close_to_water(file: ProjectFile) -> Iterable[Hit]:
    """One hit in a sauna, near water, or when the distance to water is not given."""
    place = file.project.place
    if place.near_water in ("none", "sauna"):
        return when(place.near_water == "sauna", water=place.near_water, least_m=NEAR_WATER_M.value)
    near = place.distance_to_water is None or place.distance_to_water < NEAR_WATER_M.value
    return when(near, water=place.near_water, least_m=NEAR_WATER_M.value)


RULES: tuple[Rule[ProjectFile], ...] = (
    Rule(
        id="mains-string",
        level="refusal",
        topics=("strings-identify",),
        title=N_("Mains-voltage string"),
        sentence=N_("This string is made for mains voltage."),
        consequence=N_("Every cut, joint or bare end of it can kill."),
        avoid=(
            N_("Leave a mains string whole, as it was sold, and use it only as its maker says."),
            N_("For this build buy strings that are sold with cells or with a low-voltage supply."),
        ),
        reason=N_(
            "Its wire, joints and bulbs may be live at mains voltage even where they look like others."
        ),
        source="IEC 61140",
        applies=mains_strings,
    ),
    Rule(
        id="supply-case-opened",
        level="refusal",
        topics=("supply",),
        title=N_("Supply with an opened case"),
        sentence=N_("The case of this supply has been opened."),
        consequence=N_("Mains can reach the low-voltage wires, and a person through them."),
        avoid=(
            N_("Take an approved supply, keep it closed, and use only its low-voltage lead or plug."),
            N_("Hand the opened one in as electrical waste."),
        ),
        reason=N_("Nobody can tell any more whether its insulation from the mains is whole."),
        source="IEC 61140",
        applies=opened_case,
    ),
    Rule(
        id="supply-not-approved",
        level="refusal",
        topics=("supply",),
        title=N_("Supply without approval"),
        sentence=N_("This supply carries no mark of approval."),
        consequence=N_("It can put mains on the low-voltage wires, or catch fire."),
        avoid=(
            N_("Take a supply with the approval mark of your country on its own case, not on its box alone."),
        ),
        reason=N_("Nobody independent has tested whether it keeps mains away from what you touch."),
        source="IEC 60364-4-41 cl. 414.3",
        applies=not_approved,
    ),
    Rule(
        id="supply-insulation",
        level="refusal",
        topics=("supply",),
        title=N_("Supply not safely separated from the mains"),
        sentence=N_("The supply's insulation is given as {insulation}, which is not enough here."),
        consequence=N_("One fault inside puts mains on every bare end of the build."),
        avoid=(N_("Use an approved supply marked with the double square: double or reinforced insulation."),),
        reason=N_(
            "The low-voltage wires may be touched only because two layers of insulation keep mains away; "
            "outdoors that must be known."
        ),
        source="IEC 60364-4-41 cl. 414.3",
        applies=too_little_insulation,
    ),
    Rule(
        id="supply-voltage",
        level="refusal",
        topics=("supply",),
        title=N_("Too many volts"),
        sentence=N_("Something in this project can be over {dc_v} DC or {ac_v} AC."),
        consequence=N_("Touching a joint can give a dangerous shock, and a break can hold an arc."),
        avoid=(N_("Use strings and an approved supply for 5 V, 12 V or 24 V."),),
        reason=N_("Above these limits bare joints may not be touched even in dry rooms."),
        source=DRY_WITHOUT_BASIC_DC_V.source,
        applies=too_many_volts,
    ),
    Rule(
        id="supply-output",
        level="refusal",
        topics=("supply",),
        title=N_("Output is not steady direct current"),
        sentence=N_("The supply's output is alternating or pulsed."),
        consequence=N_("LEDs, resistor and fuse carry peaks that no reading of a plain meter shows."),
        avoid=(N_("Use an approved supply with a steady DC output and constant voltage."),),
        reason=N_("Every figure and expected reading of the guide holds for steady direct current alone."),
        source=N_("own policy"),
        applies=not_direct_current,
    ),
    Rule(
        id="supply-constant-current",
        level="refusal",
        topics=("supply",),
        title=N_("Constant-current supply"),
        sentence=N_("The supply holds its current, not its volts."),
        consequence=N_(
            "When a run comes off, the others take its current, and at an open end the volts rise as far as "
            "the driver can push them."
        ),
        avoid=(N_("Use an approved constant-voltage supply, marked in volts with no range of volts."),),
        reason=N_(
            "Runs side by side need fixed volts; a current driver is made for one fixed chain of LEDs."
        ),
        source=N_("own policy"),
        applies=constant_current,
    ),
    Rule(
        id="supply-outdoors",
        level="refusal",
        topics=("supply", "outdoors"),
        title=N_("Supply outdoors without protection from water"),
        sentence=N_("The supply stands outdoors and has no mark of at least IPX4."),
        consequence=N_("Water inside bridges mains to the low-voltage side."),
        avoid=(
            N_("Put the supply indoors, in a dry place, and lead the low-voltage wire out."),
            N_("Or use an approved supply that its maker marks IPX4 or better, such as IP44."),
        ),
        reason=N_("Rain and splashes get into a case that is not made for them."),
        source=SUPPLY_OUTDOORS_IPX.source,
        applies=unprotected_outdoors,
    ),
    Rule(
        id="near-water",
        level="refusal",
        topics=("outdoors", "hanging"),
        title=N_("Too close to water"),
        sentence=N_("The lights are in or near water ({water}), or the distance to it is not given."),
        consequence=N_("Wet skin conducts so well that a voltage harmless elsewhere can be dangerous."),
        avoid=(
            N_("Hang everything at least {least_m} from any water's edge; state place.distance_to_water."),
            N_(
                "In or at water use finished lights approved for that zone, fitted by a licensed electrician."
            ),
        ),
        reason=N_("Home-made joints have no place where people are wet and barefoot, whatever the voltage."),
        source=NEAR_WATER_M.source,
        applies=close_to_water,
    ),
)
