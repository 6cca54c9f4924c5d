"""The schematic shows the circuit that is solved, and nothing else."""

from __future__ import annotations

import xml.etree.ElementTree as ET
from dataclasses import replace
from itertools import pairwise
from pathlib import Path

import networkx as nx
import pytest

from guidegen.circuit.points import test_points as points_of
from guidegen.circuit.solve import solve
from guidegen.drawings import layout
from guidegen.drawings.schematic import draw_schematics, point_v, sketch
from tests.drawings.builds import AWKWARD, FEEDS, arrangement, run
from tests.drawings.circuit_in_picture import circuit, rounded

SVG = "{http://www.w3.org/2000/svg}"


def drawn(build, number=0):
    """One figure of an arrangement, as the pen left it, and its sheet."""
    points = points_of(build)
    sheet = layout.lay_out(build, points)[number]
    solution = solve(build)
    return sketch(sheet, build, points, {p.number: point_v(p, build, solution) for p in points}), sheet


def texts(svg: str) -> list[str]:
    """Every line of text in a picture, with plain spaces for those that do not break."""
    return [
        "".join(element.itertext()).replace("\u00a0", " ")
        for element in ET.fromstring(svg).iter(f"{SVG}text")
    ]


@pytest.mark.parametrize("feed", FEEDS)
def test_anode_on_plus_and_cathode_on_minus(feed):
    pen, sheet = drawn(arrangement(run(feed)))
    row = sheet.rows[0]
    bulbs = [name for name in pen.symbols if name.startswith("bulb")]
    assert len(bulbs) == len(row.columns)
    for name in bulbs:
        anode, cathode = pen.ends(name)
        assert anode[1] == pytest.approx(row.plus_y)
        assert cathode[1] == pytest.approx(row.minus_y)


def test_the_library_draws_an_led_from_anode_to_cathode():
    """Its triangle points from `start` to the bar, as IEC 60617 draws conventional current (from memory)."""
    pen, sheet = drawn(arrangement(run()))
    led = pen.symbols["bulb 1.1"]
    base, tip = led.segments[1].verts[0], led.segments[1].verts[1]
    assert led.transform.transform(base)[1] > led.transform.transform(tip)[1]
    assert sheet.rows[0].plus_y < sheet.rows[0].minus_y


def test_a_dark_bulb_is_drawn_the_other_way_round():
    pen, sheet = drawn(arrangement(run(half=True)))
    anode, cathode = pen.ends("bulb 1.2")
    assert (anode[1], cathode[1]) == pytest.approx((sheet.rows[0].minus_y, sheet.rows[0].plus_y))


@pytest.mark.parametrize("feed", FEEDS)
@pytest.mark.parametrize("cut", ["F1", "R1"])
def test_every_anode_hangs_on_fuse_and_resistor_in_plus(feed, cut):
    pen, _ = drawn(arrangement(run(feed)))
    bulbs = [name for name in pen.symbols if name.startswith("bulb")]
    terminal = rounded((layout.PLUS_TERMINAL, layout.SUPPLY_TO))
    whole = circuit(pen, without=tuple(bulbs))
    parted = circuit(pen, without=(*bulbs, cut))
    for name in bulbs:
        anode = rounded(pen.ends(name)[0])
        assert nx.has_path(whole, terminal, anode)
        assert not nx.has_path(parted, terminal, anode)


@pytest.mark.parametrize("feed", FEEDS)
def test_every_cathode_goes_to_the_supplys_minus_without_the_fuse(feed):
    pen, _ = drawn(arrangement(run(feed), run("one end")))
    bulbs = [name for name in pen.symbols if name.startswith("bulb")]
    graph = circuit(pen, without=(*bulbs, "F1", "R1", "R2"))
    minus = rounded((layout.MINUS_TRUNK, layout.SUPPLY_TO))
    assert all(nx.has_path(graph, minus, rounded(pen.ends(name)[1])) for name in bulbs)


@pytest.mark.parametrize("runs", [1, 2, 8])
def test_plus_and_minus_never_touch(runs):
    build = arrangement(*[run(FEEDS[i % 4]) for i in range(runs)])
    pen, _ = drawn(build)
    bulbs = [name for name in pen.symbols if name.startswith("bulb")]
    graph = circuit(pen, without=tuple(bulbs))
    plus = rounded((layout.PLUS_TERMINAL, layout.SUPPLY_TO))
    minus = rounded((layout.MINUS_TRUNK, layout.SUPPLY_TO))
    assert not nx.has_path(graph, plus, minus)


# Which drawn bulbs of 24 keep each conductor when the dotted stretches between them are
# cut: DESIGN.md section 3, what each feed joins to what.
REACHED = {
    "one end": ({1, 2}, {1, 2}),
    "middle": ({12}, {12}),
    "both ends": ({1, 2, 23, 24}, {1, 2, 23, 24}),
    "opposite ends": ({1, 2}, {23, 24}),
}


@pytest.mark.parametrize("feed", FEEDS)
def test_each_feed_enters_where_it_is_really_wired(feed):
    pen, sheet = drawn(arrangement(run(feed)))
    row = sheet.rows[0]
    bulbs = [f"bulb 1.{column.bulb}" for column in row.columns]
    graph = circuit(pen, without=tuple(bulbs), drawn_only=True)
    reached = tuple(
        {
            column.bulb
            for column in row.columns
            if nx.has_path(graph, rounded(joint), rounded(pen.ends(f"bulb 1.{column.bulb}")[side]))
        }
        for side, joint in enumerate(((layout.JOINT, row.plus_y), (layout.JOINT, row.minus_y)))
    )
    assert reached == REACHED[feed]


def test_a_run_without_resistor_and_feeder_is_still_joined():
    pen, _ = drawn(arrangement(run(resistor=False, feeder=False), lead=False))
    assert "R1" not in pen.symbols
    graph = circuit(pen, without=tuple(name for name in pen.symbols if name.startswith("bulb")))
    terminal = rounded((layout.PLUS_TERMINAL, layout.SUPPLY_TO))
    assert nx.has_path(graph, terminal, rounded(pen.ends("bulb 1.24")[0]))


def test_every_test_point_has_its_solved_volts_beside_it():
    build = arrangement(run("middle"), run("opposite ends"))
    solution = solve(build)
    points = points_of(build)
    words = texts(draw_schematics(build, solution, points)[0].svg)
    for point in points:
        volts = f"{point_v(point, build, solution):.2f} V"
        side_by_side = f"{point.label} {volts}" in words
        stacked = (point.label, volts) in set(pairwise(words))
        assert side_by_side or stacked, point


@pytest.mark.parametrize("feed", FEEDS)
def test_a_point_at_a_bulb_is_drawn_on_the_side_where_its_place_is_told(feed):
    """The words of `places.place`: in front of bulb 1 where the lead-in feeds nothing, else right behind."""
    _, sheet = drawn(arrangement(run(feed)))
    columns = sheet.rows[0].columns
    ends = (layout.BULBS_FROM - layout.TAG_WIDTH, layout.EXTRA_END)
    stands = (ends[0], *(column.x for column in columns), ends[1])
    for place, column in enumerate(columns, start=1):
        if column.point is not None:
            first = feed == "middle" and column.bulb == 1
            low, high = (stands[place - 1], column.x) if first else (column.x, stands[place + 1])
            assert low < column.tag_x - layout.TAG_WIDTH / 2, column
            assert column.tag_x + layout.TAG_WIDTH / 2 < high, column


def test_a_point_behind_the_resistor_reads_what_the_resistor_leaves():
    """Kirchhoff's voltage law, no shared lead: what the resistor takes and leaves adds up to the supply."""
    build = arrangement(run(), lead=False)
    solution = solve(build)
    volts = {point.kind: point_v(point, build, solution) for point in points_of(build) if point.bulb is None}
    assert volts["resistor volts"] + volts["after resistor"] == pytest.approx(volts["supply"], abs=1e-9)


@pytest.mark.parametrize(
    ("runs", "expected"), [(1, [1]), (8, [8]), (9, [4, 5]), (12, [6, 6]), (17, [5, 6, 6])]
)
def test_more_than_eight_runs_go_on_in_another_figure(runs, expected):
    build = arrangement(*[run(bulbs=3) for _ in range(runs)])
    assert [len(sheet.rows) for sheet in layout.lay_out(build, points_of(build))] == expected


def test_eight_runs_fit_on_a_page():
    """A4 less 15 mm of margin above and below is 267 mm; 10 mm of them for the caption."""
    build = arrangement(*[run(bulbs=3) for _ in range(8)])
    picture = draw_schematics(build, solve(build), points_of(build))[0]
    assert picture.height / 96 * 25.4 <= 257 / 170 * 180  # scaled down to 170 mm at the very most


@pytest.mark.parametrize("bulbs", [1, 2, 3, 4, 5, 6, 7, 24, 240, 1234, 10000])
def test_at_most_five_bulbs_are_drawn_with_those_that_are_fed_or_measured(bulbs):
    plan = run("middle", bulbs=bulbs)
    shown = layout.drawn_bulbs(plan, {1, -(-bulbs // 2), bulbs})
    assert len(shown) <= 5
    assert {1, plan.fed_bulb, bulbs} <= set(shown) <= set(range(1, bulbs + 1))


def test_names_keep_their_signs():
    build = arrangement(run(name=AWKWARD))
    words = texts(draw_schematics(build, solve(build), points_of(build))[0].svg)
    assert any(AWKWARD in line for line in words)


def test_markup_in_a_name_stays_text():
    build = arrangement(run(name="<script>alert(1)</script>"))
    svg = draw_schematics(build, solve(build), points_of(build))[0].svg
    assert not list(ET.fromstring(svg).iter("script")) + list(ET.fromstring(svg).iter(f"{SVG}script"))


def test_a_picture_has_title_description_and_no_foreign_ids():
    build = arrangement(run())
    picture = draw_schematics(build, solve(build), points_of(build))[0]
    root = ET.fromstring(picture.svg)
    assert root.findtext(f"{SVG}title") == picture.caption
    assert root.findtext(f"{SVG}desc") == picture.alt
    assert {element.get("id") for element in root.iter() if element.get("id")} == {
        "schematic-1-title",
        "schematic-1-desc",
    }


def test_the_words_tell_where_each_conductor_of_opposite_ends_goes():
    build = arrangement(run("opposite ends"))
    alt = draw_schematics(build, solve(build), points_of(build))[0].alt
    assert "− leaves from bulb 24 through the extra wire X1" in alt


def test_drawing_leaves_the_librarys_settings_alone():
    import schemdraw

    before = schemdraw.svgconfig.text, dict(schemdraw.schemdraw.schemdrawstyle)
    build = arrangement(run())
    draw_schematics(build, solve(build), points_of(build))
    assert (schemdraw.svgconfig.text, dict(schemdraw.schemdraw.schemdrawstyle)) == before


def test_only_the_pen_loads_the_library():
    folder = Path(layout.__file__).parent
    users = [
        path.name for path in sorted(folder.glob("*.py")) if "import schemdraw" in path.read_text("utf-8")
    ]
    assert users == ["pen.py"]


def test_the_strings_own_cable_is_named_as_in_the_wire_table():
    build = arrangement(run("middle"), run("one end"))
    words = " ".join(texts(draw_schematics(build, solve(build), points_of(build))[0].svg))
    assert "S1, 24 bulbs" in words
    assert "S2, 24 bulbs" in words


@pytest.mark.parametrize(("rating_a", "words"), [(0.063, "F1 63 mA"), (1.25, "F1 1.25 A")])
def test_the_fuse_is_named_as_on_its_cap(rating_a, words):
    build = arrangement(run())
    build = replace(build, fuse=replace(build.fuse, rating_a=rating_a))
    assert words in texts(draw_schematics(build, solve(build), points_of(build))[0].svg)
