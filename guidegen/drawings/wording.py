"""What the schematic says in words: captions and text equivalents."""

from __future__ import annotations

from guidegen.circuit.arrangement import Arrangement, Feed, RunPlan
from guidegen.circuit.points import TestPoint
from guidegen.drawings.layout import Row, Sheet
from guidegen.locale import _, ngettext
from guidegen.locale.numerals import fixed, general, with_unit
from guidegen.parts.wires import FUSE, LEAD, extra_reference, feeder_reference, resistor_reference


def feed_words(feed: Feed) -> str:
    """How a run is fed, to follow its number of bulbs."""
    return {
        "one end": _("fed at one end"),
        "middle": _("fed in the middle"),
        "both ends": _("fed at both ends"),
        "opposite ends": _("fed at opposite ends"),
    }[feed]


def sheet_caption(sheet: Sheet) -> str:
    """The caption of a figure of the schematic."""
    first, last = sheet.rows[0].index + 1, sheet.rows[-1].index + 1
    if sheet.of == 1:
        return _("How everything is wired, with the volts to expect at every test point")
    return _("How runs {first} to {last} are wired (figure {number} of {of})").format(
        first=first, last=last, number=sheet.number, of=sheet.of
    )


def sheet_alt(
    sheet: Sheet, arrangement: Arrangement, points: tuple[TestPoint, ...], volts: dict[int, float]
) -> str:
    """The figure in words: every connection, then the volts at every test point."""
    sentences = [_supply_words(arrangement), *(_row_words(row) for row in sheet.rows)]
    shown = {row.index for row in sheet.rows} | {None}
    readings = [
        f"{point.label} {with_unit(fixed(volts[point.number], 2), 'V')}"
        for point in points
        if point.run in shown
    ]
    if readings:
        sentences.append(_("Test points: {readings}.").format(readings=", ".join(readings)))
    return " ".join(sentences)


def _supply_words(arrangement: Arrangement) -> str:
    """The supply and what all runs share."""
    volts = general(arrangement.supply.voltage_v, 4)
    if arrangement.supply.lead is None:
        sentence = _("The supply of {volts} V feeds, through fuse {fuse} in +, every run.")
    else:
        sentence = _(
            "The supply of {volts} V feeds, through fuse {fuse} in + and then lead {lead}, every run."
        )
    return sentence.format(volts=volts, fuse=FUSE, lead=LEAD)


def _row_words(row: Row) -> str:
    """One run: its path from the supply, then its feed."""
    run = row.run
    path = []
    if run.resistor.fitted:
        part = _("resistor {reference} of {ohm} Ω in +")
        path.append(part.format(reference=resistor_reference(row.index), ohm=general(run.resistor.ohm, 4)))
    if run.feeder is not None:
        path.append(_("feeder {reference}").format(reference=feeder_reference(row.index)))
    count = ngettext("{count} bulb", "{count} bulbs", run.bulbs).format(count=run.bulbs)
    head = _("Run {number}, {name}: {parts}.").format(
        number=row.index + 1, name=run.name, parts=", ".join([*path, count])
    )
    return f"{head} {_feed_sentence(row.index, run)}"


def _feed_sentence(index: int, run: RunPlan) -> str:
    """Where each conductor of the run is joined, and which ends stay free."""
    sentence = {
        "one end": _(
            "+ and − are joined to the string before bulb 1; both ends behind bulb {last} are capped."
        ),
        "middle": _(
            "The extra pair {extra} takes + and − to bulb {fed}; "
            "both ends before bulb 1 and both behind bulb {last} are capped."
        ),
        "both ends": _(
            "+ and − are joined to the string before bulb 1, "
            "and the extra pair {extra} joins the same point to bulb {last}."
        ),
        "opposite ends": _(
            "+ is joined to the string before bulb 1; "
            "− leaves from bulb {last} through the extra wire {extra}; "
            "the string's − before bulb 1 and its + behind bulb {last} are capped."
        ),
    }[run.feed]
    return sentence.format(extra=extra_reference(index), fed=run.fed_bulb, last=run.bulbs)
