"""The cut list in words: every piece with length, colour, ends and label, and totals with a reserve."""

from __future__ import annotations

from collections.abc import Iterator

from guidegen.guide.blocks import Column, Table
from guidegen.guide.format import NOTHING, percent, quantity
from guidegen.guide.matter import Matter
from guidegen.guide.steps.supply_end import cut_label
from guidegen.guide.wires import cable_name
from guidegen.hanging.plan import HangingPlan
from guidegen.locale import _, ngettext
from guidegen.parts.bill import Bill
from guidegen.parts.cutlist import CutPiece, GuideCut, HungTotal, cut_list, hung_totals
from guidegen.parts.wires import WireRow, wire_rows
from guidegen.tables.hanging import RESERVE


def cut_table(matter: Matter, plan: HangingPlan) -> Table:
    """Every piece of wire to cut."""
    listed = cut_list(matter.arrangement, plan)
    ways = {(row.reference[0], row.run): row for row in wire_rows(matter.arrangement)}
    rows = [_piece_row(matter, piece, _way(ways, piece)) for piece in listed.pieces]
    rows += [_guide_row(plan, guide) for guide in listed.guides]
    return Table(
        caption=_("Every piece of wire, with what its length is made of"),
        columns=(
            Column(_("Label on both ends")),
            Column(_("Cut"), numeric=True),
            Column(_("Made of")),
            Column(_("Wire and colours")),
            Column(_("From")),
            Column(_("To")),
        ),
        rows=tuple(rows),
        note=_("The strings themselves are cut behind bulbs, as “Parts and tools” lists them."),
    )


def _way(ways: dict[tuple[str, int | None], WireRow], piece: CutPiece) -> WireRow:
    return ways[{"lead": "L", "feeder": "W", "extra": "X"}[piece.cut.key], piece.cut.run]


def _piece_row(matter: Matter, piece: CutPiece, way: WireRow) -> tuple[str, ...]:
    made = _("{route} route, {ends} for strip, joint and strain relief at both ends")
    if piece.drip_m:
        made = _(
            "{route} route, {ends} for strip, joint and strain relief, {drip} for drip loops, at both ends"
        )
    return (
        cut_label(matter, piece.cut),
        quantity(piece.cut_m, "m"),
        made.format(
            route=quantity(piece.cut.route_m, "m"),
            ends=quantity(piece.ends_m, "m"),
            drip=quantity(piece.drip_m, "m"),
        ),
        f"{cable_name(piece.cut.cores, piece.cut.conductor)}; {_colours(piece.cut.cores)}",
        way.from_place,
        way.to_place,
    )


def _colours(cores: int) -> str:
    if cores == 1:
        return _("black, it carries −")
    return _("red and black: red is +; or the marked core is +")


def _guide_row(plan: HangingPlan, guide: GuideCut) -> tuple[str, ...]:
    hooks = plan.lines[guide.line].hooks
    return (
        _("guide wire {number}").format(number=guide.line + 1),
        quantity(guide.cut_m, "m"),
        _("{curve} along its sag, {ends} for loops at both ends").format(
            curve=quantity(guide.curve_m, "m"), ends=quantity(guide.ends_m, "m")
        ),
        _("stranded steel wire, stainless or galvanised"),
        hooks[0].label,
        hooks[-1].label,
    )


def totals_table(matter: Matter, plan: HangingPlan) -> Table:
    """Totals of every kind, with the reserve."""
    listed = cut_list(matter.arrangement, plan)
    rows = [*_wire_totals(listed.parts), *_sleeve_totals(listed.parts)]
    rows += [_hung_total(matter, total) for total in listed.totals]
    return Table(
        caption=_("Totals with {share} in reserve").format(share=percent(RESERVE.value)),
        columns=(Column(_("What")), Column(_("Needed"), numeric=True), Column(_("To have"), numeric=True)),
        rows=tuple(rows),
    )


def _wire_totals(parts: Bill) -> Iterator[tuple[str, ...]]:
    for line in parts.wires:
        yield cable_name(line.cores, line.conductor), quantity(line.cut_m, "m"), quantity(line.buy_m, "m")


def _sleeve_totals(parts: Bill) -> Iterator[tuple[str, ...]]:
    names = {
        "inner": _("sleeve over one conductor, {length} each"),
        "outer": _("sleeve over a whole joint, {length} each"),
        "cap": _("sleeve over a capped end, {length} each"),
    }
    for line in parts.sleeves:
        name = names.get(line.use, _("sleeve, {length} each"))
        yield name.format(length=quantity(line.length_m, "m")), str(line.count), str(line.buy)


def hung_rows(matter: Matter, plan: HangingPlan) -> tuple[tuple[str, ...], ...]:
    """Hooks, ties and guide wire of a plan: name, needed, to buy."""
    return tuple(_hung_total(matter, total) for total in hung_totals(plan))


def _hung_total(matter: Matter, total: HungTotal) -> tuple[str, ...]:
    hanging = matter.project.hanging
    kind = (hanging.hook_kind if hanging else None) or _("hook")
    name = {"hooks": kind, "ties": _("soft tie"), "guide wire": _("guide wire")}[total.kind]
    if total.kind == "guide wire":
        return name, quantity(total.needed, "m"), quantity(total.buy, "m")
    return name, _count(total.needed), _count(total.buy)


def _count(number: float) -> str:
    return (
        ngettext("{count} piece", "{count} pieces", round(number)).format(count=round(number))
        if number
        else NOTHING
    )
