"""Data of the small charts."""

from __future__ import annotations

import pytest

from guidegen.choose.choose import choose
from guidegen.choose.light import light_charts
from guidegen.study import fit_leds
from tests.choose.making import project_with


def test_every_arrangement_has_its_bulbs_in_order_along_the_line() -> None:
    project = project_with()
    for chart in light_charts(choose(project, fit_leds(project)).proposals):
        numbers = [int(number) for run in chart.runs for number in run.bulb]
        assert numbers == list(range(1, 13))
        assert chart.bulbs == 12


def test_light_is_on_a_common_scale_and_its_least_is_the_evenness() -> None:
    project = project_with()
    proposals = choose(project, fit_leds(project)).proposals
    for proposal, chart in zip(proposals, light_charts(proposals), strict=True):
        every = [float(light) for run in chart.runs for light in run.light]
        assert max(every) == 1
        assert min(every) == pytest.approx(proposal.evenness)


def test_dark_bulbs_of_a_two_way_string_are_left_out() -> None:
    project = project_with({"strings.drop.lit_on_dc": "half"})
    chart = light_charts(choose(project, fit_leds(project)).proposals)[0]
    # Bulbs 1, 3, 5 of each string of six (by hand).
    assert [int(number) for run in chart.runs for number in run.bulb] == [1, 3, 5, 7, 9, 11]
