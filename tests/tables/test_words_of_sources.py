"""What a reader is told of a source: the standard, and honestly whether its text was looked at."""

from __future__ import annotations

import ast
from collections.abc import Iterator
from pathlib import Path

PACKAGE = Path(__file__).parents[2] / "guidegen"
TRANSLATED = ("_", "N_", "ngettext")


def shown() -> Iterator[str]:
    """Every sentence that passes through translation."""
    for path in sorted(PACKAGE.rglob("*.py")):
        for node in ast.walk(ast.parse(path.read_text("utf-8"))):
            if isinstance(node, ast.Call) and getattr(node.func, "id", "") in TRANSLATED:
                yield from (
                    part.value
                    for part in node.args
                    if isinstance(part, ast.Constant) and isinstance(part.value, str)
                )


def test_no_reader_is_told_of_anybody_s_memory() -> None:
    assert [text for text in shown() if "memory" in text] == []


def test_a_standard_whose_text_was_not_looked_at_is_said_to_be_so() -> None:
    """The clause on overload, quoted without its text at hand, shows that the words are in use."""
    assert "IEC 60364-4-43, clause 433.1, not checked against its text" in set(shown())
