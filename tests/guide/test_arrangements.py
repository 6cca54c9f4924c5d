"""Arrangements compared: the page is what `compare` finds, told to a reader."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest

from guidegen.guide.pages import ArrangementsPage
from guidegen.report.compare import compare, compared
from tests.guide.projects import Made, changed, fed, make, of_study

#: Columns of the table of figures.
MARK, RUNS, EVENNESS, LED, GOALS, EXTRA, CORES, JOINTS, CUTS, COST = 0, 1, 4, 5, 6, 7, 8, 9, 10, 11


def page_of(made: Made) -> ArrangementsPage:
    page: ArrangementsPage = made.page("arrangements.html")
    return page


def left_open(**changes: Any) -> dict[str, Any]:
    """The plain project without runs and fuse."""
    project = changed(**changes)
    del project["runs"], project["fuse"]
    return project


@pytest.fixture(scope="module")
def proposed() -> Made:
    return make(left_open())


@pytest.fixture(scope="module")
def hopeless() -> Made:
    """No wire on sale makes the light that even."""
    return make(left_open(goals={"evenness": "0.999"}))


@pytest.fixture(scope="module")
def priced() -> Made:
    prices = {"wire": "0.60 EUR", "resistor": "0.50 EUR", "fuse": "2.00 EUR", "joint": "0.20 EUR"}
    return make(changed(prices=prices))


def figures_of(project: dict[str, Any], folder: Path) -> list[dict[str, Any]]:
    """What `compare --json` prints for a project."""
    path = folder / "bench.yaml"
    path.write_text(json.dumps(project), encoding="utf-8")
    found: list[dict[str, Any]] = json.loads(json.dumps(compared(compare(path))))
    return found


@pytest.mark.parametrize(
    "project",
    [
        changed(),
        left_open(),
        changed(strings__drop__lit_on_dc="half"),
        left_open(
            supply__voltage="12 V", strings__drop__leds_in_series=3, strings__drop__group_resistor="560 ohm"
        ),
    ],
    ids=["own runs", "runs left out", "two-way string", "12 V groups"],
)
def test_the_tables_figures_are_those_of_compare(project: dict[str, Any], tmp_path: Path) -> None:
    expected, rows = figures_of(project, tmp_path), page_of(make(project)).table.rows
    assert len(rows) == len(expected)
    for row, each in zip(rows, expected, strict=True):
        assert row[EVENNESS] == f"{each['evenness']:.2f}"
        assert row[COST] == f"{each['cost']:.2f}"
        assert (row[JOINTS], row[CUTS]) == (str(each["joints"]), str(each["cuts"]))
        assert row[EXTRA] == (f"{each['extra_wire_m']:.3g}" if each["extra_wire_m"] else "–")
        assert row[CORES] == (f"{each['core_m']:.3g}" if each["core_m"] else "–")
        led_ma = [1e3 * run["led_current_a"] for run in each["runs"]]
        assert {float(part) for part in row[LED].split(" to ")} == {
            float(f"{min(led_ma):.3g}"),
            float(f"{max(led_ma):.3g}"),
        }
        assert (row[GOALS] == "met") == each["meets_goals"]
        assert row[MARK].endswith("maker's own, built here") == each["given"]


def test_the_makers_own_is_marked_in_words(plain: Made) -> None:
    marks = [each.mark for each in page_of(plain).arrangements if each.mark]
    assert marks == ["the maker's own, built in this guide"]


def test_with_runs_left_out_the_first_is_built(proposed: Made) -> None:
    page = page_of(proposed)
    assert [each.number for each in page.arrangements if each.mark] == [1]
    assert page.arrangements[0].mark == "proposed, built in this guide"
    assert "its maker left the choice open" in page.message[0]


def test_the_guide_builds_the_runs_of_the_first_arrangement(proposed: Made) -> None:
    first = proposed.study.choice.proposals[0].worked.arrangement
    assert [run.resistor.ohm for run in first.runs] == [run.resistor.ohm for run in proposed.matter.runs]
    assert [run.feed for run in first.runs] == [run.feed for run in proposed.matter.runs]


def test_what_was_searched_for_a_proposal_is_not_searched_again(
    monkeypatch: pytest.MonkeyPatch, proposed: Made
) -> None:
    monkeypatch.setattr("guidegen.choose.choose.search", None)
    assert page_of(make_again(proposed)).arrangements == page_of(proposed).arrangements


def make_again(made: Made) -> Made:
    """The guide of the same study."""
    return of_study(made.study)


def test_the_own_arrangement_is_held_against_the_first(bench: Made) -> None:
    page = page_of(bench)
    proposals = bench.study.choice.proposals
    mine = next(each for each in proposals if each.given)
    told = next(text for text in page.message if text.startswith("Against number 1"))
    assert f"{mine.cost.money:.2f}" in told.replace("\u00a0", " ")
    assert f"{proposals[0].cost.money:.2f}" in told.replace("\u00a0", " ")


def test_the_first_is_called_cheapest_only_if_it_is(bench: Made) -> None:
    costs = [each.cost.money for each in bench.study.choice.proposals if each.meets_goals]
    told = " ".join(page_of(bench).message)
    assert ("costs least of those that meet it" in told) == (costs[0] == min(costs))


def test_out_of_reach_the_way_and_the_smallest_change_are_told(hopeless: Made) -> None:
    told = " ".join(page_of(hopeless).message)
    assert "No arrangement meets the goals; the first comes nearest." in told
    assert "In the way: " in told
    assert "smallest change that would do" in told or "No single change" in told
    assert {row[GOALS] for row in page_of(hopeless).table.rows} == {"missed"}


def test_typical_prices_are_marked_as_such(plain: Made) -> None:
    table = page_of(plain).table
    assert table.columns[COST].title == "Cost in EUR, typical prices"
    assert "Typical price points, own assumption: wire, resistors, fuse and joints." in table.note


def test_prices_of_the_file_are_marked_as_such(priced: Made) -> None:
    table = page_of(priced).table
    assert table.columns[COST].title == "Cost in EUR, prices of the file"
    assert table.note == "Prices from the project file: wire, resistors, fuse and joints."


def test_some_prices_of_the_file_are_told_apart_from_typical_ones() -> None:
    table = page_of(make(changed(prices={"fuse": "2.00 GBP"}))).table
    assert table.columns[COST].title == "Cost in GBP, partly typical prices"
    assert table.note.startswith("Prices from the project file: fuse.")


def test_strings_that_may_not_be_cut_leave_nothing_to_compare() -> None:
    strings = changed()["strings"]
    strings["drop"] |= {"between_bulbs": "series", "bought": 1}
    page = page_of(make(changed(strings=strings, runs=[fed("one end")])))
    assert any(each.mark for each in page.arrangements)


def test_every_chart_has_its_picture_named(all_guides: tuple[Made, ...]) -> None:
    for made in all_guides:
        pictures = [each.picture for each in page_of(made).arrangements]
        assert pictures == [f"arrangement-{number}" for number in range(1, len(pictures) + 1)]
        assert 1 <= len(pictures) <= 8


def test_the_sentence_under_a_chart_is_that_of_compare(bench: Made, tmp_path: Path) -> None:
    sample = Path(__file__).parents[2] / "sample_project" / "potting-bench.yaml"
    whys = [each["why"] for each in compared(compare(sample))]
    for each, text in zip(page_of(bench).arrangements, whys, strict=True):
        assert text.startswith(f"{each.title}: ")
        assert each.why.lower() in text.lower()
