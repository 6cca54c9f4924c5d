"""Time things against each other, taking turns, and keep the best of each."""

from __future__ import annotations

import os
import subprocess
import sys
import time
from collections.abc import Callable, Sequence
from typing import NamedTuple

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


class Spent(NamedTuple):
    """What a process took: seconds by the clock, and of processors, its own processes' included."""

    clock_s: float
    processor_s: float


def best_of_processes(commands: Sequence[Sequence[str]], rounds: int) -> list[Spent]:
    """The least that each command of this Python took, by either measure; they take turns.

    Modules are compiled beforehand, as in an installed program.
    """
    env = {name: value for name, value in os.environ.items() if name != "PYTHONDONTWRITEBYTECODE"}
    best = [run_once(command, env) for command in commands]  # the first compiles
    for turn in range(rounds):
        for index, command in enumerate(commands):
            spent = run_once(command, env)
            best[index] = spent if turn == 0 else Spent(*map(min, spent, best[index]))
    return best


def run_once(command: Sequence[str], env: dict[str, str]) -> Spent:
    """Run this Python with these arguments."""
    start, before = time.perf_counter(), os.times()
    subprocess.run([sys.executable, *command], check=True, capture_output=True, env=env)
    clock_s, after = time.perf_counter() - start, os.times()
    user_s, system_s = (
        after.children_user - before.children_user,
        after.children_system - before.children_system,
    )
    return Spent(clock_s, user_s + system_s)


def show(name: str, ratio: float, limit: float, note: str = "") -> None:
    """One line of the report."""
    mark = "ok" if ratio <= limit else "OVER"
    print(f"{name:<58} {ratio:6.2f} x   (at most {limit:g})  {mark}  {note}")
