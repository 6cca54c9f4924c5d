"""The Wright omega function of real numbers, w with w + ln w = z: what solves a diode behind a resistor.

Written out here, for the library that has it takes longer to load than dozens of circuits to solve.
"""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

#: Below the first w is e^z and above the second w is z, to the last digit of a float.
SMALL_Z, LARGE_Z = -50.0, 1e20
#: Steps that take any first guess to all digits: each one does to its error what four of Newton's would.
_STEPS = 2


def wright_omega(z: float | NDArray[np.float64]) -> NDArray[np.float64]:
    """w with w + ln w = z, any shape, no unit; to a few units of the last digit.

    Source of the step: F. N. Fritsch, R. E. Shafer and W. P. Crowley,
    Algorithm 443, Communications of the ACM 16 (1973) 123 (from memory).
    """
    z = np.asarray(z, dtype=np.float64)
    inside = (z > SMALL_Z) & (z < LARGE_Z)
    near = np.where(inside, z, 0.0)
    w = _first_guess(near)
    for _step in range(_STEPS):
        miss, more = near - w - np.log(w), w + 1
        reach = 2 * more * (more + 2 / 3 * miss)
        w = w * (1 + miss / more * (reach - miss) / (reach - 2 * miss))
    outside = np.where(z > 0, z, np.exp(np.minimum(z, 0.0)))
    return np.where(inside, w, outside)


def _first_guess(z: NDArray[np.float64]) -> NDArray[np.float64]:
    """What w is for small z and for large z, and in between an exponential that comes near enough."""
    least_one = np.maximum(z, 1.0)
    large = z - np.log(least_one) + np.log(least_one) / least_one
    between = np.exp(2 / 3 * (np.minimum(z, 1.0) - 1))
    return np.where(z < -2, np.exp(np.minimum(z, -2.0)), np.where(z < 1, between, large))
