"""A wire that hangs between two hooks: the catenary, and the parabola it is close to when shallow.

The wire bends freely and does not stretch; its weight is spread evenly along
it.  With z = L / (2 c) the shape depends on one number, which is looked for
by halving, since sag and length both grow with it.

Sources: any statics text, for example R. C. Hibbeler, *Statics*, chapter 7
(cables under their own weight; from memory).
"""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from guidegen.calc.worked import formula
from guidegen.locale import N_
from guidegen.tables.hanging import GRAVITY

Floats = NDArray[np.float64]
#: Halvings that bring any shape within the accuracy of a float.
_HALVINGS = 200
#: Shapes looked for lie between these: a wire as taut as can be, and one that hangs down like a loop.
_TAUTEST, _SLACKEST = 1e-7, 300.0
_TEXTBOOK = N_("Statics: cable under its own weight")


@dataclass(frozen=True)
class Catenary:
    """A hanging wire: y = c cosh((x - lowest_m) / c) + base_m, x in metre from the first hook.

    `span_m`: distance between the hooks in plan; `rise_m`: second hook over
    the first; heights count from the first hook, upwards; `c_m` is the
    horizontal pull over the weight per metre.
    """

    span_m: float
    rise_m: float
    c_m: float

    @property
    def lowest_m(self) -> float:
        """Where the curve has its lowest point; it may lie outside the span."""
        return self.span_m / 2 - self._shift_m

    @property
    def _shift_m(self) -> float:
        half = self.span_m / (2 * self.c_m)
        return self.c_m * math.asinh(self.rise_m / (2 * self.c_m * math.sinh(half)))

    @property
    def length_m(self) -> float:
        """Wire between the hooks."""
        half = self.span_m / (2 * self.c_m)
        return math.hypot(2 * self.c_m * math.sinh(half), self.rise_m)

    @property
    def sag_m(self) -> float:
        """Dip below the straight line between the hooks, in the middle of the span."""
        return sag_in_middle_m(self.span_m, self.rise_m, self.span_m / (2 * self.c_m))

    def height_m(self, x_m: Floats | float) -> Floats:
        """Height over the first hook at `x_m` (any shape)."""
        base = self.c_m * math.cosh(self.lowest_m / self.c_m)
        return self.c_m * np.cosh((np.asarray(x_m) - self.lowest_m) / self.c_m) - base

    @property
    def low_point_m(self) -> float:
        """Height of the lowest point of the wire within the span over the first hook."""
        return float(self.height_m(min(max(self.lowest_m, 0.0), self.span_m)))

    def x_at_m(self, along_m: Floats | float) -> Floats:
        """Distance in plan from the first hook of the places `along_m` along the wire (any shape)."""
        start = math.sinh(-self.lowest_m / self.c_m)
        return self.lowest_m + self.c_m * np.arcsinh(np.asarray(along_m) / self.c_m + start)

    def ends_n(self, load_n_per_m: float) -> tuple[tuple[float, float], tuple[float, float]]:
        """Pull on the first and on the second hook, N: towards the span, and downwards."""
        level = load_n_per_m * self.c_m
        down = level * math.sinh(self.lowest_m / self.c_m)
        return (level, down), (level, load_n_per_m * self.length_m - down)


def sag_in_middle_m(span_m: float, rise_m: float, half: float) -> float:
    """Sag in the middle of the span for `half` = L / (2 c)."""
    tilt = rise_m * half / (span_m * math.sinh(half))
    # cosh(z) - 1 as a product: the difference itself is lost in rounding for a taut wire.
    return span_m / (2 * half) * math.hypot(1.0, tilt) * 2 * math.sinh(half / 2) ** 2


def from_sag(span_m: float, sag_m: float, rise_m: float = 0.0) -> Catenary:
    """The wire that dips `sag_m` in the middle, below the straight line between the hooks.

    ValueError unless span and sag are above zero.
    """
    _positive(span_m, sag_m)
    half = _where(lambda each: sag_in_middle_m(span_m, rise_m, each), sag_m)
    return Catenary(span_m, rise_m, span_m / (2 * half))


def from_length(span_m: float, length_m: float, rise_m: float = 0.0) -> Catenary:
    """The wire of `length_m` between the hooks; ValueError when it is not longer than the straight line."""
    straight = math.hypot(span_m, rise_m)
    if length_m <= straight:
        raise ValueError(f"a wire of {length_m} m does not hang over {straight} m")
    _positive(span_m, length_m)
    wanted = math.sqrt((length_m - rise_m) * (length_m + rise_m)) / span_m
    half = _where(lambda each: math.sinh(each) / each, wanted)
    return Catenary(span_m, rise_m, span_m / (2 * half))


def _positive(span_m: float, other_m: float) -> None:
    if not (span_m > 0 and other_m > 0):
        raise ValueError("span, sag and length must be above zero")


def _where(grows: Callable[[float], float], wanted: float) -> float:
    """The number at which a growing function is `wanted`, by halving the span of its logarithm."""
    low, high = math.log(_TAUTEST), math.log(_SLACKEST)
    for _halving in range(_HALVINGS):
        middle = (low + high) / 2
        low, high = (middle, high) if grows(math.exp(middle)) < wanted else (low, middle)
    return math.exp((low + high) / 2)


@formula(
    title=N_("Wire in the longest span"),
    text="S = 2 · c · sinh(L / (2 · c))",
    result=("S", "m", N_("wire from hook to hook")),
    symbols={
        "span_m": ("L", "m", N_("distance between the hooks")),
        "c_m": ("c", "m", N_("catenary parameter, solved so that the sag comes out")),
    },
    source=_TEXTBOOK,
)
def level_length_m(span_m: float, c_m: float) -> float:
    """Wire between two hooks of one height."""
    return 2 * c_m * math.sinh(span_m / (2 * c_m))


@formula(
    title=N_("Sag of the longest span"),
    text="f = c · (cosh(L / (2 · c)) − 1)",
    result=("f", "m", N_("sag in the middle")),
    symbols={
        "span_m": ("L", "m", N_("distance between the hooks")),
        "c_m": ("c", "m", N_("catenary parameter")),
    },
    source=_TEXTBOOK,
)
def level_sag_m(span_m: float, c_m: float) -> float:
    """Sag between two hooks of one height."""
    return sag_in_middle_m(span_m, 0.0, span_m / (2 * c_m))


@formula(
    title=N_("Level pull in the wire"),
    text="H = w · c",
    result=("H", "N", N_("level pull, the same all along the span")),
    symbols={
        "load_n_per_m": ("w", "N/m", N_("weight of wire and bulbs per metre")),
        "c_m": ("c", "m", N_("catenary parameter")),
    },
    source=_TEXTBOOK,
)
def level_pull_n(load_n_per_m: float, c_m: float) -> float:
    """Horizontal pull of a hanging wire, N."""
    return load_n_per_m * c_m


@formula(
    title=N_("The same by the shallow parabola, to compare"),
    text="H = w · L² / (8 · f)",
    result=("H", "N", N_("level pull, about")),
    symbols={
        "load_n_per_m": ("w", "N/m", N_("weight of wire and bulbs per metre")),
        "span_m": ("L", "m", N_("distance between the hooks")),
        "sag_m": ("f", "m", N_("sag in the middle")),
    },
    source=N_("Statics: shallow cable as a parabola"),
)
def parabola_pull_n(load_n_per_m: float, span_m: float, sag_m: float) -> float:
    """Horizontal pull of a shallow wire, N; under 1 % off while the sag is under an eighth of the span."""
    return load_n_per_m * span_m**2 / (8 * sag_m)


def parabola_length_m(span_m: float, sag_m: float) -> float:
    """Wire of a shallow span: L (1 + 8/3 (f / L)^2)."""
    return span_m * (1 + 8 / 3 * (sag_m / span_m) ** 2)


def dead_load_n_per_m(wire_kg_per_m: float, bulb_kg: float, bulbs_per_m: float) -> float:
    """Weight of wire and bulbs per metre, N/m."""
    return GRAVITY * (wire_kg_per_m + bulb_kg * bulbs_per_m)
