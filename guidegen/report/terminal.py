"""Text for a terminal, which may know fewer characters than the text has."""

from __future__ import annotations

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
        "…": "...",
        "\u00a0": " ",
        "\u202f": " ",
    }
)


def for_terminal(text: str, encoding: str | None) -> str:
    """`text` as a terminal of this `encoding` can show it (None: ASCII only).

    What it cannot show is written in plain letters where there is a usual
    way, else as a question mark; control characters other than line ends are
    taken out.
    """
    clean = "".join(letter for letter in text if letter == "\n" or letter.isprintable() or letter == "\u00a0")
    codec = encoding or "ascii"
    try:
        clean.encode(codec)
    except (UnicodeEncodeError, LookupError):
        return clean.translate(_PLAIN).encode("ascii", "replace").decode("ascii")
    return clean
