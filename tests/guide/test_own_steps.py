"""What the maker adds to steps: beside what belongs to them, never in its place."""

from __future__ import annotations

import json
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

from guidegen.errors import ProjectError
from guidegen.guide.blocks import OwnWords, Photo
from guidegen.guide.own_steps import refuse_unknown_steps
from guidegen.study import study
from tests.guide.projects import Made, changed, make

SWEEP = {"title": "Sweep up", "text": "Wire ends are sharp."}


def with_steps(*entries: dict[str, Any], **more: Any) -> Made:
    return make(changed(steps=list(entries), **more))


def faults(tmp_path: Path, *entries: dict[str, Any]) -> tuple[Any, ...]:
    path = tmp_path / "bench.yaml"
    path.write_text(json.dumps(changed(steps=list(entries)), indent=1), encoding="utf-8")
    with pytest.raises(ProjectError) as caught:
        refuse_unknown_steps(study(path))
    return caught.value.faults


def test_without_entries_nothing_is_added(plain: Made) -> None:
    assert not any(step.own or step.is_own for step in plain.steps)


def test_words_and_note_stand_with_their_step_and_no_other(plain: Made) -> None:
    made = with_steps({"step": "fuse-in", "text": "Slowly.", "note": "A *spare* one."})
    assert made.step("fuse-in").own == OwnWords("Slowly.", "A *spare* one.")
    assert [step.identity for step in made.steps if step.own] == ["fuse-in"]


def test_nothing_of_a_step_is_changed_by_what_is_added(plain: Made) -> None:
    entries = [{"step": identity, "note": "Mine."} for identity in plain.identities]
    made = with_steps(*entries)
    assert tuple(replace(step, own=None) for step in made.steps) == plain.steps


def test_own_steps_change_nothing_in_the_others_but_their_numbers(plain: Made) -> None:
    made = with_steps(
        {"before": "labels", **SWEEP}, {"after": "hang", **SWEEP}, {"before": "supply-marks", **SWEEP}
    )
    kept = [replace(step, number=0) for step in made.steps if not step.is_own]
    assert kept == [replace(step, number=0) for step in plain.steps]


def test_own_steps_stand_before_and_after_the_one_they_name(plain: Made) -> None:
    made = with_steps({"before": "hang", **SWEEP}, {"after": "hang", "title": "Look", "text": "Look."})
    at = made.identities.index("hang")
    assert made.identities[at - 1 : at + 2] == ("own-sweep-up", "hang", "own-look")


def test_own_steps_of_one_place_keep_the_order_of_the_file() -> None:
    entries = [{"after": "hang", "title": title, "text": "x"} for title in ("One", "Two", "Three")]
    made = with_steps(*entries)
    assert [step.title for step in made.steps if step.is_own] == ["One", "Two", "Three"]


def test_steps_are_numbered_through_with_the_own_ones() -> None:
    made = with_steps({"before": "labels", **SWEEP}, {"after": "hang", **SWEEP})
    assert [step.number for step in made.steps] == list(range(1, len(made.steps) + 1))


def test_own_steps_of_the_same_title_have_ids_of_their_own() -> None:
    made = with_steps({"before": "labels", **SWEEP}, {"after": "hang", **SWEEP})
    assert [step.identity for step in made.steps if step.is_own] == ["own-sweep-up", "own-sweep-up-2"]


def test_an_own_step_keeps_its_id_when_another_is_put_before_it() -> None:
    one = with_steps({"after": "hang", **SWEEP})
    two = with_steps({"before": "labels", "title": "Tidy", "text": "x"}, {"after": "hang", **SWEEP})
    assert "own-sweep-up" in one.identities
    assert "own-sweep-up" in two.identities


def test_a_title_in_other_letters_gives_an_id_all_the_same() -> None:
    made = with_steps({"after": "hang", "title": "Убрать", "text": "x"})
    assert "own-x" in made.identities


def test_an_own_step_has_no_cautions_or_checks_of_the_guide() -> None:
    own = next(step for step in with_steps({"after": "hang", **SWEEP}).steps if step.is_own)
    assert (own.cautions, own.checks, own.do, own.tools) == ((), (), (), ())
    assert own.own == OwnWords("Wire ends are sharp.")


def test_every_id_of_a_step_is_an_id_of_its_own_on_the_page(all_guides: tuple[Made, ...]) -> None:
    # The other ids of the page, by its template and the frame around it.
    frame = {"main", "contents", "contents-title", "before", "stop"}
    for made in all_guides:
        groups = {group.anchor for group in made.page("build.html").groups}
        assert not set(made.identities) & (groups | frame)
        assert not any(each.startswith(("own-", "title-", "caution-")) for each in made.identities)


def test_the_first_page_has_photos_story_and_licence(tmp_path: Path, plain: Made) -> None:
    assert (plain.page("index.html").views, plain.page("index.html").cover, plain.guide.licence) == (
        (),
        None,
        "",
    )
    made = make(changed(story="Once.", licence="CC BY 4.0"))
    assert (made.page("index.html").story, made.guide.licence) == ("Once.", "CC BY 4.0")


@pytest.mark.parametrize("word", ["step", "before", "after"])
def test_an_unknown_step_is_told_where_it_stands_with_what_was_meant(tmp_path: Path, word: str) -> None:
    words = {"note": "x"} if word == "step" else SWEEP
    (fault,) = faults(tmp_path, {word: "fuse_in", **words})
    assert (fault.key, fault.came, fault.mend) == (f"steps[1].{word}", "fuse_in", "did you mean fuse-in?")
    lines = (tmp_path / "bench.yaml").read_text().split("\n")
    assert lines[fault.line - 1][fault.column - 1 :].startswith('"fuse_in"')


def test_an_unknown_step_is_told_with_all_ids_and_where_they_stand(tmp_path: Path, plain: Made) -> None:
    (fault,) = faults(tmp_path, {"step": "varnish", "note": "x"})
    assert "on the page “Build it” stands behind # in the step's address" in fault.expected
    assert all(identity in fault.expected for identity in plain.identities)
    assert fault.mend == "write one of these ids"


def test_all_unknown_steps_are_told_at_once(tmp_path: Path) -> None:
    found = faults(
        tmp_path, {"step": "a", "note": "x"}, {"before": "b", **SWEEP}, {"step": "hang", "note": "x"}
    )
    assert [fault.key for fault in found] == ["steps[1].step", "steps[2].before"]


def test_of_a_refused_project_no_step_is_asked_after(tmp_path: Path) -> None:
    project = changed(steps=[{"step": "nowhere", "note": "x"}], supply__case="opened")
    path = tmp_path / "bench.yaml"
    path.write_text(json.dumps(project), encoding="utf-8")
    found = study(path)
    assert found.refused
    refuse_unknown_steps(found)


def test_a_photo_of_a_step_is_named_by_its_file(tmp_path: Path) -> None:
    from PIL import Image

    Image.new("RGB", (20, 10)).save(tmp_path / "hooks.png")
    photo = {"file": "hooks.png", "alt": "Hooks"}
    path = tmp_path / "bench.yaml"
    path.write_text(json.dumps(changed(steps=[{"step": "hang", "photo": photo}])), encoding="utf-8")
    from tests.guide.projects import of_study

    assert of_study(study(path)).step("hang").own == OwnWords(photo=Photo("hooks.png", "Hooks"))
