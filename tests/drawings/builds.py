"""Arrangements made by hand for the tests of drawings, solved for real."""

from __future__ import annotations

import numpy as np

from guidegen.calc.led import Curve
from guidegen.circuit.arrangement import (
    Arrangement,
    Cable,
    Conductor,
    Feed,
    Fuse,
    LedEstimate,
    LedLimit,
    Piece,
    Resistor,
    RunPlan,
    SupplyPlan,
)

FEEDS: tuple[Feed, ...] = ("one end", "middle", "both ends", "opposite ends")
AWKWARD = "Shelf & bench <left> of $5 pots, row 1$!"  # 40 characters with every sign that once broke a label
THIN = Conductor(0.13, 0.13e-6, True, True, 1.5, 0.9, 1.1)
STOUT = Conductor(0.0345, 0.5e-6, False, False, 9.0, 0.95, 1.13)
WHITE = LedEstimate(Curve(2.8, 0.003, 0.1, 8.0), "typical", 2.65, 2.95)


def run(
    feed: Feed = "one end",
    bulbs: int = 24,
    name: str = "back rail",
    *,
    resistor: bool = True,
    feeder: bool = True,
    half: bool = False,
) -> RunPlan:
    """A run of white bulbs 25 cm apart behind 10 ohm."""
    segment = np.full(bulbs, 0.25)
    lit = np.full(bulbs, 3.0)
    if half:
        lit[1::2] = 0.0
    return RunPlan(
        name=name,
        string="drop",
        feed=feed,
        pieces=(Piece(1, 1, bulbs, bulbs),),
        lit_groups=lit,
        segment_m=segment,
        position_m=np.cumsum(segment),
        conductor=THIN,
        groups=3,
        leds_in_series=1,
        group_ohm=0.0,
        led=WHITE,
        led_limit=LedLimit(0.006, "given"),
        resistor=Resistor(10.0 if resistor else 0.0, 0.05, 5.0, "cement", fitted=resistor),
        feeder=Cable(1.5, STOUT) if feeder else None,
        extra=None if feed == "one end" else Cable(6.5, STOUT),
        cuttable=True,
    )


def arrangement(*runs: RunPlan, volts: float = 5.1, lead: bool = True) -> Arrangement:
    """The runs on one supply."""
    supply = SupplyPlan(volts, 0.05, 2.4, 0.1, 2.4, Cable(1.0, STOUT) if lead else None)
    return Arrangement(supply, Fuse(1.0, "IEC"), runs, -5.0, 35.0)
