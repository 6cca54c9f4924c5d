"""Strings whose truth is known, with the readings a meter would take of them."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import numpy as np
from hypothesis import strategies as st

from guidegen.bench.fit import BenchFit
from guidegen.calc.led import Curve
from guidegen.circuit.arrange import plan_run
from guidegen.circuit.arrangement import Arrangement, Fuse, LedLimit, Piece, SupplyPlan
from guidegen.circuit.solve import solve
from guidegen.project.schema import BenchReading, LightString, Run, StringWire
from guidegen.tables.limits import METER_AMPERES, METER_VOLTS, MeterRange
from tests.bench.shooting import TrueString, state

SPACING_M, TAIL_M = 0.25, 0.5


def true_string(
    bulbs: int = 12,
    groups: int = 3,
    length_ohm: float = 0.06,
    curve: tuple[float, float, float] = (2.85, 0.1, 8.0),
    series: int = 1,
    group_ohm: float = 0.0,
    lit: str = "all",
) -> TrueString:
    """`length_ohm`: one conductor, bulb to bulb; `curve`: volts at 3 mA, slope, resistance."""
    numbers = np.arange(1, bulbs + 1)
    lit_groups = np.where((numbers % 2 == 1) | (lit == "all"), float(groups), 0.0)
    segments = np.full(bulbs, length_ohm)
    segments[0] = length_ohm * TAIL_M / SPACING_M
    voltage_v, slope_v, resistance_ohm = curve
    return TrueString(
        voltage_v, 3e-3, slope_v, resistance_ohm, tuple(lit_groups), tuple(segments), series, group_ohm
    )


def kind_of(true: TrueString, rows: list[dict[str, float]], **more: object) -> LightString:
    """The project file's words for it."""
    return LightString.model_construct(
        bulbs=len(true.segment_ohm),
        spacing=SPACING_M,
        tail=TAIL_M,
        leds_per_bulb=int(max(true.lit_groups)) * true.series,
        leds_in_series=true.series,
        group_resistor=true.group_ohm,
        wire=StringWire.model_construct(one_conductor=sum(true.segment_ohm)),
        bench=tuple(BenchReading.model_construct(**row) for row in rows),
        **more,
    )


def row_of(
    true: TrueString, supply_v: float, resistor_ohm: float, burden_ohm: float | None = None
) -> dict[str, float]:
    """An exact bench row; with the current of a meter in line when its burden is given."""
    row = {
        "supply": supply_v,
        "resistor": resistor_ohm,
        "after_resistor": state(true, supply_v, resistor_ohm).after_v,
    }
    if burden_ohm is not None:
        row["current"] = state(true, supply_v, resistor_ohm + burden_ohm).current_a
        row["meter_burden"] = burden_ohm
    return row


def misread(row: dict[str, float], errors: list[float]) -> dict[str, float]:
    """The row as a meter shows it, each value off by `errors` (-1 to 1) of its stated accuracy."""
    limits = {"supply": METER_VOLTS, "after_resistor": METER_VOLTS, "current": METER_AMPERES}
    off = dict(row)
    for (name, meter), error in zip(limits.items(), errors, strict=True):
        if name in off:
            off[name] += error * _limit(off[name], meter)
    return off


def _limit(value: float, meter: MeterRange) -> float:
    return meter.share * value + meter.digits * meter.step


def joined_run(true: TrueString, strings: int) -> TrueString:
    """That many strings end to end."""
    return replace(true, lit_groups=true.lit_groups * strings, segment_ohm=true.segment_ohm * strings)


def currents(
    kind: LightString, fit: BenchFit, strings: int, supply_v: float, resistor_ohm: float
) -> Callable[[Curve], np.ndarray]:
    """How guidegen works out the telling currents of joined strings, by the curve."""
    pieces = tuple(Piece(k + 1, 1, kind.bulbs, kind.bulbs) for k in range(strings))
    run = Run.model_construct(bulbs=strings * kind.bulbs, resistor=resistor_ohm)
    plan = plan_run(run, kind, fit.estimate, LedLimit(1.0, "stated"), pieces)
    supply = SupplyPlan(supply_v, 0.0, 9.0, 0.0, 9.0, None)

    def work_out(curve: Curve) -> np.ndarray:
        there = replace(plan, led=replace(plan.led, curve=curve))
        solved = solve(Arrangement(supply, Fuse(1.0, "IEC"), (there,), 20.0, 20.0)).runs[0]
        return telling(solved.led_a[solved.lit])

    return work_out


def telling(led_a: np.ndarray) -> np.ndarray:
    """Of the lit LEDs' currents: the mean, the first and the last."""
    return np.array([led_a.mean(), led_a[0], led_a[-1]])


#: Strings as people have them: white LEDs anywhere in the typical band of slope and resistance.
strings = st.builds(
    true_string,
    bulbs=st.integers(4, 20),
    groups=st.integers(1, 4),
    length_ohm=st.floats(0.005, 0.12),
    curve=st.tuples(st.floats(2.6, 3.0), st.floats(0.05, 0.14), st.floats(3.0, 20.0)),
    series=st.integers(1, 3),
    group_ohm=st.sampled_from([0.0, 0.0, 47.0]),
    lit=st.sampled_from(["all", "all", "half"]),
)
