"""The language of every sentence a reader sees.

English is the message id, so a language is a catalogue, not a rewrite.
`_` translates now; `N_` only marks a sentence that is translated later,
where it is composed: what is written at the top of a module, in a class or
as a default is read before the language of a project is known.
"""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from contextvars import ContextVar
from functools import cache
from gettext import GNUTranslations, NullTranslations
from pathlib import Path
from typing import NamedTuple

ENGLISH = "en"
#: The languages a guide can be written in, by tag, each by its own name.
LANGUAGES = {ENGLISH: "English", "de": "Deutsch"}

_FOLDER = Path(__file__).parent


class _Speech(NamedTuple):
    language: str
    translations: NullTranslations


_AT_FIRST = _Speech(ENGLISH, NullTranslations())
_speech: ContextVar[_Speech] = ContextVar("speech", default=_AT_FIRST)


def _(message: str) -> str:
    """The sentence in the language in force."""
    return _speech.get().translations.gettext(message) if message else ""


def ngettext(one: str, many: str, count: int) -> str:
    """The sentence for `count` things in the language in force."""
    return _speech.get().translations.ngettext(one, many, count)


def N_(message: str) -> str:  # noqa: N802 - the name that extraction tools know
    """Mark a sentence for translation and return it unchanged."""
    return message


def language() -> str:
    """The tag of the language in force: "en", "de"."""
    return _speech.get().language


@contextmanager
def speaking_language(tag: str) -> Iterator[None]:
    """Speak the language of this tag inside the `with` block; KeyError for one that is not in LANGUAGES."""
    with speaking(translations_of(tag), tag):
        yield


@contextmanager
def speaking(translations: NullTranslations, tag: str = ENGLISH) -> Iterator[None]:
    """Use these translations inside the `with` block, and the numbers of the language of this tag."""
    token = _speech.set(_Speech(tag, translations))
    try:
        yield
    finally:
        _speech.reset(token)


@cache
def translations_of(tag: str) -> NullTranslations:
    """The catalogue of a language; English needs none. KeyError for a tag that is not in LANGUAGES."""
    if tag == ENGLISH:
        return NullTranslations()
    if tag not in LANGUAGES:
        raise KeyError(tag)
    with catalogue_path(tag).open("rb") as file:
        return GNUTranslations(file)


def catalogue_path(tag: str) -> Path:
    """Where the compiled catalogue of a language is; its source stands beside it as guidegen.po."""
    return _FOLDER / tag / "LC_MESSAGES" / "guidegen.mo"
