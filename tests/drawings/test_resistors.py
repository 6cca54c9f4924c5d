"""Resistors as drawn: bands and names are those of the marking, and can be told without colour."""

from __future__ import annotations

import re
import xml.etree.ElementTree as ET

import pytest
from hypothesis import given
from hypothesis import strategies as st

from guidegen.calc.marking import value_of_bands
from guidegen.calc.preferred import between
from guidegen.drawings.resistors import FILLS, draw_bodies
from guidegen.guide.resistors import bodies, marking
from guidegen.tables.resistors import DIGIT_COLOURS, MULTIPLIER_POWER, TOLERANCE_COLOURS

SVG = "{http://www.w3.org/2000/svg}"


def drawn(ohm: float, ratio: float, rating_w: float | None, which: int = 0) -> ET.Element:
    """The picture of one of the bodies."""
    return ET.fromstring(draw_bodies([(bodies(ohm, ratio, rating_w)[which],)])[0].svg)


def band_fills(picture: ET.Element) -> list[str]:
    """Fills of the bands from left to right."""
    bands = [
        each for each in picture.iter(f"{SVG}rect") if each.get("fill") in FILLS.values() and each.get("x")
    ]
    return [each.get("fill", "") for each in sorted(bands, key=lambda each: float(each.get("x", "0")))]


def words(picture: ET.Element) -> list[str]:
    """Texts from left to right."""
    texts = sorted(picture.iter(f"{SVG}text"), key=lambda each: float(each.get("x", "0")))
    return [each.text or "" for each in texts]


@given(st.sampled_from(between("E24", 1.0, 1e6)), st.sampled_from([0.05, 0.10]), st.sampled_from([0, 1]))
def test_the_bands_drawn_mean_the_resistor(ohm: float, ratio: float, which: int) -> None:
    colour_of = {fill: colour for colour, fill in FILLS.items()}
    colours = [colour_of[fill] for fill in band_fills(drawn(ohm, ratio, 0.5, which))]
    assert len(colours) == 4 + which
    # Read back by the table of IEC 60062, as in the tests of `calc.marking`.
    assert value_of_bands(colours) == (pytest.approx(ohm), ratio)


@pytest.mark.parametrize("which", [0, 1])
def test_every_band_is_named_in_words(which: int) -> None:
    # 4.7 kohm 5 %: yellow-violet-red-gold (IEC 60062), with three digits yellow-violet-black-brown-gold.
    names = [["yellow", "violet", "red", "gold"], ["yellow", "violet", "black", "brown", "gold"]]
    assert words(drawn(4700, 0.05, 0.5, which)) == names[which]


def test_a_large_one_is_a_block_with_its_print() -> None:
    # 10 ohm, 5 %, 5 W: 5W10RJ (letters of IEC 60062, from memory).
    picture = drawn(10, 0.05, 5.0)
    assert words(picture) == ["5W10RJ"]
    assert band_fills(picture) == []


def test_every_colour_of_the_marking_has_a_fill_of_its_own() -> None:
    assert set(FILLS) == {*DIGIT_COLOURS, *MULTIPLIER_POWER, *TOLERANCE_COLOURS}
    assert len(set(FILLS.values())) == len(FILLS)


def test_the_words_of_a_picture_are_those_of_the_marking() -> None:
    picture = draw_bodies([bodies(22, 0.05, 2.0)])[0]
    for colours in marking(22, 0.05, 2.0).split(" or "):
        assert colours in picture.alt
    assert re.fullmatch(r"[a-z0-9-]+", picture.id)


def test_a_resistor_without_marks_has_no_body() -> None:
    # 3 % has no colour and no letter in the table.
    assert bodies(10, 0.03, 0.5) == ()
    assert bodies(10, 0.03, 5.0) == ()
