"""What a place of the supply, an end or a middle saves in metres of wire: sentences from the figures."""

from __future__ import annotations

from collections.abc import Iterator

from guidegen.choose.siting import Sited
from guidegen.hanging.advice import FeedWay, RunWays, SupplyWire
from guidegen.hanging.supply import place_name
from guidegen.locale import N_, _
from guidegen.locale.numerals import fixed, with_unit
from guidegen.project.supply_at import SupplyPlace

#: What differs by less than this counts as alike, metre.
_ALIKE_M = 0.005

_WAYS = {
    "one end": N_("one end {where}"),
    "middle": N_("the middle {where}"),
    "both ends": N_("both ends, from the one {where}"),
    "opposite ends": N_("opposite ends, bulb 1 {where}"),
}


def metres(length_m: float) -> str:
    """A length of wire."""
    return with_unit(fixed(length_m, 2), "m")


def way_name(way: FeedWay) -> str:
    """How and where a run is fed: "one end at H3"."""
    return _(_WAYS[way.feed]).format(where=way.hooks)


def sited_text(found: Sited) -> str:
    """The place of the supply with its wire, and what it saves against the next best."""
    own = _("supply at {place} with {wire} of feeder and extra wire").format(
        place=place_name(found.place), wire=metres(found.wire_m)
    )
    return f"{own}{_against(found.wire_m, found.others)}"


def places_text(wires: tuple[SupplyWire, ...]) -> str:
    """Where the supply takes the least wire for these runs, and what that saves; `wires` least first."""
    first, *others = wires
    own = _("The supply at {place} takes the least feeder and extra wire for these runs, {wire}").format(
        place=place_name(first.place), wire=metres(first.wire_m)
    )
    return f"{own}{_against(first.wire_m, tuple((each.place, each.wire_m) for each in others))}."


def _against(own_m: float, others: tuple[tuple[SupplyPlace, float], ...]) -> str:
    if not others:
        return ""
    place, other_m = others[0]
    text = _(", {saved} less than at {place}")
    if abs(other_m - own_m) < _ALIKE_M:
        text = _(", as much as at {place}")
    elif other_m < own_m:
        text = _(", {saved} more than at {place}")
    return text.format(saved=metres(abs(other_m - own_m)), place=place_name(place))


def least_text(ways: RunWays) -> str:
    """Which end or middle takes the least wire for a run, and what that saves against the next best."""
    best, *others = ways.ways
    own = _("least wire: {way}, {wire}").format(way=way_name(best), wire=metres(best.route.wire_m))
    if not others:
        return own
    saved_m = others[0].route.wire_m - best.route.wire_m
    text = _("{own}, {saved} less than the next best, {way}")
    if saved_m < _ALIKE_M:
        text = _("{own}, as much as {way}")
    return text.format(own=own, saved=metres(saved_m), way=way_name(others[0]))


def fed_texts(ways: RunWays) -> Iterator[str]:
    """The least wire for a run, and what its own feed takes if that is another."""
    yield least_text(ways)
    more_m = ways.own.route.wire_m - ways.ways[0].route.wire_m
    if more_m >= _ALIKE_M:
        yield _("as it is fed here, {way}: {wire}, {more} more").format(
            way=way_name(ways.own), wire=metres(ways.own.route.wire_m), more=metres(more_m)
        )
