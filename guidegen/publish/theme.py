"""The theme's folder: what it must hold, and what is said of a theme that is at fault."""

from __future__ import annotations

import traceback
from collections.abc import Iterable, Sequence
from pathlib import Path

from jinja2 import TemplateError, TemplateSyntaxError

from guidegen.errors import OutputError
from guidegen.locale import _
from guidegen.publish.pages import MANIFEST_NAME, Asset


class ThemeError(OutputError):
    """The theme cannot be used; nothing was changed."""


def settle_theme(theme: Path, templates: Iterable[str], out: Path) -> Path:
    """The absolute path of a theme's folder that holds the `templates`.

    `out` is where the guide goes: inside of the theme it would become part of
    the next guide.  Raises ThemeError otherwise.
    """
    folder = theme.resolve()
    if not folder.is_dir():
        text = _("{folder} is a file, and a theme is a folder.") if folder.exists() else _no_folder()
        raise ThemeError(text.format(folder=theme.absolute()))
    missing = sorted({name for name in templates if not (folder / name).is_file()})
    if missing:
        text = _(
            "The theme {folder} has no template of this name: {names}. Nothing was changed. "
            "Copy the templates of another theme and change them, or leave --theme out."
        )
        raise ThemeError(text.format(folder=theme.absolute(), names=", ".join(missing)))
    if out.resolve().is_relative_to(folder):
        text = _("The guide cannot go into the folder of its theme: {folder}. Name another one with --out.")
        raise ThemeError(text.format(folder=out.absolute()))
    return folder


def _no_folder() -> str:
    return _("There is no folder {folder}. Name the folder of a theme with --theme.")


def refuse_clash(theme: Path, assets: Sequence[Asset]) -> None:
    """Raise ThemeError where a file of the theme has the name of a drawing or photo of the guide."""
    names = [MANIFEST_NAME, *(asset.path for asset in assets)]
    taken = [name for name in names if (theme / name).exists()]
    if taken:
        text = _("The theme {folder} has files that the guide makes itself: {names}. Name them otherwise.")
        raise ThemeError(text.format(folder=theme, names=", ".join(taken)))


def theme_fault(reasons: Iterable[str]) -> ThemeError:
    """The error for pages that could not be rendered, a line a reason."""
    head = _("The pages of the guide could not be made. This is a fault in the theme or in guidegen:")
    return ThemeError("\n".join([head, *(f"  {line}" for line in dict.fromkeys(reasons) if line)]))


def is_systems(error: BaseException) -> bool:
    """Whether the operating system refused something; a template that is not found is the theme's fault."""
    return isinstance(error, OSError) and not isinstance(error, TemplateError)


def place_of(error: BaseException, theme: Path) -> str:
    """Where in the templates an error came up and what it says: "build.html, line 12: ...".

    Without a place when it came up in no template.
    """
    said = " ".join(str(error).split()) or type(error).__name__
    if isinstance(error, TemplateSyntaxError):
        return _place(error.name or "", error.lineno, error.message or said)
    if isinstance(error, UnicodeDecodeError):
        return _("a template or script is no UTF-8 text: {reason}").format(reason=said)
    frames = traceback.extract_tb(error.__traceback__)
    inside = [frame for frame in frames if Path(frame.filename).is_relative_to(theme.resolve())]
    if not inside:
        return said
    name = Path(inside[-1].filename).relative_to(theme.resolve()).as_posix()
    return _place(name, inside[-1].lineno or 1, said)


def _place(template: str, line: int, said: str) -> str:
    text = _("{template}, line {line}: {reason}")
    return text.format(template=template, line=line, reason=said)
