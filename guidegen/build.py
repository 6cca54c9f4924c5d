"""`build`: study a project, compose its guide, draw its pictures, and write all of it to a folder.

What only composing and publishing need is loaded behind the study and the
first orders of drawings: by then the second process draws.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from pathlib import Path
from typing import TYPE_CHECKING

from guidegen.drawings import makers
from guidegen.drawings.apart import Drawings
from guidegen.drawings.bought import bought_for
from guidegen.errors import GuidegenError, ProjectError
from guidegen.hanging.advice import supply_paths
from guidegen.hanging.make import hanging_plan
from guidegen.locale import _, speaking_language
from guidegen.paths import data_folder
from guidegen.study import Solved, Study, study

if TYPE_CHECKING:
    from guidegen.circuit.arrangement import Arrangement
    from guidegen.drawings.picture import Picture
    from guidegen.guide.pages import Guide
    from guidegen.project.schema import Project
    from guidegen.publish import Origin, Published
    from guidegen.publish.photos import Photos

_DRAWINGS = "drawings"


@dataclass(frozen=True)
class PlacedPicture:
    """A picture as a template gets it: its file relative to the page, its words, its size in CSS pixels."""

    src: str
    alt: str
    caption: str
    width: int
    height: int


def build(
    path: Path,
    out: Path | None = None,
    *,
    one_file: bool = False,
    theme: Path | None = None,
    drawings: Drawings | None = None,
) -> str:
    """Write the guide of the project file `path` into `out`; returns a sentence that says where, and notes.

    `one_file`: into one HTML file there, named after the project file; `theme`: a
    folder of templates and style, by default the one that ships with guidegen.
    `drawings`: who draws; by default this process.
    `out` is by default the file's stem + "-guide" in the current folder.
    Raises ProjectError for a file with faults, GuidegenError for a refused
    project, and OutputError when `out` is no place for a guide or `theme` no theme.
    """
    found = study(path)
    if found.solved is None or found.refused:
        from guidegen.report.check import check_text

        raise GuidegenError(check_text(found).rstrip("\n"))
    with speaking_language(found.project.language):
        drawings = drawings or Drawings()
        _order_circuit(drawings, found, found.solved)
        photos = _photos(found)
        guide, pictures = _compose(found, found.solved, drawings)
        folder = out or Path(f"{path.stem}-guide")
        place = folder, f"{path.stem}.html" if one_file else "", path.name
        return _publish(guide, pictures, photos, theme or data_folder("themes") / "workshop", *place)


def _photos(found: Study) -> Photos:
    """The maker's photos; ProjectError with all that is wrong with them, or with what is added to steps."""
    from guidegen.guide.own_steps import unknown_steps
    from guidegen.publish.photos import photos_for

    photos, faults = photos_for(found.file)
    faults = (*unknown_steps(found), *faults)
    if faults:
        raise ProjectError(faults)
    return photos


def _order_circuit(drawings: Drawings, found: Study, solved: Solved) -> None:
    """The drawings of what is solved, each as soon as what it shows is known."""
    circuit = solved.arrangement, solved.solution
    drawings.order(makers.schematics, *circuit, solved.points)
    _order_hanging(drawings, found.project, solved.arrangement)
    spread = found.spread
    band = tuple(zip(spread.light_low, spread.light_high, strict=True))
    drawings.order(makers.charts, *circuit, found.project.goals.evenness, band)


def _compose(found: Study, solved: Solved, drawings: Drawings) -> tuple[Guide, tuple[Picture, ...]]:
    """The guide and all of its pictures."""
    from guidegen.drawings.arrangements import draw_arrangements
    from guidegen.guide.compose import compose

    guide = compose(found, found.spread.readings)
    bought = bought_for(found.project)
    drawings.order(makers.steps, guide.step_pictures, bought, solved.arrangement, solved.points)
    drawings.order(makers.bodies, guide.resistor_bodies)
    # Plain SVG needs no library: drawn here before a choice could be handed over.
    compared = draw_arrangements(found.choice, found.project.goals.evenness)
    pictures = (*drawings.pictures(), *compared)
    return _with_schematics(guide, pictures), pictures


def _order_hanging(drawings: Drawings, project: Project, arrangement: Arrangement) -> None:
    """Plan and side view, where the file has a hanging plan."""
    plan = hanging_plan(project, arrangement)
    if plan is not None:
        drawings.order(makers.plan, plan, arrangement, supply_paths(project, arrangement, plan))


def _with_schematics(guide: Guide, pictures: tuple[Picture, ...]) -> Guide:
    """The guide with every schematic on its wiring page: only drawing tells how many there are."""
    from guidegen.guide.pages import WiringPage

    ids = tuple(picture.id for picture in pictures if picture.id.startswith("schematic-"))
    pages = [
        replace(page, model=replace(page.model, pictures=ids)) if isinstance(page.model, WiringPage) else page
        for page in guide.pages
    ]
    return replace(guide, pages=tuple(pages))


def _publish(
    guide: Guide,
    pictures: tuple[Picture, ...],
    photos: Photos,
    theme: Path,
    folder: Path,
    one_file: str,
    file: str,
) -> str:
    """Hand pages, drawings and theme over for publishing; returns what to tell the maker.

    `file`: the project file's name; `one_file` that of the one file, if it is to be one.
    """
    from guidegen.publish import Asset, Origin, PageFile, publish, publish_one_file
    from guidegen.publish.own_words import own_words

    origin = Origin(guide.title, file)
    pages = [PageFile(page.name, page.title, page.template, page.model) for page in guide.pages]
    drawn = [Asset(_file_of(picture), picture.svg.encode()) for picture in pictures]
    assets = [*drawn, *photos.assets]
    shared = {
        "guide": guide,
        "pictures": {picture.id: _placed(picture) for picture in pictures},
        "photos": photos.placed,
        "own_words": own_words,
    }
    if one_file:
        return _where(publish_one_file(pages, assets, shared, theme, folder / one_file))
    published = publish(pages, assets, shared, theme, folder, origin)
    return "\n".join([_where(published.folder / "index.html"), *notes(published, origin)])


def _where(page: Path) -> str:
    return _("The guide is written: open {page} in a browser.").format(page=page)


def notes(published: Published, origin: Origin) -> Iterator[str]:
    """What the maker may not expect of the folder, a sentence each."""
    earlier = published.replaced
    if earlier and earlier.file != origin.file:
        text = _("Note: it replaces a guide of another project that stood there: {title} ({file}).")
        yield text.format(title=earlier.title, file=earlier.file)
    elif earlier:
        text = _("Note: it replaces a guide that had another title: {title}.")
        yield text.format(title=earlier.title)
    if published.leftover:
        text = _("Note: an earlier guide could not be deleted; delete the folder {folder} yourself.")
        yield text.format(folder=published.leftover)


def _file_of(picture: Picture) -> str:
    """Where the picture is, relative to the guide's folder."""
    return f"{_DRAWINGS}/{picture.id}.svg"


def _placed(picture: Picture) -> PlacedPicture:
    return PlacedPicture(_file_of(picture), picture.alt, picture.caption, picture.width, picture.height)
