"""The work folder beside the target, and the swap by two renames.

The work folder holds everything that is not yet, or no longer, the guide:

    empty/      stands in for MkDocs' folder of Markdown files
    new/        the guide being made
    old/        the guide it replaces, between the two renames
    refuse-1/   the old guide while it is deleted; it stays when the system will not delete it

A kill leaves it behind; the next build finds it and puts things right. A lock
on the folder (dropped by the system when its process ends, however it ends)
tells a work folder in use from one left behind.
"""

from __future__ import annotations

import os
import shutil
import sys
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from itertools import count
from pathlib import Path

from guidegen.errors import OutputError
from guidegen.locale import _
from guidegen.publish.target import refuse_foreign

if sys.platform != "win32":
    import fcntl

_ATTEMPTS = 50


@contextmanager
def workplace(target: Path) -> Iterator[Path]:
    """The locked work folder of `target`, gone again after the `with` block if the system lets it go.

    Whatever an earlier build that was killed left behind is put right first.
    Raises OutputError when another build holds the folder.
    """
    work = work_folder(target)
    lock = _take(work, target)
    try:
        restore(work, target)
        (work / "empty").mkdir()
        yield work
    finally:
        try:
            restore(work, target)
            with suppress(OSError):
                work.rmdir()
        finally:
            if lock is not None:
                os.close(lock)


def work_folder(target: Path) -> Path:
    """Where the work folder of `target` is."""
    return target.with_name(f".{target.name}.guidegen-work")


def swap(work: Path, target: Path) -> None:
    """Put `work/new` in the place of `target`, which is refused if the maker has changed it meanwhile.

    Stopped anywhere, either the old or the new guide is whole: in the target
    itself, or in `work/old`, from where `restore` brings it back.
    """
    if target.exists():
        target.rename(work / "old")
        refuse_foreign(work / "old", shown_as=target)
    (work / "new").rename(target)
    restore(work, target)


def restore(work: Path, target: Path) -> None:
    """Bring back an old guide that has no successor, and clear the rest of the work folder.

    What the system will not delete is left in the work folder, where it is in nobody's way.
    """
    old = work / "old"
    if old.exists() and not os.path.lexists(target):
        old.rename(target)
    elif old.exists():
        refuse_foreign(old)
        old.rename(_free_name(work))
    for name in ("new", "empty"):
        if (work / name).exists():
            (work / name).rename(_free_name(work))
    for refuse in work.glob("refuse-*"):
        shutil.rmtree(refuse, ignore_errors=True)


def _free_name(work: Path) -> Path:
    """A name in the work folder that nothing has: something undeletable may stand there from before."""
    names = (work / f"refuse-{number}" for number in count(1))
    return next(name for name in names if not os.path.lexists(name))


def _take(work: Path, target: Path) -> int | None:
    """Make and lock the work folder; returns the lock to close, or None where there are no such locks."""
    for _attempt in range(_ATTEMPTS):
        # Not `exist_ok`: that fails if another build takes the folder away at this very moment.
        with suppress(FileExistsError):
            work.mkdir()
        if sys.platform == "win32":
            return None
        try:
            return _lock(work)
        except FileNotFoundError:  # another build has just ended and taken the folder away
            continue
        except BlockingIOError:
            break
    raise OutputError(
        _(
            "Another guidegen is writing {folder} at this moment. Wait until it has ended, then build again."
        ).format(folder=target)
    )


def _lock(work: Path) -> int:
    """Lock the folder; raises BlockingIOError if it is held, FileNotFoundError if it has been replaced."""
    lock = os.open(work, os.O_RDONLY | os.O_DIRECTORY | os.O_NOFOLLOW)
    try:
        _lock_open_folder(lock)
        if not os.path.samestat(os.fstat(lock), work.stat()):
            raise FileNotFoundError(work)
    except BaseException:
        os.close(lock)
        raise
    return lock


def _lock_open_folder(lock: int) -> None:
    try:
        fcntl.flock(lock, fcntl.LOCK_EX | fcntl.LOCK_NB)
    except BlockingIOError:
        raise
    except OSError:  # a file system without locks: two builds at once are then not told apart
        return
