"""The command lines that the README gives, and that the proving script runs."""

from __future__ import annotations

import re
import subprocess
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
README = (ROOT / "README.md").read_text()


def test_the_readme_has_one_line_to_build_the_sample_and_one_to_test():
    lines = [line for line in README.splitlines() if line.startswith("python3 -m venv ")]
    assert [line.split(" && ")[-1] for line in lines] == [
        ".venv/bin/guidegen build sample_project/potting-bench.yaml",
        ".venv/bin/pytest",
    ]


def test_the_proving_script_takes_its_test_line_from_the_readme():
    pattern = re.search(r"grep -E '([^']+)' README\.md", (ROOT / ".ci" / "run").read_text())
    assert pattern is not None
    found = [line for line in README.splitlines() if re.match(pattern[1], line)]
    assert len(found) == 1
    assert found[0].endswith(".venv/bin/pytest")


@pytest.mark.parametrize("script", ["run", "check"])
def test_a_script_stops_at_its_first_failure_and_is_sound_bash(script):
    path = ROOT / ".ci" / script
    assert "\nset -euo pipefail\n" in path.read_text()
    assert path.stat().st_mode & 0o111
    subprocess.run(["bash", "-n", path], check=True)


def test_the_constraints_are_exact_versions():
    lines = (ROOT / ".ci" / "constraints.txt").read_text().splitlines()
    pins = [line for line in lines if not line.startswith("#")]
    assert len(pins) > 30
    assert all(re.fullmatch(r"[A-Za-z0-9_.-]+==[0-9][0-9A-Za-z.]*", pin) for pin in pins)


def test_the_lock_file_of_the_html_checker_has_a_hash_and_names_no_host():
    lock = (ROOT / "tests" / "browser" / "package-lock.json").read_text()
    assert '"integrity": "sha512-' in lock
    assert "http" not in lock
