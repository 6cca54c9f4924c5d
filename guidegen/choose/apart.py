"""What tells arrangements of one name apart: words to put behind the name."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from guidegen.choose.choice import Proposal
from guidegen.circuit.arrangement import Cable
from guidegen.hanging.supply import place_name
from guidegen.locale import _, ngettext
from guidegen.locale.numerals import fixed, general, with_unit


def set_apart(proposal: Proposal, alike: Sequence[Proposal]) -> str:
    """In what this one differs from others of its name; empty where there is no other.

    As few features as tell all of them apart, wire first; wire too where
    nothing does.
    """
    if len(alike) < 2:
        return ""
    chosen: list[Callable[[Proposal], str]] = []
    for feature in _FEATURES:
        if _kinds(alike, chosen) == len(alike):
            break
        if _kinds(alike, [*chosen, feature]) > _kinds(alike, chosen):
            chosen.append(feature)
    return ", ".join(filter(None, (feature(proposal) for feature in chosen or _FEATURES[:1])))


def _kinds(proposals: Sequence[Proposal], features: Sequence[Callable[[Proposal], str]]) -> int:
    return len({tuple(feature(each) for feature in features) for each in proposals})


def wire_sizes(proposal: Proposal) -> str:
    """Sizes of its feeders and extra wires, as a shop would say them."""
    return _sizes(proposal.wire_mm2)


def _sizes(sizes_mm2: Sequence[float]) -> str:
    return _(" and ").join(with_unit(general(size, 6), "mm²") for size in sizes_mm2)


def _mm2(cables: Sequence[Cable | None]) -> tuple[float, ...]:
    sizes = (round(cable.conductor.area_m2 * 1e6, 3) for cable in cables if cable is not None)
    return tuple(dict.fromkeys(sizes))


def _wire(proposal: Proposal) -> str:
    runs = proposal.worked.arrangement.runs
    feeder, extra = _mm2([run.feeder for run in runs]), _mm2([run.extra for run in runs])
    if feeder and extra and feeder != extra:
        return _("feeder of {feeder}, extra wire of {extra}").format(
            feeder=_sizes(feeder), extra=_sizes(extra)
        )
    both = feeder or extra
    return _("wire of {sizes}").format(sizes=_sizes(both)) if both else ""


def _place(proposal: Proposal) -> str:
    if proposal.sited is None or not proposal.sited.others:
        return ""
    return _("supply at {place}").format(place=place_name(proposal.sited.place))


def _resistors(proposal: Proposal) -> str:
    resistors = [run.resistor for run in proposal.worked.arrangement.runs]
    ohms = dict.fromkeys(each.ohm for each in resistors if each.fitted)
    if not ohms:
        return _("no resistor")
    shown = _(" and ").join(with_unit(general(ohm), "Ω") for ohm in ohms)
    return ngettext("resistor of {ohms}", "resistors of {ohms}", len(resistors)).format(ohms=shown)


def _order(proposal: Proposal) -> str:
    return _("bulbs {order} in this order").format(order=", ".join(str(run.bulbs) for run in proposal.runs))


def _lengths(proposal: Proposal) -> str:
    cost = proposal.cost
    return _("{feeder} of feeder and {extra} of extra wire").format(
        feeder=with_unit(fixed(cost.feeder_m, 2), "m"), extra=with_unit(fixed(cost.extra_wire_m, 2), "m")
    )


def _given(proposal: Proposal) -> str:
    return _("the maker's own") if proposal.given else ""


#: From the most telling one on.
_FEATURES: tuple[Callable[[Proposal], str], ...] = (_wire, _place, _resistors, _order, _lengths, _given)
