"""What a refused project gets: status 1, no guide, the old one whole, reason and alternative, no figures."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
import yaml
from click.testing import CliRunner, Result

from guidegen.cli import main
from guidegen.safety.judge import RULE_BY_ID
from tests.safety.projects import Changes, PlainDumper, edited
from tests.safety.test_hazards import MET
from tests.safety.test_judge import CUT

#: Refusals that only the solved circuit tells; resistor and fuse by hand as in the tests of the rules.
DESIGN: list[tuple[str, Changes]] = [
    ("led-over-maximum", {"strings.drop.max_led_current": "3 mA"}),
    ("supply-overloaded", {"supply.rated_current": "20 mA", "supply.current_limit": "2 A"}),
    ("resistor-shorted", {"runs.0.resistor_rating": "0.25 W"}),
    ("bulbs-in-series", {"strings.drop.between_bulbs": "series"}),
    ("not-parallel", {**CUT, "strings.drop.between_bulbs": "series"}),
    ("box-kept", {"strings.drop.box": "kept"}),
]
EVERY = pytest.mark.parametrize(("rule", "changes"), [*MET, *DESIGN])


def run(command: str, folder: Path, changes: Changes) -> Result:
    path = folder / "project.yaml"
    path.write_text(yaml.dump(edited(changes), sort_keys=False, Dumper=PlainDumper), "utf-8")
    return CliRunner().invoke(main, [command, str(path), *_out(command, folder)])


def _out(command: str, folder: Path) -> list[str]:
    return ["--out", str(folder / "guide")] if command == "build" else []


@EVERY
def test_check_ends_with_1_and_tells_reason_and_alternative(
    tmp_path: Path, rule: str, changes: Changes
) -> None:
    done = run("check", tmp_path, changes)
    assert done.exit_code == 1
    assert f"[{rule}]" in done.output
    assert RULE_BY_ID[rule].reason in done.output
    assert "Instead: " in done.output


@EVERY
def test_build_ends_with_1_and_writes_nothing(tmp_path: Path, rule: str, changes: Changes) -> None:
    done = run("build", tmp_path, changes)
    assert done.exit_code == 1
    assert RULE_BY_ID[rule].title in done.stderr
    assert [path.name for path in tmp_path.iterdir()] == ["project.yaml"]


@pytest.mark.parametrize("command", ["build", "check"])
@pytest.mark.parametrize(("rule", "changes"), MET)
def test_hazard_is_told_without_one_figure_of_the_design(
    tmp_path: Path, command: str, rule: str, changes: Changes
) -> None:
    """What numbers are told are those of standards and of the limits to keep."""
    told = run(command, tmp_path, changes).output
    told = re.sub(r"(?m)^  \S+:\d+:\d+: \S+$", "", told)  # the place in the project file
    for source in {each.source for each in RULE_BY_ID.values()}:
        told = told.replace(source, "")
    for limit in ("IPX4", "IP44", "5 V, 12 V or 24 V", "60 V DC or 25 V AC", "3.5 m"):
        told = told.replace(limit, "")
    assert re.findall(r"\d+", told) == []


def test_old_guide_is_left_whole(tmp_path: Path) -> None:
    assert run("build", tmp_path, {}).exit_code == 0

    def files() -> dict[str, bytes]:
        found = (path for path in (tmp_path / "guide").rglob("*") if path.is_file())
        return {str(path): path.read_bytes() for path in found}

    before = files()
    assert run("build", tmp_path, {"supply.case": "opened"}).exit_code == 1
    assert files() == before


def test_opened_supply_is_told_the_safe_way(tmp_path: Path) -> None:
    told = " ".join(run("check", tmp_path, {"supply.case": "opened"}).output.split())
    assert "Take an approved supply, keep it closed, and use only its low-voltage lead or plug." in told


def test_water_without_a_distance_names_the_key_to_state(tmp_path: Path) -> None:
    assert "place.distance_to_water" in run("check", tmp_path, {"place.near_water": "pool"}).output
