"""What step pictures show of things as bought: plain numbers, so that drawing needs no project file."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:  # the models take long to load, and drawing has no need of them
    from guidegen.project.schema import LightString, Project


@dataclass(frozen=True)
class BoughtString:
    """A kind of string: how many bulbs, metres from bulb to bulb, metres of tail, what lights on DC."""

    bulbs: int
    spacing_m: float
    tail_m: float
    lit_on_dc: str


@dataclass(frozen=True)
class BoughtSupply:
    """The supply: volts, whether it stands outdoors, and the IP mark that the file states."""

    voltage_v: float
    outdoors: bool
    ip: str | None


@dataclass(frozen=True)
class Bought:
    """All of it, strings by the name of their kind; `rain_reaches`: the place is not indoors."""

    supply: BoughtSupply
    strings: dict[str, BoughtString]
    rain_reaches: bool


def bought_for(project: Project) -> Bought:
    """What the project buys."""
    supply = project.supply
    return Bought(
        supply=BoughtSupply(supply.voltage, supply.stands == "outdoors", supply.ip),
        strings={name: _string(kind) for name, kind in project.strings.items()},
        rain_reaches=project.place.exposure != "indoors",
    )


def _string(kind: LightString) -> BoughtString:
    return BoughtString(kind.bulbs, kind.spacing, kind.tail_m, kind.lit_on_dc)
