"""One small tree of errors; the parts are kept as fields and the text is composed late.

Every error a person can cause derives from `GuidegenError`, which the
command line shows without a traceback and turns into an exit status.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import IO, Any

import click

from guidegen.locale import _, ngettext
from guidegen.paths import as_typed

MOST_SHOWN = 100  # faults; a file that is no project at all can have a hundred thousand


class GuidegenError(click.ClickException):
    """The project cannot be carried on with; exit status 1."""

    exit_code = 1

    def show(self, file: IO[Any] | None = None) -> None:
        """Write the message to standard error, as it stands."""
        click.echo(as_typed(self.format_message()), err=True, file=file)


@dataclass(frozen=True)
class Fault:
    """One thing wrong in a project file.

    `key` is the path of keys ("strings.drop.spacing", "runs[2].feed"), empty
    for the file as a whole; `line` and `column` count from 1 and are None
    when the fault has no place in the text.
    """

    file: str
    line: int | None
    column: int | None
    key: str
    came: str
    expected: str
    mend: str

    def text(self) -> str:
        """The fault in full, as shown to the person who wrote the file."""
        place = ":".join(str(part) for part in (self.file, self.line, self.column) if part is not None)
        head = f"{place}: {self.key}" if self.key else place
        lines = [
            f"{head}",
            f"  {_('came:')}     {self.came}",
            f"  {_('expected:')} {self.expected}",
            f"  {_('mend:')}     {self.mend}",
        ]
        return "\n".join(lines)


class ProjectError(GuidegenError):
    """The project file has faults; all of them are told at once."""

    def __init__(self, faults: tuple[Fault, ...]) -> None:
        super().__init__("")
        self.faults = faults

    def format_message(self) -> str:
        """Every fault (of very many, the first), then their number if they stand in a text."""
        count, shown = len(self.faults), self.faults[:MOST_SHOWN]
        if all(fault.line is None for fault in shown):
            return "\n".join(fault.text() for fault in shown)
        total = ngettext("{count} error in the project file", "{count} errors in the project file", count)
        if count > MOST_SHOWN:
            total = _("more than {count} errors in the project file; the first {count} are shown")
        return "\n".join([*(fault.text() for fault in shown), total.format(count=len(shown))])


class OutputError(GuidegenError):
    """The guide cannot be written where it was asked for; nothing was changed."""
