"""What arrangements are built of: a table of their wires and small parts, and how one is taken over."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator

from guidegen.choose.choice import Choice, Proposal
from guidegen.circuit.arrangement import Cable
from guidegen.guide.blocks import Column, Table
from guidegen.guide.format import NO_BREAK, NOTHING, number, quantity
from guidegen.guide.wires import conductor_name
from guidegen.locale import _


def wires_table(choice: Choice, places: Iterable[str]) -> Table:
    """Resistors, fuse, feeders and extra wires of each; `places` are its rows' names."""
    return Table(
        caption=_("Wire and small parts of each"),
        columns=(
            Column(_("No.")),
            Column(_("Resistors")),
            Column(_("Fuse")),
            Column(_("Feeder wire")),
            Column(_("Feeders, m"), numeric=True),
            Column(_("Extra wire")),
            Column(_("Extra wire, m"), numeric=True),
            Column(_("Its cores, m"), numeric=True),
        ),
        rows=tuple(_row(place, each) for place, each in zip(places, choice.proposals, strict=True)),
        note=_(
            "Metres are the way the wire runs, all runs together. Wire is stranded copper unless a metal is "
            "named; feeders have two cores."
        ),
    )


def how_to_take() -> str:
    """How a block of the project file is taken over."""
    return _(
        "To build this one, put the block into the project file in place of the runs there. A resistor that "
        "it leaves out is chosen, and comes out as in the table below."
    )


def alike(count: int, what: str) -> str:
    """Several things alike: "2 × 24"."""
    return what if count == 1 else f"{count}{NO_BREAK}×{NO_BREAK}{what}"


def _row(place: str, proposal: Proposal) -> tuple[str, ...]:
    runs, cost = proposal.worked.arrangement.runs, proposal.cost
    fuse_a = proposal.worked.arrangement.fuse.rating_a
    return (
        place,
        ", ".join(_resistors(proposal)),
        NOTHING if fuse_a is None else quantity(fuse_a, "A"),
        _kinds(run.feeder for run in runs),
        _metres(cost.feeder_m),
        _kinds(run.extra for run in runs),
        _metres(cost.extra_wire_m),
        _metres(cost.core_m),
    )


def _resistors(proposal: Proposal) -> Iterator[str]:
    resistors = (run.resistor for run in proposal.worked.arrangement.runs)
    counted = Counter(each.ohm if each.fitted else 0.0 for each in resistors)
    for ohm, count in counted.items():
        yield alike(count, quantity(ohm, "Ω")) if ohm else _("none")


def _kinds(cables: Iterable[Cable | None]) -> str:
    names = dict.fromkeys(conductor_name(cable.conductor) for cable in cables if cable is not None)
    return ", ".join(names) or NOTHING


def _metres(length_m: float) -> str:
    return number(length_m) if length_m else NOTHING
