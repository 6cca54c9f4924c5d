"""The numbers: results are the solver's, and the text is the sum that was done."""

from __future__ import annotations

import math
import re

import pytest

from guidegen.calc.resistor import running_w
from guidegen.calc.wire import ohm_per_m
from guidegen.calc.worked import work
from guidegen.guide.blocks import Calculation
from guidegen.guide.kirchhoff import currents_of_bulbs, volts_around
from guidegen.guide.worked import FIGURES, calculation, plain
from guidegen.report.figures import figures
from tests.guide.projects import Made


def sums(made: Made, anchor: str) -> tuple[Calculation, ...]:
    """Calculations of one subject."""
    return next(group for group in made.page("numbers.html").groups if group.anchor == anchor).calculations


def result(made: Made, anchor: str, title: str) -> float:
    """The result of a calculation, in SI, as printed."""
    text = next(each for each in sums(made, anchor) if each.title == title).result
    number = re.search(r"= ([−0-9.]+)", text)
    assert number is not None, text
    return float(number[1].replace("−", "-"))


#: Half a unit of the last printed figure.
PRINTED = 0.5 * 10.0 ** (1 - FIGURES)


def test_results_are_those_of_the_figures(bench: Made) -> None:
    """`guidegen figures --json` and the page tell the same."""
    told = figures(bench.study)
    first, supply = told["runs"][0], told["supply"]
    pairs = [
        (result(bench, "supply", "Watts from the supply"), supply["power_w"]),
        (result(bench, "supply", "Load of the supply"), supply["load"]),
        (result(bench, "supply", "Load of the supply, worst case"), supply["load_worst"]),
        (result(bench, "run-1", "Volts behind the resistor"), first["after_resistor_v"]),
        (result(bench, "run-1", "Current, from the volts across the resistor"), first["current_a"]),
        (result(bench, "run-1", "Watts in the resistor, running"), first["resistor_w"]["running"]),
        (result(bench, "run-1", "Watts in the resistor, worst case"), first["resistor_w"]["worst"]),
        (result(bench, "run-1", "Watts with the run shorted"), first["resistor_w"]["shorted"]),
        (result(bench, "run-1", "Evenness of this run"), first["evenness"]),
        (result(bench, "run-1", "Evenness as it looks"), first["seen_evenness"]),
        (result(bench, "evenness", "Evenness"), told["evenness"]),
    ]
    for shown, figure in pairs:
        assert shown == pytest.approx(figure, rel=PRINTED)


def test_text_and_result_come_from_one_call() -> None:
    """0.2 A through 10 ohm: 0.2 x 0.2 x 10 = 0.4 W, by hand."""
    block = calculation(work(running_w, current_a=0.2, resistance_ohm=10.0))
    assert block.formula == "P = I² · R"
    assert block.substituted.replace("\u00a0", " ") == "P = (0.2 A)² · 10 Ω"
    assert block.result.replace("\u00a0", " ") == "P = 0.4 W"
    assert [symbol.symbol for symbol in block.symbols] == ["I", "R", "P"]
    assert block.source


def test_areas_are_shown_in_square_millimetres_and_still_add_up() -> None:
    """1/58 ohm mm2/m (IEC 60028) over 0.5 mm2 = 0.03448 ohm/m, by hand."""
    block = calculation(work(ohm_per_m, area_m2=0.5e-6))
    assert block.substituted.replace("\u00a0", " ") == "r = 0.01724 Ω·mm²/m / 0.5 mm²"
    assert block.result.replace("\u00a0", " ") == "r = 0.03448 Ω/m"


def test_every_symbol_of_a_formula_is_put_in(all_guides: tuple[Made, ...]) -> None:
    for made in all_guides:
        for group in made.page("numbers.html").groups:
            for each in group.calculations:
                assert each.formula and each.substituted and each.result and each.source, each.title
                right = each.substituted.partition("=")[2]
                names = {
                    item.symbol for item in each.symbols if len(item.symbol) > 1 and item.symbol.isascii()
                }
                assert not [name for name in names if re.search(rf"\b{name}\b", right)], each.substituted


@pytest.mark.parametrize(
    ("value", "text"),
    [
        (1.301e-16, "1.301 × 10⁻¹⁶"),
        (0.0001, "0.0001"),
        (-8.9e-16, "−8.900 × 10⁻¹⁶"),
        (math.inf, "∞"),
        (0.0, "0"),
    ],
)
def test_very_small_numbers_have_a_power_of_ten(value: float, text: str) -> None:
    assert plain(value).replace("\u00a0", " ") == text


def test_volts_round_every_loop_add_up(all_guides: tuple[Made, ...]) -> None:
    """Kirchhoff's voltage law; the solver stops at 1e-12 of the current, so microvolts are ample."""
    for made in all_guides:
        for index in range(len(made.matter.runs)):
            assert abs(volts_around(made.matter, index).residual) < 1e-6


def test_currents_of_the_bulbs_add_up_to_the_run(all_guides: tuple[Made, ...]) -> None:
    """Kirchhoff's current law, to 1e-9 of the current (DESIGN, section 3)."""
    for made in all_guides:
        for index, solved in enumerate(made.matter.solution.runs):
            assert abs(currents_of_bulbs(made.matter, index).residual) <= 1e-9 * solved.current_a


def test_the_corners_name_what_makes_each_quantity_worst(bench: Made) -> None:
    rows = {row[0]: row for row in bench.page("numbers.html").corners.rows}
    assert rows["back rail: watts in the resistor"][1] == "supply high; resistor, wires and LED volts low"
    assert rows["back rail: light of the dimmest bulb"][1] == "supply low; resistor and wires high"
    assert rows["back rail: watts in the resistor"][4] == "5\u00a0W"


def test_the_page_ends_with_what_is_left_out_and_the_file(bench: Made) -> None:
    page = bench.page("numbers.html")
    assert len(page.left_out) >= 5
    assert page.project_file == bench.study.file.source_text
    assert page.project_file_name == "potting-bench.yaml"


def test_seen_evenness_is_marked_an_estimate(bench: Made) -> None:
    block = next(each for each in sums(bench, "run-1") if each.title == "Evenness as it looks")
    assert "estimate" in block.note


def test_a_run_without_resistor_has_no_sums_about_one(without_resistor: Made) -> None:
    assert not any("resistor" in each.title for each in sums(without_resistor, "run-1"))
