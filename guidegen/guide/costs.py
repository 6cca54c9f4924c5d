"""What the lines of parts cost, and all of them together."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from guidegen.guide.blocks import LinePrice, PartLine
from guidegen.guide.matter import Matter
from guidegen.locale import _, ngettext
from guidegen.locale.numerals import fixed, money
from guidegen.parts.price_list import PriceList, price_list
from guidegen.tables.prices import PARTS
from guidegen.tables.supplies import SUPPLY_PRICE


@dataclass(frozen=True)
class Costs:
    """Prices of this build's parts, in one currency."""

    prices: PriceList
    currency: str
    supply_stated: float | None
    string_stated: float | None

    def supply(self) -> LinePrice:
        """The supply."""
        stated = self.supply_stated
        return self._price(SUPPLY_PRICE.value if stated is None else stated, typical=stated is None)

    def strings(self, count: int) -> LinePrice | None:
        """So many light strings; they differ too much for a typical price."""
        return None if self.string_stated is None else self._price(count * self.string_stated)

    def wire(self, cores: int, area_m2: float, length_m: float) -> LinePrice:
        """So much wire."""
        amount = cores * length_m * self.prices.core_price(area_m2 * 1e6)
        return self._price(amount, typical="wire" in self.prices.typical)

    def resistors(self, count: int, rating_w: float) -> LinePrice:
        """So many resistors of one rating."""
        amount = count * self.prices.resistor_price(rating_w)
        return self._price(amount, typical="resistor" in self.prices.typical)

    def fuse(self) -> LinePrice:
        """Fuse with its holder."""
        return self._price(self.prices.fuse, typical="fuse" in self.prices.typical)

    def joints(self, count: int) -> LinePrice:
        """Solder and sleeves of so many joints of one conductor."""
        return self._price(count * self.prices.joint, typical="joint" in self.prices.typical)

    def included(self) -> LinePrice:
        """A part whose price is in that of another line."""
        return LinePrice(0.0, _("included"), typical=False)

    def part(self, name: str, count: float = 1) -> LinePrice:
        """So many of a part in the table of typical prices."""
        return self._price(count * PARTS[name], typical=True)

    def _price(self, amount: float, *, typical: bool = False) -> LinePrice:
        return LinePrice(amount, fixed(amount, 2), typical)


def costs(matter: Matter) -> Costs:
    """Prices of a project: those of its file, typical ones for the rest."""
    prices, tariff = matter.project.prices, matter.project.tariff
    known = price_list(prices)
    stated = any(getattr(prices, name) is not None for name in type(prices).model_fields)
    return Costs(
        prices=known,
        currency=tariff.currency if tariff is not None and not stated else known.currency,
        supply_stated=None if prices.supply is None else prices.supply.amount,
        string_stated=None if prices.string is None else prices.string.amount,
    )


@dataclass(frozen=True)
class Total:
    """All lines together: money, how much of it by typical prices, and how many lines have no price."""

    amount: float
    typical: float
    not_priced: int
    currency: str


def total_of(lines: Sequence[PartLine], currency: str) -> Total:
    """Sum of the lines."""
    priced = [line.price for line in lines if line.price is not None]
    return Total(
        amount=sum(price.amount for price in priced),
        typical=sum(price.amount for price in priced if price.typical),
        not_priced=len(lines) - len(priced),
        currency=currency,
    )


def total_text(total: Total) -> tuple[str, ...]:
    """The total, what of it is typical, and what is missing, a sentence each."""
    text = [_("All priced lines together: {money}.").format(money=money(total.amount, total.currency))]
    if total.typical:
        text.append(
            _("Of that {money} by typical prices, own assumption, marked ~; they are no offers.").format(
                money=money(total.typical, total.currency)
            )
        )
    if total.not_priced:
        text.append(not_priced_text(total.not_priced))
    return tuple(text)


def not_priced_text(count: int) -> str:
    """How many lines have no price."""
    return ngettext(
        "{count} line has no price and is not in the total.",
        "{count} lines have no price and are not in the total.",
        count,
    ).format(count=count)
