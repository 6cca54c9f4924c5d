"""The whole sample guide has the same bytes wherever and whenever it is built."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest

from tests.publish.sample import contents

ROOT = Path(__file__).parents[2]
SAMPLE = ROOT / "sample_project" / "potting-bench.yaml"


def build(folder: Path, *options: str, **surroundings: str) -> dict[str, bytes]:
    """Build the sample from this folder; returns the guide's files."""
    command = [sys.executable, "-m", "guidegen", "build", str(SAMPLE), *options]
    environment = {**os.environ, "PYTHONPATH": str(ROOT), **surroundings}
    subprocess.run(command, cwd=folder, env=environment, check=True, capture_output=True)
    (guide,) = folder.iterdir()
    return contents(guide)


@pytest.fixture(scope="module")
def expected(tmp_path_factory) -> dict[str, bytes]:
    """The sample guide, built here and now."""
    return build(tmp_path_factory.mktemp("here"))


@pytest.mark.parametrize(
    "surroundings",
    [
        {"TZ": "Pacific/Kiritimati", "PYTHONHASHSEED": "1"},
        {"LANG": "C", "LC_ALL": "C", "PYTHONUTF8": "0", "PYTHONHASHSEED": "2"},
        {"LC_ALL": "tr_TR.UTF-8", "SOURCE_DATE_EPOCH": "86400"},
    ],
    ids=["time zone", "plain locale", "other locale and day"],
)
def test_the_sample_guide_has_the_same_bytes_in_another_folder_and(tmp_path, expected, surroundings):
    assert build(tmp_path, "--out", "my guide", **surroundings) == expected


def test_no_file_of_the_guide_holds_a_path_of_this_machine(expected):
    telling = [str(ROOT).encode(), str(Path.home()).encode() + b"/", sys.prefix.encode()]
    assert [name for name, content in expected.items() if any(path in content for path in telling)] == []
