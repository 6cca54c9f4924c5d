"""Light of the bulbs against each other, and how even it looks."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from guidegen.calc.worked import formula
from guidegen.locale import N_

Floats = NDArray[np.float64]
#: Exponent of seen brightness for a point source; an estimate.
SEEN_EXPONENT = 0.5


def raw_light(leds: Floats, led_current_a: Floats, exponent: float = 1.0) -> Floats:
    """Light of each bulb, in no unit: lit LEDs x current^exponent; all arrays (N,), ampere."""
    light: Floats = leds * np.maximum(led_current_a, 0.0) ** exponent
    return light


def relative_light(light: Floats, brightest: float | None = None) -> Floats:
    """Light over that of the brightest bulb (of the array unless given); zeros when nothing is lit."""
    top = float(np.max(light)) if brightest is None else brightest
    return light / top if top > 0 else np.zeros_like(light)


def evenness(light: Floats, lit: NDArray[np.bool_]) -> float:
    """Dimmest over brightest of the lit bulbs, 0 to 1; 0 when none is lit."""
    shining = light[lit]
    return float(shining.min() / shining.max()) if shining.size and shining.max() > 0 else 0.0


@formula(
    title=N_("Evenness"),
    text="e = L_min / L_max",
    result=("e", "", N_("evenness")),
    symbols={
        "dimmest": ("L_min", "", N_("light of the dimmest bulb")),
        "brightest": ("L_max", "", N_("light of the brightest bulb")),
    },
    source=N_("Definition"),
)
def evenness_of(dimmest: float, brightest: float) -> float:
    """Evenness of two lights in the same unit."""
    return dimmest / brightest


@formula(
    title=N_("Evenness as it looks"),
    text="e_seen = e^n",
    result=("e_seen", "", N_("seen evenness, an estimate")),
    symbols={
        "even": ("e", "", N_("evenness")),
        "exponent": ("n", "", N_("exponent of seen brightness for a point of light")),
    },
    source=N_("S. S. Stevens, Psychophysics (1975)"),
)
def seen_evenness(even: float, exponent: float = SEEN_EXPONENT) -> float:
    """Evenness to the power of seen brightness."""
    return float(even**exponent)


def lightness(luminance: float) -> float:
    """CIE L* of a luminance in percent of white (0 to 100).

    116 f(Y/100) - 16, f the cube root above (6/29)^3, its tangent below.
    Source: CIE 15, ISO/CIE 11664-4.
    """
    share = luminance / 100
    knee = 6 / 29
    root = float(np.cbrt(share)) if share > knee**3 else share / (3 * knee**2) + 4 / 29
    return 116 * root - 16
