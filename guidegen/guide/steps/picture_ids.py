"""Ids of the step pictures: what looks alike has one id, so that it is drawn once."""

from __future__ import annotations

SUPPLY_MARKS = "step-supply-marks"
SUPPLY_VOLTS = "step-supply-volts"
LOW_VOLTAGE = "step-low-voltage"
FEED_VOLTS = "step-feed-volts"
CUT_BOX = "step-cut-box"
TEST_PIECE = "step-test-piece"
EITHER_WAY_PIECE = "step-either-way-piece"
CUT_WIRES = "step-cut-wires"
LABELS = "step-labels"
FUSE_HOLDER = "step-fuse-holder"
FUSE_IN = "step-fuse-in"
MEASURE_RESISTOR = "step-measure-resistor"
MOUNT_RESISTORS = "step-mount-resistors"
STRAIN_LOOP = "step-strain-loop"
SLEEVES = "step-sleeves"
CLOSE_BOX = "step-close-box"
FIRST_HOUR = "step-first-hour"
HANG = "step-hang"
BOX_POINTS = "step-box-points"
ALL_RUNS = "step-all-runs"


def wires_picture(kind: int) -> str:
    """Wires and lengths of a kind of string, by its place among the kinds used."""
    return f"step-wires-{kind + 1}"


def bench_picture(kind: int) -> str:
    """A string of this kind on the bench."""
    return f"step-bench-{kind + 1}"


def pieces_picture(run: int) -> str:
    """Pieces of a run and where they are cut."""
    return f"step-pieces-{run + 1}"


def half_piece_picture(run: int) -> str:
    """The first piece of a run of which every other bulb lights."""
    return f"step-half-piece-{run + 1}"


def join_picture(bulb: int) -> str:
    """Two pieces joined behind a bulb: alike in every run."""
    return f"step-join-{bulb}"


def feed_picture(run: int) -> str:
    """Wires that meet where a run's feeder ends."""
    return f"step-feed-{run + 1}"


def tap_picture(run: int) -> str:
    """The extra pair at a bulb within the run."""
    return f"step-tap-{run + 1}"


def far_end_picture(run: int) -> str:
    """The extra wire at the last bulb."""
    return f"step-far-end-{run + 1}"


def cold_picture(run: int) -> str:
    """Where to hold the meter in the test without power."""
    return f"step-cold-{run + 1}"


def first_power_picture(run: int) -> str:
    """A run behind its test resistor."""
    return f"step-first-power-{run + 1}"


def points_picture(run: int) -> str:
    """Test points of a run."""
    return f"step-points-{run + 1}"
