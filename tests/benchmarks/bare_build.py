"""The floor of a build: the same libraries, as many bare pages, one schematic and as many charts.

`python bare_build.py FOLDER PAGES CHARTS`; nothing of guidegen is used, and no library is made to do more
than that: the charts are plain ones, with one pair of axes.
"""

import io
import sys
import tempfile
from pathlib import Path

import click  # noqa: F401 - imported for its cost, as the rest here
import numpy as np
import pint  # noqa: F401
import pydantic  # noqa: F401
import schemdraw
import schemdraw.elements as elm
import scipy.linalg
import scipy.special  # noqa: F401
import yaml  # noqa: F401
from matplotlib.backends.backend_svg import FigureCanvasSVG
from matplotlib.figure import Figure
from mkdocs.commands.build import build
from mkdocs.config.defaults import MkDocsConfig

ROWS, BULBS = 2, 5


def draw_schematic() -> bytes:
    """Two rows of a resistor and some LEDs."""
    drawing = schemdraw.Drawing(canvas="svg", show=False)
    drawing.add(elm.Battery())
    for row in range(ROWS):
        drawing.add(elm.ResistorIEC().at((1, -3 * row)).right())
        for _bulb in range(BULBS):
            drawing.add(elm.Line().right())
            drawing.push()
            drawing.add(elm.LED().down())
            drawing.pop()
    return bytes(drawing.get_imagedata("svg"))


def draw_chart() -> bytes:
    """Two lines of 24 points."""
    figure = Figure(figsize=(7, 4))
    FigureCanvasSVG(figure)
    axes = figure.add_subplot()
    for _line in range(2):
        axes.plot(np.arange(24), np.sin(np.arange(24)), marker="o", label="run")
    axes.legend()
    file = io.BytesIO()
    figure.savefig(file, format="svg")
    return file.getvalue()


def render_pages(folder: Path, site: Path, pages: int) -> None:
    """Bare pages through MkDocs."""
    docs, theme = folder / "docs", folder / "theme"
    docs.mkdir()
    theme.mkdir()
    (theme / "main.html").write_text("<!doctype html><title>{{ page.title }}</title>{{ page.content }}")
    for number in range(pages):
        (docs / f"{'index' if number == 0 else f'page{number}'}.md").write_text("# Page\n\ntext\n")
    config = MkDocsConfig(config_file_path=str(folder / "mkdocs.yml"))
    config.load_dict(
        {
            "site_name": "bare",
            "docs_dir": str(docs),
            "site_dir": str(site),
            "theme": {"name": None, "custom_dir": str(theme)},
            "plugins": [],
            "use_directory_urls": False,
        }
    )
    config.validate()
    build(config)


def main() -> None:
    """Draw and render all."""
    site, pages, charts = sys.argv[1], int(sys.argv[2]), int(sys.argv[3])
    with tempfile.TemporaryDirectory() as folder:
        render_pages(Path(folder), Path(site), pages)
    draw_schematic()
    for _chart in range(charts):
        draw_chart()


if __name__ == "__main__":
    main()
