"""`compare`: its JSON, its text, and what it says after a refusal."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
import yaml
from click.testing import CliRunner

from guidegen.cli import main
from guidegen.report.compare import Comparison, compare, compare_json, compare_text, compared
from guidegen.report.figures import figures
from guidegen.study import study
from tests.safety.projects import GONE, PlainDumper, edited

SAMPLE = Path(__file__).parents[2] / "sample_project" / "potting-bench.yaml"


def written(folder: Path, changes: dict[str, object]) -> Path:
    path = folder / "project.yaml"
    path.write_text(yaml.dump(edited(changes), sort_keys=False, Dumper=PlainDumper), "utf-8")
    return path


@pytest.fixture(scope="module")
def sample() -> Comparison:
    return compare(SAMPLE)


def test_the_json_is_a_list_of_figures_with_cost_and_why(sample: Comparison) -> None:
    data = json.loads(compare_json(sample))
    assert 1 <= len(data) <= 8
    for each in data:
        assert {"supply", "evenness", "meets_goals", "strings", "runs", "fuse_a", "findings"} <= set(each)
        assert {"cost", "extra_wire_m", "core_m", "joints", "cuts", "why", "given"} <= set(each)
        assert each["why"].endswith(".")


def test_the_makers_own_is_marked_and_has_the_figures_of_figures(sample: Comparison) -> None:
    own = [each for each in compared(sample) if each["given"]]
    assert len(own) == 1
    alone = figures(study(SAMPLE))
    assert own[0]["runs"][0]["bulbs"] == alone["runs"][0]["bulbs"]
    assert {key: own[0][key] for key in ("supply", "evenness", "fuse_a", "findings")} == {
        key: alone[key] for key in ("supply", "evenness", "fuse_a", "findings")
    }


def test_extra_wire_counts_routes_and_its_cores(sample: Comparison) -> None:
    # 6.5 m of one core and 3.5 m of a pair: 10 m of route, 13.5 m of core (by hand, from the file).
    own = next(each for each in compared(sample) if each["given"])
    assert (own["extra_wire_m"], own["core_m"]) == (10.0, 13.5)


def test_the_text_marks_the_makers_own_and_numbers_all(sample: Comparison) -> None:
    text = compare_text(sample, "utf-8")
    numbered = [line for line in text.splitlines() if line[:1].isdigit()]
    assert [line.split(".")[0] for line in numbered] == [str(k) for k in range(1, len(numbered) + 1)]
    assert sum("[yours]" in line for line in numbered) == 1


def test_the_text_is_plain_where_the_terminal_is(sample: Comparison) -> None:
    assert compare_text(sample, "ascii").isascii()


def test_the_text_ends_with_the_block_of_the_first_proposal(sample: Comparison) -> None:
    text = compare_text(sample, "ascii")
    block = text[text.index("\nruns:\n") :].split("\n\n")[0]
    runs = yaml.safe_load(block)["runs"]
    # The first has two runs of 24, fed in the middle; its wire is told beside each run too.
    assert [(run["bulbs"], run["feed"]) for run in runs] == [(24, "middle"), (24, "middle")]
    assert "Number 1, to put into the project file" in text
    assert "extra wire 2.75 m of 0.25 mm2" in text


def test_without_runs_none_is_given(tmp_path: Path) -> None:
    data = compared(compare(written(tmp_path, {"runs": GONE})))
    assert not any(each["given"] for each in data)


def test_without_runs_figures_shows_the_first_proposal(tmp_path: Path) -> None:
    path = written(tmp_path, {"runs": GONE})
    first, alone = compared(compare(path))[0], figures(study(path))
    assert alone["evenness"] == pytest.approx(first["evenness"], rel=1e-9)
    assert alone["supply"] == pytest.approx(first["supply"], rel=1e-9)
    assert [run["resistor_ohm"] for run in alone["runs"]] == [run["resistor_ohm"] for run in first["runs"]]


UNREFUSED: list[dict[str, object]] = [
    {},
    {"strings.drop.bought": 5, "goals": {"evenness": 0.9}},
    {"strings.drop.max_led_current": "3.5 mA"},
    {"supply.rated_current": "150 mA", "supply.current_limit": "150 mA"},
    {"strings.drop.wire": {"gauge": "30 AWG"}, "fuse": GONE},
]


@pytest.mark.parametrize("changes", UNREFUSED)
def test_no_rule_refuses_what_is_proposed(tmp_path: Path, changes: dict[str, object]) -> None:
    data = compared(compare(written(tmp_path, {"runs": GONE, **changes})))
    assert data
    for each in data:
        assert "refusal" not in {finding["level"] for finding in each["findings"]}
        assert "led-over-maximum-worst" not in {finding["rule"] for finding in each["findings"]}


def test_the_first_says_why_none_meets_the_goals(tmp_path: Path) -> None:
    path = written(tmp_path, {"runs": GONE, "supply.voltage": "2.6 V", "goals": {"led_current": "3 mA"}})
    first = compared(compare(path))[0]
    assert not first["meets_goals"]
    assert "No arrangement meets the goals" in first["why"]


def test_after_a_hazard_refusal_the_list_is_empty_and_the_reason_is_told(tmp_path: Path) -> None:
    path = written(tmp_path, {"supply.case": "opened"})
    done = CliRunner().invoke(main, ["compare", str(path), "--json"])
    assert done.exit_code == 0
    assert json.loads(done.stdout) == []
    assert "supply-case-opened" in done.stderr


def test_the_same_file_gives_the_same_bytes(sample: Comparison) -> None:
    assert compare_json(compare(SAMPLE)) == compare_json(sample)
