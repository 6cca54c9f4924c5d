"""If a reader's supply or string differs from the maker's: what to fit instead."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from guidegen.calc.preferred import is_preferred
from guidegen.choose.differing import Fit
from guidegen.guide.blocks import CalculationGroup, Column, Table
from guidegen.guide.format import NOTHING, fixed, listed, quantity, span
from guidegen.guide.matter import Matter
from guidegen.guide.predicted import Predicted
from guidegen.guide.steps.strings import identity_of
from guidegen.locale import _, ngettext
from guidegen.locale.numerals import with_unit

#: Behind an LED current that may pass the largest one in the worst case.
_OVER = "†"
#: A row of a table before its runs are known: what the reader reads, and what is fitted in every run.
_Row = tuple[str, tuple[Fit, ...]]


def differing_tables(matter: Matter, steps: Mapping[str, int]) -> tuple[CalculationGroup, ...]:
    """Up to two groups of tables: for another supply, and for strings whose LEDs differ.

    `steps`: the numbers of the steps, by their identities.  A group that has
    nothing to tell is left out.
    """
    groups = []
    if matter.supply_rows:
        groups.append(_supply(matter, steps["supply-volts"]))
    if matter.string_rows:
        names = [identity_of(matter, "bench-reading", name) for name in matter.string_rows]
        groups.append(_string(matter, [steps[name] for name in names]))
    return tuple(groups)


def _supply(matter: Matter, step: int) -> CalculationGroup:
    right = matter.supply_reads
    rows = [(_reading(row.supply_v, right if row.own else None), row.fits) for row in matter.supply_rows]
    return CalculationGroup(
        anchor="supply-differs",
        title=_("If your supply differs"),
        intro=_(
            "Only if step {step} reads outside its range. Then write what you read into the project file as "
            "the supply's volts and make the guide anew: labels, test points and readings change with it. "
            "Without the file this table tells what to fit: take the row next above what you read. The "
            "readings of this guide then no longer hold; judge by the columns here. Above the highest row do "
            "not use the supply; below the lowest its resistor does no harm, with less light. Each row is "
            "solved anew for all runs together: the smallest preferred value with which no run gets more "
            "current than in this build, rated so that a short makes it no hotter. All else stays as planned."
        ).format(step=step),
        calculations=(),
        tables=tuple(
            _tables(
                matter,
                _("Fit to your supply: {runs}"),
                _("Supply reads"),
                _("do not use this supply"),
                rows,
                range(len(matter.runs)),
            )
        ),
    )


def _string(matter: Matter, steps: list[int]) -> CalculationGroup:
    tables: list[Table] = []
    for name, found in matter.string_rows.items():
        power = matter.bench_powers[name]
        right = power.after_resistor_v
        rows = [(_reading(row.reading_v, right if row.own else None), row.fits) for row in found]
        runs = [index for index, run in enumerate(matter.runs) if run.string == name]
        title = _("“{string}” behind {ohm} reads").format(string=name, ohm=quantity(power.ohm, "Ω"))
        tables += _tables(
            matter, _("Fit to your string: {runs}"), title, _("do not use this string"), rows, runs
        )
    return CalculationGroup(
        anchor="string-differs",
        title=_("If your string differs"),
        intro=ngettext(
            "Only if step {steps} reads outside its range behind the test resistor, and a second string "
            "reads like the first. Then write the readings into the project file under “bench” and make "
            "the guide anew: labels, test points and readings change with it. Without the file this table "
            "tells what to fit: take the row next below what you read. The readings of this guide then no "
            "longer hold; judge by the columns here. A reading beyond the table means another kind of "
            "string: work it out from a project file of your own. Supply, number of bulbs and wire are "
            "this build's.",
            "Only if one of steps {steps} reads outside its range behind the test resistor, and a second "
            "string reads like the first. Then write the readings into the project file under “bench” and "
            "make the guide anew: labels, test points and readings change with it. Without the file these "
            "tables tell what to fit: take the row next below what you read. The readings of this guide "
            "then no longer hold; judge by the columns here. A reading beyond the table means another "
            "kind of string: work it out from a project file of your own. Supply, number of bulbs and "
            "wire are this build's.",
            len(steps),
        ).format(steps=listed([str(step) for step in steps])),
        calculations=(),
        tables=tuple(tables),
    )


def _reading(volts: float, right: Predicted | None) -> str:
    """What is read: of this build's own row all that its step calls right."""
    if right is None:
        return _volts(volts)
    return _("{range}: this build").format(range=span(right.low, right.high, "V"))


def _volts(volts: float) -> str:
    return with_unit(fixed(volts, 2), "V")


def _tables(
    matter: Matter, caption: str, title: str, refusal: str, rows: list[_Row], runs: list[int] | range
) -> Iterator[Table]:
    """A table for every run; runs in which all rows read alike share one.

    `title`: of the readings; `refusal`: in rows for which nothing fits.
    """
    by_cells: dict[tuple[tuple[str, ...], ...], list[int]] = {}
    for index in runs:
        cells = tuple((reading, *_cells(fits[index], refusal)) for reading, fits in rows)
        by_cells.setdefault(cells, []).append(index)
    for cells, alike in by_cells.items():
        yield Table(
            caption=caption.format(runs=listed([matter.runs[index].name for index in alike])),
            columns=(
                Column(title, numeric=True),
                Column(_("Fit a resistor of"), numeric=True),
                Column(_("rated for"), numeric=True),
                Column(_("Mean LED current"), numeric=True),
                Column(_("Heat in the resistor"), numeric=True),
                Column(_("Volts behind it"), numeric=True),
            ),
            rows=cells,
            note=_note(matter, [fits[alike[0]] for _reading, fits in rows], alike[0]),
        )


def _cells(fit: Fit, refusal: str) -> tuple[str, ...]:
    if fit.enough and not fit.usable:
        return (refusal, NOTHING, NOTHING, NOTHING, NOTHING)
    if not fit.enough:
        return (_("too few volts"), NOTHING, quantity(fit.led_a, "A"), NOTHING, NOTHING)
    led = quantity(fit.led_a, "A")
    return (
        quantity(fit.resistor_ohm, "Ω") if fit.resistor_ohm else _("none"),
        quantity(fit.rating_w, "W") if fit.rating_w and fit.resistor_ohm else NOTHING,
        led if fit.led_within else f"{led} {_OVER}",
        quantity(fit.running_w, "W") if fit.resistor_ohm else NOTHING,
        _volts(fit.after_resistor_v),
    )


def _note(matter: Matter, fits: list[Fit], index: int) -> str:
    """What the signs of a table mean, and where the build itself has another resistor than its row."""
    run = matter.runs[index]
    sentences = []
    if any(not fit.enough for fit in fits):
        sentences.append(
            _("Too few volts: the lights would be far dimmer than planned, whatever resistor is fitted.")
        )
    if any(fit.enough and fit.usable and not fit.led_within for fit in fits):
        text = _(
            "{sign} In the worst case more than the largest LED current of {limit}: take a larger resistor."
        )
        sentences.append(text.format(sign=_OVER, limit=quantity(run.led_limit.current_a, "A")))
    if any(fit.enough and not fit.usable for fit in fits):
        sentences.append(
            _("Do not use: no resistor on sale keeps the lights, the wires and itself from harm there.")
        )
    if not run.resistor.fitted and any(fit.usable and fit.enough and fit.resistor_ohm for fit in fits):
        sentences.append(
            _(
                "A run planned without a resistor gets one from the + common connector to its + wire, "
                "in the box."
            )
        )
    if run.resistor.fitted and not is_preferred(run.series, run.resistor.ohm):
        text = _("The build itself has {ohm}; the other rows keep to values of {series}.")
        sentences.append(text.format(ohm=quantity(run.resistor.ohm, "Ω"), series=run.series))
    return " ".join(sentences)
