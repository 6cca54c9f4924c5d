"""Everything to buy, with its rating, its marks, and why."""

from __future__ import annotations

from collections.abc import Iterator

from guidegen.guide.blocks import PartLine
from guidegen.guide.format import listed, number, quantity
from guidegen.guide.matter import Matter
from guidegen.guide.predicted import BenchPower, TestPower
from guidegen.guide.resistors import marking, resistor_name
from guidegen.guide.wires import cable_name
from guidegen.locale import _, ngettext
from guidegen.parts.bill import Bill, ResistorLine, SleeveLine, bill, rating_for_power_w
from guidegen.parts.joints import joints


def parts_to_buy(matter: Matter) -> tuple[PartLine, ...]:
    """The list, from the supply outwards."""
    needed = bill(matter.arrangement)
    return (
        _supply(matter),
        *_supply_end(matter),
        *_strings(matter, needed),
        *_resistors(matter, needed),
        *_test_resistors(matter),
        *_wires(needed),
        *_sleeves(matter, needed),
        *_small(matter, needed),
    )


def _supply(matter: Matter) -> PartLine:
    supply = matter.project.supply
    marks = [
        _("double square"),
        _("approval mark"),
        _("output about {volts} DC").format(volts=quantity(supply.voltage, "V")),
    ]
    if supply.stands == "outdoors":
        marks.append(supply.ip or "IPX4")
    return PartLine(
        quantity="1",
        name=_("Plug-in supply, case never opened"),
        rating=_("{volts} DC, {amperes} or more, regulated").format(
            volts=quantity(supply.voltage, "V"), amperes=quantity(supply.rated_current, "A")
        ),
        why=_("The lights draw {amperes}, in the worst case {worst}.").format(
            amperes=quantity(matter.solution.supply_a, "A"),
            worst=quantity(matter.solved.margins.supply_a, "A"),
        ),
        marking=_("look for: {marks}").format(marks=", ".join(marks)),
    )


def _supply_end(matter: Matter) -> Iterator[PartLine]:
    fuse, supply = matter.arrangement.fuse, matter.arrangement.supply
    volts, amperes = quantity(supply.upper_v, "V"), quantity(fuse.rating_a or 0.0, "A")
    yield PartLine(
        "1",
        _("Socket that fits the supply's plug, with screw terminals"),
        _("at least {volts}, {amperes}").format(volts=volts, amperes=amperes),
        _("The supply keeps its own plug, so its cord is never cut."),
    )
    standard = "IEC 60127-2" if fuse.standard == "IEC" else "UL 248-14"
    yield PartLine(
        _("1 and 2 spare"),
        _("Fuse"),
        _("{amperes}, {standard}").format(amperes=amperes, standard=standard),
        _("The worst running current, {worst}, is at most 80 % of it.").format(
            worst=quantity(matter.solved.margins.supply_a, "A")
        )
        if matter.solved.margins.supply_a <= 0.8 * (fuse.rating_a or 0.0)
        else _("As the project file says."),
        marking=_("the rating stands on its cap"),
    )
    yield PartLine(
        "1",
        _("Fuse holder for cable, closed all round"),
        _("for that fuse"),
        _("It keeps live metal covered."),
    )
    ways = 1 + len(matter.runs)
    yield PartLine(
        "2",
        _("Common connector, screw or lever, + and −"),
        _("{ways} wires or more, {amperes}").format(ways=ways, amperes=amperes),
        _("All runs branch here; each can be taken off for a test."),
    )
    resistors = sum(run.resistor.fitted for run in matter.runs)
    if resistors:
        yield PartLine(
            str(resistors), _("Two-wire connector"), amperes, _("It joins a resistor's free leg to its run.")
        )
        yield PartLine(
            "1",
            _("Ventilated box for the resistors, metal or ceramic inside"),
            _("20 mm of air round every resistor"),
            _("Resistors lose their heat to the air around them."),
        )


def _strings(matter: Matter, needed: Bill) -> Iterator[PartLine]:
    for line in needed.strings:
        kind = matter.project.strings[line.string]
        yield PartLine(
            quantity=str(line.count),
            name=_("Light string “{name}”").format(name=line.string),
            rating=_("{bulbs} bulbs each, every {spacing}; low voltage, two wires, bulbs in parallel").format(
                bulbs=kind.bulbs, spacing=quantity(kind.spacing, "m")
            ),
            why=_("{used} of their bulbs are used.").format(used=line.bulbs),
        )


def _resistors(matter: Matter, needed: Bill) -> Iterator[PartLine]:
    for line in needed.resistors:
        resistor = line.resistor
        yield PartLine(
            quantity=str(len(line.runs)),
            name=_("Resistor for {runs}").format(
                runs=listed([f"“{matter.runs[index].name}”" for index in line.runs])
            ),
            rating=resistor_name(resistor),
            why=_rating_why(matter, line),
            marking=marking(resistor.ohm, resistor.tolerance, resistor.rating_w),
        )


def _rating_why(matter: Matter, line: ResistorLine) -> str:
    guard, margins = matter.solved.protection, matter.solved.margins.runs
    running = max(matter.solution.runs[index].resistor_w for index in line.runs)
    worst = max(margins[index].resistor_w for index in line.runs)
    shorted = max(margins[index].shorted_w for index in line.runs)
    text = _(
        "It turns {running} into heat, in the worst case {worst}, and {shorted} if its run is shorted."
    ).format(running=quantity(running, "W"), worst=quantity(worst, "W"), shorted=quantity(shorted, "W"))
    if all(guard.sure_after_resistor[index] for index in line.runs):
        return text
    return _("{text} The fuse may not open on that short, so the rating has to bear it.").format(text=text)


def _test_resistors(matter: Matter) -> Iterator[PartLine]:
    """Test resistors by their ohms, each rated for the whole supply across it."""
    powers: list[TestPower | BenchPower] = [*matter.first_powers, *matter.bench_powers.values()]
    watts: dict[float, float] = {}
    for power in powers:
        watts[power.ohm] = max(watts.get(power.ohm, 0.0), power.shorted_w)
    for ohm, shorted_w in sorted(watts.items()):
        rating_w = rating_for_power_w(shorted_w)
        yield PartLine(
            quantity="1",
            name=_("Test resistor"),
            rating=_("{ohm} ±5 %, {watts} or more").format(
                ohm=quantity(ohm, "Ω"), watts=quantity(rating_w, "W")
            ),
            why=_(
                "For the bench and the first power: with the whole supply across it, it takes {watts}."
            ).format(watts=quantity(shorted_w, "W")),
            marking=marking(ohm, 0.05, rating_w),
        )


def _wires(needed: Bill) -> Iterator[PartLine]:
    for line in needed.wires:
        yield PartLine(
            quantity=quantity(line.buy_m, "m"),
            name=cable_name(line.cores, line.conductor),
            rating=_("stranded copper, insulated for the place where it hangs"),
            why=_("{cut} by the cut list, and 10 % more.").format(cut=quantity(line.cut_m, "m")),
        )


def _sleeves(matter: Matter, needed: Bill) -> Iterator[PartLine]:
    lined = _("adhesive-lined, shrinks 3:1") if matter.outdoors else _("shrinks 2:1 or more")
    names = {
        "inner": (_("Inner sleeve, over one conductor's joint"), _("One for every single joint.")),
        "cap": (_("Cap sleeve, over one conductor's end"), _("Live ends are capped each by itself.")),
        "outer": (_("Outer sleeve, over the whole cable"), _("It holds the joint and keeps water out.")),
    }
    for line in needed.sleeves:
        name, why = names[line.use]
        yield PartLine(
            quantity=_sleeve_quantity(line),
            name=name,
            rating=_("{lined}; wide enough to slide over, tight when shrunk").format(lined=lined),
            why=why,
        )


def _sleeve_quantity(line: SleeveLine) -> str:
    return _("{count} × {length}").format(count=line.count, length=quantity(line.length_m, "m"))


def _small(matter: Matter, needed: Bill) -> Iterator[PartLine]:
    ties = 2 * len(joints(matter.arrangement)) + 2
    yield PartLine(
        number(ties),
        _("Cable tie"),
        _("narrow, for outdoors") if matter.outdoors else _("narrow"),
        _("Two at every joint take the pull off it."),
    )
    yield PartLine(
        str(needed.labels), _("Label, waterproof"), "", _("Volts, polarity and fuse on every lead.")
    )
    hooks = sum(run.bulbs for run in matter.runs)
    yield PartLine(
        _("as you need"),
        _("Hooks for the cable"),
        _("round, without sharp edges"),
        _("They hold the cable, never a bulb. There are {bulbs} to hang.").format(
            bulbs=ngettext("{count} bulb", "{count} bulbs", hooks).format(count=hooks)
        ),
    )
