"""Which candidates nothing beats, and in which order they are shown.

Values are compared in steps that matter to a person, so that the list is not
filled with arrangements that are all but the same: what lies within one step
counts as alike.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from guidegen.choose.costs import Costs
from guidegen.circuit.arrangement import Floats
from guidegen.project.schema import Goals
from guidegen.safety.leds import GOAL_MET_FROM

#: Arrangements that are shown at most.
MOST_SHOWN = 8
EVENNESS_STEP, CURRENT_STEP, MONEY_STEP, WIRE_STEP_M = 0.02, 0.02, 0.10, 0.5
#: Room for rounding, in steps: a value just below a step counts as on it.
_ROUNDING = 1e-6

Whole = NDArray[np.int64]
Flags = NDArray[np.bool_]


def objectives(goals: Goals, evenness: Floats, led_share: Floats, costs: Costs, money: Floats) -> Whole:
    """What is weighed of n candidates, (n, 7), in whole steps, less being better.

    Goal of evenness missed (0 or 1), evenness lacking, LED current lacking
    below what a goal needs, money, joints, cuts, metres of extra wire.
    """
    lacking_a = np.maximum(GOAL_MET_FROM - led_share, 0.0)
    columns = [
        (evenness < goals.evenness) | (lacking_a > 0),
        _steps_down(1 - evenness, EVENNESS_STEP),
        _steps_down(lacking_a, CURRENT_STEP),
        _steps_down(money, MONEY_STEP),
        costs.joints,
        costs.cuts,
        _steps_down(costs.extra_wire_m, WIRE_STEP_M),
    ]
    return np.column_stack(columns).astype(np.int64)


def _steps_down(values: Floats, step: float) -> Floats:
    whole: Floats = np.floor(values / step + _ROUNDING)
    return whole


def beaten(values: Whole, numbers: Whole, by: Whole, by_numbers: Whole) -> Flags:
    """Which of n candidates one of m others beats (n,).

    One beats another when it is as good in everything and better in
    something, or alike in everything with a lower number.
    """
    lost, columns, sums = (
        np.zeros(len(values), dtype=bool),
        np.ascontiguousarray(values.T),
        values.sum(axis=1),
    )
    for other, number in zip(by, by_numbers, strict=True):
        as_good = (other[:, None] <= columns).all(axis=0)
        # What is as good in everything and has a lower sum is better in something.
        lost |= as_good & ((other.sum() < sums) | (number < numbers))
    return lost


def unbeaten(values: Whole, numbers: Whole) -> NDArray[np.intp]:
    """Indexes of the candidates that none of the others beats, by their numbers."""
    # What beats another has the smaller sum, or the lower number: nothing left beats the first that is left.
    order = np.lexsort((numbers, values.sum(axis=1)))
    left, kept = np.ascontiguousarray(values[order].T), []
    while len(order):
        kept.append(int(order[0]))
        better = (left < left[:, :1]).any(axis=0)
        order, left = order[better], left[:, better]
    return np.array(sorted(kept, key=lambda index: numbers[index]), dtype=np.intp)


@dataclass(frozen=True)
class Standing:
    """What puts one arrangement before another: goals first, then the weighed cost; less is better."""

    lacking: float
    weighed: float
    money: float
    uneven: float
    joints: int
    cuts: int
    extra_wire_m: float

    def key(self) -> tuple[float, ...]:
        """Sort key; values that read alike count as alike."""
        return (
            round(self.lacking, 2),
            round(self.weighed, 2),
            round(self.money, 2),
            round(self.uneven, 2),
            self.joints,
            self.cuts,
            round(self.extra_wire_m, 1),
        )


def with_most_even(order: list[int], evenness: Sequence[float], most: int) -> list[int]:
    """The first of some in this order, at most `most`, the last of them giving way to the most even of all.

    `evenness` of each by index; what reads alike counts as alike, and the
    first of those in order is taken.  Where one alone is shown it stays.
    """
    shown = order[:most]
    most_even = max(order, key=lambda index: round(evenness[index], 2))
    return shown if most_even in shown or most < 2 else [*shown[:-1], most_even]


def standing(
    goals: Goals,
    evenness: float,
    led_share: float,
    money: float,
    joints: int,
    cuts: int,
    extra_wire_m: float,
) -> Standing:
    """Where an arrangement stands.

    `lacking`: how far it is from evenness and LED current wanted, each as a
    share of it, rounded up so that no miss reads as met.
    """
    short_evenness = max(0.0, 1 - evenness / goals.evenness)
    short_current = max(0.0, 1 - led_share / GOAL_MET_FROM)
    lacking = short_evenness + short_current
    weights = goals.weights
    weighed = (
        weights.cost * money
        + weights.evenness * 10 * (1 - evenness)
        + weights.joints * joints
        + weights.cuts * cuts
        + weights.wire * extra_wire_m
    )
    return Standing(
        lacking=0.0 if lacking == 0 else max(0.01, lacking),
        weighed=weighed,
        money=money,
        uneven=1 - evenness,
        joints=joints,
        cuts=cuts,
        extra_wire_m=extra_wire_m,
    )
