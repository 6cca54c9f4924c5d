"""Limits and assumptions that safety and worst cases rest on, each with its source."""

from __future__ import annotations

from dataclasses import dataclass

from guidegen.locale import N_
from guidegen.tables.sourced import Sourced

_ELV = N_("IEC 61140, extra-low voltage")
ELV_DC_V = Sourced(120.0, _ELV)
ELV_AC_V = Sourced(50.0, _ELV)

_BARE = N_("IEC 60364-4-41, clause 414.4.5")
DRY_WITHOUT_BASIC_DC_V = Sourced(60.0, _BARE)
DRY_WITHOUT_BASIC_AC_V = Sourced(25.0, _BARE)
WET_WITHOUT_BASIC_DC_V = Sourced(30.0, _BARE)
WET_WITHOUT_BASIC_AC_V = Sourced(12.0, _BARE)

_ES1 = N_("IEC 62368-1")
ES1_DC_V = Sourced(60.0, _ES1)
PS2_W = Sourced(100.0, _ES1)

_PLACE = N_("DIN VDE 0100-737")
EXPOSED_IPX = Sourced(3, _PLACE)
ROOFED_IPX = Sourced(1, _PLACE)
SUPPLY_OUTDOORS_IPX = Sourced(4, N_("own policy"))
NEAR_WATER_M = Sourced(3.5, N_("own policy"))

#: Lowest point of a wire above ground that people walk on, m.
OVER_PATH_M = Sourced(2.5, N_("arm's reach of IEC 60364-4-41 Annex B (not checked against its text)"))
#: From ladder, pole and wire to an overhead power line, m.
OVERHEAD_LINE_M = Sourced(3.0, N_("common practice; the network operator may ask for more"))
#: Residual current at which an outlet's protection must act, ampere.
RCD_A = Sourced(0.03, N_("IEC 60364-4-41 cl. 411.3.3 (not checked against its text)"))
#: From low-voltage wire to mains wire, m.
WIRE_TO_MAINS_M = Sourced(0.05, N_("NEC 725.136 and IEC 60364-4-41 cl. 414.4 (not checked against its text)"))
#: Lowest joint outdoors above ground, m.
JOINT_ABOVE_GROUND_M = Sourced(0.3, N_("own policy"))

#: Largest reverse volts of one LED, V.
LED_REVERSE_V = Sourced(5.0, N_("usual in LED data sheets"))

#: Worst running current over the fuse's rating, at most.
FUSE_LOAD = Sourced(0.8, N_("common practice, no source"))
#: Running watts of a resistor over its rating, at most.
RESISTOR_LOAD = Sourced(0.5, N_("common practice, no source"))
#: Worst supply current over its rating, at most.
SUPPLY_LOAD = Sourced(0.8, N_("common practice, no source"))
#: A wire may be so much shorter than its way over the hooks, m.
WAY_TOLERANCE_M = Sourced(0.02, N_("own policy"))
#: A wire far longer than its way is more than this many times as long, and so many metres more.
WAY_SPARE = Sourced(1.5, N_("own policy"))
WAY_SPARE_M = Sourced(1.0, N_("own policy"))
#: Reading of a few ohms over the meter leads' own, at least.
LEADS_MULTIPLE = Sourced(2.0, N_("own policy"))

LIGHTING_DROP = Sourced(0.03, N_("IEC 60364-5-52, Table G.52.1 (a comparison, not a limit for this use)"))
ELV_LIGHTING_DROP = Sourced(
    0.05, N_("IEC 60364-7-715 as DIN VDE 0100-715:2006 (a comparison, not a limit for this use)")
)
SIGNIFICANT_LIGHT_FACTOR = Sourced(1.5, N_("EN 12464-1, smallest significant difference in illuminance"))

_TOUCH = N_("EN ISO 13732-1, burn threshold for a touch of one second, not checked against its text")
TOUCH_CERAMIC_DEGC = Sourced(80.0, _TOUCH)
TOUCH_METAL_DEGC = Sourced(65.0, _TOUCH)
#: Above this a surface gets a caution and stays clear of plastic, hot glue and foam, degC.
HOT_SURFACE_DEGC = Sourced(
    60.0,
    N_(
        "own policy, below the burn thresholds of EN ISO 13732-1 (65 °C bare metal, "
        "not checked against its text)"
    ),
)


#: What a small plug-in supply gives over what it takes in, and its power factor.
SMALL_SUPPLY_EFFICIENCY = Sourced(0.7, N_("own assumption"))
SMALL_SUPPLY_POWER_FACTOR = Sourced(0.5, N_("own assumption"))
#: Nominal mains volts.
MAINS_V = (Sourced(230.0, N_("IEC 60038")), Sourced(120.0, N_("ANSI C84.1, not checked against its text")))


@dataclass(frozen=True)
class LimitedPower:
    """A row of the limited power source table: up to `to_v` open circuit, ampere and volt-ampere."""

    to_v: float
    current_a: float
    va_per_v: float | None
    va: float | None


LIMITED_POWER = (LimitedPower(20.0, 8.0, 5.0, None), LimitedPower(30.0, 8.0, None, 100.0))
LIMITED_POWER_SOURCE = N_("IEC 60950-1, Table 2B (superseded by IEC 62368-1)")


def limited_power_a(voltage_v: float) -> float:
    """Largest current of a limited power source of some volts, ampere; zero beyond the table's last row."""
    for row in LIMITED_POWER:
        if voltage_v <= row.to_v:
            watts = row.va if row.va is not None else (row.va_per_v or 0.0) * voltage_v
            return min(row.current_a, watts / voltage_v)
    return 0.0


@dataclass(frozen=True)
class Spread:
    """How far a quantity may lie from its nominal, as shares of it: `low` below, `high` above."""

    low: float
    high: float
    source: str


#: Below the resistance of a stated area or gauge; above it the standards' maximum counts.
STATED_WIRE_BELOW = Sourced(0.05, N_("own assumption"))
MEASURED_WIRE = Spread(0.02, 0.02, N_("own assumption"))


@dataclass(frozen=True)
class MeterRange:
    """Accuracy of a usual hand-held meter: share of the reading, and digits of `step` (SI)."""

    share: float
    digits: int
    step: float
    source: str


_METER = N_("own assumption: a usual hand-held meter")
#: What most makers of meters of 2,000 to 6,000 counts state for DC volts up to 20 V, from memory; the
#: digits are of the 20 V range, on which a supply of 5 or 12 V is read.
METER_VOLTS = MeterRange(0.005, 2, 0.01, _METER)
METER_AMPERES = MeterRange(0.01, 3, 1e-4, _METER)
METER_OHMS = MeterRange(0.01, 3, 0.1, _METER)
#: Largest current of its milliampere range, ampere; above it the 10 A socket is used.
METER_MILLIAMPERES_TO_A = Sourced(0.4, _METER)
METER_TEN_AMPERES = MeterRange(0.015, 3, 0.01, _METER)
#: Resistance of such a meter on its 10 A range, leads included, ohm.
METER_TEN_AMPERES_BURDEN_OHM = Sourced(0.05, _METER)
#: Resistance of such a meter on its milliampere range, leads included, ohm.
METER_BURDEN_OHM = Sourced(1.5, N_("common practice, no source"))

#: Largest current of one LED where nothing is known of it, ampere.
TYPICAL_MAX_LED_A = Sourced(0.006, N_("own assumption: battery strings run their LEDs at 0.5 to 4 mA"))
#: Mean LED current aimed at where no goal is stated, ampere.
TYPICAL_LED_A = Sourced(0.003, N_("own assumption: battery strings run their LEDs at 0.5 to 4 mA"))
#: Coldest and warmest air in use where the file states none, degC.
COLDEST_INDOORS_DEGC = Sourced(10.0, N_("own assumption"))
COLDEST_OUTDOORS_DEGC = Sourced(-10.0, N_("own assumption"))
WARMEST_DEGC = Sourced(35.0, N_("own assumption"))
#: Mean LED current under which a run counts as dark, ampere.
LEAST_LED_A = Sourced(0.0001, N_("own assumption: a fifth of the least that battery strings run at"))
