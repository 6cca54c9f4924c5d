"""Everything to buy, with its rating, its marks, and why."""

from __future__ import annotations

from collections.abc import Iterator

from guidegen.guide.blocks import PartLine
from guidegen.guide.buying_small import sleeves_to_buy, small_parts
from guidegen.guide.costs import Costs, costs
from guidegen.guide.format import listed, quantity, quoted
from guidegen.guide.instead import fuse_instead, resistors_instead, wire_instead
from guidegen.guide.matter import Matter
from guidegen.guide.predicted import BenchPower, TestPower
from guidegen.guide.resistors import bodies, bodies_picture, marking, resistor_name
from guidegen.guide.steps.supply_end import box_name
from guidegen.guide.wires import cable_name
from guidegen.locale import _
from guidegen.parts.bill import Bill, ResistorLine, bill
from guidegen.parts.joints import supply_cables


def parts_to_buy(matter: Matter) -> tuple[PartLine, ...]:
    """The list, from the supply outwards."""
    needed, cost = bill(matter.arrangement), costs(matter)
    return (
        _supply(matter, cost),
        *_supply_end(matter, cost),
        *_strings(matter, needed, cost),
        *_resistors(matter, needed, cost),
        *_test_resistors(matter, cost),
        *_wires(matter, needed, cost),
        *sleeves_to_buy(matter, needed, cost),
        *small_parts(matter, needed, cost),
    )


def _supply(matter: Matter, cost: Costs) -> PartLine:
    supply = matter.project.supply
    marks = [
        _("double square"),
        _("SELV, LPS, ES1 or the sign of a safety transformer (IEC 61558-2-6)"),
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
        price=cost.supply(),
    )


#: Below this a fuse has ohms that count, ampere; from memory.
OHMS_BELOW_A = 0.25
#: Currents that connectors and sockets are sold for, ampere; own assumption.
_CONNECTORS_A = (3.0, 5.0, 10.0, 16.0, 32.0)


def lasting_rating(matter: Matter) -> str:
    """What socket and connectors must bear: the upper volts, and the current that a fault may hold."""
    lasting_a = matter.solved.protection.must_open_a
    rating_a = next((each for each in _CONNECTORS_A if each >= lasting_a), lasting_a)
    return _("{volts}, {amperes} or more").format(
        volts=quantity(matter.arrangement.supply.upper_v, "V"), amperes=quantity(rating_a, "A")
    )


def _supply_end(matter: Matter, cost: Costs) -> Iterator[PartLine]:
    rating = lasting_rating(matter)
    yield PartLine(
        "1",
        _("Socket that fits the supply's plug, with screw terminals"),
        rating,
        _("The supply keeps its own plug, so its cord is never cut."),
        price=cost.part("socket"),
    )
    yield from _fuse(matter, cost)
    resistors = sum(run.resistor.fitted for run in matter.runs)
    ceramic = _("ceramic, to be screwed down") if resistors else _("to be screwed down")
    ways = 1 + sum(supply_cables(run) for run in matter.runs)
    yield PartLine(
        "2",
        _("Common connector, + and −"),
        _("{ways} wires or more, {rating}, {ceramic}").format(ways=ways, rating=rating, ceramic=ceramic),
        _("All runs branch here; each can be taken off for a test."),
        price=cost.part("terminal", 2 * ways),
    )
    yield from _leg_connectors(matter, rating, cost)
    yield from _lead_parts(matter, rating, cost)
    yield from _boxes(matter, resistors > 0, cost)


def _leg_connectors(matter: Matter, rating: str, cost: Costs) -> Iterator[PartLine]:
    """One connector a resistor; without a feeder two wires may meet its free leg."""
    fitted = [run for run in matter.runs if run.resistor.fitted]
    three = sum(run.feeder is None and run.feed == "both ends" for run in fitted)
    names = (
        (len(fitted) - three, 2, _("Two-wire connector, ceramic")),
        (three, 3, _("Three-wire connector, ceramic")),
    )
    for count, ways, name in names:
        if count:
            yield PartLine(
                str(count),
                name,
                _("{rating}, to be screwed down").format(rating=rating),
                _("It joins a resistor's free leg to its run; a hot leg softens plastic."),
                price=cost.part("terminal", count * ways),
            )


def _fuse(matter: Matter, cost: Costs) -> Iterator[PartLine]:
    """The fuse as it is ordered, and its holder."""
    fuse, worst_a = matter.arrangement.fuse, matter.solved.margins.supply_a
    amperes, iec = quantity(fuse.rating_a or 0.0, "A"), fuse.standard == "IEC"
    size = _("5 × 20 mm, F (quick), IEC 60127-2") if iec else _("6.3 × 32 mm, fast, UL 248-14")
    why = (
        _("The worst running current, {worst}, is at most 80 % of it.").format(worst=quantity(worst_a, "A"))
        if worst_a <= 0.8 * (fuse.rating_a or 0.0)
        else _("As the project file says.")
    )
    if (fuse.rating_a or 0.0) < OHMS_BELOW_A:
        why = _("{why} So small a fuse has ohms of its own: the lights get a little less.").format(why=why)
    yield PartLine(
        _("1 and 2 spare"),
        _("Fuse"),
        _("{amperes}, {size}, 32 V or more").format(amperes=amperes, size=size),
        why,
        marking=_("on its cap: {mark}, often 250 V").format(mark=f"F {amperes}" if iec else amperes),
        instead=fuse_instead(matter),
        price=cost.fuse(),
    )
    yield PartLine(
        "1",
        _("Fuse holder for cable, closed all round, with its two wires"),
        _("for {size}, 32 V or more").format(size=_("5 × 20 mm") if iec else _("6.3 × 32 mm")),
        _("It keeps live metal covered. Its price is in that of the fuse."),
        instead=(_("a holder screwed down in the box, its contacts covered"),),
        price=cost.included(),
    )


def _lead_parts(matter: Matter, rating: str, cost: Costs) -> Iterator[PartLine]:
    """What joins the fuse holder and the socket to the connectors."""
    if matter.arrangement.supply.lead is not None:
        yield PartLine(
            "1",
            _("Two-wire connector"),
            rating,
            _("It joins the fuse holder to the shared lead."),
            instead=(_("a lever connector for stranded wire of this size"),),
            price=cost.part("terminal", 2),
        )
        return
    yield PartLine(
        "1",
        _("Short wire, 20 cm"),
        _("stranded copper, 0.5 mm²"),
        _("From socket − to the − connector."),
        instead=(_("what is left of the wires below"),),
        price=cost.wire(1, 0.5e-6, 0.2),
    )


def _boxes(matter: Matter, resistors: bool, cost: Costs) -> Iterator[PartLine]:
    name = box_name(matter)
    if resistors:
        yield PartLine(
            "1",
            name[:1].upper() + name[1:],
            _("metal or ceramic, with a lid; 20 mm of air round every resistor"),
            _("Resistors lose their heat to the air around them."),
            price=cost.part("box"),
        )
    else:
        why = _("It keeps live metal covered.")
        yield PartLine("1", name[:1].upper() + name[1:], _("with a lid"), why, price=cost.part("box"))
    if matter.project.supply.stands == "outdoors":
        yield PartLine(
            "1",
            _("Enclosure for plug, socket, fuse holder and box"),
            _("IPX4 or better, cables enter from below; large, as the resistors warm it"),
            _("No rain may reach the supply end."),
            price=cost.part("enclosure"),
        )


def _strings(matter: Matter, needed: Bill, cost: Costs) -> Iterator[PartLine]:
    for line in needed.strings:
        kind = matter.project.strings[line.string]
        yield PartLine(
            quantity=str(line.count),
            name=_("Light string “{name}”").format(name=line.string),
            rating=_("{bulbs} bulbs each, every {spacing}; low voltage, two wires, bulbs in parallel").format(
                bulbs=kind.bulbs, spacing=quantity(kind.spacing, "m")
            ),
            why=_("{used} of their bulbs are used.").format(used=line.bulbs),
            price=cost.strings(line.count),
        )


def _resistors(matter: Matter, needed: Bill, cost: Costs) -> Iterator[PartLine]:
    for line in needed.resistors:
        resistor = line.resistor
        looks = bodies(resistor.ohm, resistor.tolerance, resistor.rating_w)
        yield PartLine(
            quantity=str(len(line.runs)),
            name=_("Resistor for {runs}").format(
                runs=listed([quoted(matter.runs[index].name) for index in line.runs])
            ),
            rating=resistor_name(resistor),
            why=_rating_why(matter, line),
            marking=marking(resistor.ohm, resistor.tolerance, resistor.rating_w),
            instead=resistors_instead(resistor.ohm, resistor.rating_w or 0.0),
            price=cost.resistors(len(line.runs), resistor.rating_w or 0.0),
            bodies=looks,
            picture=bodies_picture(looks),
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
    return _("{text} That short may last, so the rating has to bear it.").format(text=text)


def _test_resistors(matter: Matter, cost: Costs) -> Iterator[PartLine]:
    """Test resistors by their ohms, each rated for what flows while everything behind it is shorted."""
    powers: list[TestPower | BenchPower] = [*matter.first_powers, *matter.bench_powers.values()]
    for trial in sorted({power.trial for power in powers}, key=lambda each: each.ohm):
        ohm, rating_w = trial.ohm, trial.rating_w
        looks = bodies(ohm, 0.05, rating_w)
        yield PartLine(
            quantity="1",
            name=_("Test resistor"),
            rating=_("{ohm} ±5 %, {watts} or more").format(
                ohm=quantity(ohm, "Ω"), watts=quantity(rating_w, "W")
            ),
            why=_("For tests. It takes {watts} for as long as what it feeds is shorted.").format(
                watts=quantity(trial.shorted_w, "W")
            ),
            marking=marking(ohm, 0.05, rating_w),
            instead=resistors_instead(ohm, rating_w)[:1],
            price=cost.resistors(1, rating_w),
            bodies=looks,
            picture=bodies_picture(looks),
        )


def _wires(matter: Matter, needed: Bill, cost: Costs) -> Iterator[PartLine]:
    rating = (
        _("stranded copper; sheath of rubber or polyurethane, marked for outdoors and sunlight")
        if matter.outdoors
        else _("stranded copper, insulated")
    )
    for line in needed.wires:
        yield PartLine(
            quantity=quantity(line.buy_m, "m"),
            name=cable_name(line.cores, line.conductor),
            rating=rating,
            why=_("{cut} by the cut list, and 10 % more.").format(cut=quantity(line.cut_m, "m")),
            instead=wire_instead(line),
            price=cost.wire(line.cores, line.conductor.area_m2, line.buy_m),
        )
