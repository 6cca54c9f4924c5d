"""Bill of parts: how much of what, in SI, from the arrangement alone."""

from __future__ import annotations

import math
from dataclasses import dataclass

from guidegen.circuit.arrangement import Arrangement, Conductor, Resistor
from guidegen.parts.cuts import wire_cuts
from guidegen.parts.joints import Cover, covers, entries

#: Wire bought over wire cut; common practice, no source.
SPARE = 0.10
#: Wire is bought in steps of this, metre.
WIRE_STEP_M = 0.5
#: Length of the sleeve over one conductor's joint, over a whole joint, and over a capped end, metre; common
#: practice, no source.
INNER_SLEEVE_M, OUTER_SLEEVE_M, CAP_SLEEVE_M = 0.03, 0.12, 0.03
#: Ties that hold the cables beside a soldered place together.
TIES_A_PLACE = 2


@dataclass(frozen=True)
class StringLine:
    """Strings of one kind: how many are opened, and the bulbs used of them."""

    string: str
    count: int
    bulbs: int


@dataclass(frozen=True)
class ResistorLine:
    """Equal resistors, and the indexes of the runs they go into."""

    resistor: Resistor
    runs: tuple[int, ...]


@dataclass(frozen=True)
class WireLine:
    """Wire of one kind: metres cut, and metres to buy with the spare added."""

    cores: int
    conductor: Conductor
    cut_m: float
    buy_m: float


@dataclass(frozen=True)
class SleeveLine:
    """Pieces of heat-shrink sleeve of one length: over one conductor, over a joint, or as a cap."""

    use: str
    count: int
    length_m: float

    @property
    def buy(self) -> int:
        """Pieces to buy, with the spare added."""
        return math.ceil(round(self.count * (1 + SPARE), 9))


@dataclass(frozen=True)
class Bill:
    """Everything the arrangement itself asks for.

    `soldered`: places where cables are soldered, each under one outer sleeve;
    `forks`: those where two cables leave one end of it; `ties`: two a
    soldered place and one a cable that goes into box or socket; `labels`:
    plug, socket, and both ends of every wire.
    """

    strings: tuple[StringLine, ...]
    resistors: tuple[ResistorLine, ...]
    wires: tuple[WireLine, ...]
    sleeves: tuple[SleeveLine, ...]
    soldered: int
    forks: int
    ties: int
    labels: int


def bill(arrangement: Arrangement) -> Bill:
    """Bill of an arrangement."""
    places = covers(arrangement)
    soldered = sum(bool(place.joints) for place in places)
    return Bill(
        strings=_strings(arrangement),
        resistors=_resistors(arrangement),
        wires=_wires(arrangement),
        sleeves=_sleeves(places),
        soldered=soldered,
        forks=sum(place.forked for place in places),
        ties=TIES_A_PLACE * soldered + entries(arrangement),
        labels=2 + 2 * len(wire_cuts(arrangement)),
    )


def _strings(arrangement: Arrangement) -> tuple[StringLine, ...]:
    opened: dict[str, set[int]] = {}
    bulbs: dict[str, int] = {}
    for run in arrangement.runs:
        opened.setdefault(run.string, set()).update(piece.string_number for piece in run.pieces)
        bulbs[run.string] = bulbs.get(run.string, 0) + run.bulbs
    return tuple(StringLine(name, len(numbers), bulbs[name]) for name, numbers in opened.items())


def _resistors(arrangement: Arrangement) -> tuple[ResistorLine, ...]:
    alike: dict[tuple[float, float, float | None, str | None], list[int]] = {}
    for index, run in enumerate(arrangement.runs):
        resistor = run.resistor
        if resistor.fitted:
            key = (resistor.ohm, resistor.tolerance, resistor.rating_w, resistor.kind)
            alike.setdefault(key, []).append(index)
    return tuple(
        ResistorLine(arrangement.runs[indexes[0]].resistor, tuple(indexes)) for indexes in alike.values()
    )


def _wires(arrangement: Arrangement) -> tuple[WireLine, ...]:
    metres: dict[tuple[int, Conductor], float] = {}
    for cut in wire_cuts(arrangement):
        key = (cut.cores, cut.conductor)
        metres[key] = metres.get(key, 0.0) + cut.cut_m
    return tuple(
        WireLine(cores, conductor, cut_m, _to_buy_m(cut_m)) for (cores, conductor), cut_m in metres.items()
    )


def _to_buy_m(cut_m: float) -> float:
    return WIRE_STEP_M * math.ceil(round(cut_m * (1 + SPARE) / WIRE_STEP_M, 9))


def _sleeves(places: tuple[Cover, ...]) -> tuple[SleeveLine, ...]:
    lines = (
        SleeveLine("inner", sum(place.soldered_poles for place in places), INNER_SLEEVE_M),
        SleeveLine("cap", sum(place.capped_poles for place in places), CAP_SLEEVE_M),
        SleeveLine("outer", len(places), OUTER_SLEEVE_M),
    )
    return tuple(line for line in lines if line.count)
