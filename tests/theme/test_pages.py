"""What every page of the theme holds to, whatever it says."""

from __future__ import annotations

import re
from itertools import pairwise
from pathlib import Path

import pytest
from jinja2 import Environment, UndefinedError

from guidegen.guide.pages import Guide
from guidegen.paths import data_folder
from tests.theme.conftest import Render
from tests.theme.example_guide import PICTURES, make_guide, with_text
from tests.theme.html_reading import read_elements

THEME = data_folder("themes") / "workshop"
NAMES = [page.name for page in make_guide().pages]
MARKUP = """<b onclick="x">&amp;{{ 7*7 }}"'</style></script>"""


@pytest.mark.parametrize("name", NAMES)
def test_ids_are_unique_on_a_page(pages: dict[str, str], name: str) -> None:
    ids = [e.attributes["id"] for e in read_elements(pages[name]) if "id" in e.attributes]
    assert len(ids) == len(set(ids))


@pytest.mark.parametrize("name", NAMES)
def test_every_link_and_label_leads_to_something_in_the_guide(pages: dict[str, str], name: str) -> None:
    ids = {page: {e.attributes.get("id") for e in read_elements(html)} for page, html in pages.items()}
    drawings = {drawing.src for drawing in PICTURES.values()}
    for element in read_elements(pages[name]):
        for attribute in ("href", "src"):
            target, _, fragment = element.attributes.get(attribute, "").partition("#")
            page = target or name
            known = page in pages or page in drawings or (THEME / page).is_file()
            assert known, element
            assert not fragment or fragment in ids[page], element
        for attribute in ("aria-labelledby", "for"):
            if attribute in element.attributes:
                assert element.attributes[attribute] in ids[name], element


@pytest.mark.parametrize("name", NAMES)
def test_markup_in_any_text_comes_out_as_text(render: Render, name: str) -> None:
    """Markup in every text field gives the same elements as as many plain letters."""
    plain, marked = (read_elements(_texts_with(render, text)[name]) for text in ("x" * len(MARKUP), MARKUP))
    assert [e.tag for e in marked] == [e.tag for e in plain]
    assert [sorted(e.attributes) for e in marked] == [sorted(e.attributes) for e in plain]
    assert any(MARKUP in e.text for e in marked if e.tag in ("p", "li", "td", "dd"))


def _texts_with(render: Render, text: str) -> dict[str, str]:
    """The example with `text` behind every text of its guide and pictures."""
    pictures = {name: with_text(drawing, text) for name, drawing in PICTURES.items()}
    return render(with_text(make_guide(), text), pictures)


def test_a_title_cannot_leave_the_running_head_of_the_print(render: Render) -> None:
    """By the CSS syntax, a string ends only at its own quote or at a line end."""
    html = render(make_guide(title='a"; color: red; \\"b\n} c'))["parts.html"]
    style = read_elements(html)[0].attributes["style"]
    assert re.fullmatch(r'--running-head: "[^"\n]*"', style)
    assert "\\22 " in style
    assert "\\5c " in style


def test_a_field_missing_in_a_model_is_an_error(templates: Environment) -> None:
    guide = make_guide()
    with pytest.raises(UndefinedError, match="first_line"):
        templates.get_template("safe.html").render(
            guide=_swap_model(guide, "stay-safe.html"), page_model=guide.pages[2].model, pictures=PICTURES
        )


def _swap_model(guide: Guide, name: str) -> Guide:
    """The guide without the page of that name, so that a template gets a model of another page."""
    return make_guide(pages=tuple(page for page in guide.pages if page.name != name))


@pytest.mark.parametrize("name", NAMES)
def test_nothing_is_loaded_from_elsewhere(pages: dict[str, str], name: str) -> None:
    assert "//" not in pages[name]
    for element in read_elements(pages[name]):
        assert not [attribute for attribute in element.attributes if attribute.startswith("on")]
        assert element.tag != "script" or not element.text


@pytest.mark.parametrize("path", [*THEME.rglob("*.css"), *THEME.rglob("*.js")], ids=lambda path: path.name)
def test_style_and_script_load_nothing(path: Path) -> None:
    text = path.read_text()
    assert not re.search(r"url\(|@import|https?:|fetch\(|XMLHttpRequest|innerHTML|eval\(", text)


@pytest.mark.parametrize("name", NAMES)
def test_headings_begin_with_one_h1_and_skip_no_level(pages: dict[str, str], name: str) -> None:
    """WCAG 2.2 technique G141: headings are nested by level."""
    main = pages[name].split('<nav class="turn"')[0]
    levels = [int(tag[1]) for tag in re.findall(r"<(h[1-6])[ >]", main) for tag in [tag]]
    assert levels.count(1) == 1
    assert levels[0] == 1
    assert all(after - before <= 1 for before, after in pairwise(levels))


@pytest.mark.parametrize("name", NAMES)
def test_a_page_has_language_title_skip_link_and_landmarks(pages: dict[str, str], name: str) -> None:
    elements = read_elements(pages[name])
    assert elements[0].attributes["lang"] == "en"
    assert "Potting-bench lights" in next(e for e in elements if e.tag == "title").text
    assert next(e for e in elements if e.tag == "a").attributes["href"] == "#main"
    assert [sum(e.tag == tag for e in elements) for tag in ("main", "footer")] == [1, 1]


@pytest.mark.parametrize("name", NAMES)
def test_the_contents_mark_the_page_they_stand_on(pages: dict[str, str], name: str) -> None:
    current = [e for e in read_elements(pages[name]) if e.attributes.get("aria-current") == "page"]
    assert [e.attributes["href"] for e in current] == [name]


def test_previous_and_next_follow_the_reading_order(pages: dict[str, str]) -> None:
    def turn(name: str, way: str) -> list[str]:
        return [e.attributes["href"] for e in read_elements(pages[name]) if e.attributes.get("rel") == way]

    assert [turn(name, "next") for name in NAMES] == [[name] for name in NAMES[1:]] + [[]]
    assert [turn(name, "prev") for name in NAMES] == [[]] + [[name] for name in NAMES[:-1]]


@pytest.mark.parametrize("name", NAMES)
def test_pictures_have_words_and_a_size(pages: dict[str, str], name: str) -> None:
    for element in read_elements(pages[name]):
        if element.tag == "img":
            assert element.attributes["alt"]
            assert element.attributes["width"].isdigit()
            assert element.attributes["height"].isdigit()


def test_every_sentence_of_the_templates_is_extracted() -> None:
    """Text between tags, outside `{{ }}` and `{% %}`, is punctuation at most."""
    for template in THEME.glob("*.html"):
        text = re.sub(r"\{#.*?#\}|\{\{.*?\}\}|\{%.*?%\}", "", template.read_text(), flags=re.DOTALL)
        words = re.sub(r"<[^>]*>", "", text)
        assert not re.search(r"[A-Za-z]{2,}", words.replace("&quot;", "")), (template.name, words.split())
        spoken = re.findall(r'(?:alt|title|aria-label|placeholder|content)="([^"{]+)"', text)
        allowed = {"width=device-width, initial-scale=1", "light dark", "guidegen ", ""}
        assert set(spoken) <= allowed, (template.name, spoken)
