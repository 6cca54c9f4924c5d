"""Solving: `python -m tests.benchmarks.solve`."""

from __future__ import annotations

import numpy as np
from scipy.linalg import solve_banded

from guidegen.calc.network import Bulbs, Network, Rails, Sources, solve_network
from tests.benchmarks.timing import best_of_turns, show


def long_run(count: int) -> tuple[Bulbs, Rails, Sources]:
    """One run of `count` bulbs, fed at one end: five white LEDs a bulb, 0.09 ohm a segment and conductor."""
    ones = np.ones(count)
    saturation_a = 2.8e-3 / np.expm1(2.802 / 0.1287)
    bulbs = Bulbs(5 * ones, ones, 0 * ones, 0.1287 * ones, saturation_a * ones, 0 * ones)
    link_s = np.append(np.full(count - 1, 1 / 0.09), 0.0)
    feed_s = np.zeros(count)
    feed_s[0] = 1 / 0.09
    rails = Rails(link_s, link_s.copy(), feed_s, feed_s.copy(), np.array([0]))
    return bulbs, rails, Sources(np.array([6.8]), np.array([0]), np.array([5.06]), np.zeros(1))


def same_band(count: int) -> tuple[np.ndarray, np.ndarray]:
    """A banded matrix of the size and width of that run's, and a right side."""
    band = np.zeros((5, 2 * count))
    band[2], band[1], band[3], band[0], band[4] = 23.0, 0.1, 0.1, -11.0, -11.0
    return band, np.ones(2 * count)


def main() -> None:
    """Print the ratios."""
    solved: dict[int, Network] = {}

    def solve(count: int) -> None:
        solved[count] = solve_network(*runs[count])

    runs = {count: long_run(count) for count in (10_000, 100_000)}
    band, right = same_band(10_000)
    ten, hundred, banded = best_of_turns(
        [lambda: solve(10_000), lambda: solve(100_000), lambda: solve_banded((2, 2), band, right)]
    )
    steps = solved[10_000].steps
    show("10,000 bulbs / (Newton steps x one solve_banded)", ten / (steps * banded), 4, f"{ten * 1e3:.0f} ms")
    show("Newton steps of 10,000 bulbs from a cold start / 1", steps, 25)
    show("100,000 bulbs / 10,000 bulbs", hundred / ten, 12, f"{hundred * 1e3:.0f} ms")
    show("Newton steps of 100,000 bulbs from a cold start / 1", solved[100_000].steps, 25)


if __name__ == "__main__":
    main()
