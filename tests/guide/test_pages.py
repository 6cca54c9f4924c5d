"""Start here, Wiring and Light along the run."""

from __future__ import annotations

from guidegen.parts.bill import bill
from tests.guide.projects import FEEDS, Made, changed, fed, make


def fact(made: Made, label: str) -> str:
    """Value of a fact of the first page."""
    return next(each.value for each in made.page("index.html").facts if each.label == label).replace(
        "\u00a0", " "
    )


def test_the_first_page_names_supply_and_fuse(bench: Made) -> None:
    assert fact(bench, "Supply") == "5.1 V DC, 2.4 A"
    assert fact(bench, "Fuse") == "1 A"


def test_the_verdict_is_the_studys(all_guides: tuple[Made, ...]) -> None:
    for made in all_guides:
        assert made.page("index.html").verdict_good == made.study.meets_goals


def test_a_missed_goal_is_told_on_the_first_page() -> None:
    page = make(changed(goals={"evenness": "0.99"})).page("index.html")
    assert not page.verdict_good
    assert any("the goal is 0.99" in finding for finding in page.findings)


def test_the_first_page_says_how_many_cautions_there_are(plain: Made) -> None:
    count = len(plain.page("stay-safe.html").cautions)
    assert f"“Stay safe” holds {count} cautions" in plain.page("index.html").findings[-1]


def test_doubt_whether_the_bulbs_are_parallel_is_told_on_the_first_page() -> None:
    runs = [fed("one end")]
    made = make(changed(runs=runs, strings__drop__bought=1, strings__drop__between_bulbs="unknown"))
    assert any("not known to be all in parallel" in each for each in made.page("index.html").findings)


def test_bulbs_that_find_no_hook_are_told_on_the_first_page() -> None:
    hanging = {"sag": "5 cm", "lines": [{"spans": ["0.5 m", "0.5 m"]}]}
    made = make(changed(hanging=hanging))
    assert any("beyond the last hook H3" in each for each in made.page("index.html").findings)


def test_live_ends_to_close_are_the_cap_sleeves_of_the_parts(all_guides: tuple[Made, ...]) -> None:
    """At opposite ends, say, plus and minus end apart: two ends, and a sleeve for each."""
    for made in all_guides:
        note = next(fact.note for fact in made.page("index.html").facts if fact.label == "Difficulty")
        caps = sum(line.count for line in bill(made.matter.arrangement).sleeves if line.use == "cap")
        assert f"live ends to close: {caps};" in note


def test_every_bulb_has_a_row_with_its_light(all_guides: tuple[Made, ...]) -> None:
    for made in all_guides:
        for table, run in zip(made.page("light.html").tables, made.matter.runs, strict=True):
            assert [row[0] for row in table.rows] == [str(bulb) for bulb in range(1, run.bulbs + 1)]


def test_a_bulb_that_stays_dark_is_called_dark(two_way: Made) -> None:
    """Of a two-way string bulbs 1, 3, 5, ... light: DESIGN, section 3."""
    rows = two_way.page("light.html").tables[0].rows
    assert [row[4] == "dark" for row in rows] == [False, True] * 6


def test_light_is_the_solvers(bench: Made) -> None:
    rows = bench.page("light.html").tables[0].rows
    assert [row[4] for row in rows] == [f"{light:.2f}" for light in bench.matter.solution.runs[0].light]


def test_bulbs_alike_are_both_named(by_feed: dict[str, Made]) -> None:
    """At opposite ends the ladder is symmetric, but for the tail that lies before bulb 1 in plus alone."""
    assert "brightest at bulb 1 and 12" in by_feed["opposite ends"].page("light.html").message[1]


def test_every_feed_is_told_in_words(by_feed: dict[str, Made]) -> None:
    told = {by_feed[feed].page("wiring.html").runs.rows[0][3] for feed in FEEDS}
    assert len(told) == len(FEEDS)


def test_every_wire_of_the_schematic_is_in_the_table(bench: Made) -> None:
    wires = [row[0] for row in bench.page("wiring.html").wires.rows]
    assert wires == ["L1", "W1", "X1", "S1", "W2", "X2", "S2"]


def test_a_run_without_resistor_says_so(without_resistor: Made) -> None:
    assert without_resistor.page("wiring.html").runs.rows[0][4] == "none"


def test_a_chosen_resistor_says_how_it_was_chosen() -> None:
    run = fed("one end")
    del run["resistor"]
    made = make(changed(runs=[run], goals={"led_current": "3 mA"}))
    group = next(each for each in made.page("numbers.html").groups if each.anchor == "run-1")
    assert (
        "smallest E12 value at which the mean LED gets no more than 3\u00a0mA" in group.calculations[0].note
    )
