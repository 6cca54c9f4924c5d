"""What is handed over for publishing: pages, assets, and the names they may have."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from pathlib import Path

MANIFEST_NAME = "guidegen-manifest.json"

_PAGE_NAME = re.compile(r"[a-z0-9][a-z0-9-]*\.html")
_ASSET_PART = re.compile(r"[A-Za-z0-9_][A-Za-z0-9_.-]*")


@dataclass(frozen=True)
class PageFile:
    """One HTML page.

    `name` is its file name ("stay-safe.html"; the first page is "index.html"),
    `template` a template file of the theme folder, and `model` a frozen
    dataclass that the template receives as `page_model`.
    """

    name: str
    title: str
    template: str
    model: object


@dataclass(frozen=True)
class Asset:
    """A file that pages refer to; `path` is relative, with "/" ("drawings/schematic-1.svg")."""

    path: str
    content: bytes


@dataclass(frozen=True)
class Origin:
    """What a guide was made from: the project's title and the name of its file, without folders."""

    title: str
    file: str


@dataclass(frozen=True)
class Published:
    """The guide as written: its folder, and its files relative to that, sorted, manifest included.

    `replaced`: what the guide in whose place it stands was made from, if that
    is another project; `leftover`: a folder that should be gone and that the
    system would not delete.
    """

    folder: Path
    files: tuple[str, ...]
    replaced: Origin | None = None
    leftover: Path | None = None


def check_names(pages: Sequence[PageFile], assets: Sequence[Asset]) -> None:
    """Raise ValueError for names that no guide may have; a mistake of the caller, not of the maker."""
    if not pages or pages[0].name != "index.html":
        raise ValueError("the first page is index.html")
    names = [page.name for page in pages] + [asset.path for asset in assets]
    wrong = [page.name for page in pages if not _PAGE_NAME.fullmatch(page.name)]
    wrong += [asset.path for asset in assets if not _is_asset_path(asset.path)]
    wrong += sorted(_repeated([*names, MANIFEST_NAME]))
    if wrong:
        raise ValueError(f"names that a guide may not have, or has twice: {', '.join(wrong)}")


def _is_asset_path(path: str) -> bool:
    """Whether MkDocs would copy the path as it stands: plain names, and not taken for a Markdown page."""
    parts = path.split("/")
    return all(_ASSET_PART.fullmatch(part) for part in parts) and not path.lower().endswith((".md", ".html"))


def _repeated(names: Iterable[str]) -> set[str]:
    """Names that come up twice, told apart as a case-blind file system would."""
    seen: set[str] = set()
    return {name for name in names if name.lower() in seen or seen.add(name.lower())}  # type: ignore[func-returns-value]
