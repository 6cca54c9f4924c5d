"""Progress of a long search on standard error; a quick one says nothing."""

from __future__ import annotations

import time

import click

from guidegen.locale import _

#: Seconds before the first line, and between lines.
PATIENCE_S = 1.0


class Progress:
    """Says how far a search has come, at most once a second."""

    def __init__(self) -> None:
        self._next_s = time.monotonic() + PATIENCE_S

    def show(self, done: int, total: int) -> None:
        """Say it if it is time to."""
        now_s = time.monotonic()
        if now_s >= self._next_s:
            self._next_s = now_s + PATIENCE_S
            click.echo(
                _("comparing arrangements: {done} of {total}").format(done=done, total=total), err=True
            )
