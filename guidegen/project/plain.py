"""Readers of single values without a unit: whole numbers, texts, codes.

A reader knows the words for what it expects, so that an error message
cannot drift from the check.  Values that carry a unit are in `quantities`.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Any

from pydantic_core import core_schema

from guidegen.locale import N_, _

NUMBER = r"[+-]?(?:[0-9]+\.?[0-9]*|\.[0-9]+)(?:[eE][+-]?[0-9]{1,3})?"
_COUNTED = 1000  # above it a bound tells a person nothing
LONGEST = 60  # characters; no value needs more, and arithmetic on a huge number is slow

SPACES = str.maketrans(dict.fromkeys("\u00a0\u2007\u2009\u202f", " "))
_MINUS = str.maketrans({"\u2212": "-", "\ufe63": "-", "\uff0d": "-"})


def plain_spaces(text: str) -> str:
    """The text with no-break spaces and the Unicode minus as keyboards have them."""
    return text.translate(SPACES).translate(_MINUS).strip()


class UnreadableError(ValueError):
    """A value cannot be read; `mend` tells how to put it right."""

    def __init__(self, mend: str) -> None:
        super().__init__(mend)
        self.mend = mend


class Reader:
    """A way to read one value; a subclass says how, and what it expects in words."""

    def expected(self) -> str:
        """What a person should write, in words."""
        raise NotImplementedError

    def read(self, value: Any) -> Any:
        """The value read; raises UnreadableError."""
        raise NotImplementedError

    def __get_pydantic_core_schema__(self, _source: Any, _handler: Any) -> core_schema.CoreSchema:
        return core_schema.no_info_plain_validator_function(self.read)


@dataclass(frozen=True)
class Number(Reader):
    """A plain number without a unit, within bounds; `whole` for counts."""

    low: float
    high: float
    whole: bool = True

    def expected(self) -> str:
        """What a person should write, in words."""
        form = (
            N_("a whole number from {low} to {high}") if self.whole else N_("a number from {low} to {high}")
        )
        if self.whole and self.high > _COUNTED:
            form = N_("a whole number, {low} or more, such as {example}")
        return _(form).format(low=self.low, high=self.high, example=max(12, self.low))

    def read(self, value: Any) -> float:
        """The number; raises UnreadableError."""
        text = plain_spaces(str(value)) if isinstance(value, str | int | float) else ""
        if not re.fullmatch(r"[+-]?[0-9]+" if self.whole else NUMBER, text) or len(text) > LONGEST:
            raise UnreadableError(self._mend_form(text))
        number = int(text) if self.whole else float(text)
        if not self.low <= number <= self.high:
            raise UnreadableError(self._mend_bounds(number))
        return number

    def _mend_bounds(self, number: float) -> str:
        if number > self.high:
            return _("write {high} or less").format(high=self.high)
        return _("write {low} or more").format(low=self.low)

    def _mend_form(self, text: str) -> str:
        if self.whole:
            return _("write the number alone, in digits, without unit, point or comma, such as 12")
        if re.fullmatch(r"[+-]?[0-9]*,[0-9]+", text):
            return _("write a decimal point, not a comma: {example}").format(example=text.replace(",", "."))
        return _("write the number alone, without a unit, with a decimal point if need be, such as 0.8")


@dataclass(frozen=True)
class GaugeReader(Reader):
    """An American wire gauge number."""

    finest: int = 40

    def expected(self) -> str:
        """What a person should write, in words."""
        return _("a wire gauge from 0 AWG to {finest} AWG, such as 28 AWG").format(finest=self.finest)

    def read(self, value: Any) -> int:
        """The gauge number; raises UnreadableError."""
        text = plain_spaces(str(value)) if isinstance(value, str | int) else ""
        pattern = r"([0-9]{1,2})\s*awg|awg\s*([0-9]{1,2})"
        match = re.fullmatch(pattern, f"{text} AWG" if isinstance(value, int) else text, re.IGNORECASE)
        if match is None:
            raise UnreadableError(_("write the gauge number and AWG; for mm2 use the key area"))
        number = int(match[1] or match[2])
        if number > self.finest:
            raise UnreadableError(_("check the gauge number; a larger number is a thinner wire"))
        return number


@dataclass(frozen=True)
class Text(Reader):
    """Text on one line, within a length in characters."""

    shortest: int
    longest: int

    def expected(self) -> str:
        """What a person should write, in words."""
        return _("text of {shortest} to {longest} characters").format(
            shortest=self.shortest, longest=self.longest
        )

    def read(self, value: Any) -> str:
        """The text with single spaces; raises UnreadableError."""
        if not isinstance(value, str):
            raise UnreadableError(_("write the text on the key's own line; put straight quotes around it"))
        text = " ".join(value.split())
        if len(text) < self.shortest:
            raise UnreadableError(_("write some text"))
        if len(text) > self.longest:
            raise UnreadableError(
                _("shorten it by {count} characters").format(count=len(text) - self.longest)
            )
        return text


@dataclass(frozen=True)
class IpCode(Reader):
    """The IP code marked on an enclosure; form after IEC 60529."""

    def expected(self) -> str:
        """What a person should write, in words."""
        return _("an IP code as marked, such as IP20, IP44 or IPX4")

    def read(self, value: Any) -> str:
        """The code in capitals without spaces; raises UnreadableError."""
        code = "".join(value.split()).upper() if isinstance(value, str) else ""
        if not re.fullmatch(r"IP[0-6X](?:[0-9X]|9K)[A-D]?[HMSW]*", code):
            raise UnreadableError(
                _("copy the two characters behind IP from the label; X stands for not tested")
            )
        return code


_ANSWERS = {
    **dict.fromkeys(("yes", "y", "true", "on"), "yes"),
    **dict.fromkeys(("no", "n", "false", "off"), "no"),
    **dict.fromkeys(("unknown", "?", "not known"), "unknown"),
}


@dataclass(frozen=True)
class Answer(Reader):
    """Yes or no as people write them; `unknown` where that is an answer too."""

    unknown: bool = False

    def expected(self) -> str:
        """What a person should write, in words."""
        return _("yes, no or unknown") if self.unknown else _("yes or no")

    def read(self, value: Any) -> str:
        """One of "yes", "no", "unknown"; raises UnreadableError."""
        answer = _ANSWERS.get(plain_spaces(value).casefold()) if isinstance(value, str) else None
        if answer is None:
            raise UnreadableError(_("write one of these words alone, without a remark"))
        if answer == "unknown" and not self.unknown:
            raise UnreadableError(
                _("leave the key out if you do not know; the cautious answer is then taken")
            )
        return answer
