"""What deviating readings of a finished build mean: likely faults, ranked by how well they explain them.

A fault's weight is its share of all the evidence (Bayes' rule with equal
weight for every kind of fault).  Faults that leave the same readings count as
one cause, and a further reading is named that tells the best two apart.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from math import ceil, exp, sqrt

import numpy as np
from scipy.special import gammaincc

from guidegen.bench.evidence import Sheet, Weighed, log_sum, weigh
from guidegen.bench.faults import Fault
from guidegen.bench.faulty import solve_faults
from guidegen.bench.spots import Spot, Taken, all_volts, volts_at
from guidegen.bench.suspects import Suspects
from guidegen.circuit.arrangement import Floats
from guidegen.circuit.meter import error_of
from guidegen.circuit.points import test_points

#: Causes whose readings differ by less than this share of the meter's standard uncertainty are one.
_ALIKE = 0.5
#: A further reading decides when the two causes are this many of its standard uncertainties apart.
DECIDES = 3.0
#: Decimals of a volt that a meter may show.
_SHOWN = 4
#: Faults that are tried against the best one for a reading that decides.
_TRIED = 8
#: Causes that are told, at most, and the least weight of one.
MOST_CAUSES, LEAST_WEIGHT = 4, 0.01


@dataclass(frozen=True)
class Cause:
    """One likely cause: the fault at its likeliest size, and how well it fits.

    `weight`: its share of all the evidence; `fit`: share of builds with just
    this fault whose readings would fit worse; `first` and `last`: the same
    fault at the ends of what the readings leave open; `twins`: other faults
    that leave every reading taken the same.
    """

    fault: Fault
    weight: float
    fit: float
    first: Fault
    last: Fault
    twins: tuple[Fault, ...] = ()


@dataclass(frozen=True)
class Deciding:
    """One further reading of volts, and what it shows if the first or the second of two faults is true."""

    spot: Spot
    first: Fault
    second: Fault
    if_first: float
    if_second: float


@dataclass(frozen=True)
class Diagnosis:
    """Likely causes, best first.

    `can_tell` is False while no bulb was read; `deciding`: the reading that
    best tells the two best causes apart, None when no volts do.
    """

    causes: tuple[Cause, ...]
    can_tell: bool
    deciding: Deciding | None


def diagnose(known: Suspects, taken: tuple[Taken, ...]) -> Diagnosis:
    """Rank the suspects by how well they explain the readings taken (at least one)."""
    sheet = Sheet.of(known, taken)
    causes = _causes(sheet, weigh(sheet))
    told = tuple(cause for k, cause in enumerate(causes) if k < 2 or cause.weight >= LEAST_WEIGHT)
    return Diagnosis(
        causes=told[:MOST_CAUSES],
        can_tell=any(spot.kind == "bulb" for spot in sheet.spots),
        deciding=_deciding(known, sheet.spots, causes),
    )


def _causes(sheet: Sheet, found: list[Weighed]) -> tuple[Cause, ...]:
    """Causes, best first; faults that no reading taken tells apart are one."""
    groups: list[list[Weighed]] = []
    for each in found:
        same = next((group for group in groups if _alike(sheet, group[0], each) is not None), None)
        if same is None:
            groups.append([each])
        else:
            same.append(each)
    evidences = [log_sum(np.array([each.evidence for each in group])) for group in groups]
    total = log_sum(np.array(evidences))
    causes = [
        _cause(sheet, group, exp(evidence - total)) for group, evidence in zip(groups, evidences, strict=True)
    ]
    return tuple(sorted(causes, key=lambda cause: -cause.weight))


def _alike(sheet: Sheet, one: Weighed, other: Weighed) -> Fault | None:
    """The size of the other fault that leaves the same readings as the one at its best; None without."""
    values = one.values[one.best]
    u = sheet.meter_u(values)
    near, at = _nearest((other.values - values) / u, between=other.smooth)
    if np.max(np.abs(near)) >= _ALIKE:
        return None
    here, there = other.faults[int(at)], other.faults[ceil(at)]
    return replace(here, amount=here.amount + (at - int(at)) * (there.amount - here.amount))


def _nearest(points: Floats, *, between: bool) -> tuple[Floats, float]:
    """The point (M,) nearest to zero of some points (G, M), or of the lines between them, and its place."""
    starts, steps = points, np.zeros_like(points)
    if between and len(points) > 1:
        starts, steps = points[:-1], np.diff(points, axis=0)
    length = np.sum(steps**2, axis=1)
    along = np.clip(-np.sum(starts * steps, axis=1) / np.where(length > 0, length, 1.0), 0.0, 1.0)
    near = starts + along[:, np.newaxis] * steps
    best = int(np.argmin(np.max(np.abs(near), axis=1)))
    return near[best], best + float(along[best])


def _cause(sheet: Sheet, group: list[Weighed], weight: float) -> Cause:
    head = group[0]
    twins = [_alike(sheet, head, each) for each in group[1:]]
    return Cause(
        fault=head.faults[head.best],
        weight=weight,
        fit=float(gammaincc(len(sheet.spots) / 2, head.misfits[head.best] / 2)),
        first=head.likely[0],
        last=head.likely[-1],
        twins=tuple(fault for fault in twins if fault is not None),
    )


def _deciding(known: Suspects, spots: tuple[Spot, ...], causes: tuple[Cause, ...]) -> Deciding | None:
    """The unread volts in which the best cause differs most from its twins, else from the next causes.

    A test point is looked for first, since not every bulb has bare metal
    beside it; while no bulb was read, only bulbs are.
    """
    read = any(spot.kind == "bulb" for spot in spots)
    best = causes[:2] if read else causes
    order = [fault for cause in best for fault in (cause.fault, *cause.twins)][:_TRIED]
    points = tuple(Spot(each.kind, each.run, each.bulb) for each in test_points(known.arrangement))
    for where in (points, all_volts(known.arrangement)):
        unread = tuple(spot for spot in where if spot not in spots and (read or spot.kind == "bulb"))
        for second in order[1:] if unread else ():
            found = _farthest(known, unread, order[0], second)
            if found is not None:
                return found
    return None


def _farthest(known: Suspects, unread: tuple[Spot, ...], first: Fault, second: Fault) -> Deciding | None:
    states = solve_faults(known.arrangement, known.nominal, (first, second))
    values = np.column_stack([volts_at(states, spot) for spot in unread])
    u = np.array([error_of(known.meter.volts, float(most)) for most in values.max(axis=0)]) / sqrt(3)
    apart = np.abs(values[0] - values[1]) / u
    best = int(np.argmax(apart))
    if apart[best] < DECIDES:
        return None
    if_first, if_second = (float(value) for value in np.round(values[:, best], _SHOWN))
    return Deciding(unread[best], first, second, if_first, if_second)
