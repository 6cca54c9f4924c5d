"""The theme's templates, set up as publishing sets them up, without MkDocs."""

from __future__ import annotations

from collections.abc import Callable, Mapping

import pytest
from jinja2 import Environment, FileSystemLoader, StrictUndefined

from guidegen.guide.pages import Guide
from guidegen.locale import _, ngettext
from guidegen.paths import data_folder
from guidegen.publish.own_words import own_words
from tests.theme.example_guide import PICTURES, make_guide

Render = Callable[..., dict[str, str]]


@pytest.fixture(scope="session")
def templates() -> Environment:
    environment = Environment(
        loader=FileSystemLoader(data_folder("themes") / "workshop"),
        autoescape=True,
        undefined=StrictUndefined,
        extensions=["jinja2.ext.i18n"],
    )
    environment.install_gettext_callables(_, ngettext, newstyle=False)  # type: ignore[attr-defined]
    return environment


@pytest.fixture(scope="session")
def render(templates: Environment) -> Render:
    """Every page of a guide as HTML, by the page's name."""

    def render_all(guide: Guide, pictures: Mapping[str, object] = PICTURES) -> dict[str, str]:
        return {
            page.name: templates.get_template(page.template).render(
                guide=guide, page_model=page.model, pictures=pictures, photos={}, own_words=own_words
            )
            for page in guide.pages
        }

    return render_all


@pytest.fixture(scope="session")
def pages(render: Render) -> dict[str, str]:
    """The example guide, rendered."""
    return render(make_guide())
