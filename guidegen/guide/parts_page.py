"""Parts and tools: all to buy and to have, the cut list, and the labels."""

from __future__ import annotations

from collections.abc import Sequence

from guidegen.guide.blocks import CutLine, PartLine
from guidegen.guide.buying import parts_to_buy
from guidegen.guide.costs import costs, total_of, total_text
from guidegen.guide.format import quantity
from guidegen.guide.matter import Matter
from guidegen.guide.pages import PartsPage
from guidegen.guide.steps.draft import DraftGroup
from guidegen.guide.steps.supply_end import cut_label, labels
from guidegen.guide.tools import Tool, tool_name, tool_rating, tool_why
from guidegen.guide.wires import cable_name
from guidegen.locale import _
from guidegen.parts.cuts import Taken, WireCut, end_allowance_m, taken_pieces, wire_cuts
from guidegen.parts.wires import string_reference


def parts_page(matter: Matter, groups: Sequence[DraftGroup]) -> PartsPage:
    """The page of lists; tools are those that the steps use."""
    buy, currency = parts_to_buy(matter), costs(matter).currency
    return PartsPage(
        buy=buy,
        tools=tuple(_tool_line(tool) for tool in used_tools(groups)),
        cuts=(
            *(_wire_line(matter, cut) for cut in wire_cuts(matter.arrangement)),
            *(_string_line(matter, taken) for taken in taken_pieces(matter.arrangement)),
        ),
        labels=labels(matter),
        currency=currency,
        total=total_text(total_of(buy, currency)),
    )


def used_tools(groups: Sequence[DraftGroup]) -> tuple[Tool, ...]:
    """Every tool that a step uses, in the order of the list of tools."""
    used = {tool for group in groups for draft in group.steps for tool in draft.tools}
    return tuple(tool for tool in Tool if tool in used)


def _tool_line(tool: Tool) -> PartLine:
    return PartLine("1", tool_name(tool), tool_rating(tool), tool_why(tool))


def _wire_line(matter: Matter, cut: WireCut) -> CutLine:
    return CutLine(
        label=cut_label(matter, cut),
        kind=cable_name(cut.cores, cut.conductor),
        length=quantity(cut.cut_m, "m"),
        ends=_ends(matter),
        why=_("route {route}").format(route=quantity(cut.route_m, "m")),
    )


def _ends(matter: Matter) -> str:
    allowance = quantity(end_allowance_m(matter.arrangement), "m")
    if matter.outdoors:
        return _("{allowance} at each end for strip, joint, strain relief and drip loop").format(
            allowance=allowance
        )
    return _("{allowance} at each end for strip, joint and strain relief").format(allowance=allowance)


def _string_line(matter: Matter, taken: Taken) -> CutLine:
    piece = taken.piece
    whole = piece.bulbs == piece.string_bulbs
    kind = (
        _("string {number} “{name}”, whole")
        if whole
        else _("string {number} “{name}”, bulbs {first} to {last}")
    )
    begin = _("begins with its tail") if piece.has_tail else _("begins with a whole spacing")
    end = (
        _("cut right behind bulb {bulb}").format(bulb=piece.last)
        if piece.cut_behind
        else _("ends as its maker closed it")
    )
    return CutLine(
        label=_("{reference} “{run}”").format(
            reference=string_reference(taken.run), run=matter.runs[taken.run].name
        ),
        kind=kind.format(number=piece.string_number, name=taken.string, first=piece.first, last=piece.last),
        length=quantity(taken.length_m, "m"),
        ends=_("{begin}; {end}").format(begin=begin, end=end),
    )
