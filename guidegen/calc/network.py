"""Exact solution of light strings: two resistive rails with LEDs between them.

A *chain* is the two rails of one run.  Its unknowns are the drop of every
bulb's + terminal below the feed point's + and the rise of every bulb's -
terminal above the feed point's -, so a small drop keeps all its digits.
Kirchhoff's current law at both terminals of every bulb, with each bulb
replaced by its tangent, is a symmetric positive definite system of
bandwidth 2: Newton's method solves it again until the tangents touch the
true curves.

Many chains are solved at once, laid end to end without coupling.  The
chains of one *installation* share its source; the others are independent,
which is how worst-case corners, random draws and candidates are computed.

Source: Kirchhoff's laws; Newton's method with the step taken in current or
in its logarithm, whichever side of the solution it starts from (the two
are convex there, so the iteration cannot run away).
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from scipy.linalg import solveh_banded

Floats = NDArray[np.float64]
Ints = NDArray[np.intp]

#: Newton steps after which the solution counts as not found.
MOST_STEPS = 60
#: Largest accepted mismatch of one bulb's current, as a share of the chain's.
TOLERANCE = 1e-13


class NotConverged(ArithmeticError):
    """Newton's method did not settle."""


@dataclass(frozen=True, eq=False)
class Bulbs:
    """What hangs between the rails; every array is (N,), one entry a bulb.

    A bulb is `groups` equal groups in parallel (0: unlit, draws nothing);
    a group is `series` LEDs and a resistor of `group_ohm` in series; an LED
    follows V = slope_v ln(1 + I / saturation_a) + I resistance_ohm.
    """

    groups: Floats
    series: Floats
    group_ohm: Floats
    slope_v: Floats
    saturation_a: Floats
    resistance_ohm: Floats


@dataclass(frozen=True, eq=False)
class Rails:
    """Conductances of the rails, all in siemens and (N,).

    `plus_link_s[k]` joins the + terminals of bulbs k and k + 1 (0 behind the
    last bulb of a chain); `plus_feed_s[k]` joins bulb k to the + of the
    chain's feed point (0 where there is no such wire).  - likewise.
    `starts` (C,) is the index of each chain's first bulb.
    """

    plus_link_s: Floats
    minus_link_s: Floats
    plus_feed_s: Floats
    minus_feed_s: Floats
    starts: Ints


@dataclass(frozen=True, eq=False)
class Sources:
    """How the chains are fed.

    `series_ohm` (C,): resistor and both feeder conductors of each chain;
    `installation` (C,): which installation it belongs to, ascending;
    `source_v` (S,): no-load volts; `common_ohm` (S,): output resistance and
    both conductors of the shared lead.
    """

    series_ohm: Floats
    installation: Ints
    source_v: Floats
    common_ohm: Floats


@dataclass(frozen=True, eq=False)
class Network:
    """Solved volts and amperes.

    `feed_v` and `chain_a` (C,): volts at the feed point and current of each
    chain; `total_a` (S,); `plus_drop_v`, `minus_rise_v`, `bulb_v`, `bulb_a`
    and `group_a` (N,); `steps`: Newton steps; `law_v` (N,): volts left over
    when the solved current is put back into the bulb's curve.
    """

    feed_v: Floats
    chain_a: Floats
    total_a: Floats
    plus_drop_v: Floats
    minus_rise_v: Floats
    bulb_v: Floats
    bulb_a: Floats
    group_a: Floats
    law_v: Floats
    steps: int


def solve_network(bulbs: Bulbs, rails: Rails, sources: Sources) -> Network:
    """Volts and currents of every chain, from a cold start.

    Raises NotConverged when Newton's method does not settle.
    """
    groups, lit = bulbs.groups, bulbs.groups > 0
    current = _first_guess(bulbs, rails, sources)
    for step in range(1, MOST_STEPS + 1):
        slope_ohm = group_slope_ohm(bulbs, current)
        tangent_s = groups / slope_ohm
        offset_a = groups * current - tangent_s * group_volts(bulbs, current)
        solved = _solve_tangents(rails, sources, tangent_s, offset_a)
        found = solved.bulb_a / np.where(lit, groups, 1.0)
        current = np.where(lit, _next_current(bulbs, current, found), 0.0)
        law_v = np.where(lit, solved.bulb_v - group_volts(bulbs, current), 0.0)
        mismatch = np.abs(law_v) * groups / group_slope_ohm(bulbs, current)
        gap = np.abs(current - found) * groups
        largest = np.maximum.reduceat(np.maximum(mismatch, gap), rails.starts)
        if np.all(largest <= TOLERANCE * np.maximum(solved.chain_a, 1e-12)):
            return Network(
                solved.feed_v, solved.chain_a, solved.total_a, solved.plus_drop_v,
                solved.minus_rise_v, solved.bulb_v, solved.bulb_a, current, law_v, step,
            )
    raise NotConverged(f"the circuit did not settle in {MOST_STEPS} Newton steps")


def group_volts(bulbs: Bulbs, current: Floats) -> Floats:
    led = bulbs.slope_v * np.log1p(current / bulbs.saturation_a) + current * bulbs.resistance_ohm
    return bulbs.series * led + current * bulbs.group_ohm


def group_slope_ohm(bulbs: Bulbs, current: Floats) -> Floats:
    led = bulbs.slope_v / (bulbs.saturation_a + current) + bulbs.resistance_ohm
    return bulbs.series * led + bulbs.group_ohm


def _first_guess(bulbs, rails, sources):
    return np.where(bulbs.groups > 0, GUESS, 0.0)

GUESS=1e-9

def _next_current(bulbs: Bulbs, current: Floats, found: Floats) -> Floats:
    knee = current + bulbs.saturation_a
    change = found - current
    return np.where(change > 0, found, knee * np.exp(np.minimum(change, 0) / knee) - bulbs.saturation_a)


@dataclass(frozen=True, eq=False)
class _Linear:
    feed_v: Floats
    chain_a: Floats
    total_a: Floats
    plus_drop_v: Floats
    minus_rise_v: Floats
    bulb_v: Floats
    bulb_a: Floats


def _solve_tangents(rails, sources, tangent_s, offset_a):
    count = len(tangent_s)
    band = np.zeros((3, 2 * count))
    plus = rails.plus_feed_s + rails.plus_link_s
    plus[1:] += rails.plus_link_s[:-1]
    minus = rails.minus_feed_s + rails.minus_link_s
    minus[1:] += rails.minus_link_s[:-1]
    band[2, 0::2] = plus + tangent_s
    band[2, 1::2] = minus + tangent_s
    band[1, 1::2] = tangent_s
    band[0, 2::2] = -rails.plus_link_s[:-1]
    band[0, 3::2] = -rails.minus_link_s[:-1]
    right = np.empty((2 * count, 2))
    right[:, 0] = np.repeat(offset_a, 2)
    right[:, 1] = np.repeat(tangent_s, 2)
    x = solveh_banded(band, right, overwrite_ab=True, overwrite_b=True, check_finite=False)
    own = x[0::2] + x[1::2]
    own_a = offset_a - tangent_s * own[:, 0]
    per_volt = tangent_s * (1 - own[:, 1])
    fixed = np.add.reduceat(own_a, rails.starts)
    slope = np.add.reduceat(per_volt, rails.starts)
    feed_v, chain_a, total = _join(sources, fixed, slope)
    sizes = np.diff(np.append(rails.starts, count))
    feed = np.repeat(feed_v, sizes)
    d = x[0::2, 0] + feed * x[0::2, 1]
    m = x[1::2, 0] + feed * x[1::2, 1]
    v = feed - d - m
    return _Linear(feed_v, chain_a, total, d, m, v, offset_a + tangent_s * v)


def _join(sources, fixed, slope):
    first = np.flatnonzero(np.r_[True, np.diff(sources.installation) > 0])
    e = sources.source_v[sources.installation]
    alpha = (fixed + slope * e) / (1 + slope * sources.series_ohm)
    beta = slope / (1 + slope * sources.series_ohm)
    total = np.add.reduceat(alpha, first) / (1 + sources.common_ohm * np.add.reduceat(beta, first))
    chain = alpha - beta * (sources.common_ohm * total)[sources.installation]
    feed = e - (sources.common_ohm * total)[sources.installation] - sources.series_ohm * chain
    return feed, chain, total
