"""The floor of a build: the same libraries, as many bare pages, one schematic and as many charts.

`python bare_build.py FOLDER UNITS`; nothing of guidegen is used.  The sample's two figures hold a chart a
run each, so that there are four.
"""

import io
import sys
import tempfile
from pathlib import Path

import numpy as np
import schemdraw
import schemdraw.elements as elm
import scipy.linalg
import scipy.special  # noqa: F401
import yaml  # noqa: F401
from bare_check import ready_libraries
from matplotlib.backends.backend_svg import FigureCanvasSVG
from matplotlib.figure import Figure
from mkdocs.commands.build import build
from mkdocs.config.defaults import MkDocsConfig

PAGES, FIGURES, RUNS, BULBS = 10, 2, 2, 5


def draw_schematic() -> bytes:
    """Two rows of a resistor and some LEDs."""
    drawing = schemdraw.Drawing(canvas="svg", show=False)
    drawing.add(elm.Battery())
    for row in range(RUNS):
        drawing.add(elm.ResistorIEC().at((1, -3 * row)).right())
        for _bulb in range(BULBS):
            drawing.add(elm.Line().right())
            drawing.push()
            drawing.add(elm.LED().down())
            drawing.pop()
    return bytes(drawing.get_imagedata("svg"))


def draw_figure() -> bytes:
    """A chart a run: 24 points, a band, a goal."""
    figure = Figure(figsize=(7, 5))
    FigureCanvasSVG(figure)
    light = np.random.default_rng(0).random(24)
    for run in range(RUNS):
        axes = figure.add_subplot(RUNS, 1, run + 1)
        axes.plot(np.arange(24), light, marker="o", label="run")
        axes.fill_between(np.arange(24), light - 0.1, light + 0.1, color="0.8")
        axes.axhline(0.5)
    figure.legend()
    file = io.BytesIO()
    figure.savefig(file, format="svg")
    return file.getvalue()


def render_pages(folder: Path, site: Path) -> None:
    """Bare pages through MkDocs."""
    docs, theme = folder / "docs", folder / "theme"
    docs.mkdir()
    theme.mkdir()
    (theme / "main.html").write_text("<!doctype html><title>{{ page.title }}</title>{{ page.content }}")
    for number in range(PAGES):
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
    ready_libraries(sys.argv[2])
    with tempfile.TemporaryDirectory() as folder:
        render_pages(Path(folder), Path(sys.argv[1]))
    draw_schematic()
    for _figure in range(FIGURES):
        draw_figure()


if __name__ == "__main__":
    main()
