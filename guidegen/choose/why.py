"""Why an arrangement stands where it does, and why none meets the goals: sentences from figures."""

from __future__ import annotations

from collections.abc import Iterator

from guidegen.choose.apart import set_apart
from guidegen.choose.choice import Change, Choice, Group, Miss, Proposal
from guidegen.choose.front import EVENNESS_STEP, MONEY_STEP, WIRE_STEP_M
from guidegen.choose.metres import sited_text
from guidegen.hanging.routes import LEAST_EXTRA_M
from guidegen.locale import N_, _, ngettext
from guidegen.locale.numerals import NO_BREAK, fixed, general, with_unit
from guidegen.locale.numerals import money as amount_of_money
from guidegen.safety.amounts import shown
from guidegen.safety.leds import GOAL_MET_FROM

_NUMBERS = (
    *(N_("one"), N_("two"), N_("three"), N_("four")),
    *(N_("five"), N_("six"), N_("seven"), N_("eight")),
)
_FED = {
    "one end": N_("fed at one end"),
    "middle": N_("fed in the middle"),
    "both ends": N_("fed at both ends"),
    "opposite ends": N_("fed at opposite ends"),
}
_WAYS = {
    "wire resistance": N_("the resistance of the string's wire"),
    "supply volts": N_("the supply's volts, which are too few for that LED current"),
    "supply rating": N_("the supply's rated current"),
    "led maximum": N_("the largest LED current, which would be passed in the worst case"),
    "resistor": N_("the resistor, which no rating on sale would save in a lasting short"),
    "wire limit": N_("what the wire bears in a lasting fault"),
}
_PRICED = {"wire": N_("wire"), "resistor": N_("resistors"), "fuse": N_("fuse"), "joint": N_("joints")}
_CHANGES = {
    "string wire": N_("string wire of at most {then_ohm_per_m} ohm/m instead of {now_ohm_per_m} ohm/m"),
    "led current": N_("an LED current of at most {then_a} instead of {now_a}"),
    "supply volts": N_("a supply of {then_v} instead of {now_v}"),
    "supply rating": N_("a supply rated for {then_a} instead of {now_a}"),
    "evenness": N_("a goal of {then_ratio} for evenness instead of {now_ratio}"),
}


def in_words(count: int) -> str:
    """Small numbers from one on as words."""
    return _(_NUMBERS[count - 1]) if 1 <= count <= len(_NUMBERS) else str(count)


def name_of(proposal: Proposal) -> str:
    """The arrangement in a few words: "two runs of 24, fed in the middle"."""
    several = len({group.string for group in proposal.groups}) > 1
    return _(" and ").join(_group(group, several) for group in proposal.groups)


def _group(group: Group, named: bool) -> str:
    """One part of the name; `named`: with its kind of string."""
    text = ngettext("{count} run of {bulbs}, {fed}", "{count} runs of {bulbs}, {fed}", group.runs)
    bulbs = _("{bulbs} “{string}”") if named else "{bulbs}"
    return text.format(
        count=in_words(group.runs),
        bulbs=bulbs.format(bulbs=group.bulbs, string=group.string),
        fed=_(_FED[group.feed]),
    )


def title_of(proposal: Proposal, choice: Choice) -> str:
    """Its name, and where another one of the choice has the same, what tells it apart."""
    name = name_of(proposal)
    difference = set_apart(proposal, [each for each in choice.proposals if name_of(each) == name])
    return _("{name}, {difference}").format(name=name, difference=difference) if difference else name


def why(proposal: Proposal, choice: Choice) -> str:
    """What this arrangement of a choice gains and costs, in one sentence."""
    first = choice.proposals[0]
    gains = _("evenness {evenness} for {price}").format(
        evenness=fixed(proposal.evenness, 2), price=_price(proposal)
    )
    head = _("{name}: {gains}").format(name=title_of(proposal, choice), gains=gains)
    return "; ".join([head[:1].upper() + head[1:], *_remarks(proposal, first)]) + "."


def _price(proposal: Proposal) -> str:
    cost = proposal.cost
    wire = _("no extra wire")
    if cost.extra_wire_m >= LEAST_EXTRA_M:
        wire = _("{length} of extra wire").format(length=shown({"route_m": cost.extra_wire_m})["route_m"])
    cuts = _("no cuts")
    if cost.cuts:
        cuts = ngettext("{count} cut", "{count} cuts", cost.cuts).format(count=in_words(cost.cuts))
    return _("{wire} and {cuts}").format(wire=wire, cuts=cuts)


def _remarks(proposal: Proposal, first: Proposal) -> Iterator[str]:
    if proposal.rival is not None:
        text = _("{fed} it would be {evenness}")
        yield text.format(fed=_(_FED[proposal.rival.feed]), evenness=fixed(proposal.rival.evenness, 2))
    if proposal.sited is not None and proposal.sited.others:
        yield sited_text(proposal.sited)
    if proposal.led_share < GOAL_MET_FROM:
        text = _("its LEDs get {share} of the current aimed at")
        yield text.format(share=shown({"share_percent": proposal.led_share})["share_percent"])
    if max(proposal.over.values()) > 0:
        yield _("in the worst case it is over a limit")
    if proposal is not first:
        yield _against(proposal, first)


def more(one: float, other: float) -> float:
    """By how much one figure is above another as both are shown, to the hundredth: what reads alike is."""
    return round(round(one, 2) - round(other, 2), 2)


def _against(proposal: Proposal, first: Proposal) -> str:
    """What it gains and costs against the first."""
    more_even = more(proposal.evenness, first.evenness)
    dearer = more(proposal.cost.money, first.cost.money)
    light = _("{amount} more even") if more_even > 0 else _("{amount} less even")
    money = _("{amount} dearer") if dearer > 0 else _("{amount} cheaper")
    return _("against the first {light} and {money}").format(
        light=light.format(amount=fixed(abs(more_even), 2)) if more_even else _("as even"),
        money=money.format(amount=amount_of_money(abs(dearer), proposal.cost.currency).replace(NO_BREAK, " "))
        if dearer
        else _("at the same cost"),
    )


def why_none(choice: Choice) -> str:
    """Why no arrangement meets the goals, and what would do; empty when one does."""
    miss = choice.miss
    if miss is None:
        return ""
    sentences = [_("No arrangement meets the goals; the first comes nearest.")]
    if miss.ways:
        ways = ", ".join(_(_WAYS[way]) for way in miss.ways)
        sentences.append(_("In the way: {ways}.").format(ways=ways))
    return " ".join([*sentences, _changes(miss)])


def _changes(miss: Miss) -> str:
    if not miss.changes:
        return _("No single change of wire, current or supply was found that would do.")
    smallest, *others = [_change(each) for each in miss.changes]
    text = _("The smallest change that would do: {change}.").format(change=smallest)
    if others:
        text += " " + _("Or: {changes}.").format(changes="; ".join(others))
    return text


def _change(change: Change) -> str:
    values = shown(
        {
            f"{name}_{unit}": value
            for name, value in (("now", change.now), ("then", change.then))
            for unit in ("a", "v", "ratio")
        }
    )
    per_m = {"now_ohm_per_m": general(change.now), "then_ohm_per_m": general(change.then)}
    return _(_CHANGES[change.what]).format(**per_m, **values)


def assumptions(choice: Choice) -> tuple[str, ...]:
    """What the comparison rests on, and which prices are typical ones."""
    cost, rests = choice.proposals[0].cost, rests_on(choice)
    if not cost.typical:
        return rests
    text = _("Typical prices, own assumption, stand in for: {parts}.")
    return (*rests, text.format(parts=", ".join(_(_PRICED[each]) for each in cost.typical)))


def rests_on(choice: Choice) -> tuple[str, ...]:
    """What every comparison rests on."""
    return (
        _on_hooks() if choice.hung else _on_a_line(),
        *_own_wire(choice),
        _steps(choice),
        _("Cost counts wire, resistors, fuse and joints; strings and supply are the same in all."),
    )


def _own_wire(choice: Choice) -> Iterator[str]:
    if any(each.given for each in choice.proposals):
        yield _("The maker's own has the sizes and lengths of wire that the project file states.")


def _steps(choice: Choice) -> str:
    return _(
        "Proposals are weighed in steps of {evenness} of evenness, {money} and {length} of extra wire; what "
        "lies within one step counts as alike. The most even of those that no other beats is always shown."
    ).format(
        evenness=fixed(EVENNESS_STEP, 2),
        money=amount_of_money(MONEY_STEP, choice.proposals[0].cost.currency),
        length=with_unit(general(WIRE_STEP_M), "m"),
    )


def _on_a_line() -> str:
    return _(
        "Proposed runs lie one after the other along one line, each with its first bulb towards the "
        "supply; feeders and extra wires go along the line from place.supply_at."
    )


def _on_hooks() -> str:
    return _(
        "Proposed runs hang from the hooks of the hanging plan one behind the other, each with its first "
        "bulb at the end nearer to the supply. Feeders and extra wires follow the lights from hook to hook; "
        "from a supply beside the hooks, from one line to another, and where a line comes back to itself "
        "they go straight, no farther than the longest span or the shortest crossing. What goes down to a "
        "socket is not counted."
    )
