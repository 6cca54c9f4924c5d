"""Faults can be shown on a terminal that knows no language."""

import os
import subprocess
import sys
from pathlib import Path

import pytest

BAD = Path(__file__).with_name("bad")


@pytest.mark.parametrize(
    "python", [{}, {"PYTHONUTF8": "0", "PYTHONCOERCECLOCALE": "0", "PYTHONIOENCODING": "ascii"}]
)
def test_a_fault_with_letters_beyond_ascii_is_shown_and_ends_with_1(python: dict[str, str]) -> None:
    case = "tolerance-behind-the-value"  # 5.1 ± 0.1 V
    root = str(Path(__file__).parents[2])
    environment = {"PATH": os.environ["PATH"], "PYTHONPATH": root, "LANG": "C", "LC_ALL": "C", **python}
    command = [sys.executable, "-m", "guidegen", "check", f"{case}.yaml"]
    done = subprocess.run(command, capture_output=True, cwd=BAD, env=environment, check=False)
    told, expected = (
        done.stderr.decode("utf-8", "replace").split("\n"),
        (BAD / f"{case}.txt").read_text("utf-8"),
    )
    assert done.returncode == 1
    assert done.stdout == b""
    # Only the one line with the sign may differ, by the sign.
    assert [line for line in told if "5.1 " not in line] == [
        line for line in expected.split("\n") if "5.1 " not in line
    ]
    assert any(line.startswith("  came:     5.1 ") and line.endswith(" 0.1 V") for line in told)


LEGACY = {"PYTHONUTF8": "0", "PYTHONCOERCECLOCALE": "0", "LANG": "C", "LC_ALL": "C"}


def check_under_c(folder: Path, name: str) -> bytes:
    """What `check` says of a file, to a Python that knows no letters beyond ASCII."""
    root = str(Path(__file__).parents[2])
    environment = {"PATH": os.environ["PATH"], "PYTHONPATH": root, **LEGACY}
    command = [sys.executable, "-m", "guidegen", "check", name]
    return subprocess.run(command, capture_output=True, cwd=folder, env=environment, check=False).stderr


def test_a_name_beyond_ascii_is_shown_as_it_was_typed(tmp_path: Path) -> None:
    assert check_under_c(tmp_path, "térrace.yaml").startswith("térrace.yaml\n".encode())


def test_the_name_that_was_meant_is_found_among_names_beyond_ascii(tmp_path: Path) -> None:
    (tmp_path / "térrasse.yaml").write_text("title: x")
    (tmp_path / "orchard.yaml").write_text("title: x")
    told = check_under_c(tmp_path, "térrase.yaml")
    assert "did you mean térrasse.yaml?".encode() in told
