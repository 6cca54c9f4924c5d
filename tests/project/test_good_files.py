"""Files as people really save them are read alike."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest

from guidegen.project import tree
from guidegen.project.read import ProjectFile, read_project

HERE = Path(__file__).parent
SMALL = (HERE / "small.yaml").read_text("utf-8")
SAMPLE = HERE.parents[1] / "sample_project" / "potting-bench.yaml"
SHIPPED = sorted([*SAMPLE.parent.glob("*.yaml"), *(HERE.parent / "examples").glob("*.yaml")])


def read(folder: Path, content: bytes | str) -> ProjectFile:
    path = folder / "lights.yaml"
    path.write_bytes(content.encode() if isinstance(content, str) else content)
    return read_project(path)


def changed(folder: Path, old: str, new: str) -> ProjectFile:
    assert old in SMALL
    return read(folder, SMALL.replace(old, new, 1))


@pytest.mark.parametrize("encoding", ["utf-8", "utf-8-sig", "utf-16", "utf-32"])
@pytest.mark.parametrize("line_end", ["\n", "\r\n", "\r"])
def test_encoding_and_line_ends_make_no_difference(tmp_path: Path, encoding: str, line_end: str) -> None:
    text = SMALL.replace("\n", line_end)
    file = read(tmp_path, text.encode(encoding))
    assert file == read(tmp_path, SMALL)
    assert file.source_text == SMALL


def test_big_endian_utf_16_with_its_mark(tmp_path: Path) -> None:
    assert read(tmp_path, b"\xfe\xff" + SMALL.encode("utf-16-be")).project.title == "Small lights"


@pytest.mark.parametrize(
    ("written", "title"),
    [
        ("NO", "NO"),
        ("on", "on"),
        ("12:30", "12:30"),
        ("1e3", "1e3"),
        ("2024-12-24", "2024-12-24"),
        ("“Small lights”", "Small lights"),
        ("‘Small lights’", "Small lights"),
        ("„Kleine Lichter“", "Kleine Lichter"),
        ('"Lights: small"', "Lights: small"),
        ("Don’t touch", "Don’t touch"),
        ("|\n  Small\n  lights", "Small lights"),
        ("Licht & Łuk 💡", "Licht & Łuk 💡"),
        ("<b>bold</b>", "<b>bold</b>"),
    ],
)
def test_text_stays_as_written(tmp_path: Path, written: str, title: str) -> None:
    assert changed(tmp_path, "Small lights", written).project.title == title


@pytest.mark.parametrize(
    "written",
    ["10 ohm", "10 Ω", "10 \u2126", "10\u00a0Ω", "10Ω", "10 Ohm", "10 ohms", "“10 ohm”", "'10 ohm'"],
)
def test_the_ohm_in_every_spelling(tmp_path: Path, written: str) -> None:
    assert changed(tmp_path, "resistor: 10 ohm", f"resistor: {written}").project.runs[0].resistor == 10


@pytest.mark.parametrize(
    "written", ["0.08 mm2", "0.08 mm²", "0.08 mm^2", "0.08\u00a0mm²", "8e-8 m2", ".08 mm2"]
)
def test_the_square_millimetre_in_every_spelling(tmp_path: Path, written: str) -> None:
    assert changed(tmp_path, "0.08 mm2", written).project.strings["drop"].wire.area == 8e-8


@pytest.mark.parametrize("written", ["-5 degC", "-5 °C", "\u22125 °C", "-5 \u2103", "23 degF", "268.15 K"])
def test_the_degree_in_every_spelling(tmp_path: Path, written: str) -> None:
    place = changed(tmp_path, "exposure: indoors", f"exposure: indoors\n  coldest: {written}").project.place
    assert place.coldest == pytest.approx(-5, abs=1e-9)  # 23 degF is -5 degC by hand


@pytest.mark.parametrize("written", ["0.05", "5 %", "5%", ".05", "5e-2"])
def test_a_ratio_in_every_spelling(tmp_path: Path, written: str) -> None:
    supply = changed(tmp_path, "case: sealed", f"case: sealed\n  tolerance: {written}").project.supply
    assert supply.tolerance == 0.05


@pytest.mark.parametrize("written", ["", "~", "null"])
def test_an_optional_key_with_nothing_behind_it_is_left_out(tmp_path: Path, written: str) -> None:
    file = changed(tmp_path, "fuse: 1 A", f"fuse: {written}\ngoals: {written}")
    assert file.project.fuse is None
    assert file.project.goals.evenness == 0.5  # the default of DESIGN: goals in section 4
    assert "fuse" not in file.given


def test_a_run_without_resistor(tmp_path: Path) -> None:
    assert changed(tmp_path, "resistor: 10 ohm", "resistor: none").project.runs[0].resistor == "none"


def test_runs_get_their_names_and_the_only_kind_of_string(tmp_path: Path) -> None:
    runs = read(tmp_path, SMALL).project.runs
    assert [(run.name, run.string) for run in runs] == [("back", "drop"), ("run 2", "drop")]


def test_given_tells_what_the_file_states_from_what_is_assumed(tmp_path: Path) -> None:
    given = read(tmp_path, SMALL).given
    stated = {"strings.drop.wire.area", "runs[1].name", "runs[1].feeder.length", "runs[2]", "place.exposure"}
    assumed = {"strings.drop.between_bulbs", "runs[2].name", "runs[1].feed", "place.coldest", "goals"}
    assert stated <= given
    assert not assumed & given


@pytest.mark.parametrize(
    ("key", "place"),
    [
        ("title", (1, 8)),
        ("strings.drop.wire.area", (12, 18)),
        ("runs[1].feeder.wire", (23, 35)),
        ("runs[2].bulbs", (24, 12)),
        ("runs[2].feed", (24, 5)),  # not stated: the run
        ("goals.evenness", (1, 1)),  # nothing of it stated: the file
    ],
)
def test_the_place_of_a_value(tmp_path: Path, key: str, place: tuple[int, int]) -> None:
    assert read(tmp_path, SMALL).place_of(key) == place


def test_the_sample_is_sound() -> None:
    project = read_project(SAMPLE).project
    assert [(run.name, run.bulbs, run.feed) for run in project.runs or ()] == [
        ("back rail", 24, "opposite ends"),
        ("front rail", 24, "middle"),
    ]
    assert project.strings["drop"].wire.one_conductor == 1.0


def test_reading_loads_no_plotting_solving_or_publishing() -> None:
    # pint itself imports numpy where it is installed; nothing here does.
    code = (
        "import sys; from guidegen.project.read import read_project;"
        "early = {'pint', 'numpy'} & set(sys.modules);"
        f"read_project({str(SAMPLE)!r});"
        "late = {'matplotlib', 'schemdraw', 'mkdocs', 'scipy.sparse', 'scipy.linalg'} & set(sys.modules);"
        "print(early, late)"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout == "set() set()\n"


@pytest.mark.parametrize(
    ("written", "answer"),
    [
        ("yes", "yes"),
        ("NO", "no"),
        ("no", "no"),
        ("Yes", "yes"),
        ("On", "yes"),
        ("off", "no"),
        ("true", "yes"),
        ("False", "no"),
        ("n", "no"),
        ("Y", "yes"),
        ("'no'", "no"),
        ("“yes”", "yes"),
        ("unknown", "unknown"),
    ],
)
def test_yes_and_no_as_people_write_them(tmp_path: Path, written: str, answer: str) -> None:
    supply = changed(
        tmp_path, "  insulation: double\n", f"  insulation: double\n  approved: {written}\n"
    ).project.supply
    assert supply.approved == answer


def test_safety_keys_left_out_are_told_from_keys_that_say_no(tmp_path: Path) -> None:
    silent = read(tmp_path, SMALL).project
    stated = changed(
        tmp_path, "  mains: existing outlet\n", "  mains: existing outlet\n  over_path: no\n"
    ).project
    assert silent.place.over_path is None
    assert stated.place.over_path == "no"
    assert (silent.supply.approved, silent.strings["drop"].box) == ("unknown", "removed")


def test_three_wires_contradict_only_a_stated_parallel(tmp_path: Path) -> None:
    assert changed(tmp_path, "    tail: 50 cm\n", "    wires: 3\n").project.strings["drop"].wires == 3


def test_limited_power_at_its_limit_is_believed(tmp_path: Path) -> None:
    # IEC 60950-1 Table 2B: up to 20 V at most 5 x U VA, so 5 A (by hand).
    marked = "  rated_current: 5 A\n  limited_power: yes\n"
    assert changed(tmp_path, "  rated_current: 2.4 A\n", marked).project.supply.limited_power == "yes"


@pytest.mark.parametrize("path", SHIPPED, ids=lambda path: path.name)
def test_the_quick_parser_and_the_other_see_the_same_tree(path: Path) -> None:
    text = path.read_text("utf-8")
    quick = tree._faultless(text, path.name)
    assert quick is not None
    assert quick == tree._grown(text, path.name)
