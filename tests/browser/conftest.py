"""A browser and the sample guide, made once for all browser tests."""

from __future__ import annotations

import importlib.util
from collections.abc import Callable, Iterator
from contextlib import AbstractContextManager, contextmanager
from pathlib import Path

import pytest

from tests.browser.surfing import CHROMIUM, DESKTOP, build_sample, chromium, missing


@pytest.fixture(scope="session")
def browser() -> Iterator:
    """Chromium, running."""
    for module in ("playwright", "axe_playwright_python", "pypdf"):
        if importlib.util.find_spec(module) is None:
            missing(f"the Python package {module}")
    if not CHROMIUM.exists():
        missing(f"Chromium as {CHROMIUM}")
    with chromium() as running:
        yield running


@pytest.fixture(scope="session")
def guide(tmp_path_factory) -> Path:
    """The folder of the sample guide."""
    return build_sample(tmp_path_factory.mktemp("browser") / "guide")


@pytest.fixture(scope="session")
def page_names(guide) -> list[str]:
    """The guide's pages by file name."""
    return sorted(path.name for path in guide.glob("*.html"))


@pytest.fixture
def opened(browser) -> Callable[..., AbstractContextManager]:
    """Open a file: `with opened(path, color_scheme="dark") as page`; options are those of a context."""

    @contextmanager
    def open_file(path: Path, media: str = "screen", **options) -> Iterator:
        context = browser.new_context(**({"viewport": DESKTOP} | options))
        page = context.new_page()
        page.emulate_media(media=media)
        page.complaints, page.requested = listen(page)
        page.goto(path.as_uri())
        yield page
        context.close()

    return open_file


def listen(page) -> tuple[list[str], list[str]]:
    """Lists that fill with what the page complains of on the console, and what it asks for."""
    complaints: list[str] = []
    requested: list[str] = []
    page.on(
        "console", lambda told: complaints.append(told.text) if told.type in ("error", "warning") else None
    )
    page.on("pageerror", lambda error: complaints.append(str(error)))
    page.on("request", lambda request: requested.append(request.url))
    return complaints, requested
