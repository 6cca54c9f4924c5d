"""Brings the catalogues up to date: `python -m tests.locale.extract`.

Sentences are collected from the program and the theme; new ones are added
to every language's `.po` without a translation, those that are gone are
taken out, and the `.mo` is compiled anew.
"""

from __future__ import annotations

from tests.locale.catalogue import (
    TRANSLATED,
    compile_for,
    extracted,
    is_translated,
    read,
    sentences,
    source_path,
    updated,
    write,
)


def main() -> None:
    """Update and compile every catalogue, and say how full it is."""
    template = extracted()
    for tag in TRANSLATED:
        catalogue = updated(read(source_path(tag), tag), template, tag)
        write(source_path(tag), catalogue)
        compile_for(tag)
        done = sum(is_translated(message) for message in sentences(catalogue))
        print(f"{tag}: {done} of {len(list(sentences(catalogue)))} sentences are translated")


if __name__ == "__main__":
    main()
