"""Photos made ready for the guide: upright, small, the same bytes each time, and nothing else in them."""

from __future__ import annotations

import io
import struct
from pathlib import Path

import pytest
from PIL import ExifTags, Image, ImageCms, PngImagePlugin

from guidegen.project.photos import PhotoError, opened
from guidegen.project.read import ProjectFile, read_project
from guidegen.publish.photos import LARGEST, LONGEST_SIDE, Photos, photos_for
from tests.project.test_photos import SMALL, picture

SECRET = "Hidden Lane 7"


def project(folder: Path, *names: str) -> ProjectFile:
    """A project that shows these photos, the first as cover."""
    words = "".join(
        f"  {view}: {{file: {name}, alt: The bench}}\n"
        for view, name in zip(("cover", "lit", "unlit"), names, strict=False)
    )
    (folder / "bench.yaml").write_text(f"{SMALL}photos:\n{words}")
    return read_project(folder / "bench.yaml")


def ready(folder: Path, *names: str) -> Photos:
    photos, faults = photos_for(project(folder, *names))
    assert faults == ()
    return photos


def published(folder: Path, name: str) -> Image.Image:
    """The picture as the guide shows it."""
    return Image.open(io.BytesIO(ready(folder, name).assets[0].content))


def noise(size: tuple[int, int]) -> Image.Image:
    """A picture that packs badly: grey noise, drawn by a plain rule."""
    width, height = size
    return Image.frombytes(
        "L",
        size,
        bytes(
            (x * x * 7 + y * y * 13 + x * y) * 2654435761 >> 9 & 255
            for y in range(height)
            for x in range(width)
        ),
    ).convert("RGB")


def halves(size: tuple[int, int] = (60, 40)) -> Image.Image:
    """Left red, right blue."""
    image = Image.new("RGB", size, "blue")
    image.paste("red", (0, 0, size[0] // 2, size[1]))
    return image


def is_red(colour: tuple[int, ...]) -> bool:
    return colour[0] > 200 and colour[2] < 60


def with_secrets() -> dict[str, object]:
    """Metadata of every sort that a camera or a program writes into a JPEG."""
    exif = Image.Exif()
    exif[ExifTags.Base.ImageDescription] = SECRET
    exif[ExifTags.Base.Artist] = SECRET
    position = exif.get_ifd(ExifTags.IFD.GPSInfo)
    position[ExifTags.GPS.GPSLatitudeRef] = "N"
    position[ExifTags.GPS.GPSLatitude] = (51.0, 28.0, 40.0)
    return {"exif": exif, "comment": SECRET.encode(), "xmp": f"<x:xmpmeta>{SECRET}</x:xmpmeta>".encode()}


def segments(content: bytes) -> list[int]:
    """Markers of a JPEG up to its picture data (ITU-T T.81, annex B)."""
    found, at = [], 2
    while content[at + 1] != 0xDA:
        found.append(content[at + 1])
        at += 2 + struct.unpack(">H", content[at + 2 : at + 4])[0]
    return found


def chunks(content: bytes) -> list[bytes]:
    """Kinds of the chunks of a PNG (PNG specification, clause 5)."""
    found, at = [], 8
    while at < len(content):
        size = struct.unpack(">I", content[at : at + 4])[0]
        found.append(content[at + 4 : at + 8])
        at += 12 + size
    return found


def test_the_metadata_that_the_tests_write_are_really_there(tmp_path: Path) -> None:
    path = picture(tmp_path / "lit.jpg", **with_secrets())
    assert path.read_bytes().count(SECRET.encode()) >= 4
    with Image.open(path) as image:
        assert image.getexif().get_ifd(ExifTags.IFD.GPSInfo)


def test_a_photo_keeps_no_metadata(tmp_path: Path) -> None:
    picture(tmp_path / "lit.jpg", **with_secrets())
    content = ready(tmp_path, "lit.jpg").assets[0].content
    # APP0 (JFIF) alone of the application segments, and no comment (FE).
    assert [mark for mark in segments(content) if 0xE0 <= mark <= 0xEF or mark == 0xFE] == [0xE0]
    assert SECRET.encode() not in content
    for word in (b"Exif", b"http://ns.adobe.com", b"Photoshop", b"xmpmeta", b"ICC_PROFILE"):
        assert word not in content


def test_iptc_words_and_what_stands_behind_the_picture_are_left_behind(tmp_path: Path) -> None:
    plain = picture(tmp_path / "lit.jpg").read_bytes()
    block = b"Photoshop 3.0\0" + b"8BIM\x04\x04\0\0" + struct.pack(">I", len(SECRET)) + SECRET.encode()
    segment = b"\xff\xed" + struct.pack(">H", len(block) + 2) + block
    (tmp_path / "lit.jpg").write_bytes(plain[:2] + segment + plain[2:] + SECRET.encode())
    assert SECRET.encode() not in ready(tmp_path, "lit.jpg").assets[0].content


@pytest.mark.parametrize("transparent", [True, False])
def test_a_drawing_keeps_no_words_in_it(tmp_path: Path, transparent: bool) -> None:
    words = PngImagePlugin.PngInfo()
    words.add_text("Author", SECRET)
    words.add_text("Comment", SECRET, zip=True)
    words.add_itxt("XML:com.adobe.xmp", f"<x:xmpmeta>{SECRET}</x:xmpmeta>")
    exif = Image.Exif()
    exif[ExifTags.Base.Artist] = SECRET
    image = Image.new("RGBA", (40, 30), (0, 90, 90, 120 if transparent else 255))
    image.save(tmp_path / "lit.png", pnginfo=words, exif=exif, dpi=(300, 300))
    asset = ready(tmp_path, "lit.png").assets[0]
    assert asset.path.endswith(".png")
    assert set(chunks(asset.content)) == {b"IHDR", b"IDAT", b"IEND"}


def test_a_webp_keeps_no_metadata(tmp_path: Path) -> None:
    options = with_secrets()
    noise((64, 48)).save(tmp_path / "lit.webp", "WEBP", exif=options["exif"], xmp=options["xmp"])
    assert SECRET.encode() in (tmp_path / "lit.webp").read_bytes()
    assert SECRET.encode() not in ready(tmp_path, "lit.webp").assets[0].content


# EXIF 2.32, tag 274: which edges of the upright picture row 0 and column 0 of the stored one are. Red is
# stored on the left; where it must be when upright is worked out by hand.
@pytest.mark.parametrize(
    ("orientation", "size", "red"),
    [
        (1, (60, 40), (5, 20)),
        (2, (60, 40), (55, 20)),
        (3, (60, 40), (55, 20)),
        (4, (60, 40), (5, 20)),
        (5, (40, 60), (20, 5)),
        (6, (40, 60), (20, 5)),
        (7, (40, 60), (20, 55)),
        (8, (40, 60), (20, 55)),
    ],
)
def test_a_photo_is_turned_upright(
    tmp_path: Path, orientation: int, size: tuple[int, int], red: tuple[int, int]
) -> None:
    exif = Image.Exif()
    exif[ExifTags.Base.Orientation] = orientation
    halves().save(tmp_path / "lit.jpg", exif=exif, quality=95)
    image = published(tmp_path, "lit.jpg")
    assert image.size == size
    assert is_red(image.getpixel(red))
    assert not is_red(image.getpixel((size[0] - 1 - red[0], size[1] - 1 - red[1])))


@pytest.mark.parametrize(
    ("size", "expected"), [((3200, 1000), (1600, 500)), ((1000, 4000), (400, 1600)), ((300, 200), (300, 200))]
)
def test_a_photo_is_no_larger_than_a_page_needs_and_never_blown_up(
    tmp_path: Path, size: tuple[int, int], expected: tuple[int, int]
) -> None:
    picture(tmp_path / "lit.jpg", size)
    photos = ready(tmp_path, "lit.jpg")
    placed = photos.placed["lit.jpg"]
    assert (placed.width, placed.height) == published(tmp_path, "lit.jpg").size == expected
    assert max(expected) <= LONGEST_SIDE


def test_a_photo_that_packs_badly_is_made_light_all_the_same(tmp_path: Path) -> None:
    noise((1600, 1200)).save(tmp_path / "lit.jpg", quality=95)
    assert (tmp_path / "lit.jpg").stat().st_size > 4 * LARGEST
    assert len(ready(tmp_path, "lit.jpg").assets[0].content) <= LARGEST


def test_a_transparent_drawing_stays_transparent(tmp_path: Path) -> None:
    image = Image.new("RGBA", (40, 30), (0, 0, 0, 0))
    image.paste((255, 0, 0, 255), (0, 0, 20, 30))
    image.save(tmp_path / "lit.png")
    assert published(tmp_path, "lit.png").getpixel((30, 15))[3] == 0


def test_a_transparent_photo_too_heavy_for_a_drawing_stands_on_white(tmp_path: Path) -> None:
    image = noise((900, 700)).convert("RGBA")
    image.putalpha(0)
    image.paste(noise((900, 600)), (0, 100))
    image.save(tmp_path / "lit.png")
    made = published(tmp_path, "lit.png")
    assert made.format == "JPEG"
    assert min(made.getpixel((450, 20))) > 240


def test_a_drawing_of_few_colours_stays_sharp(tmp_path: Path) -> None:
    halves().save(tmp_path / "lit.png")
    made = published(tmp_path, "lit.png")
    assert made.format == "PNG"
    assert made.getpixel((5, 20)) == (255, 0, 0)


@pytest.mark.parametrize("mode", ["1", "L", "LA", "P", "I;16", "CMYK", "RGBA"])
def test_colours_of_every_sort_become_plain_ones(tmp_path: Path, mode: str) -> None:
    image = (
        Image.new("L", (40, 30), 128).convert("RGB").convert(mode)
        if mode != "I;16"
        else Image.new(mode, (40, 30), 32896)
    )
    name = "lit.jpg" if mode == "CMYK" else "lit.png"
    image.save(tmp_path / name)
    made = published(tmp_path, name).convert("RGB")
    middle = sum(made.resize((1, 1), Image.Resampling.BOX).getpixel((0, 0))) / 3
    assert middle == pytest.approx(128, abs=2)  # half grey is half grey; JPEG and dithering are coarse


def test_colours_stated_by_a_profile_are_those_of_the_web_afterwards(tmp_path: Path) -> None:
    # A profile that takes red for blue: sRGB with the two columns of its matrix exchanged (ICC.1, 9.2).
    plain = ImageCms.ImageCmsProfile(ImageCms.createProfile("sRGB")).tobytes()
    exchanged = plain.replace(b"rXYZ", b"?XYZ", 1).replace(b"bXYZ", b"rXYZ", 1).replace(b"?XYZ", b"bXYZ", 1)
    Image.new("RGB", (40, 30), "red").save(tmp_path / "lit.png", icc_profile=exchanged)
    made = published(tmp_path, "lit.png").convert("RGB").getpixel((20, 15))
    assert made == pytest.approx((0, 0, 255), abs=3)


def test_a_profile_that_is_none_is_passed_over(tmp_path: Path) -> None:
    picture(tmp_path / "lit.jpg", icc_profile=b"no profile")
    assert ready(tmp_path, "lit.jpg").assets


def test_the_same_photo_gives_the_same_bytes(tmp_path: Path) -> None:
    noise((400, 300)).save(tmp_path / "lit.jpg")
    halves().save(tmp_path / "unlit.png")
    assert ready(tmp_path, "lit.jpg", "unlit.png") == ready(tmp_path, "lit.jpg", "unlit.png")


def test_a_photo_s_name_and_its_folder_are_not_published(tmp_path: Path) -> None:
    picture(tmp_path / "hidden-lane-7.jpg")
    assert [asset.path for asset in ready(tmp_path, "hidden-lane-7.jpg").assets] == ["photos/photo-1.jpg"]


def test_a_photo_named_twice_is_published_once(tmp_path: Path) -> None:
    picture(tmp_path / "lit.jpg")
    halves().save(tmp_path / "unlit.png")
    photos = ready(tmp_path, "lit.jpg", "unlit.png", "lit.jpg")
    assert [asset.path for asset in photos.assets] == ["photos/photo-1.jpg", "photos/photo-2.png"]


@pytest.mark.parametrize("name", ["lit.jpg", "lit.png"])
def test_photos_cut_off_in_the_middle_are_told_all_at_once(tmp_path: Path, name: str) -> None:
    noise((200, 150)).save(tmp_path / name)
    whole = (tmp_path / name).read_bytes()
    (tmp_path / name).write_bytes(whole[: len(whole) // 2])
    (tmp_path / f"other-{name}").write_bytes(whole[: len(whole) // 3])
    file = project(tmp_path, name, f"other-{name}")
    photos, faults = photos_for(file)
    assert photos.assets == ()
    assert [(fault.key, fault.line, fault.came) for fault in faults] == [
        ("photos.cover.file", 27, "a picture that is cut off or damaged"),
        ("photos.lit.file", 28, "a picture that is cut off or damaged"),
    ]


def test_a_webp_cut_off_in_the_middle_is_told_when_it_is_opened(tmp_path: Path) -> None:
    noise((200, 150)).save(tmp_path / "lit.webp")
    whole = (tmp_path / "lit.webp").read_bytes()
    (tmp_path / "lit.webp").write_bytes(whole[: len(whole) // 2])
    with pytest.raises(PhotoError, match="cut off or damaged"):
        opened("lit.webp", tmp_path)


def test_a_project_without_photos_has_none(tmp_path: Path) -> None:
    (tmp_path / "bench.yaml").write_text(SMALL)
    assert photos_for(read_project(tmp_path / "bench.yaml")) == (Photos({}, ()), ())
