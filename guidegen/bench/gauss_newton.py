"""Weighted least squares with a few parameters, some held: damped Gauss-Newton.

Written out here since importing a library's optimiser would cost more than
reading, fitting, solving and judging a whole project.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]

#: Steps after which the last point counts, settled or not.
MOST_STEPS = 40
#: Halvings of one step before it is given up.
MOST_HALVINGS = 10
#: A step this small, in units of the parameters' scales, is the last one.
SETTLED = 1e-7


@dataclass(frozen=True, eq=False)
class Linear:
    """The model near a point, for M readings and P parameters.

    `residual` (M,): measured less predicted; `slopes` (M, P): d predicted /
    d parameter; `covariance` (M, M) of the readings, with whatever else is
    uncertain about them folded in.
    """

    residual: Floats
    slopes: Floats
    covariance: Floats


@dataclass(frozen=True, eq=False)
class Fitted:
    """Where the fit ended: parameters (P,), the model near them, and whether it settled."""

    parameters: Floats
    local: Linear
    settled: bool


@dataclass(frozen=True, eq=False)
class Pull:
    """What draws the parameters besides the readings: `precision` (P,) towards `centre` (P,)."""

    centre: Floats
    precision: Floats


def least_squares(
    model: Callable[[Floats], Linear],
    start: Floats,
    free: NDArray[np.bool_],
    scale: Floats,
    bounds: tuple[Floats, Floats],
    pull: Pull | None = None,
    settled: float = SETTLED,
) -> Fitted:
    """Minimise residual' covariance^-1 residual over the free parameters.

    `scale` (P,): a step of one scale in any parameter is the longest taken,
    and `settled` of it the last; `bounds`: least and largest values (P,), each.
    ArithmeticError from the model ends a step as if it had led uphill.
    """
    pull = pull or Pull(start, np.zeros_like(start))
    point, local = start, model(start)
    for _step in range(MOST_STEPS):
        step = _inward_step(point, local, free, scale, bounds, pull)
        step *= min(1.0, 1.0 / max(float(np.max(np.abs(step / scale))), 1e-300))
        last = bool(np.all(np.abs(step) <= settled * scale))
        found = _walk(model, point, local, step, bounds, pull)
        if last or found is None:
            return Fitted(*(found or (point, local)), settled=last)
        point, local = found
    return Fitted(point, local, settled=False)


def normal_matrix(local: Linear) -> Floats:
    """slopes' covariance^-1 slopes (P, P): what the readings alone say of the parameters."""
    matrix: Floats = local.slopes.T @ np.linalg.solve(local.covariance, local.slopes)
    return matrix


def chi_squared(local: Linear, covariance: Floats | None = None) -> float:
    """residual' covariance^-1 residual."""
    used = local.covariance if covariance is None else covariance
    return float(local.residual @ np.linalg.solve(used, local.residual))


def _inward_step(
    point: Floats,
    local: Linear,
    free: NDArray[np.bool_],
    scale: Floats,
    bounds: tuple[Floats, Floats],
    pull: Pull,
) -> Floats:
    """The step of the free parameters, those at a bound held if it would lead over it."""
    step = np.zeros_like(point)
    step[free] = _newton_step(point, local, free, scale, pull)
    over = ((point <= bounds[0]) & (step < 0)) | ((point >= bounds[1]) & (step > 0))
    if not np.any(over):
        return step
    return _inward_step(point, local, free & ~over, scale, bounds, pull)


def _newton_step(point: Floats, local: Linear, free: NDArray[np.bool_], scale: Floats, pull: Pull) -> Floats:
    slopes = local.slopes[:, free]
    weighted = np.linalg.solve(local.covariance, np.column_stack((slopes, local.residual)))
    matrix = slopes.T @ weighted[:, :-1] + np.diag(pull.precision[free])
    uphill = slopes.T @ weighted[:, -1] - (pull.precision * (point - pull.centre))[free]
    size = scale[free]
    step: Floats = size * np.linalg.lstsq(matrix * np.outer(size, size), uphill * size, rcond=1e-12)[0]
    return step


def _walk(
    model: Callable[[Floats], Linear],
    point: Floats,
    local: Linear,
    step: Floats,
    bounds: tuple[Floats, Floats],
    pull: Pull,
) -> tuple[Floats, Linear] | None:
    """The first of ever shorter steps that does not lead uphill; None when none does."""
    here = chi_squared(local) + _pulled(point, pull)
    for halving in range(MOST_HALVINGS):
        tried = np.clip(point + step / 2**halving, *bounds)
        try:
            found = model(tried)
        except ArithmeticError:
            continue
        there = chi_squared(found, local.covariance) + _pulled(tried, pull)
        if there <= here * (1 + 1e-9) + 1e-12:
            return tried, found
    return None


def _pulled(point: Floats, pull: Pull) -> float:
    return float(np.sum(pull.precision * (point - pull.centre) ** 2))
