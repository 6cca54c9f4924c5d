"""Numbers for a terminal are those that the guide prints."""

from __future__ import annotations

import pytest

from guidegen.guide.format import span
from guidegen.report.amounts import span_ends


@pytest.mark.parametrize(
    ("low", "high", "unit", "expected"),
    [
        (4.7162, 5.2838, "V", ("4.71 V", "5.29 V")),  # by hand: low down, high up
        (2.6352, 2.9951, "V", ("2.63 V", "3.00 V")),
        (0.3146, 0.6763, "A", ("314 mA", "677 mA")),
        (2.5, 3.0, "V", ("2.50 V", "3.00 V")),
        (0.0, 0.0, "V", ("0 V", "0 V")),
    ],
)
def test_a_range_is_rounded_outwards(low: float, high: float, unit: str, expected: tuple[str, str]) -> None:
    assert span_ends(low, high, unit) == expected


@pytest.mark.parametrize("ends", [(4.7162, 5.2838), (11.34, 12.66), (0.151, 0.2449), (2.6352, 2.9951)])
def test_the_terminal_and_the_guide_print_the_same_range(ends: tuple[float, float]) -> None:
    lower, upper = span_ends(*ends, "V")
    assert f"{lower.removesuffix(' V')} to {upper}" == span(*ends, "V").replace("\u00a0", " ")
