"""Compiled templates are kept beside a theme, and are in nobody's way."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from tests.publish.sample import THEME, contents, publish_text


@pytest.fixture
def theme(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A theme of one's own, and a Python that keeps what it compiled."""
    monkeypatch.setattr("sys.dont_write_bytecode", False)
    return Path(shutil.copytree(THEME, tmp_path / "theme", ignore=shutil.ignore_patterns("__pycache__")))


def kept(theme: Path) -> list[Path]:
    return sorted(theme.rglob("*.pyc"))


def test_templates_are_compiled_once(tmp_path: Path, theme: Path) -> None:
    publish_text(tmp_path / "first", theme=theme)
    before = {path: path.stat().st_mtime_ns for path in kept(theme)}
    publish_text(tmp_path / "second", theme=theme)
    assert before
    assert {path: path.stat().st_mtime_ns for path in kept(theme)} == before
    assert contents(tmp_path / "first") == contents(tmp_path / "second")


def test_a_changed_template_is_compiled_anew(tmp_path: Path, theme: Path) -> None:
    publish_text(tmp_path / "first", theme=theme)
    page = theme / "page.html"
    page.write_text(page.read_text().replace("</body>", "<p>changed</p></body>"))
    publish_text(tmp_path / "second", theme=theme)
    assert "<p>changed</p>" in (tmp_path / "second" / "index.html").read_text()


def test_nothing_of_it_goes_into_a_guide(tmp_path: Path, theme: Path) -> None:
    for _time in range(2):
        publish_text(tmp_path / "guide", theme=theme)
    assert not [name for name in contents(tmp_path / "guide") if "pyc" in name]


def test_a_broken_store_is_no_fault(tmp_path: Path, theme: Path) -> None:
    publish_text(tmp_path / "first", theme=theme)
    for path in kept(theme):
        path.write_bytes(b"no code")
    publish_text(tmp_path / "second", theme=theme)
    assert contents(tmp_path / "first") == contents(tmp_path / "second")


def test_a_closed_store_is_no_fault(tmp_path: Path, theme: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def refuse(*_anything: object) -> None:
        raise PermissionError("closed")

    publish_text(tmp_path / "first", theme=theme)
    shutil.rmtree(theme / "__pycache__")
    monkeypatch.setattr("jinja2.bccache.FileSystemBytecodeCache.dump_bytecode", refuse)
    publish_text(tmp_path / "second", theme=theme)
    assert kept(theme) == []
    assert contents(tmp_path / "first") == contents(tmp_path / "second")


def test_python_told_to_keep_nothing_keeps_nothing(
    tmp_path: Path, theme: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("sys.dont_write_bytecode", True)
    publish_text(tmp_path / "guide", theme=theme)
    assert kept(theme) == []
