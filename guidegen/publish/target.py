"""Where the guide goes: the refusals that keep a maker's own files safe."""

from __future__ import annotations

import os
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path

from guidegen.errors import OutputError
from guidegen.locale import _, ngettext
from guidegen.publish.manifest import Foreign, find_foreign, holds_makers_files, read_manifest

_NAMES_TOLD = 12


def settle_target(out: Path) -> Path:
    """The absolute path of the guide's folder, symbolic links in its parents resolved.

    Raises OutputError for a target that is no place for a guide: a file, a
    symbolic link, the current folder or one above it.
    """
    named = out.name not in ("", "..")
    target = out.parent.resolve() / out.name if named else out.resolve()
    if target.is_symlink():
        raise OutputError(
            _("{folder} is a symbolic link. Name the folder itself with --out.").format(folder=target)
        )
    if target.exists() and not target.is_dir():
        raise OutputError(
            _("{folder} is a file, and the guide is a folder. Name another folder with --out.").format(
                folder=target
            )
        )
    if Path.cwd().is_relative_to(target):
        raise OutputError(
            _(
                "The guide's folder is replaced as a whole, so it cannot be the folder you are in, "
                "or one above it: {folder}. Name a new folder with --out."
            ).format(folder=target)
        )
    return target


def refuse_foreign(folder: Path, shown_as: Path | None = None) -> None:
    """Raise OutputError when the folder holds anything that guidegen did not write.

    `shown_as` is the name to tell the maker, where the folder has been moved.
    """
    if not folder.is_dir() or not any(folder.iterdir()):
        return
    hashes = read_manifest(folder)
    if hashes is None and holds_makers_files(folder):
        raise OutputError(
            _(
                "{folder} is not empty, and guidegen did not write it. Nothing was changed. "
                "Name a new or empty folder with --out."
            ).format(folder=shown_as or folder)
        )
    foreign = find_foreign(folder, hashes or {})
    if foreign:
        raise OutputError(_foreign_message(shown_as or folder, foreign))


def _foreign_message(folder: Path, foreign: Foreign) -> str:
    """Names the maker's files, and what to do with them."""
    head = _("{folder} holds files that guidegen did not write, or that were edited since.")
    if not foreign.edited:
        head = _("{folder} holds files that guidegen did not write.")
    if not foreign.added:
        head = _("{folder} holds files that were edited since guidegen wrote them.")
    lines = [
        head.format(folder=folder) + " " + _("Nothing was changed."),
        *_told(_("added:"), foreign.added),
        *_told(_("edited:"), foreign.edited),
        _("Move these files elsewhere and build again, or name another folder with --out."),
    ]
    return "\n".join(lines)


def _told(label: str, names: tuple[str, ...]) -> list[str]:
    """One line a name, the first dozen of them."""
    lines = [f"  {label} {name}" for name in names[:_NAMES_TOLD]]
    more = len(names) - _NAMES_TOLD
    if more > 0:
        text = ngettext("{label} and {count} more", "{label} and {count} more", more)
        lines.append("  " + text.format(label=label, count=more))
    return lines


@contextmanager
def made_parents(folder: Path) -> Iterator[None]:
    """Make the missing folders above `folder`; if the `with` block fails, take them away again.

    Raises OutputError when something above it is a file.
    """
    missing = [parent for parent in folder.parents if not os.path.lexists(parent)]
    _refuse_file_above(folder)
    folder.parent.mkdir(parents=True, exist_ok=True)
    try:
        yield
    except BaseException:
        for parent in missing:
            with suppress(OSError):
                parent.rmdir()
        raise


def _refuse_file_above(folder: Path) -> None:
    there = next((parent for parent in folder.parents if parent.exists()), None)
    if there is not None and not there.is_dir():
        raise OutputError(
            _("{file} is a file, so no folder can be in it. Name another folder with --out.").format(
                file=there
            )
        )
