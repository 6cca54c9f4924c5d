"""All benchmarks: `python -m tests.benchmarks`."""

from tests.benchmarks import choose, commands, draws, solve

for part in (solve, draws, choose, commands):
    part.main()
