"""How texts of a project file are shown in messages, and what word processors do to them."""

from __future__ import annotations

from collections.abc import Iterable
from difflib import get_close_matches

LONGEST_SHOWN = 80
_QUOTES = {"“": "”", "„": "“”", "‘": "’", "‚": "‘’", "«": "»", "»": "«"}


def one_line(text: str) -> str:
    """The text on one line, shortened, with nothing in it that a terminal would obey."""
    shown = " ".join(text[: 4 * LONGEST_SHOWN].split())
    shown = "".join(character if character.isprintable() else "\ufffd" for character in shown)
    return shown if len(shown) <= LONGEST_SHOWN else f"{shown[: LONGEST_SHOWN - 1]}…"


def without_smart_quotes(text: str) -> str:
    """The text without a pair of typographic quotes around it."""
    stripped = text.strip()
    if len(stripped) > 1 and stripped[-1] in _QUOTES.get(stripped[0], ""):
        return stripped[1:-1]
    return text


def nearest(word: str, known: Iterable[str]) -> str | None:
    """The known word that was probably meant, whatever its case, hyphens or blanks."""
    by_form = {_form(name): name for name in known}
    found = get_close_matches(_form(word), by_form, n=1, cutoff=0.65)
    return by_form[found[0]] if found else None


def _form(word: str) -> str:
    return "".join(" " if character in "_-" else character for character in word[:60].casefold()).strip()
