"""Resistors, currents and light of many candidates, reckoned from curves instead of solved bulb by bulb.

With the curves of its runs a candidate is one equation for each run, however
many bulbs there are.  The search reckons all candidates so, and solves in
full those that this leaves in the race.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from guidegen.choose.circuits import Chains
from guidegen.choose.curves import ROOM, SHARES, Bounds, Flags, curve_at
from guidegen.choose.pool import Field
from guidegen.choose.resistors import MOST_ROUNDS, least_steps, values_ohm
from guidegen.circuit.arrangement import Floats

#: Newton steps, and the change of a share in the last one up to which it counts as settled.
_STEPS, _SETTLED = 5, 1e-6
#: Shares are held within these while they settle.
_LEAST, _MOST = 0.5, 2.0


@dataclass(frozen=True, eq=False)
class Reckoned:
    """n candidates with K runs.

    `sure` (n,): whether the figures hold to within `ROOM`; `ohm` and
    `current_a` (K,): resistor and nominal current of every run; `evenness`
    (n,): at least that of the candidate, but for `ROOM`.
    """

    chains: Chains
    sure: Flags
    ohm: Floats
    current_a: Floats
    evenness: Floats


def reckon(field: Field, chains: Chains, bounds: Bounds) -> Reckoned:
    """Fit the resistors of these candidates and settle their currents."""
    values, aim_a = values_ohm(field), bounds.at_aim.chain_a[chains.shape]
    step, feed_v = least_steps(field, chains, bounds.at_aim), bounds.feed_v[:, chains.shape]
    share, settled = np.ones(len(step)), np.zeros(len(step), dtype=bool)
    for _round in range(MOST_ROUNDS):
        share, settled = _settle(field, chains, values[step], aim_a, feed_v, share)
        above = (share > 1 + ROOM) & (step < len(values) - 1)
        if not above.any():
            break
        step = step + above
    # A share all but at the aim may belong to the next resistor; the curves end at the least share.
    sure = settled & (share < 1 - ROOM) & (share >= SHARES[-1]) & bounds.lit[chains.shape]
    dim, bright = (curve_at(curve[:, chains.shape], share)[0] for curve in (bounds.dim, bounds.bright))
    dimmest, brightest = np.minimum.reduceat(dim, chains.first), np.maximum.reduceat(bright, chains.first)
    return Reckoned(
        chains=chains,
        sure=np.logical_and.reduceat(sure, chains.first),
        ohm=values[step],
        current_a=share * aim_a,
        evenness=dimmest / np.where(brightest > 0, brightest, 1.0),
    )


def _settle(
    field: Field, chains: Chains, ohm: Floats, aim_a: Floats, feed_v: Floats, share: Floats
) -> tuple[Floats, Flags]:
    """Shares (K,) of the currents aimed at with these resistors, by Newton's method; whether they settled."""
    supply = field.supply.supply
    common_ohm = supply.output_ohm + (0.0 if supply.lead is None else 2 * supply.lead.ohm)
    series_v = (ohm + 2 * chains.feeder_ohm) * aim_a
    settled = np.zeros(len(share), dtype=bool)
    for _step in range(_STEPS):
        own_v, slope_v = curve_at(feed_v, share)
        per_v = 1 / np.maximum(series_v + slope_v, 1e-9)
        alone = share - (series_v * share + own_v) * per_v
        drawn_a, drawn_s = (np.add.reduceat(aim_a * each, chains.first) for each in (alone, per_v))
        bus_v = (supply.voltage_v - common_ohm * drawn_a) / (1 + common_ohm * drawn_s)
        before, share = share, np.clip(alone + per_v * bus_v[chains.trial], _LEAST, _MOST)
        settled = np.abs(share - before) < _SETTLED
        if settled.all():
            break
    return share, settled
