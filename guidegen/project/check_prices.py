"""Checks of the prices."""

from __future__ import annotations

from collections.abc import Iterator

from guidegen.locale import _
from guidegen.project.complaint import Complaint
from guidegen.project.schema import Prices, Project


def one_currency(project: Project) -> Iterator[Complaint]:
    """All prices are in the currency of the first one."""
    stated = [(word, getattr(project.prices, word)) for word in Prices.model_fields]
    given = [(word, price) for word, price in stated if price is not None]
    for word, price in given[1:]:
        if price.currency != given[0][1].currency:
            expected = _("a price in {currency}, like that of {key}").format(
                currency=given[0][1].currency, key=given[0][0]
            )
            mend = _("write all prices in one currency")
            yield Complaint(("prices", word), expected, mend)


def tariff_currency(project: Project) -> Iterator[Complaint]:
    """Energy is paid in the currency of the prices."""
    stated = [getattr(project.prices, word) for word in Prices.model_fields]
    price = next((price for price in stated if price is not None), None)
    if project.tariff and price and project.tariff.currency != price.currency:
        expected = _("a price in {currency}, like those under prices").format(currency=price.currency)
        yield Complaint(("tariff",), expected, _("write all prices in one currency"))
