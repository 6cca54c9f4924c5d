"""The tables for a reader whose supply or string differs."""

from __future__ import annotations

from typing import Any

import pytest

from guidegen.guide.blocks import CalculationGroup
from guidegen.guide.format import span
from tests.guide.projects import Made, changed, example, fed, make

READS, FIT, RATED, LED, HEAT, BEHIND = range(6)


@pytest.fixture(scope="module")
def volts_12() -> Made:
    return example("volts-12")


@pytest.fixture(scope="module")
def volts_24() -> Made:
    return example("volts-24")


@pytest.fixture(scope="module")
def l_shape() -> Made:
    return example("l-shape")


def group(made: Made, anchor: str) -> CalculationGroup:
    groups: tuple[CalculationGroup, ...] = made.page("numbers.html").groups
    return next(each for each in groups if each.anchor == anchor)


def own_rows(made: Made, anchor: str) -> list[tuple[str, ...]]:
    """The rows of this build, a table each."""
    found = []
    for table in group(made, anchor).tables:
        marked = [row for row in table.rows if "this build" in row[READS]]
        assert len(marked) == 1
        found += marked
    return found


def plain_text(text: str) -> str:
    return text.replace("\u00a0", " ")


def test_rows_of_another_supply_stand_only_outside_what_the_step_calls_right(bench: Made) -> None:
    """The sample's supply is right from 4.80 to 5.41 V (5.1 V +-5 % and a meter of +-0.5 % and 2 steps)."""
    reads = [plain_text(row[READS]) for row in group(bench, "supply-differs").tables[0].rows]
    assert reads == ["4.75 V", "4.80 to 5.41 V: this build", "5.50 V"]
    assert plain_text(bench.step("supply-volts").checks[0].range) == "4.80 to 5.41 V"


def test_rows_of_another_string_stand_only_outside_what_the_bench_step_calls_right(bench: Made) -> None:
    behind = bench.step("bench-reading").checks[1].range
    for table in group(bench, "string-differs").tables:
        reads = [plain_text(row[READS]) for row in table.rows]
        assert plain_text(behind) + ": this build" in reads
        low, high = (float(each.replace(" V", "")) for each in plain_text(behind).split(" to "))
        assert not [each for each in reads if ":" not in each and low <= float(each[:4]) <= high]


def test_tables_name_their_step_and_what_no_longer_holds(bench: Made) -> None:
    for anchor, identity in (("supply-differs", "supply-volts"), ("string-differs", "bench-reading")):
        intro = group(bench, anchor).intro
        assert intro.startswith(f"Only if step {bench.step(identity).number} reads outside its range")
        assert "make the guide anew: labels, test points and readings change with it" in intro
        assert "readings of this guide then no longer hold; judge by the columns here" in intro
    assert "Above the highest row do not use the supply" in group(bench, "supply-differs").intro


def test_the_steps_point_to_the_tables(bench: Made) -> None:
    assert any("“If your supply differs”" in text for text in bench.step("supply-volts").checks[0].if_not)
    assert any("“If your string differs”" in text for text in bench.step("bench-reading").checks[0].if_not)


def test_a_supply_is_refused_by_its_step_only_above_the_highest_row(bench: Made) -> None:
    too_high = bench.step("supply-volts").checks[0].if_not[0]
    assert plain_text(too_high).startswith("Above 5.50 V: it is not regulated")


def test_no_row_has_a_lower_rating_than_the_build(bench: Made, l_shape: Made) -> None:
    for made in (bench, l_shape):
        for each in made.page("numbers.html").groups:
            for table in each.tables if each.anchor in ("supply-differs", "string-differs") else ():
                ratings = {row[RATED] for row in table.rows}
                own = next(row[RATED] for row in table.rows if "this build" in row[READS])
                assert min(ratings, key=lambda text: float(text.split("\u00a0")[0])) == own


def test_a_supply_that_no_resistor_makes_safe_is_not_to_be_used(volts_24: Made) -> None:
    """27.2 V over what drops 2.4 V at 0.36 A (6.8 ohm) is over 10 W, and 2.5 A need not open the fuse."""
    rows = {plain_text(row[READS]): row[FIT] for row in group(volts_24, "supply-differs").tables[0].rows}
    assert rows["25.20 V"] == rows["26.40 V"] == "do not use this supply"
    assert rows["22.80 V"] == "none"


def test_more_volts_are_never_answered_with_no_resistor(volts_12: Made) -> None:
    rows = {plain_text(row[READS]): row[FIT] for row in group(volts_12, "supply-differs").tables[0].rows}
    assert plain_text(rows["13.20 V"]) == "3.9 Ω"


def test_a_table_of_strings_that_tells_nothing_is_dropped(volts_12: Made, volts_24: Made) -> None:
    for made in (volts_12, volts_24):
        assert "string-differs" not in {each.anchor for each in made.page("numbers.html").groups}
        texts = [text for check in made.step("bench-reading").checks for text in check.if_not]
        assert not any("If your string differs" in text for text in texts)


def test_at_this_builds_volts_this_builds_resistor_stands(bench: Made) -> None:
    for anchor in ("supply-differs", "string-differs"):
        rows, runs = own_rows(bench, anchor), bench.matter.runs
        assert [plain_text(row[FIT]) for row in rows] == [f"{run.resistor.ohm:g} Ω" for run in runs]
        behind = [f"{run.after_resistor_v:.2f} V" for run in bench.matter.solution.runs]
        assert [plain_text(row[BEHIND]) for row in rows] == behind


def test_the_strings_own_row_is_the_reading_of_the_bench_test(bench: Made) -> None:
    expected = bench.matter.bench_powers["drop"]
    row = own_rows(bench, "string-differs")[0]
    reads = span(expected.after_resistor_v.low, expected.after_resistor_v.high, "V")
    assert plain_text(row[READS]) == f"{plain_text(reads)}: this build"
    title = group(bench, "string-differs").tables[0].columns[0].title
    assert plain_text(title) == f"“drop” behind {expected.ohm:g} Ω reads"


def test_every_column_of_values_names_its_unit_in_every_row(bench: Made) -> None:
    for table in group(bench, "supply-differs").tables:
        for row in table.rows:
            units = [plain_text(cell).split(" ")[1] for cell in row[FIT:]]
            assert units == ["Ω", "W", "mA", "W", "V"]


def test_other_supplies_have_rows_of_ten_percent_either_way(without_resistor: Made) -> None:
    reads = [plain_text(row[READS]) for row in group(without_resistor, "supply-differs").tables[0].rows]
    assert (reads[0], reads[-1]) == ("10.80 V", "13.20 V")
    assert "this build" in reads[1]


def test_a_run_without_resistor_is_told_so(without_resistor: Made) -> None:
    assert [row[FIT] for row in own_rows(without_resistor, "supply-differs")] == ["none"]


def test_too_few_volts_are_told() -> None:
    """4.75 V leave LEDs of 4.8 V next to nothing."""
    project = changed(supply__tolerance="1 %", runs=[fed("one end", resistor="1 ohm")])
    led = {"voltage": "4.8 V", "current": "3 mA", "slope": "0.05 V", "resistance": "1 ohm"}
    project["strings"]["drop"]["led"] = led
    table = group(make(project), "supply-differs").tables[0]
    assert table.rows[0][FIT] == "too few volts"
    assert "far dimmer than planned, whatever resistor is fitted" in table.note


def test_a_value_off_the_series_is_explained() -> None:
    made = make(changed(runs=[fed("one end", resistor="16 ohm")]))
    assert (
        "The build itself has 16\u00a0Ω; the other rows keep to values of E12"
        in group(made, "supply-differs").tables[0].note
    )


def test_each_kind_of_string_has_its_own_tables(two_kinds: Made) -> None:
    titles = {table.columns[0].title.split("”")[0] for table in group(two_kinds, "string-differs").tables}
    assert titles == {"“drop", "“star"}


def test_runs_that_read_alike_share_a_table() -> None:
    runs: list[dict[str, Any]] = [fed("one end"), {**fed("one end"), "name": "sill"}]
    captions = [table.caption for table in group(make(changed(runs=runs)), "supply-differs").tables]
    assert captions == ["Fit to your supply: shelf and sill"]
