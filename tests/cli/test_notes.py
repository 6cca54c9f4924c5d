"""What `build` tells beside where the guide is."""

from __future__ import annotations

from pathlib import Path

from guidegen.build import notes
from guidegen.publish import Origin, Published

OWN = Origin("Terrace lights", "terrace.yaml")
GUIDE = Path("/home/maker/terrace-guide")


def told(replaced: Origin | None = None, leftover: Path | None = None) -> list[str]:
    return list(notes(Published(GUIDE, (), replaced, leftover), OWN))


def test_an_ordinary_build_has_no_notes() -> None:
    assert told() == []


def test_a_guide_of_another_file_that_was_replaced_is_named() -> None:
    assert told(Origin("Terrace lights", "terrace.yml")) == [
        "Note: it replaces a guide of another project that stood there: Terrace lights (terrace.yml)."
    ]


def test_a_changed_title_is_not_called_another_project() -> None:
    assert told(Origin("Old lights", "terrace.yaml")) == [
        "Note: it replaces a guide that had another title: Old lights."
    ]


def test_what_could_not_be_deleted_is_told_with_its_whole_path() -> None:
    work = "/home/maker/.terrace-guide.guidegen-work"
    assert told(leftover=Path(work)) == [
        f"Note: an earlier guide could not be deleted; delete the folder {work} yourself."
    ]
