"""No traceback, whatever happens to the output or the keyboard: a sentence and an exit status."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
SAMPLE = str(ROOT / "sample_project" / "potting-bench.yaml")
RUN = "from guidegen.__main__ import run; run()"
COMMANDS = [["check", SAMPLE], ["figures", SAMPLE], ["figures", "--json", SAMPLE], ["--help"], ["--version"]]


def guidegen(
    *arguments: str, before: str = "", shell: str = "", **environment: str
) -> subprocess.CompletedProcess[str]:
    """Run the program in a fresh process; `before` runs first in it, `shell` is put behind the command."""
    command = [sys.executable, "-c", f"{before}\n{RUN}", *arguments]
    if shell:
        command = ["sh", "-c", f'"$@" {shell}', "sh", *command]
    surroundings = {**os.environ, "PYTHONPATH": str(ROOT), **environment}
    return subprocess.run(command, capture_output=True, text=True, env=surroundings, check=False)


@pytest.mark.parametrize("arguments", COMMANDS, ids=" ".join)
def test_a_full_disk_behind_the_output_is_told_in_one_line(arguments: list[str]) -> None:
    done = guidegen(*arguments, shell="> /dev/full")
    assert done.returncode == 1
    assert done.stderr == "The output cannot be written: No space left on device.\n"


@pytest.mark.parametrize("arguments", COMMANDS, ids=" ".join)
def test_a_closed_output_is_told_in_one_line(arguments: list[str]) -> None:
    done = guidegen(*arguments, shell=">&-")
    assert done.returncode == 1
    assert done.stderr == "Standard output is closed, so nothing can be shown. Nothing was done.\n"


def test_with_a_closed_output_no_guide_is_written(tmp_path: Path) -> None:
    assert guidegen("build", SAMPLE, "--out", str(tmp_path / "guide"), shell=">&-").returncode == 1
    assert list(tmp_path.iterdir()) == []


@pytest.mark.parametrize("shell", ["2>&-", ">&- 2>&-", "2> /dev/full"])
def test_without_a_place_for_errors_the_exit_status_still_tells(shell: str) -> None:
    assert guidegen("check", "no such file.yaml", shell=shell).returncode == 1


def test_a_pipe_that_nobody_reads_any_more_ends_quietly() -> None:
    done = guidegen("figures", "--json", SAMPLE, shell="| true")
    assert done.stderr == ""


STOP = """
import sys
class Stop:
    def find_spec(self, name, path, target=None):
        if name == {module!r}:
            raise KeyboardInterrupt
sys.meta_path.insert(0, Stop())
"""


# By the keyboard: 130 as a shell counts; click's own end is 1; Python may end itself by the signal, 2.
@pytest.mark.parametrize("module", ["guidegen.locale", "guidegen.cli", "click", "guidegen.study", "numpy"])
def test_stopped_by_the_keyboard_during_the_imports_it_ends_without_a_traceback(module: str) -> None:
    done = guidegen("check", SAMPLE, before=STOP.format(module=module))
    assert done.returncode in (130, 1, -2)
    assert done.stderr.strip() in ("", "Aborted!")
    assert done.stdout.strip() == ""


BREAK = "import guidegen.study as s\ndef study(path): return 1 / 0\ns.study = study"


def test_a_fault_of_its_own_is_told_in_a_sentence_with_its_place() -> None:
    done = guidegen("check", SAMPLE, before=BREAK)
    assert done.returncode == 1
    assert done.stderr.startswith(
        "guidegen has met a fault of its own: ZeroDivisionError: division by zero ("
    )
    assert "Traceback" not in done.stderr


def test_those_who_mend_the_program_may_see_the_traceback() -> None:
    done = guidegen("check", SAMPLE, before=BREAK, GUIDEGEN_TRACEBACK="1")
    assert "Traceback" in done.stderr


def test_the_installed_command_is_the_guarded_one() -> None:
    assert 'guidegen = "guidegen.__main__:run"' in (ROOT / "pyproject.toml").read_text()
