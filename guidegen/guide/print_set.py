"""Print set: the sheets that go into the workshop, as one stack of paper."""

from __future__ import annotations

from guidegen.guide.pages import Page, PartsPage, PrintSetPage, ReadingsPage, SafetyPage
from guidegen.locale import _

_IN_THE_SET = (SafetyPage, PartsPage, ReadingsPage)


def with_print_set(pages: tuple[Page, ...]) -> tuple[Page, ...]:
    """The pages, and behind them the set of those that go into the workshop."""
    sheets = tuple(page.name for page in pages if isinstance(page.model, _IN_THE_SET))
    model = PrintSetPage(
        lead=(
            _("Safety, parts and readings for the workshop, one behind the other: print this one sheet."),
            _("Ticks and readings that are kept in this browser are printed too."),
        ),
        sheets=sheets,
    )
    purpose = _("Safety, parts and readings as one small stack of paper")
    return (*pages, Page("print-set.html", _("Print set"), purpose, "print-set.html", model))
