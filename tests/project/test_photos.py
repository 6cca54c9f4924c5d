"""Photos on the disk: only good pictures of the project's own folder are taken; the rest is told apart."""

from __future__ import annotations

import os
import struct
import subprocess
import sys
import zlib
from pathlib import Path

import pytest
from PIL import Image

from guidegen.errors import ProjectError
from guidegen.project.photos import LARGEST_PHOTO, MOST_PIXELS, PhotoError, inside, opened
from guidegen.project.read import read_project

SMALL = Path(__file__).with_name("small.yaml").read_text("utf-8")


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """A project's folder, with another beside it."""
    (tmp_path / "outside").mkdir()
    (tmp_path / "project").mkdir()
    return tmp_path / "project"


def picture(path: Path, size: tuple[int, int] = (40, 30), **options: object) -> Path:
    Image.new("RGB", size, "teal").save(path, **options)
    return path


def refusal(name: str, folder: Path) -> PhotoError:
    with pytest.raises(PhotoError) as caught:
        opened(name, folder)
    return caught.value


def png(width: int, height: int, *chunks: tuple[bytes, bytes]) -> bytes:
    """A PNG that says it has this size, with an empty picture in it (PNG specification, clause 11)."""
    header = struct.pack(">IIBBBBB", width, height, 8, 2, 0, 0, 0)
    rows = [(b"IHDR", header), *chunks, (b"IDAT", zlib.compress(b"")), (b"IEND", b"")]
    parts = [
        struct.pack(">I", len(data)) + kind + data + struct.pack(">I", zlib.crc32(kind + data))
        for kind, data in rows
    ]
    return b"\x89PNG\r\n\x1a\n" + b"".join(parts)


@pytest.mark.parametrize("kind", ["JPEG", "PNG", "WEBP"])
def test_a_picture_is_known_by_what_is_in_it_not_by_its_name(folder: Path, kind: str) -> None:
    picture(folder / "lit.dat", format=kind)
    with opened("lit.dat", folder) as image:
        assert (image.format, image.size) == (kind, (40, 30))


def test_a_picture_in_a_folder_inside(folder: Path) -> None:
    (folder / "photos").mkdir()
    picture(folder / "photos" / "lit.jpg")
    opened("photos/lit.jpg", folder).close()


def test_a_camera_s_picture_with_a_small_one_behind_it_stands_still(folder: Path) -> None:
    small = Image.new("RGB", (8, 6))
    Image.new("RGB", (40, 30)).save(folder / "lit.jpg", "MPO", save_all=True, append_images=[small])
    with opened("lit.jpg", folder) as image:
        assert (image.format, image.size) == ("MPO", (40, 30))


def test_a_missing_file(folder: Path) -> None:
    error = refusal("lit.jpg", folder)
    assert error.came == "no such file: lit.jpg"
    assert error.mend == "put the picture there, or mend the name; large and small letters count"


def test_a_misspelt_name_is_recognised_in_its_folder(folder: Path) -> None:
    (folder / "photos").mkdir()
    picture(folder / "photos" / "lit.jpg")
    assert refusal("photos/lti.JPG", folder).mend == "did you mean photos/lit.jpg?"


def test_a_missing_folder(folder: Path) -> None:
    assert refusal("photos/lit.jpg", folder).came == "no such file: photos/lit.jpg"


def test_a_folder_in_the_place_of_a_file(folder: Path) -> None:
    (folder / "photos").mkdir()
    error = refusal("photos", folder)
    assert (error.came, error.mend) == ("a folder", "write the file too, such as photos/lit.jpg")


def test_a_pipe_is_not_waited_for(folder: Path) -> None:
    os.mkfifo(folder / "lit.jpg")
    assert refusal("lit.jpg", folder).came == "something that is no ordinary file"


def test_a_link_that_leads_out_is_refused_whole(folder: Path) -> None:
    picture(folder.parent / "outside" / "lit.jpg")
    (folder / "lit.jpg").symlink_to(folder.parent / "outside" / "lit.jpg")
    error = refusal("lit.jpg", folder)
    assert error.came == "a link that leads out of the project file's folder"
    assert error.mend == "put the picture itself there, in the place of the link"


def test_a_folder_that_is_a_link_out_is_refused(folder: Path) -> None:
    picture(folder.parent / "outside" / "lit.jpg")
    (folder / "photos").symlink_to(folder.parent / "outside", target_is_directory=True)
    assert refusal("photos/lit.jpg", folder).came == "a link that leads out of the project file's folder"


def test_a_folder_whose_name_begins_like_the_project_s_is_outside(folder: Path) -> None:
    beside = folder.with_name(folder.name + "-old")
    beside.mkdir()
    picture(beside / "lit.jpg")
    (folder / "lit.jpg").symlink_to(beside / "lit.jpg")
    assert refusal("lit.jpg", folder).came == "a link that leads out of the project file's folder"


def test_a_link_that_stays_inside_is_followed(folder: Path) -> None:
    picture(folder / "evening.jpg")
    (folder / "lit.jpg").symlink_to("evening.jpg")
    opened("lit.jpg", folder).close()


def test_a_project_s_folder_that_is_itself_reached_by_a_link(folder: Path) -> None:
    picture(folder / "lit.jpg")
    (folder.parent / "by-link").symlink_to(folder, target_is_directory=True)
    assert inside("lit.jpg", folder.parent / "by-link") == folder / "lit.jpg"


def test_a_link_that_leads_nowhere(folder: Path) -> None:
    (folder / "lit.jpg").symlink_to("gone.jpg")
    assert refusal("lit.jpg", folder).came == "a link that leads nowhere"


def test_links_in_a_circle(folder: Path) -> None:
    (folder / "lit.jpg").symlink_to("unlit.jpg")
    (folder / "unlit.jpg").symlink_to("lit.jpg")
    assert "cannot be read" in refusal("lit.jpg", folder).came or "nowhere" in refusal("lit.jpg", folder).came


@pytest.mark.parametrize("name", ["../outside/lit.jpg", "photos/../../outside/lit.jpg", "/etc/hostname"])
def test_a_path_that_leads_out_is_refused_even_if_it_came_past_the_reader(folder: Path, name: str) -> None:
    picture(folder.parent / "outside" / "lit.jpg")
    (folder / "photos").mkdir()
    assert refusal(name, folder).came == "a link that leads out of the project file's folder"


# How files of these kinds begin, from memory.
@pytest.mark.parametrize(
    ("content", "came"),
    [
        (b"", "an empty file"),
        (b"words\n", "a file that is no picture"),
        (b"GIF89a" + bytes(20), "a GIF picture"),
        (b"\0\0\0\x18ftypheic" + bytes(20), "a HEIC picture, as some phones save them"),
        (b"\0\0\0\x1cftypavif" + bytes(20), "an AVIF picture"),
        (b"\0\0\0\x20ftypisom" + bytes(20), "a film"),
        (b"II*\0" + bytes(20), "a TIFF picture, or the raw data of a camera"),
        (b"BM" + bytes(60), "a BMP picture"),
        (b"%PDF-1.7", "a PDF document"),
        (b"PK\x03\x04" + bytes(20), "a zip file, or a document of a word processor"),
        (b"<svg xmlns='http://www.w3.org/2000/svg'/>", "an SVG drawing"),
        (b"<?xml version='1.0'?><svg/>", "an SVG drawing or other XML"),
        (b"\xff\xd8\xff\xe0" + bytes(4), "a picture that is cut off or damaged"),
        (b"\x89PNG\r\n\x1a\n", "a picture that is cut off or damaged"),
        (b"RIFF\x10\0\0\0WEBPVP8 ", "a picture that is cut off or damaged"),
    ],
)
def test_what_is_no_picture_for_a_guide_is_called_what_it_is(folder: Path, content: bytes, came: str) -> None:
    (folder / "lit.jpg").write_bytes(content)
    assert refusal("lit.jpg", folder).came == came


@pytest.mark.parametrize("kind", ["PNG", "WEBP"])
def test_a_picture_that_moves(folder: Path, kind: str) -> None:
    frames = [Image.new("RGB", (20, 20), colour) for colour in ("red", "teal")]
    frames[0].save(folder / "lit.png", kind, save_all=True, append_images=frames[1:])
    assert refusal("lit.png", folder).came == "a picture that moves"


@pytest.mark.parametrize("side", [20_000, 200_000])
def test_a_small_file_that_unpacks_to_far_too_many_pixels(folder: Path, side: int) -> None:
    # 400 and 40,000 megapixels: on either side of where pillow itself gives up.
    (folder / "lit.png").write_bytes(png(side, side))
    assert "pixels" in refusal("lit.png", folder).came


def test_the_most_pixels_are_below_pillow_s_own_limit() -> None:
    assert MOST_PIXELS < Image.MAX_IMAGE_PIXELS


def test_a_picture_just_small_enough_in_its_head(folder: Path) -> None:
    (folder / "lit.png").write_bytes(png(8000, MOST_PIXELS // 8000))
    opened("lit.png", folder).close()


def test_words_packed_into_a_picture_to_fill_the_memory(folder: Path) -> None:
    packed = b"Comment\0\0" + zlib.compress(bytes(200_000_000))
    (folder / "lit.png").write_bytes(png(40, 30, (b"zTXt", packed)))
    assert refusal("lit.png", folder).came == "a picture that is cut off or damaged"


def test_a_file_of_more_bytes_than_any_photo_is_not_opened(folder: Path) -> None:
    picture(folder / "lit.jpg")
    with (folder / "lit.jpg").open("r+b") as file:
        file.truncate(LARGEST_PHOTO + 1_000_000)
    error = refusal("lit.jpg", folder)
    assert error.came == "a file of 41 MB"
    assert error.mend == "save it smaller; 2000 pixels on the longer side are plenty"


def test_no_permission(folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    # Raised by hand, since an administrator may read every file.
    def refuse(*_args: object, **_options: object) -> None:
        raise PermissionError(13, "Permission denied")

    picture(folder / "lit.jpg")
    monkeypatch.setattr(Image, "open", refuse)
    assert refusal("lit.jpg", folder).came == "a file that may not be read"


def test_the_folder_is_that_of_the_project_file_and_not_the_current_one(
    folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    picture(folder / "lit.jpg")
    (folder / "bench.yaml").write_text(SMALL + "photos: {lit: {file: lit.jpg, alt: The lights}}\n")
    monkeypatch.chdir(folder.parent / "outside")
    assert read_project(folder / "bench.yaml").project.photos.lit.file == "lit.jpg"
    monkeypatch.chdir(folder)
    assert read_project("bench.yaml").project.photos.lit.file == "lit.jpg"


def test_every_photo_at_fault_is_told_at_once(folder: Path) -> None:
    words = "photos:\n  lit: {file: a.jpg, alt: x}\n  unlit: {file: b.jpg, alt: x}\n"
    (folder / "bench.yaml").write_text(SMALL + words)
    with pytest.raises(ProjectError) as caught:
        read_project(folder / "bench.yaml")
    assert [fault.key for fault in caught.value.faults] == ["photos.lit.file", "photos.unlit.file"]


def test_pillow_is_loaded_for_photos_alone() -> None:
    script = (
        "import sys; from guidegen.project.read import read_project; read_project(sys.argv[1]); "
        "print([name for name in ('PIL', 'nh3', 'markdown') if name in sys.modules])"
    )
    command = [sys.executable, "-c", script, str(Path(__file__).with_name("small.yaml"))]
    done = subprocess.run(command, capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "[]"
