"""Sharing sentences out among translators and putting them together again loses nothing."""

from __future__ import annotations

import pytest

from tests.locale import parts
from tests.locale.catalogue import Undated, is_translated, read, sentences, write


@pytest.fixture
def catalogues(tmp_path, monkeypatch):
    """A German catalogue of four sentences in two files, one of them translated."""
    template = Undated(locale="de")
    for number, (words, file) in enumerate(
        [("one", "a.py"), ("two words", "a.py"), ("three", "b.py"), (("{n} bulb", "{n} bulbs"), "b.py")]
    ):
        template.add(words, locations=[(file, number)])
    path = tmp_path / "guidegen.po"
    done = Undated(locale="de", header_comment="# How it is written")
    done.add("one", "eins")
    write(path, done)
    monkeypatch.setattr(parts, "extracted", lambda: template)
    monkeypatch.setattr(parts, "source_path", lambda _tag: path)
    monkeypatch.setattr(parts, "compile_for", lambda _tag: None)
    return path


def test_every_sentence_without_a_translation_is_in_one_part(catalogues, tmp_path):
    parts.split("de", tmp_path / "out", 2)
    found = [[m.id for m in sentences(read(tmp_path / "out" / f"de-{n}.po", "de"))] for n in (1, 2)]
    assert found == [["two words"], ["three", ("{n} bulb", "{n} bulbs")]]


def test_a_part_has_the_glossary_at_its_head(catalogues, tmp_path):
    parts.split("de", tmp_path / "out", 1)
    assert read(tmp_path / "out" / "de-1.po", "de").header_comment == "# How it is written"


def test_what_is_translated_in_parts_is_merged_and_the_rest_kept(catalogues, tmp_path):
    parts.split("de", tmp_path / "out", 2)
    part = read(tmp_path / "out" / "de-2.po", "de")
    part["three"].string = "drei"
    part["{n} bulb"].string = ("{n} Lampe", "{n} Lampen")
    write(tmp_path / "out" / "de-2.po", part)
    parts.merge("de", [tmp_path / "out" / "de-1.po", tmp_path / "out" / "de-2.po"])
    merged = {m.id: m.string for m in sentences(read(catalogues, "de")) if is_translated(m)}
    assert merged == {"one": "eins", "three": "drei", ("{n} bulb", "{n} bulbs"): ("{n} Lampe", "{n} Lampen")}
