"""Photos as the guide shows them: upright, small enough for a page, and with nothing in them but the picture.

The picture is painted anew, so that no part of the maker's file but its
colours can pass: no position, name, date, thumbnail or comment.
"""

from __future__ import annotations

import io
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from guidegen.errors import Fault
from guidegen.project.complaint import Complaint
from guidegen.project.keys import key_text
from guidegen.project.photos import PhotoError, broken, opened, photo_complaint, photos_of
from guidegen.publish.pages import Asset

if TYPE_CHECKING:
    from PIL import Image

    from guidegen.project.read import ProjectFile

LONGEST_SIDE = 1600  # pixels; twice the width of a page's text on a fine screen
LARGEST = 350_000  # bytes of one photo, so that a guide in one file can still be sent
_FOLDER = "photos"
#: Each with the next, until the picture is small enough: quality, and the longest side as a share.
_ATTEMPTS = ((82, 1.0), (74, 1.0), (66, 1.0), (66, 0.75), (60, 0.5))


@dataclass(frozen=True)
class PlacedPhoto:
    """A photo as a template gets it: its file relative to the page, its size in pixels."""

    src: str
    width: int
    height: int


@dataclass(frozen=True)
class Photos:
    """The photos of a guide: where each is, by its name in the project file, and the files."""

    placed: Mapping[str, PlacedPhoto]
    assets: tuple[Asset, ...]


def photos_for(file: ProjectFile) -> tuple[Photos, tuple[Fault, ...]]:
    """The photos of a project, made ready for its guide, and a fault for each that cannot be.

    A file that is named twice is published once.
    """
    folder = Path(file.name).parent
    placed: dict[str, PlacedPhoto] = {}
    assets: list[Asset] = []
    faults: list[Fault] = []
    for key, photo in photos_of(file.project):
        if photo.file in placed:
            continue
        try:
            content, suffix, (width, height) = _made_ready(photo.file, folder)
        except PhotoError as error:
            faults.append(_fault(file, photo_complaint(key, error)))
            continue
        asset = Asset(f"{_FOLDER}/photo-{len(assets) + 1}.{suffix}", content)
        assets.append(asset)
        placed[photo.file] = PlacedPhoto(asset.path, width, height)
    return Photos(placed, tuple(assets)), tuple(faults)


def _fault(file: ProjectFile, complaint: Complaint) -> Fault:
    key = key_text(complaint.key)
    line, column = file.place_of(key)
    return Fault(file.name, line, column, key, complaint.came, complaint.expected, complaint.mend)


def _made_ready(name: str, folder: Path) -> tuple[bytes, str, tuple[int, int]]:
    """A photo's bytes for the guide, the suffix of its kind, and its width and height in pixels."""
    with opened(name, folder) as image:
        photographed = image.format in ("JPEG", "MPO")
        try:
            picture = _painted_anew(image)
        except Exception:  # a broken file may break pillow's readers in any way
            raise broken() from None
    return _encoded(picture, photographed)


def _painted_anew(image: Image.Image) -> Image.Image:
    """The picture upright, in plain colours, no larger than a page needs, and free of everything else."""
    from PIL import Image, ImageOps  # noqa: PLC0415

    image.draft("RGB", (LONGEST_SIDE, LONGEST_SIDE))
    image.load()
    colours = _in_plain_colours(ImageOps.exif_transpose(image))
    colours.thumbnail((LONGEST_SIDE, LONGEST_SIDE), Image.Resampling.LANCZOS)
    return Image.frombytes(colours.mode, colours.size, colours.tobytes())


def _in_plain_colours(image: Image.Image) -> Image.Image:
    """The picture in 8 bits a channel, sRGB, with transparency only where some of it shows."""
    if image.mode.startswith("I"):  # 16 bits of grey
        image = image.convert("I").point(lambda grey: grey / 256).convert("L")
    image = _in_srgb(image)
    if image.has_transparency_data:
        image = image.convert("RGBA")
        if any(image.getchannel("A").histogram()[:255]):
            return image
    return image.convert("RGB")


def _in_srgb(image: Image.Image) -> Image.Image:
    """The picture in the colours of the web, if it says in which it is; phones save in wider ones."""
    profile = image.info.get("icc_profile")
    if not profile or image.mode not in ("RGB", "CMYK"):
        return image
    from PIL import ImageCms  # noqa: PLC0415

    try:
        source = ImageCms.ImageCmsProfile(io.BytesIO(profile))
        target = ImageCms.createProfile("sRGB")
        return ImageCms.profileToProfile(image, source, target, outputMode="RGB") or image
    except (ImageCms.PyCMSError, OSError):
        return image


def _encoded(picture: Image.Image, photographed: bool) -> tuple[bytes, str, tuple[int, int]]:
    """The smallest fitting bytes: a drawing may stay a PNG, and does where it is transparent."""
    if not photographed:
        drawn = _as_png(picture)
        if picture.mode == "RGBA" and len(drawn) <= LARGEST:
            return drawn, "png", picture.size
        picture = _on_white(picture)
        jpeg, suffix, size = _as_jpeg(picture)
        return (
            (drawn, "png", size) if len(drawn) <= len(jpeg) and size == picture.size else (jpeg, suffix, size)
        )
    return _as_jpeg(picture)


def _on_white(picture: Image.Image) -> Image.Image:
    from PIL import Image  # noqa: PLC0415

    if picture.mode != "RGBA":
        return picture
    paper = Image.new("RGBA", picture.size, "white")
    return Image.alpha_composite(paper, picture).convert("RGB")


def _as_png(picture: Image.Image) -> bytes:
    file = io.BytesIO()
    picture.save(file, "PNG", optimize=True)
    return file.getvalue()


def _as_jpeg(picture: Image.Image) -> tuple[bytes, str, tuple[int, int]]:
    """The photo as JPEG, coarser and then smaller until it is light enough."""
    for quality, share in _ATTEMPTS:
        resized = _shrunk(picture, share)
        file = io.BytesIO()
        resized.save(file, "JPEG", quality=quality, optimize=True, progressive=True)
        if file.tell() <= LARGEST:
            break
    return file.getvalue(), "jpg", resized.size


def _shrunk(picture: Image.Image, share: float) -> Image.Image:
    if share == 1.0:
        return picture
    return picture.resize((max(1, round(picture.width * share)), max(1, round(picture.height * share))))
