"""Typical prices of small parts, for comparing arrangements: points to go by, not offers.

The same number stands for euro, dollar, pound and franc: a price differs
more from shop to shop than these currencies do.
"""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from guidegen.locale import N_
from guidegen.tables.sourced import Sourced

SOURCE = N_("typical, own assumption")

#: One metre of one core by mm2; two-core wire counts twice.
CORE_PER_M: Mapping[float, float] = MappingProxyType({0.25: 0.25, 0.5: 0.35, 0.75: 0.50, 1.5: 0.80})
#: Size that a stated price of wire belongs to, mm2.
PRICED_MM2 = 0.5
#: One resistor by its rating in watt.
RESISTOR: Mapping[float, float] = MappingProxyType(
    {0.25: 0.10, 0.5: 0.15, 1.0: 0.25, 2.0: 0.35, 3.0: 0.50, 5.0: 0.60, 7.0: 0.80, 10.0: 1.00}
)
#: Rating that a stated price of a resistor belongs to, watt.
PRICED_W = 5.0
#: Fuse with its holder.
FUSE = Sourced(2.50, SOURCE)
#: Solder and sleeve of one soldered joint of one conductor.
JOINT = Sourced(0.15, SOURCE)
#: Other parts, one each; "terminal" is one way of a connector, "sleeve" and "guide wire" are by the metre.
PARTS: Mapping[str, float] = MappingProxyType(
    {
        "socket": 2.00,
        "terminal": 0.40,
        "box": 6.00,
        "enclosure": 18.00,
        "sleeve": 1.50,
        "tie": 0.05,
        "label": 0.10,
        "hook": 0.40,
        "guide wire": 0.60,
    }
)

#: Sizes of wire that an arrangement is looked for in, mm2, thinnest first.
CHOICE_MM2: tuple[float, ...] = tuple(CORE_PER_M)
#: Money that the numbers may stand for; the first where the file states no price.
CURRENCIES = ("EUR", "USD", "GBP", "CHF", "CAD", "AUD")
