"""What hanging lights weigh and what hooks, wires and guide wires may bear, with where it is from."""

from __future__ import annotations

from guidegen.locale import N_
from guidegen.tables.sourced import Sourced

#: Standard gravity, m/s2 (exact, 3rd General Conference on Weights and Measures, 1901).
GRAVITY = 9.80665

_TYPICAL = N_("typical, no single source")
#: Two-wire cable of a string, kg/m, and its thickness, m.
WIRE_KG_PER_M = Sourced(0.010, _TYPICAL)
WIRE_DIAMETER_M = Sourced(0.003, _TYPICAL)
#: One bulb, kg, and its width, m.
BULB_KG = Sourced(0.003, _TYPICAL)
BULB_SIZE_M = Sourced(0.02, _TYPICAL)
#: Stranded steel wire of 2 mm, kg/m, and its thickness, m.
GUIDE_KG_PER_M = Sourced(0.016, _TYPICAL)
GUIDE_DIAMETER_M = Sourced(0.002, _TYPICAL)

#: Pull on a hook over its rating, at most.
HOOK_LOAD = Sourced(0.5, N_("common practice, no source"))
#: Pull in a guide wire over its breaking load, at most.
GUIDE_LOAD = Sourced(0.2, N_("common practice for wire rope, no source"))
#: Steady pull in a flexible cable over the copper area of all its conductors, Pa.
COPPER_PULL_PA = Sourced(15e6, N_("DIN VDE 0298-3, flexible cables, not checked against its text"))

#: Wire let hang below the level of a joint or an entry, so that rain drips off there, m of wire.
DRIP_LOOP_M = Sourced(0.10, N_("common practice, no source"))
#: Wire in a loop or clamp at each end of a guide wire, m.
GUIDE_END_M = Sourced(0.15, N_("common practice, no source"))
#: What a soldered joint takes from each of the two cables, m.
JOINT_TAKES_M = Sourced(0.02, N_("common practice, no source"))
#: Distance from tie to tie along a guide wire or at a hook, m.
TIE_EVERY_M = Sourced(0.30, N_("common practice, no source"))
#: Bought over needed.
RESERVE = Sourced(0.10, N_("common practice, no source"))

#: Density of annealed copper, kg/m3.
COPPER_KG_PER_M3 = Sourced(8890.0, N_("IEC 60028, not checked against its text"))
