"""Progress on standard error."""

from __future__ import annotations

import pytest

from guidegen.choose import progress
from guidegen.choose.progress import Progress


def at(monkeypatch: pytest.MonkeyPatch, seconds: float) -> None:
    monkeypatch.setattr(progress.time, "monotonic", lambda: seconds)


def test_a_quick_search_says_nothing(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    at(monkeypatch, 100.0)
    shown = Progress()
    at(monkeypatch, 100.9)
    shown.show(5, 10)
    assert capsys.readouterr() == ("", "")


def test_a_slow_one_says_how_far_it_is_once_a_second_on_standard_error(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    at(monkeypatch, 100.0)
    shown = Progress()
    for seconds, done in ((101.0, 3), (101.5, 5), (102.0, 7)):
        at(monkeypatch, seconds)
        shown.show(done, 10)
    captured = capsys.readouterr()
    assert captured.out == ""
    assert captured.err.splitlines() == ["comparing arrangements: 3 of 10", "comparing arrangements: 7 of 10"]
