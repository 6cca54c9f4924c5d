"""Propose arrangements for a project: search, keep the unbeaten ones, put the best first."""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np

from guidegen.choose.choice import Choice, Proposal, Rival
from guidegen.choose.costs import costs_of
from guidegen.choose.curves import Bounds, make_bounds
from guidegen.choose.front import MOST_SHOWN, standing, with_most_even
from guidegen.choose.judging import judge_trials
from guidegen.choose.layouts import Layout, bulbs_to_use, layouts
from guidegen.choose.limits import within
from guidegen.choose.misses import miss_of
from guidegen.choose.pool import Field, Trials, make_field
from guidegen.choose.progress import Progress
from guidegen.choose.proposing import (
    Candidate,
    Leds,
    propose,
    rival_feed,
    runs_of,
    stands,
    with_rival,
)
from guidegen.choose.search import Found, search
from guidegen.choose.siting import sited
from guidegen.choose.workout import WorkedOut
from guidegen.circuit.arrange import arrange
from guidegen.circuit.arrangement import Feed
from guidegen.circuit.cells import led_limits
from guidegen.errors import GuidegenError
from guidegen.hanging.advice import SupplyWire, supply_wires
from guidegen.hanging.make import hanging_plan
from guidegen.hanging.supply import ways_of
from guidegen.locale import _
from guidegen.project.schema import Project, Run
from guidegen.safety.rule import ROUNDING
from guidegen.tables.prices import CHOICE_MM2

#: LED currents tried, over the one aimed at, when nothing keeps the limits: the first that does counts.
DIMMED = (1.0, 0.8, 0.64, 0.5, 0.4, 0.3, 0.2)
#: Bulbs up to which arrangements are looked for, and up to which with every size of wire; sizes beyond, mm2.
MOST_SEARCHED_BULBS, MANY_BULBS, FEW_MM2 = 600, 120, (0.5, 1.5)


@dataclass(frozen=True, eq=False)
class _Searched:
    field: Field
    bounds: Bounds
    found: Found


@dataclass(frozen=True, eq=False)
class Search:
    """What a search found: arrangements made up, and how many it looked at; see `choice_of`.

    `unbeaten` there are that no other beats, those made up among them; the
    last one made up is `lifted` over others, being the most even.
    """

    made: tuple[Proposal, ...]
    unbeaten: int
    lifted: bool
    looked_at: int
    solved: int
    hindered: tuple[str, ...]


def choose(project: Project, leds: Leds, progress: Progress | None = None, most: int = MOST_SHOWN) -> Choice:
    """Arrangements for the project, best first, at most `most`; the maker's own among them if it has runs.

    The most even of all that no other beats is among them, the last place
    being kept for it if it stands farther down; so is the maker's own.
    Without runs all bulbs bought are used, else as many as the runs use.
    Raises GuidegenError when no arrangement can be made up.
    """
    return choice_of(project, leds, look(project, leds, progress, most), most=most)


def look(project: Project, leds: Leds, progress: Progress | None = None, most: int = MOST_SHOWN) -> Search:
    """Make up arrangements for the project, at most `most`; none where none can be."""
    searches = _search(project, leds, progress)
    best, lifted = _best(searches[-1], most) if searches else ([], False)
    return Search(
        made=tuple(_proposals(project, leds, searches[-1], best)) if searches else (),
        unbeaten=max(1, len(searches[-1].found.numbers)) if searches else 0,
        lifted=lifted,
        looked_at=sum(len(each.found.trials) for each in searches),
        solved=sum(each.found.solved for each in searches),
        hindered=_hindered(searches[0]) if searches else (),
    )


def choice_of(
    project: Project, leds: Leds, found: Search, own: WorkedOut | None = None, most: int = MOST_SHOWN
) -> Choice:
    """What a search found, best first, beside the maker's own runs if the project has any.

    `own`: those runs, if they are worked out already.  Raises GuidegenError
    when there is nothing to show.
    """
    made = list(found.made)
    if project.runs:
        mine = propose(project, leds, project.runs, given=True, worked=own)
        made.append(replace(with_rival(project, leds, mine), wires=_wires(project, mine)))
    if not made:
        raise GuidegenError(_no_layout())
    ranked = sorted(made, key=lambda each: stands(project, each))
    reached = ranked[0].meets_goals and within(ranked[0].over)
    shown = _shown(ranked, most)
    return Choice(
        proposals=tuple(shown),
        looked_at=found.looked_at,
        solved=found.solved,
        miss=None
        if reached
        else miss_of(project, leds, ranked[0], found.hindered, lambda changed: _reachable(changed, leds)),
        hung=ways_of(project) is not None,
        unbeaten=found.unbeaten,
        lifted=found.lifted or _moved_up(ranked, shown),
    )


def _wires(project: Project, mine: Proposal) -> tuple[SupplyWire, ...]:
    """What the maker's own runs take of wire by the hanging plan, from every place of the supply."""
    plan = hanging_plan(project, mine.worked.arrangement)
    return () if plan is None else supply_wires(project, mine.worked.arrangement, plan)


def best_of(project: Project, found: Search) -> Proposal:
    """The best arrangement that a search made up.  GuidegenError when there is none."""
    if not found.made:
        raise GuidegenError(_no_layout())
    return min(found.made, key=lambda each: stands(project, each))


def best_runs(project: Project, leds: Leds, progress: Progress | None = None) -> tuple[Run, ...]:
    """The runs of the best arrangement that can be proposed.  GuidegenError when there is none."""
    return best_of(project, look(project, leds, progress)).runs


def _no_layout() -> str:
    return _(
        "No arrangement can be proposed: strings that may not be cut or rewired are used whole or not at "
        "all, and proposals are made for at most {count} bulbs. Write the runs into the file."
    ).format(count=MOST_SEARCHED_BULBS)


def _shown(ranked: list[Proposal], most: int) -> list[Proposal]:
    """The first ones in order; the maker's own and the most even proposal stay, whatever falls off."""
    own = [index for index, each in enumerate(ranked) if each.given]
    others = [index for index, each in enumerate(ranked) if not each.given]
    room = most if len(ranked) <= most else most - len(own)
    kept = with_most_even(others, [each.evenness for each in ranked], room) if others else []
    return [ranked[index] for index in sorted([*own, *kept])]


def _moved_up(ranked: list[Proposal], shown: list[Proposal]) -> bool:
    """Whether proposals are shown that others stand before which are not."""
    proposed = [each for each in shown if not each.given]
    first = [each for each in ranked if not each.given][: len(proposed)]
    return any(one is not other for one, other in zip(proposed, first, strict=True))


def _search(project: Project, leds: Leds, progress: Progress | None) -> list[_Searched]:
    """Searches at the LED current aimed at, and at smaller ones until one finds something within limits."""
    searches: list[_Searched] = []
    for dim in DIMMED:
        field = _field(project, leds, dim)
        if field is None:
            break
        bounds = make_bounds(field)
        searches.append(_Searched(field, bounds, search(field, bounds, progress=progress)))
        if len(searches[-1].found.numbers):
            break
    return searches


def _reachable(project: Project, leds: Leds) -> bool:
    """Whether some arrangement of a changed project meets its goals within every limit.

    With the thickest wire alone, to be quick: what it reaches can be proposed.
    """
    field = _field(project, leds, 1.0, CHOICE_MM2[-1:])
    return field is not None and bool((search(field, make_bounds(field)).values[:, 0] == 0).any())


def _field(
    project: Project, leds: Leds, dim: float, sizes_mm2: tuple[float, ...] | None = None
) -> Field | None:
    """What is searched, with all sizes of wire unless given.

    None where no layout can be made, or where there are too many bulbs.
    """
    bulbs = sum(bulbs_to_use(project).values())
    found_layouts = layouts(project) if bulbs <= MOST_SEARCHED_BULBS else ()
    if not found_layouts:
        return None
    limits = led_limits(project, leds)
    supply = arrange(project.model_copy(update={"runs": None}), leds, limits)
    sizes = sizes_mm2 or (CHOICE_MM2 if bulbs <= MANY_BULBS else FEW_MM2)
    return make_field(project, supply, found_layouts, leds, limits, sizes, dim)


def _hindered(searched: _Searched) -> tuple[str, ...]:
    """Limits that no candidate keeps; where each is kept by some, those that the closest one breaks."""
    found = searched.found
    if len(found.numbers):
        return ()
    alone = tuple(name for name, least in found.excess.items() if least > ROUNDING)
    closest = judge_trials(
        searched.field, found.trials.some(np.array([found.closest])), searched.bounds.at_aim
    )
    broken = (name for name in found.excess if getattr(closest.excess, name)[0] > ROUNDING)
    return alone or tuple(broken)


def _proposals(project: Project, leds: Leds, searched: _Searched, found: list[Candidate]) -> list[Proposal]:
    """These candidates, worked out."""
    field = searched.field
    rivals = _rivals(searched, found)
    made = [
        replace(
            propose(project, leds, runs_of(field, each), each.ohms),
            rival=rival,
            layout=field.layouts[each.layout],
            sited=sited(project, field.layouts, field.layouts[each.layout]),
            sizes_mm2=(field.sizes_mm2[each.feeder], field.sizes_mm2[each.extra]),
        )
        for each, rival in zip(found, rivals, strict=True)
    ]
    return [each for each in made if within(each.over)] or made[:1]


def _best(searched: _Searched, most: int) -> tuple[list[Candidate], bool]:
    """The unbeaten candidates that stand best, with resistors; the closest one where none keeps the limits.

    The most even is among them; also whether it is so only for that.
    """
    numbers = searched.found.numbers
    if len(numbers) == 0:
        numbers = np.array([searched.found.closest])
    field, trials = searched.field, searched.found.trials.some(numbers)
    costs, figures = costs_of(field, trials), [searched.found.figures[int(number)] for number in numbers]

    def key(k: int) -> tuple[float, ...]:
        found = figures[k]
        counted = int(costs.joints[k]), int(costs.cuts[k]), float(costs.extra_wire_m[k])
        share = field.dim * found.led_share
        return (*standing(field.project.goals, found.evenness, share, found.money, *counted).key(), k)

    order = sorted(range(len(trials)), key=key)
    shown = with_most_even(order, [each.evenness for each in figures], most)
    best = [
        Candidate(int(trials.layout[k]), int(trials.feeder[k]), int(trials.extra[k]), figures[k].ohms)
        for k in shown
    ]
    return best, shown != order[:most]


def _rivals(searched: _Searched, found: list[Candidate]) -> list[Rival | None]:
    """What each of these is compared with: the same split, all runs fed in another way."""
    field = searched.field
    by_split = {_split(layout, {part.feed for part in layout}): k for k, layout in enumerate(field.layouts)}
    feeds = [rival_feed(runs_of(field, each)) for each in found]
    places = [
        by_split.get(_split(field.layouts[each.layout], {feed}), -1)
        for each, feed in zip(found, feeds, strict=True)
    ]
    known = [k for k, place in enumerate(places) if place >= 0]
    if not known:
        return [None] * len(found)
    trials = Trials(
        np.array([places[k] for k in known]),
        np.array([found[k].feeder for k in known]),
        np.array([found[k].extra for k in known]),
    )
    evenness = judge_trials(field, trials, searched.bounds.at_aim).evenness
    solved = {k: Rival(feeds[k], float(even)) for k, even in zip(known, evenness, strict=True)}
    return [solved.get(k) for k in range(len(found))]


def _split(layout: Layout, feeds: set[Feed]) -> tuple[object, ...]:
    """What layouts of the same split, feeds and place of the supply have in common."""
    return (*((part.string, part.used, part.bulbs, part.place) for part in layout), frozenset(feeds))
