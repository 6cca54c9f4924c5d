"""Runs as a maker writes them into the project file: YAML text that reads back as the same runs."""

from __future__ import annotations

import json
import re
from collections.abc import Iterator

from guidegen.project.schema import Run, StringWire, WirePiece
from guidegen.project.supply_at import AtHook, AtPoint, SupplyPlace

#: Text that needs no quotes whatever stands beside it, but for words that YAML takes for something else.
_PLAIN = re.compile(r"[A-Za-z][A-Za-z0-9]*(?: [A-Za-z0-9]+)*")
_TAKEN = frozenset({"y", "n", "yes", "no", "on", "off", "true", "false", "null"})


def runs_text(runs: tuple[Run, ...]) -> str:
    """The block `runs:` of these runs.

    Resistors left open stay so, and keys that have their default are left out.
    """
    return "\n".join(["runs:", *(line for run in runs for line in _lines(run))]) + "\n"


def name_text(name: str) -> str:
    """A name, in quotes where YAML might read it as anything else."""
    plain = _PLAIN.fullmatch(name) and name.lower() not in _TAKEN
    return name if plain else json.dumps(name, ensure_ascii=False)


def place_text(place: SupplyPlace) -> str:
    """A place of the supply, as behind `supply_at`."""
    if isinstance(place, AtHook):
        return f"H{place.number}"
    if isinstance(place, AtPoint):
        return f'"{_exact(place.x_m)} m, {_exact(place.y_m)} m"'
    return place if isinstance(place, str) else f"{_exact(place)} m"


def _lines(run: Run) -> Iterator[str]:
    mark = "  - "
    for key, text in _keys(run):
        yield f"{mark}{key}:{text}" if text.startswith("\n") else f"{mark}{key}: {text}"
        mark = "    "


def _keys(run: Run) -> Iterator[tuple[str, str]]:
    if run.name is not None:
        yield "name", name_text(run.name)
    if run.string is not None:
        yield "string", name_text(run.string)
    yield "bulbs", str(run.bulbs)
    yield "feed", run.feed
    if run.resistor is not None:
        yield "resistor", run.resistor if isinstance(run.resistor, str) else f"{_exact(run.resistor)} ohm"
    if run.feeder is not None:
        yield "feeder", _piece(run.feeder)
    if run.extra_wire is not None:
        yield "extra_wire", _piece(run.extra_wire)
    if run.first_hung != "first bulb":
        yield "first_hung", run.first_hung


def _piece(piece: WirePiece) -> str:
    """On lines of their own, short enough for a phone."""
    return f"\n      length: {_exact(piece.length)} m\n      wire: {{{_wire(piece.wire)}}}"


def _wire(wire: StringWire) -> str:
    """Copper wire by its size; that is all that is proposed."""
    assert wire.area is not None
    return f"area: {_exact(wire.area * 1e6)} mm2"


def _exact(value: float) -> str:
    """All its digits but the noise of the last ones, without an exponent."""
    text = f"{round(value, 9):.9f}".rstrip("0").rstrip(".")
    return text or "0"
