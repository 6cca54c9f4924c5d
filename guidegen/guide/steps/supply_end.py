"""The supply end: labels, wires to length, fuse, common terminals and resistors."""

from __future__ import annotations

from guidegen.guide.blocks import Check
from guidegen.guide.format import listed, quantity
from guidegen.guide.matter import Matter
from guidegen.guide.predicted import resistance
from guidegen.guide.resistors import marking, resistor_name
from guidegen.guide.steps.checks import beep_check, look_check, no_short_check, ohms_check
from guidegen.guide.steps.draft import Draft, DraftGroup
from guidegen.guide.tools import Tool
from guidegen.guide.wires import cable_name, wire_word
from guidegen.locale import _
from guidegen.parts.cuts import WireCut, wire_cuts
from guidegen.parts.wires import LEAD, extra_reference, feeder_reference, resistor_reference


def supply_end(matter: Matter) -> DraftGroup:
    """Everything between the supply's plug and the feeders."""
    steps = [_cut_wires(matter)] if wire_cuts(matter.arrangement) else []
    steps += [_labels(matter), _fuse(matter)]
    if any(run.resistor.fitted for run in matter.runs):
        steps += [_measure_resistors(matter), _mount_resistors(matter)]
    return DraftGroup(
        anchor="supply-end",
        title=_("Make the supply end"),
        intro=_("All of this is done with the supply unplugged and lying in another place."),
        steps=tuple(steps),
    )


def fuse_text(matter: Matter) -> str:
    """The fuse in a few words."""
    fuse = matter.arrangement.fuse
    assert fuse.rating_a is not None, "a solved study has its fuse picked"
    return _("fuse {amperes} ({standard})").format(
        amperes=quantity(fuse.rating_a, "A"),
        standard="IEC 60127-2" if fuse.standard == "IEC" else "UL 248-14",
    )


def cut_label(matter: Matter, cut: WireCut) -> str:
    """What a piece of wire is called: its reference, its kind, and its run."""
    if cut.run is None:
        return _("{reference} {wire}").format(reference=LEAD, wire=wire_word(cut.key))
    reference = feeder_reference(cut.run) if cut.key == "feeder" else extra_reference(cut.run)
    return _("{reference} {wire} “{run}”").format(
        reference=reference, wire=wire_word(cut.key), run=matter.runs[cut.run].name
    )


def _cut_wires(matter: Matter) -> Draft:
    cuts = wire_cuts(matter.arrangement)
    return Draft(
        identity="cut-wires",
        title=_("Cut the wires to length"),
        why=_("The cut lengths hold 10 cm more at each end than the route, for joints and strain relief."),
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


def labels(matter: Matter) -> tuple[str, ...]:
    """Text of every label: volts, polarity, fuse; one a lead."""
    supply = matter.project.supply
    fuse = matter.arrangement.fuse.rating_a or 0.0
    head = _("{volts} DC only · fuse {amperes}").format(
        volts=quantity(supply.voltage, "V"), amperes=quantity(fuse, "A")
    )
    rows = [_("Supply plug and socket: {head} · {title}").format(head=head, title=matter.project.title)]
    for cut in wire_cuts(matter.arrangement):
        pole = _("carries −") if cut.cores == 1 else _("marked core is +")
        rows.append(_("{label}: {head} · {pole}").format(label=cut_label(matter, cut), head=head, pole=pole))
    return tuple(rows)


def _labels(matter: Matter) -> Draft:
    return Draft(
        identity="labels",
        title=_("Label every lead"),
        why=_(
            "Plugs that fit another supply in the house are pushed in sooner or later. A label is what stops "
            "it."
        ),
        parts=(_("labels"),),
        tools=(Tool.PEN,),
        topics=("labels",),
        do=(*labels(matter), _("Fix each label where the lead begins, so that it cannot slide off.")),
        checks=(
            look_check(
                _("Every lead"),
                _("has its label"),
                (_("Write the missing one now: later nobody remembers which lead is which."),),
            ),
        ),
    )


def _fuse(matter: Matter) -> Draft:
    lead = matter.arrangement.supply.lead
    onward = _("shared lead's + core") if lead is not None else _("+ common connector")
    back = _("shared lead's − core") if lead is not None else _("− common connector")
    do = [
        _("Leave the fuse itself out of its holder for now."),
        _("Mark one common connector + and the other −. All wires of that sign meet there."),
        _("Socket + to one wire of the fuse holder. Nothing else goes to socket +."),
        _("Other wire of the fuse holder to the {onward}.").format(onward=onward),
        _("Socket − to the {back}.").format(back=back),
    ]
    if lead is not None:
        do.append(_("Far end of the shared lead: + core into the + common connector, − core into the − one."))
    return Draft(
        identity="fuse-holder",
        title=_("Fit the fuse holder, first thing in plus"),
        why=_("A fuse guards only what comes after it, so it comes first."),
        parts=(_("fuse holder"), _("socket that fits the supply's plug"), _("common connectors")),
        tools=(Tool.STRIPPER, Tool.SCREWDRIVER, Tool.METER),
        topics=("fuse",),
        do=tuple(do),
        checks=(
            beep_check(_("From the fuse holder's far contact to the + common connector"), _loose()),
            beep_check(_("From socket − to the − common connector"), _loose()),
            no_short_check(
                _("From the + common connector to the − one"),
                (_("A strand bridges two terminals: find it before you go on."),),
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
        do=(
            _(
                "Touch the meter leads together and note what the meter shows. Take that off every reading "
                "of a few ohms."
            ),
            _("Measure each resistor and put it beside the name of its run."),
        ),
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
        parts=(
            *_resistor_parts(matter),
            _("ventilated box for the resistors"),
            _("two-wire connectors"),
        ),
        tools=(Tool.SCREWDRIVER, Tool.CUTTERS, Tool.GLASSES),
        topics=("resistor-mounting",),
        do=(
            _("Leave at least 20 mm of leg on each side. The body touches nothing."),
            _("One leg of each resistor into the + common connector: {runs}.").format(
                runs=listed([f"“{run.name}”" for run in runs])
            ),
            _("The other leg into a two-wire connector of its own, marked with the run's name."),
            _(
                "Keep 20 mm of air between resistors and to every wall. No sleeve, tape, glue or foam on "
                "them."
            ),
            _("Close the ventilated box. Fix it where leaves and dust cannot pile up on it."),
        ),
        checks=(
            look_check(
                _("Around every resistor"),
                _("20 mm of air"),
                (_("Bend the legs, or take a larger box."),),
            ),
        ),
    )
