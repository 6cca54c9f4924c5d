"""The solved figures as JSON and as text."""

from __future__ import annotations

import json
from typing import Any

from guidegen.circuit.arrangement import LedEstimate, RunPlan
from guidegen.circuit.solution import RunMargins, RunSolution
from guidegen.locale import N_, _, ngettext, speaking_language
from guidegen.locale.numerals import fixed
from guidegen.report.amounts import amount, percent
from guidegen.report.readings import diagnosis_json, readings_json, readings_lines
from guidegen.safety.words import text
from guidegen.study import Solved, Study

#: Levels of findings as a person reads them.
_LEVELS = {
    "refusal": N_("refusal"),
    "danger": N_("danger"),
    "warning": N_("warning"),
    "caution": N_("caution"),
    "notice": N_("notice"),
}


def figures_json(study: Study) -> str:
    """The figures as JSON text, SI units in the keys; stable order, no rounding."""
    return json.dumps(figures(study), indent=2, ensure_ascii=True, allow_nan=False)


def figures(study: Study) -> dict[str, Any]:
    """The figures as plain data; findings only after a hazard refusal."""
    with speaking_language(study.project.language):
        return _figures(study)


def _figures(study: Study) -> dict[str, Any]:
    findings = [
        {"level": finding.level, "rule": finding.rule, "text": text(finding)} for finding in study.findings
    ]
    if study.solved is None:
        return {"runs": [], "fuse_a": None, "findings": findings}
    solved = study.solved
    return {
        "supply": {
            "current_a": solved.solution.supply_a,
            "power_w": solved.solution.power_w,
            "load": solved.solution.load,
            "load_worst": solved.margins.load,
        },
        "evenness": solved.solution.evenness,
        "meets_goals": study.meets_goals,
        "strings": {name: {"led": _led(estimate)} for name, estimate in study.leds.items()},
        "runs": [
            _run(*parts)
            for parts in zip(solved.arrangement.runs, solved.solution.runs, solved.margins.runs, strict=True)
        ],
        "fuse_a": solved.arrangement.fuse.rating_a,
        "readings": readings_json(study),
        **diagnosis_json(study),
        "findings": findings,
    }


def _led(estimate: LedEstimate) -> dict[str, Any]:
    curve = estimate.curve
    return {
        "voltage_v": curve.voltage_v,
        "current_a": curve.current_a,
        "slope_v": curve.slope_v,
        "resistance_ohm": curve.resistance_ohm,
        "source": estimate.source,
        "fitted": list(estimate.fitted),
    }


def _run(plan: RunPlan, run: RunSolution, worst: RunMargins) -> dict[str, Any]:
    return {
        "name": run.name,
        "feed": plan.feed,
        "resistor_ohm": plan.resistor.ohm,
        "resistor_rating_w": plan.resistor.rating_w,
        "current_a": run.current_a,
        "after_resistor_v": run.after_resistor_v,
        "resistor_w": {"running": run.resistor_w, "worst": worst.resistor_w, "shorted": worst.shorted_w},
        "evenness": run.evenness,
        "seen_evenness": run.seen_evenness,
        "led_current_a": run.mean_led_a,
        "bulbs": [_bulb(plan, run, index) for index in range(plan.bulbs)],
    }


def _bulb(plan: RunPlan, run: RunSolution, index: int) -> dict[str, Any]:
    return {
        "bulb": index + 1,
        "lit": bool(run.lit[index]),
        "position_m": float(plan.position_m[index]),
        "voltage_v": float(run.bulb_v[index]),
        "current_a": float(run.bulb_a[index]),
        "led_current_a": float(run.led_a[index]),
        "light": float(run.light[index]),
    }


def figures_text(study: Study) -> str:
    """The figures for a person at a terminal."""
    with speaking_language(study.project.language):
        return "\n".join(_lines(study)).rstrip() + "\n"


def _lines(study: Study) -> list[str]:
    lines = [study.project.title, ""]
    if study.solved is not None:
        lines += [*_installation_lines(study, study.solved), ""]
        for parts in zip(
            study.solved.arrangement.runs, study.solved.solution.runs, study.solved.margins.runs, strict=True
        ):
            lines += [*_run_lines(*parts), ""]
        lines += [*readings_lines(study), ""]
    return lines + [
        f"{_(_LEVELS[finding.level])}: {text(finding)} [{finding.rule}]" for finding in study.findings
    ]


def _installation_lines(study: Study, solved: Solved) -> list[str]:
    solution, fuse_a = solved.solution, solved.arrangement.fuse.rating_a or 0.0
    return [
        _("Supply: {current}, {power}, {load} of its rating ({worst} at worst); fuse {fuse}").format(
            current=amount(solution.supply_a, "A"),
            power=amount(solution.power_w, "W"),
            load=percent(solution.load),
            worst=percent(solved.margins.load),
            fuse=amount(fuse_a, "A"),
        ),
        _("Evenness of the whole installation: {evenness}; goals met: {met}").format(
            evenness=fixed(solution.evenness, 2), met=_("yes") if study.meets_goals else _("no")
        ),
    ]


def _run_lines(plan: RunPlan, run: RunSolution, worst: RunMargins) -> list[str]:
    head = ngettext(
        "{name}: {bulbs} bulb, fed at {feed}", "{name}: {bulbs} bulbs, fed at {feed}", plan.bulbs
    ).format(name=run.name, bulbs=plan.bulbs, feed=_(plan.feed))
    values = _("  resistor {ohm}, {current}, {volts} behind it; mean LED {led}; evenness {evenness}").format(
        ohm=amount(plan.resistor.ohm, "ohm"),
        current=amount(run.current_a, "A"),
        volts=amount(run.after_resistor_v, "V"),
        led=amount(run.mean_led_a, "A"),
        evenness=fixed(run.evenness, 2),
    )
    watts = _("  resistor watts: {running} running, {worst} at worst, {shorted} with the run shorted").format(
        running=amount(run.resistor_w, "W"),
        worst=amount(worst.resistor_w, "W"),
        shorted=amount(worst.shorted_w, "W"),
    )
    header = "  " + " ".join(
        [f"{_('bulb'):>5}", f"{_('metres'):>8}", f"{_('volts'):>8}", f"{_('LED mA'):>8}", f"{_('light'):>6}"]
    )
    rows = [
        f"  {index + 1:>5} {fixed(plan.position_m[index], 2):>8} {fixed(run.bulb_v[index], 3):>8} "
        f"{fixed(run.led_a[index] * 1e3, 2):>8} {fixed(run.light[index], 2):>6}"
        for index in range(plan.bulbs)
    ]
    return [head, values, watts, header, *rows]
