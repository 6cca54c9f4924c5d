"""Causes of deviating readings in words, for the terminal and for the guide."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import TYPE_CHECKING

from guidegen.circuit.arrangement import Arrangement
from guidegen.locale import _, ngettext
from guidegen.locale.numerals import fixed
from guidegen.report.amounts import percent

if TYPE_CHECKING:  # few projects have readings to explain
    from guidegen.bench.diagnose import Cause, Deciding, Diagnosis
    from guidegen.bench.faults import Fault
    from guidegen.bench.spots import Spot

#: Fit from which on a cause explains the readings well, and roughly.
WELL, ROUGHLY = 0.1, 0.005


@dataclass(frozen=True)
class Words:
    """How causes are told: the arrangement they are about, and how a value and its unit are shown."""

    arrangement: Arrangement
    show: Callable[[float, str], str]

    def run(self, index: int | None) -> str:
        """Name of a run."""
        return _("all runs") if index is None else self.arrangement.runs[index].name

    def spot(self, spot: Spot) -> str:
        """A place to read, with its run."""
        where = {
            "supply": _("at the supply"),
            "current": _("current in line"),
            "resistor volts": _("across the resistor"),
            "after resistor": _("behind the resistor"),
            "bulb": _("at bulb {bulb}").format(bulb=spot.bulb),
        }[spot.kind]
        if spot.kind == "supply":
            return where
        return _("{run}, {place}").format(run=self.run(spot.run), place=where)

    def cause(self, cause: Cause) -> str:
        """A cause with what the readings cannot tell from it."""
        text = self._fault(cause.fault, cause)
        others = dict.fromkeys(self._fault(twin) for twin in cause.twins)
        others.pop(text, None)
        if not others:
            return text
        return _("{cause} (or, with the same readings: {others})").format(
            cause=text, others="; ".join(others)
        )

    def fit(self, cause: Cause) -> str:
        """How well a cause fits, in a few words."""
        if cause.fit >= WELL:
            return _("explains all readings well")
        return _("explains them roughly") if cause.fit >= ROUGHLY else _("explains them badly")

    def ranked(self, cause: Cause, diagnosis: Diagnosis) -> str:
        """A cause, how well it fits, and its share of the evidence where that says something."""
        text, fit = self.cause(cause), self.fit(cause)
        if not diagnosis.can_tell or cause.fit < ROUGHLY:
            return _("{cause}: {fit}").format(cause=text, fit=fit)
        return _("{cause}: {fit}; weight {weight} of 100").format(
            cause=text, fit=fit, weight=fixed(100 * cause.weight, 0)
        )

    def next_reading(self, diagnosis: Diagnosis) -> str:
        """Which further reading to take."""
        if diagnosis.deciding is not None:
            return self.deciding(diagnosis.deciding, diagnosis.causes)
        if not diagnosis.can_tell:
            return _("Read the volts at the last bulb next.")
        return _("No further reading of volts tells the first two apart; look, and measure ohms unplugged.")

    def deciding(self, deciding: Deciding, causes: tuple[Cause, ...]) -> str:
        """The further reading that tells two faults apart."""
        return _("Read next: {place}. About {first} means {one}; about {second} means {other}.").format(
            place=self.spot(deciding.spot),
            first=self.show(deciding.if_first, "V"),
            second=self.show(deciding.if_second, "V"),
            one=self._numbered(deciding.first, causes),
            other=self._numbered(deciding.second, causes),
        )

    def _numbered(self, fault: Fault, causes: tuple[Cause, ...]) -> str:
        """A fault by the number of its cause, or in words where it shares that with others."""
        for number, cause in enumerate(causes, start=1):
            if cause.fault == fault and not cause.twins:
                return _("cause {number}").format(number=number)
        return _("“{fault}”").format(fault=self._fault(fault))

    def verdict(self, diagnosis: Diagnosis) -> str:
        """What the causes are worth, in a sentence."""
        if not diagnosis.can_tell:
            return _(
                "Without a reading at a bulb the cause cannot be told; these would all show such readings."
            )
        if diagnosis.causes[0].fit < ROUGHLY:
            return _("No single fault explains these readings; there may be two, or a reading is wrong.")
        return _("Likely causes, each worked out with this fault put in, best first:")

    def _fault(self, fault: Fault, cause: Cause | None = None) -> str:
        tell = {
            "resistor value": self._resistor,
            "resistor decade": self._resistor,
            "supply": self._supply,
            "reversed": self._reversed,
            "joint": self._joint,
            "dead leds": self._dead,
            "meter burden": self._burden,
            "more bulbs": self._more_bulbs,
        }
        if fault.kind == "open":
            return self._open(fault, cause)
        return tell[fault.kind](fault)

    def _resistor(self, fault: Fault) -> str:
        assert fault.run is not None
        return _("{run}: a resistor of {ohm} instead of {planned}").format(
            run=self.run(fault.run),
            ohm=self.show(fault.amount, "Ω"),
            planned=self.show(self.arrangement.runs[fault.run].resistor.ohm, "Ω"),
        )

    def _supply(self, fault: Fault) -> str:
        volts = self.arrangement.supply.voltage_v
        if fault.amount == 0:
            return _("the supply gives nothing: unplugged, no mains, or broken")
        return _("the supply gives about {volts} instead of {planned}").format(
            volts=self.show(fault.amount * volts, "V"), planned=self.show(volts, "V")
        )

    def _reversed(self, fault: Fault) -> str:
        assert fault.run is not None
        run = self.arrangement.runs[fault.run]
        first = 1 + sum(piece.bulbs for piece in run.pieces[: fault.piece])
        last = first + run.pieces[fault.piece].bulbs - 1
        return _("{run}: the string with bulbs {first} to {last} joined the wrong way round").format(
            run=run.name, first=first, last=last
        )

    def _open(self, fault: Fault, cause: Cause | None) -> str:
        if fault.place == "lead":
            return _("nothing gets past the fuse: blown, not in its holder, or the lead open")
        run, wire = self.run(fault.run), self._rail(fault)
        if fault.place == "behind bulb":
            first = fault.bulb if cause is None else cause.first.bulb
            last = fault.bulb if cause is None else cause.last.bulb
            if first == last:
                text = _("{run}: {wire} open from bulb {number} on")
            else:
                text = _("{run}: {wire} open somewhere from bulb {number} to bulb {last}")
            return text.format(run=run, wire=wire, number=first + 1, last=last + 1)
        return _("{run}: {wire} open {place}").format(run=run, wire=wire, place=self._place(fault))

    def _joint(self, fault: Fault) -> str:
        where = self._place(fault)
        if fault.place not in ("behind bulb", "lead-in", "extra wire"):
            text = _("{run}: about {ohm} too many {place}: a bad joint")
        else:
            text = _("{run}: about {ohm} too many in {wire} {place}: a bad joint")
        return text.format(
            run=self.run(fault.run), ohm=self.show(fault.amount, "Ω"), wire=self._rail(fault), place=where
        )

    def _dead(self, fault: Fault) -> str:
        return _("{run}: about {share} of the LEDs dead").format(
            run=self.run(fault.run), share=percent(fault.amount)
        )

    def _burden(self, fault: Fault) -> str:
        ohm = self.show(fault.amount, "Ω")
        if fault.run is None:
            return _("the meter in line has about {ohm} more than allowed for").format(ohm=ohm)
        return _("{run}: a meter of about {ohm} left in line").format(run=self.run(fault.run), ohm=ohm)

    def _more_bulbs(self, fault: Fault) -> str:
        count = max(1, round(fault.amount))
        text = ngettext(
            "{run}: about {count} bulb more than stated", "{run}: about {count} bulbs more than stated", count
        )
        return text.format(run=self.run(fault.run), count=count)

    @staticmethod
    def _rail(fault: Fault) -> str:
        return {"plus": _("plus"), "minus": _("minus"), "both": _("both wires")}[fault.rail]

    @staticmethod
    def _place(fault: Fault) -> str:
        assert fault.place is not None
        return {
            "lead": _("between the supply and the runs (lead, fuse holder)"),
            "ahead of resistor": _("ahead of the resistor"),
            "feeder": _("in the feeder"),
            "lead-in": _("where the feeder meets bulb 1"),
            "extra wire": _("in the extra wire or its joints"),
            "behind bulb": _("behind bulb {bulb}").format(bulb=fault.bulb),
        }[fault.place]
