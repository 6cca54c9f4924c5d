"""What a check between several keys finds."""

from __future__ import annotations

from dataclasses import dataclass

from guidegen.project.keys import Key


@dataclass(frozen=True)
class Complaint:
    """Two keys that do not agree, told at one of them; `came` left empty is the value as written."""

    key: Key
    expected: str
    mend: str
    came: str = ""
