"""Text for a terminal, which may know fewer characters than the text has."""

from __future__ import annotations

import codecs
from typing import TextIO

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
    clean = "".join(letter for letter in text if _may_be_shown(letter))
    codec = encoding or "ascii"
    try:
        clean.encode(codec, "surrogateescape")
    except (UnicodeEncodeError, LookupError):
        return "".join(letter if _is_plain(letter) else "?" for letter in clean.translate(_PLAIN))
    return clean


def show_any_letter(stream: TextIO) -> None:
    """Let the stream take any text: what it cannot show becomes a question mark.

    Names of files stay the bytes that the person typed, whatever language
    the terminal claims to know.
    """
    if hasattr(stream, "reconfigure"):
        codecs.register_error(_AS_TYPED, _as_typed)
        stream.reconfigure(errors=_AS_TYPED)


_AS_TYPED = "guidegen-as-typed"


def _as_typed(error: UnicodeError) -> tuple[bytes, int]:
    if not isinstance(error, UnicodeEncodeError):
        raise error
    letters = error.object[error.start : error.end]
    return b"".join(_byte_typed(letter) for letter in letters), error.end


def _byte_typed(letter: str) -> bytes:
    return bytes([ord(letter) - 0xDC00]) if _is_typed_byte(letter) else b"?"


def _is_typed_byte(letter: str) -> bool:
    """Whether the letter stands for one byte of a name that Python could not decode (PEP 383)."""
    return "\udc80" <= letter <= "\udcff"


def _is_plain(letter: str) -> bool:
    return letter.isascii() or _is_typed_byte(letter)


def _may_be_shown(letter: str) -> bool:
    return letter in "\n\u00a0" or letter.isprintable() or _is_typed_byte(letter)
