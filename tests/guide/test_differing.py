"""The tables for a reader whose supply or string differs."""

from __future__ import annotations

from typing import Any

from guidegen.guide.blocks import CalculationGroup
from tests.guide.projects import Made, changed, fed, make

READS, FIT, RATED, LED, HEAT, BEHIND = range(6)


def group(made: Made, anchor: str) -> CalculationGroup:
    return next(each for each in made.page("numbers.html").groups if each.anchor == anchor)


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


def test_supplies_sold_as_five_volts_have_rows_from_4_75_to_5_5(plain: Made) -> None:
    reads = [plain_text(row[READS]) for row in group(plain, "supply-differs").tables[0].rows]
    assert (reads[0], reads[-1]) == ("4.75 V", "5.50 V")
    assert "5.00 V, this build" in reads


def test_at_this_builds_volts_this_builds_resistor_stands(bench: Made) -> None:
    for anchor in ("supply-differs", "string-differs"):
        rows, runs = own_rows(bench, anchor), bench.matter.runs
        assert [plain_text(row[FIT]) for row in rows] == [f"{run.resistor.ohm:g} Ω" for run in runs]
        behind = [f"{run.after_resistor_v:.2f} V" for run in bench.matter.solution.runs]
        assert [plain_text(row[BEHIND]) for row in rows] == behind


def test_the_strings_own_row_is_the_reading_of_the_bench_test(bench: Made) -> None:
    expected = bench.matter.bench_powers["drop"]
    row = own_rows(bench, "string-differs")[0]
    assert plain_text(row[READS]) == f"{expected.after_resistor_v.expected:.2f} V, this build"
    title = group(bench, "string-differs").tables[0].columns[0].title
    assert plain_text(title) == f"“drop” behind {expected.ohm:g} Ω reads"


def test_every_column_of_values_names_its_unit_in_every_row(bench: Made) -> None:
    for table in group(bench, "supply-differs").tables:
        for row in table.rows:
            units = [plain_text(cell).split(" ")[1] for cell in row[FIT:]]
            assert units == ["Ω", "W", "mA", "W", "V"]


def test_other_supplies_have_rows_of_ten_percent_either_way(without_resistor: Made) -> None:
    reads = [plain_text(row[READS]) for row in group(without_resistor, "supply-differs").tables[0].rows]
    assert (reads[0], reads[2], reads[-1]) == ("10.80 V", "12.00 V, this build", "13.20 V")


def test_a_run_without_resistor_is_told_so(without_resistor: Made) -> None:
    assert [row[FIT] for row in own_rows(without_resistor, "supply-differs")] == ["none"]


def test_too_few_volts_are_told() -> None:
    """5 V less a tenth leaves LEDs of 4.6 V next to nothing."""
    project = changed(runs=[fed("one end", resistor="1 ohm")])
    led = {"voltage": "4.8 V", "current": "3 mA", "slope": "0.05 V", "resistance": "1 ohm"}
    project["strings"]["drop"]["led"] = led
    table = group(make(project), "supply-differs").tables[0]
    assert table.rows[0][FIT] == "too few volts"
    assert "far dimmer than planned, whatever resistor is fitted" in table.note


def test_a_value_off_the_series_is_explained() -> None:
    made = make(changed(runs=[fed("one end", resistor="16 ohm")]))
    assert "The build itself has 16\u00a0Ω" in group(made, "supply-differs").tables[0].note


def test_each_kind_of_string_has_its_own_tables(two_kinds: Made) -> None:
    titles = {table.columns[0].title.split("”")[0] for table in group(two_kinds, "string-differs").tables}
    assert titles == {"“drop", "“star"}


def test_runs_that_read_alike_share_a_table() -> None:
    runs: list[dict[str, Any]] = [fed("one end"), {**fed("one end"), "name": "sill"}]
    captions = [table.caption for table in group(make(changed(runs=runs)), "supply-differs").tables]
    assert captions == ["Fit to your supply: shelf and sill"]
