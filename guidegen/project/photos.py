"""Photos on the disk: where they may be, and what can be told of them without unpacking a picture."""

from __future__ import annotations

import stat
import warnings
from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING

from guidegen.locale import N_, _
from guidegen.paths import as_typed
from guidegen.project.complaint import Complaint
from guidegen.project.keys import Key
from guidegen.project.own import Photo
from guidegen.project.partial import attempt
from guidegen.project.schema import Project
from guidegen.project.writing import nearest

if TYPE_CHECKING:
    from PIL import Image

LARGEST_PHOTO = 40_000_000  # bytes; four times a photo of a good camera
MOST_PIXELS = 80_000_000  # below the limit at which pillow takes a picture for a bomb
FORMATS = ("JPEG", "PNG", "WEBP")
_ENDINGS = {".jpg", ".jpeg", ".png", ".webp"}
#: How files begin that are no picture for a guide, at a place in the file.
_OTHER = (
    (0, b"GIF8", N_("a GIF picture")),
    (4, b"ftyphei", N_("a HEIC picture, as some phones save them")),
    (4, b"ftypmif1", N_("a HEIC picture, as some phones save them")),
    (4, b"ftypavif", N_("an AVIF picture")),
    (4, b"ftyp", N_("a film")),
    (0, b"II*\0", N_("a TIFF picture, or the raw data of a camera")),
    (0, b"MM\0*", N_("a TIFF picture, or the raw data of a camera")),
    (0, b"BM", N_("a BMP picture")),
    (0, b"%PDF", N_("a PDF document")),
    (0, b"PK\x03\x04", N_("a zip file, or a document of a word processor")),
    (0, b"<svg", N_("an SVG drawing")),
    (0, b"<?xml", N_("an SVG drawing or other XML")),
)


class PhotoError(ValueError):
    """A photo cannot be used: what came instead, and how to mend it."""

    def __init__(self, came: str, mend: str) -> None:
        super().__init__(f"{came}; {mend}")
        self.came = came
        self.mend = mend


def photos_of(project: Project) -> Iterator[tuple[Key, Photo]]:
    """Every photo that the project names, with its key; of a partial project, those that are whole."""
    yield from attempt(_on_first_page, project)
    yield from attempt(_of_steps, project)


def _on_first_page(project: Project) -> Iterator[tuple[Key, Photo]]:
    for name in type(project.photos).model_fields:
        yield from attempt(_one, ("photos", name), project.photos, name)


def _of_steps(project: Project) -> Iterator[tuple[Key, Photo]]:
    for index, entry in enumerate(project.steps):
        yield from attempt(_one, ("steps", index, "photo"), entry, "photo")


def _one(key: Key, holder: object, name: str) -> Iterator[tuple[Key, Photo]]:
    photo: Photo | None = getattr(holder, name)
    if photo is not None:
        assert photo.file  # of a faulty entry this asks for what is missing, and `attempt` passes over it
        yield key, photo


def photo_complaints(project: Project, folder: Path) -> Iterator[Complaint]:
    """What is wrong with the photo files in the project's `folder`, as far as their first bytes tell."""
    for key, photo in photos_of(project):
        try:
            opened(photo.file, folder).close()
        except PhotoError as error:
            yield photo_complaint(key, error)


def photo_complaint(key: Key, error: PhotoError) -> Complaint:
    """What to say of a photo that cannot be used."""
    expected = _(
        "a photo in the project file's folder: JPEG, PNG or WebP, {bytes} MB and {pixels} megapixels at most"
    )
    said = expected.format(bytes=LARGEST_PHOTO // 1_000_000, pixels=MOST_PIXELS // 1_000_000)
    return Complaint((*key, "file"), said, error.mend, error.came)


def opened(name: str, folder: Path) -> Image.Image:
    """The picture `name` of the project's `folder`, opened and not yet unpacked.

    Raises PhotoError for a file that is missing, leads out of the folder, is
    no picture or no still one, or is too large.
    """
    path = inside(name, folder)
    if path.stat().st_size > LARGEST_PHOTO:
        came = _("a file of {size} MB").format(size=round(path.stat().st_size / 1e6))
        raise PhotoError(came, _("save it smaller; 2000 pixels on the longer side are plenty"))
    image = _head(path)
    if image.width * image.height > MOST_PIXELS:
        came = _("a picture of {width} × {height} pixels").format(width=image.width, height=image.height)
        image.close()
        raise PhotoError(came, _("save it smaller; 2000 pixels on the longer side are plenty"))
    # A camera's JPEG with a small picture behind the large one is an MPO, and stands still.
    if image.format != "MPO" and getattr(image, "n_frames", 1) > 1:
        image.close()
        raise PhotoError(_("a picture that moves"), _("save one frame of it as JPEG or PNG"))
    return image


def inside(name: str, folder: Path) -> Path:
    """The file `name` with its links followed; PhotoError unless it is an ordinary file in the folder."""
    try:
        root = folder.resolve(strict=True)
        path = (root / name).resolve(strict=True)
        mode = path.stat().st_mode
    except FileNotFoundError:
        raise _missing(name, folder) from None
    except (OSError, RuntimeError, ValueError) as error:
        reason = getattr(error, "strerror", None) or str(error)
        came = _("a file that cannot be read ({reason})").format(reason=reason)
        raise PhotoError(came, _("check the name and the disk it is on")) from None
    if not path.is_relative_to(root):
        raise PhotoError(
            _("a link that leads out of the project file's folder"),
            _("put the picture itself there, in the place of the link"),
        )
    if stat.S_ISDIR(mode):
        raise PhotoError(
            _("a folder"),
            _("write the file too, such as {example}").format(example=f"{name.rstrip('/')}/lit.jpg"),
        )
    if not stat.S_ISREG(mode):
        raise PhotoError(_("something that is no ordinary file"), _("save the picture as a file there"))
    return path


def _missing(name: str, folder: Path) -> PhotoError:
    if (folder / name).is_symlink():
        return PhotoError(
            _("a link that leads nowhere"), _("put the picture itself there, in the place of the link")
        )
    place = (folder / name).parent
    try:
        beside = {as_typed(path.name) for path in place.iterdir() if path.suffix.lower() in _ENDINGS}
    except OSError:
        beside = set()
    near = nearest(Path(name).name, sorted(beside))
    mend = _("put the picture there, or mend the name; large and small letters count")
    if near:
        mend = _("did you mean {name}?").format(name=Path(name).with_name(near).as_posix())
    return PhotoError(_("no such file: {name}").format(name=name), mend)


def _head(path: Path) -> Image.Image:
    """The picture, of which only the head is read."""
    # Loaded where it is needed: most files have no photos, and a check should stay quick.
    from PIL import Image  # noqa: PLC0415

    try:
        with warnings.catch_warnings():
            warnings.simplefilter("ignore")  # of pillow's own limit; ours is lower
            return Image.open(path, formats=FORMATS)
    except PermissionError:
        raise PhotoError(_("a file that may not be read"), _("give yourself permission to read it")) from None
    except Image.DecompressionBombError:
        came = _("a picture of far too many pixels")
        raise PhotoError(came, _("save it smaller; 2000 pixels on the longer side are plenty")) from None
    except Exception:  # a broken file may break pillow's readers in any way
        raise _no_picture(path) from None


def _no_picture(path: Path) -> PhotoError:
    mend = _("save the picture as JPEG or PNG, and write the name of that file")
    with path.open("rb") as file:
        start = file.read(64)
    if not start:
        return PhotoError(_("an empty file"), mend)
    for at, begin, came in _OTHER:
        if start[at:].startswith(begin):
            return PhotoError(_(came), mend)
    if start.startswith((b"\xff\xd8\xff", b"\x89PNG", b"RIFF")):
        return broken()
    return PhotoError(_("a file that is no picture"), mend)


def broken() -> PhotoError:
    """A picture that ends too early or is damaged."""
    return PhotoError(
        _("a picture that is cut off or damaged"),
        _("copy it from the camera or phone again, and look at it whole"),
    )
