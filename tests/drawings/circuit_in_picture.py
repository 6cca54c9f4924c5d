"""Reads a drawn figure back as an electrical circuit: what touches what, and through which symbol."""

from __future__ import annotations

from itertools import pairwise

import networkx as nx

from guidegen.drawings.pen import Pen, Place, Wire

_NEAR = 0.05  # points; far less than any two things that are drawn apart


def circuit(pen: Pen, *, without: tuple[str, ...] = (), drawn_only: bool = False) -> nx.Graph:
    """Every place that conducts, joined where the drawing joins it.

    A conductor's end joins what it lies on; two conductors that cross stay
    apart.  `without` leaves symbols out; `drawn_only` leaves out the dotted
    stretches, so that only what is drawn bulb by bulb conducts.
    """
    wires = [wire for wire in pen.wires if wire.whole or not drawn_only]
    graph = nx.Graph()
    for wire in wires:
        graph.add_edges_from(pairwise(map(_rounded, wire.places)))
    ends = {_rounded(place) for wire in wires for place in (wire.places[0], wire.places[-1])}
    for reference in pen.symbols:
        places = tuple(_rounded(place) for place in pen.ends(reference)) if reference else ()
        ends |= set(places)
        if reference not in without and places:
            graph.add_edge(*places, symbol=reference)
    for end in ends:
        graph.add_node(end)
        for wire in wires:
            graph.add_edges_from((end, _rounded(corner)) for corner in _touched(wire, end))
    return graph


def _touched(wire: Wire, place: Place) -> list[Place]:
    """One corner of the wire when the place lies on it."""
    for start, end in pairwise(wire.places):
        if _on(place, start, end):
            return [start]
    return []


def _on(place: Place, start: Place, end: Place) -> bool:
    """Whether a place lies on an upright or level stretch."""
    (x, y), (x0, y0), (x1, y1) = place, start, end
    level = abs(y - y0) < _NEAR and abs(y - y1) < _NEAR and min(x0, x1) - _NEAR <= x <= max(x0, x1) + _NEAR
    upright = abs(x - x0) < _NEAR and abs(x - x1) < _NEAR and min(y0, y1) - _NEAR <= y <= max(y0, y1) + _NEAR
    return level or upright


def _rounded(place: Place) -> Place:
    """The same place for numbers that differ by rounding alone."""
    return round(place[0], 1), round(place[1], 1)


def rounded(place: Place) -> Place:
    """A place as the circuit names it."""
    return _rounded(place)
