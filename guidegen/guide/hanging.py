"""Hanging plan: what hangs where, whether hooks and wire bear it, and how to hang it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from guidegen.calc import catenary
from guidegen.calc.worked import work
from guidegen.guide.blocks import Calculation, Caution, Verdict
from guidegen.guide.cautions import Placed
from guidegen.guide.cut_list import cut_table, totals_table
from guidegen.guide.force import force, per_metre, weight
from guidegen.guide.format import listed, number, percent, quantity
from guidegen.guide.hanging_feeds import feed_tables, feeding_lines
from guidegen.guide.hanging_tables import bulb_table, gap_lines, hook_table, span_table, usage_table
from guidegen.guide.matter import Matter
from guidegen.guide.pages import HangingPage
from guidegen.guide.words import bulbs_text
from guidegen.guide.worked import calculation
from guidegen.hanging.advice import supply_wires
from guidegen.hanging.plan import HangingPlan, HungLine
from guidegen.locale import _, ngettext
from guidegen.tables.hanging import COPPER_PULL_PA, GRAVITY, GUIDE_LOAD, HOOK_LOAD
from guidegen.tables.limits import OVER_PATH_M

_TOPICS = {"hanging", "outdoors-joints"}
#: A hook is tried with this many times what it will bear.
_TRIAL = 2.0
#: Wire left over at the last hook that is no cause for words, metre.
_CLOSE_M = 0.3


def hanging_page(matter: Matter, plan: HangingPlan, cautions: Sequence[Placed]) -> HangingPage:
    """The page of the plan."""
    wires = supply_wires(matter.project, matter.arrangement, plan)
    return HangingPage(
        lead=tuple(_lead(matter, plan)),
        verdicts=tuple(_verdicts(matter, plan)),
        pictures=("plan", "spans"),
        feeding=feeding_lines(matter, wires),
        feeds=feed_tables(matter, wires),
        cautions=_cautions(cautions),
        how=tuple(_how(matter, plan)),
        hooks=hook_table(plan),
        spans=span_table(plan),
        gaps=gap_lines(matter, plan),
        bulbs=tuple(bulb_table(matter, plan, index) for index in range(len(plan.lines))),
        usage=usage_table(plan),
        sums=tuple(_sums(plan)),
        cuts=cut_table(matter, plan),
        totals=totals_table(matter, plan),
    )


def _cautions(cautions: Sequence[Placed]) -> tuple[Caution, ...]:
    """The cautions of hanging as lines that lead to the safety page."""
    return tuple(
        replace(each.caution, full=False)
        for each in cautions
        if _TOPICS & set(each.topics) and each.caution.signal in ("danger", "warning", "caution")
    )


def _lead(matter: Matter, plan: HangingPlan) -> Iterator[str]:
    bulbs = sum(len(line.bulbs) for line in plan.lines)
    yield _("{bulbs} hang from {hooks}.").format(bulbs=bulbs_text(bulbs), hooks=_hooks_text(plan.hooks))
    for index, line in enumerate(plan.lines):
        text = _(
            "Line {number}, hooks {first} to {last}: {runs}. Every span of {span} dips {sag} in the middle. "
            "{wire} of wire from the first hook to the last."
        )
        if _spans_differ(line):
            text = _(
                "Line {number}, hooks {first} to {last}: {runs}. Its longest span, {span}, dips {sag} in "
                "the middle; shorter spans dip less, since one pull goes through all of them. {wire} of wire "
                "from the first hook to the last."
            )
        yield text.format(
            number=index + 1,
            first=line.hooks[0].label,
            last=line.hooks[-1].label,
            runs=listed([matter.runs[run].name for run in line.runs]),
            span=quantity(line.longest.wire.span_m, "m"),
            sag=quantity(line.longest.wire.sag_m, "m"),
            wire=quantity(line.wire_m, "m"),
        )
    if plan.typical:
        yield _("Typical weights and sizes stand in for {keys}: weigh and measure yours.").format(
            keys=listed(plan.typical)
        )


def _spans_differ(line: HungLine) -> bool:
    return line.longest.wire.span_m > min(span.wire.span_m for span in line.spans) + 0.005


def _hooks_text(count: int) -> str:
    return ngettext("{count} hook", "{count} hooks", count).format(count=count)


def _verdicts(matter: Matter, plan: HangingPlan) -> Iterator[Verdict]:
    yield _hooks_verdict(plan)
    yield _wire_verdict(plan)
    yield _weather_verdict(matter)
    yield from _height_verdict(matter, plan)
    for line in plan.lines:
        yield from _reach_verdict(line)
    for run in plan.not_hung:
        yield Verdict(
            None, _("{run} is on no line: this plan leaves it out.").format(run=matter.runs[run].name)
        )


def _hooks_verdict(plan: HangingPlan) -> Verdict:
    worst = plan.worst_hook
    pull = _("The largest pull on a hook is {pull}, at {hook}.").format(
        pull=force(worst.worst_n), hook=worst.hook.label
    )
    if plan.hook_limit_n is None:
        wanted = _("Use hooks rated for at least {rating}, so that they bear half their rating at most.")
        return Verdict(None, f"{pull} {wanted.format(rating=force(worst.worst_n / HOOK_LOAD.value))}")
    share = _("Half its rating is {limit}.").format(limit=force(plan.hook_limit_n))
    ends = (
        _("The hooks hold.")
        if plan.hooks_hold
        else _("Too much: use stronger hooks, more of them, or more sag.")
    )
    return Verdict(plan.hooks_hold, f"{pull} {share} {ends}")


def _wire_verdict(plan: HangingPlan) -> Verdict:
    pull = force(plan.tension_n)
    if plan.guide_wire:
        if plan.wire_limit_n is None:
            text = _("The guide wire is pulled with {pull}: use one that breaks at no less than {strength}.")
            return Verdict(None, text.format(pull=pull, strength=force(plan.tension_n / GUIDE_LOAD.value)))
        text = _("The guide wire is pulled with {pull}; a fifth of what breaks it is {limit}.")
        return Verdict(plan.wire_holds, text.format(pull=pull, limit=force(plan.wire_limit_n)))
    limit = plan.wire_limit_n or 0.0
    text = _(
        "The strings' own wire is pulled with {pull}; its copper may bear {limit} for good ({stress} N/mm²)."
    )
    said = text.format(pull=pull, limit=force(limit), stress=number(COPPER_PULL_PA.value / 1e6))
    advice = "" if plan.wire_holds else " " + _("Too much: hang it from a guide wire, or give it more sag.")
    return Verdict(plan.wire_holds, said + advice)


def _weather_verdict(matter: Matter) -> Verdict:
    hanging = matter.project.hanging
    assert hanging is not None, "there is a plan"
    exposure = matter.project.place.exposure
    if exposure == "indoors":
        return Verdict(True, _("Indoors: no wind and no ice are reckoned with."))
    if hanging.wind is not None:
        text = _("Wind of {wind} square to the wire is in every pull.")
        if hanging.ice:
            text = _("Wind of {wind} square to the wire and {ice} of ice are in every pull, both at once.")
        said = text.format(wind=quantity(hanging.wind, "m/s"), ice=quantity(hanging.ice or 0.0, "m"))
        return Verdict(True, said)
    if exposure == "sheltered outdoors":
        return Verdict(
            None,
            _("For sheltered places only: no wind is in these pulls. Take the lights down before a storm."),
        )
    return Verdict(
        False,
        _(
            "Open to wind and rain, but no wind is stated: these pulls hold for a calm, sheltered "
            "place only. "
            "State wind (and ice) under hanging."
        ),
    )


def _height_verdict(matter: Matter, plan: HangingPlan) -> Iterator[Verdict]:
    place = matter.project.place
    path = place.over_path == "yes" or (place.over_path is None and matter.outdoors)
    least = quantity(OVER_PATH_M.value, "m")
    if not path and plan.lowest_m is None:
        return
    if plan.lowest_m is None:
        text = _(
            "People may pass below: state the hooks' heights; the lowest point must be at least {least} up."
        )
        yield Verdict(None, text.format(least=least))
        return
    low = _("The lowest point of the wire is {height} above the ground.").format(
        height=quantity(plan.lowest_m, "m")
    )
    if not path:
        yield Verdict(True, low)
        return
    enough = plan.lowest_m >= OVER_PATH_M.value
    rest = _("Over a path it must be at least {least}.").format(least=least)
    yield Verdict(enough, f"{low} {rest}")


def _reach_verdict(line: HungLine) -> Iterator[Verdict]:
    last = line.hooks[-1].label
    if line.beyond:
        count = len(line.beyond)
        text = ngettext(
            "{count} bulb hangs beyond the last hook {hook}, over {wire}: add a hook, or use fewer bulbs.",
            "{count} bulbs hang beyond the last hook {hook}, over {wire}: add a hook, or use fewer bulbs.",
            count,
        )
        yield Verdict(False, text.format(count=count, hook=last, wire=quantity(-line.spare_m, "m")))
    elif line.spare_m > _CLOSE_M:
        text = _(
            "The last bulb is {wire} of wire before the last hook {hook}: a cord carries the end on to it."
        )
        yield Verdict(None, text.format(wire=quantity(line.spare_m, "m"), hook=last))
    else:
        yield Verdict(True, _("The bulbs reach the last hook {hook}.").format(hook=last))


def _how(matter: Matter, plan: HangingPlan) -> Iterator[str]:
    worst, longest = plan.worst_hook, max((line.longest for line in plan.lines), key=lambda s: s.wire.span_m)
    yield _("Hang the lights only when all joints are made and tested at the bench, and with the plug out.")
    yield _(
        "Mark every hook by the plan, {first} first; measure from hook to hook, then once over the whole row."
    ).format(first=plan.lines[0].hooks[0].label)
    yield _(
        "Try every hook before anything hangs on it: {weight} on it for a minute, twice the largest pull."
    ).format(weight=weight(_TRIAL * worst.worst_n / GRAVITY))
    if plan.guide_wire:
        yield _(
            "Hang the guide wire first, with its sag; then tie the lights to it every 30 cm, and "
            "they bear nothing."
        )
    yield _(
        "Lay the lights on the ground below the hooks, and tie a mark to the wire where each hook "
        "will be: the table of bulbs tells."
    )
    yield _(
        "Hang them from the first hook to the last. Hold each span at its mark with a soft tie, "
        "never with wire or a staple."
    )
    yield _(
        "Check the sag of the span {first} to {last}: {sag} below a cord drawn tight from hook to hook."
    ).format(first=longest.first.label, last=longest.second.label, sag=quantity(longest.wire.sag_m, "m"))
    if matter.outdoors:
        yield _("Let every wire that goes to a joint or into a box hang 10 cm lower first, as a drip loop.")


def _sums(plan: HangingPlan) -> Iterator[Calculation]:
    """The longest span of all worked out."""
    line, pulls = max(zip(plan.lines, plan.pulls, strict=True), key=lambda pair: pair[0].longest.wire.span_m)
    wire, load = line.longest.wire, pulls.loads.worst
    if wire.rise_m == 0:
        yield calculation(work(catenary.level_sag_m, span_m=wire.span_m, c_m=wire.c_m))
        yield calculation(work(catenary.level_length_m, span_m=wire.span_m, c_m=wire.c_m))
    loads = pulls.loads
    note = _("The load: {dead} of lights").format(dead=per_metre(loads.dead))
    if loads.worst > loads.dead:
        note = _("The load: {dead} of lights, with ice and wind like {worst}").format(
            dead=per_metre(loads.dead), worst=per_metre(loads.worst)
        )
    yield calculation(work(catenary.level_pull_n, load_n_per_m=load, c_m=wire.c_m), note=f"{note}.")
    exact = load * wire.c_m
    parabola = work(catenary.parabola_pull_n, load_n_per_m=load, span_m=wire.span_m, sag_m=wire.sag_m)
    yield calculation(
        parabola,
        note=_("{share} off the catenary: the flatter the wire, the nearer.").format(
            share=percent(abs(parabola.value / exact - 1))
        ),
    )
