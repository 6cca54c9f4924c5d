"""Where every bulb lands along the hooks, and where the light has gaps."""

from __future__ import annotations

from itertools import pairwise

import numpy as np

from guidegen.circuit.arrangement import Arrangement
from guidegen.hanging.hooks import Span
from guidegen.hanging.laid import positions_m
from guidegen.hanging.lay import Laid
from guidegen.hanging.plan import Gap, HungBulb

#: A stretch without light counts as a gap from this many usual distances on.
_GAP_FROM = 1.25
#: A bulb may lie so far beyond the last hook and still hang at it, metre.
_AT_HOOK_M = 1e-6


def hung_bulbs(
    arrangement: Arrangement, runs: tuple[int, ...], laid: tuple[Laid, ...], spans: tuple[Span, ...]
) -> tuple[HungBulb, ...]:
    """Every bulb of these runs with its span and place, in the order along the wire."""
    found = [
        _hung(index, bulb, bool(arrangement.runs[index].lit_groups[bulb - 1] > 0), float(along), spans)
        for index, lies in zip(runs, laid, strict=True)
        for bulb, along in enumerate(lies.bulbs_m(positions_m(arrangement.runs[index])), start=1)
    ]
    return tuple(sorted(found, key=lambda bulb: bulb.along_m))


def _hung(run: int, bulb: int, lit: bool, along: float, spans: tuple[Span, ...]) -> HungBulb:
    last = spans[-1]
    if along > last.start_m + last.length_m + _AT_HOOK_M:
        return HungBulb(run, bulb, lit, along, None, along - last.start_m - last.length_m, None, None, None)
    number = max((k for k, span in enumerate(spans) if span.start_m <= along + _AT_HOOK_M), default=0)
    span = spans[number]
    from_m = max(along - span.start_m, 0.0)
    level = min(max(float(span.wire.x_at_m(from_m)), 0.0), span.wire.span_m)
    share = level / span.wire.span_m
    height = span.first.height_m
    return HungBulb(
        run,
        bulb,
        lit,
        along,
        number,
        from_m,
        span.first.x_m + share * (span.second.x_m - span.first.x_m),
        span.first.y_m + share * (span.second.y_m - span.first.y_m),
        None if height is None else height + float(span.wire.height_m(level)),
    )


def gaps_of(bulbs: tuple[HungBulb, ...]) -> tuple[Gap, ...]:
    """Stretches between lit bulbs that are longer than the usual one, which is the median."""
    lit = [bulb for bulb in bulbs if bulb.lit]
    steps = [after.along_m - before.along_m for before, after in pairwise(lit)]
    if not steps:
        return ()
    usual = float(np.median(steps))
    return tuple(
        Gap((before.run, before.bulb), (after.run, after.bulb), step)
        for (before, after), step in zip(pairwise(lit), steps, strict=True)
        if step > _GAP_FROM * usual
    )
