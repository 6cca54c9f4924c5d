"""Rated currents that plug-in supplies are usually sold with."""

from __future__ import annotations

from guidegen.locale import N_
from guidegen.tables.sourced import Sourced

#: Ampere, ascending.
RATINGS_A = (0.5, 1.0, 1.5, 2.0, 2.5, 3.0, 4.0, 5.0, 6.0, 8.0, 10.0)
RATINGS_SOURCE = N_("usual ratings of plug-in supplies")

#: What a small plug-in supply takes with nothing connected, W.
STANDBY_W = Sourced(0.1, N_("limit for small supplies in EU 2019/1782, not checked against its text"))
#: What a timer between outlet and supply takes itself, W.
PLUG_TIMER_W = Sourced(0.8, N_("typical, no single source"))
#: Price of a small supply; the number stands for every currency, as in `tables.prices`.
SUPPLY_PRICE = Sourced(10.0, N_("typical, own assumption"))
#: How long lights are on where nothing is stated, hours a day.
EVENING_H = Sourced(5.0, N_("own assumption: an evening"))
#: Days of a month and of a season of lights.
MONTH_DAYS, SEASON_DAYS = 30, 90

#: Current under which a power bank takes its load for gone and switches off, A.
POWER_BANK_LEAST_A = Sourced(0.1, N_("typical, 50 to 100 mA, no single source"))
#: Volts of a power bank's output, lowest and highest.
POWER_BANK_V = (4.75, 5.25)
POWER_BANK_SOURCE = N_("USB 2.0")
#: What a power bank gives at its output over what its cells hold, and the volts its capacity is stated at.
POWER_BANK_EFFICIENCY = Sourced(0.85, N_("typical, no single source"))
POWER_BANK_CELL_V = Sourced(3.7, N_("usual rating of lithium cells"))
