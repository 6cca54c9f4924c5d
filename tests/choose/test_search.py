"""The search: what it passes over is beaten for certain; what it solves is what the rest of the tool says."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from guidegen.choose.bounds import most_evenness
from guidegen.choose.circuits import chains_of, driven
from guidegen.choose.costs import cost_of, costs_of
from guidegen.choose.curves import ROOM, SHARES, make_bounds
from guidegen.choose.front import beaten, unbeaten
from guidegen.choose.judging import judge_trials, least_ratings_w
from guidegen.choose.limits import excesses
from guidegen.choose.pool import Field
from guidegen.choose.proposing import Candidate, runs_of
from guidegen.choose.reckon import reckon
from guidegen.choose.resistors import fit_resistors
from guidegen.choose.search import money_of, search
from guidegen.choose.workout import WorkedOut, work_out
from guidegen.project.schema import Project
from tests.choose.making import field_of, project_with, thirty

SMALL_SIZES = (0.25, 0.75)


@st.composite
def small_projects(draw: st.DrawFn) -> Project:
    """Up to 20 bulbs of every kind: sizes, wires, LEDs, supplies and limits as they may come."""
    in_series = draw(st.sampled_from([1, 1, 1, 3]))
    own_ohm = draw(st.sampled_from([0.0, 150.0])) if in_series == 3 else 0.0
    volts = draw(st.sampled_from([4.75, 5.06, 5.5])) if in_series == 1 else 12.0
    string = {
        "bought": draw(st.integers(1, 3)),
        "bulbs": draw(st.integers(2, 6)),
        "leds_per_bulb": in_series * draw(st.integers(1, 4)),
        "leds_in_series": in_series,
        "group_resistor": own_ohm,
        "spacing": draw(st.sampled_from([0.1, 0.3])),
        "tail": draw(st.sampled_from([0.1, 1.0])),
        "wire": {"per_length": draw(st.sampled_from([0.05, 0.4, 2.0]))},
        "led": {
            "voltage": 2.8,
            "current": 3e-3,
            "slope": draw(st.sampled_from([0.06, 0.13])),
            "resistance": draw(st.sampled_from([0.0, 10.0])),
        },
        "max_led_current": draw(st.sampled_from([3.2e-3, 5e-3, 20e-3])),
        "lit_on_dc": draw(st.sampled_from(["all", "all", "half"])),
    }
    supply = {
        "voltage": volts,
        "rated_current": draw(st.sampled_from([0.1, 2.0])),
        "output_resistance": draw(st.sampled_from([0.0, 0.5])),
        "case": "sealed",
        "insulation": "double",
    }
    goals = {"evenness": draw(st.sampled_from([0.3, 0.6, 0.9])), "led_current": 3e-3}
    at = draw(st.sampled_from(["start", "middle", 0.7]))
    return project_with({"strings.drop": string, "supply": supply, "goals": goals, "place.supply_at": at})


@settings(max_examples=120)
@given(small_projects(), st.sampled_from([1.0, 0.5]))
def test_passing_over_candidates_finds_what_solving_all_of_them_finds(project: Project, dim: float) -> None:
    field, _leds = field_of(project, SMALL_SIZES, dim)
    bounds = make_bounds(field)
    quick, slow = search(field, bounds), search(field, bounds, exhaustive=True)
    assert slow.solved == len(slow.trials)
    assert quick.numbers.tolist() == slow.numbers.tolist()
    assert quick.values.tolist() == slow.values.tolist()


def test_candidates_are_passed_over_at_all() -> None:
    field, _leds = field_of(project_with({"strings.drop.bought": 4}))
    found = search(field, make_bounds(field))
    assert found.solved < 0.9 * len(found.trials)


@settings(max_examples=40)
@given(small_projects())
def test_no_candidate_is_more_even_than_its_bound(project: Project) -> None:
    field, _leds = field_of(project, SMALL_SIZES)
    bounds = make_bounds(field)
    trials = field.all_trials()
    judged = judge_trials(field, trials, bounds.at_aim)
    assert (judged.evenness <= most_evenness(field, trials, bounds) + 1e-7).all()


@settings(max_examples=40)
@given(small_projects(), st.sampled_from([1.0, 0.5]))
def test_what_is_reckoned_of_a_candidate_is_what_solving_it_finds(project: Project, dim: float) -> None:
    field, _leds = field_of(project, SMALL_SIZES, dim)
    bounds, trials = make_bounds(field), field.all_trials()
    found = reckon(field, chains_of(field, trials), bounds)
    judged = judge_trials(field, trials, bounds.at_aim)
    sure = found.sure[judged.chains.trial]
    assert found.ohm[sure].tolist() == judged.ohm[sure].tolist()
    # A tenth of the room that is left for it.
    nominal_a = fit_resistors(field, judged.chains, bounds.at_aim).nominal.chain_a
    assert found.current_a[sure] == pytest.approx(nominal_a[sure], rel=ROOM / 10)
    least_w = least_ratings_w(field, found.chains, found.ohm, found.current_a * (1 - ROOM))
    assert (least_w[sure] <= judged.rating_w[sure]).all()


def test_most_candidates_can_be_reckoned() -> None:
    field, _leds = field_of(thirty())
    found = reckon(field, chains_of(field, field.all_trials()), make_bounds(field))
    assert found.sure.mean() > 0.9


def test_a_smaller_current_makes_every_run_more_even_and_every_bulb_dimmer() -> None:
    field, _leds = field_of(thirty())
    runs = [driven(field, share) for share in SHARES]
    for more, less in pairwise(runs):
        assert (less.dim / less.bright >= more.dim / more.bright - 1e-9).all()
        assert (less.dim <= more.dim).all()
        assert (less.bright <= more.bright).all()


def candidate_of(field: Field, number: int) -> tuple[Candidate, dict[str, float]]:
    """One candidate by its number, and what the search says of it."""
    trials = field.all_trials().some(np.array([number]))
    judged = judge_trials(field, trials, make_bounds(field).at_aim, every_corner=True)
    candidate = Candidate(
        int(trials.layout[0]), int(trials.feeder[0]), int(trials.extra[0]), tuple(map(float, judged.ohm))
    )
    said = {
        "evenness": float(judged.evenness[0]),
        "load": float(judged.load[0]),
        "fuse": float(judged.fuse_a[0]),
        "light_low": float(judged.light_low[0]),
        "money": float(money_of(field, costs_of(field, trials), judged)[0]),
        **{name: float(getattr(judged.excess, name)[0]) for name in ("led", "resistor", "supply", "wire")},
    }
    return candidate, said


NUMBERS = (0, 3, 17, 40, 101, 160)


def worked_candidate(project: Project, number: int) -> tuple[Candidate, dict[str, float], WorkedOut]:
    field, leds = field_of(project)
    candidate, said = candidate_of(field, number)
    return candidate, said, work_out(project.model_copy(update={"runs": runs_of(field, candidate)}), leds)


@pytest.mark.parametrize("number", NUMBERS)
@pytest.mark.parametrize("lead", [None, {"length": 1.0, "wire": {"area": 0.5e-6}}])
def test_the_search_chooses_the_resistors_that_the_rule_for_left_out_ones_chooses(
    number: int, lead: dict[str, object] | None
) -> None:
    candidate, _said, worked = worked_candidate(project_with({"supply.lead": lead}), number)
    assert candidate.ohms == tuple(run.resistor.ohm for run in worked.arrangement.runs)


@pytest.mark.parametrize("number", NUMBERS)
def test_the_search_says_what_the_worst_cases_and_the_protection_say(number: int) -> None:
    project = project_with({"supply.lead": {"length": 1.0, "wire": {"area": 0.5e-6}}})
    _candidate, said, worked = worked_candidate(project, number)
    exact = excesses(project, worked)
    lows = [run.last_light_low for run in worked.margins.runs]
    expected = {
        "evenness": worked.solution.evenness,
        "load": worked.solution.load,
        "fuse": worked.arrangement.fuse.rating_a,
        "light_low": min(lows),
        "money": cost_of(project, worked.arrangement).money,
        **{name: exact[name] for name in ("led", "resistor", "supply", "wire")},
    }
    # The search stops at a mismatch of 1e-8 of a run's current.
    assert said == pytest.approx(expected, rel=1e-5, abs=1e-6)


@pytest.mark.parametrize("number", NUMBERS)
def test_joints_cuts_and_wire_are_those_of_the_arrangement(number: int) -> None:
    project = project_with()
    field, _leds = field_of(project)
    _candidate, _said, worked = worked_candidate(project, number)
    costs = costs_of(field, field.all_trials())
    exact = cost_of(project, worked.arrangement)
    assert (costs.joints[number], costs.cuts[number]) == (exact.joints, exact.cuts)
    assert costs.extra_wire_m[number] == pytest.approx(exact.extra_wire_m)
    assert costs.core_m[number] == pytest.approx(exact.core_m)


def test_a_fuse_in_the_file_is_the_fuse_of_every_candidate() -> None:
    field, _leds = field_of(project_with({"fuse": "1.6 A"}))
    judged = judge_trials(field, field.all_trials(), make_bounds(field).at_aim)
    assert set(judged.fuse_a) == {1.6}


def test_one_beats_another_if_it_is_as_good_in_everything_and_better_in_something() -> None:
    values = np.array([[1, 5], [2, 4], [2, 5], [1, 5]])
    numbers = np.arange(4)
    # The third is beaten by both of the first; the last is like the first and comes later (by hand).
    assert unbeaten(values, numbers).tolist() == [0, 1]
    assert beaten(values, numbers, values[:1], numbers[:1]).tolist() == [False, False, True, True]


def test_the_same_search_finds_the_same() -> None:
    found = [search(field, make_bounds(field)) for field in (field_of(thirty())[0], field_of(thirty())[0])]
    assert found[0].numbers.tolist() == found[1].numbers.tolist()
    assert replace(found[0].trials).layout.tolist() == found[1].trials.layout.tolist()
