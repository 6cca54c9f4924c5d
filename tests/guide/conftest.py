"""Guides made once for many tests."""

from __future__ import annotations

import pytest

from tests.guide.projects import FEEDER, FEEDS, Made, changed, fed, make, sample


@pytest.fixture(scope="session")
def bench() -> Made:
    return sample()


@pytest.fixture(scope="session")
def plain() -> Made:
    return make(changed())


@pytest.fixture(scope="session")
def by_feed() -> dict[str, Made]:
    return {feed: make(changed(runs=[fed(feed)])) for feed in FEEDS}


@pytest.fixture(scope="session")
def cut_and_joined() -> Made:
    """Two strings of 12: the first run takes 18 bulbs, the second 6 from where that was cut."""
    return make(changed(runs=[fed("one end", 18), {**fed("middle", 6), "name": "window"}]))


@pytest.fixture(scope="session")
def outdoors() -> Made:
    return make(changed(place__exposure="open outdoors"))


@pytest.fixture(scope="session")
def without_resistor() -> Made:
    """A 12 V string with a resistor in each group of three LEDs, and none for the run."""
    project = changed(
        supply__voltage="12 V",
        runs=[{"name": "shelf", "bulbs": 12, "resistor": "none"}],
    )
    project["strings"]["drop"].update({"leds_in_series": 3, "group_resistor": "560 ohm"})
    return make(project)


@pytest.fixture(scope="session")
def two_way() -> Made:
    return make(changed(strings__drop__lit_on_dc="half"))


@pytest.fixture(scope="session")
def new_wiring() -> Made:
    return make(changed(place__mains="new fixed wiring"))


@pytest.fixture(scope="session")
def two_kinds() -> Made:
    project = changed(
        runs=[
            fed("one end"),
            {"name": "sill", "string": "star", "bulbs": 8, "resistor": "22 ohm", "feeder": FEEDER},
        ]
    )
    project["runs"][0]["string"] = "drop"
    project["strings"]["star"] = {**project["strings"]["drop"], "bulbs": 8, "led": {"typical": "red"}}
    return make(project)


@pytest.fixture(scope="session")
def all_guides(
    bench: Made,
    plain: Made,
    by_feed: dict[str, Made],
    cut_and_joined: Made,
    outdoors: Made,
    without_resistor: Made,
    two_way: Made,
    new_wiring: Made,
    two_kinds: Made,
) -> tuple[Made, ...]:
    others = (cut_and_joined, outdoors, without_resistor, two_way, new_wiring, two_kinds)
    return (bench, plain, *by_feed.values(), *others)
