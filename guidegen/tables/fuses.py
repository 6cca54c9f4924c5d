"""Miniature fuses: ratings, and the current at which each type must open."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

from guidegen.locale import N_

#: Ratings from 315 mA up, ampere.
READ_RATINGS_A = (
    *(0.315, 0.4, 0.5, 0.63, 0.8),
    *(1.0, 1.25, 1.6, 2.0, 2.5, 3.15, 4.0, 5.0, 6.3, 8.0, 10.0),
)
READ_RATINGS_SOURCE = N_("IEC 60127-1, Table A.1")
#: Smaller ratings, ampere.
SMALL_RATINGS_A = (0.032, 0.04, 0.05, 0.063, 0.08, 0.1, 0.125, 0.16, 0.2, 0.25)
SMALL_RATINGS_SOURCE = N_("IEC 60127-1, not checked against its text")
#: All ratings, ascending, ampere.
RATINGS_A = SMALL_RATINGS_A + READ_RATINGS_A


@dataclass(frozen=True)
class FuseType:
    """What a standard asks of a fuse, in multiples of its rating.

    `carries` for at least an hour without opening; `must_open` within
    `within_s` seconds.
    """

    name: str
    carries: float
    must_open: float
    within_s: float
    source: str


FUSE_TYPES: Mapping[str, FuseType] = MappingProxyType(
    {
        "IEC": FuseType(
            "IEC 60127-2", 1.5, 2.1, 1800.0, N_("IEC 60127-2; the half hour not checked against its text")
        ),
        "UL": FuseType(
            "UL 248-14", 1.0, 2.0, 120.0, N_("UL 248-14; the carried current not checked against its text")
        ),
    }
)
#: UL 248-14 fuses also open at this multiple within an hour.
UL_HOUR_MULTIPLE = 1.35
