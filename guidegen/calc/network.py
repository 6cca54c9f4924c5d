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

from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray
from scipy.linalg import LinAlgError, solveh_banded
from scipy.linalg.lapack import dpbsv

Floats = NDArray[np.float64]
Ints = NDArray[np.intp]

#: Newton steps after which the solution counts as not found.
MOST_STEPS = 60
#: Largest accepted mismatch of one bulb's current, as a share of the chain's.
TOLERANCE = 1e-12
#: Below this a chain counts as carrying nothing, ampere.
LEAST_CHAIN_A = 1e-9
#: Current of a group before anything is known, ampere: below any that is looked for,
#: since Newton's method climbs faster than it descends.
COLD_START_A = 1e-5
#: Bulbs from which on a run starts lower, and the power of its length that it does so with: the far
#: end of a long ladder gets ever less.  Tried on runs of 1,000 to 100,000 bulbs: fewest steps there.
LONG_RUN = 500
LONG_RUN_POWER = 1.3


class NotConvergedError(ArithmeticError):
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
    `installation` (C,): which installation it belongs to;
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


def solve_network(
    bulbs: Bulbs,
    rails: Rails,
    sources: Sources,
    start_a: Floats | None = None,
    tolerance: float = TOLERANCE,
) -> Network:
    """Volts and currents of every chain.

    `start_a` (N,): group currents to start from, ampere; a cold start without.
    `tolerance`: largest accepted mismatch of one bulb's current, as a share
    of its chain's.
    Raises NotConvergedError when Newton's method does not settle.
    """
    lit = bulbs.groups > 0
    share = np.where(lit, bulbs.groups, 1.0)
    group_a = np.where(lit, _cold_start_a(rails) if start_a is None else start_a, 0.0)
    volts, slope_ohm = group_volts(bulbs, group_a), group_slope_ohm(bulbs, group_a)
    for step in range(1, MOST_STEPS + 1):
        tangent_s = bulbs.groups / slope_ohm
        solved = _solve_tangents(rails, sources, tangent_s, bulbs.groups * group_a - tangent_s * volts)
        aimed_a = solved.bulb_a / share
        group_a = np.where(lit, _next_current(bulbs, group_a, aimed_a), 0.0)
        volts, slope_ohm = group_volts(bulbs, group_a), group_slope_ohm(bulbs, group_a)
        law_v = np.where(lit, solved.bulb_v - volts, 0.0)
        slack_a = bulbs.groups * np.maximum(np.abs(law_v) / slope_ohm, np.abs(group_a - aimed_a))
        worst_a = np.maximum.reduceat(slack_a, rails.starts)
        if np.all(worst_a <= tolerance * np.maximum(solved.chain_a, LEAST_CHAIN_A)):
            return replace(solved, group_a=group_a, law_v=law_v, steps=step)
    raise NotConvergedError(f"the circuit did not settle in {MOST_STEPS} Newton steps")


def group_volts(bulbs: Bulbs, group_a: Floats) -> Floats:
    """Volts (N,) across a group that carries `group_a` ampere."""
    led_v = bulbs.slope_v * np.log1p(group_a / bulbs.saturation_a) + group_a * bulbs.resistance_ohm
    return bulbs.series * led_v + group_a * bulbs.group_ohm


def group_slope_ohm(bulbs: Bulbs, group_a: Floats) -> Floats:
    """Slope dV/dI (N,) of a group at `group_a` ampere, in ohm."""
    led_ohm = bulbs.slope_v / (bulbs.saturation_a + group_a) + bulbs.resistance_ohm
    return bulbs.series * led_ohm + bulbs.group_ohm


def drops_for_loads(rails: Rails, load_a: Floats) -> tuple[Floats, Floats]:
    """Drop of the + rail and rise of the - rail, both (N,) in volt, for known bulb currents.

    `load_a` (N,): ampere that every bulb draws whatever its volts are.
    """
    nothing = np.zeros_like(load_a)
    both = solveh_banded(_band(rails, nothing), np.repeat(load_a, 2))
    return both[0::2], both[1::2]


def kirchhoff_residual_a(bulbs: Bulbs, rails: Rails, network: Network) -> Floats:
    """Largest breach of Kirchhoff's current law in each chain, ampere (C,).

    At both terminals of every bulb: current that the wires bring, less the
    current that the bulb's curve draws at its solved volts.
    """
    drawn_a = network.bulb_a + _lit_slope_s(bulbs, network.group_a) * network.law_v
    breaches = [
        np.abs(_wire_current_a(link_s, feed_s, drop_v) - drawn_a)
        for link_s, feed_s, drop_v in (
            (rails.plus_link_s, rails.plus_feed_s, network.plus_drop_v),
            (rails.minus_link_s, rails.minus_feed_s, network.minus_rise_v),
        )
    ]
    return np.maximum.reduceat(np.maximum(*breaches), rails.starts)


def rail_loss_w(rails: Rails, network: Network) -> Floats:
    """Watts that the rails of each chain turn into heat (C,)."""
    loss = np.zeros_like(network.bulb_v)
    for link_s, feed_s, drop_v in (
        (rails.plus_link_s, rails.plus_feed_s, network.plus_drop_v),
        (rails.minus_link_s, rails.minus_feed_s, network.minus_rise_v),
    ):
        loss += feed_s * drop_v**2
        loss[:-1] += link_s[:-1] * np.diff(drop_v) ** 2
    return np.add.reduceat(loss, rails.starts)


def power_imbalance_w(rails: Rails, sources: Sources, network: Network) -> Floats:
    """Watts delivered by each source less watts used by wires, resistors and bulbs (S,)."""
    bulbs_w = np.add.reduceat(network.bulb_v * network.bulb_a, rails.starts)
    chain_w = bulbs_w + rail_loss_w(rails, network) + sources.series_ohm * network.chain_a**2
    used_w = _per_source(sources, chain_w) + sources.common_ohm * network.total_a**2
    return sources.source_v * network.total_a - used_w


def _cold_start_a(rails: Rails) -> Floats:
    bulbs = _chain_sizes(rails)
    start_a = COLD_START_A * np.minimum(1.0, LONG_RUN / bulbs) ** LONG_RUN_POWER
    return np.repeat(start_a, bulbs)


def _chain_sizes(rails: Rails) -> Ints:
    return np.diff(np.append(rails.starts, len(rails.plus_link_s)))


def _lit_slope_s(bulbs: Bulbs, group_a: Floats) -> Floats:
    return bulbs.groups / group_slope_ohm(bulbs, group_a)


def _wire_current_a(link_s: Floats, feed_s: Floats, drop_v: Floats) -> Floats:
    between_a = link_s[:-1] * np.diff(drop_v)
    arriving_a = feed_s * drop_v
    arriving_a[:-1] -= between_a
    arriving_a[1:] += between_a
    return arriving_a


def _next_current(bulbs: Bulbs, group_a: Floats, aimed_a: Floats) -> Floats:
    """Step up in current, down in its logarithm: on both sides the step cannot overshoot."""
    knee_a = group_a + bulbs.saturation_a
    down = knee_a * np.exp(np.minimum(aimed_a - group_a, 0.0) / knee_a) - bulbs.saturation_a
    return np.where(aimed_a > group_a, aimed_a, down)


def _solve_tangents(rails: Rails, sources: Sources, tangent_s: Floats, offset_a: Floats) -> Network:
    """Volts and currents with every bulb drawing offset_a + tangent_s x its volts.

    The chain is solved twice at once: for the offsets with the feed point
    shorted, and for one volt at the feed point alone.
    """
    right = np.empty((2 * len(tangent_s), 2), order="F")
    right[:, 0] = np.repeat(offset_a, 2)
    right[:, 1] = np.repeat(tangent_s, 2)
    # As `solveh_banded` does, without its looking at arrays: small ones take longer to look at than to solve.
    _factor, parts, fault = dpbsv(_band(rails, tangent_s), right, overwrite_ab=1, overwrite_b=1)
    if fault:
        raise LinAlgError("the conductances of the wires are not positive definite")
    both = parts[0::2] + parts[1::2]
    fixed_a = np.add.reduceat(offset_a - tangent_s * both[:, 0], rails.starts)
    per_volt_s = np.add.reduceat(tangent_s * (1 - both[:, 1]), rails.starts)
    feed_v, chain_a, total_a = _join_chains(sources, fixed_a, per_volt_s)
    here_v = np.repeat(feed_v, _chain_sizes(rails))
    plus_drop_v = parts[0::2, 0] + here_v * parts[0::2, 1]
    minus_rise_v = parts[1::2, 0] + here_v * parts[1::2, 1]
    bulb_v = here_v - plus_drop_v - minus_rise_v
    bulb_a = offset_a + tangent_s * bulb_v
    return Network(
        feed_v, chain_a, total_a, plus_drop_v, minus_rise_v, bulb_v, bulb_a, bulb_a, bulb_v, steps=0
    )


def _band(rails: Rails, tangent_s: Floats) -> Floats:
    """Upper band (3, 2N) of the conductance matrix, + and - terminals taking turns."""
    band = np.zeros((3, 2 * len(tangent_s)), order="F")
    for side, link_s, feed_s in (
        (0, rails.plus_link_s, rails.plus_feed_s),
        (1, rails.minus_link_s, rails.minus_feed_s),
    ):
        diagonal = feed_s + link_s + tangent_s
        diagonal[1:] += link_s[:-1]
        band[2, side::2] = diagonal
        band[0, side + 2 :: 2] = -link_s[:-1]
    band[1, 1::2] = tangent_s
    return band


def _join_chains(sources: Sources, fixed_a: Floats, per_volt_s: Floats) -> tuple[Floats, Floats, Floats]:
    """Feed volts and current of each chain, and current of each source.

    A chain draws fixed_a + per_volt_s x its feed volts; in front of it are
    its own series resistance and what the installation shares.
    """
    own = 1 + per_volt_s * sources.series_ohm
    source_v = sources.source_v[sources.installation]
    stiff_a = (fixed_a + per_volt_s * source_v) / own
    soft_s = per_volt_s / own
    stiff_total_a, soft_total_s = _per_source(sources, stiff_a), _per_source(sources, soft_s)
    total_a = stiff_total_a / (1 + sources.common_ohm * soft_total_s)
    shared_v = (sources.common_ohm * total_a)[sources.installation]
    chain_a = stiff_a - soft_s * shared_v
    return source_v - shared_v - sources.series_ohm * chain_a, chain_a, total_a


def _per_source(sources: Sources, chain_values: Floats) -> Floats:
    """Sum over the chains of each installation (S,)."""
    sums: Floats = np.bincount(sources.installation, chain_values, len(sources.source_v)).astype(np.float64)
    return sums
