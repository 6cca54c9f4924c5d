"""The key of the project file that a refusal is about: where a person can look first."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from guidegen.locale import N_
from guidegen.project.keys import Key, key_text
from guidegen.project.read import ProjectFile
from guidegen.project.schema import Project
from guidegen.safety.findings import Finding

#: By rule: a path in which RUN stands for the run that a finding names, STRING for the kind of string it
#: names or that its run is made of.
_KEYS: Mapping[str, Key] = MappingProxyType(
    {
        "mains-string": ("strings", "STRING", "runs_on"),
        "supply-case-opened": ("supply", "case"),
        "supply-not-approved": ("supply", "approved"),
        "supply-insulation": ("supply", "insulation"),
        "supply-voltage": ("supply", "voltage"),
        "supply-output": ("supply", "output"),
        "supply-constant-current": ("supply", "type"),
        "supply-outdoors": ("supply", "stands"),
        "near-water": ("place", "near_water"),
        "supply-overloaded": ("supply", "rated_current"),
        "led-over-maximum": ("runs", "RUN", "resistor"),
        "resistor-over-rating": ("runs", "RUN", "resistor_rating"),
        "resistor-shorted": ("runs", "RUN", "resistor_rating"),
        "bulbs-in-series": ("strings", "STRING", "between_bulbs"),
        "not-parallel": ("strings", "STRING", "between_bulbs"),
        "box-kept": ("strings", "STRING", "box"),
        "wire-over-limit": ("runs", "RUN"),
    }
)
_SECTIONS: Mapping[str, Key] = MappingProxyType(
    {
        N_("the supply lead"): ("supply", "lead"),
        N_("the feeder"): ("runs", "RUN", "feeder"),
        N_("the extra wire"): ("runs", "RUN", "extra_wire"),
        N_("the string's own wire"): ("strings", "STRING", "wire"),
    }
)


def place_of(finding: Finding, file: ProjectFile) -> str:
    """ "FILE:LINE:COLUMN: KEY" of what the finding is about; empty where the file says nothing of it."""
    key = key_of(finding, file)
    while key and key not in file.places:
        key = key[: max(key.rfind("."), key.rfind("["), 0)]
    if not key:
        return ""
    line, column = file.places[key]
    return f"{file.name}:{line}:{column}: {key}"


def key_of(finding: Finding, file: ProjectFile) -> str:
    """The key that the finding is about; empty where none can be named."""
    path = _SECTIONS.get(str(finding.values.get("wire")), _KEYS.get(finding.rule, ()))
    if finding.rule == "mains-string" and file.project.strings[finding.subject].runs_on != "mains":
        path = ("strings", "STRING", "label")
    if finding.rule == "supply-voltage":
        path = _highest_volts(file.project)
    meant = {"RUN": _run_index(finding.subject, file), "STRING": _kind(finding.subject, file)}
    steps = [meant.get(step, step) if isinstance(step, str) else step for step in path]
    return "" if None in steps else key_text(tuple(step for step in steps if step is not None))


def _run_index(subject: str, file: ProjectFile) -> int | None:
    """Place of the run, from 0, if the file has the run."""
    names = [run.name for run in file.project.runs or ()]
    return names.index(subject) if subject in names else None


def _kind(subject: str, file: ProjectFile) -> str | None:
    """The kind of string that is named, or that the named run is made of."""
    runs = {run.name: run.string for run in file.project.runs or ()}
    return runs.get(subject, subject or None)


def _highest_volts(project: Project) -> Key:
    """The key of the highest volts in the file: the supply's, or a bench reading's."""
    volts: dict[Key, float] = {("supply", "voltage"): project.supply.voltage}
    for name, kind in project.strings.items():
        for index, row in enumerate(kind.bench):
            volts["strings", name, "bench", index, "supply"] = row.supply
    return max(volts, key=lambda key: volts[key])
