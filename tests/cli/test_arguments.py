"""What is typed behind `guidegen`: paths, and words in the wrong place."""

from __future__ import annotations

import os
from pathlib import Path

import click
import pytest
from click.testing import CliRunner, Result

from guidegen import build as build_module
from guidegen.cli import main


def typed(*arguments: str) -> Result:
    return CliRunner().invoke(main, list(arguments))


@pytest.mark.parametrize("name", ["terrace.yaml", "terrace.yml", "./TERRACE.YAML"])
def test_a_project_file_without_a_command_is_answered_with_the_command_to_type(name: str) -> None:
    result = typed(name)
    assert result.exit_code == 2
    assert f"{name} is no command. Did you mean: guidegen build {name}" in result.stderr


def test_a_name_with_a_blank_is_shown_in_quotes() -> None:
    assert 'guidegen build "my lights.yaml"' in typed("my lights.yaml").stderr


def test_a_misspelt_command_is_a_wrong_use() -> None:
    result = typed("bulid", "x.yaml")
    assert result.exit_code == 2
    assert "is no command. Did you mean" not in result.stderr


def test_an_empty_name_is_a_wrong_use() -> None:
    result = typed("check", "")
    assert result.exit_code == 2
    assert "the name of the project file is empty" in result.stderr


@pytest.fixture
def folder_of(monkeypatch: pytest.MonkeyPatch) -> list[Path | None]:
    """The folders that `build` was asked to write."""
    asked: list[Path | None] = []

    def write(_file: Path, out: Path | None, **_options: object) -> str:
        asked.append(out)
        return ""

    monkeypatch.setattr(build_module, "build", write)
    monkeypatch.setenv("HOME", "/home/maker")
    return asked


@pytest.mark.parametrize(
    ("out", "folder"),
    [
        ("~/guide", "/home/maker/guide"),
        ("~", "/home/maker"),
        ("a~/guide", "a~/guide"),
        ("~no-such-person/guide", "~no-such-person/guide"),
    ],
)
def test_a_tilde_at_the_start_of_out_is_the_home_folder(
    folder_of: list[Path | None], out: str, folder: str
) -> None:
    typed("build", "x.yaml", f"--out={out}")
    assert folder_of == [Path(folder)]


def test_without_out_the_builder_chooses_the_folder(folder_of: list[Path | None]) -> None:
    typed("build", "x.yaml")
    assert folder_of == [None]


@pytest.mark.skipif(os.geteuid() == 0, reason="an administrator may read every file")
def test_a_file_that_may_not_be_read_is_answered_like_every_other_fault_of_a_file(tmp_path: Path) -> None:
    (tmp_path / "x.yaml").write_text("title: x")
    (tmp_path / "x.yaml").chmod(0)
    result = typed("check", str(tmp_path / "x.yaml"))
    assert result.exit_code == 1
    assert "came:     a file that may not be read" in result.stderr


@pytest.mark.parametrize("command", ["build", "check", "figures", "compare"])
def test_the_commands_leave_the_looking_at_files_to_the_reader(command: str) -> None:
    parameter = next(p for p in main.commands[command].params if p.name == "file")
    assert parameter.type is click.STRING
