"""The commands: options only; each imports its work inside itself, so that a check stays quick."""

from __future__ import annotations

import sys
from pathlib import Path

import click

from guidegen import __version__
from guidegen.locale import _
from guidegen.paths import as_typed


def _named(_context: click.Context, parameter: click.Parameter, value: str) -> Path:
    """The path of a file that has a name."""
    if not value:
        raise click.BadParameter(_("the name of the project file is empty"), param=parameter)
    return Path(value)


def _at_home(_context: click.Context, _parameter: click.Parameter, value: str | None) -> Path | None:
    """The path, with a leading `~` as the home folder: behind `--out=` no shell puts it in place."""
    if value is None:
        return None
    try:
        return Path(value).expanduser()
    except RuntimeError:  # no such person
        return Path(value)


# Plain text: reader and publisher tell what is wrong with a path, and how to mend it.
FILE = click.argument("file", type=str, metavar="FILE", callback=_named)
OUT = click.option(
    "--out", type=str, metavar="DIR", callback=_at_home, help="Folder to write; default <file>-guide here."
)
THEME = click.option(
    "--theme", type=str, metavar="DIR", callback=_at_home, help="Folder of templates and style of your own."
)
JSON = click.option("--json", "as_json", is_flag=True, help="Write JSON, SI units in the keys.")


class Commands(click.Group):
    """The commands; a project file in the place of a command is told apart from a misspelt one."""

    def resolve_command(
        self, ctx: click.Context, args: list[str]
    ) -> tuple[str | None, click.Command | None, list[str]]:
        """The command that the arguments begin with; a UsageError if there is none."""
        word = args[0]
        if self.get_command(ctx, word) is None and word.lower().endswith((".yaml", ".yml")):
            ctx.fail(
                _("{file} is no command. Did you mean: guidegen build {file}").format(
                    file=as_typed(f'"{word}"' if " " in word else word)
                )
            )
        return super().resolve_command(ctx, args)


@click.group(cls=Commands, context_settings={"help_option_names": ["-h", "--help"]})
@click.version_option(__version__, prog_name="guidegen")
def main() -> None:
    """Turn one project file into a printable build guide for low-voltage lights."""
    for stream in (sys.stdout, sys.stderr):
        if hasattr(stream, "reconfigure"):
            stream.reconfigure(errors="replace")


@main.command()
@FILE
@OUT
@THEME
@click.option("--one-file", is_flag=True, help="Write one self-contained HTML file into the folder.")
def build(file: Path, out: Path | None, theme: Path | None, one_file: bool) -> None:
    """Write the guide of the project FILE."""
    from guidegen.drawings.apart import drawing_apart

    with drawing_apart() as drawings:
        # Loaded while the second process loads what it draws with.
        from guidegen.build import build as write_guide

        told = write_guide(file, out, one_file=one_file, theme=theme, drawings=drawings)
    click.echo(as_typed(told))


@main.command()
@FILE
def check(file: Path) -> None:
    """Read, solve and judge the project FILE; write nothing."""
    from guidegen.report.check import check_text
    from guidegen.study import study

    found = study(file)
    if found.project.steps:
        from guidegen.guide.own_steps import refuse_unknown_steps

        refuse_unknown_steps(found)
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
