"""Shows what of guides does not pass through the catalogue: `python -m tests.locale.walk [FILE...]`."""

from __future__ import annotations

import shutil
import sys
import tempfile
from collections.abc import Iterator
from pathlib import Path
from unittest.mock import patch

import yaml

from guidegen import locale
from guidegen.build import build
from tests.locale.catalogue import ROOT
from tests.locale.marked import Marking, drawing_texts, english_in, page_texts

EXAMPLES = (
    *sorted((ROOT / "sample_project").glob("*.yaml")),
    *sorted((ROOT / "tests/examples").glob("*.yaml")),
)


def untranslated(file: Path) -> list[str]:
    """Every text of the guide of a project file that holds English, in German with every sentence marked."""
    with tempfile.TemporaryDirectory() as work:
        guide = marked_guide(file, Path(work))
        names = names_in(file)
        found = {
            f"{path.name} [{place}] {' '.join(text.split())[:160]} -> {left}": None
            for path, place, text in texts(guide)
            if (left := english_in(text, names))
        }
    return list(found)


def marked_guide(file: Path, work: Path) -> Path:
    """The guide of the file in German, all in marks, drawn in this process so that the marks reach it."""
    for photo in (path for path in file.parent.iterdir() if path.suffix in (".png", ".jpg")):
        shutil.copy(photo, work)
    german = work / file.name
    german.write_text(in_german(file.read_text(encoding="utf-8")), encoding="utf-8")
    with (
        patch.object(locale, "translations_of", lambda _tag: Marking()),
        patch("guidegen.drawings.apart.processors", lambda: 1),
    ):
        build(german, work / "guide")
    return work / "guide"


def in_german(text: str) -> str:
    """The project file with German as its language."""
    lines = [line for line in text.splitlines() if not line.startswith("language:")]
    return "\n".join([*lines, "language: de", ""])


def names_in(file: Path) -> list[str]:
    """Every word of the maker's own in the file, in whatever form."""
    return [*_strings(yaml.safe_load(file.read_text(encoding="utf-8"))), file.name]


def _strings(value: object, key: str = "") -> Iterator[str]:
    if isinstance(value, dict):
        for name, inner in value.items():
            if key in ("strings",):
                yield str(name)
            yield from _strings(inner, str(name))
    elif isinstance(value, list):
        for inner in value:
            yield from _strings(inner, key)
    elif isinstance(value, str) and key in OWN:
        yield value


# Keys whose values are the maker's own words.
OWN = (
    *("title", "summary", "author", "licence", "story", "name", "label", "hook_kind"),
    *("alt", "caption", "note", "add", "do", "why", "check"),
)


def texts(guide: Path) -> Iterator[tuple[Path, str, str]]:
    """Every text of a guide with its file and its place there."""
    for path in sorted(guide.rglob("*.html")):
        yield from ((path, *each) for each in page_texts(path))
    for path in sorted(guide.rglob("drawings/*.svg")):
        yield from ((path, *each) for each in drawing_texts(path))


if __name__ == "__main__":
    for given in [Path(name) for name in sys.argv[1:]] or EXAMPLES:
        print(f"== {given.name}")
        print("\n".join(untranslated(given)))
