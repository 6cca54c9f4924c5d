"""When it is on: timers, and power banks that switch themselves off."""

from __future__ import annotations

from collections.abc import Iterator

from guidegen.guide.format import number, quantity
from guidegen.guide.pages import Section
from guidegen.guide.running_figures import Running, hours_text, kwh, money
from guidegen.locale import _
from guidegen.tables import supplies

#: Capacity of the power bank that the page reckons with, ampere hours.
_BANK_AH = 10.0


def timer_section(running: Running) -> Section:
    """Plug timer against built-in timer."""
    return Section(
        anchor="timers", title=_("Timer"), points=(*_plug_timer(running), *_built_in_timer(running))
    )


def _plug_timer(running: Running) -> Iterator[str]:
    off_h = 24 - running.hours
    timer, standby = supplies.PLUG_TIMER_W, running.standby_w
    used = (
        timer.value - standby
    ) * 24 / 1000 * running.season_days + standby * running.hours / 1000 * running.season_days
    text = _(
        "A timer between outlet and supply switches all of it off, but takes about {watts} itself, all day "
        "({source}): {energy} more in a season than leaving the supply plugged in."
    )
    if used < 0:
        text = _(
            "A timer between outlet and supply switches all of it off and takes about {watts} itself "
            "({source}): {energy} less in a season than leaving the supply plugged in."
        )
    said = text.format(watts=quantity(timer.value, "W"), source=_(timer.source), energy=kwh(abs(used)))
    if running.currency:
        said += " " + _("That is {money}.").format(
            money=money(running.paid(abs(used)).value, running.currency)
        )
    yield said
    if running.matter.outdoors:
        yield _("Outdoors the timer too must be made for outdoors, and sit where no rain reaches it.")
    yield _("Off for {hours} a day, the supply alone takes {energy} in a season.").format(
        hours=hours_text(off_h), energy=kwh(running.standby_w * off_h * running.season_days / 1000)
    )


def _built_in_timer(running: Running) -> Iterator[str]:
    if any(kind.came_with for _name, kind in running.matter.kinds):
        yield _(
            "A timer built into the strings' box goes with the box: with it cut off, the lights are on as "
            "long as the supply is."
        )
    yield _(
        "A timer built into a supply counts from the moment its button is pressed, and forgets it at a power "
        "cut. Use one or the other: behind a plug timer it would stay off until someone presses the button."
    )


def power_bank_section(running: Running) -> tuple[Section, ...]:
    """What a power bank does with these lights; nothing where its volts do not fit."""
    low_v, high_v = supplies.POWER_BANK_V
    if not low_v <= running.matter.project.supply.voltage <= high_v:
        return ()
    return (Section(anchor="power-bank", title=_("On a power bank"), points=tuple(_bank(running))),)


def _bank(running: Running) -> Iterator[str]:
    current, least = running.matter.solution.supply_a, supplies.POWER_BANK_LEAST_A
    text = _(
        "The lights draw {current}. Many power banks switch off by themselves under {least} ({source}): "
    )
    stays = _("these lights keep it on.") if current > least.value else _("these lights may not keep it on.")
    yield (
        text.format(current=quantity(current, "A"), least=quantity(least.value, "A"), source=_(least.source))
        + stays
    )
    if len(running.matter.runs) > 1:
        yield _("With one run taken off less is drawn: try it, for an hour, before you rely on it.")
    inside_wh = _BANK_AH * supplies.POWER_BANK_CELL_V.value * supplies.POWER_BANK_EFFICIENCY.value
    hours = inside_wh / (running.matter.solution.source_v * current)
    yield _(
        "One of {capacity} Ah ({volts}, {share} of it reaches the lights; typical, no single source) lasts "
        "about {hours}."
    ).format(
        capacity=number(_BANK_AH),
        volts=quantity(supplies.POWER_BANK_CELL_V.value, "V"),
        share=quantity(supplies.POWER_BANK_EFFICIENCY.value, "%"),
        hours=hours_text(float(f"{hours:.2g}")),
    )
    yield _("The fuse stays first in plus: a power bank gives more into a short than thin wire bears.")
    yield _(
        "Indoors or under a roof only, out of the sun and out of frost; never charge it while it feeds the "
        "lights unless its maker says so."
    )
