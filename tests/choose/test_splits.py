"""How bulbs are split; expected splits by hand."""

import pytest

from guidegen.choose.splits import splits
from guidegen.project.schema import LightString


def string(bulbs: int, between_bulbs: str = "parallel") -> LightString:
    return LightString.model_validate(
        {
            "bulbs": bulbs,
            "spacing": "10 cm",
            "wire": {"per_length": "0.4 ohm/m"},
            "between_bulbs": between_bulbs,
        }
    )


def test_one_string_is_split_as_evenly_as_can_be() -> None:
    assert splits(string(10), 10, most_runs=4) == ((10,), (5, 5), (4, 3, 3), (3, 3, 2, 2))


def test_several_strings_are_also_split_at_their_ends() -> None:
    found = splits(string(12), 48)
    assert {(48,), (24, 24), (36, 12), (24, 12, 12), (12, 12, 12, 12)} <= set(found)


@pytest.mark.parametrize("bulbs", [1, 7, 12, 48, 100])
def test_every_split_uses_all_bulbs_in_at_most_eight_runs_of_two_sizes(bulbs: int) -> None:
    for sizes in splits(string(12), bulbs):
        assert sum(sizes) == bulbs
        assert 1 <= len(sizes) <= 8
        assert len(set(sizes)) <= 2
        assert list(sizes) == sorted(sizes, reverse=True)


def test_no_split_comes_twice() -> None:
    found = splits(string(12), 48)
    assert len(found) == len(set(found))


@pytest.mark.parametrize("between", ["series", "chip", "unknown"])
def test_a_string_that_may_not_be_cut_gives_one_run_a_string(between: str) -> None:
    assert splits(string(12, between), 36) == ((12, 12, 12),)


def test_part_of_a_string_that_may_not_be_cut_cannot_be_used() -> None:
    assert splits(string(12, "series"), 30) == ()
