"""What current a wire may carry, and what a cord for that current would be."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from guidegen.locale import N_
from guidegen.tables.sourced import Sourced

#: Largest lasting current at 30 degC in a multicore cable, ampere by mm2.
LIMIT_A: Mapping[float, float] = MappingProxyType(
    {0.05: 1.0, 0.14: 2.0, 0.25: 4.0, 0.34: 6.0, 0.5: 9.0, 0.75: 12.0}
)
LIMIT_SOURCE = N_("DIN VDE 0100, small conductors, as quoted")
#: Air temperature the limits hold at, degC.
LIMIT_DEGC = 30.0
#: Current that surely opens the protection, over the wire's limit, at most.
OVERLOAD_FACTOR = Sourced(1.45, N_("IEC 60364-4-43, clause 433.1, not checked against its text"))

#: Cord of a mains appliance, mm2 by its rated current up to and including (ampere).
CORD_MM2: Mapping[float, float] = MappingProxyType({3.0: 0.5, 6.0: 0.75, 10.0: 1.0, 16.0: 1.5})
CORD_SOURCE = N_("IEC 60335-1, Table 11 (mains cords; a comparison, not a limit for this use)")
#: Longest cord for which the first row holds, metre.
SHORT_CORD_M = Sourced(2.0, CORD_SOURCE)
