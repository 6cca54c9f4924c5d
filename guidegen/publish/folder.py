"""Publishing a guide as a folder: refuse, stage, check, swap."""

from __future__ import annotations

import shutil
from collections.abc import Iterator, Mapping, Sequence
from contextlib import contextmanager
from pathlib import Path

from guidegen.errors import OutputError
from guidegen.locale import _
from guidegen.publish.links import check_links
from guidegen.publish.manifest import (
    read_manifest,
    read_origin,
    sealed_files,
    system_files,
    write_manifest,
)
from guidegen.publish.pages import Asset, Origin, PageFile, Published, check_names
from guidegen.publish.site import build_site
from guidegen.publish.swap import swap, work_folder, workplace
from guidegen.publish.target import made_parents, refuse_foreign, settle_target
from guidegen.publish.theme import refuse_clash, settle_theme


def publish(
    pages: Sequence[PageFile],
    assets: Sequence[Asset],
    shared: Mapping[str, object],
    theme: Path,
    out: Path,
    origin: Origin,
) -> Published:
    """Write the guide into the folder `out`, in the place of an earlier guide if there is one.

    `shared` holds the variables that every template gets beside `page_model`;
    `theme` is a folder of templates and static files. The guide is made
    beside `out` and swapped in when it is whole and its links are right; until
    then nothing in `out` changes.

    Raises OutputError when `out` is no place for a guide, holds anything that
    guidegen did not write, cannot be written, or when a page or link is broken;
    ThemeError when `theme` is no theme.
    """
    check_names(pages, assets)
    with told_as_output_errors(out):
        target = settle_target(out)
        theme = settle_theme(theme, (page.template for page in pages), target)
        refuse_clash(theme, assets)
        with made_parents(target), workplace(target) as work:
            refuse_foreign(target)
            earlier = read_origin(target)
            new = work / "new"
            build_site(pages, assets, shared, theme, new, work / "empty")
            check_links(new)
            files = write_manifest(new, origin)
            _carry_over(target, new)
            swap(work, target)
    left = work_folder(target)
    return Published(
        target,
        files,
        replaced=None if earlier == origin else earlier,
        leftover=left if left.exists() else None,
    )


def _carry_over(old: Path, new: Path) -> None:
    """Keep what is not of the guide but may stand in its folder: single-file guides, the system's files."""
    for name in (*sealed_files(old), *system_files(old)):
        place = new / name
        if place.parent.is_dir() and not place.exists():
            shutil.copyfile(old / name, place)


@contextmanager
def told_as_output_errors(out: Path) -> Iterator[None]:
    """Tell what the operating system refuses as an OutputError."""
    try:
        yield
    except OSError as error:
        reason = error.strerror or str(error)
        raise OutputError(
            " ".join(
                [
                    _("The guide cannot be written to {folder}: {reason}.").format(
                        folder=out.absolute(),
                        reason=f"{reason} ({error.filename})" if error.filename else reason,
                    ),
                    *([_("The earlier guide there is as it was.")] if read_manifest(out) is not None else []),
                    _("Name a folder that you may write to with --out, and see that the disk has room."),
                ]
            )
        ) from error
