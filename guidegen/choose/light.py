"""Light along the line for one small chart each: what a page of arrangements draws on a common scale."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

import numpy as np

from guidegen.choose.choice import Proposal
from guidegen.circuit.arrangement import Floats


@dataclass(frozen=True, eq=False)
class LightOfRun:
    """Lit bulbs of one run: number along the whole line from 1, and light over the brightest of all."""

    name: str
    bulb: Floats
    light: Floats


@dataclass(frozen=True, eq=False)
class LightChart:
    """One arrangement's light, run after run along the line; light is 0 to 1 in all of them."""

    runs: tuple[LightOfRun, ...]
    bulbs: int


def light_charts(proposals: Iterable[Proposal]) -> tuple[LightChart, ...]:
    """A small chart's data for every arrangement, in the order given."""
    return tuple(_chart(proposal) for proposal in proposals)


def _chart(proposal: Proposal) -> LightChart:
    runs, before = [], 0
    for run in proposal.worked.solution.runs:
        numbers = before + 1 + np.flatnonzero(run.lit).astype(np.float64)
        runs.append(LightOfRun(run.name, numbers, run.light[run.lit]))
        before += len(run.lit)
    return LightChart(tuple(runs), before)
