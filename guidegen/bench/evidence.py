"""How well every suspected fault explains the readings taken, as the logarithm of its likelihood.

The readings of correct builds scatter together, since they share supply,
warmth and LEDs.  A first round carries the covariance of random correct
builds over to each fault in proportion to the volts it leaves; for the
faults that come out best it is worked out anew, with the fault in place.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from math import log, sqrt
from types import MappingProxyType

import numpy as np
from numpy.typing import NDArray

from guidegen.bench.faults import Family, Fault, FaultKind
from guidegen.bench.faulty import solve_faults
from guidegen.bench.readings import burden_u_ohm
from guidegen.bench.spots import Spot, Taken, volts_at
from guidegen.bench.suspects import Suspects
from guidegen.bench.unknowns import moved_builds
from guidegen.circuit.arrangement import Arrangement, Floats

#: How often a kind of fault is met, over the others; common practice, no source: cheap LEDs die.
OFTEN: Mapping[FaultKind, float] = MappingProxyType({"dead leds": 3.0})
#: Sizes of a smooth fault that are looked at between two that are solved.
_BETWEEN = 8
#: Faults that are weighed anew, with the covariance of their own.
_BEST = 14
#: Below this a bulb counts as without volts.
_DARK_V = 0.05
#: Log likelihood below the best at which a place of a break is still told.
_STILL_LIKELY = 3.0


@dataclass(frozen=True, eq=False)
class Sheet:
    """The readings taken: where, what the meter showed (M,), and the suspects they are held against."""

    known: Suspects
    spots: tuple[Spot, ...]
    shown: Floats

    @classmethod
    def of(cls, known: Suspects, taken: tuple[Taken, ...]) -> Sheet:
        """The sheet of some readings."""
        return cls(known, tuple(each.spot for each in taken), np.array([each.shown for each in taken]))

    def meter_u(self, values: Floats) -> Floats:
        """Standard uncertainty of the meter at these values, same shape (..., M)."""
        limits = np.empty_like(values)
        for k, spot in enumerate(self.spots):
            scale = self.known.meter.volts
            if spot.unit == "A":
                scale, _ = self.known.meter.ammeter(float(np.max(values[..., k])))
            limits[..., k] = scale.share * np.abs(values[..., k]) + scale.digits * scale.step
        return limits / sqrt(3)


@dataclass(frozen=True, eq=False)
class Weighed:
    """A fault over its sizes: what each shows (G, M), its log likelihood and its misfit (G,).

    `prior`: logarithm of its share before any reading; `smooth`: sizes between
    these are possible too.
    """

    faults: tuple[Fault, ...]
    values: Floats
    prior: float
    chances: Floats
    misfits: Floats
    smooth: bool = False

    @property
    def best(self) -> int:
        """Number of the likeliest size."""
        return int(np.argmax(self.chances))

    @property
    def evidence(self) -> float:
        """Logarithm of the likelihood averaged over the sizes, prior included."""
        return self.prior + log_sum(self.chances)

    @property
    def likely(self) -> tuple[Fault, ...]:
        """The sizes not much less likely than the best."""
        return tuple(
            fault
            for fault, chance in zip(self.faults, self.chances, strict=True)
            if chance > self.chances.max() - _STILL_LIKELY
        )


def weigh(sheet: Sheet) -> list[Weighed]:
    """The faults that explain the readings best, best first."""
    first = sorted(_first_round(sheet), key=lambda each: -each.evidence)[:_BEST]
    return sorted(_second_round(sheet, first), key=lambda each: -each.evidence)


def log_sum(values: Floats) -> float:
    """Logarithm of the sum of what these are logarithms of."""
    most = float(np.max(values))
    return most + float(np.log(np.sum(np.exp(values - most))))


def _first_round(sheet: Sheet) -> Iterator[Weighed]:
    known = sheet.known
    every = np.column_stack([known.under_faults(spot) for spot in sheet.spots])
    kinds = Counter(family.head.kind for family in known.families)
    scatter = known.in_builds(sheet.spots)
    common, usual = np.atleast_2d(np.cov(scatter, rowvar=False)), np.median(scatter, axis=0)
    first = 0
    for family in known.families:
        rows = slice(first, first + len(family.faults))
        first = rows.stop
        faults, values = _refined(family, every[rows])
        prior = log(OFTEN.get(family.head.kind, 1.0) / kinds[family.head.kind] / len(faults))
        chances, misfits = _likelihoods(sheet, values, _carried_over(common, usual, values))
        yield from _split(family, Weighed(faults, values, prior, chances, misfits, family.smooth))


def _refined(family: Family, values: Floats) -> tuple[tuple[Fault, ...], Floats]:
    """Sizes between those solved, and what they show, by straight lines."""
    if not family.smooth:
        return family.faults, values
    steps = np.arange(len(values))
    fine = np.linspace(0, len(values) - 1, _BETWEEN * (len(values) - 1) + 1)
    amounts = np.array([fault.amount for fault in family.faults])
    columns = [np.interp(fine, steps, column) for column in values.T]
    between = np.interp(fine, steps, amounts)
    return tuple(replace(family.head, amount=float(each)) for each in between), np.column_stack(columns)


def _carried_over(common: Floats, usual: Floats, values: Floats) -> Floats:
    """Covariance (G, M, M) under faults that leave `values` (G, M), from that of correct builds."""
    scale = np.clip(np.abs(values) / np.maximum(np.abs(usual), 1e-6), 0.0, 3.0)
    carried: Floats = scale[:, :, np.newaxis] * common * scale[:, np.newaxis, :]
    return carried


def _likelihoods(sheet: Sheet, values: Floats, covariance: Floats) -> tuple[Floats, Floats]:
    """Log likelihood and chi squared (G,) of the readings under faults that show `values` (G, M)."""
    total = np.broadcast_to(covariance, (len(values), *covariance.shape[-2:])).copy()
    every = np.arange(values.shape[1])
    total[:, every, every] += sheet.meter_u(values) ** 2
    residual = sheet.shown - values
    solved = np.linalg.solve(total, residual[:, :, np.newaxis])[:, :, 0]
    misfits = np.sum(residual * solved, axis=1)
    return -0.5 * (misfits + np.linalg.slogdet(total)[1]), misfits


def _split(family: Family, whole: Weighed) -> Iterator[Weighed]:
    """Breaks that leave other readings without volts are other causes."""
    if family.head.kind != "open":
        yield whole
        return
    for group in np.unique(_alike_dark(whole.values)):
        here = np.flatnonzero(_alike_dark(whole.values) == group)
        faults = tuple(whole.faults[k] for k in here)
        yield Weighed(faults, whole.values[here], whole.prior, whole.chances[here], whole.misfits[here])


def _alike_dark(values: Floats) -> NDArray[np.intp]:
    """Numbers of groups (G,): breaks that leave the same readings without volts."""
    _, groups = np.unique(values < _DARK_V, axis=0, return_inverse=True)
    return np.asarray(groups, dtype=np.intp).reshape(-1)


def _second_round(sheet: Sheet, first: list[Weighed]) -> Iterator[Weighed]:
    """Weighed anew with the covariance that correct builds with just this fault have."""
    pairs = [tuple(moved_builds(sheet.known.arrangement, each.faults[each.best])) for each in first]
    moves = _shown(sheet, tuple(pair for some in pairs for pair in some))
    start = 0
    for each, some in zip(first, pairs, strict=True):
        here = moves[start : start + len(some)]
        start += len(some)
        apart = np.vstack((here[1:] - here[0], _burden_moves(sheet, each)))
        chances, misfits = _likelihoods(sheet, each.values, apart.T @ apart)
        yield replace(each, chances=chances, misfits=misfits)


def _shown(sheet: Sheet, pairs: tuple[tuple[Arrangement, Fault], ...]) -> Floats:
    """What the meter would show (P, M) of builds with a fault each."""
    known = sheet.known
    arrangements, faults = (tuple(pair[k] for pair in pairs) for k in (0, 1))
    states = solve_faults(arrangements, known.nominal, faults)  # type: ignore[arg-type]
    columns = [
        volts_at(states, spot) if spot.unit == "V" else known.shown(arrangements, faults, spot)  # type: ignore[arg-type]
        for spot in sheet.spots
    ]
    return np.column_stack(columns)


def _burden_moves(sheet: Sheet, each: Weighed) -> Floats:
    """How the readings (1, M) move when the meter's burden is one standard uncertainty off."""
    known, fault = sheet.known, each.faults[each.best]
    moves = np.zeros((1, len(sheet.spots)))
    for k, spot in enumerate(sheet.spots):
        if spot.unit == "A":
            u_ohm = burden_u_ohm(known.burden_ohm(spot), stated=known.meter.burden_stated)
            there, here = (known.shown(known.arrangement, (fault,), spot, ohm) for ohm in (u_ohm, 0.0))
            moves[0, k] = (there - here)[0]
    return moves
