"""Publishing a guide as one self-contained HTML file.

The pages are rendered as for a folder, then joined by the theme's
`one-file.html`, which gets `sheets`, `styles` and `script` beside what
every template gets.  The last line seals the file, so that a later build can
tell it from one that the maker has edited.
"""

from __future__ import annotations

import hashlib
import os
import tempfile
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path

from jinja2 import Environment, FileSystemLoader, StrictUndefined
from markupsafe import Markup

from guidegen.errors import OutputError
from guidegen.locale import _, ngettext
from guidegen.publish.flatten import data_url, flatten, sheet_name
from guidegen.publish.folder import told_as_output_errors
from guidegen.publish.links import check_links
from guidegen.publish.pages import Asset, PageFile, check_names
from guidegen.publish.seal import is_sealed, sealed
from guidegen.publish.site import build_site
from guidegen.publish.target import made_parents
from guidegen.publish.theme import is_systems, place_of, refuse_clash, settle_theme, theme_fault

TEMPLATE = "one-file.html"


@dataclass(frozen=True)
class Sheet:
    """A page inside one file; `body` is safe HTML."""

    name: str
    title: str
    template: str
    body: Markup


def publish_one_file(
    pages: Sequence[PageFile],
    assets: Sequence[Asset],
    shared: Mapping[str, object],
    theme: Path,
    target: Path,
) -> Path:
    """Write the guide into the file `target` and nothing else; returns its absolute path.

    Raises OutputError when `target` is a file that guidegen did not write or
    that was edited since, cannot be written, or when a page or link is broken;
    ThemeError when `theme` is no theme.
    """
    check_names(pages, assets)
    with told_as_output_errors(target.parent):
        refuse_foreign_file(target)
        theme = settle_theme(theme, [TEMPLATE, *(page.template for page in pages)], target.parent)
        refuse_clash(theme, assets)
        with tempfile.TemporaryDirectory() as work:
            site = Path(work) / "site"
            empty = Path(work) / "empty"
            empty.mkdir()
            build_site(pages, assets, shared, theme, site, empty)
            check_links(site)
            content = sealed(_join(pages, shared, theme, _files(site)).encode())
        with made_parents(target.absolute()):
            _replace(target, content)
    return target.absolute()


def refuse_foreign_file(target: Path) -> None:
    """Raise OutputError when `target` is anything but a file that guidegen wrote and nobody edited."""
    if not os.path.lexists(target):
        return
    if target.is_symlink() or not target.is_file() or not is_sealed(target.read_bytes()):
        raise OutputError(
            _(
                "{file} is there already, and guidegen did not write it as it is now. Nothing was changed. "
                "Move it elsewhere, or name another folder with --out."
            ).format(file=target.absolute())
        )


def _files(site: Path) -> dict[str, bytes]:
    return {
        path.relative_to(site).as_posix(): path.read_bytes()
        for path in sorted(site.rglob("*"))
        if path.is_file()
    }


def _join(
    pages: Sequence[PageFile], shared: Mapping[str, object], theme: Path, files: Mapping[str, bytes]
) -> str:
    try:
        return _render(pages, shared, theme, files)
    except OutputError:
        raise
    except Exception as error:  # a template may fail in any way that Python code may
        if is_systems(error):
            raise
        raise theme_fault([place_of(error, theme)]) from error


def _render(
    pages: Sequence[PageFile], shared: Mapping[str, object], theme: Path, files: Mapping[str, bytes]
) -> str:
    environment = Environment(
        loader=FileSystemLoader(theme),
        autoescape=True,
        undefined=StrictUndefined,
        extensions=["jinja2.ext.i18n"],
    )
    environment.install_gettext_callables(_, ngettext, newstyle=False)  # type: ignore[attr-defined]
    return environment.get_template(TEMPLATE).render(
        {
            **shared,
            "sheets": tuple(_sheets(pages, files)),
            "styles": Markup(_texts(files, ".css")),
            "script": Markup(_texts(files, ".js")),
            "icon": _icon(files),
        }
    )


def _sheets(pages: Sequence[PageFile], files: Mapping[str, bytes]) -> Iterator[Sheet]:
    for page in pages:
        body = Markup(flatten(files[page.name].decode(), page.name, files))
        yield Sheet(sheet_name(page.name), page.title, page.template, body)


def _texts(files: Mapping[str, bytes], suffix: str) -> str:
    """Static files of a kind, those named for one file last."""
    chosen = sorted(
        (path for path in files if path.endswith(suffix)), key=lambda path: ("one-file" in path, path)
    )
    return "\n".join(files[path].decode() for path in chosen)


def _icon(files: Mapping[str, bytes]) -> str:
    return next((data_url(path, files[path]) for path in files if path.startswith("icon.")), "data:,")


def _replace(target: Path, content: bytes) -> None:
    """Write beside the target and rename, so that a kill leaves the old file or the new one."""
    digest = hashlib.sha256(content).hexdigest()[:8]
    beside = target.with_name(f".{target.name}.{os.getpid()}-{digest}")
    try:
        beside.write_bytes(content)
        beside.replace(target)
    finally:
        beside.unlink(missing_ok=True)
