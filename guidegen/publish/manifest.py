"""The manifest: which files guidegen wrote, so that a file of the maker's is never lost.

It holds a hash of every file and guidegen's version, and no date, so that the
same guide has the same manifest on any day.
"""

from __future__ import annotations

import hashlib
import json
import os
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from guidegen import __version__
from guidegen.publish.pages import MANIFEST_NAME, Origin
from guidegen.publish.seal import is_sealed

_MADE_BY = "guidegen"
#: How a window of files looks, and small pictures of them: written by file managers.
_OF_THE_SYSTEM = frozenset({".ds_store", "thumbs.db", "desktop.ini", ".directory"})


@dataclass(frozen=True)
class Foreign:
    """What a guide's folder holds that guidegen did not write: relative paths, sorted."""

    added: tuple[str, ...] = ()
    edited: tuple[str, ...] = ()

    def __bool__(self) -> bool:
        return bool(self.added or self.edited)


def write_manifest(folder: Path, origin: Origin) -> tuple[str, ...]:
    """Write the manifest of every file in `folder`; returns their paths, the manifest's included."""
    hashes = {path: _sha256(folder / path) for path in _entries(folder)}
    project = {"title": origin.title, "file": origin.file}
    manifest = {"made_by": _MADE_BY, "version": __version__, "project": project, "files": hashes}
    (folder / MANIFEST_NAME).write_bytes(json.dumps(manifest, indent=1).encode() + b"\n")
    return tuple(sorted([*hashes, MANIFEST_NAME]))


def read_manifest(folder: Path) -> Mapping[str, str] | None:
    """Hash by relative path of the files guidegen wrote in `folder`; None when it wrote none."""
    manifest = _manifest(folder)
    return None if manifest is None else manifest["files"]


def read_origin(folder: Path) -> Origin | None:
    """What the guide in `folder` was made from; None where there is none that says so."""
    project = (_manifest(folder) or {}).get("project")
    if not isinstance(project, dict):
        return None
    return Origin(str(project.get("title", "")), str(project.get("file", "")))


def _manifest(folder: Path) -> dict[str, Any] | None:
    """The manifest in `folder`, if it is one of ours."""
    try:
        manifest = json.loads((folder / MANIFEST_NAME).read_bytes())
        ours = manifest["made_by"] == _MADE_BY and isinstance(manifest["files"], dict)
    except (OSError, ValueError, KeyError, TypeError, RecursionError):
        return None
    return manifest if ours else None


def find_foreign(folder: Path, hashes: Mapping[str, str]) -> Foreign:
    """Compare the folder with the manifest; a file that is gone is no loss and not told."""
    added, edited = [], []
    for path in _entries(folder):
        if path == MANIFEST_NAME or is_of_the_system(folder / path):
            continue
        if path not in hashes and path in sealed_files(folder):
            continue
        if path not in hashes:
            added.append(path)
        elif not _is_unchanged(folder / path, hashes[path]):
            edited.append(path)
    return Foreign(tuple(added), tuple(edited))


def sealed_files(folder: Path) -> tuple[str, ...]:
    """Names of the single-file guides that guidegen wrote into the folder, unedited since, sorted."""
    plain = (path for path in folder.glob("*.html") if path.is_file() and not path.is_symlink())
    return tuple(sorted(path.name for path in plain if is_sealed(path.read_bytes())))


def system_files(folder: Path) -> tuple[str, ...]:
    """Paths of the files that a file manager has put into the folder or below it, sorted."""
    if not folder.is_dir():
        return ()
    return tuple(path for path in _entries(folder) if is_of_the_system(folder / path))


def is_of_the_system(file: Path) -> bool:
    """Whether a file manager made the file, with nobody asking for it."""
    return file.name.lower() in _OF_THE_SYSTEM and file.is_file() and not file.is_symlink()


def holds_makers_files(folder: Path) -> bool:
    """Whether the folder holds anything beside single-file guides of guidegen's and the system's files."""
    return bool({*_entries(folder)} - {*sealed_files(folder), *system_files(folder)})


def _is_unchanged(file: Path, expected: str) -> bool:
    """Whether the plain file still has the hash it was written with."""
    return file.is_file() and not file.is_symlink() and _sha256(file) == expected


def _sha256(file: Path) -> str:
    return hashlib.sha256(file.read_bytes()).hexdigest()


def _entries(folder: Path, under: str = "") -> Iterator[str]:
    """Relative paths of everything but filled folders, sorted; symbolic links are not followed."""
    with os.scandir(folder) as listing:
        entries = sorted(listing, key=lambda entry: entry.name)
    for entry in entries:
        inside = list(_entries(Path(entry.path), f"{under}{entry.name}/")) if _is_folder(entry) else []
        yield from inside or [f"{under}{entry.name}"]


def _is_folder(entry: os.DirEntry[str]) -> bool:
    return entry.is_dir(follow_symlinks=False)
