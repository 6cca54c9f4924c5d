"""What the wheel and the source archive hold, and that an installed wheel works away from the checkout."""

from __future__ import annotations

import os
import subprocess
import sys
import tarfile
import zipfile
from pathlib import Path

import pytest

from guidegen import __version__

ROOT = Path(__file__).parents[2]
WHEEL = f"guidegen-{__version__}-py3-none-any.whl"
SDIST = f"guidegen-{__version__}.tar.gz"
PLACES = {
    "guidegen": "guidegen",
    "themes": "guidegen/_data/themes",
    "sample_project": "guidegen/_data/sample_project",
}


def build(source: Path, out: Path, *options: str) -> Path:
    """Build archives of the source folder with what is installed here, without a network."""
    command = [sys.executable, "-m", "build", "--no-isolation", "--outdir", str(out), *options, str(source)]
    subprocess.run(command, check=True, capture_output=True)
    return out


@pytest.fixture(scope="module")
def archives(tmp_path_factory) -> Path:
    """A folder with the source archive, and the wheel built from it."""
    return build(ROOT, tmp_path_factory.mktemp("archives"))


@pytest.fixture(scope="module")
def wheel_of_checkout(tmp_path_factory) -> Path:
    """The wheel built from the checkout."""
    return build(ROOT, tmp_path_factory.mktemp("wheel"), "--wheel") / WHEEL


@pytest.fixture(scope="module")
def installed(archives, tmp_path_factory) -> Path:
    """A folder into which the wheel, and nothing it depends on, is installed."""
    folder = tmp_path_factory.mktemp("installed")
    command = [
        sys.executable,
        "-m",
        "pip",
        "install",
        "-q",
        "--no-deps",
        "--no-index",
        "--target",
        str(folder),
    ]
    subprocess.run([*command, str(archives / WHEEL)], check=True)
    return folder


def names_in(wheel: Path) -> set[str]:
    with zipfile.ZipFile(wheel) as archive:
        return {name for name in archive.namelist() if not name.endswith("/")}


def names_in_sdist(archives: Path) -> set[str]:
    with tarfile.open(archives / SDIST) as archive:
        files = [member.name for member in archive.getmembers() if member.isfile()]
    return {name.removeprefix(f"guidegen-{__version__}/") for name in files}


def files_under(folder: str) -> set[str]:
    """The checkout's files in this folder, relative to it, without what programs leave behind."""
    found = (path.relative_to(ROOT / folder) for path in (ROOT / folder).rglob("*") if path.is_file())
    return {path.as_posix() for path in found if not _is_left_behind(path)}


def _is_left_behind(path: Path) -> bool:
    return any(part in ("__pycache__", "node_modules") or part.endswith("-guide") for part in path.parts)


def test_the_wheel_holds_the_package_the_themes_and_the_sample_and_nothing_else(archives):
    expected = {f"{place}/{name}" for folder, place in PLACES.items() for name in files_under(folder)}
    about = {name for name in names_in(archives / WHEEL) if ".dist-info/" in name}
    assert names_in(archives / WHEEL) - about == expected
    assert {name.split(".dist-info/")[1] for name in about} == {
        "METADATA",
        "RECORD",
        "WHEEL",
        "entry_points.txt",
        "licenses/LICENSE",
    }


@pytest.mark.parametrize(
    "name",
    [
        "guidegen/project/units.txt",
        "guidegen/locale/de/LC_MESSAGES/guidegen.mo",
        "guidegen/_data/sample_project/potting-bench.yaml",
        "guidegen/_data/themes/workshop/",
    ],
)
def test_the_wheel_holds_the_files_that_are_no_python(archives, name):
    assert any(held.startswith(name) for held in names_in(archives / WHEEL))


def test_the_wheel_of_the_checkout_is_the_wheel_of_the_source_archive(archives, wheel_of_checkout):
    assert names_in(wheel_of_checkout) == names_in(archives / WHEEL)


@pytest.mark.parametrize("folder", ["guidegen", "tests", "themes", "sample_project", ".ci"])
def test_the_source_archive_holds_every_file_of(archives, folder):
    held = names_in_sdist(archives)
    assert {f"{folder}/{name}" for name in files_under(folder)} <= held


def test_the_source_archive_holds_what_a_stranger_needs_to_read_build_and_test(archives):
    assert {"README.md", "DEVELOPERS.md", "LICENSE", "pyproject.toml", "PKG-INFO"} <= names_in_sdist(archives)


@pytest.mark.parametrize(
    "junk", ["__pycache__", ".pyc", "node_modules", "-guide/", ".venv", ".git/", ".egg-info", "shots/"]
)
def test_neither_archive_holds_junk(archives, junk):
    assert not [name for name in names_in(archives / WHEEL) | names_in_sdist(archives) if junk in name]


def run_installed(installed: Path, folder: Path, *command: str) -> str:
    """Run python from another folder, where the installed wheel comes first."""
    surroundings = {**os.environ, "PYTHONPATH": str(installed)}
    done = subprocess.run(
        [sys.executable, *command], cwd=folder, env=surroundings, check=True, capture_output=True, text=True
    )
    return done.stdout


def test_the_installed_program_tells_its_version_from_any_folder(installed, tmp_path):
    assert __version__ in run_installed(installed, tmp_path, str(installed / "bin" / "guidegen"), "--version")


def test_the_installed_program_runs_as_a_module(installed, tmp_path):
    assert __version__ in run_installed(installed, tmp_path, "-m", "guidegen", "--version")


@pytest.mark.parametrize("name", ["themes", "sample_project"])
def test_the_installed_package_finds_its_own_data(installed, tmp_path, name):
    script = f"from guidegen.paths import data_folder; print(data_folder({name!r}))"
    assert run_installed(installed, tmp_path, "-c", script).strip() == str(
        installed / "guidegen" / "_data" / name
    )


def test_the_installed_program_builds_the_sample_guide_from_its_own_files(installed, tmp_path):
    sample = installed / "guidegen" / "_data" / "sample_project" / "potting-bench.yaml"
    run_installed(installed, tmp_path, "-m", "guidegen", "build", str(sample))
    assert (tmp_path / "potting-bench-guide" / "index.html").is_file()
