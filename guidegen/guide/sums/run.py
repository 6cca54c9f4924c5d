"""One run: volts behind its resistor, watts, heat, Kirchhoff's laws, evenness."""

from __future__ import annotations

from guidegen.calc.light import evenness_of, seen_evenness
from guidegen.calc.resistor import (
    body_degc,
    hottest_rise_k,
    lower_ohm,
    rating_needed_w,
    running_w,
    shorted_w,
    upper_ohm,
)
from guidegen.calc.supply import current_through_a, voltage_after_v
from guidegen.calc.worked import work
from guidegen.choose.aims import led_goal_a
from guidegen.guide.blocks import Calculation, CalculationGroup
from guidegen.guide.format import quantity
from guidegen.guide.kirchhoff import loop_calculation, node_calculation
from guidegen.guide.matter import Matter
from guidegen.guide.worked import calculation
from guidegen.locale import _
from guidegen.tables.limits import HOT_SURFACE_DEGC, TOUCH_CERAMIC_DEGC, TOUCH_METAL_DEGC


def run_sums(matter: Matter, index: int) -> CalculationGroup:
    """Everything about run `index`."""
    run, solved = matter.runs[index], matter.solution.runs[index]
    calculations: list[Calculation] = []
    if run.resistor.fitted:
        calculations += [*_resistor(matter, index), *_ratings(matter, index)]
    if solved.lit.any():
        calculations += [
            loop_calculation(matter, index),
            node_calculation(matter, index),
            *_light(matter, index),
        ]
    return CalculationGroup(
        anchor=f"run-{index + 1}",
        title=_("Run {number}: {name}").format(number=index + 1, name=run.name),
        intro=_(
            "The currents of all bulbs hang together, so they were solved at once. Here each result is put "
            "back into the law it has to obey."
        ),
        calculations=tuple(calculations),
    )


def _resistor(matter: Matter, index: int) -> list[Calculation]:
    run, solution = matter.runs[index], matter.solution
    solved, ohm = solution.runs[index], run.resistor.ohm
    after = work(voltage_after_v, voltage_v=solution.bus_v, current_a=solved.current_a, resistance_ohm=ohm)
    back = work(current_through_a, voltage_v=solution.bus_v, after_v=after.value, resistance_ohm=ohm)
    return [
        calculation(after, _("Volts behind the resistor"), _after_note(matter, index)),
        calculation(
            back,
            _("Current, from the volts across the resistor"),
            _("This is how to read the current with a voltmeter."),
        ),
        calculation(
            work(running_w, current_a=solved.current_a, resistance_ohm=ohm),
            _("Watts in the resistor, running"),
        ),
    ]


def _after_note(matter: Matter, index: int) -> str:
    """Where the volts ahead come from, and how the resistor was chosen if it was."""
    run = matter.runs[index]
    ahead = _("The volts ahead of it are those where the runs branch.")
    if not run.resistor.chosen:
        return ahead
    kind = matter.project.strings[run.string]
    goal_a = led_goal_a(matter.project, kind, run.led_limit.current_a)
    chosen = _(
        "The resistor was chosen: the smallest {series} value at which the mean LED gets no more than {goal}."
    )
    return f"{ahead} {chosen.format(series=run.series, goal=quantity(goal_a, 'A'))}"


def _ratings(matter: Matter, index: int) -> list[Calculation]:
    resistor, worst = matter.runs[index].resistor, matter.solved.margins.runs[index]
    low = work(lower_ohm, resistance_ohm=resistor.ohm, tolerance=resistor.tolerance)
    high = work(upper_ohm, resistance_ohm=resistor.ohm, tolerance=resistor.tolerance)
    supply = matter.arrangement.supply
    running = matter.solution.runs[index].resistor_w
    needed = work(rating_needed_w, power_w=running, load=matter.project.goals.resistor_load)
    shorted = work(shorted_w, upper_voltage_v=supply.upper_v, lower_ohm=low.value)
    return [
        calculation(low),
        calculation(high),
        calculation(
            work(running_w, current_a=worst.current_max_a, resistance_ohm=low.value),
            _("Watts in the resistor, worst case"),
        ),
        calculation(shorted, note=_short_note(matter, index)),
        calculation(
            needed,
            note=_("Chosen: {rating}.").format(rating=quantity(resistor.rating_w or 0.0, "W")),
        ),
        *(
            _heat(matter, index, power_w, title)
            for power_w, title in (
                (running, _("Surface of the resistor, running in the warmest air")),
                (shorted.value, _("Surface of the resistor with the run shorted")),
            )
        ),
    ]


def _short_note(matter: Matter, index: int) -> str:
    if matter.solved.protection.sure_everywhere(index):
        return _(
            "The fuse must open on such a short, if the supply gives the current, so this does not last."
        )
    if matter.solved.protection.sure_after_resistor[index]:
        return _(
            "The fuse must open on such a short, but not on one at the far end: see “What a short brings”."
        )
    return _("The fuse need not open on such a short, so the rating has to bear it for good.")


def _heat(matter: Matter, index: int, power_w: float, title: str) -> Calculation:
    resistor = matter.runs[index].resistor
    worked = work(
        body_degc,
        ambient_degc=matter.arrangement.warmest_c,
        rise_at_rating_k=hottest_rise_k(resistor.kind),
        power_w=power_w,
        rating_w=resistor.rating_w or power_w,
    )
    return calculation(worked, title, _touch_note(worked.value))


def _touch_note(surface_c: float) -> str:
    """What a surface does to skin; the thresholds are those of a touch of one second."""
    if surface_c > TOUCH_METAL_DEGC.value:
        words = _("Hot enough to burn: bare metal burns from {metal}, ceramics from {ceramic} ({source}).")
    elif surface_c > HOT_SURFACE_DEGC.value:
        words = _("Hot: over {hot}, so it gets a caution and stays clear of plastic, glue and foam.")
    else:
        return ""
    return words.format(
        metal=quantity(TOUCH_METAL_DEGC.value, "°C"),
        ceramic=quantity(TOUCH_CERAMIC_DEGC.value, "°C"),
        hot=quantity(HOT_SURFACE_DEGC.value, "°C"),
        source=_(TOUCH_METAL_DEGC.source),
    )


def _light(matter: Matter, index: int) -> list[Calculation]:
    solved = matter.solution.runs[index]
    light = solved.light[solved.lit]
    even = work(evenness_of, dimmest=float(light.min()), brightest=float(light.max()))
    return [
        calculation(even, _("Evenness of this run")),
        calculation(
            work(seen_evenness, even=even.value),
            note=_("An estimate of what the eye makes of it, not a measured figure."),
        ),
    ]
