"""Shares the sentences without a translation out among several translators.

`python -m tests.locale.parts split de FOLDER N` writes FOLDER/de-1.po to
de-N.po, each with whole folders of the source as far as that makes them of
like length; `python -m tests.locale.parts merge de FILE...` puts what is
translated in such files into the catalogue and compiles it.
"""

from __future__ import annotations

import sys
from collections import defaultdict
from pathlib import Path

from babel.messages.catalog import Catalog, Message

from tests.locale.catalogue import (
    Undated,
    compile_for,
    extracted,
    is_translated,
    read,
    sentences,
    source_path,
    strings,
    updated,
    write,
)


def split(tag: str, folder: Path, count: int) -> None:
    """Write the sentences without a translation into `count` files."""
    catalogue = updated(read(source_path(tag), tag), extracted(), tag)
    missing = [message for message in sentences(catalogue) if not is_translated(message)]
    folder.mkdir(parents=True, exist_ok=True)
    for number, part in enumerate(_parts(missing, count), 1):
        path = folder / f"{tag}-{number}.po"
        write(path, _catalogue(tag, catalogue.header_comment, part))
        print(f"{path}: {len(part)} sentences, {sum(_length(message) for message in part)} letters")


def _parts(messages: list[Message], count: int) -> list[list[Message]]:
    """The messages in the order of their files, cut into parts of like length where a file begins."""
    by_file: dict[str, list[Message]] = defaultdict(list)
    for message in sorted(messages, key=lambda each: each.locations):
        by_file[message.locations[0][0]].append(message)
    share = sum(_length(message) for message in messages) / count
    parts: list[list[Message]] = [[] for _number in range(count)]
    before = 0
    for same in by_file.values():
        length = sum(_length(message) for message in same)
        parts[min(count - 1, int((before + length / 2) / share))].extend(same)
        before += length
    return parts


def _length(message: Message) -> int:
    return sum(len(text) for text in strings(message.id))


def _catalogue(tag: str, head: str, messages: list[Message]) -> Catalog:
    made = Undated(locale=tag, header_comment=head, fuzzy=False)
    for message in messages:
        places = sorted({place for place, _line in message.locations})
        comments = [*message.user_comments, *(f"in {place}" for place in places)]
        made.add(message.id, message.string, locations=message.locations, user_comments=comments)
    for message in sentences(made):
        message.flags -= {"python-format", "python-brace-format"}
    return made


def merge(tag: str, paths: list[Path]) -> None:
    """Put the translations of these files into the catalogue, and compile it."""
    catalogue = read(source_path(tag), tag)
    for path in paths:
        for message in sentences(read(path, tag)):
            if is_translated(message):
                catalogue.add(message.id, message.string)
                catalogue[message.id].string = message.string
    merged = updated(catalogue, extracted(), tag)
    write(source_path(tag), merged)
    compile_for(tag)
    left = sum(not is_translated(message) for message in sentences(merged))
    print(f"{tag}: {left} sentences are left without a translation")


def main(arguments: list[str]) -> None:
    """Split or merge, as the first argument says."""
    match arguments:
        case ["split", tag, folder, count]:
            split(tag, Path(folder), int(count))
        case ["merge", tag, *files] if files:
            merge(tag, [Path(file) for file in files])
        case _:
            sys.exit(__doc__)


if __name__ == "__main__":
    main(sys.argv[1:])
