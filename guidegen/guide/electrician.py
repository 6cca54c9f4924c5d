"""For the electrician: what is asked for, and the facts that a licensed person needs; never how."""

from __future__ import annotations

from collections.abc import Sequence

from guidegen.calc.mains import apparent_va, input_w, mains_a
from guidegen.guide.blocks import Caution, Column, Fact, Table
from guidegen.guide.cautions import Placed
from guidegen.guide.format import percent, quantity
from guidegen.guide.heat import resistor_heat
from guidegen.guide.matter import Matter
from guidegen.guide.pages import ElectricianPage
from guidegen.locale import _
from guidegen.locale.numerals import general
from guidegen.tables.limits import (
    MAINS_V,
    RCD_A,
    SMALL_SUPPLY_EFFICIENCY,
    SMALL_SUPPLY_POWER_FACTOR,
    SUPPLY_OUTDOORS_IPX,
)

#: The rule that asks for this sheet.
RULE = "new-fixed-wiring"
#: Empty lines for notes.
NOTE_LINES = 5


def stop_box(cautions: Sequence[Placed]) -> Caution | None:
    """The box at which the guide stops for licensed work; None where the outlet is there already."""
    return next((each.caution for each in cautions if each.caution.anchor == RULE), None)


def electrician_page(matter: Matter, stop: Caution) -> ElectricianPage:
    """The sheet to hand over."""
    return ElectricianPage(
        stop=stop,
        first_line=_(
            "To the licensed person: the local code and your own judgement come before this sheet. It states "
            "what is wanted and what will be connected; how that is done is yours alone."
        ),
        asked=_asked(matter),
        facts=(*_load(matter), *_place(matter), *_heat(matter)),
        who=_who(),
        to_fill=(
            _("What was fitted"),
            _("Protection in front of it"),
            _("Tested, with result"),
            _("Name and licence"),
            _("Date and signature"),
        ),
        note_lines=NOTE_LINES,
    )


def _asked(matter: Matter) -> tuple[str, ...]:
    supply = matter.project.supply
    return (
        _("A switched outlet at the supply's place, where the plug can be pulled at any time."),
        _(
            "What will be plugged in: one supply, {volts} DC, {amperes} or more, Class II (double or "
            "reinforced insulation), constant voltage, output safely separated from the mains (SELV)."
        ).format(volts=quantity(supply.voltage, "V"), amperes=quantity(supply.rated_current, "A")),
        _("No supply that is wired in: the builder works by pulling its plug before every change."),
        _protection(matter),
        _("A switch for all of it that can be reached from firm ground."),
    )


def _protection(matter: Matter) -> str:
    if matter.outdoors or matter.project.supply.stands == "outdoors":
        return _(
            "Residual-current protection of {amperes} or less in front of it, for a place outdoors."
        ).format(amperes=quantity(RCD_A.value, "A"))
    return _("Residual-current protection as the local code asks for this room.")


def _load(matter: Matter) -> tuple[Fact, ...]:
    supply, solution = matter.arrangement.supply, matter.solution
    rated_w = supply.voltage_v * supply.rated_a
    in_w = input_w(rated_w, SMALL_SUPPLY_EFFICIENCY.value)
    va = apparent_va(in_w, SMALL_SUPPLY_POWER_FACTOR.value)
    currents = _(" or ").join(
        _("{amperes} at {volts}").format(
            amperes=quantity(mains_a(va, mains.value), "A"), volts=quantity(mains.value, "V")
        )
        for mains in MAINS_V
    )
    return (
        Fact(
            _("Lights"),
            _("{watts}, {amperes}").format(
                watts=quantity(solution.power_w, "W"), amperes=quantity(solution.supply_a, "A")
            ),
            _("on the {volts} DC side; {amperes} in the worst case").format(
                volts=quantity(supply.voltage_v, "V"), amperes=quantity(matter.solved.margins.supply_a, "A")
            ),
        ),
        Fact(
            _("Load to plan for"),
            _("{watts}, {va}").format(watts=quantity(in_w, "W"), va=f"{quantity(va, 'W').rstrip('W')}VA"),
            _("full rating; efficiency {efficiency}, power factor {factor} assumed: the label wins").format(
                efficiency=percent(SMALL_SUPPLY_EFFICIENCY.value),
                factor=general(SMALL_SUPPLY_POWER_FACTOR.value),
            ),
        ),
        Fact(_("Mains current"), currents, _("of that load, without inrush")),
        Fact(
            _("Low-voltage fuse"),
            quantity(matter.arrangement.fuse.rating_a or 0.0, "A"),
            _("first thing in plus, fitted by the builder"),
        ),
    )


def _place(matter: Matter) -> tuple[Fact, ...]:
    place, supply = matter.project.place, matter.project.supply
    air = _("{coldest} to {warmest}").format(
        coldest=quantity(place.coldest_c, "°C"), warmest=quantity(place.warmest_c, "°C")
    )
    water = (
        _("none near, as stated")
        if place.near_water == "none"
        else _("{water}, {distance} away").format(
            water=_(place.near_water), distance=quantity(place.distance_to_water or 0.0, "m")
        )
    )
    ip = _("marked {ip}").format(ip=supply.ip) if supply.ip else _("no IP mark stated")
    return (
        Fact(_("The lights hang"), _(place.exposure), _("low voltage only")),
        Fact(_("The supply stands"), _(supply.stands), ip),
        Fact(_("Class asked for"), _("II"), _("double or reinforced insulation, the double square")),
        _enclosure(matter),
        Fact(_("Air"), air, _("at the lights")),
        Fact(_("Water"), water),
    )


def _enclosure(matter: Matter) -> Fact:
    """The enclosure asked for at the supply's place."""
    if matter.project.supply.stands == "outdoors":
        least = _("IPX{digit} or better").format(digit=f"{SUPPLY_OUTDOORS_IPX.value:.0f}")
        return Fact(_("Enclosure asked for"), least, _("for supply and outlet, in use"))
    return Fact(_("Enclosure asked for"), _("for dry rooms"), _("with air around the supply"))


def _heat(matter: Matter) -> tuple[Fact, ...]:
    supply, margins = matter.arrangement.supply, matter.solved.margins
    rated_w = supply.voltage_v * supply.rated_a
    lost_w = input_w(rated_w, SMALL_SUPPLY_EFFICIENCY.value) - rated_w
    of_supply = Fact(
        _("Heat of the supply"), quantity(lost_w, "W"), _("at full rating; it needs air around it")
    )
    fitted = [index for index, run in enumerate(matter.runs) if run.resistor.fitted]
    if not fitted:
        return of_supply, Fact(_("Heat of the resistors"), _("none fitted"))
    heats = [resistor_heat(matter, index, matter.arrangement.warmest_c) for index in fitted]
    of_resistors = Fact(
        _("Heat of the resistors"),
        quantity(sum(margins.runs[index].resistor_w for index in fitted), "W"),
        _(
            "in the worst case, all together; surface up to {running} running, {shorted} in a short; mounted "
            "in free air"
        ).format(
            running=quantity(round(max(heat.worst_c for heat in heats)), "°C"),
            shorted=quantity(round(max(heat.shorted_c for heat in heats)), "°C"),
        ),
    )
    return of_supply, of_resistors


def _who() -> Table:
    return Table(
        caption=_("Who attends to what"),
        columns=(Column(_("Who")), Column(_("Attends to"))),
        rows=(
            (
                _("Licensed person"),
                _("Everything on the mains side, to the local code; tests it and hands it over."),
            ),
            (
                _("Builder"),
                _("Everything behind the closed supply's low-voltage lead; nothing on the mains side."),
            ),
            (
                _("Whoever uses it"),
                _("Presses the test button as its maker says, switches off at any damage, keeps this sheet."),
            ),
        ),
    )
