"""Paths of keys: where something stands in a project file."""

from __future__ import annotations

from guidegen.project.writing import one_line

Key = tuple[str | int, ...]


def key_text(key: Key) -> str:
    """The path as a person counts: ("runs", 1, "feed") is "runs[2].feed"."""
    text = ""
    for step in key:
        if isinstance(step, int):
            text += f"[{step + 1}]"
        else:
            text += f".{one_line(step) or repr(step)}" if text else one_line(step) or repr(step)
    return text
