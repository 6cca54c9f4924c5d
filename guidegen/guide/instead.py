"""Parts that do as well as the one listed, each worked out for this build."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from guidegen.calc.fuse import fuse_needed_a
from guidegen.calc.pairs import How, Pair, pair_for
from guidegen.calc.wire import gauge_area_m2
from guidegen.circuit.arrangement import Arrangement
from guidegen.circuit.protection import protection
from guidegen.guide.format import number, quantity
from guidegen.guide.matter import Matter
from guidegen.locale import _
from guidegen.parts.bill import WireLine
from guidegen.safety.judge import judge
from guidegen.tables.conductors import STANDARD_MM2
from guidegen.tables.fuses import RATINGS_A

#: Gauges on sale as two-core cable, thickest first; own assumption.
_GAUGES = tuple(range(10, 31, 2))
#: Most that two resistors may have beyond the one they stand in for.
_MOST_OFF = 0.05
_HOWS: tuple[How, ...] = ("series", "parallel")
_SEVERE = ("refusal", "danger", "warning")


def resistors_instead(ohm: float, rating_w: float) -> tuple[str, ...]:
    """Two resistors for one whose value or watts are not to be had, in series and in parallel."""
    return tuple(_pair_text(pair) for how in _HOWS if (pair := _pair(how, ohm, rating_w)) is not None)


def _pair(how: How, ohm: float, rating_w: float) -> Pair | None:
    return pair_for(how, ohm, rating_w, _MOST_OFF) or pair_for(how, ohm, rating_w, _MOST_OFF, "E24")


def _pair_text(pair: Pair) -> str:
    text = (
        _("{first} and {second} one behind the other: {total}, each {watts} or more")
        if pair.how == "series"
        else _("{first} and {second} side by side: {total}, each {watts} or more")
    )
    return text.format(
        first=quantity(pair.first_ohm, "Ω"),
        second=quantity(pair.second_ohm, "Ω"),
        total=quantity(pair.total_ohm, "Ω"),
        watts=quantity(pair.rating_w, "W"),
    )


def fuse_instead(matter: Matter) -> tuple[str, ...]:
    """The ratings next to the fuse's that carry the lights and protect every wire as well."""
    rated_a, needed_a = matter.arrangement.fuse.rating_a or 0.0, fuse_needed_a(matter.solved.margins.supply_a)
    below = max((each for each in RATINGS_A if needed_a <= each < rated_a), default=None)
    above = min((each for each in RATINGS_A if each > rated_a), default=None)
    near = [each for each in (below, above) if each is not None and _as_safe(matter, each)]
    return tuple(
        _("{amperes}, if written into the project file before the guide is made").format(
            amperes=quantity(each, "A")
        )
        for each in near
    )


def _as_safe(matter: Matter, rating_a: float) -> bool:
    """Whether another fuse brings no refusal, danger or warning that this one does not."""
    arrangement, solved = _fused(matter.arrangement, rating_a), matter.solved
    found = judge(
        matter.study.file,
        matter.study.leds,
        arrangement,
        solved.solution,
        solved.margins,
        protection(arrangement, solved.solution),
    )
    before = {(each.level, each.rule) for each in matter.study.findings}
    return all((each.level, each.rule) in before for each in found if each.level in _SEVERE)


def _fused(arrangement: Arrangement, rating_a: float) -> Arrangement:
    return replace(arrangement, fuse=replace(arrangement.fuse, rating_a=rating_a))


def wire_instead(line: WireLine) -> tuple[str, ...]:
    """The next size of wire up, in the other measure and in its own; thicker wire only drops less."""
    if line.conductor.inferred or line.conductor.material != "copper":
        return ()
    return tuple(_thicker(line))


def _thicker(line: WireLine) -> Iterator[str]:
    area_m2, gauge = line.conductor.area_m2, line.conductor.gauge
    metric = next((each for each in STANDARD_MM2 if each * 1e-6 > area_m2 * (1 + 1e-9)), None)
    if metric is not None:
        yield quantity(metric * 1e-6, "m2")
    others = [each for each in _GAUGES if gauge_area_m2(each) >= area_m2 and (gauge is None or each < gauge)]
    if others:
        yield _("{gauge} AWG").format(gauge=number(max(others)))
