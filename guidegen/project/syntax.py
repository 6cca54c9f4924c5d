"""YAML's own errors in plain words."""

from __future__ import annotations

import re

import yaml

from guidegen.errors import Fault
from guidegen.locale import N_, _
from guidegen.project.source import place_in
from guidegen.project.writing import one_line

_NO_CHARACTER = re.compile(r"\\U(?!000|0010)[0-9A-Fa-f]{8}")  # an escape beyond the last character

# A piece of the parser's message, what was expected, how to mend it; the
# first that fits counts.  The `scanning a quoted` rows stand before the general ones.
_WORDS = (
    ("\\t", N_("spaces, not tabs"), N_("replace the tab by spaces; set your editor to insert spaces")),
    (
        "mapping values are not allowed",
        N_("one key and one value on a line, with keys of one level in one column"),
        N_("line the key up with its neighbours; put straight quotes around text that has a colon in it"),
    ),
    (
        "could not find expected ':'",
        N_("a key, a colon, a space and a value"),
        N_("write the line as `key: value`, with a space behind the colon"),
    ),
    (
        "scanning a quoted scalar",
        N_("text with quotes at both ends"),
        N_("close the quotes; in double quotes write a backslash twice"),
    ),
    (
        "scanning a double-quoted scalar",
        N_("text in double quotes, in which a backslash begins a code"),
        N_("write the backslash twice, or use single quotes"),
    ),
    (
        "while scanning an a",
        N_("a name behind * or &"),
        N_("put straight quotes around text that begins with * or &"),
    ),
    (
        "parsing a flow",
        N_("a comma between the entries and a bracket at the end"),
        N_("close every { with } and every [ with ], and put commas between the entries"),
    ),
    (
        "but found '}'",
        N_("as many brackets closed as opened"),
        N_("delete the bracket too many"),
    ),
    (
        "but found ']'",
        N_("as many brackets closed as opened"),
        N_("delete the bracket too many"),
    ),
    (
        "parsing a block",
        N_("keys of one level in one column, and dashes of one list in one column"),
        N_("line this line up with the lines above that belong to the same level"),
    ),
    (
        "cannot start any token",
        N_("a value that begins with a letter, a digit or a quote"),
        N_("put straight quotes around the text"),
    ),
    (
        "expected the node content",
        N_("a value"),
        N_("write a value, or delete the stray sign"),
    ),
    (
        "tag",
        N_("plain values, without tags"),
        N_("put straight quotes around text that begins with !"),
    ),
    (
        "block scalar",
        N_("indented lines of text below | or >"),
        N_("indent every line of the text by the same spaces, or put the text in straight quotes"),
    ),
    (
        "document start",
        N_("keys in the first column, each with a colon behind it"),
        N_("line this line up with the lines above, and write it as `key: value`"),
    ),
    (
        "directive",
        N_("keys and values"),
        N_("delete the line that begins with %"),
    ),
)
_BEHIND_VALUE = (
    "",
    N_("nothing more behind the value"),
    N_("put straight quotes around the whole text, or begin a new line"),
)
_OTHER = ("", N_("keys and values in YAML"), N_("compare the line with the sample project and write it anew"))


def syntax_fault(error: Exception, text: str, name: str) -> Fault:
    """The fault behind an error of the YAML parser."""
    line, column = _place(error, text)
    written = text.split("\n")[line - 1] if line else ""
    _piece, expected, mend = _row(_message(error), written[: (column or 1) - 1])
    return Fault(name, line, column, "", one_line(written) or _("the end of the file"), _(expected), _(mend))


def _row(message: str, before: str) -> tuple[str, str, str]:
    """The words for a message, by what stands before the place on its line."""
    row = next((row for row in _WORDS if row[0] in message), _OTHER)
    behind_value = row[0] == "parsing a block" and before.strip(" -")
    return _BEHIND_VALUE if behind_value else row


def _message(error: Exception) -> str:
    if isinstance(error, yaml.MarkedYAMLError):
        return f"{error.context} {error.problem}"
    return str(error) if isinstance(error, yaml.YAMLError) else "scanning a double-quoted scalar"


def _place(error: Exception, text: str) -> tuple[int | None, int | None]:
    """Where to look: at the start of an unclosed key, quote or bracket, else where the parser stopped."""
    if not isinstance(error, yaml.MarkedYAMLError):
        return place_in(text, found.start()) if (found := _NO_CHARACTER.search(text)) else (None, None)
    opened = ("simple key", "quoted scalar", "flow")
    begun = error.context_mark and any(word in (error.context or "") for word in opened)
    mark = error.context_mark if begun else error.problem_mark or error.context_mark
    return (mark.line + 1, mark.column + 1) if mark else (None, None)
