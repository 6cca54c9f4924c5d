"""Rules on the solved project: each applies to one edited base project and just not to another."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

from guidegen.safety.findings import LEVELS
from guidegen.safety.judge import RULES, judge
from guidegen.study import Study
from tests.safety.projects import GONE, Changes, found, judged_anew, study_of

OUTDOORS: Changes = {"place.exposure": "open outdoors"}
OUTSIDE_SUPPLY: Changes = {"supply.stands": "outdoors", "supply.ip": "IP44"}
MIDDLE: Changes = {
    "runs.0.feed": "middle",
    "runs.0.extra_wire": {"length": "2 m", "wire": {"area": "0.5 mm2"}},
}
OPPOSITE: Changes = {**MIDDLE, "runs.0.feed": "opposite ends"}
BOTH: Changes = {**MIDDLE, "runs.0.feed": "both ends"}
JOINED: Changes = {"runs.0.bulbs": 20}
CUT: Changes = {"runs.0.bulbs": 8}
#: Hooks half a metre apart with bulb 1 at H1; H3 is 1 m of wire from there.
HOOKS: Changes = {
    "hanging": {"sag": "1 mm", "lines": [{"spans": ["0.5 m", "0.5 m"]}]},
    "place.supply_at": "H3",
}
#: 0.8 m of hooks; the base has 0.9 m from bulb 1 to bulb 10.
HUNG: dict[str, Any] = {"sag": "5 cm", "lines": [{"spans": ["0.4 m", "0.4 m"]}]}
PATH: Changes = {"place.over_path": "yes"}


def hung(**more: Any) -> Changes:
    """The base on its hooks, with more said of them."""
    return {"hanging": {**HUNG, **more}}


LONG_LINE = {"lines": [{"spans": ["20 m"]}]}
#: A hook that may bear too little for so flat a line, and one that may bear anything (half its rating).
WEAK, STRONG = {"hook_rating": "0.1 kg", "sag": "5 mm"}, {"hook_rating": "100 kg"}


def fed_by(length: str) -> Changes:
    """The base on its hooks, with a feeder of this length."""
    return {**HOOKS, "runs.0.feeder": {"length": length, "wire": {"area": "0.5 mm2"}}}


BENCH = [{"supply": "4.5 V", "resistor": "68 ohm", "after_resistor": "2.80 V"}]


def bench_row(supply: str, resistor: str, after: str, current: str = "") -> dict[str, str]:
    """A bench reading; with a current if one is given, read through a meter of 1 ohm."""
    row = {"supply": supply, "resistor": resistor, "after_resistor": after}
    return {**row, "current": current, "meter_burden": "1 ohm"} if current else row


RED_BENCH = [bench_row("4.5 V", "100 ohm", "1.6 V")]
THICK_STRING: Changes = {"strings.drop.wire": {"area": "0.5 mm2"}}

#: Rules that belong to every build.
ALWAYS = {
    "other-plugs",
    "apart-from-mains",
    "fixings-off-services",
    "maker-rating-ends",
    "solder-at-the-bench",
    "first-hour-watched",
    "meter-on-amps",
    "sharp-tools",
    "polarity-by-meter",
}

MET: list[tuple[str, Changes]] = [
    ("new-fixed-wiring", {"place.mains": "new fixed wiring"}),
    ("class-2-marks", {}),
    ("insulation-unknown", {"supply.insulation": "unknown"}),
    ("outlet-without-rcd", OUTDOORS),
    ("outlet-without-rcd", OUTSIDE_SUPPLY),
    ("sleeve-outdoors", OUTDOORS),
    ("drip-loop", OUTDOORS),
    ("gutter-no-fixing", OUTDOORS),
    ("not-dry-over-30-volts", {**OUTDOORS, "supply.voltage": "29 V", "supply.tolerance": "4 %"}),
    ("hung-too-low", {**hung(height="2.4 m"), **PATH}),
    ("hook-overloaded", hung(**WEAK)),
    ("hung-wire-overpulled", hung(sag="1 mm", wind="60 m/s", lines=[{"spans": ["4 m"]}])),
    ("hung-without-wind", {**hung(), **OUTDOORS}),
    ("bulbs-beyond-hooks", hung()),
    ("bulbs-in-series", {"strings.drop.between_bulbs": "series"}),
    ("not-parallel", {**CUT, "strings.drop.between_bulbs": "series"}),
    ("not-parallel", {**JOINED, "strings.drop.between_bulbs": "unknown"}),
    ("not-parallel", {**MIDDLE, "strings.drop.between_bulbs": "chip"}),
    ("not-parallel", {**OPPOSITE, "strings.drop.between_bulbs": "unknown"}),
    ("between-bulbs-assumed", {**CUT, "strings.drop.between_bulbs": GONE}),
    ("between-bulbs-assumed", {**BOTH, "strings.drop.between_bulbs": GONE}),
    ("figures-for-parallel", {"strings.drop.between_bulbs": "unknown"}),
    ("flashing-lights", {"strings.drop.between_bulbs": "chip"}),
    ("two-way-half-dark", {"strings.drop.lit_on_dc": "half"}),
    ("dead-ends", CUT),
    ("dead-ends", MIDDLE),
    ("dead-ends", OPPOSITE),
    ("cells-left-in", {"strings.drop.came_with": {"cells": 3}}),
    ("max-led-current-assumed", {"strings.drop.max_led_current": GONE}),
    (
        "max-led-current-assumed",
        {"strings.drop.max_led_current": GONE, "strings.drop.came_with": {"cells": 3}},
    ),
    ("led-typical", {"strings.drop.led": {"typical": "white"}}),
    # A second row without a resistor: its volts say nothing of the LEDs.
    ("bench-reading-left-out", {"strings.drop.bench": [*BENCH, bench_row("3 V", "0 ohm", "3 V", "30 mA")]}),
    # A red LED's volts (1.6 V) where white ones are stated.
    ("bench-led-volts", {"strings.drop.led": {"typical": "white"}, "strings.drop.bench": RED_BENCH}),
    # 2.2 V over 68 ohm are 32.4 mA; 27 mA need more than the stated 1 ohm in line.
    ("bench-burden", {"strings.drop.bench": [bench_row("5 V", "68 ohm", "2.8 V", "27 mA")]}),
    # 40 mA are more than the resistor's volts allow with any meter in line.
    ("bench-currents-disagree", {"strings.drop.bench": [bench_row("5 V", "68 ohm", "2.8 V", "40 mA")]}),
    # A third of the current at more volts.
    ("bench-unexplained", {"strings.drop.bench": [*BENCH, bench_row("5 V", "220 ohm", "3.0 V")]}),
    # 6 V on the bench, 5 V on the only label: 1.2 times.
    ("bench-source-not-regulated", {"strings.drop.bench": [bench_row("6 V", "100 ohm", "2.8 V")]}),
    ("wire-size-inferred", {"strings.drop.wire": {"per_length": "0.1 ohm/m"}}),
    # Way to the last bulb: 0.3 + 9 x 0.1 = 1.2 m; to bulb 5: 0.3 + 4 x 0.1 = 0.7 m (by hand).
    ("extra-wire-short", {**OPPOSITE, "runs.0.extra_wire.length": "1.19 m"}),
    ("extra-wire-short", {**MIDDLE, "runs.0.extra_wire.length": "0.69 m"}),
    # 1 m of way and what the sag takes are planned as 1.01 m: 2 cm less reach, and up to 1.5 x 1.01 + 1 =
    # 2.515 m is not far longer (by hand).
    ("wire-short-of-way", fed_by("0.98 m")),
    ("wire-beyond-way", fed_by("2.52 m")),
    # From bulb 1 to bulb 10 it is 9 x 0.1 m, planned as 0.91 m where a hook is between (by hand).
    ("wire-short-of-way", {**HOOKS, **OPPOSITE, "runs.0.extra_wire.length": "0.08 m"}),
    ("wire-beyond-way", {**fed_by("1 m"), **OPPOSITE, "runs.0.extra_wire.length": "2.38 m"}),
    # 0.4 m from bulb 1 to bulb 5, so 0.6 m from H3; both pieces rounded up (by hand).
    ("wire-short-of-way", {**fed_by("0.3 m"), **MIDDLE, "runs.0.extra_wire.length": "0.27 m"}),
    # The nearer of two places counts: 0.5 m from H2, planned as 0.51 m.
    ("wire-short-of-way", {**fed_by("0.48 m"), "place.supply_at": ["H3", "H2"]}),
    # 1.19 - 0.4 = 0.79 ohm, under twice 0.4 ohm (by hand).
    ("wire-reading-near-leads", {"strings.drop.wire": {"loop": "1.19 ohm", "meter_leads": "0.4 ohm"}}),
    ("not-stated", {"place.near_water": GONE}),
    ("runs-proposed", {"runs": GONE}),
    ("approval-unknown", {"supply.approved": "unknown"}),
    ("approval-unknown", {"supply.approved": GONE}),
    # IEC 60950-1 Table 2B: up to 20 V 5 x U VA, so 5 A; over 20 V 100 VA, so 3.97 A at 25.2 V (by hand).
    ("power-not-limited", {"supply.limited_power": "no", "supply.current_limit": "5.01 A"}),
    ("power-not-limited", {"supply.limited_power": GONE, "supply.current_limit": "5.01 A"}),
    (
        "power-not-limited",
        {"supply.limited_power": "no", "supply.current_limit": "3.98 A", "supply.voltage": "24 V"},
    ),
    ("supply-unregulated", {"supply.unregulated": "yes"}),
    ("unregulated-adapter", {"supply.unregulated": GONE}),
    ("supply-standing-outdoors", OUTSIDE_SUPPLY),
    ("string-not-for-rain", OUTDOORS),
    ("string-not-for-rain", {**OUTDOORS, "strings.drop.waterproof": GONE}),
    ("box-kept", {"strings.drop.box": "kept"}),
    ("not-parallel", {**CUT, "strings.drop.between_bulbs": GONE, "strings.drop.wires": 3}),
    ("figures-for-parallel", {"strings.drop.between_bulbs": GONE, "strings.drop.wires": 3}),
    ("children-and-animals", {}),
    ("children-and-animals", {"place.children_or_animals": GONE}),
    ("over-path", {"place.over_path": "yes"}),
    ("over-path", {**OUTDOORS, "place.over_path": GONE}),
    ("overhead-lines", OUTDOORS),
    # 25 degC and 85 K x (5.25 V)^2 / (0.95 x 68 ohm) / 1 W = 61.3 degC, over 60 (by hand).
    ("test-resistor-hot", {}),
]
JUST_NOT: list[tuple[str, Changes]] = [
    ("new-fixed-wiring", {}),
    ("test-resistor-hot", {"place.warmest": "23 degC"}),
    ("class-2-marks", {"place.mains": "new fixed wiring"}),
    ("insulation-unknown", {"supply.insulation": "reinforced"}),
    ("outlet-without-rcd", {}),
    ("sleeve-outdoors", {}),
    ("drip-loop", {}),
    ("gutter-no-fixing", {}),
    ("not-dry-over-30-volts", {"supply.voltage": "48 V"}),
    ("not-dry-over-30-volts", {**OUTDOORS, "supply.voltage": "30 V", "supply.tolerance": "0 %"}),
    # 2.5 m to keep, and the 5 cm of sag (by hand).
    ("hung-too-low", {**hung(height="2.56 m"), **PATH}),
    ("hung-too-low", {**hung(height="2.4 m"), "place.over_path": "no"}),
    ("hung-too-low", PATH),
    ("hook-overloaded", hung(**STRONG)),
    ("hook-overloaded", hung()),
    ("hung-wire-overpulled", hung()),
    ("hung-without-wind", hung()),
    ("hung-without-wind", {**hung(wind="20 m/s"), **OUTDOORS}),
    ("bulbs-beyond-hooks", hung(**LONG_LINE)),
    ("bulbs-in-series", {"strings.drop.between_bulbs": "unknown"}),
    ("bulbs-in-series", {"strings.drop.between_bulbs": "chip"}),
    ("not-parallel", {"strings.drop.between_bulbs": "unknown"}),
    ("not-parallel", {**JOINED, **OPPOSITE}),
    ("between-bulbs-assumed", {"strings.drop.between_bulbs": GONE}),
    ("between-bulbs-assumed", CUT),
    ("figures-for-parallel", {}),
    ("flashing-lights", {"strings.drop.between_bulbs": "series"}),
    ("two-way-half-dark", {}),
    ("dead-ends", {}),
    ("dead-ends", BOTH),
    ("dead-ends", JOINED),
    ("cells-left-in", {}),
    ("max-led-current-assumed", {}),
    ("led-typical", {"strings.drop.bench": BENCH}),
    ("bench-reading-left-out", {"strings.drop.bench": BENCH}),
    ("bench-led-volts", {"strings.drop.led": {"typical": "red"}, "strings.drop.bench": RED_BENCH}),
    # 32 mA: what 2.2 V over 68 ohm and 1 ohm more in line come to, nearly.
    ("bench-burden", {"strings.drop.bench": [bench_row("5 V", "68 ohm", "2.8 V", "32 mA")]}),
    ("bench-currents-disagree", {"strings.drop.bench": [bench_row("5 V", "68 ohm", "2.8 V", "32 mA")]}),
    ("bench-unexplained", {"strings.drop.bench": [*BENCH, bench_row("5 V", "220 ohm", "2.66 V")]}),
    # 5.7 V on 5 V: 1.14 times, as fresh cells may have.
    ("bench-source-not-regulated", {"strings.drop.bench": [bench_row("5.7 V", "100 ohm", "2.8 V")]}),
    ("wire-size-inferred", {"strings.drop.wire": {"gauge": "26 AWG"}}),
    ("extra-wire-short", {**OPPOSITE, "runs.0.extra_wire.length": "1.2 m"}),
    ("extra-wire-short", {**MIDDLE, "runs.0.extra_wire.length": "0.7 m"}),
    ("wire-short-of-way", fed_by("0.99 m")),
    ("wire-beyond-way", fed_by("2.51 m")),
    ("wire-short-of-way", {**HOOKS, **OPPOSITE, "runs.0.extra_wire.length": "0.1 m"}),
    ("wire-beyond-way", {**fed_by("1 m"), **OPPOSITE, "runs.0.extra_wire.length": "2.35 m"}),
    ("wire-short-of-way", {**fed_by("0.3 m"), **MIDDLE, "runs.0.extra_wire.length": "0.3 m"}),
    ("wire-short-of-way", {**fed_by("0.5 m"), "place.supply_at": ["H3", "H2"]}),
    # Proposed runs have the lengths of their ways.
    ("wire-beyond-way", {**HOOKS, "runs": GONE}),
    # Along the run it is 1.2 m, but over the hooks 0.9 m.
    ("extra-wire-short", {**fed_by("1 m"), **OPPOSITE, "runs.0.extra_wire.length": "1 m"}),
    ("wire-reading-near-leads", {"strings.drop.wire": {"loop": "1.2 ohm", "meter_leads": "0.4 ohm"}}),
    ("not-stated", {}),
    ("runs-proposed", {}),
    ("approval-unknown", {}),
    ("power-not-limited", {"supply.limited_power": "no", "supply.current_limit": "5 A"}),
    ("power-not-limited", {"supply.limited_power": "yes", "supply.current_limit": "9 A"}),
    ("supply-unregulated", {}),
    ("supply-unregulated", {"supply.unregulated": GONE}),
    ("unregulated-adapter", {"supply.unregulated": "no"}),
    ("unregulated-adapter", {"supply.unregulated": "yes"}),
    ("supply-standing-outdoors", OUTDOORS),
    ("string-not-for-rain", {**OUTDOORS, "strings.drop.waterproof": "yes"}),
    ("string-not-for-rain", OUTSIDE_SUPPLY),
    ("box-kept", {"strings.drop.box": GONE}),
    ("not-parallel", {"strings.drop.between_bulbs": GONE, "strings.drop.wires": 3}),
    ("figures-for-parallel", {"strings.drop.between_bulbs": GONE}),
    ("children-and-animals", {"place.children_or_animals": "no"}),
    ("over-path", {"place.over_path": GONE}),
    ("over-path", {**OUTDOORS, "place.over_path": "no"}),
    ("overhead-lines", OUTSIDE_SUPPLY),
]  # fmt: skip


@pytest.mark.parametrize(("rule", "changes"), MET)
def test_rule_applies(tmp_path: Path, rule: str, changes: Changes) -> None:
    assert rule in found(tmp_path, changes)


@pytest.mark.parametrize(("rule", "changes"), JUST_NOT)
def test_rule_just_does_not_apply(tmp_path: Path, rule: str, changes: Changes) -> None:
    assert rule not in found(tmp_path, changes)


def with_load(known: Study, load: float) -> dict[str, Any]:
    return {"solution": replace(known.solved.solution, load=load)}  # type: ignore[union-attr]


def with_worst_load(known: Study, load: float) -> dict[str, Any]:
    return {"margins": replace(known.solved.margins, load=load)}  # type: ignore[union-attr]


def with_run(known: Study, **values: Any) -> dict[str, Any]:
    solution = known.solved.solution  # type: ignore[union-attr]
    return {"solution": replace(solution, runs=(replace(solution.runs[0], **values),))}


def with_margins(known: Study, **values: Any) -> dict[str, Any]:
    margins = known.solved.margins  # type: ignore[union-attr]
    return {"margins": replace(margins, runs=(replace(margins.runs[0], **values),))}


def with_led(known: Study, current_a: float) -> dict[str, Any]:
    led_a = known.solved.solution.runs[0].led_a  # type: ignore[union-attr]
    return with_run(known, led_a=led_a * (current_a / led_a.max()))


def with_bulb_volts(known: Study, volts: float) -> dict[str, Any]:
    bulb_v = known.solved.solution.runs[0].bulb_v  # type: ignore[union-attr]
    return with_run(known, bulb_v=bulb_v * (volts / bulb_v.max()))


def with_guard(known: Study, **values: Any) -> dict[str, Any]:
    return {"protection": replace(known.solved.protection, **values)}  # type: ignore[union-attr]


def with_section(known: Study, holds: bool) -> dict[str, Any]:
    sections = known.solved.protection.sections  # type: ignore[union-attr]
    return with_guard(known, sections=(replace(sections[0], holds=holds),))


def with_evenness(known: Study, evenness: float) -> dict[str, Any]:
    return {"solution": replace(known.solved.solution, evenness=evenness)}  # type: ignore[union-attr]


UNSURE = {"sure_after_resistor": (False,)}
SURE = {"sure_after_resistor": (True,), "sure_far_end": (True,)}
FAR_ONLY = {**SURE, "sure_far_end": (False,)}
NOT_SURE = {"sure": False}
FAR_WEAK = {"sure_far_end": (False,), "fault_far_end_a": (0.05,)}
BARE: Changes = {
    "runs.0.resistor": "none",
    "runs.0.resistor_rating": GONE,
    "runs.0.resistor_kind": GONE,
    "supply.voltage": "2.8 V",
}
TWO_WAY: Changes = {"strings.drop.lit_on_dc": "half", "supply.tolerance": "0 %"}
LED_GOAL: Changes = {"goals.led_current": "10 mA"}

# The base: supply 2 A, LEDs 20 mA, resistor 5 W cement at 25 degC, fuse 0.2 A.
# 80 % and 50 %: common practice.  5 V reverse: from memory.  60 degC: own policy.
# Cement rises 275 - 70 = 205 K at its rating, so 35 K, and so 60 degC, at 0.85366 W (by hand).
EDGES: list[tuple[str, Changes, Any, tuple[Any, ...], tuple[Any, ...]]] = [
    ("supply-overloaded", {}, with_load, (1.001,), (1.0,)),
    ("supply-load-high", {}, with_worst_load, (0.801,), (0.8,)),
    ("supply-load-high", {"goals.supply_load": 0.6}, with_worst_load, (0.601,), (0.6,)),
    ("supply-load-high", {"goals.supply_load": 0.9}, with_worst_load, (0.801,), (0.8,)),
    ("led-over-maximum", {}, with_led, (0.02001,), (0.02,)),
    ("evenness-goal", {"goals.evenness": 0.5}, with_evenness, (0.499,), (0.5,)),
]
VALUE_EDGES: list[tuple[str, Changes, Any, dict[str, Any], dict[str, Any]]] = [
    ("led-over-maximum-worst", {}, with_margins, {"led_max_a": 0.0201}, {"led_max_a": 0.02}),
    ("one-low-led", {}, with_margins, {"low_led_a": 0.0201}, {"low_led_a": 0.02}),
    ("lights-stay-dark", {}, with_run, {"mean_led_a": 0.99e-4}, {"mean_led_a": 1e-4}),
    ("led-current-goal", LED_GOAL, with_run, {"mean_led_a": 0.0101}, {"mean_led_a": 0.01}),
    ("led-current-goal", LED_GOAL, with_run, {"mean_led_a": 0.0079}, {"mean_led_a": 0.008}),
    ("resistor-over-rating", {}, with_run, {"resistor_w": 5.01}, {"resistor_w": 5.0}),
    ("resistor-load", {}, with_run, {"resistor_w": 2.51}, {"resistor_w": 2.5}),
    ("resistor-load", {"goals.resistor_load": 0.3}, with_run, {"resistor_w": 1.51}, {"resistor_w": 1.5}),
    ("resistor-load", {"goals.resistor_load": 0.9}, with_run, {"resistor_w": 2.51}, {"resistor_w": 2.5}),
    ("resistor-shorted", {}, with_margins, {"shorted_w": 5.01}, {"shorted_w": 5.0}),
    ("short-not-cleared", {}, with_margins, {"shorted_w": 5.0}, {"shorted_w": 5.01}),
    ("short-not-cleared", {}, with_guard, UNSURE, SURE),
    ("short-not-cleared", {}, with_guard, {**SURE, "sure_far_end": (False,)}, SURE),
    ("resistor-hot", {}, with_margins, {"shorted_w": 0.86}, {"shorted_w": 0.85}),
    ("fuse-not-sure", {}, with_guard, {"sure": False}, {"sure": True}),
    # A fuse of 50 mA carries the 38.4 mA of the lights and is sure to open at 2.1 x 50 = 105 mA (by hand).
    ("fuse-not-sure", {}, with_guard, {**NOT_SURE, "fault_a": 0.106}, {**NOT_SURE, "fault_a": 0.104}),
    (
        "smallest-fuse-not-sure",
        {},
        with_guard,
        {**NOT_SURE, "fault_a": 0.104},
        {**NOT_SURE, "fault_a": 0.106},
    ),
    ("smallest-fuse-not-sure", {"fuse": "50 mA"}, with_guard, NOT_SURE, {"sure": True}),
    ("far-short-not-cleared", BARE, with_guard, {"sure_far_end": (False,)}, {"sure_far_end": (True,)}),
    ("far-short-not-cleared", BARE, with_guard, {"sure_far_end": (False,)}, {"sure": False}),
    ("smallest-fuse-far-short", BARE, with_guard, FAR_WEAK, {"sure_far_end": (False,)}),
    (
        "resistor-shorted",
        {},
        with_guard,
        {**FAR_ONLY, "far_end_w": (5.01,)},
        {**FAR_ONLY, "far_end_w": (5.0,)},
    ),
]


@pytest.mark.parametrize(("rule", "changes", "make", "over", "at"), EDGES)
def test_rule_applies_over_its_limit_and_not_at_it(
    tmp_path: Path, rule: str, changes: Changes, make: Any, over: tuple[Any, ...], at: tuple[Any, ...]
) -> None:
    known = study_of(tmp_path, changes)
    assert rule in judged_anew(known, **make(known, *over))
    assert rule not in judged_anew(known, **make(known, *at))


@pytest.mark.parametrize(("rule", "changes", "make", "over", "at"), VALUE_EDGES)
def test_rule_applies_with_one_value_and_not_with_the_other(
    tmp_path: Path, rule: str, changes: Changes, make: Any, over: dict[str, Any], at: dict[str, Any]
) -> None:
    known = study_of(tmp_path, changes)
    assert rule in judged_anew(known, **make(known, **over))
    assert rule not in judged_anew(known, **make(known, **at))


def test_wire_section_that_does_not_hold_is_refused(tmp_path: Path) -> None:
    known = study_of(tmp_path, {})
    assert judged_anew(known, **with_section(known, False))["wire-over-limit"].level == "refusal"
    assert "wire-over-limit" not in judged_anew(known, **with_section(known, True))


def test_dark_leds_are_warned_of_beyond_five_volts_each(tmp_path: Path) -> None:
    known = study_of(tmp_path, TWO_WAY)
    rule = "two-way-dark-leds-reverse"
    assert rule in judged_anew(known, **with_bulb_volts(known, 5.01))
    assert rule not in judged_anew(known, **with_bulb_volts(known, 5.0))


def test_leds_of_a_one_way_string_are_never_called_reversed(tmp_path: Path) -> None:
    known = study_of(tmp_path, {})
    assert "two-way-dark-leds-reverse" not in judged_anew(known, **with_bulb_volts(known, 9.0))


def test_fuse_is_noticed_when_the_worst_current_is_over_80_percent_of_it(tmp_path: Path) -> None:
    known = study_of(tmp_path, {})
    over = {"margins": replace(known.solved.margins, supply_a=0.1601)}  # type: ignore[union-attr]
    at = {"margins": replace(known.solved.margins, supply_a=0.16)}  # type: ignore[union-attr]
    assert "fuse-too-small" in judged_anew(known, **over)
    assert "fuse-too-small" not in judged_anew(known, **at)


def test_fuse_that_is_chosen_is_never_too_small_while_the_table_has_a_larger_one(tmp_path: Path) -> None:
    assert "fuse-too-small" not in found(tmp_path, {"fuse": GONE})


def test_resistor_behind_a_sure_fuse_is_judged_hot_by_how_it_runs(tmp_path: Path) -> None:
    known = study_of(tmp_path, {})
    sure = with_guard(known, **SURE)
    hot, cool = with_margins(known, resistor_w=0.86), with_margins(known, resistor_w=0.85)
    assert "resistor-hot-running" in judged_anew(known, **sure, **hot)
    assert "resistor-hot-running" not in judged_anew(known, **sure, **cool)
    assert "resistor-hot" not in judged_anew(known, **sure, **hot)


def test_resistor_in_very_warm_air_is_held_to_its_derated_rating(tmp_path: Path) -> None:
    # Cement: full to 70, nothing at 275 degC; at 80 degC 195/205 of 5 W is 4.756 W (by hand).
    known = study_of(tmp_path, {"place.warmest": "80 degC"})
    assert "resistor-over-rating" in judged_anew(known, **with_run(known, resistor_w=4.77))
    assert "resistor-over-rating" not in judged_anew(known, **with_run(known, resistor_w=4.75))


def test_run_without_resistor_has_no_finding_about_one(tmp_path: Path) -> None:
    rules = found(tmp_path, BARE)
    assert not [rule for rule in rules if rule.startswith("resistor")]


def test_overloaded_supply_is_not_warned_of_a_second_time(tmp_path: Path) -> None:
    known = study_of(tmp_path, {})
    rules = judged_anew(known, **with_load(known, 1.2), **with_worst_load(known, 1.3))
    assert "supply-overloaded" in rules
    assert "supply-load-high" not in rules


def test_quiet_project_shows_only_what_belongs_to_every_build(tmp_path: Path) -> None:
    lasting_short = {"short-not-cleared", "class-2-marks", "test-resistor-hot"}
    assert set(found(tmp_path, {})) == ALWAYS | lasting_short | {"children-and-animals"}


def test_findings_come_most_severe_first(tmp_path: Path) -> None:
    study = study_of(
        tmp_path, {**OUTDOORS, **CUT, "place.mains": "new fixed wiring", "supply.rated_current": "10 mA"}
    )
    levels = [LEVELS.index(finding.level) for finding in study.findings]
    assert levels == sorted(levels)
    assert {finding.level for finding in study.findings} == set(LEVELS)


def test_order_of_findings_is_the_same_every_time(tmp_path: Path) -> None:
    assert study_of(tmp_path, OUTDOORS).findings == study_of(tmp_path, OUTDOORS).findings


def test_every_rule_has_a_test_that_triggers_it_and_one_that_just_does_not() -> None:
    by_hand = {"wire-over-limit", "two-way-dark-leds-reverse", "fuse-too-small", "resistor-hot-running"}
    edges = {case[0] for case in (*EDGES, *VALUE_EDGES)} | by_hand
    ids = {rule.id for rule in RULES}
    assert {rule for rule, _ in MET} | edges | ALWAYS == ids
    assert {rule for rule, _ in JUST_NOT} | edges | ALWAYS == ids


def test_led_refusal_comes_from_the_solved_circuit(tmp_path: Path) -> None:
    # 5 V, 68 ohm, ten LEDs of 2.8 V at 3 mA: about (5 - 2.8)/68 = 32 mA for ten, 3.2 mA each (by hand).
    assert "led-over-maximum" in found(tmp_path, {"strings.drop.max_led_current": "3 mA"})
    assert "led-over-maximum" not in found(tmp_path, {"strings.drop.max_led_current": "3.5 mA"})


def test_thin_wire_behind_a_large_fuse_is_refused(tmp_path: Path) -> None:
    # 0.05 mm2 bears 1.45 x 1 A; the supply gives 2 A through 1 ohm and 4.2 A must-open (by hand).
    changes = {
        "strings.drop.wire": {"area": "0.05 mm2"}, "fuse": "2 A", "runs.0.resistor": "1 ohm",
        "strings.drop.leds_per_bulb": 20, "runs.0.resistor_rating": "50 W",
    }  # fmt: skip
    assert "wire-over-limit" in found(tmp_path, changes)
    assert "wire-over-limit" not in found(tmp_path, {**changes, **THICK_STRING})


ASSUMED: list[tuple[str, Changes]] = [
    ("no water near", {"place.near_water": GONE}),
    ("small children or animals come near", {"place.children_or_animals": GONE}),
    ("people pass below the lights", {**OUTDOORS, "place.over_path": GONE}),
    ("output DC", {"supply.output": GONE}),
    ("constant voltage", {"supply.type": GONE}),
    ("supply tolerance 5 %", {"supply.tolerance": GONE}),
    ("supply indoors", {"supply.stands": GONE}),
    ("current into a short as rated", {"supply.current_limit": GONE}),
    ("the supply's approval is not known", {"supply.approved": GONE}),
    ("no mark of limited power", {"supply.limited_power": GONE}),
    ("the supply may be without regulation", {"supply.unregulated": GONE}),
    ("strings made for low voltage", {"strings.drop.runs_on": GONE}),
    ("two wires from bulb to bulb", {"strings.drop.wires": GONE}),
    ("the string's box is cut off", {"strings.drop.box": GONE}),
    ("strings not made for rain", {**OUTDOORS, "strings.drop.waterproof": GONE}),
]


@pytest.mark.parametrize(("assumed", "changes"), ASSUMED)
def test_what_was_not_stated_is_told_with_what_was_assumed(
    tmp_path: Path, assumed: str, changes: Changes
) -> None:
    assert found(tmp_path, changes)["not-stated"].values["assumed"] == (assumed,)


def test_everything_that_was_not_stated_is_in_one_notice(tmp_path: Path) -> None:
    gone = {path: GONE for _words, changes in ASSUMED for path, value in changes.items() if value is GONE}
    findings = [
        each for each in study_of(tmp_path, {**OUTDOORS, **gone}).findings if each.rule == "not-stated"
    ]
    assert [set(each.values["assumed"]) for each in findings] == [{words for words, _changes in ASSUMED}]  # type: ignore[call-overload]


@pytest.mark.parametrize("path", ["place.over_path", "strings.drop.waterproof"])
def test_what_matters_outdoors_only_is_not_asked_for_indoors(tmp_path: Path, path: str) -> None:
    assert "not-stated" not in found(tmp_path, {path: GONE})


@pytest.mark.parametrize(("on_hooks", "told"), [(True, False), (False, True)])
def test_a_proposal_is_held_against_its_run_only_without_hooks(
    tmp_path: Path, on_hooks: bool, told: bool
) -> None:
    """Over the hooks of a square wire goes straight, so there the run does not tell how long it must be."""
    hooks = [{"x": f"{x} m", "y": f"{y} m"} for x, y in ((0, 0), (1, 0), (1, 1), (0, 1))]
    plan = {"hanging": {"sag": "5 mm", "lines": [{"hooks": hooks}]}} if on_hooks else {}
    known = study_of(tmp_path, {**OPPOSITE, "runs.0.extra_wire.length": "1 cm", **plan})
    given = frozenset(key for key in known.file.given if not key.startswith("runs"))
    solved = known.solved
    assert solved is not None
    findings = judge(
        replace(known.file, given=given),
        known.leds,
        solved.arrangement,
        solved.solution,
        solved.margins,
        solved.protection,
    )
    assert ("extra-wire-short" in {each.rule for each in findings}) == told
