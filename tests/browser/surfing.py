"""Chromium as the browser tests use it: which flags, which windows, what may be missing."""

from __future__ import annotations

import os
import subprocess
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
CHROMIUM = Path("/usr/bin/chromium")
HTML_CHECKER = Path(__file__).parent / "node_modules" / "vnu-jar" / "build" / "dist" / "vnu.jar"
# Nothing of the browser's own may go out to the network, or show in a picture.
FLAGS = (
    "--headless",
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    "--disable-dev-shm-usage",
)
# Windows in CSS pixels: a narrow phone, a tablet, a desktop.
PHONE = {"width": 360, "height": 740}
TABLET = {"width": 768, "height": 1024}
DESKTOP = {"width": 1280, "height": 900}
# The print area of A4 with margins of 10 mm, at 96 pixels an inch.
PAPER = {"width": 718, "height": 1046}


def missing(what: str) -> None:
    """Skip the test for what this machine lacks; fail it where the browser tests are required."""
    if os.environ.get("GUIDEGEN_BROWSER_REQUIRED") == "1":
        pytest.fail(f"the browser tests are required, and this is missing: {what}")
    pytest.skip(f"missing: {what}")


@contextmanager
def chromium() -> Iterator:
    """A running Chromium."""
    from playwright.sync_api import sync_playwright

    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=CHROMIUM, args=list(FLAGS))
        yield browser
        browser.close()


def build_sample(out: Path) -> Path:
    """Build the sample guide into `out` as a person would."""
    command = [
        sys.executable,
        "-m",
        "guidegen",
        "build",
        "sample_project/potting-bench.yaml",
        "--out",
        str(out),
    ]
    done = subprocess.run(command, cwd=ROOT, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr
    return out
