"""The cut list as a whole: every piece of wire with what its length is made of, and totals with a reserve."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Literal

from guidegen.circuit.arrangement import Arrangement
from guidegen.hanging.plan import HangingPlan, HungLine
from guidegen.parts.bill import Bill, bill
from guidegen.parts.cuts import END_ALLOWANCE_M, WireCut, wire_cuts
from guidegen.tables.hanging import DRIP_LOOP_M, GUIDE_END_M, RESERVE, TIE_EVERY_M

TotalKind = Literal["hooks", "ties", "guide wire"]


@dataclass(frozen=True)
class CutPiece:
    """A piece of wire: its way, then what is added for both ends together, metre.

    `ends_m`: strip, joint and strain relief; `drip_m`: drip loops.
    """

    cut: WireCut
    ends_m: float
    drip_m: float

    @property
    def cut_m(self) -> float:
        """Length to cut."""
        return self.cut.route_m + self.ends_m + self.drip_m


@dataclass(frozen=True)
class GuideCut:
    """The guide wire of a line: wire along its curve, and the loops at both ends."""

    line: int
    curve_m: float
    ends_m: float

    @property
    def cut_m(self) -> float:
        """Length to cut."""
        return self.curve_m + self.ends_m


@dataclass(frozen=True)
class HungTotal:
    """So much of one kind for hanging: needed, and to buy with the reserve (metre or pieces)."""

    kind: TotalKind
    needed: float
    buy: float


@dataclass(frozen=True)
class CutList:
    """Everything to cut and to have for it."""

    pieces: tuple[CutPiece, ...]
    guides: tuple[GuideCut, ...]
    totals: tuple[HungTotal, ...]
    parts: Bill


def cut_list(arrangement: Arrangement, plan: HangingPlan) -> CutList:
    """The list of an arrangement that is hung by a plan."""
    return CutList(cut_pieces(arrangement), _guides(plan), hung_totals(plan), bill(arrangement))


def hung_totals(plan: HangingPlan) -> tuple[HungTotal, ...]:
    """Hooks, ties and guide wire of a plan, needed and to buy."""
    guides = _guides(plan)
    hooks, ties = float(plan.hooks), float(sum(_ties(plan, line) for line in plan.lines))
    totals = [HungTotal("hooks", hooks, _pieces(hooks)), HungTotal("ties", ties, _pieces(ties))]
    if guides:
        metres = sum(guide.cut_m for guide in guides)
        totals.append(HungTotal("guide wire", metres, math.ceil(2 * metres * (1 + RESERVE.value)) / 2))
    return tuple(totals)


def cut_pieces(arrangement: Arrangement) -> tuple[CutPiece, ...]:
    """Every piece of wire between supply and strings."""
    drip = 2 * DRIP_LOOP_M.value if arrangement.outdoors else 0.0
    return tuple(CutPiece(cut, 2 * END_ALLOWANCE_M, drip) for cut in wire_cuts(arrangement))


def _guides(plan: HangingPlan) -> tuple[GuideCut, ...]:
    if not plan.guide_wire:
        return ()
    ends = 2 * GUIDE_END_M.value
    return tuple(GuideCut(index, line.wire_m, ends) for index, line in enumerate(plan.lines))


def _ties(plan: HangingPlan, line: HungLine) -> int:
    """A tie at each hook; along a guide wire one every so often."""
    along = math.ceil(line.wire_m / TIE_EVERY_M.value) if plan.guide_wire else 0
    return len(line.hooks) + along


def _pieces(needed: float) -> float:
    return math.ceil(round(needed * (1 + RESERVE.value), 9))
