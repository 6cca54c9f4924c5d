"""`build --one-file`: one self-contained page, and nothing of the maker's lost."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from guidegen.build import build
from guidegen.errors import OutputError
from guidegen.paths import data_folder
from guidegen.publish.flatten import flatten, sheet_name
from guidegen.publish.references import read_document
from guidegen.publish.seal import is_sealed, sealed

SAMPLE = data_folder("sample_project") / "potting-bench.yaml"
NAME = "potting-bench.html"


@pytest.fixture(scope="module")
def one_file(tmp_path_factory: pytest.TempPathFactory) -> Path:
    out = tmp_path_factory.mktemp("one") / "guide"
    build(SAMPLE, out, one_file=True)
    return out / NAME


def test_it_is_the_only_file_and_under_two_megabytes(one_file: Path) -> None:
    assert [path.name for path in one_file.parent.iterdir()] == [NAME]
    assert one_file.stat().st_size < 2_000_000


def test_it_refers_to_nothing_outside_itself(one_file: Path) -> None:
    document = read_document(one_file)
    outside = [r.url for r in document.references if not r.url.startswith(("#", "data:"))]
    assert outside == []
    assert document.repeated_ids == []
    assert [
        r.url for r in document.references if r.url.startswith("#") and r.url[1:] not in document.ids
    ] == []


def test_it_holds_the_words_of_every_page(one_file: Path, tmp_path: Path) -> None:
    def words(path: Path) -> set[str]:
        body = path.read_text().partition("<main")[2].partition(">")[2].rpartition("</main>")[0]
        return set(re.sub(r"<[^>]*>", " ", body).split())

    build(SAMPLE, tmp_path / "guide")
    for page in (tmp_path / "guide").glob("*.html"):
        assert words(page) - words(one_file) <= {"Open", "the", "drawing", "alone"}, page.name


def test_every_sheet_can_be_reached_by_its_name(one_file: Path) -> None:
    ids = read_document(one_file).ids
    names = ("start", "stay-safe", "parts-and-tools", "wiring", "numbers", "light", "build", "readings")
    assert set(names) <= ids


def test_building_again_gives_the_same_bytes(one_file: Path, tmp_path: Path) -> None:
    build(SAMPLE, tmp_path / "other", one_file=True)
    assert (tmp_path / "other" / NAME).read_bytes() == one_file.read_bytes()
    build(SAMPLE, tmp_path / "other", one_file=True)
    assert (tmp_path / "other" / NAME).read_bytes() == one_file.read_bytes()


@pytest.mark.parametrize("edit", [b"mine", b""])
def test_a_file_that_the_maker_wrote_or_edited_stays(tmp_path: Path, edit: bytes) -> None:
    (tmp_path / NAME).write_bytes(edit)
    with pytest.raises(OutputError, match="Nothing was changed"):
        build(SAMPLE, tmp_path, one_file=True)
    assert (tmp_path / NAME).read_bytes() == edit


def test_a_guide_in_a_folder_keeps_the_one_file_beside_it(tmp_path: Path) -> None:
    build(SAMPLE, tmp_path / "guide", one_file=True)
    before = (tmp_path / "guide" / NAME).read_bytes()
    build(SAMPLE, tmp_path / "guide")
    build(SAMPLE, tmp_path / "guide")
    assert (tmp_path / "guide" / NAME).read_bytes() == before
    assert (tmp_path / "guide" / "index.html").exists()


def test_a_folder_takes_an_edited_one_file_for_the_makers(tmp_path: Path) -> None:
    build(SAMPLE, tmp_path / "guide", one_file=True)
    with (tmp_path / "guide" / NAME).open("a") as file:
        file.write("a note of mine\n")
    with pytest.raises(OutputError, match="Nothing was changed"):
        build(SAMPLE, tmp_path / "guide")


def test_other_files_in_the_folder_are_left_alone(tmp_path: Path) -> None:
    (tmp_path / "notes.txt").write_text("mine")
    build(SAMPLE, tmp_path, one_file=True)
    assert sorted(path.name for path in tmp_path.iterdir()) == ["notes.txt", NAME]


def test_a_seal_tells_an_edited_file() -> None:
    content = sealed(b"<p>text</p>")
    assert is_sealed(content)
    assert not is_sealed(content.replace(b"text", b"Text"))
    assert not is_sealed(content + b"\n")
    assert not is_sealed(b"")


def test_ids_and_links_are_told_apart_by_page() -> None:
    html = (
        '<html><head><link href="css/a.css"></head><body class="x"><main id="main">'
        '<h2 id="a">A &amp; B &#8364;</h2><a href="#a">here</a> <a href="index.html#b">there</a> '
        '<a href="light.html">light</a> <a href="https://example.org/">out</a>'
        '<nav data-alone><img src="gone.svg"><a href="#x">x</a></nav>'
        '<label for="i">l</label><input id="i" checked><svg viewBox="0 0 1 1"><path d="M0 0"/></svg>'
        '<img src="d/p.svg" alt=""></main></body></html>'
    )
    assert flatten(html, "wiring.html", {"d/p.svg": b"<svg/>"}) == (
        '<div id="wiring-main"><h2 id="wiring-a">A &amp; B &#8364;</h2><a href="#wiring-a">here</a> '
        '<a href="#start-b">there</a> <a href="#light">light</a> <a href="https://example.org/">out</a>'
        '<label for="wiring-i">l</label><input id="wiring-i" checked>'
        '<svg viewbox="0 0 1 1"><path d="M0 0"/></svg>'
        '<img src="data:image/svg+xml;base64,PHN2Zy8+" alt=""></div>'
    )


def test_the_first_page_is_called_start() -> None:
    assert [sheet_name(name) for name in ("index.html", "stay-safe.html")] == ["start", "stay-safe"]
