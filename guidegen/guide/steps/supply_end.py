"""The supply end: labels, wires to length, fuse, common terminals and resistors."""

from __future__ import annotations

from guidegen.guide.blocks import Check
from guidegen.guide.format import listed, quantity, quoted
from guidegen.guide.matter import Matter
from guidegen.guide.predicted import metered_volts, resistance
from guidegen.guide.resistors import marking, resistor_name
from guidegen.guide.steps.checks import (
    apart_check,
    beep_check,
    look_check,
    ohms_check,
    predicted_volts,
)
from guidegen.guide.steps.draft import Draft, DraftGroup
from guidegen.guide.steps.identify import supply_text
from guidegen.guide.steps.label_words import place_words, pole_words, supply_words, wire_label
from guidegen.guide.tools import Tool
from guidegen.guide.wires import cable_name
from guidegen.locale import _, ngettext
from guidegen.parts.bill import bill
from guidegen.parts.cuts import WireCut, end_allowance_m, wire_cuts
from guidegen.parts.wires import FUSE, resistor_reference


def supply_end(matter: Matter) -> DraftGroup:
    """Everything between the supply's plug and the feeders."""
    steps = [_cut_wires(matter)] if wire_cuts(matter.arrangement) else []
    steps += [_labels(matter), _fuse(matter), _fuse_in(matter)]
    if any(run.resistor.fitted for run in matter.runs):
        steps += [_measure_resistors(matter), _mount_resistors(matter)]
    return DraftGroup(
        anchor="supply-end",
        title=_("Make the supply end"),
        intro=_("It comes first, so that every later test already runs through the fuse."),
        steps=tuple(steps),
    )


def fuse_text(matter: Matter) -> str:
    """The fuse in a few words."""
    fuse = matter.arrangement.fuse
    assert fuse.rating_a is not None, "a solved study has its fuse picked"
    if fuse.standard == "IEC":
        return _("fuse F {amperes}, 5 × 20 mm").format(amperes=quantity(fuse.rating_a, "A"))
    return _("fuse {amperes}, fast, 6.3 × 32 mm").format(amperes=quantity(fuse.rating_a, "A"))


def cut_label(matter: Matter, cut: WireCut) -> str:
    """What a piece of wire is called: its reference, its kind, and its run."""
    return wire_label(matter.arrangement, cut)


def _cut_wires(matter: Matter) -> Draft:
    cuts = wire_cuts(matter.arrangement)
    return Draft(
        identity="cut-wires",
        title=_("Cut the wires to length"),
        why=_why_longer(matter),
        parts=tuple(dict.fromkeys(cable_name(cut.cores, cut.conductor) for cut in cuts)),
        tools=(Tool.TAPE_MEASURE, Tool.CUTTERS, Tool.PEN, Tool.METER, Tool.GLASSES),
        topics=("sharp", "wire"),
        do=(
            *(
                _("{label}: cut {length}.").format(
                    label=cut_label(matter, cut), length=quantity(cut.cut_m, "m")
                )
                for cut in cuts
            ),
            _(
                "Mark one core of each two-core cable + at both ends. Find the same core with the beeper if "
                "they look alike."
            ),
            _("Write the name of the wire on both ends."),
        ),
        checks=(
            beep_check(
                _("The core marked +, from one end of each two-core cable to the other"),
                (_("No beep: the other core is the one. Move the mark."),),
            ),
        ),
    )


def _why_longer(matter: Matter) -> str:
    allowance = quantity(end_allowance_m(matter.arrangement), "m")
    if matter.outdoors:
        text = _(
            "The cut lengths hold {allowance} more at each end than the route, for joint, strain relief and "
            "drip loop."
        )
    else:
        text = _(
            "The cut lengths hold {allowance} more at each end than the route, for joints and strain relief."
        )
    return text.format(allowance=allowance)


def labels(matter: Matter) -> tuple[str, ...]:
    """Text of the labels, two of each: for plug and socket, and for both ends of every wire."""
    arrangement = matter.arrangement
    head = supply_words(arrangement)
    rows = [_("Supply plug and socket: {head} · {title}").format(head=head, title=matter.project.title)]
    for cut in wire_cuts(arrangement):
        label, place = wire_label(arrangement, cut), place_words(arrangement, cut)
        rows.append(_("{label}: {place} · {pole}").format(label=label, place=place, pole=pole_words(cut)))
    return tuple(rows)


def _labels(matter: Matter) -> Draft:
    count = bill(matter.arrangement).labels
    return Draft(
        identity="labels",
        title=_("Label every lead at both ends"),
        why=_("Plugs that fit another supply in the house are pushed in sooner or later."),
        parts=(ngettext("{count} label", "{count} labels", count).format(count=count),),
        tools=(Tool.PEN,),
        topics=("labels",),
        do=(*labels(matter), _("Write two of each; the first is for plug and socket. None may slide off.")),
        checks=(
            look_check(
                _("Plug, socket, and both ends of every wire"),
                _("labelled"),
                (_("Write the missing one now: later nobody remembers which lead is which."),),
            ),
        ),
    )


def _fuse(matter: Matter) -> Draft:
    lead = matter.arrangement.supply.lead
    wires = (_("two-wire connector"),) if lead is not None else (_("short wire, 20 cm"),)
    return Draft(
        identity="fuse-holder",
        title=_("Fit the fuse holder, first thing in plus"),
        why=_("A fuse guards only what comes after it, so it comes first."),
        parts=(
            _("fuse holder"),
            _("socket that fits the supply's plug"),
            _("common connectors"),
            box_name(matter),
            *wires,
        ),
        tools=(Tool.STRIPPER, Tool.SCREWDRIVER, Tool.PEN, Tool.METER),
        topics=("fuse",),
        do=(
            _("The supply lies in another place. The holder has no fuse in it yet."),
            place_line(matter),
            _("Screw the common connectors to the floor of the box. Mark one + and the other −."),
            _("Socket + to one wire of the fuse holder. Nothing else goes to socket +."),
            *_onward_lines(lead is not None),
            _("Join neither pole to earth, a metal rail or a gutter."),
        ),
        checks=(
            beep_check(_("From the fuse holder's far contact to the + common connector"), _loose()),
            beep_check(_("From socket − to the − common connector"), _loose()),
            apart_check(
                _("From the + common connector to the − one"),
                (_("A strand bridges two terminals: find it before you go on."),),
            ),
        ),
    )


def _onward_lines(lead: bool) -> tuple[str, ...]:
    if not lead:
        return (
            _("Other wire of the fuse holder into the + common connector."),
            _("The short wire from socket − into the − common connector."),
        )
    return (
        _(
            "Other wire of the fuse holder and L1's + core into the two-wire connector. Socket − to "
            "L1's − core."
        ),
        _("Far end of L1: + core into the + common connector, − core into the − one."),
    )


def box_name(matter: Matter) -> str:
    """The box at the supply end."""
    if any(run.resistor.fitted for run in matter.runs):
        return _("ventilated box for connectors and resistors")
    return _("box for the connectors")


def place_line(matter: Matter) -> str:
    """Where plug, socket, fuse and box stay: dry."""
    if matter.project.supply.stands == "outdoors":
        return _(
            "Plug, socket, fuse holder and box go into an enclosure of IPX4 or better, all cables entering "
            "from below."
        )
    return _("Supply, socket, fuse holder and box stay indoors, dry.")


def _fuse_in(matter: Matter) -> Draft:
    supply = matter.arrangement.supply
    return Draft(
        identity="fuse-in",
        title=_("Put the fuse in and try the supply end"),
        why=_("From now on a mistake behind the fuse is limited by it."),
        parts=(fuse_text(matter), supply_text(matter)),
        tools=(Tool.METER,),
        topics=("fuse", "meter"),
        do=(
            _("Read the fuse's cap: {fuse}. Put it in and close the holder.").format(fuse=fuse_text(matter)),
            _("Never bridge a fuse, and never fit a larger one."),
            _("No wire may touch another. Plug in, read, unplug."),
        ),
        checks=(
            predicted_volts(
                _("From the + common connector, red lead, to the − one"),
                metered_volts(supply.voltage_v, supply.lower_v, supply.upper_v, matter.study.meter),
                (
                    _("Minus sign: two wires are swapped; start again at the socket."),
                    _("Nothing: the fuse {fuse} is blown or does not touch.").format(fuse=FUSE),
                ),
            ),
        ),
    )


def _loose() -> tuple[str, ...]:
    return (_("A terminal holds insulation, not metal, or the wire has slipped: make it again."),)


def _resistor_parts(matter: Matter) -> tuple[str, ...]:
    return tuple(
        _("{reference} for “{run}”: {name}").format(
            reference=resistor_reference(index), name=resistor_name(run.resistor), run=run.name
        )
        for index, run in enumerate(matter.runs)
        if run.resistor.fitted
    )


def _measure_resistors(matter: Matter) -> Draft:
    return Draft(
        identity="measure-resistors",
        title=_("Measure every resistor before you fit it"),
        why=_("A wrong multiplier band is wrong by ten times, and looks almost the same."),
        parts=_resistor_parts(matter),
        tools=(Tool.METER, Tool.PEN),
        topics=("resistor", "meter-ohms"),
        do=(_("Measure each resistor and put it beside the name of its run."),),
        checks=tuple(
            _resistor_check(matter, index) for index, run in enumerate(matter.runs) if run.resistor.fitted
        ),
    )


def _resistor_check(matter: Matter, index: int) -> Check:
    run = matter.runs[index]
    resistor = run.resistor
    low, high = resistor.ohm * (1 - resistor.tolerance), resistor.ohm * (1 + resistor.tolerance)
    return ohms_check(
        _("{reference}, for “{run}”").format(reference=resistor_reference(index), run=run.name),
        resistance(resistor.ohm, low, high),
        (
            _("Read its marking again: {marking}.").format(
                marking=marking(resistor.ohm, resistor.tolerance, resistor.rating_w)
                or quantity(resistor.ohm, "Ω")
            ),
        ),
    )


def _mount_resistors(matter: Matter) -> Draft:
    runs = [run for run in matter.runs if run.resistor.fitted]
    return Draft(
        identity="mount-resistors",
        title=_("Mount the resistors in free air"),
        why=_("They turn the spare volts into heat, and need air around them to lose it."),
        parts=(*_resistor_parts(matter), _("two-wire connectors, ceramic")),
        tools=(Tool.SCREWDRIVER, Tool.PEN, Tool.CUTTERS, Tool.GLASSES),
        topics=("resistor-mounting",),
        do=(
            _(
                "Screw a two-wire connector for each resistor to the floor of the box. Mark it: {runs}."
            ).format(runs=listed([quoted(run.name) for run in runs])),
            _(
                "One leg into the + common connector, the other into its own. 30 mm of leg on each side keep "
                "the heat from the connectors; cut longer ones."
            ),
            _(
                "20 mm of air around every body, 10 mm from every bare leg to metal or to another leg. No "
                "sleeve, tape, glue or foam."
            ),
            _("Leave the box open for the tests."),
        ),
        checks=(
            look_check(
                _("Around every resistor"),
                _("20 mm of air; it does not move when the box is shaken"),
                (_("Bend the legs, or take a larger box."),),
            ),
        ),
    )
