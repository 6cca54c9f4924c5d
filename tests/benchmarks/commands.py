"""The commands against bare processes: `python -m tests.benchmarks.commands`."""

from __future__ import annotations

import tempfile
from pathlib import Path

from tests.benchmarks.timing import best_of_turns, process, show

ROOT = Path(__file__).resolve().parents[2]
SAMPLE = str(ROOT / "sample_project" / "potting-bench.yaml")
UNITS = str(ROOT / "guidegen" / "project" / "units.txt")


def main() -> None:
    """Print the ratios."""
    bare_check = str(Path(__file__).with_name("bare_check.py"))
    bare_build = str(Path(__file__).with_name("bare_build.py"))
    with tempfile.TemporaryDirectory() as folder:
        out, bare = str(Path(folder) / "guide"), str(Path(folder) / "bare")
        check, check_floor, build, build_floor = best_of_turns(
            [
                process("-m", "guidegen", "check", SAMPLE),
                process(bare_check, UNITS),
                process("-m", "guidegen", "build", SAMPLE, "--out", out),
                process(bare_build, bare, UNITS),
            ],
            rounds=15,
        )
    show("check / a process that imports the same libraries", check / check_floor, 1.4, f"{check:.2f} s")
    show("build / a process that renders as much, bare", build / build_floor, 1.3, f"{build:.2f} s")


if __name__ == "__main__":
    main()
