"""Arrangements compared: what else would do, what each gains and costs, and why this one is built."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from guidegen.choose.choice import Choice, Proposal
from guidegen.choose.costs import Cost
from guidegen.choose.why import rests_on, title_of, why, why_none
from guidegen.guide.blocks import Column, Table
from guidegen.guide.format import NO_BREAK, NOTHING, fixed, listed, number, quantity
from guidegen.guide.matter import Matter
from guidegen.guide.pages import ArrangementsPage, Compared
from guidegen.locale import _, ngettext
from guidegen.locale.numerals import money
from guidegen.project.schema import Weights

#: Prices that count, in a builder's words.
_PRICED = ("wire", "resistor", "fuse", "joint")


def arrangements_page(matter: Matter) -> ArrangementsPage:
    """The page of arrangements side by side."""
    choice = matter.study.choice
    return ArrangementsPage(
        message=tuple(_message(matter, choice)),
        how_to_read=_(
            "All charts have one scale: bulbs from left to right, run after run, light upwards, the "
            "brightest bulb of each arrangement being 1. Below the bulbs + and − stand where the feed's "
            "wires enter; the upright lines part the runs."
        ),
        arrangements=tuple(
            _compared(choice, proposal, number) for number, proposal in enumerate(choice.proposals, 1)
        ),
        table=_table(choice),
        rests_on=rests_on(choice),
    )


def built(choice: Choice) -> Proposal:
    """The arrangement that the guide builds: the maker's own, else the first."""
    return next((each for each in choice.proposals if each.given), choice.proposals[0])


def _compared(choice: Choice, proposal: Proposal, place: int) -> Compared:
    title = title_of(proposal, choice)
    return Compared(
        anchor=f"arrangement-{place}",
        number=place,
        title=title[:1].upper() + title[1:],
        mark=_mark(choice, proposal),
        picture=f"arrangement-{place}",
        why=_gains(proposal, choice),
    )


def _mark(choice: Choice, proposal: Proposal) -> str:
    if proposal is not built(choice):
        return ""
    if proposal.given:
        return _("the maker's own, built in this guide")
    return _("proposed, built in this guide")


def _gains(proposal: Proposal, choice: Choice) -> str:
    """Its sentence, without the name that stands over it."""
    text = why(proposal, choice)
    begin = title_of(proposal, choice) + ": "
    rest = text[len(begin) :] if text.lower().startswith(begin.lower()) else text
    return rest[:1].upper() + rest[1:]


def _message(matter: Matter, choice: Choice) -> Iterator[str]:
    """The choice explained, a sentence or two each."""
    yield _built(choice)
    yield _looked_at(matter, choice)
    none = why_none(choice)
    if none:
        yield none
    else:
        yield _first(matter, choice)
    mine = built(choice)
    if mine is not choice.proposals[0]:
        yield _against_first(mine, choice.proposals[0])
    yield from _others(choice)


def _built(choice: Choice) -> str:
    mine = built(choice)
    text = (
        _("This guide builds number {number}, the maker's own arrangement: {name}.")
        if mine.given
        else _("This guide builds number {number}; its maker left the choice open: {name}.")
    )
    return text.format(number=choice.proposals.index(mine) + 1, name=title_of(mine, choice))


def _looked_at(matter: Matter, choice: Choice) -> str:
    if not choice.looked_at:
        return _(
            "No other arrangement can be proposed here: strings that may not be cut or rewired are used "
            "whole or not at all, and no search is made for very many bulbs."
        )
    looked = ngettext(
        "{count} arrangement was looked at.", "{count} arrangements were looked at.", choice.looked_at
    ).format(count=choice.looked_at)
    return f"{looked} {_order(matter, choice)}"


def _order(matter: Matter, choice: Choice) -> str:
    if len(choice.proposals) == 1:
        return _("None other is worth showing beside it.")
    shown = _("Shown are {count} that no other one beats in everything.").format(count=len(choice.proposals))
    if choice.miss is not None:
        return shown
    if matter.project.goals.weights != Weights():
        order = _("Those that meet the goals come first, in the order that the weights in the file give.")
    else:
        order = _("Those that meet the goals come first, the cheapest at the top.")
    return f"{shown} {order}"


def _first(matter: Matter, choice: Choice) -> str:
    first = choice.proposals[0]
    good = [each.cost.money for each in choice.proposals if each.meets_goals]
    text = _("Number 1, {name}, gives evenness {evenness} where {goal} is the goal, for {money}.")
    if first.cost.money <= min(good) and len(good) > 1:
        text = _(
            "Number 1, {name}, gives evenness {evenness} where {goal} is the goal, and at {money} costs "
            "least of those that meet it."
        )
    return text.format(
        name=title_of(first, choice),
        evenness=fixed(first.evenness, 2),
        goal=fixed(matter.project.goals.evenness, 2),
        money=_money(first.cost),
    )


def _against_first(mine: Proposal, first: Proposal) -> str:
    clauses = [
        _("gives evenness {mine} instead of {first}")
        if fixed(mine.evenness, 2) != fixed(first.evenness, 2)
        else _("is as even ({mine})"),
        _("costs {mine_money} instead of {first_money}")
        if fixed(mine.cost.money, 2) != fixed(first.cost.money, 2)
        else _("costs the same ({mine_money})"),
        _("has {joints} instead of {first_joints}")
        if mine.cost.joints != first.cost.joints
        else _("has {joints} as well"),
    ]
    values = {
        "mine": fixed(mine.evenness, 2),
        "first": fixed(first.evenness, 2),
        "mine_money": _money(mine.cost),
        "first_money": _money(first.cost),
        "joints": _joints(mine.cost),
        "first_joints": first.cost.joints,
    }
    text = _("Against number 1, the maker's own {clauses}.")
    text = text.format(clauses=listed([clause.format(**values) for clause in clauses]))
    return text if mine.meets_goals else text + " " + _("It does not meet the goals.")


def _joints(cost: Cost) -> str:
    return ngettext("{count} joint", "{count} joints", cost.joints).format(count=cost.joints)


def _others(choice: Choice) -> Iterator[str]:
    """What others are best at, where the first one is not."""
    first = choice.proposals[0]
    most_even = max(choice.proposals, key=lambda each: round(each.evenness, 2))
    if round(most_even.evenness, 2) > round(first.evenness, 2):
        yield _("Most even is number {number}: {name}, with {evenness} for {money}.").format(
            number=choice.proposals.index(most_even) + 1,
            name=title_of(most_even, choice),
            evenness=fixed(most_even.evenness, 2),
            money=_money(most_even.cost),
        )
    fewest = min(choice.proposals, key=lambda each: each.cost.joints)
    if fewest.cost.joints < first.cost.joints:
        yield _(
            "Least to solder has number {number}: {name}, with {joints} instead of {first_joints}, for "
            "{money}."
        ).format(
            number=choice.proposals.index(fewest) + 1,
            name=title_of(fewest, choice),
            joints=_joints(fewest.cost),
            first_joints=first.cost.joints,
            money=_money(fewest.cost),
        )


def _table(choice: Choice) -> Table:
    return Table(
        caption=_("All figures side by side"),
        columns=(
            Column(_("No.")),
            Column(_("Runs")),
            Column(_("Fed")),
            Column(_("Resistors")),
            Column(_("Evenness"), numeric=True),
            Column(_("Mean LED, mA"), numeric=True),
            Column(_("Goals")),
            Column(_("Extra wire, m"), numeric=True),
            Column(_("Its cores, m"), numeric=True),
            Column(_("Joints"), numeric=True),
            Column(_("Cuts"), numeric=True),
            Column(_cost_title(choice.proposals[0].cost), numeric=True),
        ),
        rows=tuple(_row(choice, proposal, place) for place, proposal in enumerate(choice.proposals, 1)),
        note=_cost_note(choice.proposals[0].cost),
    )


def _row(choice: Choice, proposal: Proposal, place: int) -> tuple[str, ...]:
    cost = proposal.cost
    return (
        _place(choice, proposal, place),
        " + ".join(_alike(group.runs, str(group.bulbs)) for group in proposal.groups),
        ", ".join(dict.fromkeys(_(group.feed) for group in proposal.groups)),
        ", ".join(_resistors(proposal)),
        fixed(proposal.evenness, 2),
        _led_ma(proposal),
        _("met") if proposal.meets_goals else _("missed"),
        _metres(cost.extra_wire_m),
        _metres(cost.core_m),
        str(cost.joints),
        str(cost.cuts),
        fixed(cost.money, 2),
    )


def _place(choice: Choice, proposal: Proposal, place: int) -> str:
    """Its number, and in words whether it is the one that is built."""
    if proposal is not built(choice):
        return str(place)
    text = _("{number}, maker's own, built here") if proposal.given else _("{number}, built here")
    return text.format(number=place)


def _led_ma(proposal: Proposal) -> str:
    """Mean LED current, of the least and the most driven run where they differ."""
    led_a = [run.mean_led_a for run in proposal.worked.solution.runs]
    low, high = number(1e3 * min(led_a)), number(1e3 * max(led_a))
    return low if low == high else _("{low} to {high}").format(low=low, high=high)


def _resistors(proposal: Proposal) -> Iterator[str]:
    resistors = (run.resistor for run in proposal.worked.arrangement.runs)
    counted = Counter(each.ohm if each.fitted else 0.0 for each in resistors)
    for ohm, count in counted.items():
        yield _alike(count, quantity(ohm, "Ω")) if ohm else _("none")


def _alike(count: int, what: str) -> str:
    return what if count == 1 else f"{count}{NO_BREAK}×{NO_BREAK}{what}"


def _metres(length_m: float) -> str:
    return number(length_m) if length_m else NOTHING


def _money(cost: Cost) -> str:
    return money(cost.money, cost.currency)


def _cost_title(cost: Cost) -> str:
    """What the column of costs rests on, in its head."""
    if not cost.typical:
        text = _("Cost in {currency}, prices of the file")
    elif set(cost.typical) == set(_PRICED):
        text = _("Cost in {currency}, typical prices")
    else:
        text = _("Cost in {currency}, partly typical prices")
    return text.format(currency=cost.currency)


def _cost_note(cost: Cost) -> str:
    words = {"wire": _("wire"), "resistor": _("resistors"), "fuse": _("fuse"), "joint": _("joints")}
    stated = [words[each] for each in _PRICED if each not in cost.typical]
    typical = [words[each] for each in _PRICED if each in cost.typical]
    sentences = [
        _("Prices from the project file: {parts}.").format(parts=listed(stated)) if stated else "",
        _("Typical price points, own assumption: {parts}.").format(parts=listed(typical)) if typical else "",
    ]
    return " ".join(filter(None, sentences))
