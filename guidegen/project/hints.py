"""Which choice was probably meant by words that look like another choice, or like none."""

from __future__ import annotations

import re

from guidegen.locale import LANGUAGES

_VOLTS = re.compile(r"(\d+(?:[.,]\d+)?)\s*v", re.IGNORECASE)
_LEAST_MAINS_V = 90.0  # Japan's 100 V less a tenth: IEC 60038
_NEW = re.compile(
    r"\b(?:new|no|none|not|yet|add|install|fixed|hard\W?wired|wiring|junction)\b", re.IGNORECASE
)
_THERE = re.compile(r"\b(?:outlet|socket|plug|existing|wall|there)\b", re.IGNORECASE)
_MAINS = re.compile(r"\b(?:mains|line voltage|wall|household|ac)\b", re.IGNORECASE)
_CELLS = re.compile(r"\b(?:cells?|batter(?:y|ies)|usb|dc|adapter|low)\b", re.IGNORECASE)


def hinted(name: str, came: str) -> str | None:
    """The choice of the key `name` that was probably meant by `came`; None if that cannot be told."""
    if name == "mains":
        return _outlet(came)
    if name == "language":
        return _language(came)
    return _volts(came) if name == "runs_on" else None


def _language(came: str) -> str | None:
    """A language by its name, or by a tag with a country in it."""
    word = re.split(r"[-_ ]", came.strip().casefold())[0]
    return {"english": "en", "german": "de", "deutsch": "de"}.get(word, word if word in LANGUAGES else None)


def _outlet(came: str) -> str | None:
    """An outlet that is still to come is new wiring, however near the word is to the other choice."""
    if _NEW.search(came):
        return "new fixed wiring"
    return "existing outlet" if _THERE.search(came) else None


def _volts(came: str) -> str | None:
    """Mains by its volts or its name; any doubt is left to the person."""
    volts = [float(text.replace(",", ".")) for text in _VOLTS.findall(came)]
    if any(value >= _LEAST_MAINS_V for value in volts) or _MAINS.search(came):
        return "mains"
    return "low voltage" if volts or _CELLS.search(came) else None
