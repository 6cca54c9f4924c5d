"""Strings for 12 V and 24 V and two-way strings go through the whole tool, with no wrong finding."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest

from guidegen.build import build
from guidegen.calc.led import group_current_a
from guidegen.report.check import check_text
from guidegen.report.compare import compare, compared
from guidegen.report.figures import figures
from guidegen.study import Solved, Study, study

EXAMPLES = Path(__file__).parents[1] / "examples"
NAMES = ("volts-12", "volts-24", "two-way-strings")
#: What is found in every indoor build without children, by hand from the rules.
ALWAYS = {
    *("other-plugs", "apart-from-mains", "fixings-off-services", "solder-at-the-bench"),
    *("first-hour-watched", "meter-on-amps", "sharp-tools", "class-2-marks", "maker-rating-ends"),
    "polarity-by-meter",
}
OWN = {
    "volts-12": {"dead-ends", "test-resistor-hot"},
    # 2.5 A into a short; the smallest fuse that carries 0.8 x 1.25 A is sure to open only above that (2.1 x).
    "volts-24": {"dead-ends", "smallest-fuse-not-sure", "test-resistor-hot", "runs-proposed"},
    "two-way-strings": {
        *("dead-ends", "two-way-half-dark", "short-not-cleared", "resistor-hot", "test-resistor-hot"),
    },
}


def known(name: str) -> tuple[Study, Solved]:
    found = study(EXAMPLES / f"{name}.yaml")
    assert found.solved is not None
    return found, found.solved


@pytest.mark.parametrize("name", NAMES)
def test_only_what_is_true_of_it_is_found(name: str) -> None:
    found, _solved = known(name)
    assert {finding.rule for finding in found.findings} == ALWAYS | OWN[name]
    assert not found.refused
    assert found.meets_goals


@pytest.mark.parametrize("name", NAMES)
def test_check_figures_and_compare_tell_of_it(name: str) -> None:
    found, _solved = known(name)
    assert "No rule refuses this project" in check_text(found, "utf-8")
    assert figures(found)["meets_goals"]
    data = compared(compare(EXAMPLES / f"{name}.yaml"))
    assert data[0]["meets_goals"]
    assert [each["given"] for each in data].count(True) == (0 if name == "volts-24" else 1)


@pytest.mark.parametrize("name", NAMES)
def test_its_guide_is_built(name: str, tmp_path: Path) -> None:
    build(EXAMPLES / f"{name}.yaml", tmp_path / "guide")
    assert (tmp_path / "guide" / "index.html").is_file()


@pytest.mark.parametrize("name", ["volts-12", "volts-24"])
def test_a_group_of_leds_and_its_resistor_share_the_bulbs_volts(name: str) -> None:
    _found, solved = known(name)
    for plan, run in zip(solved.arrangement.runs, solved.solution.runs, strict=True):
        # Independent: the exact solution of one group at the solved volts, by the Wright omega function.
        exact = group_current_a(plan.led.curve, run.bulb_v, plan.leds_in_series, plan.group_ohm)
        assert run.led_a == pytest.approx(exact, rel=1e-9)


@pytest.mark.parametrize("name", ["volts-12", "volts-24"])
def test_groups_with_a_resistor_of_their_own_get_no_other(name: str) -> None:
    _found, solved = known(name)
    assert not any(run.resistor.fitted for run in solved.arrangement.runs)


def test_every_other_bulb_of_the_one_kind_is_dark_and_half_of_each_of_the_other_is() -> None:
    _found, solved = known("two-way-strings")
    dots, drops = solved.solution.runs
    assert dots.lit.tolist() == [True, False] * 10
    assert drops.lit.all()
    lit_drops = solved.arrangement.runs[1].leds_lit
    assert np.all(lit_drops == 2)  # half of 4


def test_dark_bulbs_draw_nothing_and_count_in_no_mean() -> None:
    _found, solved = known("two-way-strings")
    dots = solved.solution.runs[0]
    assert np.all(dots.bulb_a[~dots.lit] == 0)
    assert dots.mean_led_a == pytest.approx(dots.led_a[dots.lit].mean())
