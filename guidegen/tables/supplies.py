"""Rated currents that plug-in supplies are usually sold with."""

from __future__ import annotations

from guidegen.locale import N_

#: Ampere, ascending.
RATINGS_A = (0.5, 1.0, 1.5, 2.0, 2.5, 3.0, 4.0, 5.0, 6.0, 8.0, 10.0)
RATINGS_SOURCE = N_("usual ratings of plug-in supplies, from memory")
