"""Files that cannot even be read as text, each with its exact message."""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from guidegen.errors import ProjectError
from guidegen.project.read import read_project
from guidegen.project.source import LARGEST_FILE

SMALL = Path(__file__).with_name("small.yaml").read_text("utf-8")


def message(path: str | Path) -> str:
    with pytest.raises(ProjectError) as caught:
        read_project(path)
    return caught.value.format_message()


def whole_file(name: str, came: str, mend: str) -> str:
    return (
        f"{name}\n"
        f"  came:     {came}\n"
        "  expected: a project file, which is a text file in YAML\n"
        f"  mend:     {mend}"
    )


@pytest.fixture(autouse=True)
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.chdir(tmp_path)
    return tmp_path


def test_a_missing_file() -> None:
    assert message("lights.yaml") == whole_file(
        "lights.yaml", "no such file", "check the name and the folder"
    )


def test_a_misspelt_file_name_is_recognised(folder: Path) -> None:
    (folder / "lights.yaml").write_text(SMALL)
    assert message("lihgts.yaml") == whole_file("lihgts.yaml", "no such file", "did you mean lights.yaml?")


def test_the_name_is_shown_as_it_was_typed() -> None:
    assert message("./sub/../x.yaml").startswith("./sub/../x.yaml\n")


def test_a_folder(folder: Path) -> None:
    (folder / "lights").mkdir()
    mend = "give the path of the file in it, such as lights.yaml"
    assert message("lights") == whole_file("lights", "a folder", mend)


def test_a_pipe(folder: Path) -> None:
    os.mkfifo(folder / "pipe.yaml")
    came, mend = "something that is no ordinary file", "save the text in a file first"
    assert message("pipe.yaml") == whole_file("pipe.yaml", came, mend)


def test_no_permission(folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    # Raised by hand, since an administrator may read every file.
    def refuse(*_args: object, **_options: object) -> None:
        raise PermissionError(13, "Permission denied")

    (folder / "lights.yaml").write_text(SMALL)
    monkeypatch.setattr(Path, "open", refuse)
    mend = "give yourself permission to read it"
    assert message("lights.yaml") == whole_file("lights.yaml", "a file that may not be read", mend)


def test_a_name_that_no_disk_takes() -> None:
    name = "x" * 5000
    came, mend = "a file that cannot be read (File name too long)", "check the name and the disk it is on"
    assert message(name) == whole_file(name, came, mend)


def test_a_name_with_a_nul_in_it() -> None:
    assert "a file that cannot be read (embedded null byte)" in message("a\0b.yaml")


@pytest.mark.parametrize("content", ["", "\n\n", "  \n", "# only a note\n", "---\n", "~\n"])
def test_an_empty_file(folder: Path, content: str) -> None:
    (folder / "lights.yaml").write_text(content)
    mend = "write at least title, place, strings and supply; sample_project/every-key.yaml has all keys"
    assert message("lights.yaml") == whole_file("lights.yaml", "an empty file", mend)


def test_a_file_of_ten_megabytes(folder: Path) -> None:
    (folder / "lights.yaml").write_bytes(b"# x\n" * (10_000_000 // 4))
    came = f"a file of more than {LARGEST_FILE} bytes"
    mend = "give the project file; keep pictures and other data out of it"
    assert message("lights.yaml") == whole_file("lights.yaml", came, mend)


@pytest.mark.parametrize(
    ("content", "head"),
    [
        ("- title: x\n- runs: y\n", "lights.yaml:1:1\n  came:     a list of 2 entries\n"),
        ("only a word\n", "lights.yaml:1:1\n  came:     only a word\n"),
    ],
)
def test_no_keys_at_the_top(folder: Path, content: str, head: str) -> None:
    (folder / "lights.yaml").write_text(content)
    assert message("lights.yaml") == head + (
        "  expected: the keys title, place, strings, supply; "
        "if need be summary, author, language, runs, fuse, fuse_type, goals, prices, meter, readings, "
        "hanging, tariff, hours_per_day, days_per_season, photos, steps, story, licence\n"
        "  mend:     write keys and values, each key at the start of a line\n"
        "1 error in the project file"
    )


def encoding_message(place: str, came: str) -> str:
    return (
        f"lights.yaml:{place}\n  came:     {came}\n  expected: text in UTF-8\n"
        "  mend:     save the file again with the encoding UTF-8\n1 error in the project file"
    )


def test_invalid_utf_8_is_told_where_it_stands(folder: Path) -> None:
    (folder / "lights.yaml").write_bytes(b"title: x\nauthor: Ren\xe9\n")
    came = "the byte 0xe9, which is not UTF-8 text"
    assert message("lights.yaml") == encoding_message("2:12", came)


def test_utf_16_without_its_mark(folder: Path) -> None:
    (folder / "lights.yaml").write_bytes("title: x\n".encode("utf-16-le"))
    assert message("lights.yaml") == encoding_message("1:2", "the control character U+0000")


def test_utf_16_cut_in_the_middle_of_a_character(folder: Path) -> None:
    (folder / "lights.yaml").write_bytes("title: x\n".encode("utf-16")[:-1])
    came = "the byte 0x0a, which is not UTF-16-LE text"
    assert message("lights.yaml") == encoding_message("1:9", came)


@pytest.mark.parametrize(
    ("content", "came"),
    [
        # How these files begin, from memory: zip's local file header, the compound file of older office
        # programs, RTF, PDF, PNG, JPEG.
        (b"PK\x03\x04\x14\0\x80", "a document of a word processor or spreadsheet, or a zip file"),
        (b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1", "a document of a word processor or spreadsheet"),
        (b"{\\rtf1\\ansi title: x}", "a document of a word processor"),
        (b"%PDF-1.7\n", "a PDF document"),
        (b"\x89PNG\r\n\x1a\n\0\0\0\rIHDR", "a picture"),
        (b"\xff\xd8\xff\xe0", "a picture"),
    ],
)
def test_a_file_that_is_no_text_is_called_what_it_is(folder: Path, content: bytes, came: str) -> None:
    (folder / "lights.yaml").write_bytes(content)
    mend = "open it, copy its text, and save that as plain text (UTF-8)"
    assert message("lights.yaml") == whole_file("lights.yaml", came, mend)


def test_of_two_names_with_one_ending_an_unlike_one_is_not_suggested(folder: Path) -> None:
    (folder / "orchard.yaml").write_text(SMALL)
    mend = "check the name and the folder"
    assert message("terrace.yaml") == whole_file("terrace.yaml", "no such file", mend)


def test_a_fault_inside_the_file_is_counted_and_one_of_the_whole_file_is_not(folder: Path) -> None:
    (folder / "lights.yaml").write_text(SMALL + "glitter: x\n")
    assert message("lights.yaml").endswith("\n1 error in the project file")
    assert "error" not in message("nowhere.yaml")


def test_of_very_many_faults_the_first_hundred_are_shown(folder: Path) -> None:
    (folder / "lights.yaml").write_text(SMALL + "".join(f"glitter{number}: x\n" for number in range(500)))
    told = message("lights.yaml")
    assert told.count("mend:") == 100
    assert told.endswith("\nmore than 100 errors in the project file; the first 100 are shown")


@pytest.mark.parametrize(
    "content",
    [
        "[{" * 499_000,
        "- " * 499_000,
        "? " * 499_000,
        "runs: [" + "a," * 499_000 + "]",
        "a: 1\na: " + "[" * 900_000,
    ],
    ids=["brackets", "dashes", "complex keys", "long list", "brackets behind a duplicate key"],
)
def test_a_hostile_file_is_given_up_with_a_few_words(folder: Path, content: str) -> None:
    (folder / "lights.yaml").write_text(content)
    assert len(message("lights.yaml")) < 2000
