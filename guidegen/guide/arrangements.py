"""Arrangements compared: what else would do, what each gains and costs, and why this one is built."""

from __future__ import annotations

from collections.abc import Iterator

from guidegen.choose.apart import wire_sizes
from guidegen.choose.choice import Choice, Proposal
from guidegen.choose.costs import Cost
from guidegen.choose.rewired import rewired
from guidegen.choose.takeover import take_over
from guidegen.choose.why import more, rests_on, title_of, why, why_none
from guidegen.guide.arrangement_wires import alike, how_to_take, wires_table
from guidegen.guide.blocks import Column, Table
from guidegen.guide.format import fixed, listed, number, quantity
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
    table = _table(choice)
    return ArrangementsPage(
        message=tuple(_message(matter, choice)),
        how_to_read=_(
            "All charts have one scale: bulbs from left to right, run after run, light upwards, the "
            "brightest bulb of each arrangement being 1. Below the bulbs + and − stand where the feed's "
            "wires enter; the upright lines part the runs."
        ),
        arrangements=tuple(
            _compared(matter, proposal, number) for number, proposal in enumerate(choice.proposals, 1)
        ),
        table=table,
        wires=wires_table(choice, [row[0] for row in table.rows]),
        to_take=how_to_take(),
        rests_on=rests_on(choice),
    )


def built(choice: Choice) -> Proposal:
    """The arrangement that the guide builds: the maker's own, else the first."""
    return next((each for each in choice.proposals if each.given), choice.proposals[0])


def _compared(matter: Matter, proposal: Proposal, place: int) -> Compared:
    choice = matter.study.choice
    title = title_of(proposal, choice)
    taken = None if proposal.given else take_over(matter.study.as_written, proposal)
    return Compared(
        anchor=f"arrangement-{place}",
        number=place,
        title=title[:1].upper() + title[1:],
        mark=_mark(choice, proposal),
        picture=f"arrangement-{place}",
        why=_gains(proposal, choice),
        runs=taken.runs if taken else "",
        also=taken.also if taken else (),
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
        yield from _of_wire(matter, mine, choice.proposals[0])
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
    shown = _shown(choice)
    if choice.miss is not None:
        return shown
    if matter.project.goals.weights != Weights():
        order = _("Those that meet the goals come first, in the order that the weights in the file give.")
    else:
        order = _("Those that meet the goals come first, the cheapest at the top.")
    return f"{shown} {order}"


def _shown(choice: Choice) -> str:
    """Which ones are shown, of all that were looked at."""
    proposed = sum(not each.given for each in choice.proposals)
    if proposed >= choice.unbeaten:
        text = _("Shown are all {count} proposals that no other proposal beats in everything")
    elif choice.lifted:
        text = _(
            "Shown are, of {unbeaten} proposals that no other proposal beats in everything, the {best} that "
            "stand best and the most even"
        )
    else:
        text = _(
            "Shown are, of {unbeaten} proposals that no other proposal beats in everything, the {count} that "
            "stand best"
        )
    if proposed == 1:
        text = _("Shown is the proposal that stands best")
    text = text.format(count=proposed, best=proposed - 1, unbeaten=choice.unbeaten)
    own = proposed < len(choice.proposals)
    return (_("{shown}, and the maker's own.") if own else _("{shown}.")).format(shown=text)


def _of_wire(matter: Matter, mine: Proposal, first: Proposal) -> Iterator[str]:
    """How much of the difference in cost comes of other sizes of wire."""
    same = rewired(matter.project, mine, first)
    if same is None or not mine.wire_mm2:
        return
    text = _(
        "They differ in the size of their wire too: number 1 is reckoned with {first_sizes}, the maker's own "
        "with {sizes}. With the sizes of number 1 the maker's own would cost {money}, at evenness "
        "{evenness}; what difference is left comes of lengths of wire, resistors and joints."
    )
    yield text.format(
        first_sizes=_sizes_used(first),
        sizes=wire_sizes(mine),
        money=money(same.money, mine.cost.currency),
        evenness=fixed(same.evenness, 2),
    )


def _sizes_used(proposal: Proposal) -> str:
    """Sizes that it was searched with, also of wires that it has none of."""
    sizes = dict.fromkeys(proposal.sizes_mm2)
    return wire_sizes(proposal) or listed([quantity(size / 1e6, "m2") for size in sizes])


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
        if more(mine.evenness, first.evenness)
        else _("is as even ({mine})"),
        _("costs {mine_money} instead of {first_money}")
        if more(mine.cost.money, first.cost.money)
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
    if more(most_even.evenness, first.evenness) > 0:
        yield _("Most even of those shown is number {number}: {name}, with {evenness} for {money}.").format(
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
            Column(_("Evenness"), numeric=True),
            Column(_("Mean LED, mA"), numeric=True),
            Column(_("Goals")),
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
        " + ".join(alike(group.runs, str(group.bulbs)) for group in proposal.groups),
        ", ".join(dict.fromkeys(_(group.feed) for group in proposal.groups)),
        fixed(proposal.evenness, 2),
        _led_ma(proposal),
        _("met") if proposal.meets_goals else _("missed"),
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
