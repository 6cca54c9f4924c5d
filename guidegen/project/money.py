"""Prices as a person writes them: a number and a currency, "1.20 EUR"."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Any

from guidegen.locale import _
from guidegen.project.plain import LONGEST, NUMBER, Reader, UnreadableError, plain_spaces
from guidegen.tables.prices import CURRENCIES

MOST = 100_000.0
_SIGNS = {"€": "EUR", "£": "GBP", "US$": "USD", "C$": "CAD", "A$": "AUD"}
_PRICE = re.compile(rf"({NUMBER})\s*(\D*)", re.DOTALL)
_COMMA = re.compile(r"[+-]?[0-9]*,[0-9]")


@dataclass(frozen=True)
class Price:
    """An amount of money in a currency, by its code of three letters."""

    amount: float
    currency: str


@dataclass(frozen=True)
class PriceReader(Reader):
    """A price, nothing or more."""

    def expected(self) -> str:
        """What a person should write, in words."""
        return _("a price with its currency ({currencies}), such as 1.20 EUR").format(
            currencies=", ".join(CURRENCIES)
        )

    def read(self, value: Any) -> Any:
        """The price; raises UnreadableError."""
        if isinstance(value, Price):
            return value
        text = plain_spaces(value) if isinstance(value, str) else ""
        if _COMMA.match(text):
            own = text.replace(",", ".", 1)
            example = own if _PRICE.fullmatch(own) else "1.20 EUR"
            raise UnreadableError(
                _("write a decimal point, not a comma, such as {example}").format(example=example)
            )
        match = _PRICE.fullmatch(text) if len(text) <= LONGEST else None
        if match is None:
            raise UnreadableError(_("write the number first, then the currency, such as 1.20 EUR"))
        return Price(_amount(match[1]), _currency(match[2]))


@dataclass(frozen=True)
class TariffReader(PriceReader):
    """The price of a kilowatt hour, read as a Price for one kWh."""

    def expected(self) -> str:
        """What a person should write, in words."""
        return _("a price of a kilowatt hour ({currencies}), such as 0.30 EUR/kWh").format(
            currencies=", ".join(CURRENCIES)
        )

    def read(self, value: Any) -> Any:
        """The price of one kilowatt hour; raises UnreadableError."""
        if isinstance(value, Price):
            return value
        text = plain_spaces(value) if isinstance(value, str) else ""
        price, slash, unit = (part.strip() for part in text.rpartition("/"))
        if not slash or unit.casefold() != "kwh":
            raise UnreadableError(_("write the price of one kilowatt hour, such as 0.30 EUR/kWh"))
        if _COMMA.match(price):
            raise UnreadableError(_("write a decimal point, not a comma, such as 0.30 EUR/kWh"))
        return super().read(price)


def _amount(number: str) -> float:
    amount = float(number)
    if amount < 0:
        raise UnreadableError(_("write it without the minus sign"))
    if not amount <= MOST:
        raise UnreadableError(_("check the number; no part of such a build costs that much"))
    return amount


def _currency(text: str) -> str:
    code = _SIGNS.get(text.strip(), text.strip().upper())
    if code not in CURRENCIES:
        raise UnreadableError(
            _("write one of {currencies} behind the number").format(currencies=", ".join(CURRENCIES))
        )
    return code
