"""A published or assumed number, never apart from where it comes from."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class Sourced:
    """One number and its source; the source says so when it was not checked against its text, or assumed.

    The unit stands in the name of the constant that holds it.
    """

    value: float
    source: str
