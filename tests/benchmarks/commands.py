"""The commands against bare processes: `python -m tests.benchmarks.commands`."""

from __future__ import annotations

import tempfile
from pathlib import Path

from guidegen.build import build as build_sample
from tests.benchmarks.timing import Spent, best_of_processes, show

ROOT = Path(__file__).resolve().parents[2]
SAMPLE = str(ROOT / "sample_project" / "potting-bench.yaml")
UNITS = str(ROOT / "guidegen" / "project" / "units.txt")


#: Charts that every guide has: light, and volts.
CHARTS = 2
ROUNDS = 15


def main() -> None:
    """Print the ratios."""
    bare_check = str(Path(__file__).with_name("bare_check.py"))
    bare_build = str(Path(__file__).with_name("bare_build.py"))
    with tempfile.TemporaryDirectory() as folder:
        out, bare = str(Path(folder) / "guide"), str(Path(folder) / "bare")
        build_sample(Path(SAMPLE), Path(out))
        pages = len(list(Path(out).glob("*.html")))
        check, check_floor, build, build_floor = best_of_processes(
            [
                ["-m", "guidegen", "check", SAMPLE],
                [bare_check, UNITS],
                ["-m", "guidegen", "build", SAMPLE, "--out", out],
                [bare_build, bare, str(pages), str(CHARTS)],
            ],
            ROUNDS,
        )
    show_processes("check / a process that imports the same libraries", check, check_floor, 1.4)
    show_processes(f"build / a process that renders {pages} bare pages", build, build_floor, 1.3)


def show_processes(name: str, spent: Spent, floor: Spent, limit: float) -> None:
    """One line: seconds by the clock against the floor's, and seconds of processors likewise."""
    processor = f"of processors {spent.processor_s:.2f} s, {spent.processor_s / floor.processor_s:.2f} x"
    show(name, spent.clock_s / floor.clock_s, limit, f"{spent.clock_s:.2f} s; {processor}")


if __name__ == "__main__":
    main()
