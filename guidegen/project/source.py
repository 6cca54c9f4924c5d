"""The text of a project file: from a path to decoded text, or the fault that prevents it."""

from __future__ import annotations

import codecs
import re
import stat
from pathlib import Path

from guidegen.errors import Fault, ProjectError
from guidegen.locale import N_, _
from guidegen.paths import as_typed
from guidegen.project.writing import nearest

LARGEST_FILE = 1_000_000  # bytes; a project of many strings is a hundredth of this

_MARKS = (
    (codecs.BOM_UTF8, "utf-8"),
    (codecs.BOM_UTF32_LE, "utf-32-le"),  # before UTF-16, whose mark it begins with
    (codecs.BOM_UTF32_BE, "utf-32-be"),
    (codecs.BOM_UTF16_LE, "utf-16-le"),
    (codecs.BOM_UTF16_BE, "utf-16-be"),
)
# How files begin that are no text, or text that only a word processor reads.
_NO_TEXT = (
    (b"PK\x03\x04", N_("a document of a word processor or spreadsheet, or a zip file")),
    (b"\xd0\xcf\x11\xe0", N_("a document of a word processor or spreadsheet")),
    (b"{\\rtf", N_("a document of a word processor")),
    (b"%PDF", N_("a PDF document")),
    (b"\x89PNG", N_("a picture")),
    (b"\xff\xd8\xff", N_("a picture")),
    (b"GIF8", N_("a picture")),
)
CONTROL = re.compile("[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x84\x86-\x9f\ud800-\udfff\ufffe\uffff]")
_ENDINGS = {".yaml", ".yml"}
_ODD_INDENT = re.compile("^[ \t]*[\u00a0\u2007\u2009\u202f\u3000]", re.MULTILINE)


def read_source(path: str | Path) -> str:
    """The file's text with `\\n` line ends and no byte order mark.

    Raises ProjectError with the one fault that prevents reading.
    """
    text = decode(_read_bytes(path), str(path))
    for unwanted, fault in ((CONTROL, _control_fault), (_ODD_INDENT, _indent_fault)):
        found = unwanted.search(text)
        if found:
            raise ProjectError((fault(str(path), text, found.end() - 1),))
    return text


def decode(data: bytes, name: str) -> str:
    """Bytes as text, by their byte order mark or else as UTF-8; raises ProjectError."""
    for start, came in _NO_TEXT:
        if data.startswith(start):
            raise ProjectError((_no_text(name, _(came)),))
    mark, encoding = next((pair for pair in _MARKS if data.startswith(pair[0])), (b"", "utf-8"))
    data = data.removeprefix(mark)
    try:
        text = data.decode(encoding)
    except UnicodeDecodeError as error:
        good = data[: error.start].decode(encoding, errors="replace")
        line, column = place_in(_plain_lines(good), None)
        came = _("the byte {byte}, which is not {encoding} text").format(
            byte=f"0x{data[error.start]:02x}", encoding=encoding.upper()
        )
        raise ProjectError((_encoding_fault(name, line, column, came),)) from None
    return _plain_lines(text)


def place_in(text: str, index: int | None) -> tuple[int, int]:
    """Line and column, from 1, of a character of the text (None: behind the last)."""
    before = text[:index]
    return before.count("\n") + 1, len(before) - before.rfind("\n")


def _plain_lines(text: str) -> str:
    return text.replace("\r\n", "\n").replace("\r", "\n")


def _read_bytes(path: str | Path) -> bytes:
    try:
        mode = Path(path).stat().st_mode
        if not stat.S_ISREG(mode):
            raise ProjectError((_not_a_file(str(path), stat.S_ISDIR(mode)),))
        with Path(path).open("rb") as file:
            data = file.read(LARGEST_FILE + 1)
    except (OSError, ValueError) as error:
        raise ProjectError((_unread(path, error),)) from None
    if len(data) > LARGEST_FILE:
        raise ProjectError((_too_large(str(path)),))
    if not data.strip():
        raise ProjectError((empty_file(str(path)),))
    return data


def _whole_file(name: str, came: str, mend: str) -> Fault:
    return Fault(name, None, None, "", came, _("a project file, which is a text file in YAML"), mend)


def _unread(path: str | Path, error: OSError | ValueError) -> Fault:
    name = str(path)
    if isinstance(error, FileNotFoundError):
        near = _near_files(Path(path))
        mend = _("check the name and the folder")
        if near:
            mend = _("did you mean {name}?").format(name=near[0])
        return _whole_file(name, _("no such file"), mend)
    if isinstance(error, PermissionError):
        return _whole_file(name, _("a file that may not be read"), _("give yourself permission to read it"))
    reason = getattr(error, "strerror", None) or str(error)
    came = _("a file that cannot be read ({reason})").format(reason=reason)
    return _whole_file(name, came, _("check the name and the disk it is on"))


def _near_files(path: Path) -> list[str]:
    """The project file beside it whose name, without its ending, is most like this one's."""
    try:
        beside = sorted(path.parent.iterdir())
    except OSError:
        return []
    stems = {as_typed(other.stem): other for other in beside if other.suffix.lower() in _ENDINGS}
    near = nearest(as_typed(path.stem), stems)
    return [str(path.with_name(stems[near].name))] if near else []


def _not_a_file(name: str, folder: bool) -> Fault:
    if folder:
        return _whole_file(name, _("a folder"), _("give the path of the file in it, such as lights.yaml"))
    return _whole_file(name, _("something that is no ordinary file"), _("save the text in a file first"))


def _no_text(name: str, came: str) -> Fault:
    return _whole_file(name, came, _("open it, copy its text, and save that as plain text (UTF-8)"))


def _too_large(name: str) -> Fault:
    came = _("a file of more than {count} bytes").format(count=LARGEST_FILE)
    return _whole_file(name, came, _("give the project file; keep pictures and other data out of it"))


def empty_file(name: str) -> Fault:
    """The fault of a file with nothing in it."""
    mend = _("write at least title, place, strings and supply; sample_project/every-key.yaml has all keys")
    return _whole_file(name, _("an empty file"), mend)


def _encoding_fault(name: str, line: int, column: int, came: str) -> Fault:
    mend = _("save the file again with the encoding UTF-8")
    return Fault(name, line, column, "", came, _("text in UTF-8"), mend)


def _control_fault(name: str, text: str, index: int) -> Fault:
    line, column = place_in(text, index)
    came = _("the control character {code}").format(code=f"U+{ord(text[index]):04X}")
    if text[index] == "\x00":
        return _encoding_fault(name, line, column, came)
    return Fault(name, line, column, "", came, _("text that can be seen"), _("delete that character"))


def _indent_fault(name: str, text: str, index: int) -> Fault:
    line, column = place_in(text, index)
    came = _("a line that begins with a no-break or other special space")
    mend = _("delete the blanks at the start of the line and type spaces")
    return Fault(name, line, column, "", came, _("ordinary spaces before a key"), mend)
