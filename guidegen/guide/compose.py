"""The whole guide from a study: one function a page."""

from __future__ import annotations

import hashlib
from dataclasses import replace

from guidegen import __version__
from guidegen.circuit.expected import ExpectedReading
from guidegen.guide.arrangements import arrangements_page
from guidegen.guide.blocks import Caution
from guidegen.guide.build_page import build_page
from guidegen.guide.cautions import Placed, placed_cautions
from guidegen.guide.electrician import electrician_page, stop_box
from guidegen.guide.hanging import hanging_page
from guidegen.guide.light import light_page
from guidegen.guide.matter import Matter
from guidegen.guide.numbers import numbers_page
from guidegen.guide.own_steps import with_own
from guidegen.guide.pages import BuildPage, Guide, Page, PageModel
from guidegen.guide.parts_page import parts_page
from guidegen.guide.print_set import with_print_set
from guidegen.guide.readings import readings_page
from guidegen.guide.running import running_page
from guidegen.guide.safe import safety_page
from guidegen.guide.start import start_page
from guidegen.guide.steps.all_steps import step_groups
from guidegen.guide.wiring import wiring_page
from guidegen.hanging.make import hanging_plan
from guidegen.locale import _, language
from guidegen.study import Study

#: Letters of the hash that keeps one guide's ticks and readings apart from another's.
_KEY_LETTERS = 16


def compose(study: Study, readings: tuple[ExpectedReading, ...]) -> Guide:
    """The guide of a solved study.

    `readings`: what a meter will show at every test point.  ValueError for a
    refused study: there is no guide to it.
    """
    if study.solved is None or study.refused:
        raise ValueError("no guide may be written for a refused project")
    matter = Matter(study, study.solved, readings)
    return Guide(
        title=study.project.title,
        summary=study.project.summary,
        author=study.project.author,
        language=language(),
        key=_key(study),
        version=__version__,
        pages=with_print_set(_pages(matter)),
        licence=study.project.licence,
    )


def _pages(matter: Matter) -> tuple[Page, ...]:
    """Every page, in the order of reading."""
    groups = with_own(step_groups(matter), matter.project.steps)
    cautions = placed_cautions(matter.study.findings)
    stop = stop_box(cautions)
    build = build_page(groups, cautions, stop)
    return (
        _page(
            "index",
            "start",
            _("Start here"),
            _("What you will build, and what it takes"),
            replace(start_page(matter, build), stop=stop),
        ),
        _page(
            "stay-safe",
            "safe",
            _("Stay safe"),
            _("Read this before you touch anything"),
            safety_page(cautions),
        ),
        *((_electrician(matter, stop),) if stop else ()),
        _page(
            "parts-and-tools",
            "parts",
            _("Parts and tools"),
            _("All to buy and to have before step 1"),
            parts_page(matter, groups),
        ),
        *_figures(matter, build),
        _page("build", "build", _("Build it"), _("Step by step, with a check at every step"), build),
        _page(
            "readings",
            "readings",
            _("Readings"),
            _("What the meter should show, and a blank for what it does"),
            readings_page(matter, cautions),
        ),
        *_hanging(matter, cautions),
        _page(
            "running",
            "running",
            _("Running it"),
            _("What it takes, when it is on, and how it stays well"),
            running_page(matter),
        ),
    )


def _figures(matter: Matter, build: BuildPage) -> tuple[Page, ...]:
    """What was solved and drawn."""
    numbers = {step.identity: step.number for group in build.groups for step in group.steps}
    return (
        _page(
            "wiring",
            "wiring",
            _("Wiring"),
            _("How everything is joined, and where to measure"),
            wiring_page(matter),
        ),
        _page(
            "numbers",
            "numbers",
            _("The numbers"),
            _("Every figure worked out, with its source"),
            numbers_page(matter, numbers),
        ),
        _page(
            "light", "light", _("Light along the run"), _("How bright each bulb will be"), light_page(matter)
        ),
        _page(
            "arrangements",
            "arrangements",
            _("Arrangements compared"),
            _("What else would do, and what each gains and costs"),
            arrangements_page(matter),
        ),
    )


def _page(name: str, template: str, title: str, purpose: str, model: PageModel) -> Page:
    return Page(f"{name}.html", title, purpose, f"{template}.html", model)


def _hanging(matter: Matter, cautions: tuple[Placed, ...]) -> tuple[Page, ...]:
    """The hanging plan, where the file has one."""
    plan = hanging_plan(matter.project, matter.arrangement)
    if plan is None:
        return ()
    purpose = _("Hooks, sag and pull, and where every bulb lands")
    model = hanging_page(matter, plan, cautions)
    return (Page("hanging.html", _("Hanging plan"), purpose, "hanging.html", model),)


def _electrician(matter: Matter, stop: Caution) -> Page:
    return Page(
        "electrician.html",
        _("For the electrician"),
        _("To hand to the licensed person before anything else"),
        "electrician.html",
        electrician_page(matter, stop),
    )


def _key(study: Study) -> str:
    """A hash of the project: all files opened from disk share one browser store.

    Of its names alone, so that ticks and readings outlive a mended value.
    """
    project = study.project
    names = [project.title, project.author, *project.strings, *(run.name or "" for run in project.runs or ())]
    return hashlib.sha256("\0".join(names).encode("utf-8")).hexdigest()[:_KEY_LETTERS]
