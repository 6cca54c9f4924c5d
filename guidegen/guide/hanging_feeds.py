"""Which end or middle of a run to feed, and where to put the supply: what each takes of wire."""

from __future__ import annotations

from guidegen.choose.metres import fed_texts, places_text, way_name
from guidegen.guide.blocks import Column, Table
from guidegen.guide.format import NO_BREAK, fixed
from guidegen.guide.matter import Matter
from guidegen.hanging.advice import FeedWay, RunWays, SupplyWire
from guidegen.hanging.supply import place_name
from guidegen.locale import _


def feeding_lines(matter: Matter, wires: tuple[SupplyWire, ...]) -> tuple[str, ...]:
    """The place and the feeds of the least wire, and what they save against the next best."""
    if not wires:
        return ()
    runs = [
        _("{name}: {ways}.").format(name=matter.runs[ways.run].name, ways="; ".join(fed_texts(ways)))
        for ways in wires[0].runs
    ]
    rests = _(
        "Lengths are along the hooks, joints made; from a supply beside them, from one line to another and "
        "where a line comes back to itself wire goes straight, no farther than the longest span or the "
        "shortest crossing. Add what goes down to a socket. The feed of the least wire need not give "
        "the most even light: the page of arrangements compared weighs both."
    )
    return (places_text(wires), *runs, rests)


def feed_tables(matter: Matter, wires: tuple[SupplyWire, ...]) -> tuple[Table, ...]:
    """Every way to feed every run; and every place of the supply, if the file names several."""
    if not wires:
        return ()
    own = _feeds(matter, wires[0])
    return (own,) if len(wires) == 1 else (own, _places(wires))


def _feeds(matter: Matter, wire: SupplyWire) -> Table:
    rows = tuple(_row(matter, run, way) for run in wire.runs for way in run.ways)
    text = _("Ways to feed each run, supply at {place}: the least wire first")
    return Table(
        caption=text.format(place=place_name(wire.place)),
        columns=(
            Column(_("Run")),
            Column(_("Fed")),
            Column(_("Feeder"), numeric=True),
            Column(_("Extra wire"), numeric=True),
            Column(_("Together"), numeric=True),
            Column(_("More than the least"), numeric=True),
        ),
        rows=rows,
        note=_("Routes counted once; the way a run is fed in this guide is marked with “as planned”."),
    )


def _row(matter: Matter, run: RunWays, way: FeedWay) -> tuple[str, ...]:
    name = way_name(way)
    if (way.feed, way.turned) == (run.own.feed, run.own.turned):
        name = _("{way} (as planned)").format(way=name)
    more_m = way.route.wire_m - run.ways[0].route.wire_m
    lengths = way.route.feeder_m, way.route.extra_m, way.route.wire_m, more_m
    return (matter.runs[run.run].name, name, *(_metres(length_m) for length_m in lengths))


def _places(wires: tuple[SupplyWire, ...]) -> Table:
    least_m = wires[0].wire_m
    return Table(
        caption=_("Places of the supply: feeders and extra wires of all runs, fed as planned"),
        columns=(
            Column(_("Supply at")),
            Column(_("Wire"), numeric=True),
            Column(_("More than the least"), numeric=True),
        ),
        rows=tuple(
            (place_name(each.place), _metres(each.wire_m), _metres(each.wire_m - least_m)) for each in wires
        ),
        note=_("Every run is hung whichever way round takes less."),
    )


def _metres(length_m: float) -> str:
    return f"{fixed(length_m, 2)}{NO_BREAK}m"
