"""Checks of the supply."""

from __future__ import annotations

from collections.abc import Iterator

from guidegen.locale import _
from guidegen.project.complaint import Complaint
from guidegen.project.schema import Supply
from guidegen.tables.limits import limited_power_a


def limited_power(supply: Supply) -> Iterator[Complaint]:
    """A limited power source cannot be rated for more than such a source may give."""
    most = limited_power_a(supply.voltage)
    if supply.limited_power == "yes" and supply.rated_current > most:
        expected = _("no, since a limited power source of {volts:g} V gives at most {most:g} A").format(
            volts=supply.voltage, most=most
        )
        mend = _("read the marks again: Class II, the double square, is another mark than LPS or Class 2")
        yield Complaint(("supply", "limited_power"), expected, mend)
