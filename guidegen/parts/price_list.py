"""What parts cost: the file's prices, and typical ones where it states none."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np

from guidegen.project.schema import Prices
from guidegen.tables import prices as typical

#: Prices that tell one arrangement from another: the supply and the cells are the same in all of them.
_COUNTED = ("wire", "resistor", "fuse", "joint")


@dataclass(frozen=True)
class PriceList:
    """Prices in one currency: a metre of one core by mm2, a resistor by its watts, fuse, joint.

    `typical`: which of them the file leaves out ("wire", "resistor", "fuse", "joint").
    """

    currency: str
    core_per_m: Mapping[float, float]
    resistor: Mapping[float, float]
    fuse: float
    joint: float
    typical: tuple[str, ...]

    def core_price(self, area_mm2: float) -> float:
        """A metre of one core: straight between the sizes of the list, flat beyond them."""
        return float(np.interp(area_mm2, list(self.core_per_m), list(self.core_per_m.values())))

    def resistor_price(self, rating_w: float) -> float:
        """One resistor of so many watts, likewise."""
        return float(np.interp(rating_w, list(self.resistor), list(self.resistor.values())))


def price_list(prices: Prices) -> PriceList:
    """The file's prices, and typical ones where it states none.

    A stated price belongs to one size; the others keep their typical ratio to it.
    """
    stated = {name: getattr(prices, name) for name in Prices.model_fields}
    given = [price.currency for price in stated.values() if price is not None]
    wire, resistor = prices.wire, prices.resistor
    two_core = 2 * typical.CORE_PER_M[typical.PRICED_MM2]
    wire_ratio = 1.0 if wire is None else wire.amount / two_core
    resistor_ratio = 1.0 if resistor is None else resistor.amount / typical.RESISTOR[typical.PRICED_W]
    return PriceList(
        currency=given[0] if given else typical.CURRENCIES[0],
        core_per_m={size: price * wire_ratio for size, price in typical.CORE_PER_M.items()},
        resistor={rating: price * resistor_ratio for rating, price in typical.RESISTOR.items()},
        fuse=typical.FUSE.value if prices.fuse is None else prices.fuse.amount,
        joint=typical.JOINT.value if prices.joint is None else prices.joint.amount,
        typical=tuple(name for name in _COUNTED if stated[name] is None),
    )
