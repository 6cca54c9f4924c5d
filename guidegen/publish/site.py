"""The MkDocs run: pages from memory through the theme's templates into a folder.

MkDocs is used as a library with one plugin of our own. It reads no Markdown
of ours (inline drawings would be mangled): each page is front matter that
names a template, and the template renders the page's model.
"""

from __future__ import annotations

import logging
from collections.abc import Iterator, Mapping, Sequence
from contextlib import contextmanager
from pathlib import Path
from typing import Any, cast

from jinja2 import Environment, StrictUndefined
from mkdocs.commands.build import build
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.plugins import BasePlugin
from mkdocs.structure.files import File, Files, InclusionLevel
from mkdocs.structure.pages import Page
from mkdocs.utils.templates import TemplateContext

from guidegen.locale import _, ngettext
from guidegen.publish.compiled import CompiledTemplates
from guidegen.publish.pages import Asset, PageFile
from guidegen.publish.theme import is_systems, place_of, theme_fault

_KEPT_CONTEXT = ("nav", "page", "base_url")


def build_site(
    pages: Sequence[PageFile],
    assets: Sequence[Asset],
    shared: Mapping[str, object],
    theme: Path,
    site: Path,
    empty: Path,
) -> None:
    """Write every page, asset and static theme file into `site`, which MkDocs wipes first.

    `empty` is an existing empty folder that stands in for MkDocs' folder of
    Markdown files. Raises ThemeError when a page cannot be rendered.
    """
    config = _configure(pages, theme, site, empty)
    config.plugins["guidegen"] = _GuidePlugin(pages, assets, shared, theme)
    with _told_by_log() as told:
        try:
            build(config)
        except Exception as error:  # a template may fail in any way that Python code may
            if is_systems(error):
                raise
            raise theme_fault([*_as_pages(told, pages), place_of(error, theme)]) from error
    if told:
        raise theme_fault(_as_pages(told, pages))


def _as_pages(told: Sequence[str], pages: Sequence[PageFile]) -> list[str]:
    """What MkDocs told, its Markdown names replaced by those of the pages."""
    lines = list(told)
    for page in pages:
        lines = [line.replace(f"'{_source_name(page)}'", f"'{page.name}'") for line in lines]
    return lines


def _configure(pages: Sequence[PageFile], theme: Path, site: Path, empty: Path) -> MkDocsConfig:
    """The settings of the run: our theme alone, no search, no site map, no page of MkDocs' own."""
    config = MkDocsConfig(config_file_path=str(empty.parent / "mkdocs.yml"))
    config.load_dict(
        {
            "site_name": "guide",
            "docs_dir": str(empty),
            "site_dir": str(site),
            "theme": {"name": None, "custom_dir": str(theme.resolve())},
            "plugins": [],
            "use_directory_urls": False,
            "nav": [{page.title: _source_name(page)} for page in pages],
        }
    )
    errors, _warnings = config.validate()
    if errors:
        reasons = [f"{key}: {error}" for key, error in errors]
        raise theme_fault(reasons)
    # MkDocs adds its own templates behind a theme; its sitemap changes by the day.
    config.theme.static_templates.clear()
    config.theme.dirs[:] = [str(theme.resolve())]
    return config


def _source_name(page: PageFile) -> str:
    """The Markdown name that MkDocs turns into the page's name."""
    return page.name.removesuffix(".html") + ".md"


class _GuidePlugin(BasePlugin):  # type: ignore[type-arg,no-untyped-call]
    """Hands MkDocs the pages and assets, and each template its model."""

    def __init__(
        self, pages: Sequence[PageFile], assets: Sequence[Asset], shared: Mapping[str, object], theme: Path
    ) -> None:
        super().__init__()
        self._theme = theme
        self._pages = {page.name: page for page in pages}
        self._assets = assets
        self._shared = shared

    def on_files(self, files: Files, *, config: MkDocsConfig) -> Files:
        """Add every page and asset from memory; an asset may not take the place of a theme file."""
        for page in self._pages.values():
            self._add(files, config, _source_name(page), f"---\ntemplate: {page.template}\n---\n")
        for asset in self._assets:
            self._add(files, config, asset.path, asset.content)
        return files

    @staticmethod
    def _add(files: Files, config: MkDocsConfig, name: str, content: str | bytes) -> None:
        """Add one file; its inclusion is set so that no default exclusion pattern can drop it."""
        if files.get_file_from_path(name) is not None:
            raise ValueError(f"the theme has a file of this name: {name}")
        files.append(File.generated(config, name, content=content, inclusion=InclusionLevel.INCLUDED))

    def on_env(self, env: Environment, **_more: Any) -> Environment:
        """Escape every value, refuse undefined names, and translate through guidegen's catalogue."""
        env.autoescape = True
        env.undefined = StrictUndefined
        env.bytecode_cache = CompiledTemplates(self._theme)
        env.add_extension("jinja2.ext.i18n")
        # Old style: placeholders are filled after translation, so a "%" in a sentence stays a "%".
        env.install_gettext_callables(_, ngettext, newstyle=False)  # type: ignore[attr-defined]
        return env

    def on_page_context(self, context: TemplateContext, /, *, page: Page, **_more: Any) -> TemplateContext:
        """The template's variables; those of MkDocs that hold a date or a machine's paths are left out."""
        given: dict[str, object] = {**context}
        kept = {key: given[key] for key in _KEPT_CONTEXT}
        model = self._pages[page.file.dest_uri].model
        return cast(TemplateContext, {**kept, **self._shared, "page_model": model})


class _Collector(logging.Handler):
    """Keeps what MkDocs warns of."""

    def __init__(self) -> None:
        super().__init__(logging.WARNING)
        self.lines: list[str] = []

    def emit(self, record: logging.LogRecord) -> None:
        """Keep the record's text."""
        self.lines.append(record.getMessage())


@contextmanager
def _told_by_log() -> Iterator[list[str]]:
    """The warnings MkDocs logs inside the `with` block, kept away from the terminal."""
    logger = logging.getLogger("mkdocs")
    before = logger.level, logger.propagate
    collector = _Collector()
    logger.addHandler(collector)
    logger.setLevel(logging.WARNING)
    logger.propagate = False
    try:
        yield collector.lines
    finally:
        logger.removeHandler(collector)
        logger.level, logger.propagate = before
