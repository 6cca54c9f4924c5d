"""If a reader's supply or string differs from the maker's: what to fit instead."""

from __future__ import annotations

from collections.abc import Iterator

from guidegen.choose.differing import Fit, string_table, supply_table
from guidegen.guide.blocks import CalculationGroup, Column, Table
from guidegen.guide.format import NOTHING, fixed, listed, quantity
from guidegen.guide.matter import Matter
from guidegen.locale import _
from guidegen.locale.numerals import with_unit

#: Behind an LED current that may pass the largest one in the worst case.
_OVER = "†"
#: A row of a table before its runs are known: what the reader reads, and what is fitted in every run.
_Row = tuple[str, tuple[Fit, ...]]


def differing_tables(matter: Matter) -> tuple[CalculationGroup, ...]:
    """Two groups of tables: for another supply, and for strings whose LEDs differ."""
    return _supply(matter), _string(matter)


def _supply(matter: Matter) -> CalculationGroup:
    arrangement = matter.arrangement
    own_v = arrangement.supply.voltage_v
    found = supply_table(arrangement, matter.solution, matter.project.goals.resistor_load)
    rows = [(_reading(row.supply_v, own=row.supply_v == own_v), row.fits) for row in found]
    return CalculationGroup(
        anchor="supply-differs",
        title=_("If your supply differs"),
        intro=_(
            "Measure your supply with nothing connected, find the row next above what it reads, and fit "
            "that resistor. Each row is solved anew for all runs together: the smallest preferred value with "
            "which no run gets more current than in this build. Everything else stays as planned, the type "
            "and rating of the supply too; what the safety page says of the supply holds for yours."
        ),
        calculations=(),
        tables=tuple(
            _tables(matter, _("Fit to your supply: {runs}"), _("Supply reads"), rows, range(len(matter.runs)))
        ),
    )


def _string(matter: Matter) -> CalculationGroup:
    tables: list[Table] = []
    for name, kind in matter.kinds:
        test_ohm = matter.bench_powers[name].ohm
        found = string_table(
            matter.arrangement,
            matter.solution,
            matter.project.goals.resistor_load,
            name,
            kind,
            test_ohm,
        )
        rows = [(_reading(row.reading_v, own=row.difference_v == 0), row.fits) for row in found]
        runs = [index for index, run in enumerate(matter.runs) if run.string == name]
        title = _("“{string}” behind {ohm} reads").format(string=name, ohm=quantity(test_ohm, "Ω"))
        tables += _tables(matter, _("Fit to your string: {runs}"), title, rows, runs)
    return CalculationGroup(
        anchor="string-differs",
        title=_("If your string differs"),
        intro=_(
            "In the bench test one whole string stands uncut on the supply behind a test resistor. What you "
            "read behind that resistor tells the volts of your LEDs: find the row next below it and fit that "
            "resistor. The supply is this build's; if yours reads otherwise, the reading shifts with it. The "
            "number of bulbs, their LEDs and the wire are taken to be the same. A reading outside the table "
            "means another kind of string: work it out from a project file of your own."
        ),
        calculations=(),
        tables=tuple(tables),
    )


def _reading(volts: float, *, own: bool) -> str:
    text = _volts(volts)
    return _("{volts}, this build").format(volts=text) if own else text


def _volts(volts: float) -> str:
    return with_unit(fixed(volts, 2), "V")


def _tables(
    matter: Matter, caption: str, title: str, rows: list[_Row], runs: list[int] | range
) -> Iterator[Table]:
    """A table for every run; runs in which all rows read alike share one.  `title`: of the readings."""
    by_cells: dict[tuple[tuple[str, ...], ...], list[int]] = {}
    for index in runs:
        cells = tuple((reading, *_cells(fits[index])) for reading, fits in rows)
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


def _cells(fit: Fit) -> tuple[str, ...]:
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
    if any(fit.enough and not fit.led_within for fit in fits):
        text = _(
            "{sign} In the worst case more than the largest LED current of {limit}: take a larger resistor."
        )
        sentences.append(text.format(sign=_OVER, limit=quantity(run.led_limit.current_a, "A")))
    own_ohm = run.resistor.ohm
    if run.resistor.fitted and all(abs(fit.resistor_ohm - own_ohm) > 1e-9 * own_ohm for fit in fits):
        text = _("The build itself has {ohm}; the table keeps to values of {series}.")
        sentences.append(text.format(ohm=quantity(own_ohm, "Ω"), series=run.series))
    return " ".join(sentences)
