"""Drawing in a second process: the same pictures whichever process draws, and none is ever left behind."""

from __future__ import annotations

import os
import signal
import subprocess
import sys
import time
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest

from guidegen.circuit.points import test_points
from guidegen.circuit.solve import solve
from guidegen.drawings import apart
from guidegen.drawings.apart import Drawings, drawing_apart
from guidegen.drawings.charts import draw_charts
from guidegen.drawings.picture import Picture
from guidegen.drawings.schematic import draw_schematics
from guidegen.locale import language, speaking_language
from tests.drawings.builds import arrangement, run

ROOT = Path(__file__).parents[2]
SAMPLE = ROOT / "sample_project" / "potting-bench.yaml"
#: Where Linux tells the processes that a process has started.
CHILDREN = "/proc/{0}/task/{0}/children"
ENDS_AT_ONCE = "raise SystemExit"
DRAWS_HALF = "import sys; sys.stdin.buffer.read(1); sys.stdout.buffer.write(b'\\x80\\x05\\x95half')"
needs_children = pytest.mark.skipif(
    not Path(CHILDREN.format(os.getpid())).exists(), reason="the system does not list processes"
)


def order(drawings: Drawings) -> None:
    """A schematic and two charts."""
    build = arrangement(run("middle"), run("one end"))
    solution = solve(build)
    drawings.order(draw_schematics, build, solution, test_points(build))
    drawings.order(draw_charts, build, solution, 0.5)


def drawn_here() -> tuple[Picture, ...]:
    """What this process draws."""
    drawings = Drawings()
    order(drawings)
    return drawings.pictures()


def drawn_language() -> tuple[Picture, ...]:
    """A picture that tells the language it was drawn in."""
    return (Picture("language", "", language(), "", 0, 0),)


@contextmanager
def never_here(monkeypatch: pytest.MonkeyPatch) -> Iterator[None]:
    """The second process draws, or the test fails."""
    with monkeypatch.context() as patched:
        patched.setattr(apart, "processors", lambda: 2)
        patched.setattr(apart, "draw_all", lambda _orders: pytest.fail("the second process drew nothing"))
        yield


def test_the_second_process_draws_the_same_pictures(monkeypatch: pytest.MonkeyPatch) -> None:
    with never_here(monkeypatch), drawing_apart() as drawings:
        order(drawings)
        pictures = drawings.pictures()
    assert [picture.id for picture in pictures] == ["schematic-1", "light", "volts"]
    assert pictures == drawn_here()


def test_the_second_process_speaks_the_language_in_force(monkeypatch: pytest.MonkeyPatch) -> None:
    with never_here(monkeypatch), drawing_apart() as drawings:
        with speaking_language("de"):
            drawings.order(drawn_language)
        drawings.order(drawn_language)
        assert [picture.alt for picture in drawings.pictures()] == ["de", "en"]


def test_it_loads_no_module_from_the_folder_it_stands_in(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    (tmp_path / "pickle.py").write_text("raise SystemExit")
    monkeypatch.chdir(tmp_path)
    with never_here(monkeypatch), drawing_apart() as drawings:
        assert drawings.pictures() == ()


def test_one_processor_draws_without_a_second_process(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(apart, "processors", lambda: 1)
    monkeypatch.setattr(subprocess, "Popen", lambda *_all, **_named: pytest.fail("a process was started"))
    with drawing_apart() as drawings:
        order(drawings)
        assert drawings.pictures() == drawn_here()


@pytest.mark.parametrize("python", ["", "/nowhere/python"])
def test_without_a_python_to_start_this_process_draws(monkeypatch: pytest.MonkeyPatch, python: str) -> None:
    monkeypatch.setattr(apart, "processors", lambda: 2)
    monkeypatch.setattr(sys, "executable", python)
    with drawing_apart() as drawings:
        order(drawings)
        assert drawings.pictures() == drawn_here()


@pytest.mark.parametrize("program", [ENDS_AT_ONCE, DRAWS_HALF])
def test_this_process_draws_where_the_second_fails(monkeypatch: pytest.MonkeyPatch, program: str) -> None:
    monkeypatch.setattr(apart, "processors", lambda: 2)
    monkeypatch.setattr(apart, "_PROGRAM", program)
    with drawing_apart() as drawings:
        order(drawings)
        assert drawings.pictures() == drawn_here()


def test_a_fault_in_drawing_comes_up_in_this_process(
    monkeypatch: pytest.MonkeyPatch, capfd: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr(apart, "processors", lambda: 2)
    with drawing_apart() as drawings:
        drawings.order(draw_charts, "no arrangement", None, None)
        with pytest.raises(AttributeError, match="runs"):
            drawings.pictures()
    assert capfd.readouterr() == ("", "")


@needs_children
def test_a_second_process_that_is_not_needed_ends_with_the_block(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(apart, "processors", lambda: 2)
    before = children_of(os.getpid())
    with drawing_apart() as drawings:
        order(drawings)
        assert len(children_of(os.getpid()) - before) == 1
    assert children_of(os.getpid()) == before


@needs_children
@pytest.mark.skipif(apart.processors() < 2, reason="a second process needs a second processor")
@pytest.mark.parametrize("sign", [signal.SIGKILL, signal.SIGTERM, signal.SIGINT])
def test_none_is_left_behind_when_a_build_is_stopped(tmp_path: Path, sign: signal.Signals) -> None:
    command = [sys.executable, "-m", "guidegen", "build", SAMPLE, "--out", tmp_path / "guide"]
    with subprocess.Popen(command, cwd=ROOT, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL) as build:
        while not (second := children_of(build.pid)):
            assert build.poll() is None, "the build started no second process"
        build.send_signal(sign)
    assert build.returncode != 0
    wait_for_the_end(second)


def test_a_refused_project_says_no_more_than_its_refusal(tmp_path: Path) -> None:
    """Of a second process that is dropped nothing is heard."""
    file = tmp_path / "refused.yaml"
    file.write_text(SAMPLE.read_text().replace("case: sealed", "case: opened"))
    command = [sys.executable, "-m", "guidegen"]
    check, build = (
        subprocess.run([*command, word, file], cwd=ROOT, capture_output=True, text=True, check=False)
        for word in ("check", "build")
    )
    assert (build.returncode, build.stdout) == (1, "")
    assert build.stderr == check.stdout


@pytest.mark.skipif(apart.processors() < 2, reason="a second process needs a second processor")
def test_a_build_starts_one_process(tmp_path: Path) -> None:
    assert started(["build", "--out", str(tmp_path / "guide")]) == 1


@pytest.mark.parametrize("command", [["check"], ["figures"], ["figures", "--json"], ["compare", "--json"]])
def test_other_commands_start_no_process(command: list[str]) -> None:
    assert started(command) == 0


def started(command: list[str]) -> int:
    """Processes that a command starts; Python tells of each beforehand (`sys.addaudithook`)."""
    script = (
        "import sys\nfrom guidegen.cli import main\n"
        "sys.addaudithook(lambda event, _of: event == 'subprocess.Popen' and print('STARTED'))\n"
        f"main([*{command}, {str(SAMPLE)!r}])"
    )
    done = subprocess.run(
        [sys.executable, "-c", script], cwd=ROOT, capture_output=True, text=True, check=True
    )
    return done.stdout.count("STARTED")


def children_of(process: int) -> set[int]:
    """The processes that a process has started and not yet outlived."""
    try:
        return set(map(int, Path(CHILDREN.format(process)).read_text().split()))
    except (FileNotFoundError, ProcessLookupError):
        return set()


def wait_for_the_end(processes: set[int]) -> None:
    """Return when all have ended; fail when one does not."""
    for _wait in range(1200):
        if not any(is_running(process) for process in processes):
            return
        time.sleep(0.05)
    pytest.fail("a process is left behind")


def is_running(process: int) -> bool:
    """Whether the process is there and has not ended (a dead one may wait to be noticed)."""
    try:
        state = Path(f"/proc/{process}/stat").read_text().rpartition(")")[2].split()[0]
    except (FileNotFoundError, ProcessLookupError):
        return False
    return state not in {"Z", "X"}
