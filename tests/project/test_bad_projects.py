"""Every file in `bad/` is refused with exactly the message in the .txt beside it.

Most differ from small.yaml by one thing that people really write.
"""

from pathlib import Path

import pytest

from guidegen.errors import ProjectError
from guidegen.project.read import read_project

BAD = Path(__file__).with_name("bad")
CASES = sorted(path.stem for path in BAD.glob("*.yaml"))


@pytest.mark.parametrize("case", CASES)
def test_says_exactly_what_is_wrong_and_how_to_mend_it(case: str, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(BAD)
    with pytest.raises(ProjectError) as caught:
        read_project(f"{case}.yaml")
    assert caught.value.format_message() + "\n" == (BAD / f"{case}.txt").read_text("utf-8")


def test_there_are_many_cases_and_no_message_without_its_file() -> None:
    assert len(CASES) >= 50  # the number that was asked for
    assert sorted(path.stem for path in BAD.glob("*.txt")) == CASES


@pytest.mark.parametrize("case", CASES)
def test_the_place_is_inside_the_file(case: str, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(BAD)
    lines = Path(f"{case}.yaml").read_text("utf-8").split("\n")
    with pytest.raises(ProjectError) as caught:
        read_project(f"{case}.yaml")
    for fault in caught.value.faults:
        assert fault.line is not None
        assert fault.column is not None
        assert 1 <= fault.column <= len(lines[fault.line - 1]) + 1
