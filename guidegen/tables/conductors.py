"""Conductors: resistivity by material, gauge, and the largest resistance the standards allow.

Areas are keys in mm2 and resistances in ohm/km, as the standards print
them; `calc.wire` turns them into SI.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

from guidegen.locale import N_
from guidegen.tables.sourced import Sourced

#: Resistivity of annealed copper at 20 degC, ohm m (1/58 ohm mm2/m).
COPPER_OHM_M = Sourced(1e-6 / 58, N_("IEC 60028"))
#: Temperature coefficient of copper at 20 degC, per kelvin.
COPPER_PER_K = Sourced(0.00393, N_("IEC 60028"))
#: Temperature the resistivities hold at, degC.
REFERENCE_DEGC = 20.0

#: Conductivity of copper-clad aluminium with 10 % copper by volume, share of annealed copper's.
CLAD_10_SHARE = Sourced(0.629, N_("ASTM B566, as quoted by a wire maker"))
#: The same with 15 % copper by volume.
CLAD_15_SHARE = Sourced(0.644, N_("ASTM B566, as quoted by a wire maker"))
#: Temperature coefficient of copper-clad aluminium, per kelvin.
CLAD_PER_K = Sourced(0.0040, N_("typical, no single source"))
#: Tinned over plain copper: the ratio of the two class 5 maxima at 0.5 mm2.
TINNED_SHARE = Sourced(40.1 / 39.0, N_("IEC 60228, class 5, tinned over plain at 0.5 mm²"))

#: Diameter of gauge 36, metre.
GAUGE_36_M = Sourced(0.127e-3, N_("ASTM B258"))
#: Ratio of the diameters of gauge 0000 and gauge 36, which are 39 steps apart.
GAUGE_RATIO = Sourced(92.0, N_("ASTM B258"))

#: Cross sections that are made, mm2.
STANDARD_MM2 = (0.05, 0.08, 0.14, 0.22, 0.25, 0.34, 0.5, 0.75, 1.0, 1.5, 2.5, 4.0, 6.0)


@dataclass(frozen=True)
class Material:
    """What a conductor is made of; ohm metre and per kelvin at 20 degC."""

    name: str
    resistivity_ohm_m: float
    per_k: float
    source: str


MATERIALS: Mapping[str, Material] = MappingProxyType(
    {
        "copper": Material(N_("copper"), COPPER_OHM_M.value, COPPER_PER_K.value, COPPER_OHM_M.source),
        "tinned copper": Material(
            N_("tinned copper"),
            COPPER_OHM_M.value * TINNED_SHARE.value,
            COPPER_PER_K.value,
            TINNED_SHARE.source,
        ),
        "copper-clad aluminium": Material(
            N_("copper-clad aluminium"),
            COPPER_OHM_M.value / CLAD_10_SHARE.value,
            CLAD_PER_K.value,
            CLAD_10_SHARE.source,
        ),
    }
)


@dataclass(frozen=True)
class Maxima:
    """Largest resistance allowed at 20 degC: ohm/km by mm2."""

    ohm_per_km: Mapping[float, float]
    source: str


def _maxima(areas: tuple[float, ...], values: tuple[float, ...], source: str) -> Maxima:
    return Maxima(MappingProxyType(dict(zip(areas, values, strict=True))), source)


_SIZES = (0.5, 0.75, 1.0, 1.5, 2.5, 4.0, 6.0)
_SMALL = (0.05, 0.08, 0.14, 0.22, 0.25, 0.34)

SOLID_PLAIN = _maxima(_SIZES, (36.0, 24.5, 18.1, 12.1, 7.41, 4.61, 3.08), N_("IEC 60228, class 1 and 2"))
FLEXIBLE_PLAIN = _maxima(_SIZES, (39.0, 26.0, 19.5, 13.3, 7.98, 4.95, 3.30), N_("IEC 60228, class 5"))
FLEXIBLE_TINNED = _maxima(
    _SIZES, (40.1, 26.7, 20.0, 13.7, 8.21, 5.09, 3.39), N_("IEC 60228, class 5, tinned")
)
SMALL_PLAIN = _maxima(_SMALL, (380.0, 237.0, 134.0, 96.0, 76.0, 53.0), N_("DIN VDE 0295, as quoted"))
SMALL_TINNED = _maxima(_SMALL, (392.0, 244.0, 138.0, 99.0, 79.0, 56.0), N_("DIN VDE 0295, tinned, as quoted"))

#: Factors that turn a resistance measured at a temperature (degC) into that at 20 degC.
TO_20_DEGC: Mapping[float, float] = MappingProxyType(
    {5.0: 1.064, 10.0: 1.042, 30.0: 0.962, 40.0: 0.926, 60.0: 0.862}
)
TO_20_DEGC_SOURCE = N_("IEC 60228, temperature correction factors")
#: Coefficient those factors are made with, per kelvin.
TO_20_DEGC_PER_K = Sourced(0.004, TO_20_DEGC_SOURCE)
