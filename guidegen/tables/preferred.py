"""Preferred values: the numbers resistors and their ratings are made in."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from guidegen.locale import N_

#: First two digits of the values of one decade, by series.
SERIES: Mapping[str, tuple[int, ...]] = MappingProxyType(
    {
        "E6": (10, 15, 22, 33, 47, 68),
        "E12": (10, 12, 15, 18, 22, 27, 33, 39, 47, 56, 68, 82),
        "E24": (
            *(10, 11, 12, 13, 15, 16, 18, 20, 22, 24, 27, 30),
            *(33, 36, 39, 43, 47, 51, 56, 62, 68, 75, 82, 91),
        ),
    }
)
SERIES_SOURCE = N_("IEC 60063")

#: Rounded steps of ten to the decade, thousandths.
R10 = (1000, 1250, 1600, 2000, 2500, 3150, 4000, 5000, 6300, 8000)
R10_SOURCE = N_("ISO 3")

#: Ratings in which leaded resistors are sold, watt.
RESISTOR_RATINGS_W = (0.25, 0.5, 1.0, 2.0, 3.0, 5.0, 7.0, 10.0)
RESISTOR_RATINGS_SOURCE = N_("usual in makers' lists")
