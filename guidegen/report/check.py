"""`check` as text: the verdict, refusals first, the other findings by level, a few figures."""

from __future__ import annotations

import sys
from collections.abc import Iterable, Iterator

from guidegen.circuit.arrangement import RunPlan
from guidegen.circuit.solution import RunSolution
from guidegen.locale import _, ngettext, speaking_language
from guidegen.report.terminal import for_terminal
from guidegen.safety.amounts import shown
from guidegen.safety.findings import LEVELS
from guidegen.safety.keys import place_of
from guidegen.safety.words import CautionText, described
from guidegen.study import Solved, Study

_INDENT = "  "


def check_text(study: Study, encoding: str | None = None) -> str:
    """What `check` prints, in characters of `encoding` (None: that of standard output)."""
    stated = encoding or getattr(sys.stdout, "encoding", None)
    with speaking_language(study.project.language):
        return for_terminal("\n".join(_lines(study)), stated) + "\n"


def _lines(study: Study) -> Iterator[str]:
    yield study.project.title
    yield verdict(study)
    cautions = described(study.findings)
    for level in LEVELS:
        group = [caution for caution in cautions if caution.level == level]
        if group:
            yield ""
            yield from _refusals(group, study) if level == "refusal" else _remarks(group)
    if study.solved is not None:
        yield ""
        yield from _figures(study.solved)
        if study.as_built is not None or study.next_readings:
            from guidegen.report.readings import told_readings  # noqa: PLC0415 - few projects need it

            yield from told_readings(study)
    if study.refused:
        yield ""
        yield verdict(study)


def verdict(study: Study) -> str:
    """Whether a guide may be written, in one sentence; points are counted as they are listed, by rule."""
    rules = {finding.rule for finding in study.findings}
    if study.refused:
        stops = {finding.rule for finding in study.findings if finding.level == "refusal"}
        return ngettext(
            "Refused: no guide is written for this project until the point under STOP is mended.",
            "Refused: no guide is written for this project until the points under STOP are mended.",
            len(stops),
        )
    if not rules:
        return _("No rule refuses this project.")
    return ngettext(
        "No rule refuses this project; {count} point to mind.",
        "No rule refuses this project; {count} points to mind.",
        len(rules),
    ).format(count=len(rules))


def _refusals(cautions: Iterable[CautionText], study: Study) -> Iterator[str]:
    """Refusals in full: what, where in the file, why, and what to do instead."""
    for caution in cautions:
        yield f"{caution.signal_word}: {caution.title} [{caution.rule}]"
        yield from (_INDENT + place for place in _places(caution.rule, study))
        yield _INDENT + caution.hazard
        yield _INDENT + _("Why: {reason}").format(reason=caution.reason)
        yield _INDENT + _("Source: {source}").format(source=caution.source)
        for number, sentence in enumerate(caution.avoid):
            yield _INDENT + (_("Instead: {advice}").format(advice=sentence) if number == 0 else sentence)


def _places(rule: str, study: Study) -> Iterator[str]:
    """Where in the project file the findings of a rule have their cause, each place once."""
    places = [place_of(finding, study.file) for finding in study.findings if finding.rule == rule]
    return (place for place in dict.fromkeys(places) if place)


def _remarks(cautions: list[CautionText]) -> Iterator[str]:
    """Findings of one level: what, what can happen, what to do."""
    yield cautions[0].signal_word
    for caution in cautions:
        yield f"{_INDENT}{caution.title} [{caution.rule}]"
        yield _INDENT * 2 + " ".join(filter(None, (caution.hazard, caution.consequence)))
        yield _INDENT * 2 + " ".join(caution.avoid)


def _figures(solved: Solved) -> Iterator[str]:
    yield _("Figures")
    for plan, run in zip(solved.arrangement.runs, solved.solution.runs, strict=True):
        yield _INDENT + _run(plan, run)
    supply = shown(
        {
            "current_a": solved.solution.supply_a,
            "load_percent": solved.solution.load,
            "worst_percent": solved.margins.load,
        }
    )
    line = _("supply: {current_a}, {load_percent} of its rating, {worst_percent} in the worst case")
    yield _INDENT + line.format(**supply)
    yield _INDENT + _fuse(solved)
    evenness = shown({"evenness_ratio": solved.solution.evenness})["evenness_ratio"]
    yield _INDENT + _("all bulbs: evenness {evenness}").format(evenness=evenness)


def _run(plan: RunPlan, run: RunSolution) -> str:
    ohm = shown({"resistor_ohm": plan.resistor.ohm})["resistor_ohm"] if plan.resistor.fitted else None
    figures = {"current_a": run.current_a, "led_a": run.mean_led_a, "evenness_ratio": run.evenness}
    line = _("{name}: {resistor}, {current_a}, {led_a} in an LED, evenness {evenness_ratio}")
    return line.format(name=plan.name, resistor=ohm or _("no resistor"), **shown(figures))


def _fuse(solved: Solved) -> str:
    values = shown({"fuse_a": solved.arrangement.fuse.rating_a, "open_a": solved.protection.must_open_a})
    return _("fuse: {fuse_a}, sure to open at {open_a}").format(**values)
