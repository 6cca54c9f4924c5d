"""Where a guide may be written, and that nothing of the maker's is ever lost."""

from __future__ import annotations

import json
import os
from pathlib import Path

import pytest

from guidegen.errors import OutputError
from guidegen.publish import Origin
from tests.publish.sample import ORIGIN, contents, publish_text


def refused(out: Path, match: str) -> str:
    """The message with which publishing to `out` is refused; nothing near it may change."""
    before = contents(out.parent) if out.parent.is_dir() else None
    with pytest.raises(OutputError, match=match) as caught:
        publish_text(out)
    if before is not None:
        assert contents(out.parent) == before
    return caught.value.format_message()


def test_an_empty_folder_is_taken(tmp_path):
    (tmp_path / "guide").mkdir()
    publish_text(tmp_path / "guide")
    assert (tmp_path / "guide" / "index.html").is_file()


def test_missing_folders_above_are_made(tmp_path):
    publish_text(tmp_path / "a" / "b" / "guide")
    assert (tmp_path / "a" / "b" / "guide" / "index.html").is_file()


def test_a_file_is_refused(tmp_path):
    (tmp_path / "guide").write_text("mine")
    assert "--out" in refused(tmp_path / "guide", "is a file")


def test_a_symbolic_link_is_refused(tmp_path):
    (tmp_path / "real").mkdir()
    (tmp_path / "guide").symlink_to(tmp_path / "real")
    refused(tmp_path / "guide", "is a symbolic link")


def test_a_dangling_symbolic_link_is_refused(tmp_path):
    (tmp_path / "guide").symlink_to(tmp_path / "nowhere")
    refused(tmp_path / "guide", "is a symbolic link")


def test_a_link_among_the_folders_above_is_followed(tmp_path):
    (tmp_path / "real").mkdir()
    (tmp_path / "link").symlink_to(tmp_path / "real")
    assert publish_text(tmp_path / "link" / "guide").folder == tmp_path / "real" / "guide"


@pytest.mark.parametrize("out", [".", "..", "../guide", "sub/.."])
def test_the_current_folder_and_those_above_are_refused(tmp_path, monkeypatch, out):
    (tmp_path / "guide" / "sub").mkdir(parents=True)
    monkeypatch.chdir(tmp_path / "guide")
    with pytest.raises(OutputError, match="cannot be the folder you are in"):
        publish_text(Path(out))


def test_a_folder_with_files_and_no_manifest_is_refused(tmp_path):
    (tmp_path / "guide").mkdir()
    (tmp_path / "guide" / "photo.jpg").write_bytes(b"mine")
    assert "Name a new or empty folder" in refused(tmp_path / "guide", "is not empty")


@pytest.mark.parametrize(
    "manifest",
    [
        "",
        "{",
        "[]",
        "null",
        '{"files": {}}',
        '{"made_by": "someone", "files": {}}',
        '{"made_by": "guidegen", "files": 3}',
    ],
)
def test_a_folder_with_a_manifest_that_is_not_ours_is_refused(tmp_path, manifest):
    (tmp_path / "guide").mkdir()
    (tmp_path / "guide" / "guidegen-manifest.json").write_text(manifest)
    refused(tmp_path / "guide", "guidegen did not write it")


def test_an_edited_file_is_named_and_kept(tmp_path):
    publish_text(tmp_path / "guide", "old")
    (tmp_path / "guide" / "index.html").write_text("my own words")
    message = refused(tmp_path / "guide", "edited: index.html")
    assert message.startswith(f"{tmp_path / 'guide'} holds files that were edited since guidegen wrote them.")
    assert "added" not in message
    assert "Move these files elsewhere" in message


def test_an_added_file_is_named_and_kept(tmp_path):
    publish_text(tmp_path / "guide", "old")
    (tmp_path / "guide" / "drawings" / "mine.svg").write_text("mine")
    message = refused(tmp_path / "guide", "added: drawings/mine.svg")
    assert message.startswith(f"{tmp_path / 'guide'} holds files that guidegen did not write.")
    assert "edited" not in message


def test_added_and_edited_files_are_told_apart(tmp_path):
    publish_text(tmp_path / "guide", "old")
    (tmp_path / "guide" / "index.html").write_text("my own words")
    (tmp_path / "guide" / "mine.svg").write_text("mine")
    message = refused(tmp_path / "guide", "did not write, or that were edited since")
    assert message.splitlines()[1:3] == ["  added: mine.svg", "  edited: index.html"]


@pytest.mark.parametrize("name", [".DS_Store", "Thumbs.db", "desktop.ini", "drawings/.DS_Store"])
def test_a_file_that_the_system_puts_there_is_no_hindrance_and_stays(tmp_path, name):
    publish_text(tmp_path / "guide", "old")
    (tmp_path / "guide" / name).write_bytes(b"of the system")
    publish_text(tmp_path / "guide", "new")
    assert "new" in (tmp_path / "guide" / "index.html").read_text()
    assert (tmp_path / "guide" / name).read_bytes() == b"of the system"


def test_a_folder_with_a_file_of_the_system_alone_counts_as_empty(tmp_path):
    (tmp_path / "guide").mkdir()
    (tmp_path / "guide" / ".DS_Store").write_bytes(b"of the system")
    publish_text(tmp_path / "guide")
    assert (tmp_path / "guide" / ".DS_Store").read_bytes() == b"of the system"


def test_a_folder_with_the_name_of_a_system_s_file_is_the_makers(tmp_path):
    publish_text(tmp_path / "guide", "old")
    (tmp_path / "guide" / "Thumbs.db").mkdir()
    refused(tmp_path / "guide", "added: Thumbs.db")


def test_every_message_has_the_whole_path(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    (tmp_path / "guide").write_text("mine")
    with pytest.raises(OutputError, match=f"^{tmp_path / 'guide'} is a file"):
        publish_text(Path("guide"))


@pytest.mark.parametrize(
    "origin", [Origin("Shelf lights", "other.yaml"), Origin("Other lights", "shelf.yaml")]
)
def test_a_guide_of_another_project_that_is_replaced_is_told(tmp_path, origin):
    publish_text(tmp_path / "guide", "old")
    assert publish_text(tmp_path / "guide", "new", origin=origin).replaced == ORIGIN


def test_a_guide_of_the_same_project_is_replaced_without_a_word(tmp_path):
    publish_text(tmp_path / "guide", "old")
    assert publish_text(tmp_path / "guide", "new").replaced is None


def test_a_manifest_without_a_project_is_read_all_the_same(tmp_path):
    publish_text(tmp_path / "guide", "old")
    manifest = tmp_path / "guide" / "guidegen-manifest.json"
    told = json.loads(manifest.read_text())
    del told["project"]
    manifest.write_text(json.dumps(told))
    assert publish_text(tmp_path / "guide", "new").replaced is None


def test_an_added_empty_folder_is_named_and_kept(tmp_path):
    publish_text(tmp_path / "guide", "old")
    (tmp_path / "guide" / "photos").mkdir()
    refused(tmp_path / "guide", "added: photos")
    assert (tmp_path / "guide" / "photos").is_dir()


def test_a_link_put_in_the_place_of_a_file_counts_as_edited(tmp_path):
    publish_text(tmp_path / "guide", "old")
    page = tmp_path / "guide" / "index.html"
    page.rename(tmp_path / "moved.html")
    page.symlink_to(tmp_path / "moved.html")
    refused(tmp_path / "guide", "edited: index.html")


def test_a_folder_behind_a_link_is_not_looked_into(tmp_path):
    publish_text(tmp_path / "guide", "old")
    (tmp_path / "guide" / "loop").symlink_to(tmp_path)
    refused(tmp_path / "guide", "added: loop")


def test_a_long_list_of_the_makers_files_is_cut(tmp_path):
    publish_text(tmp_path / "guide", "old")
    for number in range(30):
        (tmp_path / "guide" / f"photo-{number:02}.jpg").write_bytes(b"mine")
    message = refused(tmp_path / "guide", "added: photo-00.jpg")
    assert "added: and 18 more" in message  # 30 less the dozen named


def test_a_page_that_the_maker_deleted_comes_back(tmp_path):
    publish_text(tmp_path / "guide")
    (tmp_path / "guide" / "stay-safe.html").unlink()
    publish_text(tmp_path / "guide")
    assert (tmp_path / "guide" / "stay-safe.html").is_file()


def test_a_manifest_that_names_files_outside_the_folder_reaches_none_of_them(tmp_path):
    publish_text(tmp_path / "guide")
    (tmp_path / "mine.txt").write_text("mine")
    manifest = tmp_path / "guide" / "guidegen-manifest.json"
    told = json.loads(manifest.read_text())
    told["files"]["../mine.txt"] = "0"
    manifest.write_text(json.dumps(told))
    publish_text(tmp_path / "guide")
    assert (tmp_path / "mine.txt").read_text() == "mine"


def test_a_file_among_the_folders_above_is_told(tmp_path):
    (tmp_path / "file").write_text("mine")
    assert "--out" in refused(tmp_path / "file" / "guide", f"^{tmp_path / 'file'} is a file, so no folder")


def test_a_folder_that_may_not_be_written_is_told(tmp_path):
    tmp_path.chmod(0o555)
    was_root = os.geteuid() == 0
    if was_root:  # root may write anywhere: be nobody for the while
        publish_text(tmp_path / "loads every module" / "guide")
        os.seteuid(65534)
    try:
        with pytest.raises(OutputError, match=r"cannot be written to .*guide: Permission denied") as told:
            publish_text(tmp_path / "guide")
        assert "earlier guide" not in str(told.value)  # there is none
    finally:
        if was_root:
            os.seteuid(0)
        tmp_path.chmod(0o755)


def test_a_name_too_long_for_the_file_system_is_told(tmp_path):
    refused(tmp_path / ("x" * 300), "File name too long")
