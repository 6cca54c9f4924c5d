"""Resistors: how much a rating is worth in warm air, and how values are marked."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

from guidegen.locale import N_


@dataclass(frozen=True)
class ResistorKind:
    """Full rating up to `full_degc` of air, then straight down to nothing at `zero_degc`."""

    name: str
    full_degc: float
    zero_degc: float
    source: str

    @property
    def rise_at_rating_k(self) -> float:
        """How much hotter than the air the body gets at full rating, kelvin.

        Own assumption: the derating line keeps the body at `zero_degc`.
        """
        return self.zero_degc - self.full_degc


_FILM = N_("data sheet curve, IEC 60115-1 rating temperature")
_HOT = N_("data sheets: nothing left at about 275 °C; full rating to 70 °C is usual")

KINDS: Mapping[str, ResistorKind] = MappingProxyType(
    {
        "film": ResistorKind(N_("film"), 70.0, 155.0, _FILM),
        "cement": ResistorKind(N_("cement"), 70.0, 275.0, _HOT),
        "wirewound": ResistorKind(N_("wirewound"), 70.0, 275.0, _HOT),
    }
)
RISE_SOURCE = N_("own assumption: the body stays on its derating line, in free air")

#: Colours of the digits 0 to 9.
DIGIT_COLOURS = (
    *(N_("black"), N_("brown"), N_("red"), N_("orange"), N_("yellow")),
    *(N_("green"), N_("blue"), N_("violet"), N_("grey"), N_("white")),
)
#: Exponent of ten of the multiplier, by colour.
MULTIPLIER_POWER: Mapping[str, int] = MappingProxyType(
    {**{colour: power for power, colour in enumerate(DIGIT_COLOURS)}, N_("gold"): -1, N_("silver"): -2}
)
#: Tolerance by colour, as a ratio; grey and violet are left out, since sources disagree.
TOLERANCE_COLOURS: Mapping[str, float] = MappingProxyType(
    {"brown": 0.01, "red": 0.02, "gold": 0.05, "silver": 0.10}
)
#: Tolerance by the letter that ends a printed marking, as a ratio.
TOLERANCE_LETTERS: Mapping[str, float] = MappingProxyType({"F": 0.01, "G": 0.02, "J": 0.05, "K": 0.10})
MARKING_SOURCE = N_("IEC 60062; the letters not checked against its text")
