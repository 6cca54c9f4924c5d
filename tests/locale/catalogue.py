"""The catalogues of translations: what is in them, where they are, and how they are read and written."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

from babel.messages.catalog import Catalog, Message
from babel.messages.extract import extract_from_dir
from babel.messages.mofile import write_mo
from babel.messages.pofile import read_po, write_po

from guidegen.locale import ENGLISH, LANGUAGES, catalogue_path

ROOT = Path(__file__).parents[2]
TRANSLATED = tuple(tag for tag in LANGUAGES if tag != ENGLISH)
# The first pattern that fits a file decides.  What is said before a project file is read, and about
# its faults, stays English, since the file names the language.
METHODS = {
    "guidegen": [
        ("project/words.py", "python"),
        ("project/**.py", "ignore"),
        ("_data/**", "ignore"),
        ("__main__.py", "ignore"),
        ("cli.py", "ignore"),
        ("errors.py", "ignore"),
        ("paths.py", "ignore"),
        ("**.py", "python"),
    ],
    "themes/workshop": [("**.html", "jinja2.ext:babel_extract")],
}
KEYWORDS = {"_": None, "N_": None, "ngettext": (1, 2)}


class Undated(Catalog):
    """A catalogue whose head holds no dates, names or versions: the same words are the same bytes."""

    @property
    def mime_headers(self) -> list[tuple[str, str]]:
        """The head's lines."""
        return [
            ("Language", str(self.locale)),
            ("MIME-Version", "1.0"),
            ("Content-Type", "text/plain; charset=utf-8"),
            ("Content-Transfer-Encoding", "8bit"),
            ("Plural-Forms", self.plural_forms),
        ]


def extracted() -> Catalog:
    """Every sentence of the program and the theme that a translation has to have."""
    found = Catalog()
    for folder, methods in METHODS.items():
        options = {pattern: {"silent": "false"} for pattern, _method in methods}
        for file, line, sentence, _comments, context in extract_from_dir(
            ROOT / folder, methods, options, keywords=KEYWORDS
        ):
            assert context is None
            found.add(sentence, locations=[(f"{folder}/{file}", line)])
    return found


def source_path(tag: str) -> Path:
    """The catalogue of a language as translators write it."""
    return catalogue_path(tag).with_suffix(".po")


def read(path: Path, tag: str) -> Undated:
    """A catalogue file; an empty one if it is not there."""
    made = Undated(locale=tag, header_comment="", fuzzy=False)
    if not path.exists():
        return made
    with path.open("rb") as file:
        stored = read_po(file, locale=tag, abort_invalid=True)
    made.header_comment = stored.header_comment
    for message in sentences(stored):
        made.add(
            message.id, message.string, flags=message.flags & {"fuzzy"}, user_comments=message.user_comments
        )
    return made


def updated(old: Catalog, template: Catalog, tag: str) -> Undated:
    """`template` with the translations of `old`; those of sentences that are gone are left out."""
    made = Undated(locale=tag, header_comment=old.header_comment, fuzzy=False)
    for message in sentences(template):
        known = old.get(message.id)
        made.add(
            message.id,
            known.string if known and _same_form(known, message) else "",
            locations=message.locations,
            flags=known.flags & {"fuzzy"} if known else (),
            user_comments=known.user_comments if known else (),
        )
    for message in sentences(made):  # set by Babel where a sentence has a brace or a percent sign
        message.flags -= {"python-format", "python-brace-format"}
    return made


def _same_form(one: Message, other: Message) -> bool:
    return one.id == other.id


def write(path: Path, catalogue: Catalog) -> None:
    """Write a catalogue as translators read it: in the order of the files, without places."""
    with path.open("wb") as file:
        write_po(file, catalogue, width=110, no_location=True, sort_by_file=True, ignore_obsolete=True)


def compile_for(tag: str) -> None:
    """Write the compiled catalogue from its source."""
    with catalogue_path(tag).open("wb") as file:
        write_mo(file, read(source_path(tag), tag))


def sentences(catalogue: Catalog) -> Iterator[Message]:
    """The messages without the head."""
    return (message for message in catalogue if message.id)


def strings(text: str | tuple[str, ...] | list[str] | None) -> tuple[str, ...]:
    """One sentence, or its forms for one and for many."""
    return (text or "",) if isinstance(text, str) or text is None else tuple(text)


def is_translated(message: Message) -> bool:
    """Whether every form has words."""
    return all(strings(message.string)) and "fuzzy" not in message.flags
