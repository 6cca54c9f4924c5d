"""Labels and sizes of pictures."""

from __future__ import annotations

import xml.etree.ElementTree as ET

import pytest

from guidegen.drawings.picture import clean_label, css_px, finish_svg, plain_line, shortened, text_width


def test_a_point_is_a_72nd_of_an_inch_and_a_pixel_a_96th():
    assert css_px(510) == 680  # by hand: 510 / 72 * 96


@pytest.mark.parametrize(
    ("text", "label"),
    [
        ("a & b", "a &amp; b"),
        ("$5$", "&#36;5&#36;"),
        ("two\nlines\ttab", "two lines tab"),
        ("bell\x07", "bell"),
    ],
)
def test_labels_are_made_safe(text, label):
    assert clean_label(text) == label


def test_a_surrogate_and_a_noncharacter_are_left_out():
    assert plain_line("a\ud800b\ufffec") == "abc"


def test_a_line_that_fits_is_left_alone():
    assert shortened("back rail", 8, 200) == "back rail"


def test_a_long_line_is_cut_to_its_room():
    cut = shortened("W" * 60, 8, 100)
    assert cut.endswith("…")
    assert text_width(cut, 8) <= 100


def test_no_room_leaves_only_the_ellipsis():
    assert shortened("back rail", 8, 0) == "…"


def test_wide_letters_count_as_square():
    assert text_width("灯灯", 10) == 20


def test_words_are_escaped_in_title_and_description():
    svg = '<svg xmlns="http://www.w3.org/2000/svg"/>'
    root = ET.fromstring(finish_svg(svg, "x", "<b>", "a & b", (0, 0, 10, 10)))
    assert [child.text for child in root][:2] == ["<b>", "a & b"]
