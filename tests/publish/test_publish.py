"""Publishing a guide: what is written, and that a failed build changes nothing."""

from __future__ import annotations

import hashlib
import json
import os
import subprocess
import sys
from gettext import NullTranslations
from pathlib import Path

import pytest

from guidegen import __version__
from guidegen.errors import OutputError
from guidegen.locale import speaking
from guidegen.publish import Asset, publish
from tests.publish.sample import DRAWING, ORIGIN, THEME, contents, page, publish_text

ROOT = Path(__file__).parents[2]


def test_the_guide_holds_its_pages_assets_theme_files_and_manifest_and_nothing_else(tmp_path):
    published = publish_text(tmp_path / "guide")
    expected = {
        "css/style.css",
        "drawings/schematic-1.svg",
        "guidegen-manifest.json",
        "index.html",
        "stay-safe.html",
    }
    assert set(contents(tmp_path / "guide")) == expected
    assert published.files == tuple(sorted(expected))
    assert published.folder == tmp_path / "guide"


def test_nothing_is_left_beside_the_guide(tmp_path):
    publish_text(tmp_path / "guide")
    assert [path.name for path in tmp_path.iterdir()] == ["guide"]


def test_pages_come_in_the_order_given_with_their_titles(tmp_path):
    publish([page(), page("b.html", "Bee"), page("a.html", "Ay")], [], {}, THEME, tmp_path / "guide", ORIGIN)
    text = (tmp_path / "guide" / "a.html").read_text()
    assert text.index('index.html">Start here<') < text.index('b.html">Bee<') < text.index('a.html">Ay<')
    assert "<title>Ay</title>" in text


def test_the_manifest_has_the_hash_of_every_file_and_the_version_and_no_date(tmp_path):
    publish_text(tmp_path / "guide")
    manifest = json.loads((tmp_path / "guide" / "guidegen-manifest.json").read_text())
    files = contents(tmp_path / "guide")
    del files["guidegen-manifest.json"]
    hashes = {name: hashlib.sha256(content).hexdigest() for name, content in files.items()}
    project = {"title": "Shelf lights", "file": "shelf.yaml"}
    assert manifest == {
        "made_by": "guidegen",
        "version": __version__,
        "project": project,
        "files": hashes,
    }


@pytest.mark.parametrize(
    "markup", ["<script>x</script>", '"><img src=x>', "{{ 7 * 7 }}", "{% raw %}", "a & b"]
)
def test_markup_in_a_text_is_shown_as_text(tmp_path, markup):
    publish_text(tmp_path / "guide", text=markup)
    text = (tmp_path / "guide" / "index.html").read_text()
    escaped = markup.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;").replace('"', "&#34;")
    assert f"<p>{escaped}</p>" in text


def test_markup_in_a_title_is_shown_as_text(tmp_path):
    publish([page(title="<b>: 'x'\n---")], [], {}, THEME, tmp_path / "guide", ORIGIN)
    assert "<title>&lt;b&gt;: &#39;x&#39;\n---</title>" in (tmp_path / "guide" / "index.html").read_text()


def test_templates_translate_through_the_catalogue_in_force(tmp_path):
    class Shouting(NullTranslations):
        def gettext(self, message: str) -> str:
            return message.upper() + " 5 %"

    with speaking(Shouting()):
        publish_text(tmp_path / "guide")
    assert 'aria-label="PAGES 5 %"' in (tmp_path / "guide" / "index.html").read_text()


def test_shared_values_reach_the_templates(tmp_path):
    theme = tmp_path / "theme"
    theme.mkdir()
    (theme / "t.html").write_text("<p>{{ guide.text }}</p>")
    publish(
        [page(template="t.html")], [], {"guide": page(text="shared").model}, theme, tmp_path / "guide", ORIGIN
    )
    assert (tmp_path / "guide" / "index.html").read_text() == "<p>shared</p>"


@pytest.mark.parametrize("name", ["build_date_utc", "config", "mkdocs_version"])
def test_templates_cannot_see_a_date_or_the_machines_paths(tmp_path, name):
    theme = tmp_path / "theme"
    theme.mkdir()
    (theme / "t.html").write_text("{{ " + name + " }}")
    with pytest.raises(OutputError, match=f"'{name}' is undefined"):
        publish([page(template="t.html")], [], {}, theme, tmp_path / "guide", ORIGIN)


def test_an_undefined_field_is_an_error_that_names_the_page(tmp_path, capfd):
    with pytest.raises(OutputError, match=r"(?s)index\.html.*no_such_field"):
        publish([page(template="undefined.html")], [], {}, THEME, tmp_path / "guide", ORIGIN)
    assert capfd.readouterr() == ("", "")


def test_a_missing_template_is_an_error(tmp_path):
    with pytest.raises(OutputError, match=r"nowhere\.html"):
        publish([page(template="nowhere.html")], [], {}, THEME, tmp_path / "guide", ORIGIN)


@pytest.mark.parametrize(
    "build_wrong",
    [
        lambda out: publish([page(template="undefined.html")], [], {}, THEME, out, ORIGIN),
        lambda out: publish([page(links=("gone.html",))], [], {}, THEME, out, ORIGIN),
    ],
    ids=["page that cannot be rendered", "broken link"],
)
def test_a_failed_build_leaves_the_old_guide_whole_and_no_litter(tmp_path, build_wrong):
    out = tmp_path / "guide"
    publish_text(out, "old")
    before = contents(tmp_path)
    with pytest.raises(OutputError):
        build_wrong(out)
    assert contents(tmp_path) == before
    assert [path.name for path in tmp_path.iterdir()] == ["guide"]


def test_a_failed_first_build_leaves_nothing_and_takes_the_folders_it_made_away(tmp_path):
    with pytest.raises(OutputError):
        publish([page(template="undefined.html")], [], {}, THEME, tmp_path / "a" / "b" / "guide", ORIGIN)
    assert list(tmp_path.iterdir()) == []


def test_a_second_build_replaces_the_guide_as_a_whole(tmp_path):
    out = tmp_path / "guide"
    publish([page(), page("gone.html", "Gone")], [DRAWING], {}, THEME, out, ORIGIN)
    publish([page(text="new")], [], {}, THEME, out, ORIGIN)
    assert set(contents(out)) == {"index.html", "css/style.css", "guidegen-manifest.json"}
    assert "<p>new</p>" in (out / "index.html").read_text()


@pytest.mark.parametrize(
    "path", ["../x.svg", "/x.svg", "a//b.svg", ".hidden", "note.md", "a.html", "", "a\\b.svg"]
)
def test_an_asset_name_that_no_guide_may_have_is_a_mistake_of_the_caller(tmp_path, path):
    with pytest.raises(ValueError, match="names that a guide may not have"):
        publish([page()], [Asset(path, b"")], {}, THEME, tmp_path / "guide", ORIGIN)


@pytest.mark.parametrize(
    "pages",
    [[], [page("first.html")], [page(), page()], [page(), page("../x.html")], [page(), page("A.html")]],
)
def test_a_page_name_that_no_guide_may_have_is_a_mistake_of_the_caller(tmp_path, pages):
    with pytest.raises(ValueError, match=r"index\.html|names that a guide may not have"):
        publish(pages, [], {}, THEME, tmp_path / "guide", ORIGIN)


def test_an_asset_cannot_take_the_place_of_a_theme_file(tmp_path):
    with pytest.raises(OutputError, match=r"css/style\.css"):
        publish([page()], [Asset("css/style.css", b"")], {}, THEME, tmp_path / "guide", ORIGIN)


@pytest.mark.parametrize("path", ["templates/a.png", "README.txt", "sub/_b.json"])
def test_no_default_exclusion_drops_an_asset(tmp_path, path):
    publish([page()], [Asset(path, b"x")], {}, THEME, tmp_path / "guide", ORIGIN)
    assert (tmp_path / "guide" / path).read_bytes() == b"x"


SURROUNDINGS = {
    "elsewhere": {},
    "other time zone": {"TZ": "Pacific/Kiritimati"},
    "other locale": {"LANG": "tr_TR.UTF-8", "LC_ALL": "C"},
    "hash seed 1": {"PYTHONHASHSEED": "1"},
    "hash seed 2": {"PYTHONHASHSEED": "2"},
    "other day": {"SOURCE_DATE_EPOCH": "86400"},  # what MkDocs takes for today
}


@pytest.mark.parametrize("name", SURROUNDINGS)
def test_the_same_guide_has_the_same_bytes_whatever_surrounds_the_build(tmp_path, name):
    publish_text(tmp_path / "here", "same")
    folder = tmp_path / "an other  folder"
    folder.mkdir()
    script = "from tests.publish.sample import *; publish_text(Path('sub/guide'), 'same')"
    surroundings = {**os.environ, "PYTHONPATH": str(ROOT), **SURROUNDINGS[name]}
    subprocess.run([sys.executable, "-c", script], cwd=folder, env=surroundings, check=True)
    assert contents(folder / "sub" / "guide") == contents(tmp_path / "here")
