"""A build that is killed, wherever it stands, and two builds at once."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from guidegen.errors import OutputError
from guidegen.publish import publish
from guidegen.publish.swap import swap, workplace
from tests.publish.sample import ORIGIN, THEME, contents, page, publish_text

ROOT = Path(__file__).parents[2]
CHANGES = ("os.rename", "os.mkdir", "os.rmdir", "os.remove", "shutil.rmtree", "shutil.copyfile")
KILLED = 9


def publish_and_be_killed(out: Path, text: str, at: int) -> bool:
    """Publish in a child that dies before its change number `at` of the disk; whether it died."""
    child = os.fork()
    if not child:
        _die_before_change(at)
        publish_text(out, text)
        os._exit(0)
    _pid, status = os.waitpid(child, 0)
    code = os.waitstatus_to_exitcode(status)
    assert code in (0, KILLED)
    return code == KILLED


def _die_before_change(at: int) -> None:
    """Count every change of the disk in this process and end it, with no clearing up, before one of them."""
    count = 0

    def watch(event: str, arguments: tuple) -> None:
        nonlocal count
        writes = event == "open" and isinstance(arguments[1], str) and "w" in arguments[1]
        if event in CHANGES or writes:
            count += 1
            if count == at:
                os._exit(KILLED)

    sys.addaudithook(watch)


@pytest.fixture(scope="module")
def guides(tmp_path_factory) -> dict[str, Path]:
    """An old and a new guide, whole."""
    folder = tmp_path_factory.mktemp("guides")
    return {text: publish_text(folder / text, text).folder for text in ("old", "new")}


def test_killed_before_any_change_of_the_disk_the_next_build_puts_things_right(tmp_path, guides):
    old, new = contents(guides["old"]), contents(guides["new"])
    at = died = 0
    while died == at:
        at += 1
        folder = tmp_path / str(at)
        shutil.copytree(guides["old"], folder / "guide")
        died += publish_and_be_killed(folder / "guide", "new", at)
        kept = contents(folder / "guide")
        assert kept in (old, new, {}), f"half a guide after change {at}"
        publish_text(folder / "guide", "new")
        assert contents(folder) == {f"guide/{name}": content for name, content in new.items()}
        assert [path.name for path in folder.iterdir()] == ["guide"]
    assert died > 20  # the two guides' files alone are ten changes; the renames come after them


def test_killed_before_any_change_and_then_failing_a_whole_guide_is_back(tmp_path, guides):
    old, new = contents(guides["old"]), contents(guides["new"])
    at = died = 0
    while died == at:
        at += 1
        folder = tmp_path / str(at)
        shutil.copytree(guides["old"], folder / "guide")
        died += publish_and_be_killed(folder / "guide", "new", at)
        with pytest.raises(OutputError):
            publish([page(template="undefined.html")], [], {}, THEME, folder / "guide", ORIGIN)
        assert contents(folder / "guide") in (old, new), f"no whole guide after change {at}"
        assert [path.name for path in folder.iterdir()] == ["guide"]


def test_stopped_by_the_keyboard_between_the_renames_the_old_guide_is_back(tmp_path, monkeypatch):
    out = publish_text(tmp_path / "guide", "old").folder
    before = contents(tmp_path)
    rename = Path.rename

    def stop_at_the_second(path: Path, target: Path) -> Path:
        if (path.name, target.name) == ("new", "guide"):
            raise KeyboardInterrupt
        return rename(path, target)

    monkeypatch.setattr(Path, "rename", stop_at_the_second)
    with pytest.raises(KeyboardInterrupt):
        publish_text(out, "new")
    assert contents(tmp_path) == before


def test_a_file_the_maker_edits_during_the_build_stops_the_swap(tmp_path):
    target = publish_text(tmp_path / "guide", "old").folder
    with (
        pytest.raises(OutputError, match=f"{target} holds files(?s:.*)edited: index.html"),
        workplace(target) as work,
    ):
        (work / "new").mkdir()
        (target / "index.html").write_text("edited meanwhile")
        swap(work, target)
    assert (target / "index.html").read_text() == "edited meanwhile"


def test_a_folder_the_maker_makes_after_a_kill_is_kept(tmp_path):
    target = publish_text(tmp_path / "guide", "old").folder
    work = tmp_path / ".guide.guidegen-work"
    work.mkdir()
    target.rename(work / "old")
    target.mkdir()
    (target / "mine.txt").write_text("mine")
    with pytest.raises(OutputError, match="is not empty"):
        publish_text(target, "new")
    assert contents(target) == {"mine.txt": b"mine"}


def test_something_of_the_makers_in_the_work_folder_is_kept_and_told(tmp_path):
    work = tmp_path / ".guide.guidegen-work"
    work.mkdir()
    (work / "mine.txt").write_text("mine")
    assert publish_text(tmp_path / "guide").leftover == work
    assert (work / "mine.txt").read_text() == "mine"


@pytest.fixture
def undeletable(monkeypatch) -> list[Path]:
    """Folders of this name are not deleted, as if they were in a folder that may not be written."""
    kept: list[Path] = []

    def refuse(folder: Path, ignore_errors: bool = False) -> None:
        kept.append(folder)
        if not ignore_errors:
            raise PermissionError(13, "Permission denied", str(folder))

    monkeypatch.setattr(shutil, "rmtree", refuse)
    return kept


def test_an_old_guide_that_cannot_be_deleted_is_told_and_the_new_one_stands(tmp_path, undeletable):
    publish_text(tmp_path / "guide", "old")
    published = publish_text(tmp_path / "guide", "new")
    assert published.leftover == tmp_path / ".guide.guidegen-work"
    assert "new" in (tmp_path / "guide" / "index.html").read_text()
    assert any(folder.parent == published.leftover for folder in undeletable)


def test_what_could_not_be_deleted_is_in_no_later_build_s_way(tmp_path, monkeypatch, guides):
    with monkeypatch.context() as patched:
        patched.setattr(shutil, "rmtree", lambda *_folder, **_options: None)
        publish_text(tmp_path / "guide", "old")
        publish_text(tmp_path / "guide", "older")
        publish_text(tmp_path / "guide", "new")
    assert publish_text(tmp_path / "guide", "new").leftover is None
    assert contents(tmp_path) == {
        f"guide/{name}": content for name, content in contents(guides["new"]).items()
    }


def test_a_link_in_the_place_of_the_work_folder_is_not_followed(tmp_path):
    (tmp_path / "elsewhere" / "new").mkdir(parents=True)
    (tmp_path / ".guide.guidegen-work").symlink_to(tmp_path / "elsewhere")
    with pytest.raises(OutputError):
        publish_text(tmp_path / "guide")
    assert (tmp_path / "elsewhere" / "new").is_dir()


def test_a_second_build_is_told_that_another_one_is_at_work(tmp_path):
    target = tmp_path / "guide"
    with workplace(target), pytest.raises(OutputError, match="Another guidegen is writing"):
        publish_text(target)
    publish_text(target)
    assert (target / "index.html").is_file()


def test_of_many_builds_at_once_one_wins_and_the_others_end_cleanly(tmp_path):
    script = (
        "import sys; from guidegen.errors import OutputError; from tests.publish.sample import *\n"
        "for turn in range(10):\n"
        "    try: publish_text(Path('guide'), sys.argv[1])\n"
        "    except OutputError as error: assert 'Another guidegen' in str(error), error\n"
    )
    surroundings = {**os.environ, "PYTHONPATH": str(ROOT)}
    builds = [
        subprocess.Popen([sys.executable, "-c", script, text], cwd=tmp_path, env=surroundings)
        for text in ("one", "two", "three")
    ]
    assert [build.wait(timeout=120) for build in builds] == [0, 0, 0]
    whole = [
        contents(publish_text(tmp_path / "whole" / text, text).folder) for text in ("one", "two", "three")
    ]
    assert contents(tmp_path / "guide") in whole
    assert sorted(path.name for path in tmp_path.iterdir()) == ["guide", "whole"]
