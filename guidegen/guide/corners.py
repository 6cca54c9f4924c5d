"""Worst cases: which quantity, at which corner, and what it comes to."""

from __future__ import annotations

from guidegen.guide.blocks import Column, Table
from guidegen.guide.format import fixed, percent, quantity
from guidegen.guide.matter import Matter
from guidegen.locale import _


def corners_table(matter: Matter) -> Table:
    """One row a quantity and run."""
    rows = [_load_row(matter)]
    for index in range(len(matter.runs)):
        rows += _run_rows(matter, index)
    return Table(
        caption=_("Each quantity at its own worst corner"),
        columns=(
            Column(_("Quantity")),
            Column(_("Corner")),
            Column(_("Planned"), numeric=True),
            Column(_("Worst"), numeric=True),
            Column(_("Limit"), numeric=True),
        ),
        rows=tuple(rows),
        note=_limits_note(matter)
        + " "
        + _(
            "A corner takes every part at the end of its tolerance that makes the quantity worst. Both the "
            "coldest and the warmest air of the place are solved, and the worse one counts."
        ),
    )


def _limits_note(matter: Matter) -> str:
    """Where the largest current of one LED is from, run by run."""
    sources = {
        "stated": _("as the project file states it"),
        "cells": _("what fresh cells in its own box drive through it"),
        "assumed": _("an assumption, since nothing is stated"),
    }
    return " ".join(
        _("Limit of one LED of “{name}”: {source}.").format(
            name=name, source=sources[matter.runs[matter.first_run_of(name)].led_limit.source]
        )
        for name, _kind in matter.kinds
    )


def _most() -> str:
    return _("supply high; resistor, wires and LED volts low")


def _least() -> str:
    return _("supply low; resistor and wires high")


def _load_row(matter: Matter) -> tuple[str, ...]:
    return (
        _("Load of the supply"),
        _most(),
        percent(matter.solution.load),
        percent(matter.solved.margins.load),
        percent(1.0),
    )


def _run_rows(matter: Matter, index: int) -> list[tuple[str, ...]]:
    run, solved = matter.runs[index], matter.solution.runs[index]
    worst = matter.solved.margins.runs[index]
    name = run.name
    rows: list[tuple[str, ...]] = [
        (
            _("{run}: current").format(run=name),
            _most(),
            quantity(solved.current_a, "A"),
            quantity(worst.current_max_a, "A"),
            quantity(matter.arrangement.fuse.rating_a or 0.0, "A"),
        ),
        (
            _("{run}: mean LED of the brightest bulb").format(run=name),
            _most(),
            quantity(float(solved.led_a.max()), "A"),
            quantity(worst.led_max_a, "A"),
            quantity(run.led_limit.current_a, "A"),
        ),
        (
            _("{run}: one LED with low volts among nominal ones").format(run=name),
            _("all parts as planned, one LED low"),
            quantity(float(solved.led_a.max()), "A"),
            quantity(worst.low_led_a, "A"),
            quantity(run.led_limit.current_a, "A"),
        ),
        (
            _("{run}: light of the dimmest bulb").format(run=name),
            _least(),
            fixed(float(solved.light[solved.lit].min(initial=1.0)), 2),
            fixed(worst.last_light_low, 2),
            _("none"),
        ),
    ]
    if run.resistor.fitted:
        rows.insert(1, _resistor_row(matter, index))
    return rows


def _resistor_row(matter: Matter, index: int) -> tuple[str, ...]:
    run = matter.runs[index]
    return (
        _("{run}: watts in the resistor").format(run=run.name),
        _most(),
        quantity(matter.solution.runs[index].resistor_w, "W"),
        quantity(matter.solved.margins.runs[index].resistor_w, "W"),
        quantity(run.resistor.rating_w or 0.0, "W"),
    )
