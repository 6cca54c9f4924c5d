"""The catalogues hold every sentence of the program and the theme, whole and in good order."""

from __future__ import annotations

import gettext
import re
from collections import Counter
from typing import get_args

import pytest

from guidegen.circuit.expected import Verdict
from guidegen.locale import catalogue_path
from guidegen.project.schema import Colour, Exposure, Feed, Material, Place, ResistorKind, Supply
from tests.locale.catalogue import (
    TRANSLATED,
    extracted,
    is_translated,
    read,
    sentences,
    source_path,
    strings,
)

_PLACEHOLDER = re.compile(r"\{[^{}]*\}")
_MARKUP = re.compile(r"</?[a-zA-Z][^<>]*>|&#?\w+;")


@pytest.fixture(scope="module")
def template():
    return extracted()


@pytest.fixture(scope="module", params=TRANSLATED)
def catalogue(request):
    return read(source_path(request.param), request.param)


def translated(catalogue):
    return [message for message in sentences(catalogue) if is_translated(message)]


def pairs(message):
    """Every form of a message with the English form it stands for; with two forms, as English has."""
    return zip(strings(message.id), strings(message.string), strict=True)


def test_the_catalogue_has_every_sentence_and_no_other(catalogue, template):
    """If not: `python -m tests.locale.extract`."""
    assert {message.id for message in sentences(catalogue)} == {message.id for message in sentences(template)}


def test_every_sentence_is_translated(catalogue):
    assert [message.id for message in sentences(catalogue) if not is_translated(message)] == []


def test_no_translation_is_a_guess(catalogue):
    assert [message.id for message in sentences(catalogue) if "fuzzy" in message.flags] == []


def test_a_translation_has_the_placeholders_of_its_sentence(catalogue):
    wrong = [
        message.id
        for message in translated(catalogue)
        for one, other in pairs(message)
        if Counter(_PLACEHOLDER.findall(one)) != Counter(_PLACEHOLDER.findall(other))
    ]
    assert wrong == []


def test_a_translation_has_the_markup_of_its_sentence(catalogue):
    wrong = [
        message.id
        for message in translated(catalogue)
        for one, other in pairs(message)
        if Counter(_MARKUP.findall(one)) != Counter(_MARKUP.findall(other))
    ]
    assert wrong == []


def test_a_translation_begins_and_ends_with_the_space_of_its_sentence(catalogue):
    wrong = [
        message.id
        for message in translated(catalogue)
        for one, other in pairs(message)
        if edges(one) != edges(other)
    ]
    assert wrong == []


def edges(text):
    return text[: len(text) - len(text.lstrip())], text[len(text.rstrip()) :]


def test_a_number_of_things_has_all_its_forms(catalogue):
    wrong = [
        message.id
        for message in translated(catalogue)
        if message.pluralizable != (len(strings(message.string)) == catalogue.num_plurals > 1)
    ]
    assert wrong == []


@pytest.mark.parametrize("tag", TRANSLATED)
def test_the_compiled_catalogue_is_up_to_date(tag):
    """If not: `python -m tests.locale.extract`."""
    with catalogue_path(tag).open("rb") as file:
        compiled = gettext.GNUTranslations(file)
    for message in sentences(read(source_path(tag), tag)):
        forms = strings(message.id)
        said = (
            [compiled.ngettext(*forms, count) for count in (1, 2)]
            if message.pluralizable
            else [compiled.gettext(forms[0])]
        )
        assert said == list(strings(message.string) if is_translated(message) else forms)


def test_the_head_of_a_catalogue_has_no_dates_or_names(catalogue):
    text = source_path(str(catalogue.locale)).read_text(encoding="utf-8")
    assert not re.search(r"Date:|Translator|Generated-By|Report-Msgid", text)


def test_faults_of_the_project_file_are_in_no_catalogue(template):
    assert template.get("write a decimal point, not a comma, such as {example}") is None


@pytest.mark.parametrize(
    "choices",
    [
        *(Feed, Exposure, Material, ResistorKind, Colour, Verdict),
        *(Supply.model_fields["stands"].annotation, Place.model_fields["near_water"].annotation),
    ],
)
def test_choices_that_the_guide_repeats_are_in_it(template, choices):
    words = [word for word in choices_in(choices) if template.get(word) is None]
    assert words == []


def choices_in(annotation):
    """The words of a choice, which may also be left out."""
    for part in get_args(annotation):
        if isinstance(part, str):
            yield part
        else:
            yield from choices_in(part)


def test_words_of_the_project_file_that_the_guide_shows_are_in_it(template):
    assert template.get("run {number}") is not None
