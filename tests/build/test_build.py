"""`build` as a whole: what it writes, what it says, and that a refused project leaves nothing behind."""

from __future__ import annotations

from pathlib import Path

import pytest

from guidegen.build import build
from guidegen.errors import GuidegenError, OutputError, ProjectError
from guidegen.paths import data_folder

SAMPLE = data_folder("sample_project") / "potting-bench.yaml"


def files_of(folder: Path) -> dict[str, bytes]:
    """Every file of a folder by its relative path."""
    return {
        path.relative_to(folder).as_posix(): path.read_bytes() for path in folder.rglob("*") if path.is_file()
    }


@pytest.fixture(scope="module")
def sample_guide(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The guide of the sample project."""
    out = tmp_path_factory.mktemp("build") / "guide"
    build(SAMPLE, out)
    return out


def test_the_sample_has_the_pages_of_the_design(sample_guide: Path) -> None:
    titles = (
        "Start here",
        "Stay safe",
        "Parts and tools",
        "Wiring",
        "The numbers",
        "Light along the run",
        "Arrangements compared",
        "Build it",
        "Readings",
        "Hanging plan",
        "Running it",
        "Print set",
    )
    pages = {name for name in files_of(sample_guide) if name.endswith(".html")}
    start = (sample_guide / "index.html").read_text()
    assert len(pages) == len(titles)
    assert all(f'<span class="tab-title">{title}</span>' in start for title in titles)


def test_every_drawing_is_shown_on_a_page(sample_guide: Path) -> None:
    files = files_of(sample_guide)
    pages = b"".join(content for name, content in files.items() if name.endswith(".html"))
    drawings = [name for name in files if name.startswith("drawings/")]
    assert {"drawings/schematic-1.svg", "drawings/light.svg", "drawings/volts.svg"} <= set(drawings)
    assert [name for name in drawings if f'src="{name}"'.encode() not in pages] == []


def test_the_project_file_is_in_the_guide(sample_guide: Path) -> None:
    first_key = next(line for line in SAMPLE.read_text().splitlines() if line.startswith("title:"))
    assert first_key in (sample_guide / "numbers.html").read_text()


def test_another_folder_gets_the_same_bytes(sample_guide: Path, tmp_path: Path) -> None:
    build(SAMPLE, tmp_path / "elsewhere")
    assert files_of(tmp_path / "elsewhere") == files_of(sample_guide)


def test_the_folder_is_named_after_the_file_and_told(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    told = build(SAMPLE)
    assert str(tmp_path / "potting-bench-guide" / "index.html") in told
    assert (tmp_path / "potting-bench-guide" / "index.html").is_file()


def test_a_refused_project_gets_no_guide(tmp_path: Path) -> None:
    """An opened supply is refused whatever else the file says (safety rules, first set)."""
    text = SAMPLE.read_text()
    refused = tmp_path / "refused.yaml"
    refused.write_text(text.replace("case: sealed", "case: opened"))
    assert refused.read_text() != text
    with pytest.raises(GuidegenError, match="no guide is written") as caught:
        build(refused, tmp_path / "guide")
    assert caught.value.exit_code == 1
    assert not (tmp_path / "guide").exists()


def test_a_file_with_faults_gets_no_guide(tmp_path: Path) -> None:
    (tmp_path / "faulty.yaml").write_text("title: 5\nvoltage: 3,5 V\n")
    with pytest.raises(ProjectError):
        build(tmp_path / "faulty.yaml", tmp_path / "guide")
    assert not (tmp_path / "guide").exists()


def test_a_maker_s_own_folder_is_left_alone(tmp_path: Path) -> None:
    (tmp_path / "notes.txt").write_text("mine")
    with pytest.raises(OutputError):
        build(SAMPLE, tmp_path)
    assert files_of(tmp_path) == {"notes.txt": b"mine"}
