"""The language of every sentence a reader sees.

English is the message id, so a language is a catalogue, not a rewrite.
`_` translates now; `N_` only marks a sentence that is translated later,
where it is composed.
"""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from contextvars import ContextVar
from gettext import NullTranslations

_ENGLISH = NullTranslations()
_translations: ContextVar[NullTranslations] = ContextVar("translations", default=_ENGLISH)


def _(message: str) -> str:
    """The sentence in the language in force."""
    return _translations.get().gettext(message) if message else ""


def ngettext(one: str, many: str, count: int) -> str:
    """The sentence for `count` things in the language in force."""
    return _translations.get().ngettext(one, many, count)


def N_(message: str) -> str:  # noqa: N802 - the name that extraction tools know
    """Mark a sentence for translation and return it unchanged."""
    return message


@contextmanager
def speaking(translations: NullTranslations) -> Iterator[None]:
    """Use these translations inside the `with` block."""
    token = _translations.set(translations)
    try:
        yield
    finally:
        _translations.reset(token)
