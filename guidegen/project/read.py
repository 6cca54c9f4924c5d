"""Read a project file: text, tree, models, checks; then the project, or every fault at once."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Mapping
from dataclasses import dataclass
from itertools import chain
from pathlib import Path
from types import MappingProxyType

from pydantic import ValidationError

from guidegen.errors import ProjectError
from guidegen.locale import speaking_language
from guidegen.project.check import complaints
from guidegen.project.check_readings import run_of
from guidegen.project.check_runs import kind_of, run_name
from guidegen.project.complaint import Complaint
from guidegen.project.explain import Wrong, explain, meant, wrongs
from guidegen.project.hung import Hanging
from guidegen.project.keys import Key, key_text
from guidegen.project.partial import partial
from guidegen.project.photos import photo_complaints
from guidegen.project.schema import LightString, Project
from guidegen.project.source import empty_file, read_source
from guidegen.project.tree import Tree, grow
from guidegen.project.words import numbered_run


@dataclass(frozen=True)
class ProjectFile:
    """A project as read, with what the file itself says.

    `name` is the path as typed; `given` the paths of all keys that the file
    states, such as "strings.drop.spacing" or "runs[2].feed" (counted from
    1); `places` the line and column of their values.
    """

    project: Project
    source_text: str
    name: str
    given: frozenset[str]
    places: Mapping[str, tuple[int, int]]

    def place_of(self, key: str) -> tuple[int, int]:
        """Line and column, from 1, of the value of `key`, or of the nearest key that holds it."""
        while key and key not in self.places:
            key = key[: max(key.rfind("."), key.rfind("["), 0)]
        return self.places.get(key, (1, 1))


def read_project(path: str | Path) -> ProjectFile:
    """The project in the file at `path`; raises ProjectError with every fault in it.

    Runs without a name are named by their place; a run without a kind of
    string has the only kind.
    """
    text = read_source(path)
    tree = grow(text, str(path))
    if not tree.faults and tree.data is None:
        raise ProjectError((empty_file(str(path)),))
    project = _validate(tree, Path(path).parent)
    if tree.faults or project is None:
        raise ProjectError(tuple(sorted(tree.faults, key=lambda fault: (fault.line or 0, fault.column or 0))))
    given = frozenset(key_text(key) for key in tree.values if key and tree.at(key) is not None)
    places = {key_text(key): place for key, place in tree.values.items()}
    return ProjectFile(_filled_in(project), text, str(path), given, MappingProxyType(places))


def _validate(tree: Tree, folder: Path) -> Project | None:
    """The project, whose faults go into the tree; None if it is not whole.  `folder` holds its photos."""
    if () in tree.spoiled:
        return None
    found: tuple[Wrong, ...] = ()
    project = None
    try:
        project = Project.model_validate(tree.data)
    except ValidationError as error:
        found = wrongs(error)
    explain(tree, found)
    bad = {wrong.key for wrong in found} | set(meant(found).values()) | tree.spoiled
    if () not in bad:
        sound = project if not bad and project else partial(Project, tree.data, bad)
        _cross_check(tree, chain(complaints(sound), photo_complaints(sound, folder)))
    return project


def _cross_check(tree: Tree, found: Iterable[Complaint]) -> None:
    for complaint in found:
        came = complaint.came or tree.written(complaint.key)
        place = tree.place(complaint.key)
        if complaint.key not in tree.values:
            place = tree.key_place(_there(complaint.key, tree.values))
        tree.complain(place, complaint.key, came, complaint.expected, complaint.mend)


def _there(key: Key, known: Collection[Key]) -> Key:
    """The nearest key that holds this one and is in the file."""
    while key and key not in known:
        key = key[:-1]
    return key


def _filled_in(project: Project) -> Project:
    """The project with what its parts leave to each other.

    Every run has a name and a kind of string, every reading the run it was
    taken of, and measured wire the ohms of the meter's leads.
    """
    strings = {name: _with_leads(kind, project.meter.leads) for name, kind in project.strings.items()}
    project = project.model_copy(update={"strings": strings})
    if project.runs is None:
        return project
    names = _names(project)
    runs = tuple(
        run.model_copy(update={"name": name, "string": kind_of(project, run)})
        for run, name in zip(project.runs, names.values(), strict=True)
    )
    readings = tuple(
        reading.model_copy(update={"run": names.get(run_of(project, reading) or "")})
        for reading in project.readings
    )
    return project.model_copy(
        update={"runs": runs, "readings": readings, "hanging": _hung(project.hanging, names)}
    )


def _names(project: Project) -> dict[str, str]:
    """The name of every run in the guide by its name in the file, where runs without one are run 1, run 2.

    A name in the guide's language that another run has been given is not taken.
    """
    runs = project.runs or ()
    given = {run.name for run in runs}
    with speaking_language(project.language):
        numbered = [numbered_run(index) for index in range(len(runs))]
    return {
        run_name(index, run): numbered[index]
        if run.name is None and numbered[index] not in given
        else run_name(index, run)
        for index, run in enumerate(runs)
    }


def _hung(hanging: Hanging | None, names: Mapping[str, str]) -> Hanging | None:
    """The hanging plan with the names that its runs have in the guide."""
    if hanging is None:
        return None
    lines = tuple(
        line.model_copy(update={"runs": line.runs and tuple(names.get(name, name) for name in line.runs)})
        for line in hanging.lines
    )
    return hanging.model_copy(update={"lines": lines})


def _with_leads(kind: LightString, leads_ohm: float | None) -> LightString:
    """The kind with the ohms of the meter's leads taken off its wire, if it was measured with them."""
    wire = kind.wire
    measured = wire.one_conductor is not None or wire.loop is not None
    if leads_ohm is None or not measured or wire.meter_leads is not None:
        return kind
    return kind.model_copy(update={"wire": wire.model_copy(update={"meter_leads": leads_ohm})})
