"""The same arrangement gives the same bytes, wherever and whenever it is drawn."""

from __future__ import annotations

import hashlib
import os
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
PROGRAM = """
import sys, hashlib
from guidegen.circuit.points import test_points
from guidegen.circuit.solve import solve
from guidegen.drawings.charts import draw_charts
from guidegen.drawings.schematic import draw_schematics
from tests.drawings.builds import FEEDS, arrangement, run
build = arrangement(*[run(feed) for feed in FEEDS])
solution = solve(build)
pictures = (*draw_schematics(build, solution, test_points(build)), *draw_charts(build, solution, 0.5))
sys.stdout.buffer.write("".join(picture.svg for picture in pictures).encode())
"""


def drawn(folder: Path, **environment: str) -> str:
    """A digest of all pictures, drawn by a process of its own."""
    result = subprocess.run(
        [sys.executable, "-c", PROGRAM],
        cwd=folder,
        env=os.environ | {"PYTHONPATH": str(ROOT)} | environment,
        capture_output=True,
        check=True,
    )
    assert len(result.stdout) > 10_000
    return hashlib.sha256(result.stdout).hexdigest()


@pytest.fixture(scope="module")
def reference() -> str:
    return drawn(ROOT, PYTHONHASHSEED="1", TZ="UTC", LC_ALL="C.UTF-8")


@pytest.mark.parametrize(
    "environment",
    [
        {"PYTHONHASHSEED": "2"},
        {"TZ": "Pacific/Auckland"},
        {"LC_ALL": "C", "LANG": "C"},
        {"SOURCE_DATE_EPOCH": "1"},
    ],
)
def test_same_bytes_in_another_environment(reference, environment, tmp_path):
    assert drawn(tmp_path, **environment) == reference
