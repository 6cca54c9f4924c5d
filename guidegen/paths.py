"""Where the files that ship with guidegen are, in a checkout or installed from a wheel; names of files."""

from __future__ import annotations

from pathlib import Path

_HERE = Path(__file__).resolve().parent


def data_folder(name: str) -> Path:
    """Folder `name` (`themes`, `sample_project`) that ships with guidegen.

    Raises FileNotFoundError when it is in neither place.
    """
    for candidate in (_HERE / "_data" / name, _HERE.parent / name):
        if candidate.is_dir():
            return candidate
    raise FileNotFoundError(f"the folder {name!r} that ships with guidegen is missing")


def as_typed(text: str) -> str:
    """The text with names of files in the letters they were typed in.

    A Python that was told of no letters beyond ASCII keeps their bytes as
    half characters (PEP 383), which no terminal shows.
    """
    return text.encode("utf-8", "surrogateescape").decode("utf-8", "replace")
