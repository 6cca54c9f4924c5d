"""A guide with the maker's photos, words and steps, built whole."""

from __future__ import annotations

import re
import shutil
import subprocess
import sys
from pathlib import Path

import pytest
from PIL import Image

from guidegen.build import build
from guidegen.errors import ProjectError
from guidegen.paths import data_folder
from guidegen.project.read import read_project
from tests.build.test_build import files_of
from tests.theme.html_reading import Element, read_elements

SAMPLE = data_folder("sample_project") / "potting-bench.yaml"
OWN = r"""
photos:
  cover: {file: lit.jpg, alt: "The bench & its \"lights\" <lit>"}
  lit: {file: lit.jpg, alt: Both rows lit}
  unlit: {file: photos/unlit.png, alt: Both rows dark}
steps:
  - step: fuse-in
    text: Slowly & *gently*.
    note: See [the shop](https://shop.example/?a=1&b=2).
    photo: {file: photos/unlit.png, alt: The fuse}
  - {before: hang, title: "Paint <b>hooks</b>", text: "1. Clean.\n2. Paint."}
  - {after: hang, title: Sweep up, text: "# Soon\nWire ends are sharp.", note: A magnet helps.}
story: |
  Our bench stood in the dark.

  ## Why two rows
  - cheap
  - even
licence: CC BY 4.0
"""


def write_project(folder: Path, own: str = OWN) -> Path:
    """The sample project with what a maker adds, in a folder with its photos."""
    (folder / "photos").mkdir(parents=True)
    Image.linear_gradient("L").convert("RGB").resize((640, 400)).save(
        folder / "lit.jpg", comment=b"Hidden Lane 7"
    )
    Image.new("RGB", (320, 480), "navy").save(folder / "photos" / "unlit.png")
    path = folder / "bench.yaml"
    path.write_text(SAMPLE.read_text() + own)
    return path


@pytest.fixture(scope="module")
def guide(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The folder of such a guide."""
    folder = tmp_path_factory.mktemp("own")
    build(write_project(folder / "project"), folder / "guide")
    return folder / "guide"


@pytest.fixture(scope="module")
def one_file(tmp_path_factory: pytest.TempPathFactory) -> str:
    """Such a guide in one file."""
    folder = tmp_path_factory.mktemp("one")
    build(write_project(folder / "project"), folder / "guide", one_file=True)
    return (folder / "guide" / "bench.html").read_text()


def elements(guide: Path, page: str) -> list[Element]:
    return read_elements((guide / page).read_text())


def photos_on(guide: Path, page: str) -> list[dict[str, str]]:
    found = (element.attributes for element in elements(guide, page) if element.tag == "img")
    return [attributes for attributes in found if attributes["src"].startswith("photos/")]


def test_photos_are_published_in_a_folder_of_their_own(guide: Path) -> None:
    names = sorted(name for name in files_of(guide) if name.startswith("photos/"))
    assert [Path(name).stem for name in names] == ["photo-1", "photo-2"]


def test_photos_have_their_words_and_their_true_size(guide: Path) -> None:
    for page in ("index.html", "build.html"):
        for shown in photos_on(guide, page):
            with Image.open(guide / shown["src"]) as image:
                assert (int(shown["width"]), int(shown["height"])) == image.size
            assert shown["alt"]


def test_the_first_page_shows_cover_lit_and_unlit_before_the_chart(guide: Path) -> None:
    pictures = [element.attributes for element in elements(guide, "index.html") if element.tag == "img"]
    assert [picture["alt"] for picture in pictures[:3]] == [
        'The bench & its "lights" <lit>',
        "Both rows lit",
        "Both rows dark",
    ]
    assert pictures[3]["src"] == "drawings/light.svg"


def test_lit_and_unlit_stand_side_by_side_and_are_told_apart_in_words(guide: Path) -> None:
    page = elements(guide, "index.html")
    assert [element.has_class("two") for element in page if element.has_class("views")] == [True]
    captions = [element.text for element in page if element.tag == "figcaption"]
    assert captions[:2] == ["Lit", "Not lit"]


def test_one_of_them_alone_needs_no_such_words(tmp_path: Path) -> None:
    own = "photos: {unlit: {file: lit.jpg, alt: Dark}}\n"
    build(write_project(tmp_path / "project", own), tmp_path / "guide")
    page = elements(tmp_path / "guide", "index.html")
    assert [element.has_class("two") for element in page if element.has_class("views")] == [False]
    assert "Not lit" not in [element.text for element in page if element.tag == "figcaption"]


def test_every_step_is_found_by_its_id(guide: Path) -> None:
    steps = [
        element.attributes["id"] for element in elements(guide, "build.html") if element.has_class("step")
    ]
    assert {"supply-marks", "fuse-in", "hang", "own-sweep-up"} <= set(steps)
    links = [
        element.attributes.get("href") for element in elements(guide, "build.html") if element.tag == "a"
    ]
    assert all(f"#{step}" in links for step in steps)


def test_own_steps_are_marked_numbered_and_ticked_off_like_the_others(guide: Path) -> None:
    page = (guide / "build.html").read_text()
    card = page[page.index('id="own-sweep-up"') :].split("</article>")[0]
    number = re.search(r'data-number="(\d+)" id="own-sweep-up"', page)
    hang = re.search(r'data-number="(\d+)" id="hang"', page)
    assert number and hang and int(number[1]) == int(hang[1]) + 1
    assert "own step: not worked out by guidegen" in card
    assert 'data-keep="step-own-sweep-up"' in card


def test_the_list_of_groups_counts_the_own_steps(guide: Path) -> None:
    page = (guide / "build.html").read_text()
    steps = len(re.findall(r'<article class="step', page))
    assert f"to {steps}</span>" in page.replace("\u00a0", " ")


def test_what_is_added_stands_behind_cautions_work_and_checks(guide: Path) -> None:
    page = (guide / "build.html").read_text()
    card = page[page.index('id="fuse-in"') :].split("</article>")[0]
    order = [card.index(f'class="{name}') for name in ("step-cautions", "step-flow", "check", "own")]
    assert order == sorted(order)


def test_words_are_rendered_with_headings_below_those_of_the_page(guide: Path) -> None:
    start, steps = (guide / "index.html").read_text(), (guide / "build.html").read_text()
    assert "<h3>Why two rows</h3>" in start
    assert "<h4>Soon</h4>" in steps
    assert "Slowly &amp; <em>gently</em>." in steps
    assert '<a href="https://shop.example/?a=1&amp;b=2" rel="noopener noreferrer">the shop</a>' in steps


def test_a_title_is_no_markdown_and_no_html(guide: Path) -> None:
    assert "Paint &lt;b&gt;hooks&lt;/b&gt;" in (guide / "build.html").read_text()


def test_the_licence_stands_on_the_first_page_and_at_the_foot_of_every_page(guide: Path) -> None:
    pages = {name: content.decode() for name, content in files_of(guide).items() if name.endswith(".html")}
    assert pages["index.html"].count("CC BY 4.0") >= 2
    assert all("Licence: CC BY 4.0" in page for page in pages.values())


def test_the_guide_holds_no_metadata_of_the_photos(guide: Path) -> None:
    assert not [name for name, content in files_of(guide).items() if b"Hidden Lane 7" in content]


def test_one_file_holds_the_photos_and_needs_no_other(one_file: str) -> None:
    sources = re.findall(r'<img src="([^"]*)"', one_file)
    assert sources
    assert all(source.startswith("data:image/") for source in sources)
    assert "data:image/jpeg;base64," in one_file
    assert "photos/photo" not in one_file


def test_one_file_has_the_steps_by_page_and_id(one_file: str) -> None:
    assert 'id="build-own-sweep-up"' in one_file
    assert 'href="#build-own-sweep-up"' in one_file


@pytest.mark.parametrize("one", [False, True])
def test_the_same_bytes_from_another_folder(tmp_path: Path, one: bool) -> None:
    first = write_project(tmp_path / "one" / "project")
    shutil.copytree(first.parent, tmp_path / "two" / "elsewhere")
    build(first, tmp_path / "one" / "guide", one_file=one)
    build(tmp_path / "two" / "elsewhere" / "bench.yaml", tmp_path / "two" / "guide", one_file=one)
    assert files_of(tmp_path / "one" / "guide") == files_of(tmp_path / "two" / "guide")


def test_photos_and_steps_at_fault_are_told_together_and_nothing_is_written(tmp_path: Path) -> None:
    own = (
        "photos: {lit: {file: lit.jpg, alt: Lit}, unlit: {file: photos/unlit.png, alt: Dark}}\n"
        "steps: [{step: fuze-in, note: x}]\n"
    )
    path = write_project(tmp_path / "project", own)
    for name in ("lit.jpg", "photos/unlit.png"):
        whole = (tmp_path / "project" / name).read_bytes()
        (tmp_path / "project" / name).write_bytes(whole[: len(whole) * 2 // 3])
    with pytest.raises(ProjectError) as caught:
        build(path, tmp_path / "guide")
    assert {fault.key for fault in caught.value.faults} == {
        "photos.lit.file",
        "photos.unlit.file",
        "steps[1].step",
    }
    assert not (tmp_path / "guide").exists()


def test_check_tells_of_photos_and_of_unknown_steps(tmp_path: Path) -> None:
    path = write_project(tmp_path / "project", "photos: {lit: {file: gone.jpg, alt: x}}\n")
    assert "photos.lit.file" in _check(path, 1)
    path.write_text(SAMPLE.read_text() + "\nsteps: [{step: fuze-in, note: x}]\n")
    assert "did you mean fuse-in?" in _check(path, 1)
    path.write_text(SAMPLE.read_text() + OWN)
    assert _check(path, 0) == ""


def _check(path: Path, status: int) -> str:
    """What `check` says of what is wrong."""
    command = [sys.executable, "-m", "guidegen", "check", str(path)]
    done = subprocess.run(command, capture_output=True, text=True, check=False)
    assert done.returncode == status
    return done.stderr


NASTY = "<script>alert(1)</script>\"'><img src=x onerror=alert(1)>&lt;b&gt; & &amp;"


def test_markup_in_any_text_of_the_maker_s_reaches_no_page(tmp_path: Path) -> None:
    quoted = "'" + NASTY.replace("'", "''") + "'"
    own = f"""
photos: {{lit: {{file: lit.jpg, alt: {quoted}}}}}
steps:
  - {{step: hang, text: {quoted}, note: {quoted}, photo: {{file: lit.jpg, alt: {quoted}}}}}
  - {{after: hang, title: {quoted}, text: {quoted}}}
story: {quoted}
licence: {quoted}
"""
    path = write_project(tmp_path / "project", own)
    build(path, tmp_path / "guide")
    assert read_project(path).project.licence == NASTY
    for name in ("index.html", "build.html"):
        page = read_elements((tmp_path / "guide" / name).read_text())
        assert [element for element in page if "onerror" in element.attributes] == []
        assert [element.attributes.get("src") for element in page if element.tag == "script"] == [
            "js/workshop.js"
        ]
        assert {
            element.attributes["alt"]
            for element in page
            if element.attributes.get("src", "").startswith("photos/")
        } == {NASTY}
        assert "&amp;lt;script" not in (tmp_path / "guide" / name).read_text()
    titles = [
        element.text
        for element in read_elements((tmp_path / "guide" / "build.html").read_text())
        if element.tag == "h3"
    ]
    assert any(title.endswith(NASTY) for title in titles)
