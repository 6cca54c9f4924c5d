"""A small guide to publish: two pages, one drawing, the test theme."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from guidegen.publish import Asset, Origin, PageFile, Published, publish

THEME = Path(__file__).parent / "theme"
SVG = b'<svg xmlns="http://www.w3.org/2000/svg" width="9" height="9"><title>nine</title></svg>'
DRAWING = Asset("drawings/schematic-1.svg", SVG)


@dataclass(frozen=True)
class Model:
    """What the test theme shows."""

    text: str = "text"
    links: tuple[str, ...] = ()
    pictures: tuple[str, ...] = ()


def page(
    name: str = "index.html", title: str = "Start here", template: str = "page.html", **fields
) -> PageFile:
    return PageFile(name, title, template, Model(**fields))


ORIGIN = Origin("Shelf lights", "shelf.yaml")


def publish_text(out: Path, text: str = "text", theme: Path = THEME, origin: Origin = ORIGIN) -> Published:
    """Publish the small guide with this text on its first page."""
    pages = [
        page(text=text, pictures=(DRAWING.path,)),
        page("stay-safe.html", "Stay safe", links=("index.html#main",)),
    ]
    return publish(pages, [DRAWING], {}, theme, out, origin)


def contents(folder: Path) -> dict[str, bytes]:
    """Every file of a folder, by relative path."""
    files = (path for path in folder.rglob("*") if path.is_file())
    return {path.relative_to(folder).as_posix(): path.read_bytes() for path in files}
