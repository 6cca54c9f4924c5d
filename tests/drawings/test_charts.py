"""The charts say what was solved."""

from __future__ import annotations

import xml.etree.ElementTree as ET

import numpy as np
import pytest

from guidegen.circuit.solve import solve
from guidegen.drawings.charts import draw_charts, feed_position_m, light_alt, light_top
from guidegen.drawings.panel import even_scale
from guidegen.drawings.panels import numbered_bulbs
from guidegen.locale import speaking_language
from tests.drawings.builds import AWKWARD, FEEDS, arrangement, run

SVG = "{http://www.w3.org/2000/svg}"


def charts(build, goal=0.5, band=None):
    return {picture.id: picture for picture in draw_charts(build, solve(build), goal, band)}


def texts(svg):
    return ["".join(element.itertext()) for element in ET.fromstring(svg).iter(f"{SVG}text")]


def test_there_is_one_chart_of_light_and_one_of_volts():
    assert list(charts(arrangement(run()))) == ["light", "volts"]


def test_every_run_is_named_on_its_panel():
    build = arrangement(*[run(feed, name=f"{AWKWARD[:38]}{n}") for n, feed in enumerate(FEEDS)])
    for picture in charts(build).values():
        words = texts(picture.svg)
        assert all(f"Run {n + 1}, {AWKWARD[:38]}{n}" in words for n in range(4))


def test_the_words_name_brightest_dimmest_and_evenness():
    """Fed at one end, the light falls from the first bulb to the last."""
    build = arrangement(run("one end"))
    solution = solve(build)
    words = light_alt(build, solution, 0.5)
    assert words.startswith("Brightest: bulb 1 of run 1. Dimmest: bulb 24 of run 1")
    assert f"Evenness {solution.runs[0].light[-1]:.2f}" in words


@pytest.mark.parametrize(("goal", "verdict"), [(0.01, "meets"), (0.999, "misses")])
def test_the_words_say_whether_the_goal_is_met(goal, verdict):
    build = arrangement(run("one end"))
    assert f"which {verdict} the goal" in light_alt(build, solve(build), goal)


def test_no_goal_no_goal_line():
    assert not any("goal" in line for line in texts(charts(arrangement(run()), goal=None)["light"].svg))


def test_a_dark_bulb_is_never_the_dimmest():
    words = charts(arrangement(run(half=True)))["light"].alt
    assert "Dimmest: bulb 23" in words  # bulbs 2, 4, ..., 24 are dark


def test_dark_bulbs_are_explained_only_where_there_are_some():
    assert "dark on DC" in texts(charts(arrangement(run(half=True)))["light"].svg)
    assert "dark on DC" not in texts(charts(arrangement(run()))["light"].svg)


def test_a_band_is_explained():
    build = arrangement(run())
    light = solve(build).runs[0].light
    assert "likely range" in texts(charts(build, band=[(light * 0.9, light)])["light"].svg)


@pytest.mark.parametrize(("factor", "top"), [(1.27, 1.3), (1.0, 1.08), (0.9, 1.08), (1.3, 1.3)])
def test_the_scale_of_light_ends_over_the_whole_band(factor, top):
    """By hand: 1.27 rounded up to tenths; the brightest bulb is 1 and keeps its air."""
    solution = solve(arrangement(run()))
    band = [(run.light * 0.9, run.light * factor) for run in solution.runs]
    assert light_top(solution, band) == pytest.approx(top)


def test_without_a_band_the_scale_of_light_ends_over_the_brightest_bulb():
    assert light_top(solve(arrangement(run())), None) == pytest.approx(1.08)


@pytest.mark.parametrize(
    ("feed", "position_m"), [("one end", 0.0), ("middle", 3.0), ("both ends", 0.0), ("opposite ends", 0.0)]
)
def test_the_feed_is_marked_where_plus_enters(feed, position_m):
    """24 bulbs 25 cm apart: bulb 12 hangs at 3 m."""
    assert feed_position_m(run(feed)) == pytest.approx(position_m)


@pytest.mark.parametrize(
    ("low", "high", "words"),
    [
        (2.736, 3.091, ("2.8", "2.9", "3.0")),
        (0.0, 12.0, ("0", "5", "10")),
        (2.81, 2.905, ("2.825", "2.850", "2.875", "2.900")),
        (23.02, 23.98, ("23.25", "23.50", "23.75")),
        (2.99, 3.01, ("2.990", "2.995", "3.000", "3.005", "3.010")),
    ],
)
def test_a_scale_names_a_few_round_values_with_as_many_decimals_as_they_need(low, high, words):
    """By hand: at most four steps, each 1, 2, 2.5 or 5 times a power of ten."""
    assert even_scale(low, high).words == words


def test_a_scale_is_written_in_the_language_in_force():
    with speaking_language("de"):
        assert even_scale(2.736, 3.091).words == ("2,8", "2,9", "3,0")


@pytest.mark.parametrize("bulbs", [1, 2, 5, 24, 100, 1000, 10000])
@pytest.mark.parametrize("width", [216.0, 464.0])
def test_bulb_numbers_stand_apart(bulbs, width):
    position = 0.1 * np.arange(1, bulbs + 1)
    chosen = numbered_bulbs(position, float(position[-1]), width)
    assert chosen[0] == 1
    assert chosen[-1] == bulbs
    places = position[np.array(chosen) - 1] / position[-1] * width
    assert (np.diff(places) >= 4.6 * len(str(bulbs)) + 7.9).all()


def test_inside_a_page_nothing_of_a_chart_reaches_the_rest():
    for picture in charts(arrangement(run())).values():
        root = ET.fromstring(picture.svg)
        assert not list(root.iter(f"{SVG}style"))
        ids = {element.get("id") for element in root.iter() if element.get("id")}
        named = {f"{picture.id}-title", f"{picture.id}-desc"}
        assert all(f"#{one}" in picture.svg for one in ids - named)


def test_a_persons_own_settings_do_not_show_and_stay():
    import matplotlib as mpl

    plain = charts(arrangement(run()))["light"].svg
    with mpl.rc_context({"axes.facecolor": "red", "font.size": 30, "lines.linewidth": 9}):
        assert charts(arrangement(run()))["light"].svg == plain
        assert mpl.rcParams["font.size"] == 30


def test_letters_the_font_lacks_raise_no_alarm(recwarn):
    charts(arrangement(run(name="灯 шкаф")))
    assert not [warning for warning in recwarn if "Glyph" in str(warning.message)]
