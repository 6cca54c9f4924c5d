"""The commands: options only; each imports its work inside itself, so that a check stays quick."""

from __future__ import annotations

import sys
from pathlib import Path

import click

from guidegen import __version__

FILE = click.argument("file", type=click.Path(path_type=Path), metavar="FILE")
JSON = click.option("--json", "as_json", is_flag=True, help="Write JSON, SI units in the keys.")


@click.group(context_settings={"help_option_names": ["-h", "--help"]})
@click.version_option(__version__, prog_name="guidegen")
def main() -> None:
    """Turn one project file into a printable build guide for low-voltage lights."""
    for stream in (sys.stdout, sys.stderr):
        if hasattr(stream, "reconfigure"):
            stream.reconfigure(errors="replace")


@main.command()
@FILE
@click.option("--out", type=click.Path(path_type=Path), help="Folder to write; default <file>-guide here.")
@click.option("--one-file", is_flag=True, help="Write one self-contained HTML file into the folder.")
def build(file: Path, out: Path | None, one_file: bool) -> None:
    """Write the guide of the project FILE."""
    from guidegen.build import build as write_guide

    click.echo(write_guide(file, out, one_file=one_file))


@main.command()
@FILE
def check(file: Path) -> None:
    """Read, solve and judge the project FILE; write nothing."""
    from guidegen.report.check import check_text
    from guidegen.study import study

    found = study(file)
    click.echo(check_text(found), nl=False)
    if found.refused:
        sys.exit(1)


@main.command()
@FILE
@JSON
def figures(file: Path, as_json: bool) -> None:
    """Show the solved figures of the project FILE."""
    from guidegen.report.figures import figures_json, figures_text
    from guidegen.study import study

    found = study(file)
    click.echo(figures_json(found) if as_json else figures_text(found).rstrip())


@main.command()
@FILE
@JSON
def compare(file: Path, as_json: bool) -> None:
    """Show arrangements for the project FILE side by side, best first."""
    from guidegen.report.compare import compare as compare_project
    from guidegen.report.compare import compare_json, compare_text, refusal_text

    found = compare_project(file)
    if as_json:
        click.echo(compare_json(found))
        click.echo(refusal_text(found), err=True, nl=False)
    else:
        click.echo(compare_text(found), nl=False)
