"""What an arrangement costs: money for its small parts, joints, cuts, metres of extra wire."""

from __future__ import annotations

from dataclasses import dataclass, fields

import numpy as np
from numpy.typing import NDArray

from guidegen.choose.pool import Field, Trials
from guidegen.circuit.arrangement import Arrangement, Floats
from guidegen.parts.cuts import string_cuts
from guidegen.parts.joints import joints
from guidegen.parts.price_list import price_list
from guidegen.project.schema import Project
from guidegen.tables.preferred import RESISTOR_RATINGS_W


@dataclass(frozen=True)
class Cost:
    """Cost of one arrangement.

    `money` for wire, resistors, fuse and joints (strings and supply are the
    same in all); `joints` soldered, one a conductor; `cuts` of strings;
    `extra_wire_m` as a route, `core_m` in single cores; `feeder_m` route.
    """

    money: float
    currency: str
    typical: tuple[str, ...]
    joints: int
    cuts: int
    extra_wire_m: float
    core_m: float
    feeder_m: float


def cost_of(project: Project, arrangement: Arrangement) -> Cost:
    """What this arrangement costs; its resistors are rated."""
    prices, runs = price_list(project.prices), arrangement.runs
    extras = [run for run in runs if run.extra is not None and run.feed != "one end"]
    cores = [(1 if run.feed == "opposite ends" else 2, run.extra) for run in extras]
    wires = [(2, run.feeder) for run in runs] + cores
    soldered = sum(len(joint.poles) for joint in joints(arrangement))
    money = prices.fuse + prices.joint * soldered
    for count, cable in wires:
        if cable is not None:
            money += count * cable.length_m * prices.core_price(cable.conductor.area_m2 * 1e6)
    for run in runs:
        if run.resistor.fitted and run.resistor.rating_w is not None:
            money += prices.resistor_price(run.resistor.rating_w)
    return Cost(
        money=money,
        currency=prices.currency,
        typical=prices.typical,
        joints=soldered,
        cuts=len(string_cuts(arrangement)),
        extra_wire_m=sum(run.extra.length_m for run in extras if run.extra is not None),
        core_m=sum(count * cable.length_m for count, cable in cores if cable is not None),
        feeder_m=sum(run.feeder.length_m for run in runs if run.feeder is not None),
    )


@dataclass(frozen=True, eq=False)
class Costs:
    """Costs of n candidates, all (n,); `money` without their resistors, whose ratings are not known yet."""

    money: Floats
    joints: Floats
    cuts: Floats
    extra_wire_m: Floats
    core_m: Floats

    def some(self, which: NDArray[np.generic]) -> Costs:
        """Those of some candidates."""
        return Costs(*(getattr(self, each.name)[which] for each in fields(self)))


def costs_of(field: Field, trials: Trials) -> Costs:
    """What these candidates cost but for their resistors."""
    prices, pool = price_list(field.project.prices), field.pool
    core = np.array([prices.core_per_m[size] for size in field.sizes_mm2])

    def summed(of_part: Floats) -> Floats:
        """Over the parts of each candidate's layout."""
        sums: Floats = np.add.reduceat(of_part, field.first)[trials.layout]
        return sums

    # Lengths do not depend on the size of the extra wire: those with the first size do.
    shape = field.part_shape[0]
    joints, core_m, feeder_m = (
        summed(each) for each in (field.part_joints, pool.core_m[shape], field.part_feeder_m)
    )
    return Costs(
        money=prices.fuse
        + prices.joint * joints
        + core[trials.extra] * core_m
        + 2 * core[trials.feeder] * feeder_m,
        joints=joints,
        cuts=summed(field.part_cuts),
        extra_wire_m=summed(pool.extra_m[shape]),
        core_m=core_m,
    )


def resistor_money(field: Field, rating_w: Floats, ohm: Floats) -> Floats:
    """Price of each of these resistors; nothing where none is fitted."""
    prices = price_list(field.project.prices)
    by_rating = np.array([prices.resistor[rating] for rating in RESISTOR_RATINGS_W])
    return np.where(ohm > 0, by_rating[np.searchsorted(RESISTOR_RATINGS_W, rating_w)], 0.0)


def least_resistor_money(field: Field, trials: Trials) -> Floats:
    """Less than the resistors of these candidates can cost, whatever their ratings (n,)."""
    cheapest = min(price_list(field.project.prices).resistor.values())
    needed = field.pool.least_step[field.part_shape[0]] > 0
    return cheapest * np.add.reduceat(needed.astype(float), field.first)[trials.layout]
