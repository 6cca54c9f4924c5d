"""Time things against each other, taking turns, and keep the best of each."""

from __future__ import annotations

import os
import subprocess
import sys
import time
from collections.abc import Callable, Sequence

ROUNDS = 7


def best_of_turns(tasks: Sequence[Callable[[], object]], rounds: int = ROUNDS) -> list[float]:
    """Shortest seconds of every task; they take turns, so that a busy moment hits all alike."""
    best = [float("inf")] * len(tasks)
    for _round in range(rounds):
        for index, task in enumerate(tasks):
            start = time.perf_counter()
            task()
            best[index] = min(best[index], time.perf_counter() - start)
    return best


def process(*arguments: str) -> Callable[[], object]:
    """A task that runs this Python with these arguments, modules compiled as in an installed program."""
    command = [sys.executable, *arguments]
    env = {name: value for name, value in os.environ.items() if name != "PYTHONDONTWRITEBYTECODE"}

    def run() -> None:
        subprocess.run(command, check=True, capture_output=True, env=env)

    run()
    return run


def show(name: str, ratio: float, limit: float, note: str = "") -> None:
    """One line of the report."""
    mark = "ok" if ratio <= limit else "OVER"
    print(f"{name:<58} {ratio:6.2f} x   (at most {limit:g})  {mark}  {note}")
