"""Arrangements compared: the page is what `compare` finds, told to a reader."""

from __future__ import annotations

import json
import re
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest
import yaml

from guidegen.choose.choice import Proposal
from guidegen.guide.pages import ArrangementsPage, Compared
from guidegen.parts.price_list import price_list
from guidegen.report.compare import compare, compared
from guidegen.report.figures import figures
from guidegen.study import study
from tests.guide.projects import Made, changed, fed, make, of_study

#: Columns of the table of figures, and of the table of wire.
MARK, RUNS, EVENNESS, LED, GOALS, JOINTS, CUTS, COST = 0, 1, 3, 4, 5, 6, 7, 8
RESISTORS, FUSE, FEEDER, FEEDERS_M, EXTRA, EXTRA_M, CORES_M = 1, 2, 3, 4, 5, 6, 7
SAMPLE = Path(__file__).parents[2] / "sample_project" / "potting-bench.yaml"
EXAMPLES = Path(__file__).parents[1] / "examples"


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
        led_ma = [1e3 * run["led_current_a"] for run in each["runs"]]
        assert {float(part) for part in row[LED].split(" to ")} == {
            float(f"{min(led_ma):.3g}"),
            float(f"{max(led_ma):.3g}"),
        }
        assert (row[GOALS] == "met") == each["meets_goals"]
        assert row[MARK].endswith("maker's own, built here") == each["given"]


def test_the_wires_and_the_fuse_are_those_of_compare(bench: Made) -> None:
    rows = page_of(bench).wires.rows
    for row, each in zip(rows, compared(compare(SAMPLE)), strict=True):
        assert row[EXTRA_M] == (f"{each['extra_wire_m']:.3g}" if each["extra_wire_m"] else "–")
        assert row[CORES_M] == (f"{each['core_m']:.3g}" if each["core_m"] else "–")
        assert row[FUSE] == f"{each['fuse_a']:g}\u00a0A"
        for cell, metres, key in ((FEEDER, FEEDERS_M, "feeder"), (EXTRA, EXTRA_M, "extra_wire")):
            wires = [run[key] for run in each["runs"] if run[key]]
            sizes = dict.fromkeys(f"{wire['area_m2'] * 1e6:g}\u00a0mm²" for wire in wires)
            assert row[cell] == (", ".join(sizes) or "–")
            total = sum(wire["length_m"] for wire in wires)
            assert row[metres] == (f"{total:.3g}" if total else "–")


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
    strings["drop"] |= {"between_bulbs": "chip", "bought": 1}
    page = page_of(make(changed(strings=strings, runs=[fed("one end")])))
    assert any(each.mark for each in page.arrangements)


def test_every_chart_has_its_picture_named(all_guides: tuple[Made, ...]) -> None:
    for made in all_guides:
        pictures = [each.picture for each in page_of(made).arrangements]
        assert pictures == [f"arrangement-{number}" for number in range(1, len(pictures) + 1)]
        assert 1 <= len(pictures) <= 8


def test_the_sentence_under_a_chart_is_that_of_compare(bench: Made, tmp_path: Path) -> None:
    whys = [each["why"] for each in compared(compare(SAMPLE))]
    for each, text in zip(page_of(bench).arrangements, whys, strict=True):
        assert text.startswith(f"{each.title}: ")
        assert each.why.lower() in text.lower()


def message_of(name: str) -> str:
    return "\n".join(page_of(of_study(study(EXAMPLES / name))).message)


def test_the_own_is_not_among_those_that_no_other_beats(bench: Made) -> None:
    # Number 2 of the sample is as even as the maker's own for less of everything.
    told = page_of(bench).message[1]
    count = bench.study.choice.unbeaten
    assert count > 8
    assert f"Shown are, of {count} proposals that no other proposal beats in everything, the 6 that" in told
    assert "stand best and the most even, and the maker's own." in told


def test_a_single_proposal_beside_the_own_is_told_as_such() -> None:
    assert "Shown is the proposal that stands best, and the maker's own." in message_of("safety-two-way.yaml")


def test_without_own_runs_none_is_spoken_of_among_those_shown(proposed: Made) -> None:
    told = page_of(proposed).message[1]
    assert "that no other proposal beats in everything" in told
    assert "maker's own" not in told


def test_the_most_even_is_called_so_of_those_shown(bench: Made) -> None:
    proposals = bench.study.choice.proposals
    best = max(range(len(proposals)), key=lambda index: proposals[index].evenness)
    assert f"Most even of those shown is number {best + 1}: " in "\n".join(page_of(bench).message)


def nudged(made: Made, first: float, own: float) -> Made:
    """The guide of a study whose first and own arrangement have these evennesses."""
    choice = made.study.choice

    def with_evenness(each: Proposal, evenness: float) -> Proposal:
        solution = replace(each.worked.solution, evenness=evenness)
        return replace(each, worked=replace(each.worked, solution=solution))

    proposals = tuple(
        with_evenness(each, own) if each.given else with_evenness(each, first) if number == 0 else each
        for number, each in enumerate(choice.proposals)
    )
    study = replace(made.study)
    study.__dict__["choice"] = replace(choice, proposals=proposals)
    return of_study(study)


def test_page_and_sentence_call_the_own_more_even_when_it_reads_more(bench: Made) -> None:
    # Read as 0.50 and 0.51, though what is between them rounds to nothing.
    page = page_of(nudged(bench, first=0.5043, own=0.5057))
    own = next(each for each in page.arrangements if each.mark)
    assert "gives evenness 0.51 instead of 0.50" in "\n".join(page.message)
    assert "against the first 0.01 more even" in own.why


def test_page_and_sentence_call_the_own_as_even_when_it_reads_the_same(bench: Made) -> None:
    # Both read 0.51, though what is between them rounds to 0.01.
    page = page_of(nudged(bench, first=0.5055, own=0.5145))
    own = next(each for each in page.arrangements if each.mark)
    assert "is as even (0.51)" in "\n".join(page.message)
    assert "against the first as even" in own.why


def test_what_the_own_would_cost_with_wire_of_the_first_is_told(bench: Made) -> None:
    # By hand: 2 x 3.5 m + 13.5 m = 20.5 m of core go from 0.5 to 0.25 mm2; the rest stays.
    prices = price_list(bench.study.project.prices)
    own = next(each for each in bench.study.choice.proposals if each.given)
    expected = own.cost.money - 20.5 * (prices.core_price(0.5) - prices.core_price(0.25))
    told = next(text for text in page_of(bench).message if "size of their wire" in text)
    assert f"would cost {expected:.2f}\u00a0EUR" in told
    assert "number 1 is reckoned with 0.25\u00a0mm², the maker's own with 0.5\u00a0mm²" in told


def test_where_all_wire_is_of_one_size_nothing_is_said_of_it(tmp_path: Path) -> None:
    runs = [fed("one end") | {"feeder": {"length": "1 m", "wire": {"area": "0.25 mm2"}}}]
    assert not any("size of their wire" in text for text in page_of(make(changed(runs=runs))).message)


def test_two_that_differ_by_their_resistors_have_titles_that_say_so() -> None:
    titles = [each.title for each in page_of(of_study(study(EXAMPLES / "safety-two-way.yaml"))).arrangements]
    assert titles == [
        "One run of 8, fed at one end, resistor of 220\u00a0Ω",
        "One run of 8, fed at one end, resistor of 100\u00a0Ω",
    ]


def test_no_two_titles_are_the_same(all_guides: tuple[Made, ...]) -> None:
    for made in all_guides:
        titles = [each.title for each in page_of(made).arrangements]
        assert len(set(titles)) == len(titles)


def test_every_proposal_but_the_own_has_its_block_of_the_project_file(bench: Made) -> None:
    page = page_of(bench)
    assert [bool(each.runs) for each in page.arrangements] == [not each.mark for each in page.arrangements]


def taken_over(path: Path, each: Compared, folder: Path) -> dict[str, Any]:
    """`figures` of the project file with a block of the page put in, and what is told beside it."""
    data = yaml.load(path.read_text("utf-8"), yaml.BaseLoader)
    data |= yaml.load(each.runs, yaml.BaseLoader)
    for text in each.also:
        place = re.fullmatch("Under place write supply_at: (.*)", text)
        line = re.fullmatch(r"In line (\d+) of hanging write (runs: .*)", text)
        if place:
            data["place"]["supply_at"] = yaml.load(place[1], yaml.BaseLoader)
        else:
            assert line, text
            data["hanging"]["lines"][int(line[1]) - 1] |= yaml.load(line[2], yaml.BaseLoader)
    changed_file = folder / "taken.yaml"
    changed_file.write_text(json.dumps(data), encoding="utf-8")
    return figures(study(changed_file))


@pytest.mark.parametrize(
    "path",
    [SAMPLE, EXAMPLES / "l-shape.yaml", EXAMPLES / "safety-two-way.yaml", EXAMPLES / "volts-12.yaml"],
    ids=lambda path: path.stem,
)
def test_a_block_put_into_the_file_gives_the_figures_of_the_proposal(path: Path, tmp_path: Path) -> None:
    expected = compared(compare(path))
    for each, wanted in zip(page_of(of_study(study(path))).arrangements, expected, strict=True):
        if each.mark:
            continue
        found = taken_over(path, each, tmp_path)
        assert found["evenness"] == pytest.approx(wanted["evenness"], rel=1e-9)
        assert found["supply"] == pytest.approx(wanted["supply"], rel=1e-9)
        assert found["fuse_a"] == wanted["fuse_a"]
        for run, own in zip(found["runs"], wanted["runs"], strict=True):
            assert run["resistor_ohm"] == own["resistor_ohm"]
            assert run["resistor_w"] == pytest.approx(own["resistor_w"], rel=1e-9)


def test_of_several_places_the_block_tells_which_to_write(tmp_path: Path) -> None:
    path = tmp_path / "places.yaml"
    place = changed()["place"] | {"supply_at": ["start", "2 m"]}
    path.write_text(json.dumps(changed(place=place)), encoding="utf-8")
    expected = compared(compare(path))
    page = page_of(of_study(study(path)))
    for each, wanted in zip(page.arrangements, expected, strict=True):
        if each.runs:
            assert each.also[0] in ("Under place write supply_at: start", "Under place write supply_at: 2 m")
            found = taken_over(path, each, tmp_path)
            assert found["supply"] == pytest.approx(wanted["supply"], rel=1e-9)


@pytest.fixture
def two_places(tmp_path: Path) -> Path:
    """Lights round a corner, runs left out, with proposals at both of two places of the supply."""
    project = yaml.safe_load((EXAMPLES / "l-shape.yaml").read_text(encoding="utf-8"))
    del project["runs"]
    for line in project["hanging"]["lines"]:
        line.pop("runs", None)
    project["place"]["supply_at"] = ["H1", "H3"]
    path = tmp_path / "two-places.yaml"
    path.write_text(json.dumps(project), encoding="utf-8")
    return path


def test_proposals_at_any_place_of_the_supply_can_be_taken_over(two_places: Path, tmp_path: Path) -> None:
    """The build has its supply at the place of the first; the others keep theirs."""
    found = study(two_places)
    page, proposals, wanted = page_of(of_study(found)), found.choice.proposals, compared(compare(two_places))
    sites = [f"H{each.sited.place.number}" for each in proposals]
    assert set(sites) == {"H1", "H3"}
    assert [each.also for each in page.arrangements] == [
        (f"Under place write supply_at: {h}",) for h in sites
    ]
    for each, expected in zip(page.arrangements, wanted, strict=True):
        taken = taken_over(two_places, each, tmp_path)
        assert taken["evenness"] == pytest.approx(expected["evenness"], rel=1e-9)
        assert taken["supply"] == pytest.approx(expected["supply"], rel=1e-9)
