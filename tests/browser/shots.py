"""Screenshots of every page of the sample guide, for eyes to look at.

    python -m tests.browser.shots FOLDER [GUIDE]

writes PNG files into FOLDER: each page on a phone, a tablet and a desktop, dark, and as printed
on A4. GUIDE is a guide that has been built already; left out, the sample project is built.
"""

from __future__ import annotations

import subprocess
import sys
import tempfile
from pathlib import Path

from tests.browser.surfing import DESKTOP, PHONE, TABLET, build_sample, chromium

LOOKS = {
    "phone": {"viewport": PHONE},
    "tablet": {"viewport": TABLET},
    "desktop": {"viewport": DESKTOP},
    "dark": {"viewport": DESKTOP, "color_scheme": "dark"},
}


def main() -> None:
    folder = Path(sys.argv[1])
    folder.mkdir(parents=True, exist_ok=True)
    with tempfile.TemporaryDirectory() as work:
        guide = Path(sys.argv[2]).resolve() if len(sys.argv) > 2 else build_sample(Path(work) / "guide")
        with chromium() as browser:
            for path in sorted(guide.glob("*.html")):
                shoot(browser, path, folder)


def shoot(browser, path: Path, folder: Path) -> None:
    """Write every picture of one page."""
    for look, options in LOOKS.items():
        context = browser.new_context(**options)
        page = context.new_page()
        page.goto(path.as_uri())
        page.screenshot(path=folder / f"{path.stem}-{look}.png", full_page=True)
        context.close()
    page = browser.new_page()
    page.goto(path.as_uri())
    with tempfile.NamedTemporaryFile(suffix=".pdf") as pdf:
        page.pdf(path=pdf.name, format="A4")
        subprocess.run(["pdftoppm", "-r", "60", "-png", pdf.name, folder / f"{path.stem}-print"], check=True)
    page.close()


if __name__ == "__main__":
    main()
