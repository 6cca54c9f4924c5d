"""What the maker adds to the steps: words, photos, and steps of the maker's own.

Nothing here takes a step, a caution or a check away, or changes one.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace

from guidegen.errors import Fault, ProjectError
from guidegen.guide.blocks import OwnWords, Photo
from guidegen.guide.format import slug
from guidegen.guide.matter import Matter
from guidegen.guide.steps.all_steps import step_groups
from guidegen.guide.steps.draft import Draft, DraftGroup
from guidegen.locale import _
from guidegen.project import own
from guidegen.project.check_own import PLACES
from guidegen.project.keys import key_text
from guidegen.project.writing import nearest
from guidegen.study import Study


def with_own(groups: Sequence[DraftGroup], entries: Sequence[own.OwnStep]) -> tuple[DraftGroup, ...]:
    """The steps with what the maker adds to them; entries of one place in the order of the file.

    An entry whose step is not there is left out: `refuse_unknown_steps` has told of it.
    """
    named = list(zip(_identities(entries), entries, strict=True))
    return tuple(
        replace(group, steps=tuple(found for step in group.steps for found in _around(step, named)))
        for group in groups
    )


def _around(step: Draft, named: Iterable[tuple[str, own.OwnStep]]) -> Iterator[Draft]:
    """A step of the guide between the maker's own steps."""
    yield from (_own_step(name, entry) for name, entry in named if entry.before == step.identity)
    added = next((entry for _name, entry in named if entry.step == step.identity), None)
    yield step if added is None else replace(step, own=_words(added))
    yield from (_own_step(name, entry) for name, entry in named if entry.after == step.identity)


def _own_step(identity: str, entry: own.OwnStep) -> Draft:
    return Draft(identity, entry.title or "", why="", do=(), own=_words(entry), is_own=True)


def _words(entry: own.OwnStep) -> OwnWords:
    return OwnWords(entry.text, entry.note, photo_of(entry.photo))


def photo_of(photo: own.Photo | None, caption: str = "") -> Photo | None:
    """A photo of the project file as a page shows it."""
    return None if photo is None else Photo(photo.file, photo.alt, caption)


def _identities(entries: Sequence[own.OwnStep]) -> Iterator[str]:
    """An id for every entry, after its title, so that a tick stays with its step when others are added."""
    seen: dict[str, int] = {}
    for entry in entries:
        name = f"own-{slug(entry.title or '')}"
        seen[name] = seen.get(name, 0) + 1
        yield name if seen[name] == 1 else f"{name}-{seen[name]}"


def refuse_unknown_steps(study: Study) -> None:
    """Raise ProjectError when the file names steps that its guide does not have."""
    faults = unknown_steps(study)
    if faults:
        raise ProjectError(faults)


def unknown_steps(study: Study) -> tuple[Fault, ...]:
    """Faults of a file that names steps which its guide does not have; a refused project has no steps."""
    if not study.project.steps or study.solved is None or study.refused:
        return ()
    groups = step_groups(Matter(study, study.solved, study.spread.readings))
    known = [step.identity for group in groups for step in group.steps]
    return tuple(_faults(study, known))


def _faults(study: Study, known: Sequence[str]) -> Iterator[Fault]:
    for index, entry in enumerate(study.project.steps):
        for word in PLACES:
            given = getattr(entry, word)
            if given is not None and given not in known:
                yield _fault(study, key_text(("steps", index, word)), given, known)


def _fault(study: Study, key: str, given: str, known: Sequence[str]) -> Fault:
    expected = _(
        "the id of a step of this guide, which on the page “Build it” stands behind # in the step's "
        "address; here: {known}"
    )
    near = nearest(given, known)
    mend = _("did you mean {name}?").format(name=near) if near else _("write one of these ids")
    line, column = study.file.place_of(key)
    return Fault(study.file.name, line, column, key, given, expected.format(known=", ".join(known)), mend)
