"""Random builds: `python -m tests.benchmarks.draws`."""

from __future__ import annotations

from guidegen.circuit.draws import DRAWS, draw_builds
from guidegen.circuit.solve import solve
from tests.benchmarks.timing import best_of_turns, show
from tests.circuit.test_solve import installation, make_run


def main() -> None:
    """Print the ratio."""
    arrangement = installation(make_run(bulbs=100))
    nominal = solve(arrangement)
    draws, single = best_of_turns([lambda: draw_builds(arrangement, nominal), lambda: solve(arrangement)])
    show(
        "draws of 100 bulbs / as many single solves", draws / (DRAWS * single), 0.25, f"{draws * 1e3:.0f} ms"
    )


if __name__ == "__main__":
    main()
