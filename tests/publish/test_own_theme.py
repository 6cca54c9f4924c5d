"""A theme of one's own: what is no theme, or a broken one, is told, and costs no earlier guide."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from guidegen.errors import OutputError
from guidegen.publish import publish, publish_one_file
from tests.publish.sample import DRAWING, ORIGIN, THEME, contents, page, publish_text


@pytest.fixture
def theme(tmp_path: Path) -> Path:
    """A copy of the small theme, to break; it has a template for one file too."""
    folder = Path(shutil.copytree(THEME, tmp_path / "theme", ignore=shutil.ignore_patterns("__pycache__")))
    (folder / "one-file.html").write_text("{% for sheet in sheets %}{{ sheet.body }}{% endfor %}")
    return folder


def write_folder(theme: Path, out: Path) -> None:
    publish([page()], [DRAWING], {}, theme, out, ORIGIN)


def write_one_file(theme: Path, out: Path) -> None:
    publish_one_file([page()], [DRAWING], {}, theme, out / "guide.html")


WAYS = pytest.mark.parametrize("write", [write_folder, write_one_file])


@WAYS
def test_a_theme_that_is_not_there_is_told(tmp_path, write):
    with pytest.raises(OutputError, match=r"There is no folder .*nowhere\. Name .* with --theme"):
        write(tmp_path / "nowhere", tmp_path / "guide")
    assert list(tmp_path.iterdir()) == []


@WAYS
def test_a_file_is_no_theme(tmp_path, write):
    (tmp_path / "theme.zip").write_bytes(b"PK")
    with pytest.raises(OutputError, match=r"theme\.zip is a file, and a theme is a folder"):
        write(tmp_path / "theme.zip", tmp_path / "guide")


@WAYS
def test_every_missing_template_is_named(tmp_path, theme, write):
    (theme / "page.html").unlink()
    with pytest.raises(OutputError, match=r"has no template of this name: page\.html\. Nothing was changed"):
        write(theme, tmp_path / "guide")


def test_one_file_needs_its_own_template_and_a_folder_does_not(tmp_path, theme):
    (theme / "one-file.html").unlink()
    write_folder(theme, tmp_path / "guide")
    with pytest.raises(OutputError, match=r"one-file\.html"):
        write_one_file(theme, tmp_path / "other")


@WAYS
@pytest.mark.parametrize(
    ("wrong", "told"),
    [
        ("\n{% if %}", r"page\.html, line 2: Expected an expression"),
        ("\n\n{{ 1 / 0 }}", r"page\.html, line 3: division by zero"),
        ("{{ page_model.colour }}", r"page\.html, line 1: .*has no attribute 'colour'"),
        ("\n{% include 'gone.html' %}", r"page\.html, line 2: 'gone\.html' not found"),
        ("{{ [1] + 1 }}", r"page\.html, line 1: can only concatenate list"),
    ],
)
def test_a_broken_template_is_told_with_its_line(tmp_path, theme, write, wrong, told):
    (theme / "page.html").write_text(wrong)
    with pytest.raises(OutputError, match=told):
        write(theme, tmp_path / "guide")


@WAYS
def test_a_template_in_another_encoding_is_told(tmp_path, theme, write):
    (theme / "page.html").write_bytes("é".encode("latin-1"))
    with pytest.raises(OutputError, match="no UTF-8 text"):
        write(theme, tmp_path / "guide")


def test_a_broken_template_for_one_file_is_told_with_its_line(tmp_path, theme):
    (theme / "one-file.html").write_text("\n{{ sheets.nothing() }}")
    with pytest.raises(OutputError, match=r"one-file\.html, line 2"):
        write_one_file(theme, tmp_path / "guide")


@WAYS
@pytest.mark.parametrize("name", ["css/style.css", "mark.svg"])
def test_a_file_that_cannot_be_read_is_named(tmp_path, theme, write, name):
    (theme / name).write_bytes(b"\xff")
    with pytest.raises(OutputError, match=f"{name} (of the theme cannot be read|is not well-formed)"):
        write(theme, tmp_path / "guide")


def test_a_script_in_another_encoding_is_told(tmp_path, theme):
    (theme / "a.js").write_bytes(b"\xff")
    with pytest.raises(OutputError, match="no UTF-8 text"):
        write_one_file(theme, tmp_path / "guide")


def test_a_picture_that_cannot_stand_in_one_file_is_named(tmp_path, theme):
    (theme / "logo.bmp").write_bytes(b"BM")
    (theme / "page.html").write_text("<body><img src='logo.bmp' alt=''></body>")
    with pytest.raises(OutputError, match=r"logo\.bmp.*\.png"):
        write_one_file(theme, tmp_path / "guide")


@WAYS
def test_a_file_of_the_theme_cannot_take_the_place_of_a_drawing(tmp_path, theme, write):
    (theme / "drawings").mkdir()
    (theme / "drawings" / "schematic-1.svg").write_text("<svg/>")
    with pytest.raises(OutputError, match=r"drawings/schematic-1\.svg"):
        write(theme, tmp_path / "guide")


@WAYS
def test_the_guide_cannot_go_into_its_theme(tmp_path, theme, write):
    before = contents(theme)
    with pytest.raises(OutputError, match="cannot go into the folder of its theme"):
        write(theme, theme / "guide")
    assert contents(theme) == before


def test_a_broken_theme_leaves_the_earlier_guide_as_it_was(tmp_path, theme):
    out = tmp_path / "guide"
    publish_text(out, "old")
    before = contents(out)
    for wrong in ("{% if %}", "{{ 1 / 0 }}"):
        (theme / "page.html").write_text(wrong)
        with pytest.raises(OutputError):
            publish_text(out, "new", theme=theme)
    assert contents(out) == before
    assert not (tmp_path / ".guide.guidegen-work").exists()


def test_a_broken_theme_leaves_the_earlier_file_as_it_was(tmp_path, theme):
    write_one_file(theme, tmp_path / "guide")
    before = contents(tmp_path / "guide")
    (theme / "page.html").write_text("{{ 1 / 0 }}")
    with pytest.raises(OutputError):
        write_one_file(theme, tmp_path / "guide")
    assert contents(tmp_path / "guide") == before


def test_a_theme_that_cannot_be_written_into_stays_as_it_is(tmp_path, theme, monkeypatch):
    """A file where compiled templates would go stands for a folder closed to writing, which root is never."""
    monkeypatch.setattr("sys.dont_write_bytecode", False)
    (theme / "__pycache__").write_text("closed")
    before = contents(theme)
    write_folder(theme, tmp_path / "guide")
    assert contents(theme) == before
    assert (tmp_path / "guide" / "index.html").exists()
