"""Text for a terminal, which may know fewer characters than the text has."""

from __future__ import annotations

from guidegen.paths import as_typed

_PLAIN = str.maketrans(
    {
        "Ω": "ohm",
        "²": "2",
        "°": "deg",
        "µ": "u",
        "×": "x",
        "·": "*",
        "−": "-",
        "–": "-",
        "—": "-",
        "±": "+-",
        "≤": "<=",
        "≥": ">=",
        "“": '"',
        "”": '"',
        "‘": "'",
        "’": "'",
        "„": '"',
        "‚": "'",
        "ä": "ae",
        "ö": "oe",
        "ü": "ue",
        "Ä": "Ae",
        "Ö": "Oe",
        "Ü": "Ue",
        "ß": "ss",
        "€": "EUR",
        "…": "...",
        "\u00a0": " ",
        "\u202f": " ",
    }
)


def for_terminal(text: str, encoding: str | None) -> str:
    """`text` as a terminal of this `encoding` can show it (None: ASCII only).

    What it cannot show is written in plain letters where there is a usual
    way, else as a question mark; control characters other than line ends are
    taken out.  Names of files stay as they were typed.
    """
    clean = "".join(letter for letter in text if _may_be_shown(letter))
    try:
        clean.encode(encoding or "ascii", "surrogateescape")
    except (UnicodeEncodeError, LookupError):
        plain = clean.translate(_PLAIN)
        clean = "".join(letter if letter.isascii() or _is_typed(letter) else "?" for letter in plain)
    return as_typed(clean)


def _may_be_shown(letter: str) -> bool:
    return letter in "\n\u00a0" or letter.isprintable() or _is_typed(letter)


def _is_typed(letter: str) -> bool:
    """Whether the letter stands for one byte of a name that Python could not decode (PEP 383)."""
    return "\udc80" <= letter <= "\udcff"
