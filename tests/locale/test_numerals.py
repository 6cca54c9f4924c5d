"""Numbers in another language; the German forms as in DIN 5008, from memory."""

from __future__ import annotations

import subprocess
import sys

import pytest

from guidegen.guide.format import quantity, span, tolerance
from guidegen.guide.worked import plain
from guidegen.locale import speaking_language
from guidegen.locale.numerals import fixed, general, money, number, numeral, percent
from guidegen.report.amounts import amount
from guidegen.safety.amounts import shown
from tests.locale.catalogue import ROOT


@pytest.mark.parametrize(
    ("write", "english", "german"),
    [
        (lambda: fixed(0.456, 2), "0.46", "0,46"),
        (lambda: fixed(-1.5, 1), "−1.5", "−1,5"),
        (lambda: general(0.1234), "0.123", "0,123"),
        (lambda: number(12345.0), "12345", "12345"),
        (lambda: numeral("2.80"), "2.80", "2,80"),
        (lambda: percent(0.456), "46\u00a0%", "46\u00a0%"),
        (lambda: tolerance(0.025), "±2.5\u00a0%", "±2,5\u00a0%"),
        (lambda: quantity(0.0123, "A"), "12.3\u00a0mA", "12,3\u00a0mA"),
        (lambda: money(1234.5, "EUR"), "1234.50\u00a0EUR", "1234,50\u00a0€"),
        (lambda: money(0.034, "EUR"), "0.034\u00a0EUR", "0,034\u00a0€"),
        (lambda: plain(1.234e-9), "1.234\u00a0×\u00a010⁻⁹", "1,234\u00a0×\u00a010⁻⁹"),
        (lambda: amount(0.0123, "A"), "12.3 mA", "12,3 mA"),
        (lambda: shown({"low_ratio": 0.4})["low_ratio"], "0.40", "0,40"),
        (lambda: shown({"lead_v": 5.1})["lead_v"], "5.1 V", "5,1 V"),
    ],
)
def test_a_number_is_written_as_in_the_language(write, english, german):
    with speaking_language("en"):
        assert write() == english
    with speaking_language("de"):
        assert write() == german


def test_a_range_has_the_decimal_sign_at_both_ends():
    with speaking_language("de"):
        assert span(2.951, 3.178, "V").count(",") == 2


def test_english_needs_no_library_of_languages():
    """The units' own library would load it if it were there; None is for Python one that is not."""
    work = (
        "import sys\nsys.modules['babel'] = None\nfrom guidegen.cli import main\n"
        "main(['check', 'sample_project/potting-bench.yaml'])"
    )
    subprocess.run([sys.executable, "-c", work], cwd=ROOT, check=True, capture_output=True)
