"""All benchmarks: `python -m tests.benchmarks`."""

from tests.benchmarks import commands, draws, solve

for part in (solve, draws, commands):
    part.main()
