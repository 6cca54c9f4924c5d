"""What current a wire may carry for long, and how far its resistance may lie from nominal."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from guidegen.calc.worked import formula
from guidegen.locale import N_
from guidegen.tables import ampacity, conductors, limits

_MM2 = 1e-6
#: Areas this close below a row count as that row: 0.5 mm2 typed, converted and read back.
_ROUNDING = 1e-9


@dataclass(frozen=True)
class WireLimit:
    """Largest lasting current, ampere; the row it comes from, mm2.

    `scaled`: the wire is thinner than the smallest row, whose limit was
    scaled by area.
    """

    limit_a: float
    row_mm2: float
    scaled: bool


def wire_limit(area_m2: float) -> WireLimit:
    """The limit of a copper area (m2): the row at or below it, scaled by area below the smallest row.

    For a wire known by its ohms alone pass `wire.equivalent_copper_m2`.
    Source: `tables.ampacity`.
    """
    row_mm2 = row_at_or_below(ampacity.LIMIT_A, area_m2)
    row_a = ampacity.LIMIT_A[row_mm2]
    share = area_m2 / (row_mm2 * _MM2)
    if share < 1 - _ROUNDING:
        return WireLimit(scaled_limit_a(row_a, area_m2, row_mm2 * _MM2), row_mm2, True)
    return WireLimit(row_a, row_mm2, False)


@formula(
    title=N_("Limit of a wire thinner than the table"),
    text="I_z = I_row · A / A_row",
    result=("I_z", "A", N_("largest lasting current of the wire")),
    symbols={
        "row_a": ("I_row", "A", N_("limit of the smallest row")),
        "area_m2": ("A", "m2", N_("area of the conductor")),
        "row_m2": ("A_row", "m2", N_("area of the smallest row")),
    },
    source=N_("own assumption: in proportion to the area, below the smallest row of the table"),
)
def scaled_limit_a(row_a: float, area_m2: float, row_m2: float) -> float:
    """Limit in proportion to the area (m2), ampere."""
    return row_a * area_m2 / row_m2


@formula(
    title=N_("Lasting fault current a wire bears"),
    text="I_2 = k · I_z",
    result=("I_2", "A", N_("largest current that may flow for long before the fuse opens")),
    symbols={
        "factor": ("k", "", N_("factor of the standard")),
        "limit_a": ("I_z", "A", N_("largest lasting current of the wire")),
    },
    source=ampacity.OVERLOAD_FACTOR.source,
)
def overload_limit_a(limit_a: float, factor: float = ampacity.OVERLOAD_FACTOR.value) -> float:
    """1.45 times the wire's limit, ampere."""
    return factor * limit_a


def cord_mm2(current_a: float) -> float | None:
    """Cord of a mains appliance for a current (ampere), mm2; None above the table; a comparison only."""
    rows = (area for top, area in sorted(ampacity.CORD_MM2.items()) if current_a <= top)
    return next(rows, None)


def maximum_ohm_per_m(area_mm2: float, tinned: bool = False) -> float:
    """Largest resistance the standards allow a stranded wire of a listed size (mm2), ohm/m; KeyError else."""
    return _maxima(tinned)[area_mm2] / 1000


def maximum_share(area_m2: float, tinned: bool = False) -> float:
    """The standards' maximum for stranded wire over rho20 / A, at the listed size at or below an area (m2).

    Source: IEC 60228 class 5, DIN VDE 0295 below 0.5 mm2.
    """
    rows = _maxima(tinned)
    row_mm2 = row_at_or_below(rows, area_m2)
    return rows[row_mm2] / 1000 * (row_mm2 * _MM2) / conductors.COPPER_OHM_M.value


def stated_wire_spread(area_m2: float) -> limits.Spread:
    """How far a stated area's (m2) real resistance may lie from rho20 / A, as shares."""
    return limits.Spread(
        limits.STATED_WIRE_BELOW.value,
        maximum_share(area_m2) - 1,
        N_("above: IEC 60228 class 5 and DIN VDE 0295 maxima; below: own assumption"),
    )


def row_at_or_below(rows: Mapping[float, float], area_m2: float) -> float:
    """Largest size of a table (keys mm2) not above an area (m2); the smallest size when all are above."""
    fitting = [row for row in rows if row * _MM2 <= area_m2 * (1 + _ROUNDING)]
    return max(fitting, default=min(rows))


def _maxima(tinned: bool) -> dict[float, float]:
    small, large = (
        (conductors.SMALL_TINNED, conductors.FLEXIBLE_TINNED)
        if tinned
        else (conductors.SMALL_PLAIN, conductors.FLEXIBLE_PLAIN)
    )
    return {**small.ohm_per_km, **large.ohm_per_km}
