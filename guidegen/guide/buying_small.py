"""Small parts to buy: sleeves, ties, labels, and what the lights hang from."""

from __future__ import annotations

from collections.abc import Iterator

from guidegen.guide.blocks import LinePrice, PartLine
from guidegen.guide.costs import Costs
from guidegen.guide.force import force
from guidegen.guide.format import number, quantity
from guidegen.guide.matter import Matter
from guidegen.hanging.make import hanging_plan
from guidegen.locale import _, ngettext
from guidegen.parts.bill import Bill, SleeveLine
from guidegen.parts.cutlist import HungTotal, hung_totals

#: Widths before and after shrinking, mm, over a conductor and over cables; common practice, no source.
_SLEEVE_MM = {"inner": (4.8, 1.6), "cap": (4.8, 1.6), "outer": (12.0, 3.0)}


def sleeves_to_buy(matter: Matter, needed: Bill, cost: Costs) -> Iterator[PartLine]:
    """Sleeves over conductors, ends and joints, and what seals a fork."""
    lined = _("adhesive-lined, ") if matter.outdoors else ""
    names = {
        "inner": (
            _("Inner sleeve, over one conductor's joint"),
            _("One for every single joint. The price holds solder and outer sleeves too."),
        ),
        "cap": (_("Cap sleeve, over one conductor's end"), _("Live ends are capped each by itself.")),
        "outer": (_("Outer sleeve, over the whole cable"), _("It holds the joint and keeps water out.")),
    }
    for line in needed.sleeves:
        name, why = names[line.use]
        wide, tight = _SLEEVE_MM[line.use]
        yield PartLine(
            quantity=_("{count} × {length}").format(count=line.buy, length=quantity(line.length_m, "m")),
            name=name,
            rating=_("{lined}{wide} mm wide, {tight} mm shrunk; try it on your thickest and thinnest").format(
                lined=lined, wide=number(wide), tight=number(tight)
            ),
            why=why,
            instead=(_("{length} from a roll, cut to pieces").format(length=_in_all(line)),),
            price=_sleeve_price(line, needed, cost),
        )
    if matter.outdoors and needed.forks:
        yield PartLine(
            str(needed.forks),
            _("Strip of hot-melt adhesive, 3 cm"),
            "",
            _("It seals a sleeve's end that two cables leave."),
            instead=(_("shavings of a glue stick for hot-glue guns"),),
        )


def _sleeve_price(line: SleeveLine, needed: Bill, cost: Costs) -> LinePrice:
    """A joint's price holds its sleeves; caps, and outer sleeves where nothing is joined, go by the metre."""
    if line.use == "inner":
        return cost.joints(line.count)
    if line.use == "outer" and needed.soldered:
        return cost.included()
    return cost.part("sleeve", line.buy * line.length_m)


def _in_all(line: SleeveLine) -> str:
    return quantity(line.buy * line.length_m, "m")


def small_parts(matter: Matter, needed: Bill, cost: Costs) -> Iterator[PartLine]:
    """Ties, labels, and what the lights hang from."""
    yield PartLine(
        number(needed.ties),
        _("Cable tie"),
        _("narrow, for outdoors") if matter.outdoors else _("narrow"),
        _("Two at every soldered place, one at every cable into box or socket."),
        price=cost.part("tie", needed.ties),
    )
    yield PartLine(
        str(needed.labels),
        _("Label, waterproof"),
        "",
        _("On plug, socket, and both ends of every wire."),
        instead=(_("paper folded round the wire under clear tape"),),
        price=cost.part("label", needed.labels),
    )
    plan = hanging_plan(matter.project, matter.arrangement)
    if plan is None:
        yield _unplanned_hooks(matter)
        return
    for total in hung_totals(plan):
        yield _hung(matter, total, cost)


def _unplanned_hooks(matter: Matter) -> PartLine:
    """Hooks of a project without a hanging plan: how many depends on where they can be."""
    bulbs = sum(run.bulbs for run in matter.runs)
    return PartLine(
        _("as you need"),
        _("Hooks for the cable"),
        _("round, without sharp edges, one a metre at least"),
        _("They hold the cable, never a bulb. There are {bulbs} to hang.").format(
            bulbs=ngettext("{count} bulb", "{count} bulbs", bulbs).format(count=bulbs)
        ),
    )


def _hung(matter: Matter, total: HungTotal, cost: Costs) -> PartLine:
    """Hooks, ties and guide wire of the hanging plan, a tenth in reserve."""
    hanging = matter.project.hanging
    assert hanging is not None, "totals are of a plan"
    if total.kind == "guide wire":
        return PartLine(
            quantity(total.buy, "m"),
            _("Guide wire"),
            _("stranded steel, not rusting outdoors"),
            _("It bears the lights; {needed} by the hanging plan, and 10 % more.").format(
                needed=quantity(total.needed, "m")
            ),
            price=cost.part("guide wire", total.buy),
        )
    why = _("{needed} by the hanging plan, and 10 % more.").format(needed=number(total.needed))
    if total.kind == "ties":
        name, rating = _("Soft tie"), _("to open again; no bare wire")
        return PartLine(number(total.buy), name, rating, why, price=cost.part("tie", total.buy))
    kind = hanging.hook_kind or _("hook")
    rated = hanging.hook_rating
    return PartLine(
        number(total.buy),
        _("Hook: {kind}").format(kind=kind),
        _("bears {force} for good").format(force=force(rated)) if rated else _("without sharp edges"),
        why,
        price=cost.part("hook", total.buy),
    )
