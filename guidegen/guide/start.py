"""Start here: what it will be, what it takes, and whether it meets its goals."""

from __future__ import annotations

import math

from guidegen.calc.light import seen_evenness
from guidegen.guide.blocks import Fact, Photo
from guidegen.guide.buying import parts_to_buy
from guidegen.guide.costs import costs, total_of
from guidegen.guide.format import listed, percent, quantity
from guidegen.guide.matter import Matter
from guidegen.guide.own_steps import photo_of
from guidegen.guide.pages import BuildPage, StartPage
from guidegen.guide.steps.pieces import dark_gap_m
from guidegen.guide.steps.two_way import is_two_way, lit_line
from guidegen.guide.words import bulbs_text, feed_text
from guidegen.locale import _, ngettext
from guidegen.locale.numerals import money
from guidegen.parts.bill import bill
from guidegen.parts.joints import dead_ends
from guidegen.safety.findings import Finding
from guidegen.safety.judge import RULE_BY_ID
from guidegen.safety.words import text

#: Working time, minutes: a step, and what a soldered place takes on top; common practice, no source.
_STEP_MIN, _JOINT_MIN = 8, 15
_HALF_HOUR_MIN = 30
#: Levels told on the first page, and the rules about goals, which are notices.
_TOLD = ("danger", "warning")
_GOAL_RULES = ("evenness-goal", "led-current-goal")
#: Rules that put figures or the hanging plan in doubt, told there too.
_DOUBT_RULES = ("figures-for-parallel", "hung-wire-overpulled", "hung-without-wind", "bulbs-beyond-hooks")


def start_page(matter: Matter, build: BuildPage) -> StartPage:
    """The first page."""
    good = matter.study.meets_goals
    return StartPage(
        what=_what(matter),
        facts=_facts(matter, build),
        verdict=_("At nominal values it meets its goals.")
        if good
        else _("At nominal values it misses some of its goals."),
        verdict_good=good,
        findings=_findings(matter),
        picture="light",
        cover=photo_of(matter.project.photos.cover),
        views=_views(matter),
        story=matter.project.story,
    )


def _views(matter: Matter) -> tuple[Photo, ...]:
    """The lights lit and unlit, told apart by words where there are both."""
    photos = matter.project.photos
    both = photos.lit is not None and photos.unlit is not None
    lit = photo_of(photos.lit, _("Lit") if both else "")
    unlit = photo_of(photos.unlit, _("Not lit") if both else "")
    return tuple(photo for photo in (lit, unlit) if photo is not None)


def _findings(matter: Matter) -> tuple[str, ...]:
    """What was found with figures in it or puts them in doubt, the rest by number."""
    found = matter.study.findings
    told = [text(finding) for finding in found if _on_first_page(finding)]
    rules = len({finding.rule for finding in found})
    rest = ngettext(
        "“Stay safe” holds {count} caution for this build. Read it first.",
        "“Stay safe” holds {count} cautions for this build. Read them first.",
        rules,
    )
    return (*told, rest.format(count=rules))


def _on_first_page(finding: Finding) -> bool:
    if finding.rule in _DOUBT_RULES:
        return True
    return _has_figures(finding) and (finding.level in _TOLD or finding.rule in _GOAL_RULES)


def _has_figures(finding: Finding) -> bool:
    """Whether what was found is said with figures of this project, not of the rule alone."""
    return "{" in RULE_BY_ID[finding.rule].sentence


def _what(matter: Matter) -> tuple[str, ...]:
    bulbs = sum(run.bulbs for run in matter.runs)
    runs = ngettext("{count} run", "{count} runs", len(matter.runs)).format(count=len(matter.runs))
    return (
        _("{bulbs} in {runs}, fed from one closed low-voltage supply.").format(
            bulbs=bulbs_text(bulbs), runs=runs
        ),
        *(
            _("{run}: {bulbs} over {length}, {feed}.").format(
                run=run.name,
                bulbs=bulbs_text(run.bulbs),
                length=quantity(run.length_m, "m"),
                feed=feed_text(run),
            )
            for run in matter.runs
        ),
        *_half_lit(matter),
        *_gaps(matter),
        _("A run is a stretch of bulbs behind one resistor, which sets how much current they get."),
    )


def _half_lit(matter: Matter) -> tuple[str, ...]:
    """What of two-way strings shines."""
    kinds = [matter.kind_of(run) for run in matter.runs]
    return tuple(
        lit_line(kind, run) for kind, run in zip(kinds, matter.runs, strict=True) if is_two_way(kind)
    )


def _gaps(matter: Matter) -> tuple[str, ...]:
    """Where a joined string's tail makes a gap in the row."""
    return tuple(
        _(
            "{run}: the wire between bulbs {bulb} and {next} is {gap}; hang it folded if the row is "
            "to be even."
        ).format(run=run.name, bulb=bulb, next=bulb + 1, gap=quantity(dark_gap_m(run, bulb), "m"))
        for run in matter.runs
        for bulb in run.joins
        if dark_gap_m(run, bulb)
    )


def _facts(matter: Matter, build: BuildPage) -> tuple[Fact, ...]:
    supply, solution = matter.arrangement.supply, matter.solution
    fuse = matter.arrangement.fuse
    return (
        Fact(
            _("Supply"),
            _("{volts} DC, {amperes}").format(
                volts=quantity(supply.voltage_v, "V"), amperes=quantity(supply.rated_a, "A")
            ),
            _("must be closed and approved; it stands {where}").format(where=_(matter.project.supply.stands)),
        ),
        Fact(
            _("Draws"),
            _("{amperes}, {watts}").format(
                amperes=quantity(solution.supply_a, "A"), watts=quantity(solution.power_w, "W")
            ),
            _("{load} of what the supply may give, {worst} in the worst case").format(
                load=percent(solution.load), worst=percent(matter.solved.margins.load)
            ),
        ),
        Fact(_("Fuse"), quantity(fuse.rating_a or 0.0, "A"), _("first thing in plus")),
        Fact(_("Strings"), _strings(matter), _("as bought")),
        Fact(
            _("Evenness"),
            percent(solution.evenness),
            _(
                "dimmest over brightest bulb, nominal; worst case {worst}; to the eye about {seen}, an "
                "estimate; goal {goal}"
            ).format(
                worst=percent(min(run.last_light_low for run in matter.solved.margins.runs)),
                seen=percent(seen_evenness(solution.evenness)),
                goal=percent(matter.project.goals.evenness),
            ),
        ),
        Fact(
            _("Place"),
            _(matter.project.place.exposure),
            _(
                "portable decoration, taken down again; fixed lighting needs at least 1.5 mm², 4 mm² where "
                "it hangs freely (IEC 60364-7-715, not checked against its text), which this is not"
            ),
        ),
        Fact(_("Time"), _time(matter, build), _("an estimate; one hour of it is watching")),
        Fact(_("Difficulty"), *_difficulty(matter)),
        Fact(_("Cost"), *_cost(matter)),
    )


def _cost(matter: Matter) -> tuple[str, str]:
    """What is bought altogether, and how sure that is."""
    total = total_of(parts_to_buy(matter), costs(matter).currency)
    note = (
        _("{typical} of it by typical prices, which are no offers").format(
            typical=money(total.typical, total.currency)
        )
        if total.typical
        else _("by the prices of the project file")
    )
    if total.not_priced:
        note = _("{note}; not priced: {count} of the parts").format(note=note, count=total.not_priced)
    return _("about {money}").format(money=money(total.amount, total.currency)), note


def _strings(matter: Matter) -> str:
    return listed(
        [
            _("{count} × “{name}”").format(count=line.count, name=line.string)
            for line in bill(matter.arrangement).strings
        ]
    )


def _time(matter: Matter, build: BuildPage) -> str:
    steps = sum(len(group.steps) for group in build.groups)
    minutes = steps * _STEP_MIN + bill(matter.arrangement).soldered * _JOINT_MIN + 60
    hours = _HALF_HOUR_MIN * math.ceil(minutes / _HALF_HOUR_MIN) / 60
    return _("about {hours}").format(hours=quantity(hours, _("hours")))


def _difficulty(matter: Matter) -> tuple[str, str]:
    places = bill(matter.arrangement).soldered
    ends = sum(len(end.poles) for end in dead_ends(matter.arrangement) if not end.made)
    soldered = ngettext("{count} soldered place", "{count} soldered places", places).format(count=places)
    note = _("{soldered}; live ends to close: {ends}; you need a meter and a soldering iron").format(
        soldered=soldered, ends=ends
    )
    return (
        _("easy") if places <= 2 else _("some practice needed") if places <= 8 else _("patience needed")
    ), note
