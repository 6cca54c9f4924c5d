"""The LEDs: their curve, and its volts at the solved current."""

from __future__ import annotations

from guidegen.calc.led import group_voltage_v, led_voltage_v
from guidegen.calc.worked import work
from guidegen.circuit.arrangement import LedEstimate, RunPlan
from guidegen.guide.blocks import Calculation, CalculationGroup, Column, Table
from guidegen.guide.format import NOTHING, listed, quantity
from guidegen.guide.matter import Matter
from guidegen.guide.worked import calculation
from guidegen.locale import N_, _

_PARAMETERS = {
    "voltage": N_("volts"),
    "slope": N_("slope"),
    "resistance": N_("resistance"),
}


def led_sums(matter: Matter) -> CalculationGroup:
    """Volts of one LED, and of a group, in every run at its mean current."""
    calculations = []
    for index, run in enumerate(matter.runs):
        current_a = matter.solution.runs[index].mean_led_a
        if current_a > 0:
            calculations.append(_one_led(run, current_a))
            if run.leds_in_series > 1 or run.group_ohm > 0:
                calculations.append(_group(run, current_a))
    return CalculationGroup(
        anchor="leds",
        title=_("LEDs"),
        intro=_(
            "An LED takes hardly any current below a certain voltage and a lot above it. Its curve has three "
            "numbers: the volts at one current, the slope, and a resistance."
        ),
        calculations=tuple(calculations),
        tables=(_curves(matter),),
    )


def _one_led(run: RunPlan, current_a: float) -> Calculation:
    curve = run.led.curve
    worked = work(
        led_voltage_v,
        current_a=current_a,
        slope_v=curve.slope_v,
        saturation_a=curve.saturation_a,
        resistance_ohm=curve.resistance_ohm,
    )
    return calculation(
        worked,
        _("{run}: volts of one LED at the run's mean LED current").format(run=run.name),
        _("The saturation current is the one with which the curve passes through its known point."),
    )


def _group(run: RunPlan, current_a: float) -> Calculation:
    curve = run.led.curve
    worked = work(
        group_voltage_v,
        current_a=current_a,
        series=float(run.leds_in_series),
        slope_v=curve.slope_v,
        saturation_a=curve.saturation_a,
        resistance_ohm=curve.resistance_ohm,
        group_ohm=run.group_ohm,
    )
    return calculation(worked, _("{run}: volts of one bulb at that current").format(run=run.name))


def _curves(matter: Matter) -> Table:
    return Table(
        caption=_("LED curves used"),
        columns=(
            Column(_("String")),
            Column(_("From")),
            Column(_("Volts"), numeric=True),
            Column(_("at"), numeric=True),
            Column(_("Slope"), numeric=True),
            Column(_("Resistance"), numeric=True),
            Column(_("Volts lie between"), numeric=True),
        ),
        rows=tuple(_curve_row(name, matter.study.leds[name]) for name, _kind in matter.kinds),
        note=_("Slope: volts that multiply the current by 2.718."),
    )


def _curve_row(name: str, led: LedEstimate) -> tuple[str, ...]:
    curve = led.curve
    return (
        name,
        _source(led),
        quantity(curve.voltage_v, "V", 4),
        quantity(curve.current_a, "A"),
        quantity(curve.slope_v, "V"),
        quantity(curve.resistance_ohm, "Ω"),
        f"{quantity(led.voltage_low_v, 'V')} … {quantity(led.voltage_high_v, 'V')}",
    )


def _source(led: LedEstimate) -> str:
    if led.source == "bench":
        fitted = listed([_(_PARAMETERS.get(each, each)) for each in led.fitted]) or NOTHING
        return _("bench readings; fitted: {fitted}; the rest typical").format(fitted=fitted)
    if led.source == "given":
        return _("as given in the project file")
    text = _("typical {colour}, from one public table and common experience")
    return text.format(colour=_(led.colour or "white"))
